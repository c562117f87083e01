/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-tasting-reading.c - what a tasting says, sealed and opened */
#include "core/tasting/fm-tasting-derivation.h"
#include "core/tasting/fm-tasting-reading.h"

#include <string.h>

#include "core/base/fm-error.h"
#include "core/tasting/fm-tasting-outcome.h"
#include "tasting.h"

static void
rank_all (FmTasting *self, const double *place)
{
  for (guint t = 0; t < self->tasters->len; t++)
    for (guint s = 0; s < self->samples->len; s++)
      tasting_mark (self, t, s, FM_TASTING_RANK, place[t * self->samples->len + s]);
  tasting_all_in (self);
}

static FmTastingReading *
read_it (const FmTasting *self)
{
  g_autoptr (GError) error = NULL;
  FmTastingReading *reading = fm_tasting_read (self, NULL, &error);
  g_assert_no_error (error);
  return reading;
}

/* All that a reading says, in one text */
static char *
all_said (const FmTastingReading *self)
{
  GString *text = g_string_new (self->headline);
  for (guint i = 0; i < self->lines->len; i++)
    g_string_append_printf (text, "\n%s", (const char *)self->lines->pdata[i]);
  for (guint i = 0; i < self->n_samples; i++)
    g_string_append_printf (text, "\n%s", self->labels[i]);
  for (guint i = 0; i < self->jar->len; i++)
    g_string_append_printf (text, "\n%s", ((const FmTastingJar *)self->jar->pdata[i])->sentence);
  for (guint i = 0; i < 2; i++)
    g_string_append_printf (text, "\n%s %s", self->preference_names[i], self->triangle_names[i]);
  return g_string_free (text, FALSE);
}

static void
test_undecided (void)
{
  const double place[] = { 1, 2, 3, 4, 2, 1, 4, 3, 1, 4, 2, 3 };
  g_autoptr (FmTasting) self = tasting_sealed (4, 3, FM_TASTING_RANK, 6);
  rank_all (self, place);
  g_autofree char *start = g_strdup_printf ("Three tasters cannot separate these four; %u led by 3",
                                            fm_tasting_sample_code (self, 0));
  g_autoptr (FmTastingReading) sealed = read_it (self);
  g_assert_true (g_str_has_prefix (sealed->headline, start));
  g_assert_true (isnan (sealed->rank->lsd) && isnan (sealed->lsd_conover));

  tasting_open (self);
  g_autoptr (FmTastingReading) opened = read_it (self);
  g_assert_true (
      g_str_has_prefix (opened->headline, "Three tasters cannot separate these four; Draft 1 led"));
  g_assert_cmpfloat (opened->rank->p, ==, sealed->rank->p);
  g_assert_nonnull (strstr (opened->headline, "chance gives orders this far apart in "));
  g_assert_null (strstr (opened->headline, "p ="));
}

/* Rank order and liking that name different samples are brought together in one sentence. */
static void
test_reconciled (void)
{
  const double place[] = { 1, 2, 3, 1, 3, 2, 1, 2, 3, 1, 2, 3 };
  const double liking[] = { 6, 9, 5, 6, 5, 5, 6, 9, 5, 6, 8, 5 };
  g_autoptr (FmTasting) self = tasting_sealed (3, 4, FM_TASTING_RANK | FM_TASTING_LIKING, 6);
  rank_all (self, place);
  for (guint t = 0; t < 4; t++)
    for (guint s = 0; s < 3; s++)
      tasting_mark (self, t, s, FM_TASTING_LIKING, liking[t * 3 + s]);
  tasting_open (self);
  g_autoptr (FmTastingReading) reading = read_it (self);
  g_autofree char *said = all_said (reading);
  g_assert_nonnull (strstr (said, "Rank order puts Draft 1 first and liking Draft 2"));
  g_assert_null (strstr (said, "p ="));

  for (guint t = 0; t < 4; t++)
    for (guint s = 0; s < 3; s++)
      tasting_mark (self, t, s, FM_TASTING_LIKING, 9 - place[t * 3 + s]);
  g_autoptr (FmTastingReading) unblind = read_it (self);
  g_autofree char *agreed = all_said (unblind);
  g_assert_null (strstr (agreed, "Rank order puts"));
  /* those scores were typed after opening */
  g_assert_true (g_str_has_prefix (unblind->headline,
                                   "Twelve entries on the sheets were made after the codes were "
                                   "opened, so they are not blind."));
}

