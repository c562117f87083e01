/* fm-widget.c - what every composite widget of ours needs at its end */
#include "app/fm-widget.h"

void
fm_widget_drop_template (GtkWidget *widget, GType type)
{
  GtkWidget *child;

  gtk_widget_dispose_template (widget, type);
  while ((child = gtk_widget_get_first_child (widget)) != NULL)
    gtk_widget_unparent (child);
}
