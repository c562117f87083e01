/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-readings-chart.h - core temperature over time as a small curve
 *
 * Readings are marked points joined by a line; the consumer figure of USDA FSIS is a dashed,
 * labelled line, so that nothing depends on colour. The accessible description tells the range.
 */
#pragma once

#include "app/charts/fm-chart.h"
#include "core/experiment/fm-experiment.h"

G_BEGIN_DECLS

#define FM_TYPE_READINGS_CHART (fm_readings_chart_get_type ())
G_DECLARE_FINAL_TYPE (FmReadingsChart, fm_readings_chart, FM, READINGS_CHART, FmChart)

typedef struct {
  const GArray *readings; /* FmCoreReading by time; may be empty */
  const GArray *estimate; /* likewise */
  gboolean fahrenheit;    /* of what is shown */
} FmReadingsData;

/** @readings: (transfer none): FmCoreReading by time, copied. */
void fm_readings_chart_set_readings (FmReadingsChart *self, const GArray *readings);
/** @estimate: (transfer none) (nullable): points of an estimated curve by time, copied; drawn
 * dotted and without marks beside the readings. */
void fm_readings_chart_set_estimate (FmReadingsChart *self, const GArray *estimate);
/** Without a window. */
void fm_readings_chart_draw (const FmReadingsData *data, FmChartCanvas *canvas);

G_END_DECLS