/* Why it was opened without all sheets stays with the result. */
static void
test_reasons_are_told (void)
{
  const double place[] = { 1, 2, 2, 1 };
  g_autoptr (FmTasting) self = tasting_sealed (2, 2, FM_TASTING_RANK, 6);
  rank_all (self, place);
  fm_tasting_set_sheet (self, 1, 1, FM_SHEET_MISSING);
  fm_tasting_record (self, 7, FM_TASTING_EVENT_UNCHECKED, "thermometer broke");
  fm_tasting_record (self, 7, FM_TASTING_EVENT_KEY_SHEET, NULL);
  fm_tasting_record (self, 7, FM_TASTING_EVENT_KEY_SHEET, "Dot");
  fm_tasting_record (self, 8, FM_TASTING_EVENT_COPIED, NULL);
  g_assert_true (fm_tasting_open (self, 9, "one fell ill", NULL));
  g_autoptr (FmTastingReading) reading = read_it (self);
  g_autofree char *said = all_said (reading);
  g_assert_nonnull (strstr (said, "one fell ill"));
  g_assert_nonnull (strstr (said, "thermometer broke"));
  g_assert_nonnull (strstr (said, "Dot saw the key before the codes were opened"));
  g_assert_nonnull (strstr (said, "This is a copy of the sealed tasting"));
}

/* Three sheets of four that agree: each order is one of 24, so p = 1 / 24^2. */
static void
test_derivation (void)
{
  const double place[] = { 4, 1, 2, 3, 4, 1, 2, 3, 4, 1, 2, 3 };
  g_autoptr (FmTasting) self = tasting_sealed (4, 3, FM_TASTING_RANK, 6);
  rank_all (self, place);
  g_autoptr (FmTastingReading) sealed = read_it (self);
  g_autofree char *blind = fm_tasting_derivation (sealed);
  g_assert_null (strstr (blind, "Draft"));
  tasting_open (self);
  g_autoptr (FmTastingReading) reading = read_it (self);
  g_autofree char *text = fm_tasting_derivation (reading);
  g_assert_true (g_str_has_prefix (text, reading->headline));
  g_assert_nonnull (strstr (text, "Sheets counted: 3 ("));
  g_assert_nonnull (strstr (text, "Draft 1: rank sum 12.0 of 3 sheets; 7.5 if all were alike"));
  g_assert_nonnull (strstr (text, "Friedman's statistic: 9.0000"));
  g_assert_nonnull (strstr (text, "p = 0.002: if all were alike"));
  g_assert_nonnull (strstr (text, "counted over all orders"));
}

static void
test_agreed (void)
{
  const double place[] = { 4, 1, 2, 3, 4, 1, 2, 3, 4, 1, 2, 3 };
  g_autoptr (FmTasting) self = tasting_sealed (4, 3, FM_TASTING_RANK, 6);
  rank_all (self, place);
  tasting_open (self);
  g_autoptr (FmTastingReading) reading = read_it (self);

  g_assert_cmpfloat_with_epsilon (reading->rank->p, 1.0 / 576, 1e-12);
  g_assert_cmpfloat (reading->rank->lsd, >, 0);
  g_assert_nonnull (strstr (reading->headline, "Draft 2 came first, clearly ahead of Draft 1"));
  g_assert_true (g_str_has_prefix (reading->agreement_sentence, "The tasters agree fully"));
  g_assert_false (reading->has_page);
}

