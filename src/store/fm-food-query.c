/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-food-query.c - from what a cook types to full-text queries that cannot go wrong */
#include "store/fm-food-query.h"

#include <string.h>

/* More words than any food's name has would only cost time. */
#define MAX_WORDS 16
#define MAX_WORD_CHARS 40
/* Marks the token of a whole name; the same text stands in tools/compile-food-db. */
#define NAME_TOKEN_PREFIX "zq"

static const char *const filler_words[] = {
  "a", "an", "and", "for", "of", "or", "the", "with", NULL
};

static void
add_word (GPtrArray *words, GString *word)
{
  if (word->len > 0 && words->len < MAX_WORDS)
    g_ptr_array_add (words, g_strdup (word->str));
  g_string_truncate (word, 0);
}

static GPtrArray *
split_words (const char *text)
{
  g_autofree char *valid = g_utf8_make_valid (text, -1);
  g_autofree char *lower = g_utf8_strdown (valid, -1);
  g_autoptr (GPtrArray) words = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GString) word = g_string_new (NULL);

  for (const char *p = lower; *p != '\0'; p = g_utf8_next_char (p)) {
    gunichar c = g_utf8_get_char (p);

    if (!g_unichar_isalnum (c) && !g_unichar_ismark (c))
      add_word (words, word);
    else if (g_utf8_strlen (word->str, -1) < MAX_WORD_CHARS)
      g_string_append_unichar (word, c);
  }
  add_word (words, word);
  return g_steal_pointer (&words);
}

static gboolean
is_filler (const char *word)
{
  return g_strv_contains (filler_words, word);
}

static void
drop_filler (GPtrArray *words)
{
  guint n_meant = 0;

  for (guint i = 0; i < words->len; i++)
    n_meant += is_filler (g_ptr_array_index (words, i)) ? 0 : 1;
  if (n_meant == 0)
    return;
  for (guint i = words->len; i > 0; i--) {
    if (is_filler (g_ptr_array_index (words, i - 1)))
      g_ptr_array_remove_index (words, i - 1);
  }
}

/* -1 when @word is no whole number from 0 to 100. */
static int
percentage (const char *word)
{
  guint64 value;

  if (!g_ascii_string_to_unsigned (word, 10, 0, 100, &value, NULL))
    return -1;
  return (int)value;
}

static void
join_lean_points (GPtrArray *words)
{
  for (guint i = 0; i + 1 < words->len; i++) {
    int lean = percentage (g_ptr_array_index (words, i));
    int fat = percentage (g_ptr_array_index (words, i + 1));

    if (lean < 0 || fat < 0 || lean + fat != 100)
      continue;
    g_ptr_array_remove_range (words, i, 2);
    g_ptr_array_insert (words, (int)i, g_strdup_printf ("%dx%d", lean, fat));
  }
}

GStrv
fm_food_query_words (const char *text)
{
  g_autoptr (GPtrArray) words = NULL;

  g_return_val_if_fail (text != NULL, NULL);

  words = split_words (text);
  drop_filler (words);
  join_lean_points (words);
  g_ptr_array_add (words, NULL);
  return (GStrv)g_ptr_array_free (g_steal_pointer (&words), FALSE);
}

static gboolean
ends_in_sibilant_plural (const char *word)
{
  return g_str_has_suffix (word, "oes") || g_str_has_suffix (word, "ches") ||
         g_str_has_suffix (word, "shes") || g_str_has_suffix (word, "xes") ||
         g_str_has_suffix (word, "sses");
}

/* The same rule as in tools/compile-food-db. */
char *
fm_food_query_singular (const char *word)
{
  gsize length;

  g_return_val_if_fail (word != NULL, NULL);

  length = strlen (word);
  if (length > 4 && g_str_has_suffix (word, "ies"))
    return g_strdup_printf ("%.*sy", (int)(length - 3), word);
  if (length > 4 && ends_in_sibilant_plural (word))
    return g_strndup (word, length - 2);
  if (length > 3 && g_str_has_suffix (word, "s") && !g_str_has_suffix (word, "ss"))
    return g_strndup (word, length - 1);
  return g_strdup (word);
}

static void
append_token (GString *query, const char *token, const char *ending, gboolean prefix)
{
  g_string_append_printf (query, "\"%s%s\"%s", token, ending, prefix ? " *" : "");
}

/* A word in singular or plural: ("rib" OR "ribs" OR ...). */
static void
append_word (GString *query, const char *word, gboolean prefix)
{
  g_autofree char *singular = fm_food_query_singular (word);

  g_string_append_c (query, '(');
  append_token (query, word, "", prefix);
  if (g_strcmp0 (word, singular) != 0) {
    g_string_append (query, " OR ");
    append_token (query, singular, "", prefix);
  }
  g_string_append (query, " OR ");
  append_token (query, singular, "s", FALSE);
  g_string_append (query, " OR ");
  append_token (query, singular, "es", FALSE);
  if (strlen (singular) > 2 && g_str_has_suffix (singular, "y")) {
    singular[strlen (singular) - 1] = '\0';
    g_string_append (query, " OR ");
    append_token (query, singular, "ies", FALSE);
  }
  g_string_append_c (query, ')');
}

/* One or two letters are the beginning of a word, not an abbreviation of the dataset. */
static gboolean
ends_unfinished (const char *const *words)
{
  const char *last = words[g_strv_length ((char **)words) - 1];

  return strlen (last) < 3 && g_ascii_isalpha (last[0]);
}

static int
compare_words (gconstpointer a, gconstpointer b)
{
  return strcmp (*(const char *const *)a, *(const char *const *)b);
}

/* One token that stands for all words in any order, e.g. zqbeefground. */
static char *
build_named (const char *const *words)
{
  g_autoptr (GPtrArray) singulars = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GString) query = g_string_new ("extra : \"" NAME_TOKEN_PREFIX);

  for (guint i = 0; words[i] != NULL; i++)
    g_ptr_array_add (singulars, fm_food_query_singular (words[i]));
  g_ptr_array_sort (singulars, compare_words);
  for (guint i = 0; i < singulars->len; i++) {
    const char *word = g_ptr_array_index (singulars, i);

    if (i == 0 || strcmp (word, g_ptr_array_index (singulars, i - 1)) != 0)
      g_string_append (query, word);
  }
  g_string_append_c (query, '"');
  return g_string_free (g_steal_pointer (&query), FALSE);
}

char *
fm_food_query_build (const char *const *words, FmFoodMatch match)
{
  g_autoptr (GString) query = NULL;

  g_return_val_if_fail (words != NULL && words[0] != NULL, NULL);

  if (match == FM_FOOD_MATCH_NAMED)
    return build_named (words);
  if (match == FM_FOOD_MATCH_WORDS && ends_unfinished (words))
    return NULL;

  query = g_string_new (NULL);
  for (guint i = 0; words[i] != NULL; i++) {
    gboolean last = words[i + 1] == NULL;
    gboolean prefix =
        match == FM_FOOD_MATCH_PREFIXES || (match == FM_FOOD_MATCH_LAST_PREFIX && last);

    if (i > 0)
      g_string_append (query, " AND ");
    append_word (query, words[i], prefix);
  }
  return g_string_free (g_steal_pointer (&query), FALSE);
}
