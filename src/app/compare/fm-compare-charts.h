/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-compare-charts.h - a strip of small charts for a comparison */
#pragma once

#include <gtk/gtk.h>

#include "core/compare/fm-comparison.h"

G_BEGIN_DECLS

#define FM_TYPE_COMPARE_CHARTS (fm_compare_charts_get_type ())
G_DECLARE_FINAL_TYPE (FmCompareCharts, fm_compare_charts, FM, COMPARE_CHARTS, GtkWidget)

/**
 * Draws the quantities that matter most and are known for some item.
 * @comparison: (nullable): read now, not kept
 * @reference: column that differences refer to, negative for absolute values
 * @first_key: (nullable): key of a row to draw first, chosen by the user
 */
void fm_compare_charts_show (FmCompareCharts *self,
                             const FmComparison *comparison,
                             int reference,
                             const char *first_key);

G_END_DECLS
