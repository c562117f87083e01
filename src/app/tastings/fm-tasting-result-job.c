/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-result-job.c - reads a tasting, and keeps what an opened one found, in threads */
#include "app/tastings/fm-tasting-result-job.h"

#include "app/session/fm-store-task.h"
#include "app/session/fm-cancel-stop.h"
#include "core/tasting/fm-tasting-outcome.h"

typedef struct {
  gint64 id;
  char *headline;
  GPtrArray *outcomes;
  gboolean is_new; /* out: was not kept yet */
} Kept;

static void
kept_free (gpointer data)
{
  Kept *self = data;

  g_free (self->headline);
  g_ptr_array_unref (self->outcomes);
  g_free (self);
}

static gpointer
read_tasting (FmNotebook *none, gpointer tasting, GCancellable *cancellable, GError **error)
{
  const FmStop stop = fm_cancel_stop (cancellable);

  return fm_tasting_read (tasting, &stop, error);
}

void
fm_tasting_result_job_read_async (const FmTasting *tasting,
                                  GCancellable *cancellable,
                                  GAsyncReadyCallback callback,
                                  gpointer data)
{
  fm_store_task (&(FmStoreTask){
      .run = read_tasting,
      .free_result = (GDestroyNotify)fm_tasting_reading_free,
      .data = fm_tasting_copy (tasting),
      .free_data = (GDestroyNotify)fm_tasting_free,
      .cancellable = cancellable,
      .done = callback,
      .user_data = data,
  });
}

FmTastingReading *
fm_tasting_result_job_read_finish (GAsyncResult *result, GError **error)
{
  return fm_store_task_finish (result, error);
}

/* Looking at a tasting writes nothing: what is kept already stays as it is. */
static gpointer
keep (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  Kept *kept = data;

  kept->is_new = !fm_tastings_has_outcome (notebook, kept->id, kept->headline, kept->outcomes);
  if (kept->is_new &&
      !fm_tastings_save_outcome (notebook, kept->id, kept->headline, kept->outcomes, error))
    return NULL;
  return kept;
}

void
fm_tasting_result_job_keep_async (FmNotebook *notebook,
                                  const FmTasting *tasting,
                                  const FmTastingReading *reading,
                                  GAsyncReadyCallback callback,
                                  gpointer data)
{
  g_autoptr (GError) error = NULL;
  GPtrArray *outcomes = fm_tasting_outcomes_new (tasting, reading, &error);
  Kept *kept;

  if (outcomes == NULL) {
    g_task_report_error (NULL, callback, data, fm_tasting_result_job_keep_async,
                         g_steal_pointer (&error));
    return;
  }
  kept = g_new0 (Kept, 1);
  kept->id = tasting->id;
  kept->headline = g_strdup (reading->headline);
  kept->outcomes = outcomes;
  fm_store_task (&(FmStoreTask){
      .notebook = notebook,
      .run = keep,
      .data = kept,
      .free_data = kept_free,
      .done = callback,
      .user_data = data,
  });
}

gboolean
fm_tasting_result_job_keep_finish (GAsyncResult *result, gboolean *is_new, GError **error)
{
  const Kept *kept = fm_store_task_finish (result, error);

  *is_new = kept != NULL && kept->is_new;
  return kept != NULL;
}
