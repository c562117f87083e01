/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-place.c - the notebook is deleted, renamed or replaced while it is open, or was when it was
 * killed: nothing is said to be saved that is not, and no log is taken for another's */
#include "store-fixture.h"

#include <signal.h>
#include <sqlite3.h>
#include <string.h>
#include <sys/wait.h>

#include "store/notebook/fm-db.h"

static guint
count_blends (const char *path)
{
  g_autoptr (FmNotebook) notebook = open_notebook (path);
  g_autoptr (GPtrArray) blends = fm_blends_list (notebook, NULL);

  return blends->len;
}

static gboolean
is_beside (const char *path, const char *ending)
{
  g_autofree char *name = g_strconcat (path, ending, NULL);

  return g_file_test (name, G_FILE_TEST_EXISTS);
}

static char *
copy_of (const char *from, const char *to, const char *ending)
{
  g_autofree char *source = g_strconcat (from, ending, NULL);
  g_autofree char *target = g_strconcat (to, ending, NULL);
  g_autofree char *bytes = NULL;
  gsize length;

  g_assert_true (g_file_get_contents (source, &bytes, &length, NULL));
  g_assert_true (g_file_set_contents (target, bytes, (gssize)length, NULL));
  return g_steal_pointer (&target);
}

static void
assert_refuses (FmNotebook *notebook)
{
  g_autoptr (GError) error = NULL;

  g_assert_cmpint (fm_blends_add (notebook, "Too late", &error), ==, 0);
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_LOST);
  g_assert_true (fm_notebook_is_lost (notebook));
}

/* A notebook with two blends, one of which is in the log only, and a name beside it. */
static FmNotebook *
set_up_two (Fixture *self, char **other)
{
  FmNotebook *notebook;

  fm_notebook_unref (create_notebook (self->path));
  notebook = open_notebook (self->path);
  add_blend (notebook, "First");
  add_blend (notebook, "Second");
  *other = g_build_filename (self->folder, "other.forcemeat", NULL);
  return notebook;
}

static void
test_deleted (Fixture *self, gconstpointer data)
{
  g_autofree char *other = NULL;
  g_autoptr (FmNotebook) notebook = set_up_two (self, &other);
  g_autoptr (FmNotebookPlace) place = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_cmpint (g_unlink (self->path), ==, 0);
  assert_refuses (notebook);
  place = fm_notebook_find_place (notebook);
  g_assert_false (place->in_place || place->is_replaced || place->has_name);
  g_assert_null (place->path);
  g_assert_false (is_beside (self->path, "-wal") || is_beside (self->path, "-lock"));

  g_assert_true (fm_notebook_save_copy (notebook, other, NULL, &error));
  g_assert_no_error (error);
  g_assert_cmpuint (count_blends (other), ==, 2);
  /* Most would take the name that it had. */
  g_assert_true (fm_notebook_save_copy (notebook, self->path, NULL, &error));
  g_assert_cmpuint (count_blends (self->path), ==, 2);
}

