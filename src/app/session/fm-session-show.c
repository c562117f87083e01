/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-session-show.c - which blend, version or draft a session shows */
#include <glib/gi18n-lib.h>

#include "app/session/fm-session-private.h"

static void
setting_saved_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  FmSession *self = FM_SESSION (source);
  g_autoptr (GError) error = NULL;

  self->n_in_flight--;
  if (!fm_session_io_finish (result, &error))
    g_debug ("A setting is not remembered: %s", error->message);
}

static void
notebook_setting_saved_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  FmSession *self = FM_SESSION (source);
  g_autoptr (GError) error = NULL;

  self->n_in_flight--;
  if (!fm_session_io_finish (result, &error))
    fm_session_failure (self, error);
}

void
fm_session_save_setting (FmSession *self, const char *key, const char *value)
{
  if (fm_session_is_writable (self)) {
    self->n_in_flight++;
    fm_session_io_save_setting (self->writer, self->notebook, key, value, self,
                                notebook_setting_saved_cb, NULL);
  }
  fm_session_emit_changed (self, FM_CHANGE_SETTING, 0);
}

void
fm_session_remember (FmSession *self, const char *key, const char *value)
{
  if (!fm_session_is_writable (self))
    return;
  self->n_in_flight++;
  fm_session_io_save_setting (self->writer, self->notebook, key, value, self, setting_saved_cb,
                              NULL);
}

static void
remember_id (FmSession *self, const char *key, gint64 id)
{
  g_autofree char *value = g_strdup_printf ("%" G_GINT64_FORMAT, id);

  fm_session_remember (self, key, value);
}

void
fm_session_clear_version (FmSession *self)
{
  g_clear_pointer (&self->version, fm_version_info_free);
  g_clear_pointer (&self->version_formula, fm_formula_free);
}

static void
show_changed (FmSession *self)
{
  remember_id (self, "last-blend", self->blend_id);
  remember_id (self, "last-version", fm_session_get_version_id (self));
  fm_session_emit_shown (self);
}

static void
set_shown (FmSession *self, FmSessionDraft *draft, const char *blend_name)
{
  self->draft = draft;
  self->blend_id = draft != NULL ? fm_stored_document_get_id (FM_STORED_DOCUMENT (draft)) : 0;
  g_free (self->blend_name);
  self->blend_name = g_strdup (blend_name);
  if (draft != NULL)
    fm_session_draft_set_blend_name (draft, blend_name);
}

static void
draft_restored_cb (FmSession *self, const char *text, FmSessionDraft *draft)
{
  if (draft != self->draft)
    return;
  fm_session_recompute (self);
  fm_session_emit_changed (self, FM_CHANGE_HISTORY, self->blend_id);
}

/* A draft in memory is newer than the one on the disk. */
static void
take_blend (FmSession *self, const FmSessionRead *read)
{
  const gint64 blend_id = read->wish.blend_id;
  FmSessionDraft *draft = g_hash_table_lookup (self->drafts, &blend_id);

  if (draft == NULL && read->draft != NULL) {
    draft = fm_session_draft_open (self->documents, self->notebook, blend_id, read->draft);
    g_hash_table_insert (self->drafts, g_memdup2 (&blend_id, sizeof blend_id), draft);
    g_signal_connect_object (draft, "restored", G_CALLBACK (draft_restored_cb), self,
                             G_CONNECT_SWAPPED);
  }
  set_shown (self, draft, draft != NULL ? read->blend_name : NULL);
}

static void
branched_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  FmSession *self = FM_SESSION (source);
  g_autoptr (GError) error = NULL;

  self->n_in_flight--;
  if (!fm_session_io_finish (result, &error))
    fm_session_failure (self, error);
  else
    fm_session_emit_changed (self, FM_CHANGE_DRAFT, fm_session_io_blend_id (result));
}

/* The draft continues from the version that was read. */
static void
branch (FmSession *self, const FmSessionRead *read)
{
  const gint64 version_id = read->version->id;
  g_autofree char *label = g_strdup_printf (_ ("Branch from version %d"), read->version->number);

  fm_documents_flush (self->documents);
  fm_session_seal (self);
  fm_stored_document_step (FM_STORED_DOCUMENT (self->draft), read->formula, label, NULL);
  fm_session_draft_set_parent (self->draft, version_id, read->formula);
  self->n_in_flight++;
  fm_session_io_branch (self->writer, self->notebook, self->blend_id, version_id, self, branched_cb,
                        GUINT_TO_POINTER (self->serial));
}

