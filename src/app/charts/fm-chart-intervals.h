/* fm-chart-intervals.h - values with their intervals, one a line
 *
 * A value is a dot, its interval a bar with ends, what was expected a hollow diamond: nothing
 * depends on colour. The accessible description tells all of it in words.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define FM_TYPE_CHART_INTERVALS (fm_chart_intervals_get_type ())
G_DECLARE_FINAL_TYPE (FmChartIntervals, fm_chart_intervals, FM, CHART_INTERVALS, GtkWidget)

/** NaN in any number: not known, not drawn. */
typedef struct {
  char *label;
  double value;
  double low;
  double high;
  double expected;
} FmChartInterval;

GtkWidget *fm_chart_intervals_new (void);
/** @title: what is drawn; @rows: (element-type FmChartInterval), copied. */
void fm_chart_intervals_set (FmChartIntervals *self,
                             const char *title,
                             int decimals,
                             const FmChartInterval *rows,
                             guint n_rows);

G_END_DECLS
