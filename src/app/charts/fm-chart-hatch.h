/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-chart-hatch.h - eight fills that stay apart in print and for every kind of eye */
#pragma once

#include "app/charts/fm-chart-canvas.h"

G_BEGIN_DECLS

#define FM_CHART_N_HATCHES 8

/** Fills @box with the current colour: 0 = all of it, 1 = nothing, then lines and dots. */
void fm_chart_hatch (FmChartCanvas *canvas, const FmBox *box, guint index);

G_END_DECLS
