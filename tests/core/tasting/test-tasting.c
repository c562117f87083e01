/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-tasting.c - plan, seal and sheets of a tasting */
#include "tasting.h"

#include <string.h>

#include "core/base/fm-error.h"
#include "core/statistics/fm-serving.h"

#define EVERYTHING                                                                                 \
  (FM_TASTING_RANK | FM_TASTING_LIKING | FM_TASTING_JAR | FM_TASTING_PREFERENCE |                  \
   FM_TASTING_TRIANGLE | FM_TASTING_REMARKS)

static void
test_new (void)
{
  g_autoptr (FmTasting) self = fm_tasting_new ();
  g_autoptr (FmTasting) other = fm_tasting_new ();

  g_assert_cmpuint (self->tasks, ==, FM_TASTING_RANK | FM_TASTING_REMARKS);
  g_assert_true (self->seed < G_GUINT64_CONSTANT (1) << 53 && self->seed != other->seed);
  g_assert_cmpint (self->state, ==, FM_TASTING_PLANNED);
  g_assert_cmpint (self->pair[0], ==, -1);
}

static void
test_copy_is_equal (void)
{
  g_autoptr (FmTasting) self = tasting_sealed (4, 3, EVERYTHING, 5);
  self->title = g_strdup ("Friday");
  tasting_mark (self, 0, 2, FM_TASTING_LIKING, 7);
  fm_tasting_set_remark (self, 1, 1, fm_tasting_sample_code (self, 1), "bouncy");
  g_autoptr (FmTasting) copy = fm_tasting_copy (self);

  g_assert_true (fm_tasting_equal (self, copy));
  fm_tasting_set_remark (copy, 1, 1, fm_tasting_sample_code (self, 1), "dry");
  g_assert_false (fm_tasting_equal (self, copy));
  g_assert_cmpstr (fm_tasting_remark (self, 1, fm_tasting_sample_code (self, 1)), ==, "bouncy");
  fm_tasting_set_remark (copy, 1, 1, fm_tasting_sample_code (self, 1), "bouncy");
  g_assert_true (fm_tasting_equal (self, copy));
  tasting_mark (copy, 0, 2, FM_TASTING_LIKING, 6);
  g_assert_false (fm_tasting_equal (self, copy));
}

static void
test_same_seed_same_cups (void)
{
  g_autoptr (FmTasting) a = tasting_sealed (5, 6, EVERYTHING, 42);
  g_autoptr (FmTasting) b = tasting_sealed (5, 6, EVERYTHING, 42);
  g_autoptr (FmTasting) c = tasting_sealed (5, 6, EVERYTHING, 43);
  g_autoptr (FmTasting) fewer = tasting_sealed (5, 6, FM_TASTING_RANK, 42);

  g_assert_true (fm_tasting_equal (a, b));
  g_assert_cmpuint (a->cups->len, ==, c->cups->len);
  g_assert_cmpint (memcmp (a->cups->data, c->cups->data, a->cups->len * sizeof (FmTastingCup)), !=,
                   0);
  /* asking a triangle too leaves the main round as it was */
  g_autoptr (GPtrArray) more_cups = fm_tasting_cups (a, 3, FM_TASTING_ROUND_MAIN);
  g_autoptr (GPtrArray) fewer_cups = fm_tasting_cups (fewer, 3, FM_TASTING_ROUND_MAIN);
  for (guint i = 0; i < 5; i++)
    g_assert_cmpmem (more_cups->pdata[i], sizeof (FmTastingCup), fewer_cups->pdata[i],
                     sizeof (FmTastingCup));
}

