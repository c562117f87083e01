/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* What another program changes in a notebook is noticed, and what this one changes never is. */
#include <sqlite3.h>
#include <string.h>

#include "log-fixture.h"
#include "store/demo/fm-demo.h"
#include "store/fm-notebook-recover.h"
#include "store/fm-versions.h"
#include "store/notebook/fm-db.h"
#include "store/notebook/fm-record-check.h"

#define ADD(name, func)                                                                            \
  g_test_add ("/record-check/" name, Fixture, NULL, fixture_set_up, func, fixture_tear_down)

static GPtrArray *
check (FmNotebook *notebook)
{
  g_autoptr (GError) error = NULL;
  GPtrArray *altered = fm_record_check_run (notebook, NULL, &error);

  g_assert_no_error (error);
  return altered;
}

static void
assert_unaltered (FmNotebook *notebook)
{
  g_autoptr (GPtrArray) altered = check (notebook);

  for (guint i = 0; i < altered->len; i++) {
    const FmAlteredRecord *record = altered->pdata[i];
    g_test_message ("%s %" G_GINT64_FORMAT, record->table, record->id);
  }
  g_assert_cmpuint (altered->len, ==, 0);
}

/* As another program would, which asks no trigger of ours. Says how many rows it changed. */
static int
alter (const char *path, const char *sql)
{
  sqlite3 *handle = NULL;
  char *message = NULL;

  g_assert_cmpint (sqlite3_open (path, &handle), ==, SQLITE_OK);
  sqlite3_db_config (handle, SQLITE_DBCONFIG_ENABLE_TRIGGER, 0, NULL);
  if (sqlite3_exec (handle, sql, NULL, NULL, &message) != SQLITE_OK)
    g_error ("%s: %s", sql, message);
  const int n_rows = sqlite3_changes (handle);
  sqlite3_close (handle);
  return n_rows;
}

static void
close_notebook (Fixture *fixture)
{
  g_clear_pointer (&fixture->notebook, fm_notebook_unref);
}

static void
assert_one (Fixture *fixture, const char *table, gint64 id, const char *name)
{
  fixture_reopen (fixture);
  g_autoptr (GPtrArray) altered = check (fixture->notebook);
  g_assert_cmpuint (altered->len, ==, 1);
  const FmAlteredRecord *record = altered->pdata[0];
  g_assert_cmpstr (record->table, ==, table);
  g_assert_cmpint (record->id, ==, id);
  g_assert_cmpstr (record->name, ==, name);
  close_notebook (fixture);
}

static void
test_experiment (Fixture *fixture, gconstpointer data)
{
  const gint64 id = fixture_add_experiment (fixture, "Sunday", "Crust was thin");

  fixture_add_experiment (fixture, "Monday", "Another");
  assert_unaltered (fixture->notebook);
  close_notebook (fixture);
  g_assert_cmpint (
      alter (fixture->path, "UPDATE experiments SET rating = 9 WHERE title = 'Sunday'"), ==, 1);
  assert_one (fixture, "experiments", id, "Sunday");
  /* Saved again, it is what the cook wants it to be. */
  fixture_reopen (fixture);
  g_autoptr (FmExperiment) experiment = fm_experiments_load (fixture->notebook, id, NULL);
  g_assert_true (fm_experiments_save (fixture->notebook, experiment, NULL));
  assert_unaltered (fixture->notebook);
}

static void
test_gone_and_new (Fixture *fixture, gconstpointer data)
{
  const gint64 id = fixture_add_experiment (fixture, "Sunday", "Crust was thin");

  close_notebook (fixture);
  g_assert_cmpint (alter (fixture->path, "UPDATE experiments SET id = id + 5"), ==, 1);
  fixture_reopen (fixture);
  g_autoptr (GPtrArray) altered = check (fixture->notebook);
  g_assert_cmpuint (altered->len, ==, 2);
  const FmAlteredRecord *strange = altered->pdata[0];
  const FmAlteredRecord *gone = altered->pdata[1];
  g_assert_cmpint (strange->id, ==, id + 5);
  g_assert_false (strange->is_gone);
  g_assert_cmpint (gone->id, ==, id);
  g_assert_true (gone->is_gone);
}

static void
test_own_entries_and_settings (Fixture *fixture, gconstpointer data)
{
  g_autoptr (FmIngredient) entry = fm_ingredient_new ("Suet", FM_INGREDIENT_CUT);
  g_autoptr (GError) error = NULL;

  entry->source_ref = g_strdup ("own:suet");
  g_assert_true (fm_ingredients_save (fixture->notebook, entry, &error));
  g_assert_no_error (error);
  fm_notebook_set_setting (fixture->notebook, "last-page", "formula", &error);
  g_assert_no_error (error);
  assert_unaltered (fixture->notebook);
  close_notebook (fixture);
  alter (fixture->path, "UPDATE ingredients SET saved_at = 1");
  assert_one (fixture, "ingredients", 0, "Suet");
}

/* A removal leaves nothing behind, and what was rolled back was never there. */
static void
test_removed_and_rolled_back (Fixture *fixture, gconstpointer data)
{
  const gint64 id = fixture_add_experiment (fixture, "Sunday", NULL);
  FmDb *db = fm_notebook_begin (fixture->notebook, NULL);

  g_assert_true (fm_db_exec (db, "UPDATE experiments SET rating = 7", NULL));
  fm_notebook_end (fixture->notebook, FALSE, NULL);
  assert_unaltered (fixture->notebook);
  g_assert_true (fm_experiments_remove (fixture->notebook, id, NULL));
  assert_unaltered (fixture->notebook);
}

