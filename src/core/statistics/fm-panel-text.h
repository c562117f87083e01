/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-panel-text.h - results as one plain sentence, and where each method comes from
 *
 * @names are what the caller wants shown: codes while identities are sealed, names after.
 * All strings are translated, without markup, (transfer full).
 */
#pragma once

#include "core/statistics/fm-anova.h"
#include "core/statistics/fm-panel.h"
#include "core/statistics/fm-rank.h"
#include "core/statistics/fm-stat-choice.h"

G_BEGIN_DECLS

/** "Three tasters cannot separate these four; 731 led by ..." or which was put first, and how often
 * chance gives as much. */
char *fm_panel_rank_sentence (const FmRankResult *result, const char *const *names);
/** @first and @second name the samples (only needed for a preference). */
char *
fm_panel_choice_sentence (const FmChoiceResult *result, const char *first, const char *second);
char *fm_panel_liking_sentence (const FmAnovaResult *result, const char *const *names);
char *fm_panel_page_sentence (const FmPageResult *result);
char *fm_panel_jar_sentence (const FmJarResult *result, const char *attribute);
/** How far the tasters agree, in words; %NULL for incomplete designs and a single
 * taster. */
char *fm_panel_agreement_sentence (const FmRankResult *result);
/** Whether the serving position mattered: tests of the same ranks and scores by position (see
 * fm_panel_by_position()); either may be %NULL, for both the result is %NULL. Where both are given
 * each must be significant at 2.5 % (Bonferroni). @is_balanced: every sample was served equally
 * often in each position. */
char *fm_panel_position_sentence (const FmRankResult *rank,
                                  const FmAnovaResult *liking,
                                  gboolean is_balanced);
/** What the panel can and cannot show, some sentences; or of one kind of question only. */
char *fm_panel_outlook_text (const FmPanelOutlook *outlook);
char *fm_panel_outlook_rank_text (const FmPanelOutlook *outlook);
char *fm_panel_outlook_triangle_text (const FmPanelOutlook *outlook);
char *fm_panel_outlook_preference_text (const FmPanelOutlook *outlook);

/** "p = 0.042"; never rounded onto 0.05 from above. */
char *fm_panel_p_text (double p);
/** "1 chance in 24"; "less than 1 chance in a million". For small chances. */
char *fm_panel_odds_text (double p);
/** How often chance gives as much: "in 15 of 100 sessions", "in 42 of 1,000 sessions". */
char *fm_panel_chance_text (double p);
/** The method of a result and its source. */
char *fm_panel_rank_method (const FmRankResult *result);
char *fm_panel_page_method (const FmPageResult *result);
char *fm_panel_choice_method (FmChoiceKind kind);
char *fm_panel_liking_method (const FmAnovaResult *result);

G_END_DECLS
