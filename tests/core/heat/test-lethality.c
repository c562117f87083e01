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
  g_assert_nonnull (strstr (text, "3.9"));
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

static void
assert_state (FmAuthority authority, const Point *points, guint n, FmHoldState expected)
{
  g_autoptr (GArray) readings = readings_of (points, n);
  FmHoldVerdict verdict;

  fm_hold_judge (authority, readings, &verdict);
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
  /* 68.4 °C for 20 s: 16 s (9 CFR) and 17 s (Food Code) are held, 22 s (Appendix A) is not. */
  const Point points[] = { { 0, 20 },    { 50, 60 },   { 60, 68.4 }, { 70, 68.5 },
                           { 80, 68.4 }, { 80.5, 66 }, { 90, 60 } };

  ASSERT_STATE (CFR_318_23, points, REACHED);
  ASSERT_STATE (FOOD_CODE, points, REACHED);
  ASSERT_STATE (CONSUMER, points, NOT_REACHED);
  ASSERT_STATE (UK_FSA, points, NOT_REACHED);
  ASSERT_STATE (APPENDIX_A_7, points, NOT_KNOWN);
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
  fm_hold_judge (FM_AUTHORITY_CONSUMER, readings, &verdict);
  g_assert_nonnull (strstr (verdict.text, "71.0"));
  g_assert_nonnull (strstr (verdict.text, "159"));
  fm_hold_verdict_clear (&verdict);
  fm_hold_judge (FM_AUTHORITY_CONSUMER, reached, &verdict);
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

  ASSERT_STATE (CFR_318_23, single, NOT_KNOWN);
  ASSERT_STATE (CFR_318_23, cold_single, NOT_KNOWN);
  ASSERT_STATE (FOOD_CODE, gap, NOT_KNOWN);
  ASSERT_STATE (FOOD_CODE, ends, NOT_REACHED);
  fm_hold_judge (FM_AUTHORITY_FOOD_CODE, NULL, &verdict);
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
  fm_hold_judge (FM_AUTHORITY_FOOD_CODE, readings, &verdict);
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
      fm_hold_judge (authority, readings, &before);
      fm_hold_judge (authority, raised, &after);
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

    g_assert_true (isnan (fm_hold_required_s (authority, 50)));
    g_assert_true (isnan (fm_hold_required_s (authority, NAN)));
    for (double temp_c = 50; temp_c < 90; temp_c += 0.1) {
      double hold_s = fm_hold_required_s (authority, temp_c);
      if (isnan (hold_s))
        continue;
      g_assert_cmpfloat (hold_s, <=, before);
      before = hold_s;
    }
    g_assert_true (isfinite (before));
    assert_no_verdict_word (fm_authority_note (authority));
  }
}

static void
test_doneness (void)
{
  g_autofree char *rare = fm_hold_doneness_caution (52);
  g_autofree char *held = fm_hold_doneness_caution (66);

  g_assert_nonnull (strstr (rare, "3-603.11"));
  g_assert_nonnull (strstr (held, "60"));
  g_assert_null (strstr (held, "3-603.11"));
  assert_no_verdict_word (rare);
  assert_no_verdict_word (held);
  g_assert_null (fm_hold_doneness_caution (71.1));
  g_assert_null (fm_hold_doneness_caution (fm_fahrenheit_to_celsius (160)));
  g_assert_null (fm_hold_doneness_caution (NAN));
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
    g_assert_true (lethality->extrapolated);
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

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/lethality/steady", test_steady);
  g_test_add_func ("/lethality/straight-rise", test_straight_rise);
  g_test_add_func ("/lethality/monotone", test_monotone);
  g_test_add_func ("/lethality/errors", test_lethality_errors);
  g_test_add_func ("/lethality/texts", test_lethality_texts);
  g_test_add_func ("/lethality/own", test_own);
  g_test_add_func ("/hold/authorities-differ", test_authorities_differ);
  g_test_add_func ("/hold/consumer", test_consumer);
  g_test_add_func ("/hold/not-known", test_not_known);
  g_test_add_func ("/hold/dip", test_dip);
  g_test_add_func ("/hold/raising", test_raising);
  g_test_add_func ("/hold/required", test_required);
  g_test_add_func ("/hold/doneness", test_doneness);
  return g_test_run ();
}
