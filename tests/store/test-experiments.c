/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <sqlite3.h>

#include "core/base/fm-error.h"
#include "log-fixture.h"

#define ADD(name, func)                                                                            \
  g_test_add ("/experiments/" name, Fixture, NULL, fixture_set_up, func, fixture_tear_down)

static FmExperiment *
new_full_experiment (gint64 version_id)
{
  FmExperiment *experiment = fm_experiment_new ();
  const FmPattyMass patties[] = { { 180, 130.5 }, { 182.25, NAN }, { NAN, NAN } };

  experiment->version_id = version_id;
  experiment->title = g_strdup ("Käse, first try");
  experiment->notes = g_strdup ("Crisp crust; 100 % \"juicy\"");
  experiment->made_at = 1740992400;
  experiment->meat_temp_c = -1.5;
  experiment->plate_mm = 4.5;
  experiment->grind_passes = 2;
  experiment->patty_target_g = 180;
  experiment->salt_pct = 0.9;
  experiment->surface_salt_pct = 0.6;
  experiment->salt_minutes_before = 12;
  experiment->method = FM_COOK_PATTY_BROILED;
  experiment->surface = g_strdup ("Pan");
  experiment->surface_temp_c = 230;
  experiment->minutes_side_1 = 4;
  experiment->minutes_side_2 = 3.5;
  experiment->rest_minutes = 3;
  experiment->patty_diameter_mm = 115;
  experiment->patty_thickness_mm = 18.5;
  experiment->target_core_c = 71.5;
  experiment->rating = 8;
  fm_experiment_add_weighing (experiment, "line-1", "Chuck", 700, 701);
  fm_experiment_add_weighing (experiment, NULL, "Ice", NAN, 20);
  g_array_append_vals (experiment->patties, patties, G_N_ELEMENTS (patties));
  g_assert_true (fm_experiment_parse_readings (experiment, "0 4\n2:00 30\n4:00 68.5", FALSE, NULL));
  return experiment;
}

static void
test_round_trip (Fixture *fixture, gconstpointer data)
{
  g_autoptr (FmExperiment) experiment = new_full_experiment (fixture->version_id);
  g_autoptr (GError) error = NULL;

  g_assert_true (fm_experiments_save (fixture->notebook, experiment, &error));
  g_assert_no_error (error);
  g_assert_cmpint (experiment->id, >, 0);
  fixture_reopen (fixture);
  g_autoptr (FmExperiment) loaded = fm_experiments_load (fixture->notebook, experiment->id, &error);
  g_assert_no_error (error);
  g_assert_true (fm_experiment_equal (experiment, loaded));

  g_autoptr (FmExperiment) blank = fm_experiment_new ();
  blank->version_id = fixture->version_id;
  g_assert_true (fm_experiments_save (fixture->notebook, blank, &error));
  g_autoptr (FmExperiment) blank_loaded =
      fm_experiments_load (fixture->notebook, blank->id, &error);
  g_assert_true (fm_experiment_equal (blank, blank_loaded));
}

static void
test_update (Fixture *fixture, gconstpointer data)
{
  g_autoptr (FmExperiment) experiment = new_full_experiment (fixture->version_id);
  g_autoptr (GError) error = NULL;

  g_assert_true (fm_experiments_save (fixture->notebook, experiment, &error));
  g_array_set_size (experiment->patties, 1);
  g_array_set_size (experiment->weighings, 1);
  g_clear_pointer (&experiment->notes, g_free);
  experiment->surface_temp_c = NAN;
  g_assert_true (fm_experiments_save (fixture->notebook, experiment, &error));
  g_assert_no_error (error);
  g_autoptr (FmExperiment) loaded = fm_experiments_load (fixture->notebook, experiment->id, &error);
  g_assert_true (fm_experiment_equal (experiment, loaded));
}

