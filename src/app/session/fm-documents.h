/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-documents.h - the documents of a session: one a record, and none is forgotten unsaved
 *
 * Who opens a record that is being edited already gets the same document, so that what was typed
 * last is what is seen. A document with changes that are not stored is kept alive here, also when
 * its page, its notebook or its experiment is left: closing asks for it.
 *
 * Signals:
 *   "save-failed" (message)  something could not be saved; said once until all is saved again
 *   "saved-again" ()         all that could not be saved is saved
 *   "saved" (document)       all changes of a document are stored
 */
#pragma once

#include "app/session/fm-stored-document.h"

G_BEGIN_DECLS

#define FM_TYPE_DOCUMENTS (fm_documents_get_type ())
G_DECLARE_FINAL_TYPE (FmDocuments, fm_documents, FM, DOCUMENTS, GObject)

/** @writer: kept; jobs pushed to it run between the saves. */
FmDocuments *fm_documents_new (FmWriter *writer);
/**
 * fm_documents_open:
 * @type: a kind of FmStoredDocument
 * @content: (transfer full) (nullable): the record as it was read just now
 *
 * Returns: (transfer full): the document of the record, with its own content if there is one
 *   already.
 */
gpointer fm_documents_open (
    FmDocuments *self, GType type, FmNotebook *notebook, gint64 id, gpointer content);
/** The document of a record that is open or not saved. (transfer none) (nullable) */
gpointer fm_documents_find (FmDocuments *self, GType type, FmNotebook *notebook, gint64 id);
/** The record was removed: what was not saved of it is dropped. */
void fm_documents_forget (FmDocuments *self, GType type, FmNotebook *notebook, gint64 id);

/** Hands all pending changes to the writer. */
void fm_documents_flush (FmDocuments *self);
gboolean fm_documents_is_saving (FmDocuments *self);
gboolean fm_documents_is_saved (FmDocuments *self);
/** TRUE when all changes are saved, or in a copy of their notebook. */
gboolean fm_documents_is_kept (FmDocuments *self);
/** What is neither saved nor in a copy, a line each. Returns: (transfer full), translated. */
char *fm_documents_describe (FmDocuments *self);
/** What is not saved of @notebook, to be saved in a copy of it. Returns: (transfer full):
 * FmStoredCopy
 */
GPtrArray *fm_documents_copy_unsaved (FmDocuments *self, FmNotebook *notebook);
/** The file of @notebook has left its name: what is open of it is not saved, whatever was said. */
void fm_documents_tell_lost (FmDocuments *self, FmNotebook *notebook, const char *message);
/** What was found of records of @notebook by fm_record_check_run(): documents of them say so, those
 * that are opened later, too. @altered: (transfer full) (element-type FmAlteredRecord) */
void fm_documents_tell_altered (FmDocuments *self, FmNotebook *notebook, GPtrArray *altered);
/** What is open of @from goes on in @to, a copy of it, and is saved there. */
void fm_documents_move (FmDocuments *self, FmNotebook *from, FmNotebook *to);
/** Drops all changes that could not be saved: the user was asked, or the session ends. */
void fm_documents_give_up (FmDocuments *self);

G_END_DECLS
