/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-migration.c - a notebook of the first release is brought up to date and loses nothing */
#include "store-fixture.h"

#include <signal.h>
#include <string.h>
#include <sys/wait.h>

#include "full-disk.h"
#include "notebook-v1.h"
#include "store/notebook/fm-db.h"
#include "store/notebook/fm-schema-v1.h"
#include "store/notebook/fm-schema-v2.h"
#include "store/fm-tastings.h"
#include "store/notebook/fm-schema.h"

#define V1_FILE SRCDIR "/tests/store/data/notebook-v1.forcemeat"
#define V1_PICTURE SRCDIR "/tests/store/data/notebook-v1.png"
#define N_KILLS 20

static const FmMigration first_release[] = { { 1, fm_schema_v1_sql } };

static void
copy_v1 (const char *path)
{
  g_autofree char *bytes = NULL;
  gsize length;

  g_assert_true (g_file_get_contents (V1_FILE, &bytes, &length, NULL));
  g_assert_true (g_file_set_contents (path, bytes, (gssize)length, NULL));
}

static gint64
query_int (FmNotebook *notebook, const char *sql)
{
  g_autoptr (FmReader) db = fm_notebook_reader (notebook, NULL, NULL);
  gint64 value = -1;

  g_assert_true (fm_db_query_int (db, sql, &value, NULL));
  return value;
}

static guint
count_files (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  guint n_files = 0;

  while (g_dir_read_name (dir) != NULL)
    n_files++;
  return n_files;
}

static guint
count_backups (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;
  guint n_backups = 0;

  while ((name = g_dir_read_name (dir)) != NULL)
    n_backups += strstr (name, "backup") != NULL;
  return n_backups;
}

static void
assert_blends (FmNotebook *notebook)
{
  g_autoptr (GPtrArray) blends = fm_blends_list (notebook, NULL);
  g_autoptr (GPtrArray) versions = fm_versions_list (notebook, 1, NULL);
  g_autoptr (FmFormula) draft = fm_draft_load (notebook, 1, NULL, NULL);
  g_autoptr (FmFormula) expected_draft = notebook_v1_formula (4);

  g_assert_cmpuint (blends->len, ==, 1);
  g_assert_cmpstr (((FmBlendInfo *)blends->pdata[0])->name, ==, NOTEBOOK_V1_BLEND);
  g_assert_cmpuint (versions->len, ==, NOTEBOOK_V1_N_VERSIONS);
  for (int number = 1; number <= NOTEBOOK_V1_N_VERSIONS; number++) {
    g_autoptr (FmFormula) expected = notebook_v1_formula (number);
    g_autoptr (FmFormula) formula = fm_versions_load (notebook, number, NULL);
    g_autofree char *reason = g_strdup_printf ("Reason %d", number);

    g_assert_true (fm_formula_equal (formula, expected));
    g_assert_cmpstr (((FmVersionInfo *)versions->pdata[number - 1])->reason, ==, reason);
  }
  g_assert_true (fm_formula_equal (draft, expected_draft));
}

static void
assert_log (FmNotebook *notebook)
{
  const FmExperimentFilter search = { .text = "räucher crust" };
  g_autoptr (GPtrArray) found = fm_experiments_list (notebook, &search, NULL, NULL);
  g_autoptr (GPtrArray) photos = fm_photos_list (notebook, 1, NULL);
  g_autoptr (GBytes) original = fm_photos_original (notebook, 1, NULL);
  g_autofree char *picture = NULL;
  gsize length;

  for (int number = 1; number <= NOTEBOOK_V1_N_EXPERIMENTS; number++) {
    g_autoptr (FmExperiment) expected = notebook_v1_experiment (number, NOTEBOOK_V1_N_VERSIONS);
    g_autoptr (FmExperiment) experiment = fm_experiments_load (notebook, number, NULL);

    expected->id = number;
    /* its version has no salt, so what was recorded came on top */
    expected->surface_salt_pct = expected->salt_pct;
    expected->salt_pct = NAN;
    g_assert_true (fm_experiment_equal (experiment, expected));
    g_assert_true (isnan (experiment->patty_diameter_mm) &&
                   isnan (experiment->patty_thickness_mm) && isnan (experiment->target_core_c));
  }
  g_assert_cmpuint (found->len, ==, 1);
  g_assert_cmpint (((FmExperimentInfo *)found->pdata[0])->n_photos, ==, 1);
  g_assert_cmpuint (photos->len, ==, 1);
  g_assert_cmpstr (((FmPhotoInfo *)photos->pdata[0])->caption, ==, NOTEBOOK_V1_CAPTION);
  g_assert_true (g_file_get_contents (V1_PICTURE, &picture, &length, NULL));
  g_assert_cmpmem (g_bytes_get_data (original, NULL), g_bytes_get_size (original), picture, length);
}