static void
test_keeps_its_version (Fixture *fixture, gconstpointer data)
{
  g_autoptr (FmExperiment) experiment = new_full_experiment (fixture->version_id);
  g_autoptr (GError) error = NULL;

  g_assert_true (fm_experiments_save (fixture->notebook, experiment, &error));
  experiment->version_id = fixture_add_version (fixture->notebook, fixture->blend_id, 25);
  g_assert_true (fm_experiments_save (fixture->notebook, experiment, &error));
  g_autoptr (FmExperiment) loaded = fm_experiments_load (fixture->notebook, experiment->id, &error);
  g_assert_cmpint (loaded->version_id, ==, fixture->version_id);
}

static void
test_refusals (Fixture *fixture, gconstpointer data)
{
  g_autoptr (FmExperiment) experiment = new_full_experiment (999);
  g_autoptr (GError) error = NULL;

  g_assert_false (fm_experiments_save (fixture->notebook, experiment, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND);
  g_assert_cmpint (experiment->id, ==, 0);
  g_clear_error (&error);
  experiment->version_id = fixture->version_id;
  experiment->plate_mm = INFINITY;
  g_assert_false (fm_experiments_save (fixture->notebook, experiment, &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE);
  g_clear_error (&error);
  experiment->plate_mm = 8;
  experiment->id = 77;
  g_assert_false (fm_experiments_save (fixture->notebook, experiment, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND);
  g_clear_error (&error);
  g_assert_null (fm_experiments_load (fixture->notebook, 77, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND);
  g_clear_error (&error);
  g_assert_false (fm_experiments_remove (fixture->notebook, 77, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND);
}

static guint
count (Fixture *fixture, const FmExperimentFilter *filter)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) infos = fm_experiments_list (fixture->notebook, filter, NULL, &error);

  g_assert_no_error (error);
  return infos->len;
}

static guint
count_text (Fixture *fixture, const char *text)
{
  const FmExperimentFilter filter = { .text = text };

  return count (fixture, &filter);
}

static void
test_search (Fixture *fixture, gconstpointer data)
{
  fixture_add_experiment (fixture, "Crust trial", "A crisp, dark crust. Crème on top.");
  fixture_add_experiment (fixture, "Crumb", "loose AND dry");
  gint64 id = fixture_add_experiment (fixture, NULL, NULL);

  g_assert_cmpuint (count_text (fixture, NULL), ==, 3);
  g_assert_cmpuint (count_text (fixture, "  "), ==, 3);
  g_assert_cmpuint (count_text (fixture, "cr"), ==, 2);
  g_assert_cmpuint (count_text (fixture, "dark tri"), ==, 1);
  g_assert_cmpuint (count_text (fixture, "creme"), ==, 1);
  g_assert_cmpuint (count_text (fixture, "CRÈ"), ==, 1);
  g_assert_cmpuint (count_text (fixture, "and"), ==, 1);
  g_assert_cmpuint (count_text (fixture, "crust dry"), ==, 0);
  g_assert_true (fm_experiments_remove (fixture->notebook, id, NULL));
  g_assert_cmpuint (count_text (fixture, ""), ==, 2);
}

static void
test_search_has_no_syntax (Fixture *fixture, gconstpointer data)
{
  static const char *const texts[] = {
    "\"", "\"\"", "*",     "NEAR(",   "title:",        "a AND",   "OR",     "NOT NOT",
    "(",  "^a",   "a\"b",  "-x",      "a*b*",          "'; DROP", "{a b}:", "\xff\xfe",
    "%",  "a+b",  "\\\"x", "a:b:c d", "\u2028 \u0301", "x\ny\tz", "--",     "日本 語",
  };
  g_autoptr (GString) many = g_string_new (NULL);

  fixture_add_experiment (fixture, "a b c", "x y z");
  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    count_text (fixture, texts[i]);
  for (guint i = 0; i < 2000; i++)
    g_string_append (many, "a b\" ");
  g_assert_cmpuint (count_text (fixture, many->str), ==, 1);
}

static void
test_search_follows_edits (Fixture *fixture, gconstpointer data)
{
  gint64 id = fixture_add_experiment (fixture, "Old words", NULL);
  g_autoptr (FmExperiment) experiment = fm_experiments_load (fixture->notebook, id, NULL);

  g_free (experiment->title);
  experiment->title = g_strdup ("New heading");
  g_assert_true (fm_experiments_save (fixture->notebook, experiment, NULL));
  g_assert_cmpuint (count_text (fixture, "old"), ==, 0);
  g_assert_cmpuint (count_text (fixture, "heading"), ==, 1);
}

static gint64
add_rated (Fixture *fixture, gint64 version_id, gint64 made_at, int rating, double cooked_g)
{
  g_autoptr (FmExperiment) experiment = fm_experiment_new ();
  const FmPattyMass patty = { 100, cooked_g };

  experiment->version_id = version_id;
  experiment->made_at = made_at;
  experiment->rating = rating;
  g_array_append_val (experiment->patties, patty);
  g_assert_true (fm_experiments_save (fixture->notebook, experiment, NULL));
  return experiment->id;
}

static void
assert_order (Fixture *fixture, FmExperimentSort sort, gboolean descending, const gint64 *ids)
{
  const FmExperimentFilter filter = { .sort = sort, .descending = descending };
  g_autoptr (GPtrArray) infos = fm_experiments_list (fixture->notebook, &filter, NULL, NULL);

  g_assert_cmpuint (infos->len, ==, 3);
  for (guint i = 0; i < 3; i++)
    g_assert_cmpint (((FmExperimentInfo *)infos->pdata[i])->id, ==, ids[i]);
  for (guint i = 0; i < 9; i++) {
    const int order = fm_experiments_compare (infos->pdata[i / 3], infos->pdata[i % 3], &filter);

    g_assert_cmpint ((order > 0) - (order < 0), ==, (int)(i / 3 > i % 3) - (i / 3 < i % 3));
  }
}

/* The index only helps to find what is in the rows: damage in it refuses no words. */
static void
test_search_is_mended (Fixture *fixture, gconstpointer data)
{
  g_autoptr (FmExperiment) experiment = fm_experiment_new ();
  g_autoptr (GError) error = NULL;
  sqlite3 *handle = NULL;

  experiment->version_id = fixture->version_id;
  experiment->title = g_strdup ("Smoked");
  g_assert_true (fm_experiments_save (fixture->notebook, experiment, NULL));
  g_clear_pointer (&fixture->notebook, fm_notebook_unref);
  g_assert_cmpint (sqlite3_open (fixture->path, &handle), ==, SQLITE_OK);
  g_assert_cmpint (
      sqlite3_exec (handle, "UPDATE experiments_fts_data SET block = x'00'", NULL, NULL, NULL), ==,
      SQLITE_OK);
  sqlite3_close (handle);
  fixture->notebook = fm_notebook_open (fixture->path, NULL, &error);
  g_assert_no_error (error);

  g_free (experiment->title);
  experiment->title = g_strdup ("Braised");
  g_assert_true (fm_experiments_save (fixture->notebook, experiment, &error));
  g_assert_no_error (error);
  g_assert_true (fm_experiments_remove (fixture->notebook, experiment->id, &error));
}

static void
test_sort_and_filter (Fixture *fixture, gconstpointer data)
{
  gint64 leaner = fixture_add_version (fixture->notebook, fixture->blend_id, 10);
  gint64 a = add_rated (fixture, fixture->version_id, 1000, 5, 70);
  gint64 b = add_rated (fixture, leaner, 2000, 0, NAN);
  gint64 c = add_rated (fixture, fixture->version_id, 3000, 9, 80);

  assert_order (fixture, FM_EXPERIMENT_SORT_DATE, FALSE, (gint64[]){ a, b, c });
  assert_order (fixture, FM_EXPERIMENT_SORT_DATE, TRUE, (gint64[]){ c, b, a });
  assert_order (fixture, FM_EXPERIMENT_SORT_RATING, FALSE, (gint64[]){ a, c, b });
  assert_order (fixture, FM_EXPERIMENT_SORT_RATING, TRUE, (gint64[]){ c, a, b });
  assert_order (fixture, FM_EXPERIMENT_SORT_COOK_LOSS, FALSE, (gint64[]){ c, a, b });
  assert_order (fixture, FM_EXPERIMENT_SORT_COOK_LOSS, TRUE, (gint64[]){ a, c, b });
  assert_order (fixture, FM_EXPERIMENT_SORT_FAT, FALSE, (gint64[]){ b, c, a });
  assert_order (fixture, FM_EXPERIMENT_SORT_BLEND, TRUE, (gint64[]){ b, c, a });
  g_assert_cmpuint (count (fixture, &(FmExperimentFilter){ .version_id = leaner }), ==, 1);
  g_assert_cmpuint (count (fixture, &(FmExperimentFilter){ .only_id = b }), ==, 1);
  g_assert_cmpuint (count (fixture, &(FmExperimentFilter){ .only_id = a, .version_id = leaner }),
                    ==, 0);
  g_assert_cmpuint (count (fixture, &(FmExperimentFilter){ .blend_id = fixture->blend_id }), ==, 3);
  g_assert_cmpuint (count (fixture, &(FmExperimentFilter){ .blend_id = 99 }), ==, 0);
  g_assert_cmpuint (count (fixture, &(FmExperimentFilter){ .from = 2000, .to = 3000 }), ==, 1);
  g_assert_cmpuint (count (fixture, &(FmExperimentFilter){ .min_rating = 6 }), ==, 1);
  g_assert_cmpuint (count (fixture, &(FmExperimentFilter){ .with_photos = TRUE }), ==, 0);
}

static void
test_info (Fixture *fixture, gconstpointer data)
{
  g_autoptr (FmExperiment) experiment = new_full_experiment (fixture->version_id);

  g_assert_true (fm_experiments_save (fixture->notebook, experiment, NULL));
  g_autoptr (GPtrArray) infos = fm_experiments_list (fixture->notebook, NULL, NULL, NULL);
  const FmExperimentInfo *info = infos->pdata[0];
  g_assert_cmpint (info->blend_id, ==, fixture->blend_id);
  g_assert_cmpint (info->version_number, ==, 1);
  g_assert_cmpstr (info->blend_name, ==, "Blend");
  g_assert_cmpstr (info->title, ==, "Käse, first try");
  g_assert_cmpfloat_with_epsilon (info->fat_pct, 20, 1e-9);
  g_assert_cmpfloat_with_epsilon (info->mean_raw_g, 181.125, 1e-9);
  g_assert_cmpfloat_with_epsilon (info->cook_loss_pct, 27.5, 1e-9);
  g_assert_cmpfloat_with_epsilon (info->peak_core_c, 68.5, 1e-9);
  g_assert_cmpint (info->rating, ==, 8);
}

static void
test_cancel (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autoptr (GError) error = NULL;

  fixture_add_experiment (fixture, "One", NULL);
  g_cancellable_cancel (cancellable);
  g_assert_null (fm_experiments_list (fixture->notebook, NULL, cancellable, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
  g_assert_cmpuint (count_text (fixture, NULL), ==, 1);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("round-trip", test_round_trip);
  ADD ("update", test_update);
  ADD ("keeps-its-version", test_keeps_its_version);
  ADD ("refusals", test_refusals);
  ADD ("search", test_search);
  ADD ("search-has-no-syntax", test_search_has_no_syntax);
  ADD ("search-follows-edits", test_search_follows_edits);
  ADD ("search-is-mended", test_search_is_mended);
  ADD ("sort-and-filter", test_sort_and_filter);
  ADD ("info", test_info);
  ADD ("cancel", test_cancel);
  return g_test_run ();
}
