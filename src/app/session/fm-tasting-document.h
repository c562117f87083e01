/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-document.h - one tasting being planned, filled in or read, saved as it changes
 *
 * Signals: as of FmStoredDocument, and
 *   "state-changed" ()   the cups were arranged, or the codes opened; comes after "changed"
 *   "outcome-stored" ()  what the opened tasting found is beside it in the notebook
 */
#pragma once

#include "app/session/fm-session.h"
#include "store/fm-tastings.h"

G_BEGIN_DECLS

#define FM_TYPE_TASTING_DOCUMENT (fm_tasting_document_get_type ())
G_DECLARE_FINAL_TYPE (
    FmTastingDocument, fm_tasting_document, FM, TASTING_DOCUMENT, FmStoredDocument)

/** As of fm_documents_open(). @tasting: (transfer full) of the session's notebook. */
FmTastingDocument *fm_tasting_document_open_record (FmSession *session, FmTasting *tasting);
/** To read and to change; call fm_tasting_document_touch() after a change. (transfer none) */
FmTasting *fm_tasting_document_get_tasting (FmTastingDocument *self);
/** Arranges the cups: seals the tasting. Stored at once, in a thread. @unchecked: (nullable): why
 * although not every sample's core reading and allergens are on record; kept as an event. */
gboolean
fm_tasting_document_arrange (FmTastingDocument *self, const char *unchecked, GError **error);
/** Opens the codes; @reason: (nullable): why, needed while sheets are waited for. */
gboolean fm_tasting_document_open (FmTastingDocument *self, const char *reason, GError **error);
/** Adds to the tasting's events, at this moment. */
void
fm_tasting_document_record (FmTastingDocument *self, FmTastingEventKind kind, const char *text);
/** Says that fm_tastings_save_outcome() kept what was found: lists and other pages look again. */
void fm_tasting_document_tell_outcome (FmTastingDocument *self);

/* As of FmStoredDocument. */
FmNotebook *fm_tasting_document_get_notebook (FmTastingDocument *self);
gboolean fm_tasting_document_is_editable (FmTastingDocument *self);
void fm_tasting_document_touch (FmTastingDocument *self);
/** As touch, after a change that can be undone; a run of changes of the same @what, translated, is
 * one step. */
void fm_tasting_document_did (FmTastingDocument *self, const char *what);
void fm_tasting_document_flush (FmTastingDocument *self);
/** As did, of one that is named: "Take out %s". @format: translated. */
void fm_tasting_document_did_to (FmTastingDocument *self, const char *format, ...)
    G_GNUC_PRINTF (2, 3);

G_END_DECLS
