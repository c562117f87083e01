/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-faults.c - the program dies, the disk fills, a statement fails: nothing saved is lost */
#include "store-fixture.h"

#include <signal.h>
#include <sqlite3.h>
#include <string.h>
#include <sys/mount.h>
#include <sys/wait.h>

#include "full-disk.h"
#include "store/notebook/fm-db.h"

#define N_EDITS 200
#define N_KILLS 12
#define EDITS_PER_VERSION 10

static void
assert_whole (FmNotebook *notebook)
{
  g_autoptr (FmReader) db = fm_notebook_reader (notebook, NULL, NULL);
  g_autofree char *verdict = fm_db_query_text (db, "PRAGMA integrity_check", NULL);
  gint64 n_violations;

  g_assert_cmpstr (verdict, ==, "ok");
  g_assert_true (
      fm_db_query_int (db, "SELECT count(*) FROM pragma_foreign_key_check", &n_violations, NULL));
  g_assert_cmpint (n_violations, ==, 0);
}

static guint
count_versions (FmNotebook *notebook, gint64 blend_id)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) versions = fm_versions_list (notebook, blend_id, &error);

  g_assert_no_error (error);
  return versions->len;
}

/* State number @edit of a line of random edits; state 0 is the start. */
static FmFormula *
formula_after (const FmFormula *base, int edit)
{
  FmFormula *formula = fm_formula_copy (base);
  g_autoptr (GRand) random = g_rand_new_with_seed ((guint32)edit);

  for (guint i = 0; edit > 0 && i < fm_formula_n_lines (formula); i++)
    g_assert_true (
        fm_formula_set_mass (formula, i, g_rand_double_range (random, 0.1, 1000.0), NULL));
  formula->brief->n_patties = 1 + edit;
  return formula;
}

/* Runs in the child: tells after each edit that it was reported as saved. */
static void
edit_until_killed (const char *path, gint64 blend_id, const FmFormula *base, int pipe_fd)
{
  FmNotebook *notebook = fm_notebook_open (path, NULL, NULL);

  for (int edit = 1; notebook != NULL && edit <= N_EDITS; edit++) {
    g_autoptr (FmFormula) formula = formula_after (base, edit);
    gboolean ok = edit % EDITS_PER_VERSION == 0
                      ? fm_versions_save (notebook, blend_id, formula, "a step", NULL) != 0
                      : fm_draft_save (notebook, blend_id, formula, NULL);

    if (!ok || write (pipe_fd, &edit, sizeof edit) != sizeof edit)
      _exit (1);
  }
  for (;;)
    pause ();
}

/* Lets the child make some edits, kills it in the middle of what comes next, and returns the
 * last edit that it reported. */
static int
kill_in_the_middle (const char *path, gint64 blend_id, const FmFormula *base)
{
  int enough = g_test_rand_int_range (0, N_EDITS);
  int reported = 0;
  int status, fds[2];
  pid_t child;

  g_assert_cmpint (pipe (fds), ==, 0);
  child = fork ();
  g_assert_cmpint (child, >=, 0);
  if (child == 0)
    edit_until_killed (path, blend_id, base, fds[1]);
  close (fds[1]);
  while (reported < enough && read (fds[0], &reported, sizeof reported) == sizeof reported)
    ;
  g_usleep ((gulong)g_test_rand_int_range (0, 3000));
  kill (child, SIGKILL);
  g_assert_cmpint (waitpid (child, &status, 0), ==, child);
  g_assert_true (WIFSIGNALED (status) && WTERMSIG (status) == SIGKILL);
  while (read (fds[0], &reported, sizeof reported) == sizeof reported)
    ;
  close (fds[0]);
  return reported;
}

static void
assert_state (FmNotebook *notebook, gint64 blend_id, const FmFormula *base, int reported)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FmFormula) draft = fm_draft_load (notebook, blend_id, NULL, &error);
  g_autoptr (FmFormula) last = formula_after (base, reported);
  g_autoptr (FmFormula) next = formula_after (base, reported + 1);
  gboolean is_next;
  int edit;

  g_assert_no_error (error);
  is_next = fm_formula_equal (draft, next);
  g_assert_true (is_next || fm_formula_equal (draft, last));
  edit = is_next ? reported + 1 : reported;
  g_assert_cmpint (count_versions (notebook, blend_id), ==, edit / EDITS_PER_VERSION);
}

static void
test_kill (Fixture *self, gconstpointer data)
{
  g_autoptr (FmFormula) base = new_formula (800.0, 200.0);

  for (int i = 0; i < N_KILLS; i++) {
    g_autoptr (FmNotebook) notebook = create_notebook (self->path);
    gint64 blend_id = add_blend (notebook, "House blend");
    int reported;

    base->brief->n_patties = 1;
    g_assert_true (fm_draft_save (notebook, blend_id, base, NULL));
    fm_notebook_unref (g_steal_pointer (&notebook));
    reported = kill_in_the_middle (self->path, blend_id, base);
    g_test_message ("killed after edit %d", reported);
    notebook = open_notebook (self->path);
    assert_whole (notebook);
    assert_state (notebook, blend_id, base, reported);
    fm_notebook_unref (g_steal_pointer (&notebook));
    g_unlink (self->path);
  }
}

