/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-session-save.c - writes a session's drafts, versions and settings to the notebook */
#include <glib/gi18n-lib.h>

#include "app/session/fm-session-private.h"

/* Lists say whether a draft has changes; they are told when that turns. */
static void
tell_of_changes (FmSession *self, FmSessionDraft *draft)
{
  gboolean has_changes = fm_session_draft_has_changes (draft);

  if (has_changes == draft->told_changes)
    return;
  draft->told_changes = has_changes;
  fm_session_emit_changed (self, FM_CHANGE_DRAFT,
                           fm_stored_document_get_id (FM_STORED_DOCUMENT (draft)));
}

static void
saved_cb (FmSession *self, FmStoredDocument *document)
{
  const gint64 id = fm_stored_document_get_id (document);

  if (fm_stored_document_get_notebook (document) != self->notebook)
    return;
  if (g_hash_table_lookup (self->drafts, &id) == document)
    tell_of_changes (self, FM_SESSION_DRAFT (document));
  else if (FM_STORED_DOCUMENT_GET_CLASS (document)->is_told)
    fm_session_emit_changed (self, FM_STORED_DOCUMENT_GET_CLASS (document)->kind, id);
}

static void
save_failed_cb (FmSession *self, const char *message)
{
  g_autoptr (GError) error = g_error_new_literal (G_IO_ERROR, G_IO_ERROR_FAILED, message);

  /* The window has a bar for that, which says more. */
  if (self->notebook != NULL && fm_notebook_is_lost (self->notebook)) {
    if (self->place == NULL)
      fm_session_look_for_file (self);
    return;
  }
  fm_session_failure (self, error);
}

static void
saved_again_cb (FmSession *self)
{
  fm_session_message (self, _ ("All changes are saved again"));
}

void
fm_session_watch_documents (FmSession *self)
{
  g_signal_connect_object (self->documents, "saved", G_CALLBACK (saved_cb), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (self->documents, "save-failed", G_CALLBACK (save_failed_cb), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (self->documents, "saved-again", G_CALLBACK (saved_again_cb), self,
                           G_CONNECT_SWAPPED);
}

static void
version_saved_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  FmSession *self = FM_SESSION (source);
  g_autoptr (GError) error = NULL;
  g_autofree char *text = NULL;
  gint64 blend_id = fm_session_io_blend_id (result);
  g_autoptr (FmVersionInfo) info = fm_session_io_save_version_finish (result, &error);
  FmSessionDraft *draft;

  self->n_in_flight--;
  if (info == NULL) {
    fm_session_failure (self, error);
    return;
  }
  if (GPOINTER_TO_UINT (user_data) != self->serial)
    return;
  draft = g_hash_table_lookup (self->drafts, &blend_id);
  if (draft != NULL)
    fm_session_draft_set_parent (draft, info->id, fm_session_io_formula (result));
  if (draft != NULL)
    draft->told_changes = fm_session_draft_has_changes (draft);
  text = g_strdup_printf (_ ("Saved as version %d"), info->number);
  fm_session_message (self, text);
  fm_session_emit_changed (self, FM_CHANGE_VERSION, info->id);
  fm_session_emit_changed (self, FM_CHANGE_DRAFT, blend_id);
  fm_session_emit_changed (self, FM_CHANGE_HISTORY, blend_id);
}

void
fm_session_save_version (FmSession *self, const char *reason)
{
  if (!fm_session_is_writable (self) || self->draft == NULL)
    return;
  fm_session_seal (self);
  fm_documents_flush (self->documents);
  self->n_in_flight++;
  fm_session_io_save_version (self->writer, self->notebook, self->blend_id,
                              fm_session_draft_get_formula (self->draft), reason, self,
                              version_saved_cb, GUINT_TO_POINTER (self->serial));
}

typedef struct {
  GTask *task;
  guint serial;
} AddOrder;

static void
tell_added (FmSession *self, GPtrArray *infos)
{
  for (guint i = 0; i < infos->len; i++) {
    const FmVersionInfo *info = g_ptr_array_index (infos, i);

    fm_session_emit_changed (self, FM_CHANGE_VERSION, info->id);
  }
}

static void
versions_added_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  FmSession *self = FM_SESSION (source);
  g_autofree AddOrder *order = user_data;
  g_autoptr (GTask) task = order->task;
  GError *error = NULL;
  GPtrArray *infos = fm_session_io_add_versions_finish (result, &error);

  self->n_in_flight--;
  if (infos == NULL) {
    g_task_return_error (task, error);
    return;
  }
  if (order->serial == self->serial)
    tell_added (self, infos);
  g_task_return_pointer (task, infos, (GDestroyNotify)g_ptr_array_unref);
}

void
fm_session_add_versions (FmSession *self,
                         gint64 blend_id,
                         gint64 parent_id,
                         const GPtrArray *formulas,
                         const char *const *reasons,
                         GAsyncReadyCallback callback,
                         gpointer user_data)
{
  AddOrder *order;
  GTask *task = g_task_new (self, NULL, callback, user_data);

  g_task_set_source_tag (task, fm_session_add_versions);
  if (!fm_session_is_writable (self)) {
    g_task_return_new_error (task, G_IO_ERROR, G_IO_ERROR_READ_ONLY, "%s",
                             _ ("This notebook is open for reading only, so no version can be "
                                "saved in it."));
    g_object_unref (task);
    return;
  }
  order = g_new0 (AddOrder, 1);
  order->task = task;
  order->serial = self->serial;
  self->n_in_flight++;
  fm_session_io_add_versions (self->writer, self->notebook, blend_id, parent_id, formulas, reasons,
                              self, versions_added_cb, order);
}

GPtrArray *
fm_session_add_versions_finish (FmSession *self, GAsyncResult *result, GError **error)
{
  return g_task_propagate_pointer (G_TASK (result), error);
}

void
fm_session_write (FmSession *self, const FmStoreTask *order)
{
  g_return_if_fail (FM_IS_SESSION (self));
  fm_documents_flush (self->documents);
  fm_writer_push (self->writer, order);
}

void
fm_session_flush (FmSession *self)
{
  fm_documents_flush (self->documents);
  fm_writer_wait (self->writer);
  /* The results are ready; taking them tells of failures before the window goes. */
  while (self->n_in_flight > 0 || fm_documents_is_saving (self->documents))
    g_main_context_iteration (NULL, TRUE);
}

gboolean
fm_session_is_saved (FmSession *self)
{
  return self->n_in_flight == 0 && fm_documents_is_saved (self->documents);
}
