/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-document.c - one tasting being planned, filled in or read, saved as it changes */
#include "app/session/fm-tasting-document.h"

#include "app/session/fm-clock.h"

#include <glib/gi18n-lib.h>

struct _FmTastingDocument {
  FmStoredDocument parent_instance;
};

G_DEFINE_FINAL_TYPE (FmTastingDocument, fm_tasting_document, FM_TYPE_STORED_DOCUMENT)

enum {
  STATE_CHANGED,
  OUTCOME_STORED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static gpointer
copy (FmStoredDocument *document)
{
  return fm_tasting_copy (fm_stored_document_get_content (document));
}

static void
free_content (gpointer content)
{
  fm_tasting_free (content);
}

static gpointer
copy_state (gconstpointer state, gconstpointer before)
{
  return fm_tasting_copy (state);
}

static gboolean
equal_states (gconstpointer a, gconstpointer b)
{
  return fm_tasting_equal (a, b);
}

static const FmHistoryKind history_kind = {
  .equal = equal_states,
  .copy = copy_state,
  .free = free_content,
};

static gboolean
save (FmNotebook *notebook, gpointer content, GError **error)
{
  return fm_tastings_save (notebook, content, error);
}

static char *
describe (FmStoredDocument *document)
{
  const FmTasting *tasting = fm_stored_document_get_content (document);

  return g_strdup_printf (_ ("Tasting “%s”"),
                          tasting->title != NULL ? tasting->title : _ ("Untitled tasting"));
}

/* A new state is stored at once: a crash a moment later must not undo a seal or an opening. */
static void
tell_state (FmTastingDocument *self)
{
  fm_tasting_document_touch (self);
  fm_tasting_document_flush (self);
  g_signal_emit (self, signals[STATE_CHANGED], 0);
}

static guint
add_signal (const char *name)
{
  return g_signal_new (name, FM_TYPE_TASTING_DOCUMENT, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                       G_TYPE_NONE, 0);
}

static void
fm_tasting_document_class_init (FmTastingDocumentClass *klass)
{
  FmStoredDocumentClass *document_class = FM_STORED_DOCUMENT_CLASS (klass);

  document_class->history = &history_kind;
  document_class->copy = copy;
  document_class->free = free_content;
  document_class->save = save;
  document_class->describe = describe;
  document_class->table = "tastings";
  document_class->is_told = TRUE;
  document_class->kind = FM_CHANGE_TASTING;
  signals[STATE_CHANGED] = add_signal ("state-changed");
  signals[OUTCOME_STORED] = add_signal ("outcome-stored");
}

static void
fm_tasting_document_init (FmTastingDocument *self)
{
}

FmTastingDocument *
fm_tasting_document_open_record (FmSession *session, FmTasting *tasting)
{
  return fm_documents_open (fm_session_get_documents (session), FM_TYPE_TASTING_DOCUMENT,
                            fm_session_get_notebook (session), tasting->id, tasting);
}

FmTasting *
fm_tasting_document_get_tasting (FmTastingDocument *self)
{
  return fm_stored_document_get_content (FM_STORED_DOCUMENT (self));
}

gboolean
fm_tasting_document_arrange (FmTastingDocument *self, const char *unchecked, GError **error)
{
  FmTasting *tasting = fm_tasting_document_get_tasting (self);

  if (!fm_tasting_arrange (tasting, fm_tasting_hidden_part (), fm_clock_now_s (), error))
    return FALSE;
  if (unchecked != NULL)
    fm_tasting_record (tasting, fm_clock_now_s (), FM_TASTING_EVENT_UNCHECKED, unchecked);
  tell_state (self);
  return TRUE;
}

gboolean
fm_tasting_document_open (FmTastingDocument *self, const char *reason, GError **error)
{
  if (!fm_tasting_open (fm_tasting_document_get_tasting (self), fm_clock_now_s (), reason, error))
    return FALSE;
  tell_state (self);
  return TRUE;
}

void
fm_tasting_document_record (FmTastingDocument *self, FmTastingEventKind kind, const char *text)
{
  fm_tasting_record (fm_tasting_document_get_tasting (self), fm_clock_now_s (), kind, text);
  fm_tasting_document_touch (self);
}

void
fm_tasting_document_tell_outcome (FmTastingDocument *self)
{
  g_signal_emit (self, signals[OUTCOME_STORED], 0);
}

FmNotebook *
fm_tasting_document_get_notebook (FmTastingDocument *self)
{
  return fm_stored_document_get_notebook (FM_STORED_DOCUMENT (self));
}

gboolean
fm_tasting_document_is_editable (FmTastingDocument *self)
{
  return fm_stored_document_is_editable (FM_STORED_DOCUMENT (self));
}

void
fm_tasting_document_touch (FmTastingDocument *self)
{
  fm_stored_document_touch (FM_STORED_DOCUMENT (self));
}

void
fm_tasting_document_flush (FmTastingDocument *self)
{
  fm_stored_document_flush (FM_STORED_DOCUMENT (self));
}

void
fm_tasting_document_did (FmTastingDocument *self, const char *what)
{
  fm_stored_document_did (FM_STORED_DOCUMENT (self), what, what);
}

void
fm_tasting_document_did_to (FmTastingDocument *self, const char *format, ...)
{
  g_autofree char *what = NULL;
  va_list args;

  va_start (args, format);
  what = g_strdup_vprintf (format, args);
  va_end (args);
  fm_stored_document_did (FM_STORED_DOCUMENT (self), what, NULL);
}
