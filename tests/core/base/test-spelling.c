/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-spelling.c - a mistyped word stands for the nearest known one, and for none when it is far
 */
#include "core/base/fm-spelling.h"

static FmSpelling *
some_words (void)
{
  static const struct {
    const char *word;
    int weight;
  } words[] = {
    { "brisket", 40 }, { "biscuit", 1 },  { "chuck", 300 },     { "chunk", 2 }, { "steak", 90 },
    { "steam", 1 },    { "shoulder", 9 }, { "rinderbrust", 0 }, { "salt", 5 },  { "नमक", 0 },
  };
  FmSpelling *spelling = fm_spelling_new ();

  for (guint i = 0; i < G_N_ELEMENTS (words); i++)
    fm_spelling_add (spelling, words[i].word, words[i].weight);
  fm_spelling_seal (spelling);
  return spelling;
}

static void
test_distance (void)
{
  static const struct {
    const char *a, *b;
    guint distance;
  } cases[] = {
    { "", "", 0 },
    { "beef", "beef", 0 },
    { "", "beef", 4 },
    { "briskett", "brisket", 1 },
    { "brsket", "brisket", 1 },
    { "chcuk", "chuck", 1 },
    { "kitten", "sitting", 3 }, /* the textbook pair */
    { "ca", "abc", 3 },         /* a swapped pair is not parted again */
    { "côte", "cote", 1 },
    { "\xff", "", 1 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++) {
    g_assert_cmpuint (fm_spelling_distance (cases[i].a, cases[i].b), ==, cases[i].distance);
    g_assert_cmpuint (fm_spelling_distance (cases[i].b, cases[i].a), ==, cases[i].distance);
  }
}

static void
test_fold (void)
{
  static const char *const pairs[][2] = {
    { "Rückenspeck", "ruckenspeck" },
    { "BŒUF", "boeuf" },
    { "weiß", "weiss" },
    { "côte", "cote" },
    { "जीरा", "जीरा" },
    { "", "" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (pairs); i++) {
    g_autofree char *folded = fm_spelling_fold (pairs[i][0]);

    g_assert_cmpstr (folded, ==, pairs[i][1]);
  }
}

static void
test_nearest (void)
{
  static const char *const cases[][2] = {
    { "briskett", "brisket" },
    { "brsiket", "brisket" },
    { "chcuk", "chuck" },
    { "steack", "steak" },
    { "shuolde", "shoulder" }, /* mistyped and unfinished */
    { "rinderbrusst", "rinderbrust" },
    { "xylophone", NULL },
    { "slt", NULL }, /* too short to guess at */
    { "", NULL },
  };
  g_autoptr (FmSpelling) spelling = some_words ();

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    g_assert_cmpstr (fm_spelling_nearest (spelling, cases[i][0]), ==, cases[i][1]);
}

/* "chuk" is one letter from both; the greater weight decides. */
static void
test_weight_decides (void)
{
  g_autoptr (FmSpelling) spelling = some_words ();

  g_assert_cmpstr (fm_spelling_nearest (spelling, "chuk"), ==, "chuck");
  g_assert_cmpstr (fm_spelling_nearest (spelling, "stean"), ==, "steak");
}

static void
test_knows (void)
{
  g_autoptr (FmSpelling) spelling = some_words ();
  g_autoptr (FmSpelling) none = fm_spelling_new ();

  g_assert_true (fm_spelling_knows (spelling, "chuck"));
  g_assert_true (fm_spelling_knows (spelling, "ch"));
  g_assert_true (fm_spelling_knows (spelling, "नम"));
  g_assert_true (fm_spelling_knows (spelling, ""));
  g_assert_false (fm_spelling_knows (spelling, "chucks"));
  g_assert_false (fm_spelling_knows (spelling, "zz"));
  g_assert_false (fm_spelling_knows (none, ""));
  g_assert_null (fm_spelling_nearest (none, "chuck"));
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/spelling/distance", test_distance);
  g_test_add_func ("/spelling/fold", test_fold);
  g_test_add_func ("/spelling/nearest", test_nearest);
  g_test_add_func ("/spelling/weight-decides", test_weight_decides);
  g_test_add_func ("/spelling/knows", test_knows);
  return g_test_run ();
}
