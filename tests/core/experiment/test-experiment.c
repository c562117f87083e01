/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "core/base/fm-error.h"
#include "core/experiment/fm-experiment-process.h"
#include "core/experiment/fm-experiment-repeat.h"

static void
add_patty (FmExperiment *experiment, double raw_g, double cooked_g)
{
  FmPattyMass patty = { raw_g, cooked_g };

  g_array_append_val (experiment->patties, patty);
}

/* By hand: 178, 180, 184, 190, 168 have mean 900/5 = 180 and squared deviations
 * 4 + 0 + 16 + 100 + 144 = 264, so sd = sqrt (264/4) = 8.1240384. Three per cent of 180 is 5.4:
 * 190 and 168 lie outside. Cooked: 178 to 133.5 and 180 to 126 lose 25 and 30 %; together
 * 1 - 259.5/358 = 27.5139665 %; spread sqrt ((2.5^2 + 2.5^2)/1) = 3.5355339. */
static void
test_patty_stats_by_hand (void)
{
  g_autoptr (FmExperiment) experiment = fm_experiment_new ();
  FmPattyStats stats;

  experiment->patty_target_g = 180;
  add_patty (experiment, 178, 133.5);
  add_patty (experiment, 180, 126);
  add_patty (experiment, 184, NAN);
  add_patty (experiment, 190, NAN);
  add_patty (experiment, 168, NAN);
  add_patty (experiment, NAN, 120);
  fm_experiment_patty_stats (experiment, &stats);
  g_assert_cmpuint (stats.n, ==, 5);
  g_assert_cmpfloat_with_epsilon (stats.mean_g, 180.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (stats.sd_g, 8.1240384, 1e-7);
  g_assert_cmpfloat (stats.min_g, ==, 168);
  g_assert_cmpfloat (stats.max_g, ==, 190);
  g_assert_cmpuint (stats.n_outside, ==, 2);
  g_assert_cmpuint (stats.n_cooked, ==, 2);
  g_assert_cmpfloat_with_epsilon (stats.cook_loss_pct, 27.5139665, 1e-7);
  g_assert_cmpfloat_with_epsilon (stats.cook_loss_sd_pct, 3.5355339, 1e-7);
}

/* 3 % of 180 g is 5.4 g: 185.4 and 174.6 are still inside, a hundredth more is not. */
static void
test_tolerance_edge (void)
{
  g_autoptr (FmExperiment) experiment = fm_experiment_new ();
  FmPattyStats stats;

  experiment->patty_target_g = 180;
  g_assert_cmpfloat (experiment->patty_tolerance_pct, ==, 3.0);
  add_patty (experiment, 185.4, NAN);
  add_patty (experiment, 174.6, NAN);
  fm_experiment_patty_stats (experiment, &stats);
  g_assert_cmpuint (stats.n_outside, ==, 0);
  add_patty (experiment, 185.41, NAN);
  add_patty (experiment, 174.59, NAN);
  fm_experiment_patty_stats (experiment, &stats);
  g_assert_cmpuint (stats.n_outside, ==, 2);
  experiment->patty_target_g = NAN;
  fm_experiment_patty_stats (experiment, &stats);
  g_assert_cmpuint (stats.n_outside, ==, 0);
}

static void
test_stats_of_few (void)
{
  g_autoptr (FmExperiment) experiment = fm_experiment_new ();
  FmPattyStats stats;

  fm_experiment_patty_stats (experiment, &stats);
  g_assert_cmpuint (stats.n, ==, 0);
  g_assert_true (isnan (stats.mean_g) && isnan (stats.sd_g) && isnan (stats.min_g) &&
                 isnan (stats.max_g) && isnan (stats.cook_loss_pct));
  add_patty (experiment, 150, 100);
  fm_experiment_patty_stats (experiment, &stats);
  g_assert_cmpfloat (stats.mean_g, ==, 150);
  g_assert_true (isnan (stats.sd_g) && isnan (stats.cook_loss_sd_pct));
  g_assert_cmpfloat_with_epsilon (stats.cook_loss_pct, 100.0 / 3.0, 1e-9);
}

static const FmCoreReading *
reading (const FmExperiment *experiment, guint index)
{
  g_assert_cmpuint (index, <, experiment->core_readings->len);
  return &g_array_index (experiment->core_readings, FmCoreReading, index);
}

static void
test_readings (void)
{
  const struct {
    const char *text;
    gboolean fahrenheit;
    double time_s;
    double temp_c;
  } cases[] = {
    { "4:30 62.5", FALSE, 270, 62.5 },   { "4:30 62,5", FALSE, 270, 62.5 },
    { "4,5 62,5", FALSE, 270, 62.5 },    { "  4.5\t62.5 \r", FALSE, 270, 62.5 },
    { "4:30, 62.5", FALSE, 270, 62.5 },  { "4:30; 62,5 °C", FALSE, 270, 62.5 },
    { "0 160", TRUE, 0, 71.1111111 },    { "0:05 160 °F", FALSE, 5, 71.1111111 },
    { "1 160F", FALSE, 60, 71.1111111 }, { "1 71C", TRUE, 60, 71 },
    { "90:00 -1.5", FALSE, 5400, -1.5 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++) {
    g_autoptr (FmExperiment) experiment = fm_experiment_new ();
    g_autoptr (GError) error = NULL;
    gboolean ok =
        fm_experiment_parse_readings (experiment, cases[i].text, cases[i].fahrenheit, &error);
    g_test_message ("%s: %s", cases[i].text, error != NULL ? error->message : "read");
    g_assert_true (ok);
    g_assert_cmpuint (experiment->core_readings->len, ==, 1);
    g_assert_cmpfloat_with_epsilon (reading (experiment, 0)->time_s, cases[i].time_s, 1e-9);
    g_assert_cmpfloat_with_epsilon (reading (experiment, 0)->temp_c, cases[i].temp_c, 1e-6);
  }
}

static void
test_readings_come_by_time (void)
{
  g_autoptr (FmExperiment) experiment = fm_experiment_new ();
  g_autoptr (GError) error = NULL;

  g_assert_true (
      fm_experiment_parse_readings (experiment, "6:00 70\n\n2:00 30\n4:00 52\n", FALSE, &error));
  g_assert_no_error (error);
  g_assert_true (fm_experiment_parse_readings (experiment, "3:00 41", FALSE, &error));
  g_assert_cmpuint (experiment->core_readings->len, ==, 4);
  g_assert_cmpfloat (reading (experiment, 0)->temp_c, ==, 30);
  g_assert_cmpfloat (reading (experiment, 1)->temp_c, ==, 41);
  g_assert_cmpfloat (reading (experiment, 3)->temp_c, ==, 70);
  g_assert_cmpfloat (fm_experiment_peak_core_c (experiment), ==, 70);
}

static void
test_bad_readings_add_nothing (void)
{
  const char *const bad[] = {
    "4:30",   "62.5 4:30",   "4:60 50",   "-1 50", "1 nan",      "1 inf",  "soon 50",
    "1 hot",  "1 2 3",       "1.5:00 50", "1 160", "1:2:3 50",   "1 -300", "1e9 50",
    "1 0x20", "\xff\xfe 50", ": 50",      "1 °C",  "1:00 50 40",
  };

  for (guint i = 0; i < G_N_ELEMENTS (bad); i++) {
    g_autoptr (FmExperiment) experiment = fm_experiment_new ();
    g_autoptr (GError) error = NULL;
    g_autofree char *text = g_strconcat ("1:00 20\n", bad[i], "\n3:00 60", NULL);
    g_test_message ("case %u", i);
    g_assert_false (fm_experiment_parse_readings (experiment, text, FALSE, &error));
    g_assert_nonnull (error);
    g_assert_true (error->domain == FM_CORE_ERROR);
    g_assert_true (g_str_has_prefix (error->message, "Line 2: "));
    g_assert_cmpuint (experiment->core_readings->len, ==, 0);
  }
}

static void
assert_refused (const FmExperiment *experiment, const char *word)
{
  g_autoptr (GError) error = NULL;

  g_assert_false (fm_experiment_check (experiment, &error));
  g_assert_true (error != NULL && error->domain == FM_CORE_ERROR);
  g_assert_nonnull (strstr (error->message, word));
}

static void
test_check (void)
{
  g_autoptr (FmExperiment) experiment = fm_experiment_new ();
  g_autoptr (GError) error = NULL;

  g_assert_true (fm_experiment_check (experiment, &error));
  g_assert_no_error (error);
  experiment->plate_mm = -8;
  assert_refused (experiment, "plate");
  experiment->plate_mm = INFINITY;
  assert_refused (experiment, "plate");
  experiment->plate_mm = 8;
  experiment->patty_diameter_mm = 0;
  assert_refused (experiment, "diameter");
  experiment->patty_diameter_mm = 115;
  experiment->patty_thickness_mm = 1150;
  assert_refused (experiment, "thickness");
  experiment->patty_thickness_mm = 18;
  experiment->target_core_c = 160; /* meant as degrees F */
  assert_refused (experiment, "chosen core");
  experiment->target_core_c = 71;
  experiment->rating = 11;
  assert_refused (experiment, "rating");
  experiment->rating = 10;
  experiment->method = FM_N_COOK_METHODS;
  assert_refused (experiment, "method");
  experiment->method = FM_COOK_LOAF_BAKED;
  fm_experiment_add_weighing (experiment, NULL, "Chuck", 700, -1);
  assert_refused (experiment, "Chuck");
  g_array_set_size (experiment->weighings, 0);
  add_patty (experiment, 0, 0);
  assert_refused (experiment, "patty 1");
  g_array_set_size (experiment->patties, 0);
  g_assert_true (fm_experiment_check (experiment, &error));
}

static FmFormula *
make_formula (void)
{
  FmFormula *formula = fm_formula_new ();
  g_autoptr (FmIngredient) chuck = fm_ingredient_new ("Chuck", FM_INGREDIENT_CUT);
  g_autoptr (FmIngredient) salt = fm_ingredient_new ("Salt", FM_INGREDIENT_SALT);

  formula->brief->patty_mass_g = 150;
  formula->brief->n_patties = 4;
  fm_formula_add (formula, chuck, 990);
  fm_formula_add (formula, salt, 10);
  return formula;
}

/* Four patties of 150 g: 600 g, of which 99 % chuck and 1 % salt. */
static void
test_plan (void)
{
  g_autoptr (FmExperiment) experiment = fm_experiment_new ();
  g_autoptr (FmFormula) formula = make_formula ();

  fm_experiment_plan (experiment, formula);
  g_assert_cmpuint (experiment->weighings->len, ==, 2);
  FmWeighing *first = &g_array_index (experiment->weighings, FmWeighing, 0);
  g_assert_cmpstr (first->name, ==, "Chuck");
  g_assert_cmpfloat_with_epsilon (first->planned_g, 594, 1e-9);
  g_assert_true (isnan (first->weighed_g));
  g_assert_cmpuint (experiment->patties->len, ==, 4);
  g_assert_cmpfloat (experiment->patty_target_g, ==, 150);
  g_assert_cmpfloat_with_epsilon (experiment->salt_pct, 1.0, 1e-9);
  g_assert_true (isnan (experiment->surface_salt_pct));
  g_assert_cmpfloat_with_epsilon (fm_experiment_salt_pct (experiment), 1.0, 1e-9);

  first->weighed_g = 595;
  formula->brief->surface_salt_pct = 0.75;
  fm_experiment_add_weighing (experiment, NULL, "Ice", NAN, 20);
  fm_experiment_plan (experiment, formula);
  g_assert_cmpuint (experiment->weighings->len, ==, 3);
  g_assert_cmpfloat (g_array_index (experiment->weighings, FmWeighing, 0).weighed_g, ==, 595);
  /* what the brief strews on is a thing of its own beside what is mixed in */
  g_assert_cmpfloat (experiment->surface_salt_pct, ==, 0.75);
  g_assert_cmpfloat_with_epsilon (experiment->salt_pct, 1.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (fm_experiment_salt_pct (experiment), 1.75, 1e-9);
  g_assert_cmpstr (g_array_index (experiment->weighings, FmWeighing, 2).name, ==, "Ice");
  g_assert_cmpuint (experiment->patties->len, ==, 4);
}

/* What one sets is taken over; what is measured waits until it was, or was done as planned. */
static void
test_plan_takes_the_process (void)
{
  const FmUnits metric = { 0 };
  const double plates_mm[] = { 10.0, 4.5 };
  g_autoptr (FmExperiment) experiment = fm_experiment_new ();
  g_autoptr (FmFormula) formula = make_formula ();
  FmProcess *process = formula->process;
  g_autofree char *plates = NULL;

  fm_process_set_plates (process, plates_mm, G_N_ELEMENTS (plates_mm));
  fm_process_set_words (process, FM_PROCESS_SURFACE, "Steel pan");
  process->numbers[FM_PROCESS_TARGET_CORE] = 71.0;
  process->numbers[FM_PROCESS_SIDE_1] = 2.0;
  fm_experiment_plan (experiment, formula);
  g_assert_cmpfloat (experiment->plate_mm, ==, 4.5);
  g_assert_cmpint (experiment->grind_passes, ==, 2);
  g_assert_cmpstr (experiment->surface, ==, "Steel pan");
  g_assert_cmpfloat (experiment->target_core_c, ==, 71.0);
  g_assert_true (isnan (experiment->minutes_side_1));
  plates = fm_experiment_field_text (experiment, FM_PROCESS_PLATES, &metric);
  g_assert_cmpstr (plates, ==, "2 passes, last 4.5\u00a0mm");
  g_assert_null (fm_experiment_field_text (experiment, FM_PROCESS_SIDE_1, &metric));

  g_assert_true (fm_experiment_take_process (experiment, process, FM_TAKE_ALL));
  g_assert_cmpfloat (experiment->minutes_side_1, ==, 2.0);
  g_assert_false (fm_experiment_take_process (experiment, process, FM_TAKE_ALL));
  g_assert_false (fm_experiment_differs (experiment, process, FM_PROCESS_PLATES));
  experiment->grind_passes = 1;
  g_assert_true (fm_experiment_differs (experiment, process, FM_PROCESS_PLATES));
  g_assert_false (fm_experiment_differs (experiment, process, FM_PROCESS_SIDE_1));
  experiment->minutes_side_1 = 3.0;
  g_assert_true (fm_experiment_differs (experiment, process, FM_PROCESS_SIDE_1));
  g_assert_false (fm_experiment_has_field (FM_PROCESS_STEPS));
}

static void
test_plan_of_nothing (void)
{
  g_autoptr (FmExperiment) experiment = fm_experiment_new ();
  g_autoptr (FmFormula) formula = make_formula ();
  g_autoptr (GError) error = NULL;

  g_assert_true (fm_formula_set_mass (formula, 0, 0, NULL));
  g_assert_true (fm_formula_set_mass (formula, 1, 0, NULL));
  formula->brief->n_patties = FM_MAX_N_PATTIES;
  fm_experiment_plan (experiment, formula);
  g_assert_true (isnan (g_array_index (experiment->weighings, FmWeighing, 0).planned_g));
  g_assert_cmpuint (experiment->patties->len, <, 100);
  g_assert_true (fm_experiment_check (experiment, &error));
  g_assert_no_error (error);
}

static void
test_copy_and_equal (void)
{
  g_autoptr (FmExperiment) experiment = fm_experiment_new ();
  g_autoptr (FmFormula) formula = make_formula ();

  fm_experiment_plan (experiment, formula);
  experiment->notes = g_strdup ("Crisp");
  g_assert_true (fm_experiment_parse_readings (experiment, "1 20\n2 30", FALSE, NULL));
  g_autoptr (FmExperiment) copy = fm_experiment_copy (experiment);
  g_assert_true (fm_experiment_equal (experiment, copy));
  g_array_index (copy->patties, FmPattyMass, 3).cooked_g = 99;
  g_assert_false (fm_experiment_equal (experiment, copy));
  g_array_index (copy->patties, FmPattyMass, 3).cooked_g = NAN;
  g_assert_true (fm_experiment_equal (experiment, copy));
  g_free (g_array_index (copy->weighings, FmWeighing, 0).name);
  g_array_index (copy->weighings, FmWeighing, 0).name = g_strdup ("Brisket");
  g_assert_false (fm_experiment_equal (experiment, copy));
}

static FmExperiment *
made_before (void)
{
  FmExperiment *self = fm_experiment_new ();
  const FmPattyMass patty = { 180, 135 };
  const FmCoreReading reading = { 60, 30 };

  self->id = 7;
  self->version_id = 3;
  self->title = g_strdup ("Before");
  self->notes = g_strdup ("Dry");
  self->rating = 4;
  self->plate_mm = 4.5;
  self->grind_passes = 2;
  self->salt_pct = 1.2;
  self->surface = g_strdup ("Steel pan");
  self->minutes_side_1 = 3;
  self->meat_temp_c = 2;
  fm_experiment_add_weighing (self, "a", "Chuck", 500, 498);
  fm_experiment_add_weighing (self, NULL, "Ice", NAN, NAN);
  g_array_append_val (self->patties, patty);
  g_array_append_val (self->core_readings, reading);
  return self;
}

static void
test_as_the_last_one (void)
{
  g_autoptr (FmExperiment) last = made_before ();
  g_autoptr (FmExperiment) next = fm_experiment_new ();

  next->plate_mm = 8;
  g_assert_true (fm_experiment_take_last (next, last));
  g_assert_cmpfloat (next->plate_mm, ==, 8);
  g_assert_cmpint (next->grind_passes, ==, 2);
  g_assert_cmpfloat (next->salt_pct, ==, 1.2);
  g_assert_cmpstr (next->surface, ==, "Steel pan");
  g_assert_cmpfloat (next->minutes_side_1, ==, 3);
  g_assert_true (isnan (next->minutes_side_2));
  g_assert_true (isnan (next->meat_temp_c));
  g_assert_cmpuint (next->core_readings->len, ==, 0);
  g_assert_false (fm_experiment_take_last (next, last));
}

static void
test_weighed_as_planned (void)
{
  g_autoptr (FmExperiment) self = made_before ();

  fm_experiment_add_weighing (self, "b", "Brisket", 200, NAN);
  g_assert_true (fm_experiment_weigh_as_planned (self));
  g_assert_cmpfloat (g_array_index (self->weighings, FmWeighing, 0).weighed_g, ==, 498);
  g_assert_true (isnan (g_array_index (self->weighings, FmWeighing, 1).weighed_g));
  g_assert_cmpfloat (g_array_index (self->weighings, FmWeighing, 2).weighed_g, ==, 200);
  g_assert_false (fm_experiment_weigh_as_planned (self));
}

static void
test_made_again (void)
{
  g_autoptr (FmExperiment) before = made_before ();
  g_autoptr (FmExperiment) again = fm_experiment_make_again (before, 1000, "Trial 2");

  g_assert_cmpint (again->id, ==, 0);
  g_assert_cmpint (again->version_id, ==, 3);
  g_assert_cmpint (again->made_at, ==, 1000);
  g_assert_cmpstr (again->title, ==, "Trial 2");
  g_assert_cmpfloat (again->plate_mm, ==, 4.5);
  g_assert_cmpuint (again->patties->len, ==, 1);
  g_assert_true (isnan (g_array_index (again->patties, FmPattyMass, 0).raw_g));
  g_assert_cmpfloat (g_array_index (again->weighings, FmWeighing, 0).planned_g, ==, 500);
  g_assert_true (isnan (g_array_index (again->weighings, FmWeighing, 0).weighed_g));
  g_assert_null (again->notes);
  g_assert_cmpint (again->rating, ==, 0);
  g_assert_cmpuint (again->core_readings->len, ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/experiment/patty-stats-by-hand", test_patty_stats_by_hand);
  g_test_add_func ("/experiment/tolerance-edge", test_tolerance_edge);
  g_test_add_func ("/experiment/stats-of-few", test_stats_of_few);
  g_test_add_func ("/experiment/readings", test_readings);
  g_test_add_func ("/experiment/readings-by-time", test_readings_come_by_time);
  g_test_add_func ("/experiment/bad-readings-add-nothing", test_bad_readings_add_nothing);
  g_test_add_func ("/experiment/check", test_check);
  g_test_add_func ("/experiment/plan", test_plan);
  g_test_add_func ("/experiment/plan-takes-the-process", test_plan_takes_the_process);
  g_test_add_func ("/experiment/plan-of-nothing", test_plan_of_nothing);
  g_test_add_func ("/experiment/copy-and-equal", test_copy_and_equal);
  g_test_add_func ("/experiment/as-the-last-one", test_as_the_last_one);
  g_test_add_func ("/experiment/weighed-as-planned", test_weighed_as_planned);
  g_test_add_func ("/experiment/made-again", test_made_again);
  return g_test_run ();
}
