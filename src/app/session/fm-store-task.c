/* fm-store-task.c - work on a notebook in a thread, its outcome on the main thread */
#include "app/session/fm-store-task.h"

static void
order_free (FmStoreTask *order)
{
  g_clear_pointer (&order->notebook, fm_notebook_unref);
  if (order->free_data != NULL)
    order->free_data (order->data);
  g_free (order);
}

GTask *
fm_store_task_new (const FmStoreTask *order)
{
  GTask *task = g_task_new (order->owner, order->cancellable, order->done, order->user_data);
  FmStoreTask *kept = g_memdup2 (order, sizeof *order);

  if (kept->notebook != NULL)
    fm_notebook_ref (kept->notebook);
  g_task_set_source_tag (task, order->run);
  g_task_set_check_cancellable (task, !order->finishes);
  g_task_set_task_data (task, kept, (GDestroyNotify)order_free);
  return task;
}

/* The notebook is let go in the thread, because the last reference checkpoints the file. */
void
fm_store_task_run (GTask *task)
{
  FmStoreTask *order = g_task_get_task_data (task);
  GError *error = NULL;
  gpointer result =
      order->run (order->notebook, order->data, g_task_get_cancellable (task), &error);

  g_clear_pointer (&order->notebook, fm_notebook_unref);
  if (error != NULL)
    g_task_return_error (task, error);
  else
    g_task_return_pointer (task, result, order->free_result);
  g_object_unref (task);
}

static void
run_thread (GTask *task, gpointer owner, gpointer data, GCancellable *cancellable)
{
  fm_store_task_run (g_object_ref (task));
}

void
fm_store_task_start (GTask *task)
{
  g_task_run_in_thread (task, run_thread);
  g_object_unref (task);
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
  FmStoreTask *order = g_task_get_task_data (G_TASK (result));

  return order->data;
}
