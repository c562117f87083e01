/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/heat/fm-lethality.h"

#include <math.h>
#include <string.h>

#include "core/base/fm-error.h"
#include "core/heat/fm-hold-table.h"
#include "core/base/fm-units.h"

typedef struct {
  double time_s;
  double temp_c;
} Point;

static GArray *
readings_of (const Point *points, guint n)
{
  GArray *readings = g_array_new (FALSE, FALSE, sizeof (FmCoreReading));

  for (guint i = 0; i < n; i++) {
    FmCoreReading reading = { points[i].time_s, points[i].temp_c };
    g_array_append_val (readings, reading);
  }
  return readings;
}

#define READINGS(points) readings_of ((points), G_N_ELEMENTS (points))

static const FmLethalityParams unit = {
  .organism = "X", .matrix = "y", .method = "z", .d_min = 1, .ref_c = 60, .z_c = 5, .source = "s"
};

/* Steady at the reference temperature: F is the time itself, whatever the order of readings. */
static void
test_steady (void)
{
  const Point points[] = { { 120, 60 }, { 0, 60 }, { 60, 60 } };
  g_autoptr (GArray) readings = READINGS (points);
  g_autoptr (FmLethality) lethality = fm_lethality_new (readings, &unit, NULL);

  g_assert_cmpfloat_with_epsilon (lethality->total_f_min, 2.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (lethality->linear_f_min, 2.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (lethality->log_reductions, 2.0, 1e-12);
  g_assert_cmpfloat (lethality->longest_gap_s, ==, 60);
  g_assert_cmpfloat_with_epsilon (fm_lethal_rate (65, 60, 5), 10.0, 1e-12);
}

/* One z up in a straight line: trapezoid 5.5 of a minute, exact integral 9 / ln 10. */
static void
test_straight_rise (void)
{
  const Point points[] = { { 0, 60 }, { 60, 65 } };
  g_autoptr (GArray) readings = READINGS (points);
  g_autoptr (FmLethality) lethality = fm_lethality_new (readings, &unit, NULL);
  g_autofree char *text = fm_lethality_text (lethality, &unit);

  g_assert_cmpfloat_with_epsilon (lethality->total_f_min, 5.5, 1e-12);
  g_assert_cmpfloat_with_epsilon (lethality->linear_f_min, 9.0 / log (10.0), 1e-12);
  /* Readings a minute apart: what is claimed is the lower of the two. */
  g_assert_nonnull (strstr (text, "Computed decimal reductions: 3.9."));
  g_assert_nonnull (strstr (text, "the usual sum over their lethal rates is 5.5"));
}

/* Hotter readings never lower the figure, and the straight-line figure never passes the other. */
static void
test_monotone (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (20);

  for (int round = 0; round < 200; round++) {
    g_autoptr (GArray) readings = g_array_new (FALSE, FALSE, sizeof (FmCoreReading));
    double time_s = 0;

    for (int i = 0; i < 12; i++) {
      FmCoreReading reading = { time_s, g_rand_double_range (rand, 0, 80) };
      g_array_append_val (readings, reading);
      time_s += g_rand_double_range (rand, 1, 90);
    }
    g_autoptr (FmLethality) before = fm_lethality_new (readings, &unit, NULL);
    g_array_index (readings, FmCoreReading, g_rand_int_range (rand, 0, 12)).temp_c += 1;
    g_autoptr (FmLethality) after = fm_lethality_new (readings, &unit, NULL);
    g_assert_cmpfloat (after->total_f_min, >, before->total_f_min);
    g_assert_cmpfloat (after->linear_f_min, >, before->linear_f_min);
    g_assert_cmpfloat (before->linear_f_min, <=, before->total_f_min * (1 + 1e-12));
  }
}

static void
test_lethality_errors (void)
{
  const Point one[] = { { 0, 60 } };
  const Point unknown[] = { { 0, 60 }, { 60, NAN } };
  g_autoptr (GArray) few = READINGS (one);
  g_autoptr (GArray) bad = READINGS (unknown);
  FmLethalityParams no_d = unit;
  g_autoptr (GError) error = NULL;

  g_assert_null (fm_lethality_new (NULL, &unit, &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY);
  g_clear_error (&error);
  g_assert_null (fm_lethality_new (few, &unit, &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY);
  g_clear_error (&error);
  g_assert_null (fm_lethality_new (bad, &unit, &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE);
  g_assert_nonnull (strstr (error->message, "2"));
  g_clear_error (&error);
  no_d.d_min = 0;
  g_assert_null (fm_lethality_new (few, &no_d, &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE);
}

static void
assert_no_verdict_word (const char *text)
{
  g_autofree char *lower = g_utf8_strdown (text, -1);

  g_test_message ("%s", text);
  g_assert_null (strstr (lower, "safe"));
}

#define BIT(kind) FM_SPECIES_BIT (FM_SPECIES_##kind)

static const FmCookFood beef = { BIT (BEEF), 20.0 };
static const FmCookFood turkey = { BIT (TURKEY), 8.0 };

static void
assert_state (FmAuthority authority, const Point *points, guint n, FmHoldState expected)
{
  g_autoptr (GArray) readings = readings_of (points, n);
  FmHoldVerdict verdict;

  fm_hold_judge (authority, &beef, readings, &verdict);
  assert_no_verdict_word (verdict.text);
  g_assert_true (g_str_has_prefix (verdict.text, fm_authority_name (authority)));
  g_assert_cmpint (verdict.state, ==, expected);
  fm_hold_verdict_clear (&verdict);
}

#define ASSERT_STATE(authority, points, state)                                                     \
  assert_state (FM_AUTHORITY_##authority, (points), G_N_ELEMENTS (points), FM_HOLD_##state)

/* The same record: the authorities differ, and each says so by itself. */
static void
test_authorities_differ (void)
{
  /* 68.4 °C for 20 s: 17 s (FSIS 2021, 5 log, and Food Code) are held, 22 s (6.5 log) are not. */
  const Point points[] = { { 0, 20 },    { 50, 60 },   { 60, 68.4 }, { 70, 68.5 },
                           { 80, 68.4 }, { 80.5, 66 }, { 90, 60 } };

  ASSERT_STATE (FSIS_PATTIES, points, REACHED);
  ASSERT_STATE (FOOD_CODE, points, REACHED);
  ASSERT_STATE (CONSUMER, points, NOT_REACHED);
  ASSERT_STATE (UK, points, NOT_REACHED);
  ASSERT_STATE (FSIS_7, points, NOT_KNOWN);
}

static void
test_consumer (void)
{
  const Point just[] = { { 0, 5 }, { 300, 71.1 } };
  const Point fahrenheit[] = { { 300, 71.111111 } };
  const Point hair_less[] = { { 0, 5 }, { 300, 71.06 } };
  g_autoptr (GArray) readings = READINGS (hair_less);
  g_autoptr (GArray) reached = READINGS (just);
  FmHoldVerdict verdict;

  ASSERT_STATE (CONSUMER, just, REACHED);
  ASSERT_STATE (CONSUMER, fahrenheit, REACHED);
  ASSERT_STATE (CONSUMER, hair_less, NOT_REACHED);
  fm_hold_judge (FM_AUTHORITY_CONSUMER, &beef, readings, &verdict);
  g_assert_nonnull (strstr (verdict.text, "71.0"));
  g_assert_nonnull (strstr (verdict.text, "159"));
  fm_hold_verdict_clear (&verdict);
  fm_hold_judge (FM_AUTHORITY_CONSUMER, &beef, reached, &verdict);
  g_assert_null (strstr (verdict.text, "159"));
  fm_hold_verdict_clear (&verdict);
}

/* Too few readings and gaps: not known. What comes after the record does not count. */
static void
test_not_known (void)
{
  const Point single[] = { { 0, 69 } };
  const Point gap[] = { { 0, 60 }, { 10, 67 }, { 200, 67 }, { 210, 60 } };
  const Point ends[] = { { 0, 60 }, { 10, 65.5 }, { 40, 65.6 } };
  const Point cold_single[] = { { 0, 20 } };
  FmHoldVerdict verdict;

  ASSERT_STATE (FSIS_PATTIES, single, NOT_KNOWN);
  ASSERT_STATE (FSIS_PATTIES, cold_single, NOT_KNOWN);
  ASSERT_STATE (FOOD_CODE, gap, NOT_KNOWN);
  ASSERT_STATE (FOOD_CODE, ends, NOT_REACHED);
  fm_hold_judge (FM_AUTHORITY_FOOD_CODE, &beef, NULL, &verdict);
  g_assert_cmpint (verdict.state, ==, FM_HOLD_NOT_KNOWN);
  g_assert_true (isnan (verdict.highest_c));
  assert_no_verdict_word (verdict.text);
  fm_hold_verdict_clear (&verdict);
}

/* A dip begins the count again: twice 40 s at 66 °C are not 60 s. */
static void
test_dip (void)
{
  const Point dip[] = { { 0, 60 },  { 5, 66 },  { 25, 66.5 }, { 45, 66 }, { 50, 62 },
                        { 55, 66 }, { 75, 66 }, { 95, 66 },   { 100, 60 } };
  const Point held[] = { { 0, 60 }, { 5, 66 }, { 35, 66.5 }, { 65, 66 }, { 70, 60 } };
  g_autoptr (GArray) readings = READINGS (dip);
  FmHoldVerdict verdict;

  ASSERT_STATE (FOOD_CODE, dip, NOT_REACHED);
  ASSERT_STATE (FOOD_CODE, held, REACHED);
  fm_hold_judge (FM_AUTHORITY_FOOD_CODE, &beef, readings, &verdict);
  g_assert_cmpfloat (verdict.row.temp_c, ==, 66);
  g_assert_cmpfloat (verdict.held_s, ==, 40);
  fm_hold_verdict_clear (&verdict);
}

/* Raising a curve never takes a table away. */
static void
test_raising (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (5);

  for (int round = 0; round < 200; round++) {
    g_autoptr (GArray) readings = g_array_new (FALSE, FALSE, sizeof (FmCoreReading));

    for (int i = 0; i < 20; i++) {
      FmCoreReading reading = { i * g_rand_double_range (rand, 5, 60),
                                g_rand_double_range (rand, 50, 74) };
      g_array_append_val (readings, reading);
    }
    for (int authority = 0; authority < FM_N_AUTHORITIES; authority++) {
      FmHoldVerdict before, after;
      g_autoptr (GArray) raised = g_array_copy (readings);

      for (guint i = 0; i < raised->len; i++)
        g_array_index (raised, FmCoreReading, i).temp_c += 0.5;
      fm_hold_judge (authority, &beef, readings, &before);
      fm_hold_judge (authority, &beef, raised, &after);
      if (before.state == FM_HOLD_REACHED)
        g_assert_cmpint (after.state, ==, FM_HOLD_REACHED);
      fm_hold_verdict_clear (&before);
      fm_hold_verdict_clear (&after);
    }
  }
}

/* Hotter asks for less time, in every table; unknown and cold ask for nothing that is known. */
static void
test_required (void)
{
  for (int authority = 0; authority < FM_N_AUTHORITIES; authority++) {
    double before = INFINITY;

    g_assert_true (isnan (fm_hold_required_s (authority, &beef, 50)));
    g_assert_true (isnan (fm_hold_required_s (authority, &beef, NAN)));
    for (double temp_c = 50; temp_c < 90; temp_c += 0.1) {
      double hold_s = fm_hold_required_s (authority, &beef, temp_c);
      if (isnan (hold_s))
        continue;
      g_assert_cmpfloat (hold_s, <=, before);
      before = hold_s;
    }
    g_assert_true (isfinite (before));
    assert_no_verdict_word (fm_authority_note (authority));
  }
}

/* USDA FSIS asks for 73.9 °C (165 °F) of ground poultry: 72 °C reaches no figure that stands beside
 * a blend of turkey, though it reaches those for beef. */
static void
test_turkey_at_72 (void)
{
  const Point points[] = { { 0, 5 }, { 240, 70 }, { 250, 72 }, { 252, 71 } };
  g_autoptr (GArray) readings = READINGS (points);

  for (guint a = 0; a < FM_N_AUTHORITIES; a++) {
    FmHoldVerdict verdict;

    if (!fm_authority_applies ((FmAuthority)a, turkey.species))
      continue;
    fm_hold_judge ((FmAuthority)a, &turkey, readings, &verdict);
    g_test_message ("%s", verdict.text);
    g_assert_cmpint (verdict.state, !=, FM_HOLD_REACHED);
    fm_hold_verdict_clear (&verdict);
  }
  ASSERT_STATE (CONSUMER, points, REACHED);
}

static void
test_doneness (void)
{
  g_autofree char *rare = fm_hold_doneness_caution (beef.species, 52);
  g_autofree char *held = fm_hold_doneness_caution (beef.species, 66);

  g_assert_nonnull (strstr (rare, "3-603.11"));
  g_assert_nonnull (strstr (held, "60"));
  g_assert_null (strstr (held, "3-603.11"));
  assert_no_verdict_word (rare);
  assert_no_verdict_word (held);
  g_assert_null (fm_hold_doneness_caution (beef.species, 71.1));
  g_assert_null (fm_hold_doneness_caution (beef.species, fm_fahrenheit_to_celsius (160)));
  g_assert_null (fm_hold_doneness_caution (beef.species, NAN));
  g_autofree char *poultry = fm_hold_doneness_caution (turkey.species, 72);
  g_assert_nonnull (strstr (poultry, "poultry"));
  assert_no_verdict_word (poultry);
  g_assert_null (fm_hold_doneness_caution (turkey.species, 73.9));
}

static void
test_lethality_texts (void)
{
  const Point points[] = { { 0, 40 }, { 30, 60 }, { 60, 70 }, { 90, 65 } };
  g_autoptr (GArray) readings = READINGS (points);
  guint n;
  const FmLethalityParams *all = fm_lethality_params (&n);

  for (guint i = 0; i < n; i++) {
    g_autoptr (FmLethality) lethality = fm_lethality_new (readings, &all[i], NULL);
    g_autofree char *text = fm_lethality_text (lethality, &all[i]);
    assert_no_verdict_word (text);
    g_assert_nonnull (strstr (text, all[i].organism));
    g_assert_nonnull (strstr (text, all[i].source));
    /* Author and year stand beside every set. */
    g_assert_true (g_regex_match_simple ("^[A-Z].* (19|20)[0-9][0-9]", all[i].source, 0, 0));
  }
}

/* D 0.5 min at 60 °C, four minutes there: 8 reductions, and the text says whose numbers they are.
 */
static void
test_own (void)
{
  g_autoptr (GArray) readings = g_array_new (FALSE, FALSE, sizeof (FmCoreReading));
  const FmCoreReading held[] = { { 0, 60 }, { 240, 60 } };
  FmLethalityParams params;
  g_autoptr (GError) error = NULL;

  g_array_append_vals (readings, held, G_N_ELEMENTS (held));
  fm_lethality_params_init_own (&params, 0.5, 60.0, 6.0);
  g_autoptr (FmLethality) lethality = fm_lethality_new (readings, &params, &error);
  g_assert_no_error (error);
  g_assert_cmpfloat_with_epsilon (lethality->log_reductions, 8.0, 1e-9);
  g_autofree char *text = fm_lethality_text (lethality, &params);
  g_assert_nonnull (strstr (text, "Own values, as you typed them"));
  g_assert_nonnull (strstr (text, "own, not published"));
  fm_lethality_params_init_own (&params, 0.5, NAN, 6.0);
  g_assert_null (fm_lethality_new (readings, &params, &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_UNKNOWN_VALUE);
}

/* The first set is the most careful one of the blend's animal and fat: never the lean one for a
 * patty of 21 % fat, and never beef for turkey. */
static void
test_choice (void)
{
  const FmCookFood fat_beef = { BIT (BEEF) | BIT (NONE), 21.0 };
  const FmCookFood unknown_fat = { BIT (BEEF), NAN };
  const FmCookFood goat = { BIT (GOAT), 10.0 };
  const FmCookFood mixture = { BIT (BEEF) | BIT (TURKEY), 15.0 };
  const FmCookFood foods[] = { fat_beef, unknown_fat, turkey, mixture };
  gboolean fits;

  for (guint f = 0; f < G_N_ELEMENTS (foods); f++) {
    g_autoptr (GPtrArray) list = fm_lethality_params_for (&foods[f], &fits);
    const FmLethalityParams *first = list->pdata[0];

    g_assert_true (fits);
    for (guint i = 0; i < list->len; i++) {
      const FmLethalityParams *set = list->pdata[i];
      gboolean fat_enough = isnan (set->fat_pct) || set->fat_pct >= foods[f].fat_pct;

      g_test_message ("%u: %s, %s, %g %%, D65 %.3f", f, set->organism, set->matrix, set->fat_pct,
                      fm_lethality_d_min (set, FM_LETHALITY_COMPARED_C));
      g_assert_true ((set->species & foods[f].species) != 0);
      if (fat_enough && strcmp (set->organism, first->organism) == 0)
        g_assert_cmpfloat (fm_lethality_d_min (set, FM_LETHALITY_COMPARED_C), <=,
                           fm_lethality_d_min (first, FM_LETHALITY_COMPARED_C));
    }
    g_assert_cmpstr (first->organism, ==, "E. coli O157:H7");
    if (!isnan (first->fat_pct) && !isnan (foods[f].fat_pct))
      g_assert_cmpfloat (first->fat_pct, >=, foods[f].fat_pct);
  }
  g_autoptr (GPtrArray) none = fm_lethality_params_for (&goat, &fits);
  g_assert_false (fits);
  g_assert_cmpuint (none->len, >, 0);
}

static void
assert_choice (FmSpeciesSet species, double fat_pct, const char *words)
{
  const FmCookFood food = { species, fat_pct };
  g_autofree char *text = fm_lethality_choice_text (&food);

  g_test_message ("%s", text);
  g_assert_nonnull (strstr (text, words));
}

/* The sentence claims no more of the first set than is true of it: foods of no stated fat, blends
 * fatter than any tested one, animals that nobody tested. */
static void
test_choice_text (void)
{
  assert_choice (BIT (BEEF), 21, "the highest D at its fat or above.");
  assert_choice (BIT (BEEF) | BIT (PORK), 21, "of no stated fat, as this one");
  assert_choice (BIT (BEEF), 40, "at its fat or above: the highest D of leaner ones");
  assert_choice (BIT (BEEF), NAN, "fat of this blend is not known");
  assert_choice (BIT (GOAT), 10, "all the sets below are of other meats");
}

/* One reading is one number in every line, whichever row it misses or meets; one that misses a row
 * by less than is printed does not print as the row. */
static void
test_reading_beside_a_row (void)
{
  const FmHoldRow consumer = { 71.1, 160, 0 };
  const FmHoldRow caterers = { 75, 167, 0 };
  g_autofree char *met = fm_hold_row_reading_format (&consumer, 72);
  g_autofree char *missed = fm_hold_row_reading_format (&caterers, 72);
  g_autofree char *near = fm_hold_row_reading_format (&caterers, 74.96);

  g_assert_cmpstr (met, ==, missed);
  g_assert_nonnull (strstr (met, "162"));
  g_assert_nonnull (strstr (near, "74.9"));
  g_assert_nonnull (strstr (near, "166"));
}

/* As many digits as readings and D support, and a bound told once. */
static void
test_digits (void)
{
  const Point points[] = { { 0, 60 }, { 14413, 60 } };
  g_autoptr (GArray) readings = READINGS (points);
  g_autoptr (FmLethality) lethality = fm_lethality_new (readings, &unit, NULL);
  g_autofree char *f = fm_lethality_f_format (lethality);
  g_autofree char *text = fm_lethality_text (lethality, &unit);
  const char *bound = strstr (text, "more than 10");

  g_assert_true (g_str_has_prefix (f, "240"));
  g_assert_null (strchr (f, '.'));
  g_assert_nonnull (bound);
  g_assert_null (strstr (bound + 1, "more than 10"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/lethality/steady", test_steady);
  g_test_add_func ("/lethality/straight-rise", test_straight_rise);
  g_test_add_func ("/lethality/monotone", test_monotone);
  g_test_add_func ("/lethality/errors", test_lethality_errors);
  g_test_add_func ("/lethality/texts", test_lethality_texts);
  g_test_add_func ("/lethality/choice-text", test_choice_text);
  g_test_add_func ("/hold/reading-beside-a-row", test_reading_beside_a_row);
  g_test_add_func ("/lethality/own", test_own);
  g_test_add_func ("/lethality/choice", test_choice);
  g_test_add_func ("/lethality/digits", test_digits);
  g_test_add_func ("/hold/authorities-differ", test_authorities_differ);
  g_test_add_func ("/hold/consumer", test_consumer);
  g_test_add_func ("/hold/not-known", test_not_known);
  g_test_add_func ("/hold/dip", test_dip);
  g_test_add_func ("/hold/raising", test_raising);
  g_test_add_func ("/hold/required", test_required);
  g_test_add_func ("/hold/turkey-at-72", test_turkey_at_72);
  g_test_add_func ("/hold/doneness", test_doneness);
  return g_test_run ();
}
