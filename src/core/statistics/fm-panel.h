/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-panel.h - what a panel can show, just-about-right counts, position effects */
#pragma once

#include "core/statistics/fm-rank.h"
#include "core/statistics/fm-serving.h"

G_BEGIN_DECLS

/** What is known before tasting. */
typedef struct {
  guint n_tasters;
  guint n_samples;
  double smallest_p;         /* of Friedman's test, complete and without ties */
  guint tasters_for_05;      /* fewest tasters with which that test can reach 0.05 */
  guint triangle_critical;   /* right answers needed at 5 %; 0 = cannot be reached */
  double triangle_power_30;  /* when 30 % of tasters can tell the samples apart */
  double triangle_power_50;  /* when 50 % can */
  guint triangle_n_power_80; /* fewest answers (all larger panels up to +5 too) with power 0.8 at
                                50 % */
  guint preference_critical; /* votes for one of two samples needed at 5 %; 0 = never */
} FmPanelOutlook;

void fm_panel_outlook (guint n_tasters, guint n_samples, FmPanelOutlook *outlook);

/** Just-about-right scale: 1 much too little, 2 too little, 3 just about right, 4 too much, 5 much
 * too much. */
typedef struct {
  guint count[5];
  guint n;
  guint n_low;  /* 1 and 2 */
  guint n_high; /* 4 and 5 */
  double share_low;
  double share_high;
  double mean_low; /* liking of those; NaN when none */
  double mean_just_right;
  double mean_high;
  double drop_low; /* liking just right minus liking in the group; NaN when one is empty */
  double drop_high;
  double weighted_low; /* drop x share */
  double weighted_high;
  double overall_penalty; /* liking just right minus liking of all others */
  gboolean enough_low;    /* the group holds at least 20 %: rule from memory, ASTM MNL63 */
  gboolean enough_high;
} FmJarResult;

/** @jar 1 .. 5, 0 = not answered; @liking (nullable) NaN = none, the answer is still counted.
 * Errors: another number, no answer at all. */
gboolean
fm_panel_jar (guint n, const guint *jar, const double *liking, FmJarResult *result, GError **error);

/**
 * fm_panel_by_position:
 * @table: ranks or scores by taster and sample
 * @rows: the serving orders, one row per taster
 *
 * Returns: (transfer full): the same numbers by taster and serving position (columns = positions),
 *   so that fm_rank_test() or fm_anova_liking() on it tells whether position mattered
 */
FmRankTable *
fm_panel_by_position (const FmRankTable *table, const FmServingRows *rows, GError **error);

G_END_DECLS
