/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-version-list.c - of a change only the rows that it is about are read */
#include "app/blends/fm-version-list.h"
#include "log-fixture.h"
#include "store/fm-tastings.h"

typedef struct {
  Fixture store;
  FmSession *session;
  FmVersionList *list;
  gint64 second_id; /* another version of the blend */
  GString *heard;   /* blends that were updated */
} List;

static void
updated_cb (GString *heard, gint64 blend_id)
{
  g_string_append_printf (heard, "%" G_GINT64_FORMAT " ", blend_id);
}

static void
wait_for (List *list, const char *expected)
{
  while (list->heard->len < strlen (expected))
    g_main_context_iteration (NULL, TRUE);
  g_assert_cmpstr (list->heard->str, ==, expected);
  g_string_set_size (list->heard, 0);
}

static void
set_up (List *list, gconstpointer data)
{
  fixture_set_up (&list->store, NULL);
  list->second_id = fixture_add_version (list->store.notebook, list->store.blend_id, 30);
  list->heard = g_string_new (NULL);
  list->session = fm_session_new ();
  fm_session_set_notebook (list->session, fm_notebook_ref (list->store.notebook));
  fm_session_flush (list->session);
  list->list = fm_version_list_of (list->session);
  g_signal_connect_swapped (list->list, "updated", G_CALLBACK (updated_cb), list->heard);
  wait_for (list, "0 ");
}

static void
tear_down (List *list, gconstpointer data)
{
  fm_session_flush (list->session);
  /* A thread that is done may still hold its task, and so the list, for a moment. */
  g_object_add_weak_pointer (G_OBJECT (list->list), (gpointer *)&list->list);
  g_object_unref (list->list);
  while (list->list != NULL)
    g_main_context_iteration (NULL, FALSE);
  g_assert_finalize_object (list->session);
  fm_writer_wait_closed ();
  g_string_free (list->heard, TRUE);
  fixture_tear_down (&list->store, NULL);
}

static const char *
detail_of (List *list, guint position)
{
  FmVersionTreeItem *blend = fm_version_list_find_blend (list->list, list->store.blend_id);
  g_autoptr (FmVersionTreeItem) row =
      g_list_model_get_item (G_LIST_MODEL (fm_version_tree_item_get_children (blend)), position);

  return fm_version_tree_item_get_detail (row); /* the list keeps the row */
}

static void
assert_says (List *list, guint position, const char *text)
{
  g_assert_nonnull (strstr (detail_of (list, position), text));
}

static void
assert_says_not (List *list, guint position, const char *text)
{
  g_assert_null (strstr (detail_of (list, position), text));
}

#define EXPERIMENTS "1\302\240experiment"

static gint64
add_experiment (List *list, gint64 version_id)
{
  Fixture of_version = list->store;

  of_version.version_id = version_id;
  return fixture_add_experiment (&of_version, "Trial", NULL);
}

static void
test_shared (List *list, gconstpointer data)
{
  g_autoptr (FmVersionList) again = fm_version_list_of (list->session);

  g_assert_true (again == list->list);
  g_assert_cmpuint (g_list_model_get_n_items (fm_version_list_get_blends (again)), ==, 1);
  g_assert_cmpuint (fm_version_list_get_versions (again, list->store.blend_id)->len, ==, 2);
  g_assert_null (fm_version_list_get_versions (again, 99));
}

/* The second version has an experiment too, of which nobody told: its row is not read. */
static void
test_experiment (List *list, gconstpointer data)
{
  const gint64 id = add_experiment (list, list->store.version_id);

  add_experiment (list, list->second_id);
  fm_session_emit_changed (list->session, FM_CHANGE_EXPERIMENT, id);
  wait_for (list, "1 ");
  assert_says (list, 0, EXPERIMENTS);
  assert_says_not (list, 1, EXPERIMENTS);
}

/* An experiment that is gone names no version. */
static void
test_removed_experiment (List *list, gconstpointer data)
{
  const gint64 id = add_experiment (list, list->store.version_id);

  fm_session_emit_changed (list->session, FM_CHANGE_EXPERIMENT, id);
  wait_for (list, "1 ");
  g_assert_true (fm_experiments_remove (list->store.notebook, id, NULL));
  fm_session_emit_changed (list->session, FM_CHANGE_EXPERIMENT, id);
  wait_for (list, "0 ");
  assert_says_not (list, 0, EXPERIMENTS);
}