/* Every code leads to one sample, and no two cups of a taster share one */
static void
test_codes (void)
{
  g_autoptr (FmTasting) self = tasting_sealed (6, 200, EVERYTHING, 8);
  int sample_of[1000];
  guint triangle_of[1000] = { 0 };

  memset (sample_of, -1, sizeof sample_of);
  g_assert_cmpuint (self->cups->len, ==, 200 * (6 + 2 + 3));
  for (guint i = 0; i < self->cups->len; i++) {
    const FmTastingCup *cup = &g_array_index (self->cups, FmTastingCup, i);
    g_assert_true (cup->code >= 100 && cup->code <= 999);
    g_assert_true (sample_of[cup->code] < 0 || sample_of[cup->code] == (int)cup->sample);
    sample_of[cup->code] = (int)cup->sample;
    if (cup->round == FM_TASTING_ROUND_TRIANGLE)
      g_assert_cmpuint (++triangle_of[cup->code], ==, 1);
  }
  for (guint s = 0; s < 6; s++)
    g_assert_cmpuint (triangle_of[fm_tasting_sample_code (self, s)], ==, 0);
  g_autoptr (GArray) codes = fm_tasting_codes (self);
  g_assert_cmpuint (codes->len, ==, 6);
  for (guint i = 1; i < 6; i++)
    g_assert_cmpuint (g_array_index (codes, guint, i - 1), <, g_array_index (codes, guint, i));
}

static void
test_parts_of_the_samples (void)
{
  g_autoptr (FmTasting) self = tasting_planned (7, 7, FM_TASTING_RANK, 3);
  guint served[7] = { 0 };

  self->max_per_taster = 3;
  g_assert_true (fm_tasting_arrange (self, 7, 0, NULL));
  for (guint i = 0; i < self->cups->len; i++)
    served[g_array_index (self->cups, FmTastingCup, i).sample]++;
  for (guint s = 0; s < 7; s++)
    g_assert_cmpuint (served[s], ==, 3);
}

static void
test_seal (void)
{
  g_autoptr (FmTasting) self = tasting_planned (3, 2, FM_TASTING_RANK, 4);
  g_autofree char *planned = fm_tasting_sample_label (self, 0);
  g_assert_cmpstr (planned, ==, "Draft 1");

  g_assert_true (fm_tasting_arrange (self, 7, 10, NULL));
  const guint code = fm_tasting_sample_code (self, 0);
  g_autofree char *digits = g_strdup_printf ("%u", code);
  g_autofree char *sealed = fm_tasting_sample_label (self, 0);
  g_autofree char *cup = fm_tasting_cup_label (self, code);
  g_assert_cmpstr (sealed, ==, digits);
  g_assert_cmpstr (cup, ==, digits);

  tasting_open (self);
  g_autofree char *opened = fm_tasting_sample_label (self, 0);
  g_autofree char *opened_cup = fm_tasting_cup_label (self, code);
  g_assert_cmpstr (opened, ==, "Draft 1");
  g_assert_true (g_str_has_prefix (opened_cup, digits) && strstr (opened_cup, "Draft 1") != NULL);
}

static void
test_seal_of_triangle_alone (void)
{
  g_autoptr (FmTasting) self = tasting_sealed (2, 6, FM_TASTING_TRIANGLE, 4);
  g_autofree char *label = fm_tasting_sample_label (self, 0);
  g_assert_cmpuint (fm_tasting_sample_code (self, 0), ==, 0);
  g_assert_cmpstr (label, ==, "sealed");
}

