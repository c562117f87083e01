/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-chart-series.h - one value of each version, or of each date, as dots
 *
 * No line joins the dots: versions are a tree, and nothing is known between them. A range is a bar
 * with ends through its dot.
 */
#pragma once

#include "app/charts/fm-chart.h"

G_BEGIN_DECLS

#define FM_TYPE_CHART_SERIES (fm_chart_series_get_type ())
G_DECLARE_FINAL_TYPE (FmChartSeries, fm_chart_series, FM, CHART_SERIES, FmChart)

typedef struct {
  int version_number;
  gint64 time_s; /* unix seconds */
  double value;
  double low; /* NaN = no range */
  double high;
} FmSeriesPoint;

typedef struct {
  const char *title;  /* what is drawn, with its unit */
  int decimals;       /* of the values in words */
  gboolean over_time; /* else over the numbers of the versions */
  double least;       /* ends of the values' axis; both NaN = as the values need it */
  double most;
} FmSeriesAxis;

GtkWidget *fm_chart_series_new (void);
/** @axis, @points: copied; @points in the order to walk them. */
void fm_chart_series_set (FmChartSeries *self,
                          const FmSeriesAxis *axis,
                          const FmSeriesPoint *points,
                          guint n_points);
/** Without a window. */
void fm_chart_series_draw (const FmSeriesAxis *axis,
                           const FmSeriesPoint *points,
                           guint n_points,
                           FmChartCanvas *canvas);

G_END_DECLS
