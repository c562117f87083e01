/* fm-chart-bars.h - a small bar chart, told apart by pattern and letter, not by colour
 *
 * Bars start at zero, so their length is the value. A value that is not known is an empty place
 * with a question mark. The accessible name and description say all of it in words.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define FM_TYPE_CHART_BARS (fm_chart_bars_get_type ())
G_DECLARE_FINAL_TYPE (FmChartBars, fm_chart_bars, FM, CHART_BARS, GtkWidget)

GtkWidget *fm_chart_bars_new (void);
/**
 * @title: what is drawn, with its unit
 * @letters: short names under the bars
 * @names: names used in the description
 * @values: one per bar, NaN = not known
 * @with_sign: the values are differences
 */
void fm_chart_bars_set (FmChartBars *self,
                        const char *title,
                        const char *unit,
                        int decimals,
                        const char *const *letters,
                        const char *const *names,
                        const double *values,
                        guint n,
                        gboolean with_sign);

G_END_DECLS