static void
test_renamed (Fixture *self, gconstpointer data)
{
  g_autofree char *other = NULL;
  FmNotebook *notebook = set_up_two (self, &other);
  g_autoptr (GError) error = NULL;
  g_autoptr (FmNotebookPlace) place = NULL;

  g_assert_cmpint (g_rename (self->path, other), ==, 0);
  place = fm_notebook_find_place (notebook);
  g_assert_false (place->in_place || place->is_replaced);
  g_assert_true (place->has_name);
  g_assert_cmpstr (place->path, ==, other);
  assert_refuses (notebook);
  /* Still locked under its new name, and not to be copied onto itself. */
  g_assert_null (fm_notebook_open (other, NULL, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_IN_USE);
  g_clear_error (&error);
  g_assert_false (fm_notebook_save_copy (notebook, other, NULL, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_IN_USE);
  fm_notebook_unref (notebook);
  g_assert_cmpuint (count_blends (other), ==, 2);
  g_assert_false (is_beside (self->path, "-wal"));
}

static void
test_replaced (Fixture *self, gconstpointer data)
{
  g_autofree char *other = NULL;
  FmNotebook *notebook = set_up_two (self, &other);
  g_autoptr (FmNotebookPlace) place = NULL;

  fm_notebook_unref (create_notebook (other));
  g_assert_cmpint (g_rename (other, self->path), ==, 0);
  assert_refuses (notebook);
  place = fm_notebook_find_place (notebook);
  g_assert_true (place->is_replaced && !place->has_name);
  g_assert_true (fm_notebook_save_copy (notebook, other, NULL, NULL));
  fm_notebook_unref (notebook);
  g_assert_cmpuint (count_blends (self->path), ==, 0);
  g_assert_cmpuint (count_blends (other), ==, 2);
}

/* Replaced between two looks at it: the log has a transaction that the answer then disowns. */
static void
test_replaced_while_writing (Fixture *self, gconstpointer data)
{
  g_autofree char *other = NULL;
  g_autoptr (FmNotebook) notebook = set_up_two (self, &other);
  g_autoptr (GError) error = NULL;
  FmDb *db;

  fm_notebook_unref (create_notebook (other));
  db = fm_notebook_begin (notebook, &error);
  g_assert_true (fm_db_exec (db, "UPDATE blends SET name = name || 'x'", &error));
  g_assert_cmpint (g_rename (other, self->path), ==, 0);
  g_assert_false (fm_notebook_end (notebook, TRUE, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_LOST);
  g_assert_false (is_beside (self->path, "-wal"));
}

/* Leaves the side files of a program that was killed with two blends in the log. */
static void
kill_with_log (const char *path)
{
  pid_t child = fork ();
  int status;

  if (child == 0) {
    FmNotebook *notebook = fm_notebook_open (path, NULL, NULL);

    fm_blends_add (notebook, "First", NULL);
    fm_blends_add (notebook, "Second", NULL);
    kill (getpid (), SIGKILL);
  }
  g_assert_cmpint (waitpid (child, &status, 0), ==, child);
  g_assert_true (is_beside (path, "-wal"));
}

static void
test_killed_beside_another (Fixture *self, gconstpointer data)
{
  g_autofree char *other = g_build_filename (self->folder, "other.forcemeat", NULL);
  g_autoptr (FmNotebook) notebook = NULL;

  fm_notebook_unref (create_notebook (self->path));
  kill_with_log (self->path);
  fm_notebook_unref (create_notebook (other));
  g_assert_cmpint (g_rename (other, self->path), ==, 0);

  notebook = open_notebook (self->path);
  g_assert_nonnull (strstr (fm_notebook_get_notice (notebook), "test.forcemeat-wal.put-aside"));
  g_assert_true (is_beside (self->path, "-wal.put-aside"));
  g_clear_pointer (&notebook, fm_notebook_unref);
  g_assert_cmpuint (count_blends (self->path), ==, 0);
}

static void
test_killed_and_opened (Fixture *self, gconstpointer data)
{
  g_autoptr (FmNotebook) notebook = NULL;

  fm_notebook_unref (create_notebook (self->path));
  kill_with_log (self->path);
  notebook = open_notebook (self->path);
  g_assert_null (fm_notebook_get_notice (notebook));
  g_clear_pointer (&notebook, fm_notebook_unref);
  g_assert_cmpuint (count_blends (self->path), ==, 2);
}

static void
test_killed_and_copied_whole (Fixture *self, gconstpointer data)
{
  g_autofree char *other = g_build_filename (self->folder, "other.forcemeat", NULL);

  fm_notebook_unref (create_notebook (self->path));
  kill_with_log (self->path);
  g_free (copy_of (self->path, other, "-wal"));
  g_free (copy_of (self->path, other, "-lock"));
  g_free (copy_of (self->path, other, ""));
  g_assert_cmpuint (count_blends (other), ==, 2);
}

/* Nothing tells whose the log is but what it does to the notebook. */
static void
test_damaging_log (Fixture *self, gconstpointer data)
{
  g_autofree char *other = g_build_filename (self->folder, "other.forcemeat", NULL);
  g_autofree char *wal = NULL;
  g_autofree char *name = g_strnfill (500, 'n');
  g_autoptr (FmNotebook) notebook = NULL;

  fm_notebook_unref (create_notebook (self->path));
  kill_with_log (self->path);
  notebook = create_notebook (other);
  for (int i = 0; i < 100; i++)
    add_blend (notebook, name);
  g_clear_pointer (&notebook, fm_notebook_unref);
  wal = copy_of (self->path, other, "-wal");

  notebook = open_notebook (other);
  g_assert_nonnull (fm_notebook_get_notice (notebook));
  g_clear_pointer (&notebook, fm_notebook_unref);
  g_assert_cmpuint (count_blends (other), ==, 100);
}

static void
test_name_with_log (Fixture *self, gconstpointer data)
{
  g_autofree char *other = g_build_filename (self->folder, "other.forcemeat", NULL);
  g_autoptr (FmNotebook) notebook = create_notebook (other);
  g_autoptr (FmNotebook) made = NULL;
  g_autoptr (GError) error = NULL;

  fm_notebook_unref (create_notebook (self->path));
  kill_with_log (self->path);
  g_assert_cmpint (g_unlink (self->path), ==, 0);

  g_assert_false (fm_notebook_save_copy (notebook, self->path, NULL, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_FAILED);
  g_assert_nonnull (strstr (error->message, "test.forcemeat-wal"));
  g_assert_false (g_file_test (self->path, G_FILE_TEST_EXISTS));

  made = create_notebook (self->path);
  g_assert_nonnull (strstr (fm_notebook_get_notice (made), "test.forcemeat-wal.put-aside"));
  g_clear_pointer (&made, fm_notebook_unref);
  g_assert_cmpuint (count_blends (self->path), ==, 0);
}

static void
test_hard_links (Fixture *self, gconstpointer data)
{
  g_autofree char *other = g_build_filename (self->folder, "other.forcemeat", NULL);
  g_autoptr (FmNotebook) notebook = create_notebook (self->path);
  g_autoptr (GError) error = NULL;
  pid_t child;
  int status;

  g_assert_cmpint (link (self->path, other), ==, 0);
  g_assert_null (fm_notebook_open (other, NULL, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_IN_USE);
  /* A program of its own has not inherited what this one knows; it asks the disk. */
  child = fork ();
  if (child == 0) {
    execl ("/proc/self/exe", "test-store-place", "-p", "/place/open-other", "--", other, NULL);
    _exit (2);
  }
  g_assert_cmpint (waitpid (child, &status, 0), ==, child);
  g_assert_cmpint (WEXITSTATUS (status), ==, 0);
  add_blend (notebook, "Still its own");
  g_clear_pointer (&notebook, fm_notebook_unref);
  g_assert_cmpuint (count_blends (other), ==, 1);
}

static ssize_t (*true_pwrite) (int fd, const void *bytes, size_t size, off_t offset);
static int writes_to_death;

static ssize_t
deadly_pwrite (int fd, const void *bytes, size_t size, off_t offset)
{
  if (writes_to_death-- == 0)
    _exit (1);
  return true_pwrite (fd, bytes, size, offset);
}

/* Opens @path in a child that dies before its write number @n; TRUE when it had fewer. */
static gboolean
open_and_die (const char *path, int n)
{
  sqlite3_vfs *vfs = sqlite3_vfs_find (NULL);
  const char *name = vfs->xGetSystemCall (vfs, "pwrite64") != NULL ? "pwrite64" : "pwrite";
  pid_t child = fork ();
  int status;

  if (child == 0) {
    true_pwrite = (ssize_t (*) (int, const void *, size_t, off_t))vfs->xGetSystemCall (vfs, name);
    writes_to_death = n;
    vfs->xSetSystemCall (vfs, name, (sqlite3_syscall_ptr)deadly_pwrite);
    _exit (fm_notebook_open (path, NULL, NULL) != NULL ? 0 : 2);
  }
  g_assert_cmpint (waitpid (child, &status, 0), ==, child);
  g_assert_cmpint (WEXITSTATUS (status), !=, 2);
  return WEXITSTATUS (status) == 0;
}

static void
test_killed_at_first_opening (Fixture *self, gconstpointer data)
{
  g_autofree char *copy = g_build_filename (self->folder, "copy.forcemeat", NULL);
  g_autoptr (FmNotebook) notebook = create_notebook (self->path);
  gboolean hot = FALSE;
  gboolean ended = FALSE;

  add_blend (notebook, "First");
  for (int n = 0; !ended; n++) {
    g_assert_true (fm_notebook_save_copy (notebook, copy, NULL, NULL));
    ended = open_and_die (copy, n);
    hot = hot || is_beside (copy, "-journal");
    g_assert_cmpuint (count_blends (copy), ==, 1);
    g_assert_false (is_beside (copy, "-journal") || is_beside (copy, "-wal.put-aside"));
  }
  g_assert_true (hot);
}

int
main (int argc, char **argv)
{
  g_autoptr (GError) error = NULL;

  /* The other program of the hard links. */
  if (argc == 5 && g_str_equal (argv[2], "/place/open-other"))
    return fm_notebook_open (argv[4], NULL, &error) == NULL &&
                   g_error_matches (error, FM_STORE_ERROR, FM_STORE_ERROR_IN_USE)
               ? 0
               : 1;
  g_test_init (&argc, &argv, NULL);
  FIXTURE_TEST ("/place/deleted", test_deleted);
  FIXTURE_TEST ("/place/renamed", test_renamed);
  FIXTURE_TEST ("/place/replaced", test_replaced);
  FIXTURE_TEST ("/place/replaced-while-writing", test_replaced_while_writing);
  FIXTURE_TEST ("/place/killed-beside-another", test_killed_beside_another);
  FIXTURE_TEST ("/place/killed-and-opened", test_killed_and_opened);
  FIXTURE_TEST ("/place/killed-and-copied-whole", test_killed_and_copied_whole);
  FIXTURE_TEST ("/place/damaging-log", test_damaging_log);
  FIXTURE_TEST ("/place/name-with-log", test_name_with_log);
  FIXTURE_TEST ("/place/hard-links", test_hard_links);
  FIXTURE_TEST ("/place/killed-at-first-opening", test_killed_at_first_opening);
  return g_test_run ();
}
