/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-chart-orders.h - each taster's order of the samples, side by side
 *
 * One upright line a taster, the best on top; every sample is a letter in a circle, joined from
 * taster to taster. The accessible description tells each order in words.
 */
#pragma once

#include "app/charts/fm-chart.h"
#include "core/statistics/fm-rank.h"

G_BEGIN_DECLS

#define FM_TYPE_CHART_ORDERS (fm_chart_orders_get_type ())
G_DECLARE_FINAL_TYPE (FmChartOrders, fm_chart_orders, FM, CHART_ORDERS, FmChart)

GtkWidget *fm_chart_orders_new (void);
/** @tasters, @labels: as many as the table has rows and columns; all copied. */
void fm_chart_orders_set (FmChartOrders *self,
                          const FmRankTable *ranks,
                          const char *const *tasters,
                          const char *const *labels);
/** Without a window; @tasters: as many as the table has rows. */
void
fm_chart_orders_draw (const FmRankTable *ranks, const char *const *tasters, FmChartCanvas *canvas);
/** "first 731, then 204 and 655" of one taster; (transfer full). */
char *fm_chart_orders_text (const FmRankTable *ranks, guint taster, const char *const *labels);

G_END_DECLS
