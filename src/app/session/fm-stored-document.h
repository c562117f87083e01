/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-stored-document.h - something of the notebook being edited, saved as it changes
 *
 * A draft, an experiment, a tasting, a map or a caption. Widgets change the content in place and
 * call fm_stored_document_touch(). A copy is saved shortly after by the session's writer, one at a
 * time, while steady typing goes on. A save that fails is tried again, and the document stays
 * alive until its changes are stored: see fm-documents.h.
 *
 * Undo belongs to the document: a change that is named with fm_stored_document_did() is a step, and
 * one that is not, as what came from the pan, is the state from which steps are counted anew.
 *
 * Signals:
 *   "changed" ()             some value changed; derived numbers follow
 *   "restored" (text)        undo or redo took another state: show all of it; comes after
 * "changed"; the text says what was done "saved" ()               all changes are in the notebook
 *   "save-failed" (message)  the last save failed; another attempt follows
 *   "altered" ()             it was found that something else changed the record
 */
#pragma once

#include <gio/gio.h>

#include "app/session/fm-change.h"
#include "app/session/fm-writer.h"
#include "core/base/fm-history.h"
#include "store/notebook/fm-notebook.h"

G_BEGIN_DECLS

#define FM_TYPE_STORED_DOCUMENT (fm_stored_document_get_type ())
G_DECLARE_DERIVABLE_TYPE (FmStoredDocument, fm_stored_document, FM, STORED_DOCUMENT, GObject)

/** What kinds of document differ in. */
struct _FmStoredDocumentClass {
  GObjectClass parent_class;

  /** What is to be saved, as it is now. */
  gpointer (*copy) (FmStoredDocument *self);
  /** Of a copy, and of the content if there is one. */
  void (*free) (gpointer copy);
  /** (nullable): of the states that undo keeps; NULL: nothing can be undone. */
  const FmHistoryKind *history;
  /** Called in the writer's thread. */
  gboolean (*save) (FmNotebook *notebook, gpointer copy, GError **error);
  /** What it is, translated, for a list of what is not saved. Returns: (transfer full). */
  char *(*describe) (FmStoredDocument *self);
  /** (nullable): of the notebook, that has its record as a row; see fm-record-check.h. */
  const char *table;
  /** The session tells of each save as a change of @kind, with the id of the record. */
  gboolean is_told;
  FmChangeKind kind;
};

/** @type: of a kind of document; @id: of its record; @content: (transfer full) (nullable): stored
 * already; what has none keeps its value in the history. Use fm_documents_open(), which keeps one
 * document a record. */
gpointer fm_stored_document_new (
    GType type, FmWriter *writer, FmNotebook *notebook, gint64 id, gpointer content);
FmNotebook *fm_stored_document_get_notebook (FmStoredDocument *self);
gint64 fm_stored_document_get_id (FmStoredDocument *self);
/** To read and to change; call touch after a change. (transfer none) */
gpointer fm_stored_document_get_content (FmStoredDocument *self);
char *fm_stored_document_describe (FmStoredDocument *self);
/** FALSE when the notebook is open for reading only. */
gboolean fm_stored_document_is_editable (FmStoredDocument *self);
/** Its record does not match its sum: something else than this program changed it. */
void fm_stored_document_set_altered (FmStoredDocument *self);
gboolean fm_stored_document_is_altered (FmStoredDocument *self);
void fm_stored_document_touch (FmStoredDocument *self);
/** As touch, after a change that can be undone. @label: translated, "Raw mass of patty 2";
 * @merge_key: (nullable): see fm_history_push(). */
void fm_stored_document_did (FmStoredDocument *self, const char *label, const char *merge_key);
/** Ends a run of typing. */
void fm_stored_document_seal (FmStoredDocument *self);
/** Steps are counted from @state on. */
void fm_stored_document_begin_history (FmStoredDocument *self, gconstpointer state);
/** Records @state as a step, for what has no other content; saved with the next touch. */
void fm_stored_document_step (FmStoredDocument *self,
                              gconstpointer state,
                              const char *label,
                              const char *merge_key);
/** What the history has now. (transfer none) (nullable) */
gconstpointer fm_stored_document_state (FmStoredDocument *self);
/** Of the step that undo takes back; NULL = none. */
const char *fm_stored_document_undo_label (FmStoredDocument *self);
const char *fm_stored_document_redo_label (FmStoredDocument *self);
void fm_stored_document_undo (FmStoredDocument *self);
void fm_stored_document_redo (FmStoredDocument *self);
gboolean fm_stored_document_is_saved (FmStoredDocument *self);
/** TRUE while a save is queued or runs. */
gboolean fm_stored_document_is_saving (FmStoredDocument *self);
/** Hands pending changes to the writer now. */
void fm_stored_document_flush (FmStoredDocument *self);
/** Goes on in @notebook, which has the same record: pending changes are saved there. */
void fm_stored_document_move (FmStoredDocument *self, FmNotebook *notebook);
/** Saves no more: its record was removed, or its last changes are given up. */
void fm_stored_document_forget (FmStoredDocument *self);

/** What a document is at some moment, to be saved elsewhere. */
typedef struct _FmStoredCopy FmStoredCopy;

FmStoredCopy *fm_stored_copy_new (FmStoredDocument *document);
void fm_stored_copy_free (FmStoredCopy *self);
/** May be called in a thread. */
gboolean fm_stored_copy_save (FmStoredCopy *self, FmNotebook *notebook, GError **error);
/** Its document need not be asked about any more: what it held is safe in another notebook. */
void fm_stored_copy_tell_kept (FmStoredCopy *self);
/** TRUE when all changes are in the notebook or in a copy of it. */
gboolean fm_stored_document_is_kept (FmStoredDocument *self);

G_END_DECLS
