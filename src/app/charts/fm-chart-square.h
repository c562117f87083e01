/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-chart-square.h - the Pearson square of two ingredients, as the trade lays it out
 *
 *   fat of A              parts of A = |fat of B - target|
 *             \        /
 *               target
 *             /        \
 *   fat of B              parts of B = |fat of A - target|
 */
#pragma once

#include "app/charts/fm-chart.h"
#include "core/targets/fm-pearson.h"

G_BEGIN_DECLS

#define FM_TYPE_CHART_SQUARE (fm_chart_square_get_type ())
G_DECLARE_FINAL_TYPE (FmChartSquare, fm_chart_square, FM, CHART_SQUARE, FmChart)

/** @words: (nullable): all of it in a sentence. */
void fm_chart_square_set (FmChartSquare *self,
                          const char *a_name,
                          const char *b_name,
                          const FmPearson *square,
                          const char *words);
/** Without a window. */
void fm_chart_square_draw (const char *a_name,
                           const char *b_name,
                           const FmPearson *square,
                           FmChartCanvas *canvas);
/** Height that the texts need, in pixels. */
int fm_chart_square_height (PangoContext *pango);

G_END_DECLS
