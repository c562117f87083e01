/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-store-task.c - work on a notebook in a thread, its outcome on the main thread */
#include "app/session/fm-store-task.h"

#define MAX_THREADS 12 /* more than read at once, so that a long computation holds no read up */

typedef struct {
  FmStoreTask order;
  gpointer result;
  GError *error;
} Job;

static void
job_free (Job *job)
{
  g_clear_pointer (&job->order.notebook, fm_notebook_unref);
  if (job->order.free_data != NULL)
    job->order.free_data (job->order.data);
  g_clear_error (&job->error);
  g_free (job);
}

GTask *
fm_store_task_new (const FmStoreTask *order)
{
  GTask *task = g_task_new (order->owner, order->cancellable, order->done, order->user_data);
  Job *job = g_new0 (Job, 1);

  job->order = *order;
  if (order->notebook != NULL)
    fm_notebook_ref (order->notebook);
  g_task_set_source_tag (task, order->run);
  g_task_set_check_cancellable (task, !order->finishes);
  g_task_set_task_data (task, job, (GDestroyNotify)job_free);
  return task;
}

static gboolean
tell_cb (gpointer data)
{
  g_autoptr (GTask) task = data;
  Job *job = g_task_get_task_data (task);

  if (job->error != NULL)
    g_task_return_error (task, g_steal_pointer (&job->error));
  else
    g_task_return_pointer (task, g_steal_pointer (&job->result), job->order.free_result);
  return G_SOURCE_REMOVE;
}

/* The task goes back whole: with its last reference its owner may go, which is no matter of a
 * thread. */
static void
send_back (GTask *task)
{
  g_autoptr (GSource) source = g_idle_source_new ();

  g_source_set_priority (source, g_task_get_priority (task));
  g_source_set_callback (source, tell_cb, task, NULL);
  g_source_attach (source, g_task_get_context (task));
}

/* The notebook is let go in the thread, because the last reference checkpoints the file. */
void
fm_store_task_run (GTask *task)
{
  Job *job = g_task_get_task_data (task);
  const FmStoreTask *order = &job->order;
  GCancellable *cancellable = g_task_get_cancellable (task);

  if (order->finishes || !g_cancellable_set_error_if_cancelled (cancellable, &job->error))
    job->result = order->run (order->notebook, order->data, cancellable, &job->error);
  g_clear_pointer (&job->order.notebook, fm_notebook_unref);
  send_back (task);
}

static void
run_in_pool (gpointer task, gpointer none)
{
  fm_store_task_run (task);
}

void
fm_store_task_start (GTask *task)
{
  static gsize made;
  static GThreadPool *pool;

  if (g_once_init_enter (&made)) {
    pool = g_thread_pool_new (run_in_pool, NULL, MAX_THREADS, FALSE, NULL);
    g_once_init_leave (&made, 1);
  }
  g_thread_pool_push (pool, task, NULL);
}

void
fm_store_task (const FmStoreTask *order)
{
  fm_store_task_start (fm_store_task_new (order));
}

gpointer
fm_store_task_finish (GAsyncResult *result, GError **error)
{
  return g_task_propagate_pointer (G_TASK (result), error);
}

gpointer
fm_store_task_data (GAsyncResult *result)
{
  Job *job = g_task_get_task_data (G_TASK (result));

  return job->order.data;
}
