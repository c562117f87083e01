/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-food-query.h - from what a cook types to full-text queries that cannot go wrong
 *
 * Every word of the text becomes a quoted token of letters and digits, so that no punctuation can
 * reach the query language.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/** How loosely the words are matched, the strictest first. */
typedef enum {
  FM_FOOD_MATCH_NAMED,       /* the words name the food as a whole: "salt", "ground beef" */
  FM_FOOD_MATCH_WORDS,       /* every word stands in the food's text */
  FM_FOOD_MATCH_LAST_PREFIX, /* the same, and the last word may still be unfinished */
  FM_FOOD_MATCH_PREFIXES,    /* every word may be cut short */
  FM_N_FOOD_MATCHES,
} FmFoodMatch;

/**
 * Words of @text in lower case, filler words left out when others remain, two numbers that make a
 * lean point ("80/20", "80 20") as one word "80x20". Any bytes are legal. Returns: (transfer
 * full): possibly empty.
 */
GStrv fm_food_query_words (const char *text);
/**
 * Full-text query of one strictness; @words must not be empty. Returns: (transfer full)
 * (nullable): NULL when this strictness makes no sense, as whole words do for one or two letters.
 */
char *fm_food_query_build (const char *const *words, FmFoodMatch match);
/** Singular of an English food word by its ending: "ribs", "patties". Returns: (transfer full). */
char *fm_food_query_singular (const char *word);

G_END_DECLS
