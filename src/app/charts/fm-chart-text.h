/* fm-chart-text.h - small text in drawn charts */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/** @align: 0 = @x is the left edge, 0.5 = the middle, 1 = the right edge; @y is the middle of the
 * line. @max_width: dots at the end beyond that, 0 = no limit. */
void fm_chart_text_draw (GtkWidget *widget,
                         cairo_t *cr,
                         const char *text,
                         double x,
                         double y,
                         double align,
                         int max_width);
void fm_chart_text_size (GtkWidget *widget, const char *text, int *width, int *height);

G_END_DECLS
