/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-records-page.c - a page of records of one kind, of which one is open */
#include "app/log/fm-records-page.h"

#include <glib/gi18n-lib.h>

typedef struct {
  FmLogModel *model;
  GCancellable *opening; /* ends when another record is opened */
  gint64 open_id;        /* shown, or being loaded; 0 = none */
} FmRecordsPagePrivate;

G_DEFINE_ABSTRACT_TYPE_WITH_PRIVATE (FmRecordsPage, fm_records_page, FM_TYPE_PAGE)

static FmRecordsPagePrivate *
get_private (FmRecordsPage *self)
{
  return fm_records_page_get_instance_private (self);
}

static void
stop_opening (FmRecordsPage *self)
{
  FmRecordsPagePrivate *priv = get_private (self);

  g_cancellable_cancel (priv->opening);
  g_clear_object (&priv->opening);
}

static void
go (FmRecordsPage *self, gboolean to_record)
{
  if (FM_RECORDS_PAGE_GET_CLASS (self)->go != NULL)
    FM_RECORDS_PAGE_GET_CLASS (self)->go (self, to_record);
}

static void
opened_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  FmRecordsPage *self = FM_RECORDS_PAGE (source);
  FmRecordsPagePrivate *priv = get_private (self);
  FmRecordsPageClass *klass = FM_RECORDS_PAGE_GET_CLASS (self);
  FmSession *session = fm_page_get_session (FM_PAGE (self));
  g_autoptr (GError) error = NULL;
  gpointer record = fm_store_task_finish (result, &error);
  g_autoptr (FmStoredDocument) document = NULL;

  /* The thread may have been done before another record was chosen. */
  if (session == NULL || g_task_get_cancellable (G_TASK (result)) != priv->opening) {
    g_clear_pointer (&record, klass->free_record);
    return;
  }
  g_clear_object (&priv->opening);
  if (record == NULL) {
    fm_session_failure (session, error);
    fm_records_page_close (self);
    return;
  }
  document = klass->take (self, record);
  fm_page_set_document (FM_PAGE (self), document);
  klass->show (self, document);
  klass->update_actions (self);
}

static void
created_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  FmRecordsPage *self = FM_RECORDS_PAGE (source);
  FmSession *session = fm_page_get_session (FM_PAGE (self));
  g_autoptr (GError) error = NULL;
  g_autofree gint64 *id = fm_store_task_finish (result, &error);

  if (session == NULL)
    return;
  if (id == NULL) {
    fm_session_failure (session, error);
    return;
  }
  FM_RECORDS_PAGE_GET_CLASS (self)->select (self, *id);
  fm_session_emit_changed (session, FM_RECORDS_PAGE_GET_CLASS (self)->kind, *id);
  fm_records_page_open (self, *id);
  go (self, TRUE);
}

static void
removal_settled (GtkWidget *owner, gint64 id, gboolean removed, const GError *error)
{
  GtkWidget *page = gtk_widget_get_ancestor (owner, FM_TYPE_RECORDS_PAGE);
  FmRecordsPage *self = page != NULL ? FM_RECORDS_PAGE (page) : NULL;
  FmSession *session = self != NULL ? fm_page_get_session (FM_PAGE (self)) : NULL;
  FmRecordsPageClass *klass;

  if (session == NULL)
    return;
  klass = FM_RECORDS_PAGE_GET_CLASS (self);
  if (error != NULL)
    fm_session_failure (session, error);
  /* Another notebook may be open by now. */
  if (!fm_log_model_unhide (get_private (self)->model, id))
    return;
  if (removed) {
    fm_documents_forget (fm_session_get_documents (session), klass->document_type,
                         fm_session_get_notebook (session), id);
    fm_session_emit_changed (session, klass->kind, id);
  } else {
    fm_log_model_read_row (get_private (self)->model, id);
    klass->select (self, id);
    fm_records_page_open (self, id);
  }
}

static void
changed_cb (FmRecordsPage *self, const FmChange *change)
{
  if (change->kind == FM_RECORDS_PAGE_GET_CLASS (self)->kind)
    fm_log_model_read_row (get_private (self)->model, change->id);
}

static void
shown_changed_cb (FmRecordsPage *self)
{
  FM_RECORDS_PAGE_GET_CLASS (self)->update_actions (self);
  fm_records_page_query_changed (self);
}

static void
notebook_changed_cb (FmRecordsPage *self)
{
  fm_records_page_close (self);
  FM_RECORDS_PAGE_GET_CLASS (self)->update_actions (self);
  fm_log_model_read (get_private (self)->model, fm_page_get_notebook (FM_PAGE (self)),
                     FM_RECORDS_PAGE_GET_CLASS (self)->query (self));
}

static void
fm_records_page_show_session (FmPage *page)
{
  shown_changed_cb (FM_RECORDS_PAGE (page));
}

static const char *
fm_records_page_tell_no_document (FmPage *page)
{
  return _ ("Nothing is open on this page, so there is nothing to undo");
}

