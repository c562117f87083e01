/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-story.h - opened tastings in the story of a version: one line each, and one liking
 *
 * Rank sums belong to their panel: they stand in its own line and are never put beside those of
 * another. Likings on the 9-point scale can be joined.
 */
#pragma once

#include "core/tasting/fm-tasting-outcome.h"

G_BEGIN_DECLS

/** "Tasted 12/11/26, Lunch panel: first of four, 3 tasters; liked 7.1 of 9 (6.2 to 8.0). Rank sum
 * 4." (transfer full) */
char *fm_tasting_story_line (const FmTastingOutcome *outcome);
/**
 * Mean of the adjusted mean likings in @outcomes (FmTastingOutcome), weighted by the number of
 * tasters; NaN when none asked for liking.
 * @n_tasters: (out): whose liking that is; one who came to two tastings counts twice.
 */
double fm_tasting_story_liking (const GPtrArray *outcomes, guint *n_tasters);

G_END_DECLS
