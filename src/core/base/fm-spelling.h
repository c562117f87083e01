/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-spelling.h - the known word that a mistyped one stands for
 *
 * The distance of two words is that of optimal string alignment: the least number of letters put
 * in, left out, changed or swapped with their neighbour (Damerau, F. J.: A technique for computer
 * detection and correction of spelling errors. Commun. ACM 7(3):171-176, 1964; each pair is swapped
 * at most once). How many are forgiven is common practice, no source: none under 4 letters, one
 * under 6, two from there.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef struct _FmSpelling FmSpelling;

/** @text in lower case without accents, ß as ss, œ as oe, æ as ae. Returns: (transfer full). */
char *fm_spelling_fold (const char *text);
/** Distance of two texts, in letters; any bytes are legal. */
guint fm_spelling_distance (const char *a, const char *b);

FmSpelling *fm_spelling_new (void);
void fm_spelling_free (FmSpelling *self);
/** Adds a folded word; of two that are equally near the one of the greater @weight is meant. */
void fm_spelling_add (FmSpelling *self, const char *word, int weight);
/** Sorts the words: call it once, after the last one. */
void fm_spelling_seal (FmSpelling *self);
/** TRUE when a word begins with the folded @begin. */
gboolean fm_spelling_knows (const FmSpelling *self, const char *begin);
/**
 * The word that the folded @typed stands for, whole or unfinished. Returns: (nullable): owned by
 * @self; NULL when none is near enough.
 */
const char *fm_spelling_nearest (const FmSpelling *self, const char *typed);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmSpelling, fm_spelling_free)

G_END_DECLS
