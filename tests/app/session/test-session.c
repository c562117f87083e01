/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-session.c - the session keeps drafts, undo and versions; the tree of versions is placed */
#include <glib/gstdio.h>
#include <sqlite3.h>
#include <string.h>

#include "app/session/fm-session.h"
#include "app/session/fm-writer.h"
#include "app/blends/fm-version-tree.h"

typedef struct {
  char *folder;
  char *path;
} Fixture;

static void
set_up (Fixture *fixture, gconstpointer data)
{
  fixture->folder = g_dir_make_tmp ("forcemeat-session-XXXXXX", NULL);
  fixture->path = g_build_filename (fixture->folder, "test.forcemeat", NULL);
}

static void
tear_down (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GDir) folder = g_dir_open (fixture->folder, 0, NULL);
  const char *name;

  while ((name = g_dir_read_name (folder)) != NULL) {
    g_autofree char *path = g_build_filename (fixture->folder, name, NULL);

    g_remove (path);
  }
  g_rmdir (fixture->folder);
  g_free (fixture->folder);
  g_free (fixture->path);
}

static FmSession *
new_session (const char *path, gint64 *blend_id)
{
  FmSession *session = fm_session_new ();
  FmNotebook *notebook = fm_notebook_create (path, NULL);

  g_assert_nonnull (notebook);
  *blend_id = fm_blends_add (notebook, "House", NULL);
  fm_session_set_notebook (session, notebook);
  fm_session_show_blend (session, *blend_id);
  fm_session_flush (session);
  return session;
}

static void
add_line (FmSession *session, const char *name, double mass_g)
{
  g_autoptr (FmFormula) next = fm_formula_copy (fm_session_get_formula (session));
  g_autoptr (FmIngredient) ingredient = fm_ingredient_new (name, FM_INGREDIENT_CUT);

  fm_formula_add (next, ingredient, mass_g);
  fm_session_edit (session, next, "Add a line", NULL);
}

static void
test_autosave (Fixture *fixture, gconstpointer data)
{
  gint64 blend_id;
  g_autoptr (FmSession) session = new_session (fixture->path, &blend_id);
  g_autoptr (FmFormula) stored = NULL;

  add_line (session, "Chuck", 700);
  add_line (session, "Brisket", 300);
  g_assert_cmpstr (fm_stored_document_undo_label (fm_session_get_draft (session)), ==,
                   "Add a line");
  fm_stored_document_undo (fm_session_get_draft (session));
  g_assert_cmpuint (fm_formula_n_lines (fm_session_get_formula (session)), ==, 1);
  fm_stored_document_redo (fm_session_get_draft (session));
  fm_session_flush (session);
  g_assert_true (fm_session_is_saved (session));
  stored = fm_draft_load (fm_session_get_notebook (session), blend_id, NULL, NULL);
  g_assert_true (fm_formula_equal (stored, fm_session_get_formula (session)));
  fm_session_set_notebook (session, NULL);
}

static void
test_versions (Fixture *fixture, gconstpointer data)
{
  gint64 blend_id;
  g_autoptr (FmSession) session = new_session (fixture->path, &blend_id);
  g_autoptr (GPtrArray) versions = NULL;
  FmVersionInfo *first;

  add_line (session, "Chuck", 700);
  fm_session_save_version (session, "First try");
  add_line (session, "Brisket", 300);
  fm_session_save_version (session, "More flavour");
  fm_session_flush (session);
  versions = fm_versions_list (fm_session_get_notebook (session), blend_id, NULL);
  g_assert_cmpuint (versions->len, ==, 2);
  first = g_ptr_array_index (versions, 0);
  g_assert_false (fm_session_has_draft_changes (session));

  fm_session_show_version (session, first->id);
  fm_session_flush (session);
  g_assert_false (fm_session_is_editable (session));
  g_assert_cmpuint (fm_formula_n_lines (fm_session_get_formula (session)), ==, 1);
  fm_session_branch (session, first->id);
  fm_session_flush (session);
  g_assert_true (fm_session_is_editable (session));
  g_assert_cmpint (fm_session_get_draft_parent (session), ==, first->id);
  fm_stored_document_undo (fm_session_get_draft (session));
  g_assert_cmpuint (fm_formula_n_lines (fm_session_get_formula (session)), ==, 2);
  fm_session_flush (session);
  fm_session_set_notebook (session, NULL);
}

static void
keep_cb (FmSession *session, const char *text, char **kept)
{
  g_free (*kept);
  *kept = g_strdup (text);
}