static void
assert_pantry (FmNotebook *notebook)
{
  g_autoptr (GPtrArray) ingredients = fm_ingredients_list (notebook, NULL, NULL);
  g_autoptr (FmIngredient) own = notebook_v1_ingredient ("v1-own", "House trim", 28.5, 5.2);
  g_autoptr (GArray) prices = fm_prices_list (notebook, fm_ingredient_identity (own), 10, NULL);
  g_autofree char *currency = fm_notebook_get_setting (notebook, "currency");

  g_assert_cmpuint (ingredients->len, ==, 1);
  g_assert_true (fm_ingredient_equal (ingredients->pdata[0], own));
  g_assert_cmpuint (prices->len, ==, 1);
  g_assert_cmpfloat (g_array_index (prices, FmPrice, 0).price_per_kg, ==, 5.2);
  g_assert_cmpint (g_array_index (prices, FmPrice, 0).recorded_at, ==, NOTEBOOK_V1_DAY);
  g_assert_cmpstr (currency, ==, NOTEBOOK_V1_CURRENCY);
}

static void
assert_everything (FmNotebook *notebook)
{
  assert_blends (notebook);
  assert_log (notebook);
  assert_pantry (notebook);
  g_assert_cmpint (query_int (notebook, "SELECT count(*) FROM pragma_foreign_key_check"), ==, 0);
}

static void
test_keeps_everything (Fixture *self, gconstpointer data)
{
  g_autofree char *backup = g_strconcat (self->path, ".version-1-backup", NULL);
  g_autoptr (FmNotebook) notebook = NULL;

  copy_v1 (self->path);
  notebook = open_notebook (self->path);
  g_assert_cmpint (query_int (notebook, "PRAGMA user_version"), ==, fm_schema_version ());
  assert_everything (notebook);
  g_assert_cmpint (query_int (notebook, "SELECT count(*) FROM tastings"), ==, 0);
  fm_notebook_unref (g_steal_pointer (&notebook));
  g_assert_cmpuint (count_files (self->folder), ==, (guint)fm_schema_version ());

  /* Once only: opening it again makes no other backup. */
  notebook = open_notebook (self->path);
  assert_everything (notebook);
  fm_notebook_unref (g_steal_pointer (&notebook));
  g_assert_cmpuint (count_files (self->folder), ==, (guint)fm_schema_version ());

  /* The backup is the old notebook, and is brought up to date like it. */
  fm_schema_set_migrations_for_test (first_release, 1);
  notebook = open_notebook (backup);
  g_assert_cmpint (query_int (notebook, "PRAGMA user_version"), ==, 1);
  fm_notebook_unref (g_steal_pointer (&notebook));
  fm_schema_set_migrations_for_test (NULL, 0);
  notebook = open_notebook (backup);
  assert_everything (notebook);
}

/* Migrated and new notebooks are the same to the check against strange parts. */
static void
test_same_schema (Fixture *self, gconstpointer data)
{
  static const char sql[] = "SELECT group_concat(sql, char(10)) FROM (SELECT sql FROM sqlite_schema"
                            " WHERE name NOT LIKE 'sqlite_%' ORDER BY type, name)";
  g_autofree char *path = g_build_filename (self->folder, "new.forcemeat", NULL);
  g_autoptr (FmNotebook) fresh = create_notebook (path);
  g_autoptr (FmNotebook) migrated = NULL;

  copy_v1 (self->path);
  migrated = open_notebook (self->path);
  g_autoptr (FmReader) db = fm_notebook_reader (fresh, NULL, NULL);
  g_autoptr (FmReader) other = fm_notebook_reader (migrated, NULL, NULL);
  g_autofree char *expected = fm_db_query_text (db, sql, NULL);
  g_autofree char *found = fm_db_query_text (other, sql, NULL);
  g_assert_cmpstr (found, ==, expected);
}

static void
test_old_reader_refuses (Fixture *self, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *before = NULL, *after = NULL;
  gsize length, length_after;

  fm_notebook_unref (create_notebook (self->path));
  g_assert_true (g_file_get_contents (self->path, &before, &length, NULL));
  fm_schema_set_migrations_for_test (first_release, 1);
  g_assert_null (fm_notebook_open (self->path, NULL, &error));
  fm_schema_set_migrations_for_test (NULL, 0);
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_NEWER);
  g_assert_cmpstr (error->message, ==,
                   "This notebook was written by a newer Forcemeat. It was left as it is. Update "
                   "Forcemeat to open it.");
  g_assert_true (g_file_get_contents (self->path, &after, &length_after, NULL));
  g_assert_cmpmem (before, length, after, length_after);
}

