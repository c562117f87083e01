/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-food-query.c - what a cook types becomes a query that cannot go wrong */
#include "store/fm-food-query.h"

#include <string.h>

static void
test_words (void)
{
  static const struct {
    const char *text;
    const char *words; /* joined by | */
  } cases[] = {
    { "", "" },
    { "   \t\n", "" },
    { "Chuck Short RIB", "chuck|short|rib" },
    { "80/20", "80x20" },
    { "80 20", "80x20" },
    { "80%/20%", "80x20" },
    { "ground beef 80:20 raw", "ground|beef|80x20|raw" },
    { "80/2", "80|2" },
    { "80 30", "80|30" },
    { "rib of the beef", "rib|beef" },
    { "of the", "of|the" },
    { "beef, \"chuck\"*", "beef|chuck" },
    { "NEAR(a b) AND OR NOT", "near|b|not" },
    { "name:beef^2 -fat", "name|beef|2|fat" },
    { "';DROP TABLE food;--", "drop|table|food" },
    { "jalapeño", "jalapeño" },
    { "\xff\xfe beef \xc3", "beef" },
    { "99999999999999999999 1", "99999999999999999999|1" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++) {
    g_auto (GStrv) words = fm_food_query_words (cases[i].text);
    g_autofree char *joined = g_strjoinv ("|", words);

    g_assert_cmpstr (joined, ==, cases[i].words);
  }
}

static void
test_words_bounded (void)
{
  g_autofree char *long_word = g_strnfill (100000, 'b');
  g_autoptr (GString) many = g_string_new (NULL);
  g_auto (GStrv) one = fm_food_query_words (long_word);
  g_auto (GStrv) some = NULL;

  g_assert_cmpuint (g_strv_length (one), ==, 1);
  g_assert_cmpuint (strlen (one[0]), <=, 64);
  for (int i = 0; i < 1000; i++)
    g_string_append (many, "beef ");
  some = fm_food_query_words (many->str);
  g_assert_cmpuint (g_strv_length (some), <=, 32);
}

static void
test_singular (void)
{
  static const char *const pairs[][2] = {
    { "ribs", "rib" },
    { "steaks", "steak" },
    { "patties", "patty" },
    { "berries", "berry" },
    { "potatoes", "potato" },
    { "radishes", "radish" },
    { "boxes", "box" },
    { "boneless", "boneless" },
    { "beef", "beef" },
    { "gas", "gas" },
    { "", "" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (pairs); i++) {
    g_autofree char *singular = fm_food_query_singular (pairs[i][0]);

    g_assert_cmpstr (singular, ==, pairs[i][1]);
  }
}

static void
test_build (void)
{
  const char *words[] = { "ground", "beef", NULL };
  const char *letter[] = { "b", NULL };
  g_autofree char *named = fm_food_query_build (words, FM_FOOD_MATCH_NAMED);
  g_autofree char *prefixes = fm_food_query_build (words, FM_FOOD_MATCH_PREFIXES);
  g_autofree char *unfinished = fm_food_query_build (letter, FM_FOOD_MATCH_WORDS);

  g_assert_cmpstr (named, ==, "extra : \"zqbeefground\"");
  g_assert_nonnull (strstr (prefixes, "\"beef\" *"));
  g_assert_null (unfinished);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/food-query/words", test_words);
  g_test_add_func ("/food-query/words-bounded", test_words_bounded);
  g_test_add_func ("/food-query/singular", test_singular);
  g_test_add_func ("/food-query/build", test_build);
  return g_test_run ();
}