/* No name, no experiment and no order that follows the plan gets into a sealed reading */
static void
test_sealed_tells_codes_only (void)
{
  for (guint64 seed = 1; seed <= 20; seed++) {
    g_autoptr (FmTasting) self =
        tasting_sealed (5, 4,
                        FM_TASTING_RANK | FM_TASTING_LIKING | FM_TASTING_JAR |
                            FM_TASTING_PREFERENCE | FM_TASTING_TRIANGLE,
                        seed);
    for (guint t = 0; t < 4; t++)
      for (guint s = 0; s < 5; s++) {
        tasting_mark (self, t, s, FM_TASTING_RANK, 1 + (s + t / 2) % 5);
        tasting_mark (self, t, s, FM_TASTING_LIKING, 3 + (s * 2 + t) % 6);
        tasting_mark (self, t, s, FM_TASTING_JAR, 1 + (s + t) % 5);
      }
    for (guint t = 0; t < 4; t++) {
      tasting_mark (self, t, t % 2, FM_TASTING_PREFERENCE, 1);
      g_assert_true (fm_tasting_set_mark (self, 1, t, tasting_triangle_code (self, t, t > 0),
                                          FM_TASTING_TRIANGLE, 0, 1, NULL));
    }
    tasting_all_in (self);
    g_autoptr (FmTastingReading) reading = read_it (self);
    g_autofree char *said = all_said (reading);
    g_assert_null (strstr (said, "Draft"));
    for (guint i = 1; i < reading->n_samples; i++)
      g_assert_cmpuint (reading->code[i - 1], <, reading->code[i]);
    g_assert_cmpint (strcmp (reading->preference_names[0], reading->preference_names[1]), <, 0);
    g_assert_cmpstr (reading->triangle_names[0], ==, reading->triangle_names[1]);
    g_assert_cmpuint (reading->jar->len, ==, 5);

    tasting_open (self);
    g_autoptr (FmTastingReading) opened = read_it (self);
    for (guint i = 0; i < opened->n_samples; i++) {
      g_assert_cmpuint (opened->sample[i], ==, i);
      for (guint j = 0; j < reading->n_samples; j++)
        if (reading->sample[j] == i)
          g_assert_cmpfloat (reading->rank->rank_sum[j], ==, opened->rank->rank_sum[i]);
    }
    g_assert_cmpfloat_with_epsilon (reading->anova->p_sample, opened->anova->p_sample, 1e-9);
  }
}

static void
test_page_only_if_written (void)
{
  const double place[] = { 1, 2, 3, 1, 2, 3, 1, 2, 3 };
  const guint expected[] = { 1, 2, 3 };
  g_autoptr (FmTasting) self = tasting_planned (3, 3, FM_TASTING_RANK, 6);
  self->expected_place = g_array_new (FALSE, FALSE, sizeof (guint));
  g_array_append_vals (self->expected_place, expected, 3);
  g_assert_true (fm_tasting_arrange (self, 7, 1, NULL));
  rank_all (self, place);

  g_autoptr (FmTastingReading) sealed = read_it (self);
  g_assert_false (sealed->has_page);
  g_assert_nonnull (strstr (sealed->page_problem, "after opening"));
  tasting_open (self);
  g_autoptr (FmTastingReading) opened = read_it (self);
  g_assert_true (opened->has_page);
  g_assert_cmpfloat_with_epsilon (opened->page.p, 1.0 / 216, 1e-12);
}

static void
test_missing_and_dropped (void)
{
  const double place[] = { 1, 2, 3, 1, 3, 2, 3, 2, 1, 1, 2, 3 };
  g_autoptr (FmTasting) self = tasting_sealed (3, 4, FM_TASTING_RANK, 6);
  g_autoptr (GError) none = NULL;
  g_assert_null (fm_tasting_read (self, NULL, &none));
  g_assert_error (none, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY);

  rank_all (self, place);
  fm_tasting_set_sheet (self, 1, 2, FM_SHEET_MISSING);
  g_autoptr (FmTastingReading) missing = read_it (self);
  g_assert_cmpuint (missing->n_tasters, ==, 3);
  g_assert_cmpstr (missing->tasters[2], ==, "T4");
  g_assert_cmpint (missing->rank->design, ==, FM_RANK_FRIEDMAN);
  g_autofree char *said = all_said (missing);
  g_assert_nonnull (strstr (said, "1 sheet is missing"));

  tasting_mark (self, 2, 0, FM_TASTING_RANK, NAN);
  fm_tasting_set_sheet (self, 1, 2, FM_SHEET_DROPPED_OUT);
  g_autoptr (FmTastingReading) dropped = read_it (self);
  g_assert_cmpuint (dropped->n_tasters, ==, 4);
  g_assert_cmpint (dropped->rank->design, ==, FM_RANK_INCOMPLETE);
  g_assert_null (dropped->agreement_sentence);
  g_autofree char *dropped_said = all_said (dropped);
  g_assert_nonnull (strstr (dropped_said, "1 taster dropped out"));

  fm_tasting_set_sheet (self, 1, 2, FM_SHEET_WAITED_FOR);
  g_autoptr (FmTastingReading) waited = read_it (self);
  g_assert_cmpuint (waited->n_tasters, ==, 3);
  tasting_open (self);
  g_autoptr (FmTastingReading) early = read_it (self);
  g_autofree char *early_said = all_said (early);
  g_assert_nonnull (strstr (early_said, "opened before all sheets were in"));
}

