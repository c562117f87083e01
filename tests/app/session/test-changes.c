/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-changes.c - what a session says of its changes, as kind and id, without waiting for the disk
 */
#include <glib/gstdio.h>

#include "app/session/fm-writer.h"
#include "app/session/fm-session.h"
#include "store/notebook/fm-store-thread.h"

typedef struct {
  char *folder;
  FmSession *session;
  gint64 blend_id;
  GString *heard; /* "kind id" of each change */
} Fixture;

static void
changed_cb (FmSession *session, const FmChange *change, GString *heard)
{
  g_string_append_printf (heard, "%s%s %" G_GINT64_FORMAT, heard->len > 0 ? ", " : "",
                          fm_change_kind_name (change->kind), change->id);
}

static void
set_up (Fixture *fixture, gconstpointer data)
{
  g_autofree char *path = NULL;
  FmNotebook *notebook;

  fixture->folder = g_dir_make_tmp ("forcemeat-changes-XXXXXX", NULL);
  path = g_build_filename (fixture->folder, "test.forcemeat", NULL);
  notebook = fm_notebook_create (path, NULL);
  g_assert_nonnull (notebook);
  fixture->blend_id = fm_blends_add (notebook, "House", NULL);
  fixture->heard = g_string_new (NULL);
  fixture->session = fm_session_new ();
  fm_store_forbid_thread (TRUE);
  fm_session_set_notebook (fixture->session, notebook);
  fm_session_flush (fixture->session);
  g_signal_connect (fixture->session, "changed", G_CALLBACK (changed_cb), fixture->heard);
}

static void
tear_down (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GDir) folder = NULL;
  const char *name;

  fm_session_flush (fixture->session);
  g_assert_finalize_object (fixture->session);
  fm_writer_wait_closed ();
  fm_store_forbid_thread (FALSE);
  folder = g_dir_open (fixture->folder, 0, NULL);
  while ((name = g_dir_read_name (folder)) != NULL) {
    g_autofree char *path = g_build_filename (fixture->folder, name, NULL);

    g_remove (path);
  }
  g_rmdir (fixture->folder);
  g_free (fixture->folder);
  g_string_free (fixture->heard, TRUE);
}

static void
assert_heard (Fixture *fixture, const char *expected)
{
  g_assert_cmpstr (fixture->heard->str, ==, expected);
  g_string_set_size (fixture->heard, 0);
}

static void
add_line (FmSession *session, const char *name)
{
  g_autoptr (FmFormula) next = fm_formula_copy (fm_session_get_formula (session));
  g_autoptr (FmIngredient) ingredient = fm_ingredient_new (name, FM_INGREDIENT_CUT);

  fm_formula_add (next, ingredient, 500);
  fm_session_edit (session, next, "Add a line", NULL);
}

/* A line in an empty draft makes it one with changes, which is said once it is saved. */
static void
test_edit (Fixture *fixture, gconstpointer data)
{
  add_line (fixture->session, "Chuck");
  assert_heard (fixture, "formula 1, history 1");
  fm_session_flush (fixture->session);
  assert_heard (fixture, "draft 1");
  add_line (fixture->session, "Brisket");
  fm_session_flush (fixture->session);
  assert_heard (fixture, "formula 1, history 1");
}

static void
test_version (Fixture *fixture, gconstpointer data)
{
  add_line (fixture->session, "Chuck");
  fm_session_flush (fixture->session);
  g_string_set_size (fixture->heard, 0);
  fm_session_save_version (fixture->session, "First try");
  fm_session_flush (fixture->session);
  assert_heard (fixture, "version 1, draft 1, history 1");
  fm_session_show_version (fixture->session, 1);
  fm_session_flush (fixture->session);
  assert_heard (fixture, "shown 1, formula 1, history 1");
}

