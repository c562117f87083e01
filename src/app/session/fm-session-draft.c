/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-session-draft.c - one blend's draft being edited */
#include "app/session/fm-session-draft.h"

#include <glib/gi18n-lib.h>

G_DEFINE_FINAL_TYPE (FmSessionDraft, fm_session_draft, FM_TYPE_STORED_DOCUMENT)

typedef struct {
  gint64 blend_id;
  FmFormula *formula;
} Copy;

static gpointer
copy (FmStoredDocument *document)
{
  Copy *copied = g_new0 (Copy, 1);

  copied->blend_id = fm_stored_document_get_id (document);
  copied->formula = fm_formula_copy (fm_stored_document_state (document));
  return copied;
}

static void
free_copy (gpointer data)
{
  Copy *copied = data;

  fm_formula_free (copied->formula);
  g_free (copied);
}

static gboolean
save (FmNotebook *notebook, gpointer data, GError **error)
{
  const Copy *copied = data;

  return fm_draft_save (notebook, copied->blend_id, copied->formula, error);
}

static char *
describe (FmStoredDocument *document)
{
  return g_strdup_printf (_ ("The draft of “%s”"), FM_SESSION_DRAFT (document)->blend_name);
}

static void
fm_session_draft_finalize (GObject *object)
{
  FmSessionDraft *self = FM_SESSION_DRAFT (object);

  g_clear_pointer (&self->parent_formula, fm_formula_free);
  g_free (self->blend_name);
  G_OBJECT_CLASS (fm_session_draft_parent_class)->finalize (object);
}

static void
fm_session_draft_class_init (FmSessionDraftClass *klass)
{
  FmStoredDocumentClass *document_class = FM_STORED_DOCUMENT_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = fm_session_draft_finalize;
  document_class->history = &fm_formula_history_kind;
  document_class->copy = copy;
  document_class->free = free_copy;
  document_class->save = save;
  document_class->describe = describe;
  document_class->table = "drafts";
}

static void
fm_session_draft_init (FmSessionDraft *self)
{
}

/* A damaged draft hides neither its blend nor its versions. It starts anew from its version, and
 * the damaged text stays where it is until the next change. */
static void
start_anew (FmSessionDraftContent *self, const GError *error)
{
  g_set_error (&self->damage, FM_STORE_ERROR, FM_STORE_ERROR_DAMAGED,
               _ ("The draft of this blend is damaged and cannot be read (%s). Its versions can. "
                  "What you see is what the draft started from; your next change takes its place."),
               error->message);
  self->formula =
      self->parent_formula != NULL ? fm_formula_copy (self->parent_formula) : fm_formula_new ();
}

FmSessionDraftContent *
fm_session_draft_read (FmNotebook *notebook, gint64 blend_id, GError **error)
{
  FmSessionDraftContent *self = g_new0 (FmSessionDraftContent, 1);
  g_autoptr (GError) local_error = NULL;

  self->formula = fm_draft_load (notebook, blend_id, &self->parent_id, &local_error);
  if (local_error != NULL &&
      !g_error_matches (local_error, FM_STORE_ERROR, FM_STORE_ERROR_DAMAGED)) {
    g_propagate_error (error, g_steal_pointer (&local_error));
    g_free (self);
    return NULL;
  }
  /* Without the parent the draft can still be worked on; it only counts as changed. */
  if (self->parent_id != 0)
    self->parent_formula = fm_versions_load (notebook, self->parent_id, NULL);
  if (local_error != NULL)
    start_anew (self, local_error);
  return self;
}

void
fm_session_draft_content_free (FmSessionDraftContent *self)
{
  fm_formula_free (self->formula);
  g_clear_pointer (&self->parent_formula, fm_formula_free);
  g_clear_error (&self->damage);
  g_free (self);
}

FmSessionDraft *
fm_session_draft_open (FmDocuments *documents,
                       FmNotebook *notebook,
                       gint64 blend_id,
                       const FmSessionDraftContent *content)
{
  FmSessionDraft *self =
      fm_documents_open (documents, FM_TYPE_SESSION_DRAFT, notebook, blend_id, NULL);

  if (fm_session_draft_get_formula (self) != NULL)
    return self;
  fm_stored_document_begin_history (FM_STORED_DOCUMENT (self), content->formula);
  self->parent_id = content->parent_id;
  if (content->parent_formula != NULL)
    self->parent_formula = fm_formula_copy (content->parent_formula);
  self->told_changes = fm_session_draft_has_changes (self);
  return self;
}

void
fm_session_draft_set_blend_name (FmSessionDraft *self, const char *name)
{
  g_free (self->blend_name);
  self->blend_name = g_strdup (name);
}

void
fm_session_draft_set_parent (FmSessionDraft *self, gint64 version_id, const FmFormula *formula)
{
  self->parent_id = version_id;
  g_clear_pointer (&self->parent_formula, fm_formula_free);
  self->parent_formula = fm_formula_copy (formula);
}

const FmFormula *
fm_session_draft_get_formula (const FmSessionDraft *self)
{
  return fm_stored_document_state (FM_STORED_DOCUMENT ((FmSessionDraft *)self));
}

gboolean
fm_session_draft_has_changes (const FmSessionDraft *self)
{
  const FmFormula *current = fm_session_draft_get_formula (self);

  if (self->parent_formula != NULL)
    return !fm_formula_equal (current, self->parent_formula);
  return self->parent_id != 0 || fm_formula_n_lines (current) > 0;
}
