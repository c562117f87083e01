/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-log-model.c - a record that changed is read alone, and only its row is touched */
#include "app/experiments/fm-experiment-query.h"
#include "log-fixture.h"

#define ANY_NUMBER GINT_TO_POINTER (-1)

typedef struct {
  Fixture store;
  FmLogModel *model;
  gint64 ids[3]; /* newest first, as listed */
} Log;

static gint n_lists;      /* reads of all rows, in threads */
static gint64 failing_id; /* whose row cannot be read alone */
static gint n_held; /* 1: the next read of a row is held up once it has read; 2: it is; 0: none */

static GPtrArray *
read_counted (FmNotebook *notebook,
              gconstpointer query,
              gint64 only_id,
              GCancellable *cancellable,
              GError **error)
{
  if (only_id == 0)
    g_atomic_int_inc (&n_lists);
  if (only_id != 0 && only_id == failing_id) {
    g_set_error_literal (error, G_IO_ERROR, G_IO_ERROR_FAILED, "The page is torn.");
    return NULL;
  }
  if (only_id != 0 && g_atomic_int_compare_and_exchange (&n_held, 1, 2)) {
    GPtrArray *rows = fm_experiment_log_kind.read (notebook, query, only_id, cancellable, error);

    while (g_atomic_int_get (&n_held) != 0)
      g_thread_yield ();
    return rows;
  }
  return fm_experiment_log_kind.read (notebook, query, only_id, cancellable, error);
}

static void
updated_cb (gboolean *updated)
{
  *updated = TRUE;
}

static void
wait_for_update (Log *log)
{
  gboolean updated = FALSE;
  const gulong id =
      g_signal_connect_swapped (log->model, "updated", G_CALLBACK (updated_cb), &updated);

  while (!updated)
    g_main_context_iteration (NULL, TRUE);
  g_signal_handler_disconnect (log->model, id);
}

static gpointer
query_new (int min_rating)
{
  const FmExperimentFilter filter = { .sort = FM_EXPERIMENT_SORT_DATE,
                                      .descending = TRUE,
                                      .min_rating = min_rating };

  return fm_experiment_query_copy_filter (&filter);
}

static void
save (Log *log, gint64 id, const char *title, gint64 made_at, int rating)
{
  g_autoptr (FmExperiment) experiment = fm_experiments_load (log->store.notebook, id, NULL);

  g_free (experiment->title);
  experiment->title = g_strdup (title);
  experiment->made_at = made_at;
  experiment->rating = rating;
  g_assert_true (fm_experiments_save (log->store.notebook, experiment, NULL));
}

static void
set_up (Log *log, gconstpointer data)
{
  static FmLogKind kind;

  fixture_set_up (&log->store, NULL);
  for (int i = 2; i >= 0; i--) {
    log->ids[i] = fixture_add_experiment (&log->store, "Trial", NULL);
    save (log, log->ids[i], "Trial", 1000 * (3 - i), 5);
  }
  kind = fm_experiment_log_kind;
  kind.read = read_counted;
  log->model = fm_log_model_new (&kind);
  fm_log_model_read (log->model, log->store.notebook, query_new (5));
  wait_for_update (log);
  g_assert_cmpuint (fm_log_model_get_n (log->model), ==, 3);
  n_lists = 0;
}

static void
tear_down (Log *log, gconstpointer data)
{
  if (data != ANY_NUMBER)
    g_assert_cmpint (n_lists, ==, GPOINTER_TO_INT (data));
  /* A thread that is done may still hold its task, and so the model, for a moment. */
  g_object_add_weak_pointer (G_OBJECT (log->model), (gpointer *)&log->model);
  g_object_unref (log->model);
  while (log->model != NULL)
    g_main_context_iteration (NULL, FALSE);
  fixture_tear_down (&log->store, NULL);
}

static void
items_changed_cb (GListModel *model, guint position, guint n_removed, guint n_added, GString *heard)
{
  g_string_append_printf (heard, "%s%u -%u +%u", heard->len > 0 ? ", " : "", position, n_removed,
                          n_added);
}

/* Reads the row of a record; answers which items the model said to be others. */
static char *
read_row (Log *log, gint64 id)
{
  GString *heard = g_string_new (NULL);
  const gulong handler =
      g_signal_connect (log->model, "items-changed", G_CALLBACK (items_changed_cb), heard);

  fm_log_model_read_row (log->model, id);
  wait_for_update (log);
  g_signal_handler_disconnect (log->model, handler);
  return g_string_free (heard, FALSE);
}

static void
row_changed_cb (guint *n_changes)
{
  (*n_changes)++;
}

/* The same objects stay, so that selection, focus and place in the list do. */
static void
test_in_place (Log *log, gconstpointer data)
{
  g_autoptr (FmLogRow) row = g_list_model_get_item (G_LIST_MODEL (log->model), 1);
  g_autofree char *heard = NULL;
  const FmExperimentInfo *info;
  guint n_changes = 0;

  g_signal_connect_swapped (row, "changed", G_CALLBACK (row_changed_cb), &n_changes);
  save (log, log->ids[1], "Renamed", 2500, 6);
  heard = read_row (log, log->ids[1]);
  g_assert_cmpstr (heard, ==, "");
  g_assert_cmpuint (n_changes, ==, 1);
  info = fm_log_row_get_info (row);
  g_assert_cmpstr (info->title, ==, "Renamed");
}

