/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-chart-bars.h - a small bar chart, told apart by pattern and letter, not by colour
 *
 * Bars start at zero, so their length is the value. A value that is not known is an empty place
 * with a question mark. Bar 0 is A, bar 1 is B ...
 */
#pragma once

#include "app/charts/fm-chart.h"

G_BEGIN_DECLS

#define FM_TYPE_CHART_BARS (fm_chart_bars_get_type ())
G_DECLARE_FINAL_TYPE (FmChartBars, fm_chart_bars, FM, CHART_BARS, FmChart)

#define FM_CHART_MAX_BARS 8

typedef struct {
  guint n;
  double values[FM_CHART_MAX_BARS]; /* NaN = not known */
  int decimals;
  gboolean with_sign; /* the values are differences */
} FmBarsData;

GtkWidget *fm_chart_bars_new (void);
/**
 * @title: what is drawn, with its unit
 * @unit: of the values in the description
 * @names: (array): one for each bar
 */
void fm_chart_bars_set (FmChartBars *self,
                        const char *title,
                        const char *unit,
                        const char *const *names,
                        const FmBarsData *data);
/** Without a window. */
void fm_chart_bars_draw (const FmBarsData *data, FmChartCanvas *canvas);

G_END_DECLS