/* A tie shares a number: 1, 1, 3 says what 1.5, 1.5, 3 says */
static void
test_ties (void)
{
  const double shared[] = { 1, 1, 3, 2, 1, 2 }, middle[] = { 1.5, 1.5, 3, 2.5, 1, 2.5 };
  g_autoptr (FmTasting) a = tasting_sealed (3, 2, FM_TASTING_RANK, 6);
  g_autoptr (FmTasting) b = tasting_sealed (3, 2, FM_TASTING_RANK, 6);
  rank_all (a, shared);
  rank_all (b, middle);
  g_autoptr (FmTastingReading) read_a = read_it (a);
  g_autoptr (FmTastingReading) read_b = read_it (b);
  g_assert_true (read_a->rank->has_ties);
  g_assert_cmpfloat (read_a->rank->p, ==, read_b->rank->p);
  g_assert_cmpfloat (read_a->rank->rank_sum[0], ==, read_b->rank->rank_sum[0]);
}

/* Binomial: 6 of 8 right with chance 1/3 is p = .0197 (ISO 4120 asks for 6), 7 of 8 of a pair
 * 2 x 9 / 256 */
static void
test_pair_and_triangle (void)
{
  g_autoptr (FmTasting) self =
      tasting_sealed (2, 8, FM_TASTING_PREFERENCE | FM_TASTING_TRIANGLE, 12);
  for (guint t = 0; t < 8; t++) {
    tasting_mark (self, t, t < 7 ? 1 : 0, FM_TASTING_PREFERENCE, 1);
    g_assert_true (fm_tasting_set_mark (self, 1, t, tasting_triangle_code (self, t, t < 6),
                                        FM_TASTING_TRIANGLE, 0, 1, NULL));
  }
  tasting_all_in (self);
  tasting_open (self);
  g_autoptr (FmTastingReading) reading = read_it (self);
  g_assert_true (reading->has_preference && reading->has_triangle);
  g_assert_cmpuint (reading->preference.n_right, ==, 1);
  g_assert_cmpfloat_with_epsilon (reading->preference.p, 18.0 / 256, 1e-12);
  g_assert_cmpuint (reading->triangle.n_right, ==, 6);
  g_assert_cmpfloat_with_epsilon (reading->triangle.p, 129.0 / 6561, 1e-12);
  g_assert_null (reading->ranks);
  g_assert_null (reading->position_sentence);
  g_assert_nonnull (strstr (reading->headline, "Draft 2"));
}

static void
check_agreement (const double *place, guint n, const char *start)
{
  g_autoptr (FmTasting) self = tasting_sealed (3, n, FM_TASTING_RANK, 6);
  rank_all (self, place);
  g_autoptr (FmTastingReading) reading = read_it (self);
  g_assert_true (g_str_has_prefix (reading->agreement_sentence, start));
}

static void
test_agreement (void)
{
  const double same[] = { 1, 2, 3, 1, 2, 3 }, reversed[] = { 1, 2, 3, 3, 2, 1 };
  const double half[] = { 1, 2, 3, 2, 1, 3 };
  /* every order once: the tasters as a whole say nothing, which is no quarrel */
  const double all[] = { 1, 2, 3, 1, 3, 2, 2, 1, 3, 2, 3, 1, 3, 1, 2, 3, 2, 1 };
  check_agreement (same, 2, "The tasters agree fully");
  check_agreement (half, 2, "The tasters agree in part");
  check_agreement (reversed, 2, "The tasters pull in different directions");
  check_agreement (all, 6, "The tasters hardly agree");
}

/* What is served first is put first by all: position tells, samples do not */
static void
test_position (void)
{
  g_autoptr (FmTasting) self = tasting_sealed (4, 8, FM_TASTING_RANK | FM_TASTING_LIKING, 3);
  for (guint i = 0; i < self->cups->len; i++) {
    const FmTastingCup *cup = &g_array_index (self->cups, FmTastingCup, i);
    tasting_mark (self, cup->taster, cup->sample, FM_TASTING_RANK, cup->position + 1);
    tasting_mark (self, cup->taster, cup->sample, FM_TASTING_LIKING,
                  8 - cup->position - (cup->taster + cup->position) % 2);
  }
  tasting_all_in (self);
  g_autoptr (FmTastingReading) reading = read_it (self);
  g_assert_cmpuint (reading->n_positions, ==, 4);
  g_assert_true (reading->positions_balanced);
  g_assert_cmpfloat (reading->rank->p, ==, 1);
  g_assert_cmpfloat (reading->position_rank->p, <, 0.001);
  g_assert_cmpuint (reading->position_rank->leader, ==, 0);
  g_assert_cmpfloat (reading->position_mean_liking[0], ==, 7.5);
  g_assert_nonnull (strstr (reading->position_sentence, "what was served first did best"));
  g_assert_nonnull (strstr (reading->position_sentence, "spread evenly"));
}

