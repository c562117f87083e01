/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-tasting-story.c - opened tastings told in lines, and joined into one liking */
#include <math.h>

#include "core/tasting/fm-tasting-story.h"

static FmTastingOutcome *
outcome_new (double liking, guint n_tasters, double rank_sum)
{
  FmTastingOutcome *outcome = g_new0 (FmTastingOutcome, 1);

  outcome->tasting_title = g_strdup ("Lunch panel");
  outcome->n_tasters = n_tasters;
  outcome->liking_mean = liking;
  outcome->liking_low = outcome->liking_high = NAN;
  outcome->rank_sum = rank_sum;
  outcome->sentence = g_strdup ("first of four, 3 tasters");
  return outcome;
}

static void
test_line (void)
{
  g_autoptr (FmTastingOutcome) outcome = outcome_new (7.1, 3, 4.0);
  g_autofree char *undated = fm_tasting_story_line (outcome);
  g_autofree char *half = NULL;
  g_autofree char *dated = NULL;
  g_autofree char *untitled = NULL;

  g_assert_cmpstr (undated, ==, "Tasted, Lunch panel: first of four, 3 tasters. Rank sum 4.");
  outcome->rank_sum = 4.5;
  half = fm_tasting_story_line (outcome);
  g_assert_true (g_str_has_suffix (half, "Rank sum 4.5."));
  outcome->rank_sum = NAN;
  outcome->held_at = 1794441600; /* 12 November 2026 */
  dated = fm_tasting_story_line (outcome);
  g_assert_true (g_str_has_prefix (dated, "Tasted 11/1"));
  g_assert_true (g_str_has_suffix (dated, "Lunch panel: first of four, 3 tasters."));
  outcome->held_at = 0;
  outcome->tasting_title[0] = '\0';
  untitled = fm_tasting_story_line (outcome);
  g_assert_cmpstr (untitled, ==, "Tasted: first of four, 3 tasters.");
}

/* By hand: (3 * 7 + 5 * 6.6) / 8 = 6.75; the ranked one was not asked for its liking. */
static void
test_likings_weigh_by_tasters (void)
{
  g_autoptr (GPtrArray) outcomes =
      g_ptr_array_new_with_free_func ((GDestroyNotify)fm_tasting_outcome_free);
  guint n_tasters = 9;

  g_assert_true (isnan (fm_tasting_story_liking (outcomes, &n_tasters)));
  g_assert_cmpuint (n_tasters, ==, 0);
  g_ptr_array_add (outcomes, outcome_new (NAN, 12, 20.0));
  g_assert_true (isnan (fm_tasting_story_liking (outcomes, &n_tasters)));
  g_assert_cmpuint (n_tasters, ==, 0);
  g_ptr_array_add (outcomes, outcome_new (7.0, 3, NAN));
  g_ptr_array_add (outcomes, outcome_new (6.6, 5, 9.0));
  g_assert_cmpfloat_with_epsilon (fm_tasting_story_liking (outcomes, &n_tasters), 6.75, 1e-12);
  g_assert_cmpuint (n_tasters, ==, 8);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/tasting-story/line", test_line);
  g_test_add_func ("/tasting-story/likings-weigh-by-tasters", test_likings_weigh_by_tasters);
  return g_test_run ();
}
