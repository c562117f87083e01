/* fm-experiment-document.c - one experiment being edited, saved as it changes */
#include "app/fm-experiment-document.h"

#define SAVE_DELAY_MS 400
#define RETRY_DELAY_MS 5000

/* Shared with save threads. The lock orders them; saved_serial tells a late older copy that a
 * newer one is stored already. */
typedef struct {
  gatomicrefcount ref_count;
  GMutex lock;
  FmNotebook *notebook;
  guint64 saved_serial;
  gboolean abandoned;
} Saver;

typedef struct {
  Saver *saver;
  FmExperiment *copy;
  guint64 serial;
} SaveJob;

struct _FmExperimentDocument {
  GObject parent_instance;

  FmExperiment *experiment;
  Saver *saver;
  guint64 serial;        /* of the last change */
  guint64 stored_serial; /* of the last change known to be stored */
  guint64 asked_serial;  /* of the last change handed to a thread */
  guint save_source;
};

G_DEFINE_FINAL_TYPE (FmExperimentDocument, fm_experiment_document, G_TYPE_OBJECT)

enum {
  CHANGED,
  SAVED,
  SAVE_FAILED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static void
saver_unref (Saver *saver)
{
  if (!g_atomic_ref_count_dec (&saver->ref_count))
    return;
  g_mutex_clear (&saver->lock);
  fm_notebook_unref (saver->notebook);
  g_free (saver);
}

static Saver *
saver_ref (Saver *saver)
{
  g_atomic_ref_count_inc (&saver->ref_count);
  return saver;
}

static gboolean
saver_save (Saver *saver, FmExperiment *experiment, guint64 serial, GError **error)
{
  gboolean ok = TRUE;

  g_mutex_lock (&saver->lock);
  if (!saver->abandoned && serial > saver->saved_serial) {
    ok = fm_experiments_save (saver->notebook, experiment, error);
    if (ok)
      saver->saved_serial = serial;
  }
  g_mutex_unlock (&saver->lock);
  return ok;
}

static void
save_job_free (SaveJob *job)
{
  saver_unref (job->saver);
  fm_experiment_free (job->copy);
  g_free (job);
}

static void
save_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  SaveJob *job = data;
  GError *error = NULL;

  if (saver_save (job->saver, job->copy, job->serial, &error))
    g_task_return_boolean (task, TRUE);
  else
    g_task_return_error (task, error);
}

static gboolean
save_timeout_cb (gpointer data)
{
  FmExperimentDocument *self = data;

  self->save_source = 0;
  fm_experiment_document_flush (self);
  return G_SOURCE_REMOVE;
}

static void
schedule_save (FmExperimentDocument *self, guint delay_ms)
{
  /* The source holds the document, so that changes outlive the page that made them. */
  self->save_source = g_timeout_add_full (G_PRIORITY_DEFAULT, delay_ms, save_timeout_cb,
                                          g_object_ref (self), g_object_unref);
}

static void
save_done_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  FmExperimentDocument *self = FM_EXPERIMENT_DOCUMENT (source);
  SaveJob *job = g_task_get_task_data (G_TASK (result));
  g_autoptr (GError) error = NULL;

  if (g_task_propagate_boolean (G_TASK (result), &error)) {
    self->stored_serial = MAX (self->stored_serial, job->serial);
    if (fm_experiment_document_is_saved (self))
      g_signal_emit (self, signals[SAVED], 0);
    return;
  }
  self->asked_serial = self->stored_serial;
  g_signal_emit (self, signals[SAVE_FAILED], 0, error->message);
  if (self->save_source == 0)
    schedule_save (self, RETRY_DELAY_MS);
}

static void
fm_experiment_document_finalize (GObject *object)
{
  FmExperimentDocument *self = FM_EXPERIMENT_DOCUMENT (object);

  g_clear_pointer (&self->experiment, fm_experiment_free);
  g_clear_pointer (&self->saver, saver_unref);
  G_OBJECT_CLASS (fm_experiment_document_parent_class)->finalize (object);
}

static void
fm_experiment_document_class_init (FmExperimentDocumentClass *klass)
{
  const GType type = FM_TYPE_EXPERIMENT_DOCUMENT;

  G_OBJECT_CLASS (klass)->finalize = fm_experiment_document_finalize;
  signals[CHANGED] =
      g_signal_new ("changed", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[SAVED] =
      g_signal_new ("saved", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[SAVE_FAILED] = g_signal_new ("save-failed", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                       G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void
fm_experiment_document_init (FmExperimentDocument *self)
{
  self->saver = g_new0 (Saver, 1);
  g_atomic_ref_count_init (&self->saver->ref_count);
  g_mutex_init (&self->saver->lock);
}

FmExperimentDocument *
fm_experiment_document_new (FmNotebook *notebook, FmExperiment *experiment)
{
  FmExperimentDocument *self = g_object_new (FM_TYPE_EXPERIMENT_DOCUMENT, NULL);

  self->saver->notebook = fm_notebook_ref (notebook);
  self->experiment = experiment;
  return self;
}

FmNotebook *
fm_experiment_document_get_notebook (FmExperimentDocument *self)
{
  return self->saver->notebook;
}

FmExperiment *
fm_experiment_document_get_experiment (FmExperimentDocument *self)
{
  return self->experiment;
}

gboolean
fm_experiment_document_is_editable (FmExperimentDocument *self)
{
  return !fm_notebook_is_read_only (self->saver->notebook);
}

void
fm_experiment_document_touch (FmExperimentDocument *self)
{
  g_return_if_fail (FM_IS_EXPERIMENT_DOCUMENT (self));
  self->serial++;
  /* A pending save is not put off again: steady typing is stored all the same. */
  if (self->save_source == 0 && fm_experiment_document_is_editable (self))
    schedule_save (self, SAVE_DELAY_MS);
  g_signal_emit (self, signals[CHANGED], 0);
}

gboolean
fm_experiment_document_is_saved (FmExperimentDocument *self)
{
  return self->stored_serial >= self->serial;
}

void
fm_experiment_document_flush (FmExperimentDocument *self)
{
  g_autoptr (GTask) task = NULL;
  SaveJob *job;

  g_clear_handle_id (&self->save_source, g_source_remove);
  if (self->asked_serial >= self->serial || !fm_experiment_document_is_editable (self))
    return;
  job = g_new0 (SaveJob, 1);
  job->saver = saver_ref (self->saver);
  job->copy = fm_experiment_copy (self->experiment);
  job->serial = self->serial;
  self->asked_serial = self->serial;
  task = g_task_new (self, NULL, save_done_cb, NULL);
  g_task_set_source_tag (task, fm_experiment_document_flush);
  g_task_set_task_data (task, job, (GDestroyNotify)save_job_free);
  g_task_run_in_thread (task, save_thread);
}

gboolean
fm_experiment_document_flush_now (FmExperimentDocument *self, GError **error)
{
  if (fm_experiment_document_is_saved (self) || !fm_experiment_document_is_editable (self))
    return TRUE;
  if (!saver_save (self->saver, self->experiment, self->serial, error))
    return FALSE;
  self->stored_serial = self->asked_serial = self->serial;
  g_clear_handle_id (&self->save_source, g_source_remove);
  return TRUE;
}

void
fm_experiment_document_abandon (FmExperimentDocument *self)
{
  g_mutex_lock (&self->saver->lock);
  self->saver->abandoned = TRUE;
  g_mutex_unlock (&self->saver->lock);
  self->stored_serial = self->asked_serial = self->serial;
  g_clear_handle_id (&self->save_source, g_source_remove);
}