static void
test_moved (Log *log, gconstpointer data)
{
  g_autofree char *heard = NULL;

  save (log, log->ids[2], "Oldest", 9000, 5);
  heard = read_row (log, log->ids[2]);
  g_assert_cmpstr (heard, ==, "2 -1 +0, 0 -0 +1");
  g_assert_cmpuint (fm_log_model_find (log->model, log->ids[2]), ==, 0);
}

static void
test_added (Log *log, gconstpointer data)
{
  const gint64 id = fixture_add_experiment (&log->store, "New", NULL);
  g_autofree char *before = read_row (log, id);
  g_autofree char *heard = NULL;

  g_assert_cmpstr (before, ==, ""); /* not rated yet, so the filter keeps it out */
  save (log, id, "New", 1500, 5);
  heard = read_row (log, id);
  g_assert_cmpstr (heard, ==, "2 -0 +1");
}

/* The row object may be held longer than its record is there. */
static void
test_dropped (Log *log, gconstpointer data)
{
  g_autoptr (FmLogRow) row = g_list_model_get_item (G_LIST_MODEL (log->model), 1);
  g_autofree char *heard = NULL;

  g_assert_true (fm_experiments_remove (log->store.notebook, log->ids[1], NULL));
  heard = read_row (log, log->ids[1]);
  g_assert_cmpstr (heard, ==, "1 -1 +0");
  g_assert_null (fm_log_row_get_info (row));
}

static void
test_hidden (Log *log, gconstpointer data)
{
  g_autofree char *heard = NULL;

  fm_log_model_hide (log->model, log->ids[0]);
  g_assert_cmpuint (fm_log_model_get_n (log->model), ==, 2);
  heard = read_row (log, log->ids[0]);
  g_assert_cmpstr (heard, ==, "");
  g_assert_true (fm_log_model_unhide (log->model, log->ids[0]));
  g_assert_false (fm_log_model_unhide (log->model, log->ids[0]));
  g_free (heard);
  heard = read_row (log, log->ids[0]);
  g_assert_cmpuint (fm_log_model_find (log->model, log->ids[0]), ==, 0);
}

static void
test_query (Log *log, gconstpointer data)
{
  fm_log_model_read_other (log->model, log->store.notebook, query_new (5));
  g_assert_true (fm_log_model_is_read (log->model));
  fm_log_model_read_other (log->model, log->store.notebook, query_new (6));
  wait_for_update (log);
  g_assert_cmpuint (fm_log_model_get_n (log->model), ==, 0);
}

static void
failed_cb (char **failure, const char *message)
{
  g_free (*failure);
  *failure = g_strdup (message);
}

/* The other rows stay, and the one that was not read says so until it is. */
static void
test_row_fails (Log *log, gconstpointer data)
{
  g_autoptr (FmLogRow) row = g_list_model_get_item (G_LIST_MODEL (log->model), 1);
  g_autofree char *failure = NULL;

  g_signal_connect_swapped (log->model, "failed", G_CALLBACK (failed_cb), &failure);
  failing_id = log->ids[1];
  fm_log_model_read_row (log->model, log->ids[1]);
  while (fm_log_row_get_failure (row) == NULL)
    g_main_context_iteration (NULL, TRUE);
  g_assert_cmpstr (fm_log_row_get_failure (row), ==, "The page is torn.");
  g_assert_nonnull (fm_log_row_get_info (row));
  g_assert_cmpuint (fm_log_model_get_n (log->model), ==, 3);
  g_assert_null (failure);
  failing_id = 0;
  g_free (read_row (log, log->ids[1]));
  g_assert_null (fm_log_row_get_failure (row));
}

/* An older read that ends after a newer one changes nothing. */
static void
test_last_read_counts (Log *log, gconstpointer data)
{
  const FmExperimentInfo *info;

  n_held = 1;
  save (log, log->ids[0], "First", 3000, 5);
  fm_log_model_read_row (log->model, log->ids[0]);
  while (g_atomic_int_get (&n_held) != 2)
    g_main_context_iteration (NULL, FALSE);
  save (log, log->ids[0], "Second", 3000, 5);
  g_free (read_row (log, log->ids[0]));
  g_atomic_int_set (&n_held, 0);
  /* Read after both, so that the held one was told of by then. */
  g_free (read_row (log, log->ids[2]));
  for (int i = 0; i < 100; i++) {
    g_main_context_iteration (NULL, FALSE);
    g_usleep (200);
  }
  info = fm_log_model_get_info (log->model, 0);
  g_assert_cmpstr (info->title, ==, "Second");
}

/* What is being read may be older than the change that is told of. */
static void
test_change_while_reading (Log *log, gconstpointer data)
{
  fm_log_model_read (log->model, log->store.notebook, query_new (0));
  save (log, log->ids[0], "Late", 3000, 5);
  fm_log_model_read_row (log->model, log->ids[0]);
  wait_for_update (log);
  g_assert_cmpstr (((const FmExperimentInfo *)fm_log_model_get_info (log->model, 0))->title, ==,
                   "Late");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
#define ADD(name, n_lists_wanted)                                                                  \
  g_test_add ("/log-model/" #name, Log, GINT_TO_POINTER (n_lists_wanted), set_up, test_##name,     \
              tear_down)
  ADD (in_place, 0);
  ADD (moved, 0);
  ADD (added, 0);
  ADD (dropped, 0);
  ADD (hidden, 0);
  ADD (row_fails, 0);
  ADD (last_read_counts, 0);
  ADD (query, 1);
  ADD (change_while_reading, -1);
#undef ADD
  return g_test_run ();
}