static void
fm_records_page_constructed (GObject *object)
{
  FmRecordsPage *self = FM_RECORDS_PAGE (object);

  G_OBJECT_CLASS (fm_records_page_parent_class)->constructed (object);
  FM_RECORDS_PAGE_GET_CLASS (self)->update_actions (self);
}

static void
fm_records_page_dispose (GObject *object)
{
  FmRecordsPage *self = FM_RECORDS_PAGE (object);

  stop_opening (self);
  G_OBJECT_CLASS (fm_records_page_parent_class)->dispose (object);
}

static void
fm_records_page_finalize (GObject *object)
{
  g_clear_object (&get_private (FM_RECORDS_PAGE (object))->model);
  G_OBJECT_CLASS (fm_records_page_parent_class)->finalize (object);
}

static void
fm_records_page_class_init (FmRecordsPageClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->constructed = fm_records_page_constructed;
  object_class->dispose = fm_records_page_dispose;
  object_class->finalize = fm_records_page_finalize;
  FM_PAGE_CLASS (klass)->show_session = fm_records_page_show_session;
  FM_PAGE_CLASS (klass)->tell_no_document = fm_records_page_tell_no_document;
}

/* The class of the kind of page is not known to its instance yet while this runs. */
static void
fm_records_page_init (FmRecordsPage *self)
{
  fm_page_listen (FM_PAGE (self), "changed", G_CALLBACK (changed_cb));
  fm_page_listen (FM_PAGE (self), "changed::shown", G_CALLBACK (shown_changed_cb));
  fm_page_listen (FM_PAGE (self), "changed::notebook", G_CALLBACK (notebook_changed_cb));
}

FmLogModel *
fm_records_page_get_model (FmRecordsPage *self)
{
  FmRecordsPagePrivate *priv = get_private (self);

  if (priv->model == NULL)
    priv->model = fm_log_model_new (FM_RECORDS_PAGE_GET_CLASS (self)->rows);
  return priv->model;
}

gpointer
fm_records_page_get_document (FmRecordsPage *self)
{
  return fm_page_get_document (FM_PAGE (self));
}

gint64
fm_records_page_get_open_id (FmRecordsPage *self)
{
  return get_private (self)->open_id;
}

void
fm_records_page_query_changed (FmRecordsPage *self)
{
  fm_log_model_read_other (fm_records_page_get_model (self), fm_page_get_notebook (FM_PAGE (self)),
                           FM_RECORDS_PAGE_GET_CLASS (self)->query (self));
}

void
fm_records_page_open (FmRecordsPage *self, gint64 id)
{
  FmRecordsPagePrivate *priv = get_private (self);
  FmRecordsPageClass *klass = FM_RECORDS_PAGE_GET_CLASS (self);
  FmNotebook *notebook = fm_page_get_notebook (FM_PAGE (self));

  if (priv->open_id == id || notebook == NULL)
    return;
  stop_opening (self);
  priv->open_id = id;
  priv->opening = g_cancellable_new ();
  fm_store_task (&(FmStoreTask){
      .owner = self,
      .notebook = notebook,
      .run = klass->load,
      .free_result = klass->free_record,
      .data = fm_log_id_copy (&id),
      .free_data = g_free,
      .cancellable = priv->opening,
      .done = opened_cb,
  });
}

void
fm_records_page_go_to (FmRecordsPage *self, gint64 id)
{
  g_return_if_fail (FM_IS_RECORDS_PAGE (self));
  FM_RECORDS_PAGE_GET_CLASS (self)->select (self, id);
  fm_records_page_open (self, id);
  go (self, TRUE);
}

void
fm_records_page_close (FmRecordsPage *self)
{
  FmRecordsPageClass *klass = FM_RECORDS_PAGE_GET_CLASS (self);

  stop_opening (self);
  get_private (self)->open_id = 0;
  klass->show (self, NULL);
  fm_page_set_document (FM_PAGE (self), NULL);
  klass->select (self, 0);
  klass->update_actions (self);
  go (self, FALSE);
}

void
fm_records_page_create (FmRecordsPage *self, gpointer plan)
{
  FmRecordsPageClass *klass = FM_RECORDS_PAGE_GET_CLASS (self);

  fm_store_task (&(FmStoreTask){
      .owner = self,
      .notebook = fm_page_get_notebook (FM_PAGE (self)),
      .run = klass->create,
      .free_result = g_free,
      .data = plan,
      .free_data = klass->free_plan,
      .done = created_cb,
  });
}

void
fm_records_page_remove (FmRecordsPage *self, GtkWidget *inside)
{
  FmRecordsPagePrivate *priv = get_private (self);
  FmRecordsPageClass *klass = FM_RECORDS_PAGE_GET_CLASS (self);
  FmStoredDocument *document = fm_page_get_document (FM_PAGE (self));
  g_autofree char *message = NULL;
  gint64 id;

  if (document == NULL)
    return;
  id = fm_stored_document_get_id (document);
  message = klass->tell_removed (document);
  fm_removal_offer (inside, message, fm_stored_document_get_notebook (document), id, klass->remove,
                    removal_settled);
  fm_records_page_close (self);
  fm_log_model_hide (priv->model, id);
}
