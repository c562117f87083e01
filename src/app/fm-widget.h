/* fm-widget.h - what every composite widget of ours needs at its end */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/**
 * fm_widget_drop_template:
 * Call in dispose: clears the bound children of @widget's template and unparents what is left,
 * which gtk_widget_dispose_template() alone does not do for a plain GtkWidget. Not for rows and
 * windows: they unparent their own child.
 */
void fm_widget_drop_template (GtkWidget *widget, GType type);

G_END_DECLS
