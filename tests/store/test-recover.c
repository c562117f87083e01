/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* Copies of a notebook are damaged, page by page and bit by bit, and read again. */
#include <sqlite3.h>
#include <string.h>

#include "log-fixture.h"
#include "store/fm-notebook-recover.h"

#define ADD(name, func)                                                                            \
  g_test_add ("/recover/" name, Fixture, NULL, fixture_set_up, func, fixture_tear_down)
#define N_EXPERIMENTS 200
#define N_COPIES 12

static gint64
count (const char *path, const char *table)
{
  g_autofree char *sql = g_strdup_printf ("SELECT count(*) FROM %s", table);
  sqlite3 *handle = NULL;
  sqlite3_stmt *stmt = NULL;

  g_assert_cmpint (sqlite3_open_v2 (path, &handle, SQLITE_OPEN_READONLY, NULL), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_prepare_v2 (handle, sql, -1, &stmt, NULL), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_step (stmt), ==, SQLITE_ROW);
  gint64 n = sqlite3_column_int64 (stmt, 0);
  sqlite3_finalize (stmt);
  sqlite3_close (handle);
  return n;
}

static void
fill (Fixture *fixture)
{
  for (int i = 0; i < N_EXPERIMENTS; i++) {
    g_autoptr (FmExperiment) experiment = fm_experiment_new ();
    g_autofree char *notes = g_strnfill (200 + 37 * (i % 11), (char)('a' + i % 26));

    experiment->version_id = fixture->version_id;
    experiment->title = g_strdup_printf ("Trial %d", i);
    experiment->notes = g_steal_pointer (&notes);
    fm_experiment_add_weighing (experiment, NULL, "Trim", 100, 100 + i);
    g_assert_true (fm_experiments_save (fixture->notebook, experiment, NULL));
  }
  g_clear_pointer (&fixture->notebook, fm_notebook_unref);
}

typedef struct {
  char *bytes;
  gsize size;
  char *path; /* of the damaged copy */
} Whole;

static void
whole_init (Whole *self, Fixture *fixture)
{
  g_assert_true (g_file_get_contents (fixture->path, &self->bytes, &self->size, NULL));
  self->path = g_build_filename (fixture->folder, "damaged.forcemeat", NULL);
}

static void
whole_clear (Whole *self)
{
  g_free (self->bytes);
  g_free (self->path);
}

/* Recovers the damaged copy; the new notebook is whole. */
static char *
recover (const Whole *whole, gint64 *n_experiments)
{
  g_autofree char *path = fm_notebook_recover_path (whole->path);
  g_autoptr (GError) error = NULL;
  char *report = NULL;
  g_autoptr (FmNotebook) made = fm_notebook_recover (whole->path, path, &report, NULL, &error);

  if (made == NULL) {
    g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_A_NOTEBOOK);
    g_assert_false (g_file_test (path, G_FILE_TEST_EXISTS));
    return NULL;
  }
  g_clear_pointer (&made, fm_notebook_unref);
  made = fm_notebook_open (path, NULL, &error);
  g_assert_no_error (error);
  *n_experiments = count (path, "experiments");
  g_clear_pointer (&made, fm_notebook_unref);
  g_unlink (path);
  return report;
}

static void
write_copy (const Whole *whole, const char *bytes, gsize size)
{
  g_assert_true (g_file_set_contents (whole->path, bytes, (gssize)size, NULL));
}

static void
test_whole_notebook (Fixture *fixture, gconstpointer data)
{
  Whole whole;
  gint64 n_experiments = 0;

  fill (fixture);
  whole_init (&whole, fixture);
  write_copy (&whole, whole.bytes, whole.size);
  g_autofree char *report = recover (&whole, &n_experiments);
  g_test_message ("%s", report);
  g_assert_nonnull (strstr (report, "No record was found that could not be read"));
  g_assert_cmpint (n_experiments, ==, N_EXPERIMENTS);
  whole_clear (&whole);
}

