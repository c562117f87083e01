/* fm-correct-weighings.c - corrects the batch that an experiment weighed */
#include "app/batch/fm-correct-weighings.h"

#include "app/batch/fm-correct-window.h"
#include "core/batch/fm-batch-weighed.h"

typedef struct {
  FmNotebook *notebook;
  FmExperiment *experiment; /* as it was when asked for */
  FmCorrectWeighingsFailed failed;
} Job;

static void
job_free (Job *job)
{
  fm_notebook_unref (job->notebook);
  fm_experiment_free (job->experiment);
  g_free (job);
}

static void
load_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  Job *job = data;
  GError *error = NULL;
  FmFormula *version = fm_versions_load (job->notebook, job->experiment->version_id, &error);

  if (version != NULL)
    g_task_return_pointer (task, version, (GDestroyNotify)fm_formula_free);
  else
    g_task_return_error (task, error);
}

static void
loaded_cb (GObject *owner, GAsyncResult *result, gpointer data)
{
  Job *job = g_task_get_task_data (G_TASK (result));
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (owner));
  g_autoptr (GError) error = NULL;
  g_autoptr (FmFormula) version = g_task_propagate_pointer (G_TASK (result), &error);
  g_autoptr (FmFormula) plan = NULL;
  g_autofree double *weighed_g = NULL;

  if (version == NULL) {
    job->failed (GTK_WIDGET (owner), error->message);
    return;
  }
  if (root == NULL) /* the page went away meanwhile */
    return;
  plan = fm_batch_weighed_plan (version, job->experiment->weighings, &weighed_g);
  gtk_window_present (GTK_WINDOW (fm_correct_window_new (GTK_WINDOW (root), plan, weighed_g)));
}

void
fm_correct_weighings_present (GtkWidget *owner,
                              FmExperimentDocument *document,
                              FmCorrectWeighingsFailed failed)
{
  g_autoptr (GTask) task = g_task_new (owner, NULL, loaded_cb, NULL);
  Job *job = g_new0 (Job, 1);

  job->notebook = fm_notebook_ref (fm_experiment_document_get_notebook (document));
  job->experiment = fm_experiment_copy (fm_experiment_document_get_experiment (document));
  job->failed = failed;
  g_task_set_source_tag (task, fm_correct_weighings_present);
  g_task_set_task_data (task, job, (GDestroyNotify)job_free);
  g_task_run_in_thread (task, load_thread);
}