static void
test_opening (void)
{
  g_autoptr (GError) early = NULL, twice = NULL, planned_error = NULL;
  g_autoptr (FmTasting) planned = tasting_planned (3, 2, FM_TASTING_RANK, 4);
  g_autoptr (FmTasting) self = tasting_sealed (3, 2, FM_TASTING_RANK, 4);

  g_assert_false (fm_tasting_open (planned, 5, NULL, &planned_error));
  g_assert_nonnull (planned_error);
  fm_tasting_set_sheet (self, 1, 0, FM_SHEET_IN);
  g_assert_false (fm_tasting_open (self, 5, "  ", &early));
  g_assert_nonnull (strstr (early->message, "1 sheet is not in"));
  g_assert_true (fm_tasting_is_sealed (self));
  g_assert_true (fm_tasting_open (self, 5, " Guest had to leave ", NULL));
  const FmTastingEvent *event = self->events->pdata[1];
  g_assert_cmpint (event->kind, ==, FM_TASTING_EVENT_OPENED_EARLY);
  g_assert_cmpstr (event->text, ==, "Guest had to leave");
  g_assert_false (fm_tasting_open (self, 6, "again", &twice));
  g_assert_nonnull (twice);

  g_autoptr (FmTasting) whole = tasting_sealed (3, 2, FM_TASTING_RANK, 4);
  fm_tasting_set_sheet (whole, 1, 0, FM_SHEET_IN);
  fm_tasting_set_sheet (whole, 1, 1, FM_SHEET_IN);
  g_assert_true (fm_tasting_all_in (whole));
  g_assert_true (fm_tasting_open (whole, 5, NULL, NULL));
  event = whole->events->pdata[1];
  g_assert_cmpint (event->kind, ==, FM_TASTING_EVENT_OPENED);
}

/* A sheet that is missing or broken off is not in: opening asks why. */
static void
test_opening_without_sheets (void)
{
  static const FmSheetState absent[] = { FM_SHEET_WAITED_FOR, FM_SHEET_MISSING,
                                         FM_SHEET_DROPPED_OUT };
  for (guint i = 0; i < G_N_ELEMENTS (absent); i++) {
    g_autoptr (GError) error = NULL;
    g_autoptr (FmTasting) self = tasting_sealed (3, 2, FM_TASTING_RANK, 4);
    fm_tasting_set_sheet (self, 1, 0, absent[i]);
    fm_tasting_set_sheet (self, 1, 1, absent[i]);
    g_assert_false (fm_tasting_all_in (self));
    g_assert_cmpuint (fm_tasting_n_in (self), ==, 0);
    g_assert_false (fm_tasting_open (self, 5, NULL, &error));
    g_assert_nonnull (strstr (error->message, "2 sheets are not in"));
    g_assert_true (fm_tasting_open (self, 5, "Nobody came", NULL));
    g_assert_cmpint (((FmTastingEvent *)self->events->pdata[1])->kind, ==,
                     FM_TASTING_EVENT_OPENED_EARLY);
  }
}

/* Whoever planned "sample 4 against sample 1" learns no code of the main round from the pair's. */
static void
test_rounds_have_own_codes (void)
{
  gboolean is_main[1000] = { FALSE };
  g_autoptr (FmTasting) self = tasting_sealed (4, 5, EVERYTHING, 21);
  for (guint i = 0; i < self->cups->len; i++) {
    const FmTastingCup *cup = &g_array_index (self->cups, FmTastingCup, i);
    is_main[cup->code] = is_main[cup->code] || cup->round == FM_TASTING_ROUND_MAIN;
  }
  for (guint i = 0; i < self->cups->len; i++) {
    const FmTastingCup *cup = &g_array_index (self->cups, FmTastingCup, i);
    g_assert_cmpint (is_main[cup->code], ==, cup->round == FM_TASTING_ROUND_MAIN);
  }
  g_assert_cmpuint (fm_tasting_round_code (self, 0, FM_TASTING_ROUND_PAIR), !=,
                    fm_tasting_sample_code (self, 0));
}

/* The plan with its seed does not give the key away: the hidden part changes codes and orders. */
static void
test_hidden_part (void)
{
  g_autoptr (FmTasting) a = tasting_planned (4, 6, EVERYTHING, 42);
  g_autoptr (FmTasting) b = tasting_planned (4, 6, EVERYTHING, 42);
  const guint64 hidden = fm_tasting_hidden_part ();
  guint n_codes = 0, n_places = 0;

  g_assert_true (hidden > 0 && hidden < G_GUINT64_CONSTANT (1) << 53);
  g_assert_true (hidden != fm_tasting_hidden_part ());
  g_assert_true (fm_tasting_arrange (a, 1, 10, NULL));
  g_assert_true (fm_tasting_arrange (b, 2, 10, NULL));
  for (guint i = 0; i < a->cups->len; i++) {
    const FmTastingCup *x = &g_array_index (a->cups, FmTastingCup, i);
    const FmTastingCup *y = &g_array_index (b->cups, FmTastingCup, i);
    n_codes += x->code != y->code;
    n_places += x->sample != y->sample;
  }
  g_assert_cmpuint (n_codes, >, a->cups->len / 2);
  g_assert_cmpuint (n_places, >, 0);
  g_assert_false (fm_tasting_equal (a, b));
}

