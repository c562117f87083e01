/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-documents.c - documents on a disk that is full for a while: kept, asked for, copied, saved
 */
#include <glib/gstdio.h>

#include "app/photos/fm-photo-caption.h"
#include "app/session/fm-experiment-document.h"
#include "full-disk.h"

typedef struct {
  char *folder;
  FmSession *session;
  gint64 experiment_id;
  guint n_failures;
} Fixture;

static void
failure_cb (Fixture *fixture)
{
  fixture->n_failures++;
}

static void
set_up (Fixture *fixture, gconstpointer data)
{
  g_autofree char *path = NULL;
  g_autoptr (FmFormula) formula = fm_formula_new ();
  g_autoptr (FmIngredient) chuck = fm_ingredient_new ("Chuck", FM_INGREDIENT_CUT);
  g_autoptr (FmExperiment) experiment = fm_experiment_new ();
  FmNotebook *notebook;
  gint64 blend_id;

  fixture->folder = g_dir_make_tmp ("forcemeat-documents-XXXXXX", NULL);
  path = g_build_filename (fixture->folder, "test.forcemeat", NULL);
  notebook = fm_notebook_create (path, NULL);
  g_assert_nonnull (notebook);
  fm_formula_add (formula, chuck, 500);
  blend_id = fm_blends_add (notebook, "House", NULL);
  experiment->version_id = fm_versions_save (notebook, blend_id, formula, "First", NULL);
  experiment->title = g_strdup ("Before");
  g_assert_true (fm_experiments_save (notebook, experiment, NULL));
  fixture->experiment_id = experiment->id;
  fixture->session = fm_session_new ();
  g_signal_connect_swapped (fixture->session, "failure", G_CALLBACK (failure_cb), fixture);
  fm_session_set_notebook (fixture->session, notebook);
}

static void
tear_down (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GDir) folder = NULL;
  const char *name;

  writes_left = G_MAXINT;
  fm_session_flush (fixture->session);
  fm_session_set_notebook (fixture->session, NULL);
  g_object_unref (fixture->session);
  while (g_main_context_iteration (NULL, FALSE))
    continue;
  fm_writer_wait_closed ();
  folder = g_dir_open (fixture->folder, 0, NULL);
  while ((name = g_dir_read_name (folder)) != NULL) {
    g_autofree char *path = g_build_filename (fixture->folder, name, NULL);

    g_remove (path);
  }
  g_rmdir (fixture->folder);
  g_free (fixture->folder);
}

static FmExperimentDocument *
open_document (Fixture *fixture)
{
  FmNotebook *notebook = fm_session_get_notebook (fixture->session);

  return fm_experiment_document_open (fixture->session,
                                      fm_experiments_load (notebook, fixture->experiment_id, NULL));
}

static void
retitle (FmExperimentDocument *document, const char *title)
{
  FmExperiment *experiment = fm_experiment_document_get_experiment (document);

  g_free (experiment->title);
  experiment->title = g_strdup (title);
  fm_experiment_document_touch (document);
}

static void
type_title (FmExperimentDocument *document, const char *title)
{
  FmExperiment *experiment = fm_experiment_document_get_experiment (document);

  g_free (experiment->title);
  experiment->title = g_strdup (title);
  fm_experiment_document_did (document, "Title");
}

static const char *
title_of (FmExperimentDocument *document)
{
  return fm_experiment_document_get_experiment (document)->title;
}

/* Leaves an experiment whose last change could not be saved. */
static void
leave_unsaved (Fixture *fixture, const char *title)
{
  g_autoptr (FmExperimentDocument) document = open_document (fixture);

  writes_left = 0;
  retitle (document, title);
  fm_session_flush (fixture->session);
  g_assert_cmpuint (fixture->n_failures, ==, 1);
  g_assert_false (fm_session_is_saved (fixture->session));
}

static void
assert_title (FmNotebook *notebook, gint64 id, const char *title)
{
  g_autoptr (FmExperiment) stored = fm_experiments_load (notebook, id, NULL);

  g_assert_cmpstr (stored->title, ==, title);
}

static void
test_one_a_record (Fixture *fixture, gconstpointer data)
{
  g_autoptr (FmExperimentDocument) again = NULL;

  leave_unsaved (fixture, "After");
  again = open_document (fixture);
  g_assert_cmpstr (fm_experiment_document_get_experiment (again)->title, ==, "After");
  fm_session_flush (fixture->session); /* fails again, which is not said again */
  g_assert_cmpuint (fixture->n_failures, ==, 1);
  writes_left = G_MAXINT;
  fm_session_flush (fixture->session);
  g_assert_true (fm_session_is_saved (fixture->session));
  assert_title (fm_session_get_notebook (fixture->session), fixture->experiment_id, "After");
}

