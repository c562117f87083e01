/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-targets-task.c - the slow parts of meeting the targets, off the main thread */
#include "app/targets/fm-targets-task.h"

#include "app/session/fm-store-task.h"

typedef struct {
  gint64 reference_id; /* a version; 0 = none */
  FmTargets *targets;
} Job;

static void
job_free (gpointer data)
{
  Job *job = data;

  g_clear_pointer (&job->targets, fm_targets_free);
  g_free (job);
}

void
fm_targets_solution_free (FmTargetsSolution *self)
{
  fm_targets_free (self->targets);
  fm_targets_result_free (self->result);
  g_free (self);
}

static gboolean
take_reference (FmNotebook *notebook, Job *job, GError **error)
{
  g_autoptr (FmFormula) reference = NULL;

  if (job->reference_id == 0)
    return TRUE;
  reference = fm_versions_load (notebook, job->reference_id, error);
  if (reference == NULL)
    return FALSE;
  fm_targets_set_reference (job->targets, reference);
  return TRUE;
}

static gpointer
solve (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  Job *job = data;
  FmTargetsResult *result = NULL;
  FmTargetsSolution *solution = NULL;

  if (take_reference (notebook, job, error))
    result = fm_targets_solve (job->targets, error);
  if (result == NULL)
    return NULL;
  solution = g_new0 (FmTargetsSolution, 1);
  solution->targets = g_steal_pointer (&job->targets);
  solution->result = result;
  return solution;
}

void
fm_targets_solve_in_thread (FmTargets *targets,
                            FmNotebook *notebook,
                            gint64 reference_id,
                            GCancellable *cancellable,
                            GAsyncReadyCallback callback,
                            gpointer user_data)
{
  Job *job = g_new0 (Job, 1);

  job->reference_id = reference_id;
  job->targets = targets;
  fm_store_task (&(FmStoreTask){
      .notebook = notebook,
      .run = solve,
      .free_result = (GDestroyNotify)fm_targets_solution_free,
      .data = job,
      .free_data = job_free,
      .cancellable = cancellable,
      .done = callback,
      .user_data = user_data,
  });
}

FmTargetsSolution *
fm_targets_solve_in_thread_finish (GAsyncResult *result, GError **error)
{
  return fm_store_task_finish (result, error);
}
