/* fm-readings-chart.h - core temperature over time as a small curve
 *
 * Readings are marked points joined by a line; the consumer figure of USDA FSIS is a dashed,
 * labelled line, so that nothing depends on colour. The accessible description tells the range.
 */
#pragma once

#include <gtk/gtk.h>

#include "core/experiment/fm-experiment.h"

G_BEGIN_DECLS

#define FM_TYPE_READINGS_CHART (fm_readings_chart_get_type ())
G_DECLARE_FINAL_TYPE (FmReadingsChart, fm_readings_chart, FM, READINGS_CHART, GtkWidget)

/** @readings: (transfer none): FmCoreReading by time, copied. */
void fm_readings_chart_set_readings (FmReadingsChart *self, const GArray *readings);
/** @estimate: (transfer none) (nullable): points of an estimated curve by time, copied; drawn
 * dotted and without marks beside the readings. */
void fm_readings_chart_set_estimate (FmReadingsChart *self, const GArray *estimate);

G_END_DECLS
