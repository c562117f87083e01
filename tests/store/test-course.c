/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-course.c - what the versions of a blend lost, scored and cost */
#include <math.h>

#include "log-fixture.h"
#include "store/fm-course.h"

static gint64
add_version (Fixture *fixture, double price_per_kg)
{
  g_autoptr (FmFormula) formula = fm_formula_new ();
  g_autoptr (FmIngredient) trim = fm_ingredient_new ("Trim", FM_INGREDIENT_TRIM);

  trim->provenance = FM_PROVENANCE_DECLARED;
  trim->declared_fat_pct = 20;
  trim->price_per_kg = price_per_kg;
  fm_formula_add (formula, trim, 1000);
  return fm_versions_save (fixture->notebook, fixture->blend_id, formula, "For a test", NULL);
}

static void
cook (Fixture *fixture, gint64 version_id, gint64 made_at, double cooked_g, int rating)
{
  g_autoptr (FmExperiment) experiment = fm_experiment_new ();
  const FmPattyMass patty = { 100, cooked_g };

  experiment->version_id = version_id;
  experiment->made_at = made_at;
  experiment->rating = rating;
  g_array_append_val (experiment->patties, patty);
  g_assert_true (fm_experiments_save (fixture->notebook, experiment, NULL));
}

static const FmCourseStop *
stop_at (const GArray *stops, guint index)
{
  g_assert_cmpuint (index, <, stops->len);
  return &g_array_index (stops, FmCourseStop, index);
}

/* Means and ranges by version, ratings by date, costs only where all prices are known. */
static void
test_course (Fixture *fixture, gconstpointer data)
{
  const gint64 first = add_version (fixture, 10);
  const gint64 second = add_version (fixture, NAN);
  const gint64 third = add_version (fixture, 12);
  g_autoptr (GError) error = NULL;
  int number;

  cook (fixture, third, 3000, 80, 7);
  cook (fixture, first, 1000, 70, 5);
  cook (fixture, third, 2000, 76, 0);
  cook (fixture, second, 4000, NAN, 9);
  g_autoptr (FmCourse) course = fm_course_load (fixture->notebook, fixture->blend_id, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (course->cook_loss_pct->len, ==, 2);
  number = stop_at (course->cook_loss_pct, 0)->version_number;
  g_assert_cmpfloat_with_epsilon (stop_at (course->cook_loss_pct, 0)->value, 30, 1e-9);
  g_assert_true (isnan (stop_at (course->cook_loss_pct, 0)->low));
  g_assert_cmpint (stop_at (course->cook_loss_pct, 1)->version_number, ==, number + 2);
  g_assert_cmpfloat_with_epsilon (stop_at (course->cook_loss_pct, 1)->value, 22, 1e-9);
  g_assert_cmpfloat_with_epsilon (stop_at (course->cook_loss_pct, 1)->low, 20, 1e-9);
  g_assert_cmpfloat_with_epsilon (stop_at (course->cook_loss_pct, 1)->high, 24, 1e-9);
  g_assert_cmpuint (course->rating->len, ==, 3);
  g_assert_cmpfloat (stop_at (course->rating, 0)->value, ==, 5);
  g_assert_cmpint (stop_at (course->rating, 1)->time_s, ==, 3000);
  g_assert_cmpfloat (stop_at (course->rating, 2)->value, ==, 9);
  g_assert_cmpuint (course->cost_per_kg->len, ==, 2);
  g_assert_cmpfloat_with_epsilon (stop_at (course->cost_per_kg, 0)->value, 10, 1e-9);
  g_assert_cmpfloat_with_epsilon (stop_at (course->cost_per_kg, 1)->value, 12, 1e-9);
}

static void
test_cancelled (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autoptr (GError) error = NULL;

  add_version (fixture, 10);
  g_cancellable_cancel (cancellable);
  g_assert_null (fm_course_load (fixture->notebook, fixture->blend_id, cancellable, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add ("/course/course", Fixture, NULL, fixture_set_up, test_course, fixture_tear_down);
  g_test_add ("/course/cancelled", Fixture, NULL, fixture_set_up, test_cancelled,
              fixture_tear_down);
  return g_test_run ();
}