static void
test_read_only (Fixture *self, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FmNotebook) notebook = NULL;

  copy_v1 (self->path);
  g_assert_null (fm_notebook_open_read_only (self->path, NULL, &error));
  g_assert_nonnull (strstr (error->message, "brought up to date first"));
  g_clear_error (&error);
  if (geteuid () == 0) {
    g_test_message ("root may write everywhere, so permissions are not looked at");
  } else {
    g_chmod (self->path, 0400);
    g_assert_null (fm_notebook_open (self->path, NULL, &error));
    g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_NO_PERMISSION);
    g_chmod (self->path, 0600);
  }
  notebook = open_notebook (self->path);
  assert_everything (notebook);
}

static void
test_full_at_every_write (Fixture *self, gconstpointer data)
{
  g_autoptr (FmNotebook) notebook = NULL;
  int n_refused = 0;

  if (!replace_pwrite (TRUE)) {
    g_test_skip ("this SQLite does not let its writes be replaced");
    return;
  }
  copy_v1 (self->path);
  for (int n_writes = 0; notebook == NULL && n_writes < 1000; n_writes++) {
    g_autoptr (GError) error = NULL;

    writes_left = n_writes;
    notebook = fm_notebook_open (self->path, NULL, &error);
    writes_left = G_MAXINT;
    if (notebook == NULL) {
      n_refused++;
      g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_DISK_FULL);
      /* a step that was done keeps its backup, one that failed leaves none */
      g_assert_cmpuint (count_backups (self->folder), <=, (guint)fm_schema_version () - 2);
    }
  }
  replace_pwrite (FALSE);
  g_test_message ("refused with %d full disks", n_refused);
  g_assert_cmpint (n_refused, >, 20);
  assert_everything (notebook);
}

/* Whenever the program dies, the notebook is the old or the new one, and opens. */
static void
test_kill (Fixture *self, gconstpointer data)
{
  for (int i = 0; i < N_KILLS; i++) {
    g_autoptr (FmNotebook) notebook = NULL;
    int status;
    pid_t child;

    copy_v1 (self->path);
    child = fork ();
    g_assert_cmpint (child, >=, 0);
    if (child == 0) {
      notebook = fm_notebook_open (self->path, NULL, NULL);
      for (;;)
        pause ();
    }
    g_usleep ((gulong)g_test_rand_int_range (0, 40000));
    kill (child, SIGKILL);
    g_assert_cmpint (waitpid (child, &status, 0), ==, child);
    notebook = open_notebook (self->path);
    assert_everything (notebook);
    fm_notebook_unref (g_steal_pointer (&notebook));
    g_unlink (self->path);
  }
}

static const FmMigration second_release[] = { { 1, fm_schema_v1_sql }, { 2, fm_schema_v2_sql } };

/* A sealed tasting of the second release: pair and main round share codes, seed alone */
static const char sealed_sql[] =
    "INSERT INTO tastings (id, held_at, title, tasks, seed, max_per_taster, is_order_expected,"
    " pair_1, pair_2, state) VALUES (1, 1750000000, 'Old panel', 9, 42, 3, 0, 0, 1, 0);"
    "INSERT INTO tasting_samples VALUES (1, 0, NULL, 'Lean', 0), (1, 1, NULL, 'Fat', 0);"
    "INSERT INTO tasting_tasters VALUES (1, 0, 'Ana', 1);"
    "INSERT INTO tasting_cups VALUES (1, 0, 0, 0, 0, 731), (1, 0, 0, 1, 1, 264),"
    " (1, 0, 1, 0, 1, 264), (1, 0, 1, 1, 0, 731);"
    "INSERT INTO tasting_marks VALUES (1, 0, 0, 0, 731, 1, 0, 1.0), (1, 1, 0, 0, 264, 1, 0, 2.0),"
    " (1, 2, 0, 1, 264, 8, 0, 1.0);"
    "INSERT INTO tasting_events VALUES (1, 0, 1750000100, 0, NULL), (1, 1, 1750000200, 1, NULL);"
    "UPDATE tastings SET state = 1 WHERE id = 1;";