/* Typing during a save that fails is part of the next one. */
static void
test_retry (Fixture *fixture, gconstpointer data)
{
  g_autoptr (FmExperimentDocument) document = open_document (fixture);

  writes_left = 0;
  retitle (document, "Aft");
  fm_stored_document_flush (FM_STORED_DOCUMENT (document));
  retitle (document, "After");
  while (fixture->n_failures == 0)
    g_main_context_iteration (NULL, TRUE);
  writes_left = G_MAXINT;
  while (!fm_session_is_saved (fixture->session))
    g_main_context_iteration (NULL, TRUE);
  assert_title (fm_session_get_notebook (fixture->session), fixture->experiment_id, "After");
}

static void
test_another_notebook (Fixture *fixture, gconstpointer data)
{
  g_autoptr (FmNotebook) first = fm_notebook_ref (fm_session_get_notebook (fixture->session));

  leave_unsaved (fixture, "After");
  fm_session_set_notebook (fixture->session, NULL);
  fm_session_flush (fixture->session); /* the save that leaving asked for has failed by now */
  g_assert_false (fm_session_is_saved (fixture->session));
  writes_left = G_MAXINT;
  fm_session_flush (fixture->session);
  g_assert_true (fm_session_is_saved (fixture->session));
  assert_title (first, fixture->experiment_id, "After");
}

static void
test_copy (Fixture *fixture, gconstpointer data)
{
  FmDocuments *documents = fm_session_get_documents (fixture->session);
  FmNotebook *notebook = fm_session_get_notebook (fixture->session);
  g_autofree char *path = g_build_filename (fixture->folder, "copy.forcemeat", NULL);
  g_autofree char *unsaved = NULL;
  g_autoptr (FmNotebook) copy = NULL;
  g_autoptr (GPtrArray) copies = NULL;

  leave_unsaved (fixture, "After");
  unsaved = fm_documents_describe (documents);
  g_assert_cmpstr (unsaved, ==, "Experiment “After”");
  g_assert_false (fm_documents_is_kept (documents));
  copies = fm_documents_copy_unsaved (documents, notebook);
  g_assert_cmpuint (copies->len, ==, 1);
  writes_left = G_MAXINT; /* the copy goes to another disk */
  g_assert_true (fm_notebook_save_copy (notebook, path, NULL, NULL));
  copy = fm_notebook_open (path, NULL, NULL);
  g_assert_true (fm_stored_copy_save (g_ptr_array_index (copies, 0), copy, NULL));
  fm_stored_copy_tell_kept (g_ptr_array_index (copies, 0));
  g_assert_true (fm_documents_is_kept (documents));
  g_assert_false (fm_documents_is_saved (documents));
  assert_title (copy, fixture->experiment_id, "After");
  assert_title (notebook, fixture->experiment_id, "Before");
}

/* The file is deleted: nothing counts as saved, until the session goes on in another place. */
static void
test_lost (Fixture *fixture, gconstpointer data)
{
  FmNotebook *notebook = fm_session_get_notebook (fixture->session);
  g_autofree char *path = g_build_filename (fixture->folder, "elsewhere.forcemeat", NULL);
  g_autoptr (FmExperimentDocument) document = open_document (fixture);

  g_assert_null (fm_session_get_place (fixture->session));
  g_assert_cmpint (g_unlink (fm_notebook_path (notebook)), ==, 0);
  retitle (document, "After");
  fm_session_flush (fixture->session);
  g_assert_false (fm_session_is_saved (fixture->session));
  g_assert_false (fm_session_get_place (fixture->session)->has_name);
  g_assert_cmpuint (fixture->n_failures, ==, 0); /* the window has a bar for that */

  g_assert_true (fm_notebook_save_copy (notebook, path, NULL, NULL));
  fm_session_move (fixture->session, fm_notebook_open (path, NULL, NULL));
  fm_session_flush (fixture->session);
  g_assert_true (fm_session_is_saved (fixture->session));
  g_assert_null (fm_session_get_place (fixture->session));
  assert_title (fm_session_get_notebook (fixture->session), fixture->experiment_id, "After");
}

static void
test_removed (Fixture *fixture, gconstpointer data)
{
  FmNotebook *notebook = fm_session_get_notebook (fixture->session);

  leave_unsaved (fixture, "After");
  fm_documents_forget (fm_session_get_documents (fixture->session), FM_TYPE_EXPERIMENT_DOCUMENT,
                       notebook, fixture->experiment_id);
  g_assert_true (fm_session_is_saved (fixture->session));
}

