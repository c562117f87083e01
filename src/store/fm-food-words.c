/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-food-words.c - the dataset's words and the trade's: what a typed text is to be searched as */
#include "store/fm-food-words.h"

#include <string.h>

#include "core/base/fm-spelling.h"
#include "store/fm-food-query.h"

/* More words than any name of the trade has would only cost time. */
#define MAX_PHRASE 5

struct _FmFoodWords {
  FmSpelling *known; /* words of the dataset and single words of the trade */
  GHashTable *trade; /* folded words, joined by spaces: what they find, parted by bars */
};

/* A stretch of the typed words that the trade has a name for. */
typedef struct {
  guint first;
  guint n_words;
  const char *finds; /* NULL when there is none */
} Phrase;

static gboolean
read_table (sqlite3 *db,
            const char *sql,
            void (*take) (FmFoodWords *, sqlite3_stmt *),
            FmFoodWords *self)
{
  sqlite3_stmt *stmt = NULL;
  int rc = sqlite3_prepare_v2 (db, sql, -1, &stmt, NULL);

  if (rc != SQLITE_OK)
    return FALSE;
  while ((rc = sqlite3_step (stmt)) == SQLITE_ROW)
    take (self, stmt);
  sqlite3_finalize (stmt);
  return rc == SQLITE_DONE;
}

static void
take_word (FmFoodWords *self, sqlite3_stmt *stmt)
{
  fm_spelling_add (self->known, (const char *)sqlite3_column_text (stmt, 0),
                   sqlite3_column_int (stmt, 1));
}

static void
take_trade_word (FmFoodWords *self, sqlite3_stmt *stmt)
{
  g_autofree char *words = g_strdup ((const char *)sqlite3_column_text (stmt, 0));

  if (g_utf8_strchr (words, -1, ' ') == NULL)
    fm_spelling_add (self->known, words, 0);
  g_hash_table_insert (self->trade, g_steal_pointer (&words),
                       g_strdup ((const char *)sqlite3_column_text (stmt, 1)));
}

static char *
join_words (const char *const *words, guint first, guint n_words)
{
  g_autoptr (GString) joined = g_string_new (NULL);

  for (guint i = first; i < first + n_words; i++)
    g_string_append_printf (joined, "%s%s", i > first ? " " : "", words[i]);
  return g_string_free (g_steal_pointer (&joined), FALSE);
}

/* The longest name of the trade among the words, the first of several. */
static Phrase
find_phrase (const FmFoodWords *self, const char *const *folded)
{
  const guint n_words = g_strv_length ((char **)folded);

  for (guint n = MIN (n_words, MAX_PHRASE); n > 0; n--) {
    for (guint first = 0; first + n <= n_words; first++) {
      g_autofree char *joined = join_words (folded, first, n);
      const char *finds = g_hash_table_lookup (self->trade, joined);

      if (finds != NULL)
        return (Phrase){ first, n, finds };
    }
  }
  return (Phrase){ 0, 0, NULL };
}

static gboolean
is_known (const FmFoodWords *self, const char *word)
{
  g_autofree char *singular = fm_food_query_singular (word);

  return g_ascii_isdigit (word[0]) || fm_spelling_knows (self->known, word) ||
         fm_spelling_knows (self->known, singular);
}

/* The words with each unknown one replaced by the nearest known one, folded. */
static GStrv
correct (const FmFoodWords *self, const char *const *words, gboolean *all_known)
{
  GStrv corrected = g_strdupv ((char **)words);

  *all_known = TRUE;
  for (guint i = 0; corrected[i] != NULL; i++) {
    g_autofree char *folded = fm_spelling_fold (corrected[i]);
    const char *nearest = NULL;

    if (!is_known (self, folded)) {
      *all_known = FALSE;
      nearest = fm_spelling_nearest (self->known, folded);
    }
    g_free (corrected[i]);
    corrected[i] = nearest != NULL ? g_strdup (nearest) : g_steal_pointer (&folded);
  }
  return corrected;
}

/* One reading for each thing that the trade's name stands for, the other words around it. */
static void
add_readings (GPtrArray *readings, const char *const *words, Phrase phrase)
{
  g_auto (GStrv) things = g_strsplit (phrase.finds, "|", -1);
  const guint after = phrase.first + phrase.n_words;

  for (guint i = 0; things[i] != NULL; i++) {
    g_autofree char *before = join_words (words, 0, phrase.first);
    g_autofree char *rest = join_words (words, after, g_strv_length ((char **)words) - after);
    g_autofree char *text = g_strdup_printf ("%s %s %s", before, things[i], rest);

    g_ptr_array_add (readings, fm_food_query_words (text));
  }
}

FmFoodWords *
fm_food_words_new (sqlite3 *db)
{
  g_autoptr (FmFoodWords) self = g_new0 (FmFoodWords, 1);

  g_return_val_if_fail (db != NULL, NULL);

  self->known = fm_spelling_new ();
  self->trade = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  if (!read_table (db, "SELECT word, weight FROM word", take_word, self) ||
      !read_table (db, "SELECT words, finds FROM trade_word", take_trade_word, self))
    return NULL;
  fm_spelling_seal (self->known);
  return g_steal_pointer (&self);
}

void
fm_food_words_free (FmFoodWords *self)
{
  if (self == NULL)
    return;
  fm_spelling_free (self->known);
  g_hash_table_unref (self->trade);
  g_free (self);
}

GPtrArray *
fm_food_words_read (const FmFoodWords *self, const char *const *words)
{
  g_autoptr (GPtrArray) readings = g_ptr_array_new_with_free_func ((GDestroyNotify)g_strfreev);
  g_auto (GStrv) corrected = NULL;
  gboolean all_known = TRUE;
  Phrase phrase;

  g_return_val_if_fail (self != NULL && words != NULL, NULL);

  corrected = correct (self, words, &all_known);
  phrase = find_phrase (self, (const char *const *)corrected);
  if (phrase.finds != NULL)
    add_readings (readings, (const char *const *)corrected, phrase);
  if (phrase.finds == NULL || all_known)
    g_ptr_array_add (readings, g_steal_pointer (&corrected));
  return g_steal_pointer (&readings);
}

GPtrArray *
fm_food_words_guess (const FmFoodWords *self, const char *const *words)
{
  g_autoptr (GPtrArray) readings = g_ptr_array_new_with_free_func ((GDestroyNotify)g_strfreev);
  g_autofree char *joined = NULL;
  g_autofree char *begin = NULL;
  const char *none[] = { NULL };
  const char *first = NULL;
  GHashTableIter iter;
  gpointer name;

  g_return_val_if_fail (self != NULL && words != NULL, NULL);

  joined = g_strjoinv (" ", (char **)words);
  begin = fm_spelling_fold (joined);
  g_hash_table_iter_init (&iter, self->trade);
  while (g_hash_table_iter_next (&iter, &name, NULL)) {
    if (g_str_has_prefix (name, begin) && (first == NULL || strcmp (name, first) < 0))
      first = name;
  }
  if (first != NULL)
    add_readings (readings, none, (Phrase){ 0, 0, g_hash_table_lookup (self->trade, first) });
  return g_steal_pointer (&readings);
}
