/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-stored-document.c - something of the notebook being edited, saved as it changes */
#include "app/session/fm-stored-document.h"

#include <glib/gi18n-lib.h>

#define SAVE_DELAY_MS 400
#define RETRY_DELAY_MS 5000

struct _FmStoredCopy {
  FmStoredDocument *document;
  const FmStoredDocumentClass *kind;
  gpointer content;
  guint64 serial;
};

typedef struct {
  FmWriter *writer;
  FmNotebook *notebook;
  gint64 id;
  gpointer content;
  FmHistory *history;    /* (nullable) */
  guint64 serial;        /* of the last change */
  guint64 stored_serial; /* of the last change known to be stored */
  guint64 asked_serial;  /* of the last change handed to the writer */
  guint64 kept_serial;   /* of the last change known to be in a copy of the notebook */
  guint n_saving;        /* copies that the writer has */
  guint save_source;
  gboolean is_altered; /* by something else than this program */
} FmStoredDocumentPrivate;

G_DEFINE_ABSTRACT_TYPE_WITH_PRIVATE (FmStoredDocument, fm_stored_document, G_TYPE_OBJECT)

enum {
  CHANGED,
  RESTORED,
  SAVED,
  SAVE_FAILED,
  ALTERED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static FmStoredDocumentPrivate *
get_private (FmStoredDocument *self)
{
  return fm_stored_document_get_instance_private (self);
}

static gpointer
save_copy (FmNotebook *notebook, gpointer copy, GCancellable *cancellable, GError **error)
{
  return GINT_TO_POINTER (fm_stored_copy_save (copy, notebook, error));
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
  const FmStoredCopy *copy = fm_store_task_data (result);
  g_autoptr (GError) error = NULL;
  guint delay_ms = SAVE_DELAY_MS;

  priv->n_saving--;
  if (fm_store_task_finish (result, &error) != NULL) {
    priv->stored_serial = MAX (priv->stored_serial, copy->serial);
    if (fm_stored_document_is_saved (self))
      g_signal_emit (self, signals[SAVED], 0);
  } else if (!fm_stored_document_is_saved (self)) {
    priv->asked_serial = priv->stored_serial;
    delay_ms = RETRY_DELAY_MS;
    g_signal_emit (self, signals[SAVE_FAILED], 0, error->message);
  }
  if (priv->n_saving == 0 && priv->asked_serial < priv->serial && priv->save_source == 0)
    schedule_save (self, delay_ms);
}

static void
fm_stored_document_finalize (GObject *object)
{
  FmStoredDocument *self = FM_STORED_DOCUMENT (object);
  FmStoredDocumentPrivate *priv = get_private (self);

  if (priv->content != NULL)
    FM_STORED_DOCUMENT_GET_CLASS (self)->free (priv->content);
  g_clear_pointer (&priv->history, fm_history_free);
  g_clear_pointer (&priv->writer, fm_writer_unref);
  fm_writer_close_notebook (g_steal_pointer (&priv->notebook));
  G_OBJECT_CLASS (fm_stored_document_parent_class)->finalize (object);
}

static void
fm_stored_document_class_init (FmStoredDocumentClass *klass)
{
  const GType type = FM_TYPE_STORED_DOCUMENT;

  G_OBJECT_CLASS (klass)->finalize = fm_stored_document_finalize;
  signals[CHANGED] =
      g_signal_new ("changed", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[RESTORED] = g_signal_new ("restored", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                    G_TYPE_NONE, 1, G_TYPE_STRING);
  signals[SAVED] =
      g_signal_new ("saved", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[SAVE_FAILED] = g_signal_new ("save-failed", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                       G_TYPE_NONE, 1, G_TYPE_STRING);
  signals[ALTERED] =
      g_signal_new ("altered", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
fm_stored_document_init (FmStoredDocument *self)
{
}

gpointer
fm_stored_document_new (
    GType type, FmWriter *writer, FmNotebook *notebook, gint64 id, gpointer content)
{
  FmStoredDocument *self = g_object_new (type, NULL);
  FmStoredDocumentPrivate *priv = get_private (self);

  priv->writer = fm_writer_ref (writer);
  priv->notebook = fm_notebook_ref (notebook);
  priv->id = id;
  priv->content = content;
  fm_stored_document_begin_history (self, content);
  return self;
}

FmNotebook *
fm_stored_document_get_notebook (FmStoredDocument *self)
{
  return get_private (self)->notebook;
}

gint64
fm_stored_document_get_id (FmStoredDocument *self)
{
  return get_private (self)->id;
}

gpointer
fm_stored_document_get_content (FmStoredDocument *self)
{
  return get_private (self)->content;
}

char *
fm_stored_document_describe (FmStoredDocument *self)
{
  return FM_STORED_DOCUMENT_GET_CLASS (self)->describe (self);
}

gboolean
fm_stored_document_is_editable (FmStoredDocument *self)
{
  return !fm_notebook_is_read_only (fm_stored_document_get_notebook (self));
}

static void
note_change (FmStoredDocument *self)
{
  FmStoredDocumentPrivate *priv = get_private (self);

  /* What cannot be written does not wait for it either. */
  if (fm_stored_document_is_editable (self))
    priv->serial++;
  /* A pending save is not put off again: steady typing is stored all the same. */
  if (priv->save_source == 0 && priv->n_saving == 0 && !fm_stored_document_is_saved (self))
    schedule_save (self, SAVE_DELAY_MS);
  g_signal_emit (self, signals[CHANGED], 0);
}

void
fm_stored_document_set_altered (FmStoredDocument *self)
{
  get_private (self)->is_altered = TRUE;
  g_signal_emit (self, signals[ALTERED], 0);
}

gboolean
fm_stored_document_is_altered (FmStoredDocument *self)
{
  return get_private (self)->is_altered;
}

void
fm_stored_document_touch (FmStoredDocument *self)
{
  g_return_if_fail (FM_IS_STORED_DOCUMENT (self));
  fm_stored_document_begin_history (self, get_private (self)->content);
  note_change (self);
}

void
fm_stored_document_step (FmStoredDocument *self,
                         gconstpointer state,
                         const char *label,
                         const char *merge_key)
{
  g_return_if_fail (FM_IS_STORED_DOCUMENT (self));
  fm_history_push (get_private (self)->history, state, label, merge_key);
}

void
fm_stored_document_did (FmStoredDocument *self, const char *label, const char *merge_key)
{
  g_return_if_fail (FM_IS_STORED_DOCUMENT (self));
  fm_stored_document_step (self, get_private (self)->content, label, merge_key);
  note_change (self);
}

void
fm_stored_document_seal (FmStoredDocument *self)
{
  if (get_private (self)->history != NULL)
    fm_history_seal (get_private (self)->history);
}

void
fm_stored_document_begin_history (FmStoredDocument *self, gconstpointer state)
{
  const FmHistoryKind *kind = FM_STORED_DOCUMENT_GET_CLASS (self)->history;
  FmStoredDocumentPrivate *priv = get_private (self);

  if (kind == NULL || state == NULL)
    return;
  g_clear_pointer (&priv->history, fm_history_free);
  priv->history = fm_history_new (kind, state);
}

gconstpointer
fm_stored_document_state (FmStoredDocument *self)
{
  FmStoredDocumentPrivate *priv = get_private (self);

  return priv->history != NULL ? fm_history_current (priv->history) : NULL;
}

static gboolean
has_steps (FmStoredDocument *self)
{
  return get_private (self)->history != NULL && fm_stored_document_is_editable (self);
}

const char *
fm_stored_document_undo_label (FmStoredDocument *self)
{
  return has_steps (self) ? fm_history_undo_label (get_private (self)->history) : NULL;
}

const char *
fm_stored_document_redo_label (FmStoredDocument *self)
{
  return has_steps (self) ? fm_history_redo_label (get_private (self)->history) : NULL;
}

static void
restore (FmStoredDocument *self, gconstpointer state, const char *text)
{
  FmStoredDocumentClass *klass = FM_STORED_DOCUMENT_GET_CLASS (self);
  FmStoredDocumentPrivate *priv = get_private (self);

  if (priv->content != NULL) {
    klass->free (priv->content);
    priv->content = klass->history->copy (state, NULL);
  }
  note_change (self);
  g_signal_emit (self, signals[RESTORED], 0, text);
}

void
fm_stored_document_undo (FmStoredDocument *self)
{
  const char *label = fm_stored_document_undo_label (self);
  g_autofree char *text = NULL;

  if (label == NULL)
    return;
  /* TRANSLATORS: an act that was undone: "Undone: Raw mass of patty 2" */
  text = g_strdup_printf (_ ("Undone: %s"), label);
  restore (self, fm_history_undo (get_private (self)->history), text);
}

void
fm_stored_document_redo (FmStoredDocument *self)
{
  const char *label = fm_stored_document_redo_label (self);
  g_autofree char *text = NULL;

  if (label == NULL)
    return;
  /* TRANSLATORS: an act that was done again */
  text = g_strdup_printf (_ ("Done again: %s"), label);
  restore (self, fm_history_redo (get_private (self)->history), text);
}

gboolean
fm_stored_document_is_saved (FmStoredDocument *self)
{
  return get_private (self)->stored_serial >= get_private (self)->serial;
}

gboolean
fm_stored_document_is_saving (FmStoredDocument *self)
{
  return get_private (self)->n_saving > 0;
}

void
fm_stored_document_flush (FmStoredDocument *self)
{
  FmStoredDocumentPrivate *priv = get_private (self);

  if (priv->asked_serial >= priv->serial)
    return;
  g_clear_handle_id (&priv->save_source, g_source_remove);
  priv->asked_serial = priv->serial;
  priv->n_saving++;
  fm_writer_push (priv->writer, &(FmStoreTask){
                                    .owner = self,
                                    .notebook = priv->notebook,
                                    .run = save_copy,
                                    .data = fm_stored_copy_new (self),
                                    .free_data = (GDestroyNotify)fm_stored_copy_free,
                                    .done = save_done_cb,
                                });
}

void
fm_stored_document_move (FmStoredDocument *self, FmNotebook *notebook)
{
  FmStoredDocumentPrivate *priv = get_private (self);

  fm_writer_close_notebook (priv->notebook);
  priv->notebook = fm_notebook_ref (notebook);
  priv->asked_serial = priv->stored_serial;
  fm_stored_document_flush (self);
}

void
fm_stored_document_forget (FmStoredDocument *self)
{
  FmStoredDocumentPrivate *priv = get_private (self);

  priv->stored_serial = priv->asked_serial = priv->serial;
  g_clear_handle_id (&priv->save_source, g_source_remove);
}

FmStoredCopy *
fm_stored_copy_new (FmStoredDocument *document)
{
  FmStoredCopy *self = g_new0 (FmStoredCopy, 1);

  self->document = g_object_ref (document);
  self->kind = FM_STORED_DOCUMENT_GET_CLASS (document);
  self->content = self->kind->copy (document);
  self->serial = get_private (document)->serial;
  return self;
}

void
fm_stored_copy_free (FmStoredCopy *self)
{
  self->kind->free (self->content);
  g_object_unref (self->document);
  g_free (self);
}

gboolean
fm_stored_copy_save (FmStoredCopy *self, FmNotebook *notebook, GError **error)
{
  return self->kind->save (notebook, self->content, error);
}

void
fm_stored_copy_tell_kept (FmStoredCopy *self)
{
  FmStoredDocumentPrivate *priv = get_private (self->document);

  priv->kept_serial = MAX (priv->kept_serial, self->serial);
}

gboolean
fm_stored_document_is_kept (FmStoredDocument *self)
{
  return fm_stored_document_is_saved (self) ||
         get_private (self)->kept_serial >= get_private (self)->serial;
}
