/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-food-words.h - the dataset's words and the trade's: what a typed text is to be searched as
 *
 * The words of the trade in English, German, French, Spanish and Hindi stand in
 * data/sr28/trade-words.tsv with the source of each.
 */
#pragma once

#include <sqlite3.h>

#include <glib.h>

G_BEGIN_DECLS

typedef struct _FmFoodWords FmFoodWords;

/** Reads both tables of @db. Returns: (transfer full): NULL when they are missing. */
FmFoodWords *fm_food_words_new (sqlite3 *db);
void fm_food_words_free (FmFoodWords *self);
/**
 * What the typed @words may mean, the likeliest first: words of the trade as what the dataset calls
 * them, unknown words as the nearest known ones. What is known as typed stands last.
 * Returns: (transfer full) (element-type GStrv): at least one; owns its elements.
 */
GPtrArray *fm_food_words_read (const FmFoodWords *self, const char *const *words);
/**
 * Readings of the first name of the trade that begins with @words, for an unfinished text that
 * finds nothing. Returns: (transfer full) (element-type GStrv): possibly empty.
 */
GPtrArray *fm_food_words_guess (const FmFoodWords *self, const char *const *words);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmFoodWords, fm_food_words_free)

G_END_DECLS