static void
test_marks (void)
{
  g_autoptr (FmTasting) self = tasting_sealed (4, 2, EVERYTHING, 9);
  const guint code = fm_tasting_sample_code (self, 0);

  g_assert_true (isnan (fm_tasting_mark (self, 0, code, FM_TASTING_LIKING, 0)));
  tasting_mark (self, 0, 0, FM_TASTING_LIKING, 8);
  tasting_mark (self, 0, 0, FM_TASTING_JAR, 2);
  tasting_mark (self, 0, 0, FM_TASTING_RANK, 1.5);
  g_assert_cmpfloat (fm_tasting_mark (self, 0, code, FM_TASTING_LIKING, 0), ==, 8);
  g_assert_cmpfloat (fm_tasting_mark (self, 0, code, FM_TASTING_JAR, 0), ==, 2);
  tasting_mark (self, 0, 0, FM_TASTING_LIKING, NAN);
  g_assert_true (isnan (fm_tasting_mark (self, 0, code, FM_TASTING_LIKING, 0)));

  /* one choice a pair */
  tasting_mark (self, 1, 0, FM_TASTING_PREFERENCE, 1);
  tasting_mark (self, 1, 1, FM_TASTING_PREFERENCE, 1);
  g_assert_true (isnan (fm_tasting_mark (
      self, 1, fm_tasting_round_code (self, 0, FM_TASTING_ROUND_PAIR), FM_TASTING_PREFERENCE, 0)));
  g_assert_cmpuint (self->events->len, ==, 1);

  tasting_open (self);
  tasting_mark (self, 0, 0, FM_TASTING_LIKING, 4);
  tasting_mark (self, 0, 0, FM_TASTING_LIKING, 4);
  g_assert_cmpuint (self->events->len, ==, 3);
  const FmTastingEvent *event = self->events->pdata[2];
  g_assert_cmpint (event->kind, ==, FM_TASTING_EVENT_SHEET_CHANGED);
  g_assert_nonnull (strstr (event->text, "T1"));
  fm_tasting_set_sheet (self, 77, 0, FM_SHEET_MISSING);
  event = self->events->pdata[3];
  g_assert_cmpint (event->at, ==, 77);
}

static void
test_marks_refused (void)
{
  g_autoptr (FmTasting) self = tasting_sealed (4, 2, FM_TASTING_RANK | FM_TASTING_LIKING, 9);
  const guint code = fm_tasting_sample_code (self, 0);
  const struct {
    guint taster;
    guint code;
    FmTastingTask task;
    guint attribute;
    double value;
    const char *says;
  } cases[] = {
    { 0, code, FM_TASTING_RANK, 0, 5, "1 to 4" },
    { 0, code, FM_TASTING_RANK, 0, 1.3, "1 to 4" },
    { 0, code, FM_TASTING_LIKING, 0, 0, "1 to 9" },
    { 0, code, FM_TASTING_LIKING, 0, 10, "1 to 9" },
    { 0, code, FM_TASTING_LIKING, 0, 4.5, "1 to 9" },
    { 0, code, FM_TASTING_LIKING, 0, INFINITY, "1 to 9" },
    { 0, code, FM_TASTING_LIKING, 0, -3, "1 to 9" },
    { 0, code, FM_TASTING_JAR, 0, 3, "no marks of that kind" },
    { 0, code, FM_TASTING_REMARKS, 0, 1, "no marks of that kind" },
    { 0, code, FM_TASTING_LIKING, 1, 3, "attribute" },
    { 0, 1, FM_TASTING_LIKING, 0, 3, "got no sample 1" },
    { 7, code, FM_TASTING_LIKING, 0, 3, "got no sample" },
  };
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++) {
    g_autoptr (GError) error = NULL;
    g_assert_false (fm_tasting_set_mark (self, 1, cases[i].taster, cases[i].code, cases[i].task,
                                         cases[i].attribute, cases[i].value, &error));
    g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE);
    g_assert_nonnull (strstr (error->message, cases[i].says));
  }
  g_assert_cmpuint (self->marks->len, ==, 0);
}

