/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-spelling.c - the known word that a mistyped one stands for */
#include "core/base/fm-spelling.h"

#include <string.h>

/* No word of the trade is longer; what is typed beyond is not compared. */
#define MAX_LETTERS 40

typedef struct {
  gunichar letters[MAX_LETTERS];
  guint n_letters;
} Letters;

typedef struct {
  char *text;
  Letters letters;
  int weight;
} Word;

struct _FmSpelling {
  GPtrArray *words; /* Word, sorted by their texts */
};

/* The last row of the comparison of a typed word with a known one. */
typedef struct {
  guint whole; /* distance to the whole word */
  guint begun; /* least distance to a beginning of it */
} Distance;

static void
word_free (gpointer data)
{
  Word *word = data;

  g_free (word->text);
  g_free (word);
}

static Letters
read_letters (const char *text)
{
  Letters letters = { .n_letters = 0 };

  for (const char *p = text; *p != '\0' && letters.n_letters < MAX_LETTERS;
       p = g_utf8_next_char (p))
    letters.letters[letters.n_letters++] = g_utf8_get_char (p);
  return letters;
}

static guint
least_of_row (const guint *row, guint n)
{
  guint least = row[0];

  for (guint j = 1; j <= n; j++)
    least = MIN (least, row[j]);
  return least;
}

/* Row @i of the comparison out of the two rows above it. */
static void
next_row (const Letters *a,
          const Letters *b,
          guint i,
          const guint *before,
          const guint *above,
          guint *row)
{
  row[0] = i;
  for (guint j = 1; j <= b->n_letters; j++) {
    const gboolean same = a->letters[i - 1] == b->letters[j - 1];

    row[j] = MIN (MIN (above[j], row[j - 1]) + 1, above[j - 1] + (same ? 0 : 1));
    if (i > 1 && j > 1 && a->letters[i - 1] == b->letters[j - 2] &&
        a->letters[i - 2] == b->letters[j - 1])
      row[j] = MIN (row[j], before[j - 2] + 1);
  }
}

/* Stops when nothing within @limit can come any more. */
static Distance
measure (const Letters *a, const Letters *b, guint limit)
{
  guint rows[3][MAX_LETTERS + 1];

  for (guint j = 0; j <= b->n_letters; j++)
    rows[0][j] = j;
  for (guint i = 1; i <= a->n_letters; i++) {
    next_row (a, b, i, rows[(i + 1) % 3], rows[(i - 1) % 3], rows[i % 3]);
    if (least_of_row (rows[i % 3], b->n_letters) > limit)
      return (Distance){ limit + 1, limit + 1 };
  }
  return (Distance){ rows[a->n_letters % 3][b->n_letters],
                     least_of_row (rows[a->n_letters % 3], b->n_letters) };
}

static guint
forgiven (guint n_letters)
{
  if (n_letters < 4)
    return 0;
  return n_letters < 6 ? 1 : 2;
}

/* Who errs hardly errs in the first letter, and a whole word is nearer than one cut short. */
static guint
badness (const Letters *typed, const Word *word, guint limit)
{
  const Distance distance = measure (typed, &word->letters, limit);
  const guint first = typed->letters[0] == word->letters.letters[0] ? 0 : 2;

  if (distance.begun > limit)
    return G_MAXUINT;
  return 4 * distance.begun + first + (distance.whole > distance.begun ? 1 : 0);
}

static int
compare_words (gconstpointer a, gconstpointer b)
{
  const Word *const *first = a;
  const Word *const *second = b;

  return strcmp ((*first)->text, (*second)->text);
}

char *
fm_spelling_fold (const char *text)
{
  static const char *const pairs[][2] = { { "ß", "ss" }, { "œ", "oe" }, { "æ", "ae" } };
  g_autofree char *valid = NULL;
  g_autofree char *lower = NULL;
  g_autofree char *apart = NULL;
  g_autoptr (GString) folded = NULL;

  g_return_val_if_fail (text != NULL, NULL);

  valid = g_utf8_make_valid (text, -1);
  lower = g_utf8_strdown (valid, -1);
  apart = g_utf8_normalize (lower, -1, G_NORMALIZE_NFD);
  folded = g_string_new (NULL);
  for (const char *p = apart; *p != '\0'; p = g_utf8_next_char (p)) {
    const gunichar c = g_utf8_get_char (p);

    if (c < 0x300 || c > 0x36f)
      g_string_append_unichar (folded, c);
  }
  for (guint i = 0; i < G_N_ELEMENTS (pairs); i++)
    g_string_replace (folded, pairs[i][0], pairs[i][1], 0);
  return g_utf8_normalize (folded->str, -1, G_NORMALIZE_NFC);
}

guint
fm_spelling_distance (const char *a, const char *b)
{
  g_autofree char *valid_a = NULL;
  g_autofree char *valid_b = NULL;

  g_return_val_if_fail (a != NULL && b != NULL, G_MAXUINT);

  valid_a = g_utf8_make_valid (a, -1);
  valid_b = g_utf8_make_valid (b, -1);
  const Letters first = read_letters (valid_a);
  const Letters second = read_letters (valid_b);
  return measure (&first, &second, MAX_LETTERS).whole;
}

FmSpelling *
fm_spelling_new (void)
{
  FmSpelling *self = g_new0 (FmSpelling, 1);

  self->words = g_ptr_array_new_with_free_func (word_free);
  return self;
}

void
fm_spelling_free (FmSpelling *self)
{
  if (self == NULL)
    return;
  g_ptr_array_unref (self->words);
  g_free (self);
}

void
fm_spelling_add (FmSpelling *self, const char *word, int weight)
{
  Word *added;

  g_return_if_fail (self != NULL && word != NULL);

  added = g_new0 (Word, 1);
  added->text = g_utf8_make_valid (word, -1);
  added->letters = read_letters (added->text);
  added->weight = weight;
  g_ptr_array_add (self->words, added);
}

void
fm_spelling_seal (FmSpelling *self)
{
  g_return_if_fail (self != NULL);
  g_ptr_array_sort (self->words, compare_words);
}

gboolean
fm_spelling_knows (const FmSpelling *self, const char *begin)
{
  guint low = 0;
  guint high;

  g_return_val_if_fail (self != NULL && begin != NULL, FALSE);

  high = self->words->len;
  while (low < high) {
    const guint middle = low + (high - low) / 2;
    const Word *word = g_ptr_array_index (self->words, middle);

    if (strcmp (word->text, begin) < 0)
      low = middle + 1;
    else
      high = middle;
  }
  return low < self->words->len &&
         g_str_has_prefix (((const Word *)g_ptr_array_index (self->words, low))->text, begin);
}

const char *
fm_spelling_nearest (const FmSpelling *self, const char *typed)
{
  const Word *best = NULL;
  guint least = G_MAXUINT;

  g_return_val_if_fail (self != NULL && typed != NULL, NULL);

  g_autofree char *valid = g_utf8_make_valid (typed, -1);
  const Letters letters = read_letters (valid);
  const guint limit = forgiven (letters.n_letters);
  if (limit == 0)
    return NULL;
  for (guint i = 0; i < self->words->len; i++) {
    const Word *word = g_ptr_array_index (self->words, i);
    guint worse;

    if (word->letters.n_letters + limit < letters.n_letters)
      continue;
    worse = badness (&letters, word, limit);
    if (worse < least || (worse == least && worse != G_MAXUINT && word->weight > best->weight)) {
      best = word;
      least = worse;
    }
  }
  return best != NULL ? best->text : NULL;
}