static void
test_tasting (List *list, gconstpointer data)
{
  g_autoptr (FmTasting) tasting = fm_tasting_new ();
  const gint64 id = add_experiment (list, list->store.version_id);
  g_autoptr (GError) error = NULL;

  add_experiment (list, list->second_id);
  tasting->title = g_strdup ("Tasting 1");
  g_assert_true (fm_tastings_save (list->store.notebook, tasting, &error));
  fm_session_emit_changed (list->session, FM_CHANGE_TASTING, tasting->id);
  while (g_main_context_iteration (NULL, FALSE))
    ;
  fm_tasting_add_sample (tasting, id, list->store.version_id, "Trial");
  g_assert_true (fm_tastings_save (list->store.notebook, tasting, &error));
  g_assert_no_error (error);
  fm_session_emit_changed (list->session, FM_CHANGE_TASTING, tasting->id);
  wait_for (list, "1 ");
  assert_says (list, 0, EXPERIMENTS);
  assert_says_not (list, 1, EXPERIMENTS);
}

static void
test_version (List *list, gconstpointer data)
{
  FmVersionTreeItem *blend = fm_version_list_find_blend (list->list, list->store.blend_id);
  GListModel *rows = G_LIST_MODEL (fm_version_tree_item_get_children (blend));
  g_autoptr (FmVersionTreeItem) draft = g_list_model_get_item (rows, 2);
  g_autoptr (FmVersionTreeItem) still_draft = NULL;
  const gint64 id = fixture_add_version (list->store.notebook, list->store.blend_id, 40);

  g_assert_cmpint (fm_version_tree_item_get_kind (draft), ==, FM_VERSION_TREE_DRAFT);
  g_assert_nonnull (strstr (fm_version_tree_item_get_detail (draft), "version 2"));
  add_experiment (list, list->second_id);
  fm_session_emit_changed (list->session, FM_CHANGE_VERSION, id);
  wait_for (list, "1 ");
  g_assert_cmpuint (g_list_model_get_n_items (rows), ==, 4);
  assert_says_not (list, 1, EXPERIMENTS);
  assert_says (list, 2, "40");
  g_assert_cmpstr (fm_version_tree_item_get_detail (blend), ==, "3 versions");
  still_draft = g_list_model_get_item (rows, 3);
  g_assert_true (still_draft == draft);
  g_assert_nonnull (strstr (fm_version_tree_item_get_detail (draft), "version 3"));
}

static void
test_blends (List *list, gconstpointer data)
{
  GListModel *blends = fm_version_list_get_blends (list->list);
  const gint64 id = fm_blends_add (list->store.notebook, "Other", NULL);
  FmVersionTreeItem *first = fm_version_list_find_blend (list->list, list->store.blend_id);

  fm_session_emit_changed (list->session, FM_CHANGE_BLEND, id);
  wait_for (list, "2 ");
  g_assert_cmpuint (g_list_model_get_n_items (blends), ==, 2);
  add_experiment (list, list->second_id);
  g_assert_true (fm_blends_rename (list->store.notebook, list->store.blend_id, "Home", NULL));
  fm_session_emit_changed (list->session, FM_CHANGE_BLEND, list->store.blend_id);
  wait_for (list, "1 ");
  g_assert_true (fm_version_list_find_blend (list->list, list->store.blend_id) == first);
  g_assert_cmpstr (fm_version_tree_item_get_title (first), ==, "Home");
  assert_says_not (list, 1, EXPERIMENTS);
  g_assert_true (fm_blends_remove (list->store.notebook, id, NULL));
  fm_session_emit_changed (list->session, FM_CHANGE_BLEND, id);
  wait_for (list, "2 ");
  g_assert_cmpuint (g_list_model_get_n_items (blends), ==, 1);
}

/* Many changes at once: each is read, the same one once. */
static void
test_many (List *list, gconstpointer data)
{
  const gint64 third = fixture_add_version (list->store.notebook, list->store.blend_id, 40);

  fm_session_emit_changed (list->session, FM_CHANGE_DRAFT, list->store.blend_id);
  for (int i = 0; i < 5; i++)
    fm_session_emit_changed (list->session, FM_CHANGE_VERSION, third);
  wait_for (list, "1 1 ");
  while (g_main_context_iteration (NULL, FALSE))
    ;
  g_assert_cmpstr (list->heard->str, ==, "");
  g_assert_cmpuint (fm_version_list_get_versions (list->list, list->store.blend_id)->len, ==, 3);
}

static void
test_notebook (List *list, gconstpointer data)
{
  fm_session_set_notebook (list->session, NULL);
  wait_for (list, "0 ");
  g_assert_cmpuint (g_list_model_get_n_items (fm_version_list_get_blends (list->list)), ==, 0);
  g_assert_false (fm_version_list_is_read (list->list));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
#define ADD(name) g_test_add ("/version-list/" #name, List, NULL, set_up, test_##name, tear_down)
  ADD (shared);
  ADD (experiment);
  ADD (removed_experiment);
  ADD (tasting);
  ADD (version);
  ADD (blends);
  ADD (many);
  ADD (notebook);
#undef ADD
  return g_test_run ();
}
