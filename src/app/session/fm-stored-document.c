/* fm-stored-document.c - something of the notebook being edited, saved as it changes */
#include "app/session/fm-stored-document.h"

#define SAVE_DELAY_MS 400
#define RETRY_DELAY_MS 5000

/* Shared with save threads. The lock orders them; saved_serial tells a late older copy that a
 * newer one is stored already. */
typedef struct {
  gatomicrefcount ref_count;
  GMutex lock;
  FmNotebook *notebook;
  const FmStoredDocumentClass *kind;
  guint64 saved_serial;
} Saver;

typedef struct {
  Saver *saver;
  gpointer copy;
  guint64 serial;
} SaveJob;

typedef struct {
  gpointer content;
  Saver *saver;
  guint64 serial;        /* of the last change */
  guint64 stored_serial; /* of the last change known to be stored */
  guint64 asked_serial;  /* of the last change handed to a thread */
  guint save_source;
} FmStoredDocumentPrivate;

G_DEFINE_ABSTRACT_TYPE_WITH_PRIVATE (FmStoredDocument, fm_stored_document, G_TYPE_OBJECT)

enum {
  CHANGED,
  SAVED,
  SAVE_FAILED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static FmStoredDocumentPrivate *
get_private (FmStoredDocument *self)
{
  return fm_stored_document_get_instance_private (self);
}

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

static Saver *
saver_new (FmNotebook *notebook, const FmStoredDocumentClass *kind)
{
  Saver *saver = g_new0 (Saver, 1);

  g_atomic_ref_count_init (&saver->ref_count);
  g_mutex_init (&saver->lock);
  saver->notebook = fm_notebook_ref (notebook);
  saver->kind = kind;
  return saver;
}

static gboolean
saver_save (Saver *saver, gpointer content, guint64 serial, GError **error)
{
  gboolean ok = TRUE;

  g_mutex_lock (&saver->lock);
  if (serial > saver->saved_serial) {
    ok = saver->kind->save (saver->notebook, content, error);
    if (ok)
      saver->saved_serial = serial;
  }
  g_mutex_unlock (&saver->lock);
  return ok;
}

static void
save_job_free (SaveJob *job)
{
  job->saver->kind->free (job->copy);
  saver_unref (job->saver);
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
  FmStoredDocument *self = data;

  get_private (self)->save_source = 0;
  fm_stored_document_flush (self);
  return G_SOURCE_REMOVE;
}

static void
schedule_save (FmStoredDocument *self, guint delay_ms)
{
  /* The source holds the document, so that changes outlive the page that made them. */
  get_private (self)->save_source = g_timeout_add_full (
      G_PRIORITY_DEFAULT, delay_ms, save_timeout_cb, g_object_ref (self), g_object_unref);
}

static void
save_done_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  FmStoredDocument *self = FM_STORED_DOCUMENT (source);
  FmStoredDocumentPrivate *priv = get_private (self);
  SaveJob *job = g_task_get_task_data (G_TASK (result));
  g_autoptr (GError) error = NULL;

  if (g_task_propagate_boolean (G_TASK (result), &error)) {
    priv->stored_serial = MAX (priv->stored_serial, job->serial);
    if (fm_stored_document_is_saved (self))
      g_signal_emit (self, signals[SAVED], 0);
    return;
  }
  priv->asked_serial = priv->stored_serial;
  g_signal_emit (self, signals[SAVE_FAILED], 0, error->message);
  if (priv->save_source == 0)
    schedule_save (self, RETRY_DELAY_MS);
}

static void
fm_stored_document_finalize (GObject *object)
{
  FmStoredDocument *self = FM_STORED_DOCUMENT (object);
  FmStoredDocumentPrivate *priv = get_private (self);

  if (priv->content != NULL)
    FM_STORED_DOCUMENT_GET_CLASS (self)->free (priv->content);
  g_clear_pointer (&priv->saver, saver_unref);
  G_OBJECT_CLASS (fm_stored_document_parent_class)->finalize (object);
}

static void
fm_stored_document_class_init (FmStoredDocumentClass *klass)
{
  const GType type = FM_TYPE_STORED_DOCUMENT;

  G_OBJECT_CLASS (klass)->finalize = fm_stored_document_finalize;
  signals[CHANGED] =
      g_signal_new ("changed", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[SAVED] =
      g_signal_new ("saved", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[SAVE_FAILED] = g_signal_new ("save-failed", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                       G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void
fm_stored_document_init (FmStoredDocument *self)
{
}

gpointer
fm_stored_document_new (GType type, FmNotebook *notebook, gpointer content)
{
  FmStoredDocument *self = g_object_new (type, NULL);

  get_private (self)->saver = saver_new (notebook, FM_STORED_DOCUMENT_GET_CLASS (self));
  get_private (self)->content = content;
  return self;
}

FmNotebook *
fm_stored_document_get_notebook (FmStoredDocument *self)
{
  return get_private (self)->saver->notebook;
}

gpointer
fm_stored_document_get_content (FmStoredDocument *self)
{
  return get_private (self)->content;
}

gboolean
fm_stored_document_is_editable (FmStoredDocument *self)
{
  return !fm_notebook_is_read_only (fm_stored_document_get_notebook (self));
}

void
fm_stored_document_touch (FmStoredDocument *self)
{
  FmStoredDocumentPrivate *priv;

  g_return_if_fail (FM_IS_STORED_DOCUMENT (self));
  priv = get_private (self);
  priv->serial++;
  /* A pending save is not put off again: steady typing is stored all the same. */
  if (priv->save_source == 0 && fm_stored_document_is_editable (self))
    schedule_save (self, SAVE_DELAY_MS);
  g_signal_emit (self, signals[CHANGED], 0);
}

gboolean
fm_stored_document_is_saved (FmStoredDocument *self)
{
  return get_private (self)->stored_serial >= get_private (self)->serial;
}

void
fm_stored_document_flush (FmStoredDocument *self)
{
  FmStoredDocumentPrivate *priv = get_private (self);
  g_autoptr (GTask) task = NULL;
  SaveJob *job;

  g_clear_handle_id (&priv->save_source, g_source_remove);
  if (priv->asked_serial >= priv->serial || !fm_stored_document_is_editable (self))
    return;
  job = g_new0 (SaveJob, 1);
  job->saver = saver_ref (priv->saver);
  job->copy = priv->saver->kind->copy (priv->content);
  job->serial = priv->serial;
  priv->asked_serial = priv->serial;
  task = g_task_new (self, NULL, save_done_cb, NULL);
  g_task_set_source_tag (task, fm_stored_document_flush);
  g_task_set_task_data (task, job, (GDestroyNotify)save_job_free);
  g_task_run_in_thread (task, save_thread);
}

gboolean
fm_stored_document_flush_now (FmStoredDocument *self, GError **error)
{
  FmStoredDocumentPrivate *priv = get_private (self);

  if (fm_stored_document_is_saved (self) || !fm_stored_document_is_editable (self))
    return TRUE;
  if (!saver_save (priv->saver, priv->content, priv->serial, error))
    return FALSE;
  priv->stored_serial = priv->asked_serial = priv->serial;
  g_clear_handle_id (&priv->save_source, g_source_remove);
  return TRUE;
}
