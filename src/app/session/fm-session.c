/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-session.c - what the window shows: one notebook, one blend, its draft or a saved version */
#include "app/session/fm-session-private.h"

#include <glib/gi18n-lib.h>

G_DEFINE_FINAL_TYPE (FmSession, fm_session, G_TYPE_OBJECT)

static void
drop_notebook (FmSession *self)
{
  fm_session_stop_reading (self);
  fm_session_forget_place (self);
  fm_session_end_check (self);
  fm_documents_flush (self->documents);
  g_clear_pointer (&self->analysis, fm_analysis_free);
  fm_session_clear_version (self);
  self->draft = NULL;
  self->blend_id = 0;
  g_clear_pointer (&self->blend_name, g_free);
  g_hash_table_remove_all (self->drafts);
  fm_writer_close_notebook (g_steal_pointer (&self->notebook));
}

static void
fm_session_finalize (GObject *object)
{
  FmSession *self = FM_SESSION (object);

  /* Each queued job holds a reference to the session; what is not saved now never will be. */
  fm_documents_give_up (self->documents);
  drop_notebook (self);
  g_clear_pointer (&self->made, fm_compare_item_free);
  g_clear_object (&self->documents);
  g_clear_pointer (&self->writer, fm_writer_unref);
  g_clear_pointer (&self->drafts, g_hash_table_unref);
  G_OBJECT_CLASS (fm_session_parent_class)->finalize (object);
}

static void
add_signal (const char *name, GSignalFlags flags, GType argument)
{
  g_signal_new (name, FM_TYPE_SESSION, G_SIGNAL_RUN_LAST | flags, 0, NULL, NULL, NULL, G_TYPE_NONE,
                1, argument);
}

static void
fm_session_class_init (FmSessionClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = fm_session_finalize;

  add_signal ("changed", G_SIGNAL_DETAILED, FM_TYPE_CHANGE | G_SIGNAL_TYPE_STATIC_SCOPE);
  add_signal ("message", 0, G_TYPE_STRING);
  add_signal ("failure", 0, G_TYPE_STRING);
  add_signal ("altered", 0, G_TYPE_STRING);
}

static void
fm_session_init (FmSession *self)
{
  self->drafts = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, g_object_unref);
  self->writer = fm_writer_new ();
  self->documents = fm_documents_new (self->writer);
  fm_session_watch_documents (self);
}

FmSession *
fm_session_new (void)
{
  return g_object_new (FM_TYPE_SESSION, NULL);
}

FmNotebook *
fm_session_get_notebook (FmSession *self)
{
  return self->notebook;
}

void
fm_session_set_notebook (FmSession *self, FmNotebook *notebook)
{
  drop_notebook (self);
  self->serial++;
  self->notebook = notebook;
  if (notebook != NULL)
    fm_session_restore_shown (self);
  fm_session_watch_place (self);
  fm_session_begin_check (self);
  fm_session_emit_changed (self, FM_CHANGE_NOTEBOOK, 0);
  fm_session_emit_shown (self);
}

void
fm_session_move (FmSession *self, FmNotebook *notebook)
{
  fm_documents_move (self->documents, self->notebook, notebook);
  fm_session_set_notebook (self, notebook);
}

FmDocuments *
fm_session_get_documents (FmSession *self)
{
  return self->documents;
}

gint64
fm_session_get_blend_id (FmSession *self)
{
  return self->blend_id;
}

const FmVersionInfo *
fm_session_get_version_info (FmSession *self)
{
  return self->version;
}

const char *
fm_session_get_blend_name (FmSession *self)
{
  return self->blend_name;
}

char *
fm_session_dup_shown (FmSession *self)
{
  const FmVersionInfo *version = fm_session_get_version_info (self);
  const char *blend = fm_session_get_blend_name (self);
  g_autofree char *shown = NULL;

  if (blend == NULL)
    return NULL;
  shown = version != NULL ? g_strdup_printf (_ ("version %d"), version->number)
                          : g_strdup (_ ("draft"));
  return g_strdup_printf ("%s, %s", blend, shown);
}

gint64
fm_session_get_draft_parent (FmSession *self)
{
  return self->draft != NULL ? self->draft->parent_id : 0;
}

gboolean
fm_session_has_draft_changes (FmSession *self)
{
  return self->draft != NULL && fm_session_draft_has_changes (self->draft);
}

gboolean
fm_session_is_editable (FmSession *self)
{
  return fm_session_is_writable (self) && self->draft != NULL && self->version == NULL;
}

const FmAnalysis *
fm_session_get_analysis (FmSession *self)
{
  return self->analysis;
}

void
fm_session_edit (FmSession *self, const FmFormula *next, const char *label, const char *merge_key)
{
  if (!fm_session_is_editable (self) || fm_formula_equal (next, fm_session_get_formula (self)))
    return;
  fm_stored_document_step (FM_STORED_DOCUMENT (self->draft), next, label, merge_key);
  fm_stored_document_touch (FM_STORED_DOCUMENT (self->draft));
  fm_session_recompute (self);
  fm_session_emit_changed (self, FM_CHANGE_HISTORY, self->blend_id);
}

FmStoredDocument *
fm_session_get_draft (FmSession *self)
{
  return fm_session_is_editable (self) ? FM_STORED_DOCUMENT (self->draft) : NULL;
}
