/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-store-task.c - work in a thread: its outcome, its end, and whose thread its owner leaves in
 */
#include "app/session/fm-store-task.h"

#define N_TASKS 500

static GThread *main_thread;
static guint n_gone;

static void
gone_cb (gpointer data, GObject *object)
{
  g_assert_true (g_thread_self () == main_thread);
  n_gone++;
}

static gpointer
add_one (FmNotebook *notebook, gpointer number, GCancellable *cancellable, GError **error)
{
  g_assert_false (g_thread_self () == main_thread);
  return GINT_TO_POINTER (GPOINTER_TO_INT (number) + 1);
}

static gpointer
fail (FmNotebook *notebook, gpointer none, GCancellable *cancellable, GError **error)
{
  g_set_error_literal (error, G_IO_ERROR, G_IO_ERROR_NO_SPACE, "full");
  return NULL;
}

static void
keep_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  GAsyncResult **kept = user_data;

  *kept = g_object_ref (result);
}

static GAsyncResult *
run (const FmStoreTask *order)
{
  GAsyncResult *kept = NULL;
  FmStoreTask task = *order;

  task.done = keep_cb;
  task.user_data = &kept;
  fm_store_task (&task);
  while (kept == NULL)
    g_main_context_iteration (NULL, TRUE);
  return kept;
}

static void
test_outcome (void)
{
  g_autoptr (GAsyncResult) good = NULL;
  g_autoptr (GAsyncResult) bad = NULL;
  g_autoptr (GError) error = NULL;

  good = run (&(FmStoreTask){ .run = add_one, .data = GINT_TO_POINTER (6) });
  g_assert_cmpint (GPOINTER_TO_INT (fm_store_task_finish (good, NULL)), ==, 7);
  bad = run (&(FmStoreTask){ .run = fail });
  g_assert_null (fm_store_task_finish (bad, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_NO_SPACE);
}

static void
test_cancelled (void)
{
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autoptr (GAsyncResult) result = NULL;
  g_autoptr (GError) error = NULL;

  g_cancellable_cancel (cancellable);
  result = run (&(FmStoreTask){ .run = fail, .cancellable = cancellable });
  g_assert_null (fm_store_task_finish (result, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
}

/* A widget that goes in a thread takes the program with it. */
static void
test_owner (void)
{
  for (guint i = 0; i < N_TASKS; i++) {
    GObject *owner = g_object_new (G_TYPE_OBJECT, NULL);

    g_object_weak_ref (owner, gone_cb, NULL);
    fm_store_task (&(FmStoreTask){ .owner = owner, .run = add_one });
    g_object_unref (owner);
  }
  while (n_gone < N_TASKS)
    g_main_context_iteration (NULL, TRUE);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  main_thread = g_thread_self ();
  g_test_add_func ("/store-task/outcome", test_outcome);
  g_test_add_func ("/store-task/cancelled", test_cancelled);
  g_test_add_func ("/store-task/owner", test_owner);
  return g_test_run ();
}