/* One that an earlier program wrote is summed when it is opened. */
static void
test_first_time (Fixture *fixture, gconstpointer data)
{
  fixture_add_experiment (fixture, "Sunday", NULL);
  close_notebook (fixture);
  alter (fixture->path, "DELETE FROM record_checks; UPDATE experiments SET rating = 3");
  fixture_reopen (fixture);
  assert_unaltered (fixture->notebook);
  close_notebook (fixture);
  alter (fixture->path, "UPDATE experiments SET rating = 4");
  fixture_reopen (fixture);
  g_autoptr (GPtrArray) altered = check (fixture->notebook);
  g_assert_cmpuint (altered->len, ==, 1);
}

static void
test_cancelled (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autoptr (GError) error = NULL;

  g_cancellable_cancel (cancellable);
  g_assert_null (fm_record_check_run (fixture->notebook, cancellable, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
}

/* What was lost with a page is told once, and what was read of a record is marked. */
static void
test_recovered (Fixture *fixture, gconstpointer data)
{
  g_autofree char *path = fm_notebook_recover_path (fixture->path);
  g_autofree char *report = NULL;
  g_autoptr (GError) error = NULL;

  fixture_add_experiment (fixture, "Sunday", NULL);
  fixture_add_experiment (fixture, "Monday", NULL);
  close_notebook (fixture);
  alter (fixture->path, "DELETE FROM experiments WHERE title = 'Sunday';"
                        "UPDATE experiments SET notes = 'shorter'");
  g_autoptr (FmNotebook) made = fm_notebook_recover (fixture->path, path, &report, NULL, &error);
  g_assert_no_error (error);
  g_autoptr (GPtrArray) altered = check (made);
  g_assert_cmpuint (altered->len, ==, 1);
  g_assert_cmpstr (((const FmAlteredRecord *)altered->pdata[0])->name, ==, "Monday");
}

/* Each table of a notebook that has something of everything. */
static void
check_table (const char *path, const char *table, const char *whole, gsize size)
{
  g_autofree char *sql =
      g_strdup_printf ("PRAGMA foreign_keys = OFF; DELETE FROM %s WHERE rowid = (SELECT max(rowid)"
                       " FROM %s)",
                       table, table);
  g_autoptr (GError) error = NULL;
  sqlite3 *handle = NULL;

  g_assert_true (g_file_set_contents (path, whole, (gssize)size, NULL));
  g_assert_cmpint (sqlite3_open (path, &handle), ==, SQLITE_OK);
  sqlite3_db_config (handle, SQLITE_DBCONFIG_ENABLE_TRIGGER, 0, NULL);
  sqlite3_stmt *stmt = NULL;
  /* A table without row numbers loses all its rows. */
  if (sqlite3_prepare_v2 (handle, sql + strlen ("PRAGMA foreign_keys = OFF;"), -1, &stmt, NULL) !=
      SQLITE_OK) {
    g_free (sql);
    sql = g_strdup_printf ("PRAGMA foreign_keys = OFF; DELETE FROM %s", table);
  }
  sqlite3_finalize (stmt);
  sqlite3_close (handle);
  if (alter (path, sql) == 0) {
    g_test_message ("%s: no rows", table);
    return;
  }
  g_autoptr (FmNotebook) notebook = fm_notebook_open (path, NULL, &error);
  g_assert_no_error (error);
  g_autoptr (GPtrArray) altered = check (notebook);
  g_test_message ("%s: %u", table, altered->len);
  g_assert_cmpuint (altered->len, >, 0);
}

static void
test_all_tables (Fixture *fixture, gconstpointer data)
{
  static const char *const tables[] = {
    "settings",         "ingredients",        "prices",       "blends",         "drafts",
    "servings",         "serving_parts",      "experiments",  "weighings",      "patties",
    "core_readings",    "kitchen_events",     "photos",       "tastings",       "tasting_samples",
    "tasting_tasters",  "tasting_marks",      "tasting_cups", "tasting_events", "tasting_outcomes",
    "tasting_remarks",  "map_components",     "maps",         "map_members",    "map_points",
    "ingredient_names", "tasting_attributes",
  };
  g_autofree char *foods_path = fm_food_store_default_path ();
  g_autofree char *path = g_build_filename (fixture->folder, "demo.forcemeat", NULL);
  g_autofree char *whole = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (FmFoodStore) foods = fm_food_store_open (foods_path, &error);
  gsize size;

  g_assert_no_error (error);
  g_autoptr (FmNotebook) notebook = fm_demo_create (path, foods, NULL, &error);
  g_assert_no_error (error);
  assert_unaltered (notebook);
  g_clear_pointer (&notebook, fm_notebook_unref);
  g_assert_true (g_file_get_contents (path, &whole, &size, NULL));
  for (gsize i = 0; i < G_N_ELEMENTS (tables); i++)
    check_table (path, tables[i], whole, size);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("experiment", test_experiment);
  ADD ("gone-and-new", test_gone_and_new);
  ADD ("own-entries-and-settings", test_own_entries_and_settings);
  ADD ("removed-and-rolled-back", test_removed_and_rolled_back);
  ADD ("first-time", test_first_time);
  ADD ("cancelled", test_cancelled);
  ADD ("recovered", test_recovered);
  ADD ("all-tables", test_all_tables);
  return g_test_run ();
}