static void
test_sheet_gaps (void)
{
  g_autoptr (FmTasting) self =
      tasting_sealed (2, 1, FM_TASTING_RANK | FM_TASTING_TRIANGLE | FM_TASTING_REMARKS, 9);
  tasting_mark (self, 0, 0, FM_TASTING_RANK, 1);
  g_autofree char *gaps = fm_tasting_sheet_gaps (self, 0);
  g_autofree char *wanted = g_strdup_printf ("rank order: %u; triangle: nothing chosen",
                                             fm_tasting_sample_code (self, 1));
  g_assert_cmpstr (gaps, ==, wanted);

  tasting_mark (self, 0, 1, FM_TASTING_RANK, 1);
  const guint odd = tasting_triangle_code (self, 0, TRUE);
  g_assert_true (fm_tasting_set_mark (self, 1, 0, odd, FM_TASTING_TRIANGLE, 0, 1, NULL));
  g_assert_null (fm_tasting_sheet_gaps (self, 0));
}

/* The same plan, free again, under a seed of its own and without the order written down before. */
static void
test_again (void)
{
  g_autoptr (FmTasting) held =
      tasting_sealed (4, 3, FM_TASTING_RANK | FM_TASTING_LIKING | FM_TASTING_TRIANGLE, 5);
  g_autoptr (FmTasting) again = NULL;

  fm_tasting_set_sheet (held, 1, 1, FM_SHEET_MISSING);
  held->blinding = FM_TASTING_BLINDING_RELABELLED;
  again = fm_tasting_again (held, 99);
  g_assert_cmpint (again->state, ==, FM_TASTING_PLANNED);
  g_assert_cmpint (again->id, ==, 0);
  g_assert_cmpint (again->held_at, ==, 99);
  g_assert_cmpuint (again->seed, !=, held->seed);
  g_assert_cmpuint (again->tasks, ==, held->tasks);
  g_assert_cmpint (again->blinding, ==, held->blinding);
  g_assert_cmpint (again->triangle[0], ==, held->triangle[0]);
  g_assert_cmpuint (again->cups->len + again->marks->len + again->events->len, ==, 0);
  g_assert_null (again->expected_place);
  g_assert_cmpuint (again->samples->len, ==, 4);
  for (guint i = 0; i < 3; i++) {
    const FmTaster *taster = again->tasters->pdata[i];

    g_assert_cmpstr (taster->name, ==, ((FmTaster *)held->tasters->pdata[i])->name);
    g_assert_cmpint (taster->sheet, ==, FM_SHEET_WAITED_FOR);
  }
  g_assert_true (fm_tasting_check (again, NULL));
  g_assert_true (fm_tasting_arrange (again, 9, 2000, NULL));
}

static void
test_remove_sample (void)
{
  g_autoptr (FmTasting) self = tasting_planned (4, 2, EVERYTHING, 1);
  self->triangle[0] = 2;
  self->triangle[1] = 3;
  fm_tasting_remove_sample (self, 0);
  g_assert_cmpint (self->pair[0], ==, -1);
  g_assert_cmpint (self->pair[1], ==, 0);
  g_assert_cmpint (self->triangle[0], ==, 1);
  g_assert_cmpint (self->triangle[1], ==, 2);
  g_assert_null (self->expected_place);
}

