/* fm-targets-task.c - the slow parts of meeting the targets, off the main thread */
#include "app/targets/fm-targets-task.h"

typedef struct {
  FmNotebook *notebook;
  gint64 id; /* a blend or a version */
  FmTargets *targets;
} Job;

static Job *
job_new (FmNotebook *notebook, gint64 id, FmTargets *targets)
{
  Job *job = g_new0 (Job, 1);

  job->notebook = fm_notebook_ref (notebook);
  job->id = id;
  job->targets = targets;
  return job;
}

static void
job_free (gpointer data)
{
  Job *job = data;

  fm_notebook_unref (job->notebook);
  g_clear_pointer (&job->targets, fm_targets_free);
  g_free (job);
}

static void
list_versions_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  Job *job = data;
  GError *error = NULL;
  GPtrArray *versions = fm_versions_list (job->notebook, job->id, &error);

  if (versions != NULL)
    g_task_return_pointer (task, versions, (GDestroyNotify)g_ptr_array_unref);
  else
    g_task_return_error (task, error);
}

void
fm_targets_list_versions (FmNotebook *notebook,
                          gint64 blend_id,
                          GCancellable *cancellable,
                          GAsyncReadyCallback callback,
                          gpointer user_data)
{
  g_autoptr (GTask) task = g_task_new (NULL, cancellable, callback, user_data);

  g_task_set_source_tag (task, fm_targets_list_versions);
  g_task_set_task_data (task, job_new (notebook, blend_id, NULL), job_free);
  g_task_run_in_thread (task, list_versions_thread);
}

GPtrArray *
fm_targets_list_versions_finish (GAsyncResult *result, GError **error)
{
  return g_task_propagate_pointer (G_TASK (result), error);
}

void
fm_targets_solution_free (FmTargetsSolution *self)
{
  fm_targets_free (self->targets);
  fm_targets_result_free (self->result);
  g_free (self);
}

static gboolean
take_reference (Job *job, GError **error)
{
  g_autoptr (FmFormula) reference = NULL;

  if (job->id == 0)
    return TRUE;
  reference = fm_versions_load (job->notebook, job->id, error);
  if (reference == NULL)
    return FALSE;
  fm_targets_set_reference (job->targets, reference);
  return TRUE;
}

static void
solve_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  Job *job = data;
  GError *error = NULL;
  FmTargetsResult *result = NULL;
  FmTargetsSolution *solution = NULL;

  if (take_reference (job, &error))
    result = fm_targets_solve (job->targets, &error);
  if (result == NULL) {
    g_task_return_error (task, error);
    return;
  }
  solution = g_new0 (FmTargetsSolution, 1);
  solution->targets = g_steal_pointer (&job->targets);
  solution->result = result;
  g_task_return_pointer (task, solution, (GDestroyNotify)fm_targets_solution_free);
}

void
fm_targets_solve_in_thread (FmTargets *targets,
                            FmNotebook *notebook,
                            gint64 reference_id,
                            GCancellable *cancellable,
                            GAsyncReadyCallback callback,
                            gpointer user_data)
{
  g_autoptr (GTask) task = g_task_new (NULL, cancellable, callback, user_data);

  g_task_set_source_tag (task, fm_targets_solve_in_thread);
  g_task_set_task_data (task, job_new (notebook, reference_id, targets), job_free);
  g_task_run_in_thread (task, solve_thread);
}

FmTargetsSolution *
fm_targets_solve_in_thread_finish (GAsyncResult *result, GError **error)
{
  return g_task_propagate_pointer (G_TASK (result), error);
}
