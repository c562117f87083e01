/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-fat-bar.h - one horizontal bar that shows which line brings how much of the fat
 *
 * Segments differ by hatching and carry their name where it fits; the accessible description
 * says the same in words, and the fat column of the lines is the table twin.
 */
#pragma once

#include "app/charts/fm-chart.h"
#include "core/formula/fm-analysis.h"

G_BEGIN_DECLS

#define FM_TYPE_FAT_BAR (fm_fat_bar_get_type ())
G_DECLARE_FINAL_TYPE (FmFatBar, fm_fat_bar, FM, FAT_BAR, FmChart)

typedef struct {
  char *name;
  double share_pct; /* of the blend's fat */
  double fat_g;
} FmFatSegment;

/** Both NULL: nothing to show. */
void fm_fat_bar_update (FmFatBar *self, const FmFormula *formula, const FmAnalysis *analysis);
/** Without a window. */
void fm_fat_bar_draw (const FmFatSegment *segments, guint n, FmChartCanvas *canvas);

G_END_DECLS
