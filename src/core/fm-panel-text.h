/* fm-panel-text.h - results as one plain sentence, and where each method comes from
 *
 * @names are what the caller wants shown: codes while identities are sealed, names after.
 * All strings are translated, without markup, (transfer full).
 */
#pragma once

#include "core/fm-anova.h"
#include "core/fm-panel.h"
#include "core/fm-rank.h"
#include "core/fm-stat-choice.h"

G_BEGIN_DECLS

/** "Three tasters cannot separate these four; 731 led by ..." or which was put first. */
char *fm_panel_rank_sentence (const FmRankResult *result, const char *const *names);
/** @first and @second name the samples (only needed for a preference). */
char *
fm_panel_choice_sentence (const FmChoiceResult *result, const char *first, const char *second);
char *fm_panel_liking_sentence (const FmAnovaResult *result, const char *const *names);
char *fm_panel_page_sentence (const FmPageResult *result);
char *fm_panel_jar_sentence (const FmJarResult *result, const char *attribute);
/** What the panel can and cannot show, some sentences. */
char *fm_panel_outlook_text (const FmPanelOutlook *outlook);

/** "p = 0.042" */
char *fm_panel_p_text (double p);
/** The method of a result and its source. */
char *fm_panel_rank_method (const FmRankResult *result);
char *fm_panel_page_method (const FmPageResult *result);
char *fm_panel_choice_method (FmChoiceKind kind);
char *fm_panel_liking_method (const FmAnovaResult *result);

G_END_DECLS
