/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-tasting-faults.c - a full disk or a sudden end while sheets are saved loses no saved mark */
#include "tasting-fixture.h"

#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include "full-disk.h"
#include "store/notebook/fm-db.h"

#define ADD(name, func)                                                                            \
  g_test_add ("/tasting-faults/" name, Fixture, NULL, fixture_set_up, func, fixture_tear_down)

#define N_KILLS 10
#define N_MARKS (4 * N_TASTERS)

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

/* The stored tasting is @before until the disk has room, then @after. */
static void
save_on_full_disks (Fixture *fixture, const FmTasting *before, FmTasting *after)
{
  gboolean saved = FALSE;

  for (int n_writes = 0; !saved && n_writes < 300; n_writes++) {
    g_autoptr (GError) error = NULL;

    writes_left = n_writes;
    saved = fm_tastings_save (fixture->notebook, after, &error);
    writes_left = G_MAXINT;
    if (!saved) {
      g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_DISK_FULL);
      g_assert_cmpint (after->id, ==, before != NULL ? before->id : 0);
      if (before != NULL)
        assert_stored (fixture, before);
    }
  }
  g_assert_true (saved);
  assert_stored (fixture, after);
}

static void
test_full_disk (Fixture *fixture, gconstpointer data)
{
  g_autoptr (FmTasting) planned = new_tasting (fixture);
  g_autoptr (FmTasting) sealed = NULL;
  g_autoptr (FmTasting) opened = NULL;

  if (!replace_pwrite (TRUE)) {
    g_test_skip ("this SQLite does not let its writes be replaced");
    return;
  }
  save_on_full_disks (fixture, NULL, planned);
  sealed = fm_tasting_copy (planned);
  g_assert_true (fm_tasting_arrange (sealed, 7, 1750000100, NULL));
  save_on_full_disks (fixture, planned, sealed);
  opened = fm_tasting_copy (sealed);
  for (guint i = 0; i < N_TASTERS; i++)
    fill_sheet (opened, i);
  g_assert_true (fm_tasting_open (opened, 1750000200, NULL, NULL));
  save_on_full_disks (fixture, sealed, opened);
  replace_pwrite (FALSE);
  assert_whole (fixture->notebook);
}

static int
count_down (void *data)
{
  int *steps_left = data;

  return (*steps_left)-- == 0;
}

/* Whatever step of whatever statement fails, the tasting is there whole or not at all. */
static void
test_every_step_fails (Fixture *fixture, gconstpointer data)
{
  g_autoptr (FmTasting) tasting = new_opened (fixture);
  gboolean saved = FALSE;
  int n_failed = 0;

  while (!saved && n_failed < 50000) {
    g_autoptr (GPtrArray) list = NULL;
    sqlite3 *handle = fm_db_handle (fm_notebook_begin (fixture->notebook, NULL));
    int steps_left = n_failed;

    sqlite3_progress_handler (handle, 1, count_down, &steps_left);
    saved = fm_tastings_save (fixture->notebook, tasting, NULL);
    sqlite3_progress_handler (handle, 0, NULL, NULL);
    g_assert_cmpint (fm_notebook_end (fixture->notebook, saved, NULL), ==, saved);
    list = fm_tastings_list (fixture->notebook, 0, NULL);
    g_assert_cmpuint (list->len, ==, saved ? 1 : 0);
    n_failed += saved ? 0 : 7;
  }
  g_assert_cmpint (n_failed, >, 500);
  assert_stored (fixture, tasting);
  assert_whole (fixture->notebook);
}

static void
mark_number (FmTasting *tasting, guint i)
{
  guint taster = i / 4;

  set_mark (tasting, taster, cup_at (tasting, taster, FM_TASTING_ROUND_MAIN, i % 4)->code,
            FM_TASTING_LIKING, 0, 1 + i % 9);
}

/* Runs in the child: tells after each mark that it was reported as saved. */
static void
mark_until_killed (const char *path, gint64 id, int pipe_fd)
{
  FmNotebook *notebook = fm_notebook_open (path, NULL, NULL);
  FmTasting *tasting = notebook != NULL ? fm_tastings_load (notebook, id, NULL) : NULL;

  for (guint i = 0; tasting != NULL && i < N_MARKS; i++) {
    guint n_marks = i + 1;

    mark_number (tasting, i);
    if (!fm_tastings_save (notebook, tasting, NULL) ||
        write (pipe_fd, &n_marks, sizeof n_marks) != sizeof n_marks)
      _exit (1);
  }
  for (;;)
    pause ();
}

static guint
kill_in_the_middle (const char *path, gint64 id)
{
  guint enough = (guint)g_test_rand_int_range (0, N_MARKS);
  guint reported = 0;
  int status, fds[2];
  pid_t child;

  g_assert_cmpint (pipe (fds), ==, 0);
  child = fork ();
  g_assert_cmpint (child, >=, 0);
  if (child == 0)
    mark_until_killed (path, id, fds[1]);
  close (fds[1]);
  while (reported < enough && read (fds[0], &reported, sizeof reported) == sizeof reported)
    ;
  g_usleep ((gulong)g_test_rand_int_range (0, 5000));
  kill (child, SIGKILL);
  g_assert_cmpint (waitpid (child, &status, 0), ==, child);
  g_assert_true (WIFSIGNALED (status) && WTERMSIG (status) == SIGKILL);
  while (read (fds[0], &reported, sizeof reported) == sizeof reported)
    ;
  close (fds[0]);
  return reported;
}

static void
test_kill (Fixture *fixture, gconstpointer data)
{
  for (int i = 0; i < N_KILLS; i++) {
    g_autoptr (FmTasting) tasting = new_sealed (fixture);
    g_autoptr (FmTasting) found = NULL;
    guint reported;

    save_tasting (fixture, tasting);
    g_clear_pointer (&fixture->notebook, fm_notebook_unref);
    reported = kill_in_the_middle (fixture->path, tasting->id);
    fixture_reopen (fixture);
    assert_whole (fixture->notebook);
    found = load_tasting (fixture, tasting->id);
    g_test_message ("killed after mark %u, found %u", reported, found->marks->len);
    g_assert_true (found->marks->len == reported || found->marks->len == reported + 1);
    for (guint j = 0; j < found->marks->len; j++)
      mark_number (tasting, j);
    g_assert_true (fm_tasting_equal (found, tasting));
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("full-disk", test_full_disk);
  ADD ("every-step-fails", test_every_step_fails);
  ADD ("kill", test_kill);
  return g_test_run ();
}
