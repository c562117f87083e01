/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-chart-intervals.h - values with their intervals, one a line
 *
 * A value is a dot, its interval a bar with ends, what was expected a hollow diamond: nothing
 * depends on colour. An interval that goes on beyond the axis has no end there.
 */
#pragma once

#include "app/charts/fm-chart.h"

G_BEGIN_DECLS

#define FM_TYPE_CHART_INTERVALS (fm_chart_intervals_get_type ())
G_DECLARE_FINAL_TYPE (FmChartIntervals, fm_chart_intervals, FM, CHART_INTERVALS, FmChart)

/** NaN in any number: not known, not drawn. */
typedef struct {
  char *label;
  double value;
  double low;
  double high;
  double expected;
} FmChartInterval;

/** What stands below the rows. */
typedef struct {
  FmChartScale scale;    /* without ticks it covers zero and all numbers */
  const char *low_words; /* (nullable): what it means to stand at the left end */
  const char *high_words;
} FmChartIntervalAxis;

GtkWidget *fm_chart_intervals_new (void);
/**
 * @title: what is drawn
 * @axis: (nullable): copied, the words are static; without, it covers zero and all numbers
 * @rows: copied
 */
void fm_chart_intervals_set (FmChartIntervals *self,
                             const char *title,
                             int decimals,
                             const FmChartIntervalAxis *axis,
                             const FmChartInterval *rows,
                             guint n_rows);
/** Without a window. */
void fm_chart_intervals_draw (const FmChartInterval *rows,
                              guint n_rows,
                              const FmChartIntervalAxis *axis,
                              FmChartCanvas *canvas);

G_END_DECLS