static void
test_problems_are_told (void)
{
  g_autoptr (FmTasting) self = tasting_sealed (3, 1, FM_TASTING_RANK | FM_TASTING_LIKING, 3);
  tasting_mark (self, 0, 0, FM_TASTING_RANK, 1);
  fm_tasting_set_sheet (self, 1, 0, FM_SHEET_IN);
  g_autoptr (FmTastingReading) reading = read_it (self);
  g_assert_null (reading->rank);
  g_assert_null (reading->anova);
  g_assert_nonnull (reading->rank_problem);
  g_assert_nonnull (reading->anova_problem);
  g_assert_cmpstr (reading->headline, ==, "One sheet counts; there is nothing on it to be tested.");
}

static gboolean
stop_now (gpointer data)
{
  return TRUE;
}

static void
test_stop (void)
{
  const double place[] = { 1, 2, 2, 1 };
  const FmStop stop = { stop_now, NULL };
  g_autoptr (GError) error = NULL;
  g_autoptr (FmTasting) self = tasting_sealed (2, 2, FM_TASTING_RANK, 3);
  rank_all (self, place);
  g_assert_null (fm_tasting_read (self, &stop, &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_STOPPED);
}

/* Looking after every sheet: Armitage, McPherson and Rowe (1969), Table 2: 0.083, 0.142, 0.193,
 * 0.248 for 2, 5, 10, 20 looks (figures from memory, recomputed by whoever collected them). */
static void
test_outlook_of_looking (void)
{
  static const struct {
    guint n_tasters;
    const char *said;
  } cases[] = {
    { 2, "after each of 2 sheets and stops as soon as a test pleases finds one in about 8 of 100" },
    { 5, "each of 5 sheets and stops as soon as a test pleases finds one in about 14 of 100" },
    { 7, "each of 5 sheets and stops as soon as a test pleases finds one in about 14 of 100" },
    { 10, "each of 10 sheets and stops as soon as a test pleases finds one in about 19 of 100" },
    { 25, "each of 20 sheets and stops as soon as a test pleases finds one in about 25 of 100" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++) {
    g_autoptr (FmTasting) self = tasting_planned (3, cases[i].n_tasters, FM_TASTING_RANK, 1);
    g_autofree char *text = fm_tasting_outlook (self);

    g_assert_nonnull (strstr (text, cases[i].said));
  }
  g_autoptr (FmTasting) alone = tasting_planned (3, 1, FM_TASTING_RANK, 1);
  g_autofree char *text = fm_tasting_outlook (alone);
  g_assert_null (strstr (text, "Armitage"));
}

static void
test_outlook (void)
{
  g_autoptr (FmTasting) small = tasting_planned (2, 3, FM_TASTING_RANK | FM_TASTING_TRIANGLE, 1);
  g_autofree char *cannot = fm_tasting_outlook (small);
  g_assert_nonnull (strstr (cannot, "cannot separate"));
  /* 3 right of 3 reach 5 % (ISO 4120) */
  g_assert_nonnull (strstr (cannot, "needs 3 of 3 right"));
  g_assert_null (strstr (cannot, "preference"));

  g_autoptr (FmTasting) blocks = tasting_planned (7, 7, FM_TASTING_RANK | FM_TASTING_LIKING, 1);
  blocks->max_per_taster = 3;
  g_autofree char *balanced = fm_tasting_outlook (blocks);
  /* 7! of 6^7, as the test of Durbin's layout counts */
  g_assert_nonnull (strstr (balanced, "it is 1 chance in 56"));
  fm_tasting_remove_taster (blocks, 6);
  g_autofree char *uneven = fm_tasting_outlook (blocks);
  g_assert_nonnull (strstr (uneven, "with 7 tasters"));

  g_autoptr (FmTasting) two = tasting_planned (4, 2, FM_TASTING_RANK, 1);
  g_autofree char *only = fm_tasting_outlook (two);
  g_assert_true (
      g_str_has_prefix (only, "Two tasters: only if both give exactly the same order, 1 chance in "
                              "24. Open once, with all sheets in"));

  g_autoptr (FmTasting) empty = fm_tasting_new ();
  g_autofree char *nothing = fm_tasting_outlook (empty);
  g_assert_true (g_str_has_prefix (nothing, "Choose samples"));
}

static void
test_outcomes (void)
{
  const double place[] = { 4, 1, 2, 3, 4, 1, 2, 3, 4, 1, 2, 3 };
  g_autoptr (GError) error = NULL;
  g_autoptr (FmTasting) self = tasting_sealed (4, 3, FM_TASTING_RANK | FM_TASTING_LIKING, 6);
  rank_all (self, place);
  for (guint t = 0; t < 3; t++)
    for (guint s = 0; s < 4; s++)
      tasting_mark (self, t, s, FM_TASTING_LIKING, 9 - place[s] - (s == t));
  g_autoptr (FmTastingReading) sealed = read_it (self);
  g_assert_null (fm_tasting_outcomes_new (self, sealed, &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_LOCKED);

  tasting_open (self);
  g_autoptr (FmTastingReading) reading = read_it (self);
  g_autoptr (GPtrArray) outcomes = fm_tasting_outcomes_new (self, reading, NULL);
  g_assert_cmpuint (outcomes->len, ==, 4);
  const FmTastingOutcome *best = outcomes->pdata[1], *last = outcomes->pdata[0];
  g_assert_cmpuint (best->place, ==, 1);
  g_assert_cmpuint (last->place, ==, 4);
  g_assert_cmpint (best->version_id, ==, 102);
  g_assert_cmpuint (best->code, ==, fm_tasting_sample_code (self, 1));
  g_assert_true (best->is_separated && best->n_tasters == 3 && best->rank_sum == 3);
  g_assert_true (best->liking_low < best->liking_mean && best->liking_mean < best->liking_high);
  g_assert_true (g_str_has_prefix (best->sentence, "first of four, 3 tasters; liked 7.7 of 9 ("));
}

static void
test_outcomes_shared_place (void)
{
  const double place[] = { 1, 2, 2, 1 };
  g_autoptr (FmTasting) self = tasting_sealed (2, 2, FM_TASTING_RANK, 6);
  rank_all (self, place);
  tasting_open (self);
  g_autoptr (FmTastingReading) reading = read_it (self);
  g_autoptr (GPtrArray) outcomes = fm_tasting_outcomes_new (self, reading, NULL);
  const FmTastingOutcome *first = outcomes->pdata[0], *second = outcomes->pdata[1];
  g_assert_cmpuint (first->place, ==, 1);
  g_assert_cmpuint (second->place, ==, 1);
  g_assert_cmpstr (first->sentence, ==,
                   "shares first place of two, 2 tasters; no difference is shown");
  g_assert_true (isnan (first->liking_mean));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/tasting-reading/undecided", test_undecided);
  g_test_add_func ("/tasting-reading/derivation", test_derivation);
  g_test_add_func ("/tasting-reading/agreed", test_agreed);
  g_test_add_func ("/tasting-reading/reconciled", test_reconciled);
  g_test_add_func ("/tasting-reading/reasons-are-told", test_reasons_are_told);
  g_test_add_func ("/tasting-reading/sealed-tells-codes-only", test_sealed_tells_codes_only);
  g_test_add_func ("/tasting-reading/page-only-if-written", test_page_only_if_written);
  g_test_add_func ("/tasting-reading/missing-and-dropped", test_missing_and_dropped);
  g_test_add_func ("/tasting-reading/ties", test_ties);
  g_test_add_func ("/tasting-reading/pair-and-triangle", test_pair_and_triangle);
  g_test_add_func ("/tasting-reading/agreement", test_agreement);
  g_test_add_func ("/tasting-reading/position", test_position);
  g_test_add_func ("/tasting-reading/problems-are-told", test_problems_are_told);
  g_test_add_func ("/tasting-reading/stop", test_stop);
  g_test_add_func ("/tasting-reading/outlook", test_outlook);
  g_test_add_func ("/tasting-reading/outlook-of-looking", test_outlook_of_looking);
  g_test_add_func ("/tasting-reading/outcomes", test_outcomes);
  g_test_add_func ("/tasting-reading/outcomes-shared-place", test_outcomes_shared_place);
  return g_test_run ();
}
