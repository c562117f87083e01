/* fm-tasting-result-job.c - reads a tasting, and keeps what an opened one found, in threads */
#include "app/tastings/fm-tasting-result-job.h"

#include "app/session/fm-cancel-stop.h"
#include "core/tasting/fm-tasting-outcome.h"

typedef struct {
  FmNotebook *notebook;
  gint64 id;
  char *headline;
  GPtrArray *outcomes;
} Kept;

static void
kept_free (gpointer data)
{
  Kept *self = data;

  fm_notebook_unref (self->notebook);
  g_free (self->headline);
  g_ptr_array_unref (self->outcomes);
  g_free (self);
}

static void
read_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  const FmStop stop = fm_cancel_stop (cancellable);
  GError *error = NULL;
  FmTastingReading *reading = fm_tasting_read (data, &stop, &error);

  if (reading != NULL)
    g_task_return_pointer (task, reading, (GDestroyNotify)fm_tasting_reading_free);
  else
    g_task_return_error (task, error);
}

void
fm_tasting_result_job_read_async (const FmTasting *tasting,
                                  GCancellable *cancellable,
                                  GAsyncReadyCallback callback,
                                  gpointer data)
{
  g_autoptr (GTask) task = g_task_new (NULL, cancellable, callback, data);

  g_task_set_source_tag (task, fm_tasting_result_job_read_async);
  g_task_set_task_data (task, fm_tasting_copy (tasting), (GDestroyNotify)fm_tasting_free);
  g_task_run_in_thread (task, read_thread);
}

FmTastingReading *
fm_tasting_result_job_read_finish (GAsyncResult *result, GError **error)
{
  return g_task_propagate_pointer (G_TASK (result), error);
}

static void
keep_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  Kept *kept = data;
  GError *error = NULL;

  if (fm_tastings_save_outcome (kept->notebook, kept->id, kept->headline, kept->outcomes, &error))
    g_task_return_boolean (task, TRUE);
  else
    g_task_return_error (task, error);
}

void
fm_tasting_result_job_keep_async (FmNotebook *notebook,
                                  const FmTasting *tasting,
                                  const FmTastingReading *reading,
                                  GAsyncReadyCallback callback,
                                  gpointer data)
{
  g_autoptr (GTask) task = g_task_new (NULL, NULL, callback, data);
  GError *error = NULL;
  GPtrArray *outcomes = fm_tasting_outcomes_new (tasting, reading, &error);
  Kept *kept;

  g_task_set_source_tag (task, fm_tasting_result_job_keep_async);
  if (outcomes == NULL) {
    g_task_return_error (task, error);
    return;
  }
  kept = g_new0 (Kept, 1);
  kept->notebook = fm_notebook_ref (notebook);
  kept->id = tasting->id;
  kept->headline = g_strdup (reading->headline);
  kept->outcomes = outcomes;
  g_task_set_task_data (task, kept, kept_free);
  g_task_run_in_thread (task, keep_thread);
}

gboolean
fm_tasting_result_job_keep_finish (GAsyncResult *result, GError **error)
{
  return g_task_propagate_boolean (G_TASK (result), error);
}