static void
take_read (FmSession *self, FmSessionRead *read)
{
  fm_session_seal (self);
  fm_session_clear_version (self);
  take_blend (self, read);
  if (self->draft != NULL && read->wish.branches) {
    branch (self, read);
  } else if (self->draft != NULL) {
    self->version = g_steal_pointer (&read->version);
    self->version_formula = g_steal_pointer (&read->formula);
  }
  if (read->wish.restores)
    fm_session_emit_shown (self);
  else
    show_changed (self);
  if (read->draft != NULL && read->draft->damage != NULL)
    fm_session_failure (self, read->draft->damage);
}

static void
read_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  FmSession *self = FM_SESSION (source);
  g_autoptr (GError) error = NULL;
  FmSessionRead *read = fm_store_task_finish (result, &error);

  self->n_in_flight--;
  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    return;
  g_clear_object (&self->reading);
  if (read != NULL) {
    take_read (self, read);
    return;
  }
  fm_session_failure (self, error);
  if (self->blend_id == 0) /* nothing is awaited any more */
    fm_session_emit_shown (self);
}

void
fm_session_stop_reading (FmSession *self)
{
  g_cancellable_cancel (self->reading);
  g_clear_object (&self->reading);
}

/* What is shown stays until the other is read. */
static void
start_reading (FmSession *self, FmSessionWish wish)
{
  FmSessionRead *read = g_new0 (FmSessionRead, 1);

  fm_session_stop_reading (self);
  fm_session_seal (self);
  read->wish = self->wish = wish;
  read->known_id = self->blend_id;
  self->reading = g_cancellable_new ();
  self->n_in_flight++;
  fm_store_task (&(FmStoreTask){
      .owner = self,
      .notebook = self->notebook,
      .run = fm_session_read_run,
      .data = read,
      .free_data = (GDestroyNotify)fm_session_read_free,
      .cancellable = self->reading,
      .done = read_cb,
  });
}

static void
show_nothing (FmSession *self)
{
  fm_session_stop_reading (self);
  fm_session_clear_version (self);
  set_shown (self, NULL, NULL);
  show_changed (self);
}

void
fm_session_restore_shown (FmSession *self)
{
  start_reading (self, (FmSessionWish){ .restores = TRUE });
}

gboolean
fm_session_is_reading (FmSession *self)
{
  return self->reading != NULL;
}

void
fm_session_show_blend (FmSession *self, gint64 blend_id)
{
  if (blend_id == self->blend_id)
    fm_session_show_draft (self);
  else if (blend_id == 0 || self->notebook == NULL)
    show_nothing (self);
  else
    start_reading (self, (FmSessionWish){ .blend_id = blend_id });
}

void
fm_session_show_version (FmSession *self, gint64 version_id)
{
  if (self->notebook == NULL)
    return;
  if (version_id == 0)
    fm_session_show_draft (self);
  else if (version_id == fm_session_get_version_id (self))
    fm_session_stop_reading (self);
  else
    start_reading (self, (FmSessionWish){ .version_id = version_id });
}

void
fm_session_show_draft (FmSession *self)
{
  fm_session_stop_reading (self);
  if (self->version == NULL)
    return;
  fm_session_seal (self);
  fm_session_clear_version (self);
  show_changed (self);
}

void
fm_session_branch (FmSession *self, gint64 version_id)
{
  if (fm_session_is_writable (self))
    start_reading (self, (FmSessionWish){ .version_id = version_id, .branches = TRUE });
}

FmFormula *
fm_session_dup_draft_formula (FmSession *self, gint64 blend_id)
{
  FmSessionDraft *draft = g_hash_table_lookup (self->drafts, &blend_id);

  return draft != NULL ? fm_formula_copy (fm_session_draft_get_formula (draft)) : NULL;
}

void
fm_session_blend_renamed (FmSession *self, gint64 blend_id, const char *name)
{
  FmSessionDraft *draft = g_hash_table_lookup (self->drafts, &blend_id);

  if (draft != NULL)
    fm_session_draft_set_blend_name (draft, name);
  if (blend_id == self->blend_id)
    set_shown (self, draft, name);
  fm_session_emit_changed (self, FM_CHANGE_BLEND, blend_id);
}

void
fm_session_blend_removed (FmSession *self, gint64 blend_id)
{
  const gboolean was_reading = fm_session_is_reading (self);

  if (blend_id == self->blend_id)
    show_nothing (self);
  fm_documents_forget (self->documents, FM_TYPE_SESSION_DRAFT, self->notebook, blend_id);
  g_hash_table_remove (self->drafts, &blend_id);
  /* What is awaited may have been read before it was removed. */
  if (was_reading)
    start_reading (self, self->wish);
  fm_session_emit_changed (self, FM_CHANGE_BLEND, blend_id);
}
