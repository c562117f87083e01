/* fm-widget.c - what many widgets of ours need */
#include "app/fm-widget.h"

void
fm_widget_drop_template (GtkWidget *widget, GType type)
{
  GtkWidget *child;

  gtk_widget_dispose_template (widget, type);
  while ((child = gtk_widget_get_first_child (widget)) != NULL)
    gtk_widget_unparent (child);
}

gboolean
fm_widget_has_painted (GtkWidget *widget)
{
  GdkFrameClock *clock = gtk_widget_get_frame_clock (widget);

  /* Frames count from 0, and the count goes up before a frame is painted. */
  return clock != NULL && gdk_frame_clock_get_frame_counter (clock) > 0;
}