static void
test_full_at_every_write (Fixture *self, gconstpointer data)
{
  g_autoptr (FmNotebook) notebook = create_notebook (self->path);
  gint64 blend_id = add_blend (notebook, "House blend");
  g_autoptr (FmFormula) formula = new_formula (800.0, 200.0);
  guint n_saved = 0;

  if (!replace_pwrite (TRUE)) {
    g_test_skip ("this SQLite does not let its writes be replaced");
    return;
  }
  for (int n_writes = 0; n_saved < 3 && n_writes < 200; n_writes++) {
    g_autoptr (GError) error = NULL;
    gint64 id;

    writes_left = n_writes;
    id = fm_versions_save (notebook, blend_id, formula, "on a full disk", &error);
    writes_left = G_MAXINT;
    if (id != 0)
      n_saved++;
    else
      g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_DISK_FULL);
    g_assert_cmpuint (count_versions (notebook, blend_id), ==, n_saved);
  }
  replace_pwrite (FALSE);
  g_assert_cmpuint (n_saved, ==, 3);
  assert_whole (notebook);
  fm_notebook_unref (g_steal_pointer (&notebook));
  notebook = open_notebook (self->path);
  assert_whole (notebook);
  g_assert_cmpuint (count_versions (notebook, blend_id), ==, 3);
}

/* New notebooks and copies, too, leave nothing half done behind. */
static void
test_full_while_copying (Fixture *self, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FmNotebook) notebook = create_notebook (self->path);
  g_autofree char *path = g_build_filename (self->folder, "copy.forcemeat", NULL);
  g_autoptr (GDir) dir = NULL;
  const char *name;

  if (!replace_pwrite (TRUE)) {
    g_test_skip ("this SQLite does not let its writes be replaced");
    return;
  }
  writes_left = 5;
  g_assert_false (fm_notebook_save_copy (notebook, path, NULL, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_DISK_FULL);
  g_clear_error (&error);
  writes_left = 5;
  g_assert_null (fm_notebook_create (path, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_DISK_FULL);
  writes_left = G_MAXINT;
  replace_pwrite (FALSE);

  dir = g_dir_open (self->folder, 0, NULL);
  while ((name = g_dir_read_name (dir)) != NULL)
    g_assert_false (g_str_has_prefix (name, "copy"));
}

static void
fill_until_full (FmNotebook *notebook, gint64 blend_id, const FmFormula *formula)
{
  g_autoptr (GError) error = NULL;
  guint n_saved = 0;

  while (n_saved < 100000 &&
         fm_versions_save (notebook, blend_id, formula, "until it is full", &error) != 0)
    n_saved++;
  g_test_message ("%s", error->message);
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_DISK_FULL);
  g_assert_cmpuint (count_versions (notebook, blend_id), ==, n_saved);
}

static void
test_full_disk (Fixture *self, gconstpointer data)
{
  g_autofree char *disk = g_build_filename (self->folder, "disk", NULL);
  g_autofree char *path = g_build_filename (disk, "a.forcemeat", NULL);
  g_autofree char *copy = g_build_filename (self->folder, "copy.forcemeat", NULL);
  g_autoptr (FmNotebook) notebook = NULL;
  g_autoptr (FmFormula) formula = new_formula (800.0, 200.0);
  gint64 blend_id;
  guint n_versions;

  g_assert_cmpint (g_mkdir (disk, 0700), ==, 0);
  if (mount ("tmpfs", disk, "tmpfs", 0, "size=1m") != 0) {
    g_test_skip ("a small disk can only be mounted by root");
    return;
  }
  notebook = create_notebook (path);
  blend_id = add_blend (notebook, "House blend");
  fill_until_full (notebook, blend_id, formula);
  n_versions = count_versions (notebook, blend_id);
  assert_whole (notebook);
  g_assert_true (fm_notebook_save_copy (notebook, copy, NULL, NULL));
  fm_notebook_unref (g_steal_pointer (&notebook));

  notebook = open_notebook (copy);
  g_assert_cmpuint (count_versions (notebook, blend_id), ==, n_versions);
  fm_notebook_unref (g_steal_pointer (&notebook));
  g_assert_cmpint (umount (disk), ==, 0);
}

static sqlite3 *
writer_handle (FmNotebook *notebook)
{
  FmDb *db = fm_notebook_begin (notebook, NULL);

  g_assert_true (fm_notebook_end (notebook, TRUE, NULL));
  return fm_db_handle (db);
}

static int
refuse_commit (void *data)
{
  return 1;
}