static void
expect_refusal (const FmTasting *self, const char *says)
{
  g_autoptr (GError) error = NULL;
  g_assert_false (fm_tasting_check (self, &error));
  g_assert_nonnull (error);
  if (strstr (error->message, says) == NULL)
    g_error ("“%s” does not say “%s”", error->message, says);
}

static void
test_refusals (void)
{
  g_autoptr (FmTasting) self = fm_tasting_new ();
  expect_refusal (self, "at least two samples");
  fm_tasting_add_sample (self, 0, 0, "A");
  fm_tasting_add_sample (self, 0, 0, " a ");
  expect_refusal (self, "Two samples are called");
  fm_tasting_remove_sample (self, 1);
  fm_tasting_add_sample (self, 0, 0, " ");
  expect_refusal (self, "no name");
  fm_tasting_remove_sample (self, 1);
  fm_tasting_add_sample (self, 7, 1, "B");
  expect_refusal (self, "at least one taster");
  fm_tasting_add_taster (self, "Kim");
  fm_tasting_add_taster (self, "kim");
  expect_refusal (self, "Two tasters are called “kim”");
  fm_tasting_remove_taster (self, 1);
  g_assert_true (fm_tasting_check (self, NULL));

  fm_tasting_add_sample (self, 7, 1, "C");
  expect_refusal (self, "twice");
  fm_tasting_remove_sample (self, 2);
  self->tasks |= FM_TASTING_JAR;
  expect_refusal (self, "just about right");
  self->tasks = FM_TASTING_TRIANGLE;
  expect_refusal (self, "triangle");
  self->tasks = FM_TASTING_PREFERENCE;
  self->pair[0] = self->pair[1] = 1;
  expect_refusal (self, "paired preference");
  self->tasks = 0;
  expect_refusal (self, "at least one thing");
  self->tasks = FM_TASTING_RANK;
  self->max_per_taster = 1;
  expect_refusal (self, "at least two samples to");
  self->max_per_taster = 2;
  fm_tasting_add_sample (self, 0, 0, "D");
  expect_refusal (self, "cannot taste all 3 samples");
  self->max_per_taster = 3;
  const guint places[] = { 1, 1, 2 };
  self->expected_place = g_array_new (FALSE, FALSE, sizeof (guint));
  g_array_append_vals (self->expected_place, places, 3);
  expect_refusal (self, "written down beforehand");
}

/* The largest tasting is arranged, and twice is refused */
static void
test_arrange_once (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FmTasting) self = tasting_sealed (12, 200, EVERYTHING, 77);
  g_assert_cmpuint (self->cups->len, ==, 200 * 17);
  g_assert_false (fm_tasting_arrange (self, 7, 1, &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/tasting/new", test_new);
  g_test_add_func ("/tasting/copy-is-equal", test_copy_is_equal);
  g_test_add_func ("/tasting/same-seed-same-cups", test_same_seed_same_cups);
  g_test_add_func ("/tasting/codes", test_codes);
  g_test_add_func ("/tasting/parts-of-the-samples", test_parts_of_the_samples);
  g_test_add_func ("/tasting/seal", test_seal);
  g_test_add_func ("/tasting/seal-of-triangle-alone", test_seal_of_triangle_alone);
  g_test_add_func ("/tasting/opening", test_opening);
  g_test_add_func ("/tasting/opening-without-sheets", test_opening_without_sheets);
  g_test_add_func ("/tasting/rounds-have-own-codes", test_rounds_have_own_codes);
  g_test_add_func ("/tasting/hidden-part", test_hidden_part);
  g_test_add_func ("/tasting/marks", test_marks);
  g_test_add_func ("/tasting/marks-refused", test_marks_refused);
  g_test_add_func ("/tasting/sheet-gaps", test_sheet_gaps);
  g_test_add_func ("/tasting/again", test_again);
  g_test_add_func ("/tasting/remove-sample", test_remove_sample);
  g_test_add_func ("/tasting/refusals", test_refusals);
  g_test_add_func ("/tasting/arrange-once", test_arrange_once);
  return g_test_run ();
}
