/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-notebook.c - the file itself: opening, refusing, copying, migrating */
#include "store-fixture.h"

#include <sqlite3.h>
#include <string.h>
#include <sys/stat.h>

#include "store/notebook/fm-db.h"
#include "store/notebook/fm-schema.h"
#include "store/notebook/fm-schema-v1.h"
#include "store/notebook/fm-schema-v2.h"
#include "store/notebook/fm-schema-v3.h"
#include "store/notebook/fm-schema-v4.h"
#include "store/notebook/fm-schema-v5.h"
#include "store/notebook/fm-store-thread.h"

#define N_THREADS 9 /* more than may read side by side */

static void
assert_open_fails (const char *path, FmStoreError code)
{
  g_autoptr (GError) error = NULL;

  g_assert_null (fm_notebook_open (path, NULL, &error));
  g_assert_error (error, FM_STORE_ERROR, (int)code);
  g_test_message ("%s", error->message);
  g_clear_error (&error);
  g_assert_null (fm_notebook_open_read_only (path, NULL, &error));
  g_assert_error (error, FM_STORE_ERROR, (int)code);
}

/* What a stranger could do to a file without this program. */
static void
run_sql (const char *path, const char *sql)
{
  sqlite3 *handle = NULL;

  g_assert_cmpint (sqlite3_open (path, &handle), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_exec (handle, sql, NULL, NULL, NULL), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_close (handle), ==, SQLITE_OK);
}

static char *
read_file (const char *path, gsize *length)
{
  char *bytes = NULL;

  g_assert_true (g_file_get_contents (path, &bytes, length, NULL));
  return bytes;
}