static void
test_commit_fails (Fixture *self, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FmNotebook) notebook = create_notebook (self->path);
  gint64 blend_id = add_blend (notebook, "House blend");
  g_autoptr (FmFormula) formula = new_formula (800.0, 200.0);
  sqlite3 *handle = writer_handle (notebook);

  sqlite3_commit_hook (handle, refuse_commit, NULL);
  g_assert_cmpint (fm_versions_save (notebook, blend_id, formula, "x", &error), ==, 0);
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_FAILED);
  sqlite3_commit_hook (handle, NULL, NULL);
  g_assert_cmpuint (count_versions (notebook, blend_id), ==, 0);
  save_version (notebook, blend_id, formula, "x");
  g_assert_cmpuint (count_versions (notebook, blend_id), ==, 1);
}

static int
count_down (void *data)
{
  int *steps_left = data;

  return (*steps_left)-- == 0;
}

/* Found by test_every_step_fails: a BEGIN that failed left its transaction open for ever. */
static void
test_begin_fails (Fixture *self, gconstpointer data)
{
  g_autoptr (FmNotebook) notebook = create_notebook (self->path);
  sqlite3 *handle = writer_handle (notebook);
  gboolean begun = FALSE;

  for (int n_steps = 0; !begun && n_steps < 100; n_steps++) {
    int steps_left = n_steps;

    sqlite3_progress_handler (handle, 1, count_down, &steps_left);
    begun = fm_notebook_begin (notebook, NULL) != NULL;
    sqlite3_progress_handler (handle, 0, NULL, NULL);
    g_assert_true (begun || sqlite3_get_autocommit (handle));
  }
  g_assert_true (begun);
  g_assert_true (fm_notebook_end (notebook, TRUE, NULL));
}

/* The outer transaction keeps the countdown away from COMMIT, which SQLite may call interrupted
 * after it has been carried out. */
static gboolean
save_with_failing_step (FmNotebook *notebook,
                        gint64 blend_id,
                        const FmFormula *formula,
                        int n_steps)
{
  sqlite3 *handle = fm_db_handle (fm_notebook_begin (notebook, NULL));
  int steps_left = n_steps;
  gboolean saved;

  sqlite3_progress_handler (handle, 1, count_down, &steps_left);
  saved = fm_versions_save (notebook, blend_id, formula, "x", NULL) != 0;
  sqlite3_progress_handler (handle, 0, NULL, NULL);
  return fm_notebook_end (notebook, saved, NULL);
}

/* Whatever step of whatever statement fails, the version is there whole or not at all. */
static void
test_every_step_fails (Fixture *self, gconstpointer data)
{
  g_autoptr (FmNotebook) notebook = create_notebook (self->path);
  gint64 blend_id = add_blend (notebook, "House blend");
  g_autoptr (FmFormula) formula = new_formula (800.0, 200.0);
  g_autoptr (FmFormula) draft = NULL;
  gboolean saved = FALSE;
  int n_failed = 0;

  while (!saved && n_failed < 5000) {
    saved = save_with_failing_step (notebook, blend_id, formula, n_failed);
    g_assert_cmpuint (count_versions (notebook, blend_id), ==, saved ? 1 : 0);
    n_failed += saved ? 0 : 1;
  }
  g_test_message ("failed at %d steps", n_failed);
  g_assert_true (saved);
  g_assert_cmpint (n_failed, >, 50);
  draft = fm_draft_load (notebook, blend_id, NULL, NULL);
  g_assert_true (fm_formula_equal (draft, formula));
  assert_whole (notebook);
}

static void
test_nested (Fixture *self, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FmNotebook) notebook = create_notebook (self->path);
  g_autoptr (GPtrArray) blends = NULL;

  g_assert_nonnull (fm_notebook_begin (notebook, NULL));
  add_blend (notebook, "kept");
  g_assert_nonnull (fm_notebook_begin (notebook, NULL));
  add_blend (notebook, "undone");
  g_assert_false (fm_notebook_end (notebook, FALSE, &error));
  blends = fm_blends_list (notebook, NULL);
  g_assert_cmpuint (blends->len, ==, 1);
  g_assert_true (fm_notebook_end (notebook, TRUE, &error));
  g_assert_no_error (error);

  g_assert_nonnull (fm_notebook_begin (notebook, NULL));
  add_blend (notebook, "undone");
  g_assert_false (fm_notebook_end (notebook, FALSE, NULL));
  g_clear_pointer (&blends, g_ptr_array_unref);
  blends = fm_blends_list (notebook, NULL);
  g_assert_cmpuint (blends->len, ==, 1);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  FIXTURE_TEST ("/faults/kill", test_kill);
  FIXTURE_TEST ("/faults/full-at-every-write", test_full_at_every_write);
  FIXTURE_TEST ("/faults/full-while-copying", test_full_while_copying);
  FIXTURE_TEST ("/faults/full-disk", test_full_disk);
  FIXTURE_TEST ("/faults/commit-fails", test_commit_fails);
  FIXTURE_TEST ("/faults/begin-fails", test_begin_fails);
  FIXTURE_TEST ("/faults/every-step-fails", test_every_step_fails);
  FIXTURE_TEST ("/faults/nested", test_nested);
  return g_test_run ();
}