/* A damaged draft hides only itself: its blend and its versions are there. */
static void
test_damaged_draft (Fixture *fixture, gconstpointer data)
{
  gint64 blend_id;
  g_autoptr (FmSession) session = new_session (fixture->path, &blend_id);
  g_autofree char *said = NULL;
  sqlite3 *handle = NULL;

  add_line (session, "Chuck", 700);
  fm_session_save_version (session, "First try");
  fm_session_flush (session);
  fm_session_set_notebook (session, NULL);
  fm_writer_wait_closed ();
  g_assert_cmpint (sqlite3_open (fixture->path, &handle), ==, SQLITE_OK);
  g_assert_cmpint (
      sqlite3_exec (handle, "UPDATE drafts SET formula_json = '{\xc3'", NULL, NULL, NULL), ==,
      SQLITE_OK);
  sqlite3_close (handle);

  g_signal_connect (session, "failure", G_CALLBACK (keep_cb), &said);
  fm_session_set_notebook (session, fm_notebook_open (fixture->path, NULL, NULL));
  fm_session_flush (session);
  g_assert_cmpint (fm_session_get_blend_id (session), ==, blend_id);
  g_assert_cmpuint (fm_formula_n_lines (fm_session_get_formula (session)), ==, 1);
  g_assert_nonnull (strstr (said, "The draft of this blend is damaged"));
  fm_session_set_notebook (session, NULL);
}

static void
added_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  GPtrArray **infos = data;

  *infos = fm_session_add_versions_finish (FM_SESSION (source), result, NULL);
  g_assert_nonnull (*infos);
}

/* Versions from elsewhere grow beside the draft: its edits and its undo stay. */
static void
test_added_versions (Fixture *fixture, gconstpointer data)
{
  gint64 blend_id;
  g_autoptr (FmSession) session = new_session (fixture->path, &blend_id);
  g_autoptr (GPtrArray) formulas = g_ptr_array_new_with_free_func ((GDestroyNotify)fm_formula_free);
  const char *reasons[] = { "Trial 1", "Trial 2", NULL };
  GPtrArray *infos = NULL;
  gint64 parent_id;

  add_line (session, "Chuck", 700);
  fm_session_save_version (session, "First try");
  fm_session_flush (session);
  parent_id = fm_session_get_draft_parent (session);
  add_line (session, "Brisket", 300);
  for (guint i = 0; reasons[i] != NULL; i++) {
    FmFormula *formula = fm_formula_copy (fm_session_get_formula (session));

    g_assert_true (fm_formula_set_mass (formula, 1, 100.0 * (i + 1), NULL));
    g_ptr_array_add (formulas, formula);
  }
  fm_session_add_versions (session, blend_id, parent_id, formulas, reasons, added_cb, &infos);
  while (infos == NULL)
    g_main_context_iteration (NULL, TRUE);
  g_assert_cmpuint (infos->len, ==, 2);
  for (guint i = 0; i < infos->len; i++) {
    const FmVersionInfo *info = g_ptr_array_index (infos, i);

    g_assert_cmpint (info->number, ==, i + 2);
    g_assert_cmpint (info->parent_id, ==, parent_id);
    g_assert_cmpstr (info->reason, ==, reasons[i]);
  }
  g_ptr_array_unref (infos);
  g_assert_true (fm_session_has_draft_changes (session));
  g_assert_cmpint (fm_session_get_draft_parent (session), ==, parent_id);
  g_assert_cmpstr (fm_stored_document_undo_label (fm_session_get_draft (session)), ==,
                   "Add a line");
  fm_session_set_notebook (session, NULL);
}

static void
test_layout (void)
{
  /* 1 - 2 - 3, 4 from 2, 5 from 1 */
  FmVersionInfo infos[] = {
    { .id = 11, .number = 1 },
    { .id = 12, .number = 2, .parent_id = 11 },
    { .id = 13, .number = 3, .parent_id = 12 },
    { .id = 14, .number = 4, .parent_id = 12 },
    { .id = 15, .number = 5, .parent_id = 11 },
  };
  const guint lanes[] = { 0, 0, 0, 2, 1 };
  g_autoptr (GPtrArray) versions = g_ptr_array_new ();
  g_autoptr (GArray) places = NULL;

  for (guint i = 0; i < G_N_ELEMENTS (infos); i++)
    g_ptr_array_add (versions, &infos[i]);
  places = fm_version_tree_layout (versions);
  for (guint i = 0; i < places->len; i++)
    g_assert_cmpuint (g_array_index (places, FmVersionTreePlace, i).lane, ==, lanes[i]);
  g_assert_cmpuint (g_array_index (places, FmVersionTreePlace, 0).forks, ==, 1u << 1);
  g_assert_cmpuint (g_array_index (places, FmVersionTreePlace, 4).below, ==, 0);
  g_assert_cmpuint (fm_version_tree_n_lanes (places), ==, 3);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add ("/session/autosave", Fixture, NULL, set_up, test_autosave, tear_down);
  g_test_add ("/session/versions", Fixture, NULL, set_up, test_versions, tear_down);
  g_test_add ("/session/damaged-draft", Fixture, NULL, set_up, test_damaged_draft, tear_down);
  g_test_add ("/session/added-versions", Fixture, NULL, set_up, test_added_versions, tear_down);
  g_test_add_func ("/version-tree/layout", test_layout);
  return g_test_run ();
}