/* The last wish counts, and until it is read what is shown stays. */
static void
test_last_wish (Fixture *fixture, gconstpointer data)
{
  add_line (fixture->session, "Chuck");
  fm_session_save_version (fixture->session, "First try");
  fm_session_save_version (fixture->session, "Second try");
  fm_session_flush (fixture->session);
  g_string_set_size (fixture->heard, 0);
  fm_session_show_version (fixture->session, 1);
  fm_session_show_version (fixture->session, 2);
  g_assert_true (fm_session_is_reading (fixture->session));
  g_assert_cmpint (fm_session_get_version_id (fixture->session), ==, 0);
  fm_session_flush (fixture->session);
  g_assert_false (fm_session_is_reading (fixture->session));
  g_assert_cmpint (fm_session_get_version_id (fixture->session), ==, 2);
  assert_heard (fixture, "shown 1, formula 1, history 1");
  fm_session_show_version (fixture->session, 1);
  fm_session_show_version (fixture->session, 2);
  fm_session_flush (fixture->session);
  assert_heard (fixture, "");
}

static void
test_branch (Fixture *fixture, gconstpointer data)
{
  add_line (fixture->session, "Chuck");
  fm_session_save_version (fixture->session, "First try");
  add_line (fixture->session, "Brisket");
  fm_session_flush (fixture->session);
  g_string_set_size (fixture->heard, 0);
  fm_session_branch (fixture->session, 1);
  fm_session_flush (fixture->session);
  g_assert_cmpuint (fm_formula_n_lines (fm_session_get_formula (fixture->session)), ==, 1);
  g_assert_cmpstr (fm_stored_document_undo_label (fm_session_get_draft (fixture->session)), ==,
                   "Branch from version 1");
  assert_heard (fixture, "shown 1, formula 1, history 1, draft 1");
}

static void
test_blends (Fixture *fixture, gconstpointer data)
{
  fm_session_blend_renamed (fixture->session, fixture->blend_id, "Home");
  g_assert_cmpstr (fm_session_get_blend_name (fixture->session), ==, "Home");
  assert_heard (fixture, "blend 1");
  fm_session_blend_removed (fixture->session, fixture->blend_id);
  g_assert_null (fm_session_get_formula (fixture->session));
  assert_heard (fixture, "shown 0, formula 0, history 0, blend 1");
}

/* Removed while it was awaited, it is not shown. */
static void
test_removed_meanwhile (Fixture *fixture, gconstpointer data)
{
  FmNotebook *notebook = fm_session_get_notebook (fixture->session);
  gint64 other_id;

  fm_store_forbid_thread (FALSE);
  other_id = fm_blends_add (notebook, "Other", NULL);
  fm_session_show_blend (fixture->session, other_id);
  g_assert_true (fm_blends_remove (notebook, other_id, NULL));
  fm_store_forbid_thread (TRUE);
  fm_session_blend_removed (fixture->session, other_id);
  fm_session_flush (fixture->session);
  g_assert_cmpint (fm_session_get_blend_id (fixture->session), ==, 0);
}

static void
test_notebook (Fixture *fixture, gconstpointer data)
{
  fm_session_set_notebook (fixture->session, NULL);
  assert_heard (fixture, "notebook 0, shown 0, formula 0, history 0");
}

/* Who names a kind hears of no other. */
static void
test_detail (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GString) heard = g_string_new (NULL);

  g_signal_connect (fixture->session, "changed::tasting", G_CALLBACK (changed_cb), heard);
  fm_session_emit_changed (fixture->session, FM_CHANGE_EXPERIMENT, 3);
  fm_session_emit_changed (fixture->session, FM_CHANGE_TASTING, 4);
  g_assert_cmpstr (heard->str, ==, "tasting 4");
  assert_heard (fixture, "experiment 3, tasting 4");
  g_signal_handlers_disconnect_by_data (fixture->session, heard);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
#define ADD(name) g_test_add ("/changes/" #name, Fixture, NULL, set_up, test_##name, tear_down)
  ADD (edit);
  ADD (version);
  ADD (last_wish);
  ADD (branch);
  ADD (blends);
  ADD (removed_meanwhile);
  ADD (notebook);
  ADD (detail);
#undef ADD
  return g_test_run ();
}