/* Each page in turn is zeroed: a page takes its own records and no others. */
static void
test_one_page (Fixture *fixture, gconstpointer data)
{
  Whole whole;
  gint64 fewest = N_EXPERIMENTS;
  double sum = 0;
  guint n_made = 0;

  fill (fixture);
  whole_init (&whole, fixture);
  const gsize page = 4096;
  const gsize n_pages = whole.size / page;
  const gsize step = MAX (1, n_pages / N_COPIES);
  for (gsize i = 1; i < n_pages; i += step) {
    g_autofree char *bytes = g_memdup2 (whole.bytes, whole.size);
    gint64 n_experiments = 0;

    memset (bytes + i * page, 0, page);
    write_copy (&whole, bytes, whole.size);
    g_autofree char *report = recover (&whole, &n_experiments);
    if (report == NULL)
      continue;
    n_made++;
    sum += (double)n_experiments;
    fewest = MIN (fewest, n_experiments);
  }
  g_test_message (
      "%u copies with one page of zeros: %.1f %% of the experiments on average, %" G_GINT64_FORMAT
      " of %d at least",
      n_made, 100.0 * sum / n_made / N_EXPERIMENTS, fewest, N_EXPERIMENTS);
  g_assert_cmpuint (n_made, >, (guint)(n_pages / step * 8 / 10));
  g_assert_cmpfloat (sum / n_made, >, 0.9 * N_EXPERIMENTS);
  whole_clear (&whole);
}

static void
test_cut_short (Fixture *fixture, gconstpointer data)
{
  Whole whole;
  gint64 last = 0;

  fill (fixture);
  whole_init (&whole, fixture);
  for (guint tenth = 1; tenth < 10; tenth++) {
    gint64 n_experiments = 0;

    write_copy (&whole, whole.bytes, whole.size / 10 * tenth);
    g_autofree char *report = recover (&whole, &n_experiments);
    g_test_message ("%u of 10: %" G_GINT64_FORMAT " experiments", tenth, n_experiments);
    if (report != NULL)
      g_assert_null (strstr (report, "No record was found"));
    last = n_experiments;
  }
  g_assert_cmpint (last, >, N_EXPERIMENTS / 2);
  whole_clear (&whole);
}

/* What is opened in spite of a flipped bit is either right or says what is wrong. */
static void
test_flipped_bits (Fixture *fixture, gconstpointer data)
{
  Whole whole;
  g_autoptr (GRand) random = g_rand_new_with_seed (13);

  fill (fixture);
  whole_init (&whole, fixture);
  for (guint i = 0; i < N_COPIES; i++) {
    g_autofree char *bytes = g_memdup2 (whole.bytes, whole.size);
    gint64 n_experiments = 0;

    for (guint k = 0; k < 20; k++)
      bytes[g_rand_int_range (random, 4096, (gint32)whole.size)] ^=
          (char)(1 << g_rand_int_range (random, 0, 8));
    write_copy (&whole, bytes, whole.size);
    g_autofree char *report = recover (&whole, &n_experiments);
    g_assert_true (report == NULL || g_utf8_validate (report, -1, NULL));
  }
  whole_clear (&whole);
}

/* A cook knows blends and tastings, not tables. */
static void
test_report_speaks_of_records (Fixture *fixture, gconstpointer data)
{
  g_autofree char *path = fm_notebook_recover_path (fixture->path);
  g_autofree char *report = NULL;
  g_autoptr (GError) error = NULL;
  sqlite3 *handle = NULL;
  sqlite3_stmt *stmt = NULL;
  GString *drops = g_string_new ("PRAGMA foreign_keys = OFF;");

  g_clear_pointer (&fixture->notebook, fm_notebook_unref);
  g_assert_cmpint (sqlite3_open (fixture->path, &handle), ==, SQLITE_OK);
  g_assert_cmpint (
      sqlite3_prepare_v2 (handle,
                          "SELECT name FROM sqlite_schema WHERE type = 'table' AND"
                          " name NOT LIKE 'sqlite%' AND name NOT LIKE 'experiments_fts%'",
                          -1, &stmt, NULL),
      ==, SQLITE_OK);
  while (sqlite3_step (stmt) == SQLITE_ROW)
    g_string_append_printf (drops, "DROP TABLE %s;", sqlite3_column_text (stmt, 0));
  sqlite3_finalize (stmt);
  g_assert_cmpint (sqlite3_exec (handle, drops->str, NULL, NULL, NULL), ==, SQLITE_OK);
  sqlite3_close (handle);
  g_string_free (drops, TRUE);
  g_autoptr (FmNotebook) made = fm_notebook_recover (fixture->path, path, &report, NULL, &error);
  g_assert_no_error (error);
  g_test_message ("%s", report);
  g_assert_nonnull (strstr (report, "Marks of tasters: perhaps some"));
  g_assert_null (strchr (report, '_'));
  for (const char *line = strstr (report, "• "); line != NULL; line = strstr (line + 1, "• "))
    g_assert_true (g_unichar_isupper (g_utf8_get_char (line + strlen ("• "))));
}