static void
test_keeps_tastings (Fixture *self, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FmNotebook) notebook = NULL;

  fm_schema_set_migrations_for_test (second_release, 2);
  notebook = create_notebook (self->path);
  FmDb *db = fm_notebook_begin (notebook, &error);
  g_assert_true (fm_notebook_end (notebook, fm_db_exec (db, sealed_sql, &error), &error));
  g_assert_no_error (error);
  fm_notebook_unref (g_steal_pointer (&notebook));
  fm_schema_set_migrations_for_test (NULL, 0);

  notebook = open_notebook (self->path);
  g_assert_cmpint (query_int (notebook, "PRAGMA user_version"), ==, fm_schema_version ());
  g_autoptr (FmTasting) tasting = fm_tastings_load (notebook, 1, &error);
  g_assert_no_error (error);
  g_assert_true (fm_tasting_is_sealed (tasting));
  g_assert_cmpuint (tasting->hidden, ==, 0);
  g_assert_cmpint (tasting->blinding, ==, FM_TASTING_BLINDING_NOT_SAID);
  g_assert_cmpuint (tasting->cups->len, ==, 4);
  g_assert_cmpfloat (fm_tasting_mark (tasting, 0, 264, FM_TASTING_PREFERENCE, 0), ==, 1);
  g_assert_cmpuint (tasting->events->len, ==, 2);
  g_assert_cmpint (((FmTastingEvent *)tasting->events->pdata[1])->at, ==, 1750000200);
  /* it goes on as before, and its record stays protected */
  g_assert_true (fm_tasting_open (tasting, 1750000300, NULL, &error));
  g_assert_true (fm_tastings_save (notebook, tasting, &error));
  g_assert_no_error (error);
  db = fm_notebook_begin (notebook, &error);
  g_assert_false (
      fm_notebook_end (notebook, fm_db_exec (db, "DELETE FROM tasting_events", &error), &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_FROZEN);
}

/* Salt was one figure: of a version that holds salt it stays mixed in. */
static const char salted_sql[] =
    "INSERT INTO versions (id, blend_id, number, reason, saved_at, n_lines, formula_json)"
    " VALUES (1, 1, 1, 'r', 1, 1,"
    " '{\"lines\":[{\"ingredient\":{\"name\":\"Meersalz\",\"kind\":\"salt\"}}]}'),"
    " (2, 1, 2, 'r', 2, 1,"
    " '{\"lines\":[{\"ingredient\":{\"name\":\"salt beef\",\"kind\":\"cut\"}}]}');"
    "INSERT INTO experiments (id, version_id, blend_id, made_at, salt_pct)"
    " VALUES (1, 1, 1, 1, 1.5), (2, 2, 1, 1, 0.9), (3, 2, 1, 1, NULL);";

static void
test_parts_the_salt (Fixture *self, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FmNotebook) notebook = NULL;

  fm_schema_set_migrations_for_test (second_release, 2);
  notebook = create_notebook (self->path);
  fm_blends_add (notebook, "Salted", NULL);
  FmDb *db = fm_notebook_begin (notebook, &error);
  g_assert_true (fm_notebook_end (notebook, fm_db_exec (db, salted_sql, &error), &error));
  g_assert_no_error (error);
  fm_notebook_unref (g_steal_pointer (&notebook));
  fm_schema_set_migrations_for_test (NULL, 0);

  notebook = open_notebook (self->path);
  g_autoptr (FmExperiment) mixed_in = fm_experiments_load (notebook, 1, &error);
  g_autoptr (FmExperiment) on_top = fm_experiments_load (notebook, 2, &error);
  g_autoptr (FmExperiment) without = fm_experiments_load (notebook, 3, &error);
  g_assert_no_error (error);
  g_assert_cmpfloat (mixed_in->salt_pct, ==, 1.5);
  g_assert_true (isnan (mixed_in->surface_salt_pct));
  g_assert_cmpfloat (on_top->surface_salt_pct, ==, 0.9);
  g_assert_true (isnan (on_top->salt_pct));
  g_assert_true (isnan (without->salt_pct) && isnan (without->surface_salt_pct));
}

/* An older demo said in its names that it was invented; a notebook of one's own says nothing. */
static void
test_marks_the_demo (Fixture *self, gconstpointer data)
{
  for (guint is_demo = 0; is_demo < 2; is_demo++) {
    g_autofree char *name = g_strdup_printf ("%s-%u", self->path, is_demo);
    g_autoptr (FmNotebook) notebook = NULL;

    fm_schema_set_migrations_for_test (second_release, 2);
    notebook = create_notebook (name);
    if (is_demo)
      g_assert_true (fm_notebook_set_setting (notebook, "demo", "1", NULL));
    fm_notebook_unref (g_steal_pointer (&notebook));
    fm_schema_set_migrations_for_test (NULL, 0);
    notebook = open_notebook (name);
    g_assert_cmpstr (fm_notebook_invented (notebook), ==, is_demo ? fm_invented_words () : NULL);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  FIXTURE_TEST ("/migration/marks-the-demo", test_marks_the_demo);
  FIXTURE_TEST ("/migration/keeps-everything", test_keeps_everything);
  FIXTURE_TEST ("/migration/keeps-tastings", test_keeps_tastings);
  FIXTURE_TEST ("/migration/parts-the-salt", test_parts_the_salt);
  FIXTURE_TEST ("/migration/same-schema", test_same_schema);
  FIXTURE_TEST ("/migration/old-reader-refuses", test_old_reader_refuses);
  FIXTURE_TEST ("/migration/read-only", test_read_only);
  FIXTURE_TEST ("/migration/full-at-every-write", test_full_at_every_write);
  FIXTURE_TEST ("/migration/kill", test_kill);
  return g_test_run ();
}