/* The window that held the caption is gone before it could be saved. */
static void
test_caption (Fixture *fixture, gconstpointer data)
{
  const FmPhotoInfo info = { .id = 7, .caption = NULL };
  FmPhotoCaption *caption = fm_photo_caption_open (fixture->session, &info);
  g_autofree char *unsaved = NULL;

  fm_photo_caption_set_text (caption, "Cut open");
  g_object_unref (caption);
  fm_session_flush (fixture->session); /* there is no such photo */
  g_assert_cmpuint (fixture->n_failures, ==, 1);
  unsaved = fm_documents_describe (fm_session_get_documents (fixture->session));
  g_assert_cmpstr (unsaved, ==, "The caption “Cut open” of a photo");
  caption = fm_photo_caption_open (fixture->session, &info);
  g_assert_cmpstr (fm_photo_caption_get_text (caption), ==, "Cut open");
  g_object_unref (caption);
  fm_documents_give_up (fm_session_get_documents (fixture->session));
  g_assert_true (fm_session_is_saved (fixture->session));
}

static void
restored_cb (GString *said, const char *text)
{
  g_string_append_printf (said, "%s;", text);
}

static void
test_steps_are_undone_and_saved (Fixture *fixture, gconstpointer data)
{
  g_autoptr (FmExperimentDocument) document = open_document (fixture);
  FmStoredDocument *stored = FM_STORED_DOCUMENT (document);
  g_autoptr (GString) said = g_string_new (NULL);

  g_signal_connect_swapped (document, "restored", G_CALLBACK (restored_cb), said);
  g_assert_null (fm_stored_document_undo_label (stored));
  type_title (document, "T");
  type_title (document, "Ty");
  fm_experiment_document_get_experiment (document)->rating = 7;
  fm_experiment_document_did (document, "Rating");
  fm_session_flush (fixture->session);
  fm_stored_document_undo (stored);
  g_assert_cmpint (fm_experiment_document_get_experiment (document)->rating, ==, 0);
  g_assert_cmpstr (fm_stored_document_redo_label (stored), ==, "Rating");
  fm_stored_document_undo (stored);
  g_assert_cmpstr (title_of (document), ==, "Before");
  g_assert_null (fm_stored_document_undo_label (stored));
  fm_stored_document_undo (stored);
  g_assert_cmpstr (said->str, ==, "Undone: Rating;Undone: Title;");
  fm_session_flush (fixture->session);
  assert_title (fm_session_get_notebook (fixture->session), fixture->experiment_id, "Before");
  fm_stored_document_redo (stored);
  fm_session_flush (fixture->session);
  assert_title (fm_session_get_notebook (fixture->session), fixture->experiment_id, "Ty");
}

/* What came from elsewhere is no step, and is not lost by taking back one before it. */
static void
test_unnamed_changes_end_the_steps (Fixture *fixture, gconstpointer data)
{
  g_autoptr (FmExperimentDocument) document = open_document (fixture);

  type_title (document, "Typed");
  fm_experiment_document_get_experiment (document)->rest_minutes = 5;
  fm_experiment_document_touch (document);
  g_assert_null (fm_stored_document_undo_label (FM_STORED_DOCUMENT (document)));
  type_title (document, "Typed more");
  fm_stored_document_undo (FM_STORED_DOCUMENT (document));
  g_assert_cmpstr (title_of (document), ==, "Typed");
  g_assert_cmpfloat (fm_experiment_document_get_experiment (document)->rest_minutes, ==, 5);
}

static void
add (const char *path, void (*test) (Fixture *, gconstpointer))
{
  g_test_add (path, Fixture, NULL, set_up, test, tear_down);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  if (!replace_pwrite (TRUE)) {
    g_print ("1..0 # SKIP this SQLite writes in another way\n");
    return 0;
  }
  add ("/documents/one-a-record", test_one_a_record);
  add ("/documents/retry", test_retry);
  add ("/documents/another-notebook", test_another_notebook);
  add ("/documents/copy", test_copy);
  add ("/documents/lost", test_lost);
  add ("/documents/removed", test_removed);
  add ("/documents/caption", test_caption);
  add ("/documents/steps-are-undone-and-saved", test_steps_are_undone_and_saved);
  add ("/documents/unnamed-changes-end-the-steps", test_unnamed_changes_end_the_steps);
  return g_test_run ();
}