/* An experiment keeps its place when the formula that it was made from is gone. */
static void
test_lost_version (Fixture *fixture, gconstpointer data)
{
  static const char sql[] = "PRAGMA foreign_keys = OFF; DELETE FROM versions; DELETE FROM blends";
  g_autofree char *path = fm_notebook_recover_path (fixture->path);
  g_autofree char *report = NULL;
  g_autoptr (GError) error = NULL;
  sqlite3 *handle = NULL;

  fixture_add_experiment (fixture, "Kept", "Words");
  g_clear_pointer (&fixture->notebook, fm_notebook_unref);
  g_assert_cmpint (sqlite3_open (fixture->path, &handle), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_exec (handle, sql, NULL, NULL, NULL), ==, SQLITE_OK);
  sqlite3_close (handle);
  fixture->notebook = fm_notebook_recover (fixture->path, path, &report, NULL, &error);
  g_assert_no_error (error);
  g_autoptr (GPtrArray) versions = fm_versions_list (fixture->notebook, fixture->blend_id, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (versions->len, ==, 1);
  g_autoptr (FmFormula) formula = fm_versions_load (fixture->notebook, fixture->version_id, &error);
  g_assert_no_error (error);
  g_assert_cmpint (count (path, "experiments"), ==, 1);
}

static void
test_no_notebook (Fixture *fixture, gconstpointer data)
{
  g_autofree char *path = fm_notebook_recover_path (fixture->path);
  g_autofree char *text = g_build_filename (fixture->folder, "text.forcemeat", NULL);
  g_autofree char *report = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_true (g_file_set_contents (text, "Dear diary", -1, NULL));
  g_assert_null (fm_notebook_recover (text, path, &report, NULL, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_A_NOTEBOOK);
  g_clear_error (&error);
  g_assert_null (fm_notebook_recover (fixture->path, text, &report, NULL, &error));
  g_test_message ("%s", error->message);
  g_assert_cmpint (g_file_test (path, G_FILE_TEST_EXISTS), ==, FALSE);
}

/* The window shows what it can read. */
static void
test_open_damaged (Fixture *fixture, gconstpointer data)
{
  Whole whole;
  guint n_refused = 0;
  guint n_shown = 0;

  fill (fixture);
  whole_init (&whole, fixture);
  for (gsize offset = 4096; offset + 4096 <= whole.size; offset += 4096 * 7) {
    g_autofree char *bytes = g_memdup2 (whole.bytes, whole.size);

    memset (bytes + offset, 0, 4096);
    write_copy (&whole, bytes, whole.size);
    g_autoptr (FmNotebook) refused = fm_notebook_open_read_only (whole.path, NULL, NULL);
    g_autoptr (FmNotebook) shown = fm_notebook_open_damaged (whole.path, NULL, NULL);
    n_refused += refused == NULL;
    n_shown += shown != NULL;
  }
  g_test_message ("%u copies refused, %u opened for reading", n_refused, n_shown);
  g_assert_cmpuint (n_refused, >, 0);
  g_assert_cmpuint (10 * n_shown, >, 8 * n_refused);
  whole_clear (&whole);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("whole-notebook", test_whole_notebook);
  ADD ("one-page", test_one_page);
  ADD ("cut-short", test_cut_short);
  ADD ("flipped-bits", test_flipped_bits);
  ADD ("lost-version", test_lost_version);
  ADD ("report-speaks-of-records", test_report_speaks_of_records);
  ADD ("no-notebook", test_no_notebook);
  ADD ("open-damaged", test_open_damaged);
  return g_test_run ();
}
