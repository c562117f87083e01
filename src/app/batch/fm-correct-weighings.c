/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-correct-weighings.c - corrects the batch that an experiment weighed */
#include "app/batch/fm-correct-weighings.h"

#include "app/session/fm-store-task.h"
#include "app/batch/fm-correct-window.h"
#include "core/batch/fm-batch-weighed.h"

typedef struct {
  FmSession *session;
  FmExperiment *experiment; /* as it was when asked for */
  FmCorrectWeighingsFailed failed;
} Job;

static void
job_free (Job *job)
{
  g_object_unref (job->session);
  fm_experiment_free (job->experiment);
  g_free (job);
}

static gpointer
load_version (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  const Job *job = data;

  return fm_versions_load (notebook, job->experiment->version_id, error);
}

static void
loaded_cb (GObject *owner, GAsyncResult *result, gpointer data)
{
  Job *job = fm_store_task_data (result);
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (owner));
  g_autoptr (GError) error = NULL;
  g_autoptr (FmFormula) version = fm_store_task_finish (result, &error);
  g_autoptr (FmFormula) plan = NULL;
  g_autofree double *weighed_g = NULL;

  if (version == NULL) {
    job->failed (GTK_WIDGET (owner), error->message);
    return;
  }
  if (root == NULL) /* the page went away meanwhile */
    return;
  plan = fm_batch_weighed_plan (version, job->experiment->weighings, &weighed_g);
  gtk_window_present (
      GTK_WINDOW (fm_correct_window_new (GTK_WINDOW (root), job->session, plan, weighed_g)));
}

void
fm_correct_weighings_present (GtkWidget *owner,
                              FmSession *session,
                              FmExperimentDocument *document,
                              FmCorrectWeighingsFailed failed)
{
  Job *job = g_new0 (Job, 1);

  job->session = g_object_ref (session);
  job->experiment = fm_experiment_copy (fm_experiment_document_get_experiment (document));
  job->failed = failed;
  fm_store_task (&(FmStoreTask){
      .owner = owner,
      .notebook = fm_experiment_document_get_notebook (document),
      .run = load_version,
      .free_result = (GDestroyNotify)fm_formula_free,
      .data = job,
      .free_data = (GDestroyNotify)job_free,
      .done = loaded_cb,
  });
}