static void
assert_same_file (const char *path, const char *bytes, gsize length)
{
  gsize length_now;
  g_autofree char *now = read_file (path, &length_now);

  g_assert_cmpmem (now, length_now, bytes, length);
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

static void
test_create (Fixture *self, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FmNotebook) notebook = create_notebook (self->path);
  g_autoptr (FmReader) db = NULL;
  g_autofree char *mode = NULL;
  gint64 number;

  g_assert_false (fm_notebook_is_read_only (notebook));
  db = fm_notebook_reader (notebook, NULL, NULL);
  g_assert_true (fm_db_query_int (db, "PRAGMA application_id", &number, NULL));
  g_assert_cmpint (number, ==, FM_NOTEBOOK_APPLICATION_ID);
  g_assert_true (fm_db_query_int (db, "PRAGMA user_version", &number, NULL));
  g_assert_cmpint (number, ==, fm_schema_version ());
  mode = fm_db_query_text (db, "PRAGMA journal_mode", NULL);
  g_assert_cmpstr (mode, ==, "wal");
  g_clear_pointer (&db, fm_reader_release);

  fm_notebook_unref (g_steal_pointer (&notebook));
  g_assert_cmpuint (count_files (self->folder), ==, 1);
  g_assert_null (fm_notebook_create (self->path, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_FAILED);
  g_assert_cmpuint (count_files (self->folder), ==, 1);
}

static void
test_create_without_folder (Fixture *self, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *path = g_build_filename (self->folder, "none", "a.forcemeat", NULL);

  g_assert_null (fm_notebook_create (path, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_NO_PERMISSION);
}

static void
test_not_a_notebook (Fixture *self, gconstpointer data)
{
  g_assert_true (g_file_set_contents (self->path, "Chuck 800 g, suet 200 g", -1, NULL));
  assert_open_fails (self->path, FM_STORE_ERROR_NOT_A_NOTEBOOK);
  g_assert_true (g_file_set_contents (self->path, "", 0, NULL));
  assert_open_fails (self->path, FM_STORE_ERROR_NOT_A_NOTEBOOK);
  run_sql (self->path, "CREATE TABLE t (a)");
  assert_open_fails (self->path, FM_STORE_ERROR_NOT_A_NOTEBOOK);
  assert_open_fails (self->folder, FM_STORE_ERROR_NOT_A_NOTEBOOK);
  g_unlink (self->path);
  assert_open_fails (self->path, FM_STORE_ERROR_NOT_FOUND);
  g_assert_cmpuint (count_files (self->folder), ==, 0);
}

static void
test_newer (Fixture *self, gconstpointer data)
{
  g_autofree char *bytes = NULL;
  gsize length;

  fm_notebook_unref (create_notebook (self->path));
  run_sql (self->path, "PRAGMA user_version = 1000");
  bytes = read_file (self->path, &length);
  assert_open_fails (self->path, FM_STORE_ERROR_NEWER);
  assert_same_file (self->path, bytes, length);
}

static void
test_hostile (Fixture *self, gconstpointer data)
{
  static const char *const acts[] = {
    "CREATE TRIGGER steal AFTER INSERT ON blends BEGIN DELETE FROM drafts; END",
    "CREATE VIEW secrets AS SELECT * FROM settings",
    "CREATE TABLE stowaway (a)",
    "CREATE INDEX slow ON blends (upper (name))",
    "DROP TABLE settings; CREATE VIEW settings AS SELECT 'a' AS key, 'b' AS value",
    "DROP TRIGGER versions_frozen; CREATE TRIGGER versions_frozen BEFORE UPDATE ON versions "
    "BEGIN SELECT 1; END",
    "ALTER TABLE blends ADD COLUMN extra TEXT DEFAULT 'x'",
  };

  for (gsize i = 0; i < G_N_ELEMENTS (acts); i++) {
    g_autofree char *bytes = NULL;
    gsize length;

    fm_notebook_unref (create_notebook (self->path));
    run_sql (self->path, acts[i]);
    bytes = read_file (self->path, &length);
    assert_open_fails (self->path, FM_STORE_ERROR_HOSTILE);
    assert_same_file (self->path, bytes, length);
    g_unlink (self->path);
  }
}

/* Newer versions of SQLite refuse this schema before we look at it. */
static void
test_hostile_shadow (Fixture *self, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  fm_notebook_unref (create_notebook (self->path));
  run_sql (
      self->path,
      "CREATE TRIGGER shadow AFTER INSERT ON experiments_fts_data BEGIN DELETE FROM drafts; END");
  g_assert_null (fm_notebook_open (self->path, NULL, &error));
  g_assert_true (g_error_matches (error, FM_STORE_ERROR, FM_STORE_ERROR_HOSTILE) ||
                 g_error_matches (error, FM_STORE_ERROR, FM_STORE_ERROR_DAMAGED));
}

static void
test_part_missing (Fixture *self, gconstpointer data)
{
  fm_notebook_unref (create_notebook (self->path));
  run_sql (self->path, "DROP TABLE ingredients");
  assert_open_fails (self->path, FM_STORE_ERROR_DAMAGED);
}

/* Statistics that a database tool left behind do no harm. */
static void
test_analyzed (Fixture *self, gconstpointer data)
{
  fm_notebook_unref (create_notebook (self->path));
  run_sql (self->path, "ANALYZE");
  fm_notebook_unref (open_notebook (self->path));
}

/* 200 flips of one to eight bytes: opened or refused, never a crash, never a change. */
static void
test_damaged (Fixture *self, gconstpointer data)
{
  g_autoptr (FmNotebook) notebook = create_notebook (self->path);
  gint64 blend_id = add_blend (notebook, "House blend");
  g_autofree char *bytes = NULL;
  gsize length;
  guint n_refused = 0;

  for (int i = 0; i < 10; i++) {
    g_autoptr (FmFormula) formula = new_formula (800.0, 200.0 + i);

    save_version (notebook, blend_id, formula, "for the damage");
  }
  fm_notebook_unref (g_steal_pointer (&notebook));
  bytes = read_file (self->path, &length);

  for (int i = 0; i < 200; i++) {
    g_autoptr (GError) error = NULL;
    g_autofree char *damaged = g_memdup2 (bytes, length);
    g_autoptr (FmNotebook) opened = NULL;

    for (int k = g_test_rand_int_range (1, 9); k > 0; k--)
      damaged[g_test_rand_int_range (0, (int)length)] ^= (char)g_test_rand_int_range (1, 256);
    g_assert_true (g_file_set_contents (self->path, damaged, (gssize)length, NULL));
    opened = fm_notebook_open (self->path, NULL, &error);
    if (opened == NULL) {
      g_assert_cmpint (error->domain, ==, FM_STORE_ERROR);
      assert_same_file (self->path, damaged, length);
      n_refused++;
    } else {
      g_autoptr (GPtrArray) versions = fm_versions_list (opened, blend_id, NULL);
      g_autoptr (FmFormula) formula = fm_versions_load (opened, 1, NULL);
    }
  }
  g_test_message ("%u of 200 damaged files were refused", n_refused);
  g_assert_cmpuint (n_refused, >, 0);
}

/* A page of zeros in the middle, and a file cut short. */
static void
test_damaged_pages (Fixture *self, gconstpointer data)
{
  g_autoptr (FmNotebook) notebook = create_notebook (self->path);
  gint64 blend_id = add_blend (notebook, "House blend");
  g_autoptr (FmFormula) formula = new_formula (800.0, 200.0);
  g_autofree char *bytes = NULL;
  g_autofree char *zeroed = NULL;
  gsize length;

  for (int i = 0; i < 40; i++)
    save_version (notebook, blend_id, formula, "for the damage");
  fm_notebook_unref (g_steal_pointer (&notebook));
  bytes = read_file (self->path, &length);
  zeroed = g_memdup2 (bytes, length);
  memset (zeroed + 4096 * 5, 0, 4096);
  g_assert_true (g_file_set_contents (self->path, zeroed, (gssize)length, NULL));
  assert_open_fails (self->path, FM_STORE_ERROR_DAMAGED);
  assert_same_file (self->path, zeroed, length);
  g_assert_true (g_file_set_contents (self->path, bytes, (gssize)length - 8192, NULL));
  assert_open_fails (self->path, FM_STORE_ERROR_DAMAGED);
}

static void
test_second_writer (Fixture *self, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FmNotebook) notebook = create_notebook (self->path);
  g_autofree char *alias = g_build_filename (self->folder, "alias.forcemeat", NULL);
  g_autoptr (FmNotebook) reading = NULL;
  g_autoptr (GPtrArray) blends = NULL;

  g_assert_null (fm_notebook_open (self->path, NULL, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_IN_USE);
  g_clear_error (&error);
  g_assert_cmpint (symlink (self->path, alias), ==, 0);
  g_assert_null (fm_notebook_open (alias, NULL, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_IN_USE);
  g_clear_error (&error);

  reading = fm_notebook_open_read_only (self->path, NULL, &error);
  g_assert_no_error (error);
  g_assert_true (fm_notebook_is_read_only (reading));
  add_blend (notebook, "Written meanwhile");
  blends = fm_blends_list (reading, NULL);
  g_assert_cmpuint (blends->len, ==, 1);
  g_assert_cmpint (fm_blends_add (reading, "x", &error), ==, 0);
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_NO_PERMISSION);

  fm_notebook_unref (g_steal_pointer (&notebook));
  fm_notebook_unref (open_notebook (self->path));
}

static void
test_copy (Fixture *self, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FmNotebook) notebook = create_notebook (self->path);
  g_autofree char *path = g_build_filename (self->folder, "copy.forcemeat", NULL);
  g_autoptr (FmNotebook) copy = NULL;
  g_autoptr (GPtrArray) blends = NULL;

  add_blend (notebook, "House blend");
  g_assert_true (g_file_set_contents (path, "to be replaced", -1, NULL));
  g_assert_true (fm_notebook_save_copy (notebook, path, NULL, &error));
  g_assert_no_error (error);
  add_blend (notebook, "Later");
  copy = open_notebook (path);
  blends = fm_blends_list (copy, NULL);
  g_assert_cmpuint (blends->len, ==, 1);

  g_assert_false (fm_notebook_save_copy (notebook, path, NULL, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_IN_USE);
  g_clear_error (&error);
  g_assert_false (fm_notebook_save_copy (notebook, self->path, NULL, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_IN_USE);
}

static void
test_copy_cancelled (Fixture *self, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FmNotebook) notebook = create_notebook (self->path);
  g_autofree char *path = g_build_filename (self->folder, "copy.forcemeat", NULL);
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();

  g_assert_true (g_file_set_contents (path, "kept", -1, NULL));
  g_cancellable_cancel (cancellable);
  g_assert_false (fm_notebook_save_copy (notebook, path, cancellable, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
  assert_same_file (path, "kept", 4);
  fm_notebook_unref (g_steal_pointer (&notebook));
  g_assert_cmpuint (count_files (self->folder), ==, 2);
}

static void
test_open_cancelled (Fixture *self, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autoptr (FmNotebook) notebook = create_notebook (self->path);
  gint64 blend_id = add_blend (notebook, "House blend");
  g_autoptr (FmFormula) formula = new_formula (800.0, 200.0);

  for (int i = 0; i < 50; i++)
    save_version (notebook, blend_id, formula, "so that the check takes a while");
  fm_notebook_unref (g_steal_pointer (&notebook));
  g_cancellable_cancel (cancellable);
  g_assert_null (fm_notebook_open (self->path, cancellable, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
  fm_notebook_unref (open_notebook (self->path));
}

/* A copy stands alone, and its folder need not be writable; root may write everywhere. */
static void
test_unwritable_folder (Fixture *self, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FmNotebook) notebook = NULL;

  if (geteuid () == 0) {
    g_test_skip ("permissions do not bind root");
    return;
  }
  fm_notebook_unref (create_notebook (self->path));
  g_chmod (self->folder, 0500);
  g_assert_null (fm_notebook_open (self->path, NULL, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_NO_PERMISSION);
  g_clear_error (&error);
  notebook = fm_notebook_open_read_only (self->path, NULL, &error);
  g_assert_no_error (error);
  g_chmod (self->folder, 0700);
  g_chmod (self->path, 0400);
  g_assert_null (fm_notebook_open (self->path, NULL, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_NO_PERMISSION);
}

static const FmMigration later[] = {
  { 1, fm_schema_v1_sql },
  { 2, fm_schema_v2_sql },
  { 3, fm_schema_v3_sql },
  { 4, fm_schema_v4_sql },
  { 5, fm_schema_v5_sql },
  { 6, "ALTER TABLE blends ADD COLUMN colour TEXT; CREATE TABLE smells (id INTEGER PRIMARY KEY);" },
  { 7, "DROP TABLE smells; UPDATE blends SET colour = 'red';" },
};
static const FmMigration failing[] = {
  { 1, fm_schema_v1_sql },
  { 2, fm_schema_v2_sql },
  { 3, fm_schema_v3_sql },
  { 4, fm_schema_v4_sql },
  { 5, fm_schema_v5_sql },
  { 6, "CREATE TABLE smells (id INTEGER PRIMARY KEY); INSERT INTO smells VALUES (1), (1);" },
};

static gint64
query_int (FmNotebook *notebook, const char *sql)
{
  g_autoptr (FmReader) db = fm_notebook_reader (notebook, NULL, NULL);
  gint64 value = -1;

  g_assert_true (fm_db_query_int (db, sql, &value, NULL));
  return value;
}

static void
test_migrate (Fixture *self, gconstpointer data)
{
  g_autofree char *first = g_strconcat (self->path, ".version-5-backup", NULL);
  g_autofree char *second = g_strconcat (self->path, ".version-6-backup", NULL);
  g_autoptr (FmNotebook) notebook = create_notebook (self->path);

  add_blend (notebook, "House blend");
  fm_notebook_unref (g_steal_pointer (&notebook));
  fm_schema_set_migrations_for_test (later, G_N_ELEMENTS (later));
  notebook = open_notebook (self->path);
  g_assert_cmpint (query_int (notebook, "SELECT count(*) FROM blends WHERE colour = 'red'"), ==, 1);
  g_assert_cmpint (query_int (notebook, "PRAGMA user_version"), ==, 7);
  fm_notebook_unref (g_steal_pointer (&notebook));
  fm_notebook_unref (open_notebook (self->path));
  g_assert_cmpuint (count_files (self->folder), ==, 3);
  fm_schema_set_migrations_for_test (later, 6);
  notebook = open_notebook (second);
  fm_notebook_unref (g_steal_pointer (&notebook));
  fm_schema_set_migrations_for_test (NULL, 0);

  assert_open_fails (self->path, FM_STORE_ERROR_NEWER);
  notebook = open_notebook (first);
  g_assert_cmpint (query_int (notebook, "SELECT count(*) FROM blends"), ==, 1);
}

static void
test_migrate_fails (Fixture *self, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FmNotebook) notebook = create_notebook (self->path);

  add_blend (notebook, "House blend");
  fm_notebook_unref (g_steal_pointer (&notebook));
  fm_schema_set_migrations_for_test (failing, G_N_ELEMENTS (failing));
  g_assert_null (fm_notebook_open (self->path, NULL, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_FAILED);
  fm_schema_set_migrations_for_test (NULL, 0);
  g_assert_cmpuint (count_files (self->folder), ==, 1);
  notebook = open_notebook (self->path);
  g_assert_cmpint (query_int (notebook, "SELECT count(*) FROM blends"), ==, 1);
}

static gpointer
list_blends (gpointer notebook)
{
  g_autoptr (FmReader) outer = fm_notebook_reader (notebook, NULL, NULL);
  g_autoptr (GPtrArray) blends = fm_blends_list (notebook, NULL);

  return GUINT_TO_POINTER (blends->len);
}

/* A long list in one thread holds nobody up; where all connections are in use, one waits. */
static void
test_side_by_side (Fixture *self, gconstpointer data)
{
  g_autoptr (FmNotebook) notebook = create_notebook (self->path);
  g_autoptr (FmReader) long_list = fm_notebook_reader (notebook, NULL, NULL);
  GThread *threads[N_THREADS];

  add_blend (notebook, "House blend");
  for (guint i = 0; i < N_THREADS; i++)
    threads[i] = g_thread_new ("reader", list_blends, notebook);
  for (guint i = 0; i < N_THREADS; i++)
    g_assert_cmpuint (GPOINTER_TO_UINT (g_thread_join (threads[i])), ==, 1);
}

static void
assert_refused (void)
{
  g_test_assert_expected_messages ();
  g_test_expect_message (NULL, G_LOG_LEVEL_CRITICAL, "*in the thread that draws*");
}

static void
test_forbidden_thread (Fixture *self, gconstpointer data)
{
  g_autoptr (FmNotebook) notebook = create_notebook (self->path);
  g_autoptr (GPtrArray) blends = NULL;

  fm_store_forbid_thread (TRUE);
  assert_refused ();
  blends = fm_blends_list (notebook, NULL);
  assert_refused ();
  fm_blends_add (notebook, "House blend", NULL);
  assert_refused ();
  g_assert_null (fm_notebook_open (self->path, NULL, NULL));
  g_test_assert_expected_messages ();
  fm_store_forbid_thread (FALSE);
  g_assert_cmpint (query_int (notebook, "SELECT count(*) FROM blends"), ==, 1);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  FIXTURE_TEST ("/notebook/create", test_create);
  FIXTURE_TEST ("/notebook/create-without-folder", test_create_without_folder);
  FIXTURE_TEST ("/notebook/not-a-notebook", test_not_a_notebook);
  FIXTURE_TEST ("/notebook/newer", test_newer);
  FIXTURE_TEST ("/notebook/hostile", test_hostile);
  FIXTURE_TEST ("/notebook/hostile/shadow", test_hostile_shadow);
  FIXTURE_TEST ("/notebook/part-missing", test_part_missing);
  FIXTURE_TEST ("/notebook/analyzed", test_analyzed);
  FIXTURE_TEST ("/notebook/damaged", test_damaged);
  FIXTURE_TEST ("/notebook/damaged-pages", test_damaged_pages);
  FIXTURE_TEST ("/notebook/second-writer", test_second_writer);
  FIXTURE_TEST ("/notebook/copy", test_copy);
  FIXTURE_TEST ("/notebook/copy-cancelled", test_copy_cancelled);
  FIXTURE_TEST ("/notebook/open-cancelled", test_open_cancelled);
  FIXTURE_TEST ("/notebook/unwritable-folder", test_unwritable_folder);
  FIXTURE_TEST ("/notebook/migrate", test_migrate);
  FIXTURE_TEST ("/notebook/migrate-fails", test_migrate_fails);
  FIXTURE_TEST ("/notebook/side-by-side", test_side_by_side);
  FIXTURE_TEST ("/notebook/forbidden-thread", test_forbidden_thread);
  return g_test_run ();
}
