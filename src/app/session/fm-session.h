/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-session.h - what the window shows: one notebook, one blend, its draft or a saved version
 *
 * Pages take a session as their "session" property, read from it, edit through it and listen to
 * its signals. It is used from the main thread only, which reads nothing from the notebook: all
 * store work happens in threads. Pages never touch the store for formulas; for lists of their own
 * (experiments, photos) they use fm_store_task() with fm_session_get_notebook().
 *
 * Signals:
 *   "changed" (FmChange *change)  what changed, as kind and id (fm-change.h); the name of the kind
 *                                 is the detail, so a page hears "changed::version" alone
 *   "message" (char *text)        a short sentence for a toast
 *   "failure" (char *text)        something failed; a sentence that stays until dismissed
 *   "altered" (char *text)        what was found to be changed by something else; stays as well
 */
#pragma once

#include <gio/gio.h>

#include "app/session/fm-change.h"
#include "app/session/fm-documents.h"
#include "core/compare/fm-comparison.h"
#include "core/formula/fm-analysis.h"
#include "store/fm-experiments.h"

G_BEGIN_DECLS

#define FM_TYPE_SESSION (fm_session_get_type ())
G_DECLARE_FINAL_TYPE (FmSession, fm_session, FM, SESSION, GObject)

FmSession *fm_session_new (void);

/** NULL while no notebook is open. (transfer none) */
FmNotebook *fm_session_get_notebook (FmSession *self);
/** (transfer full notebook) Shows the notebook's last blend and draft, when they are read. */
void fm_session_set_notebook (FmSession *self, FmNotebook *notebook);

/** Where the file of the notebook is, once it has left its name; NULL before. (transfer none) */
const FmNotebookPlace *fm_session_get_place (FmSession *self);
/** Looks for the file in a thread; "changed::place" tells when it has left its name. */
void fm_session_look_for_file (FmSession *self);
/** (transfer full notebook) Goes on in a copy of a notebook that was lost: what is being edited is
 * saved there. */
void fm_session_move (FmSession *self, FmNotebook *notebook);

/** Keeps a setting in the notebook when it is open for writing, and tells of "setting". */
void fm_session_save_setting (FmSession *self, const char *key, const char *value);

gint64 fm_session_get_blend_id (FmSession *self);   /* 0 = none */
gint64 fm_session_get_version_id (FmSession *self); /* shown saved version; 0 = the draft */
/** What is known of the shown saved version; NULL while the draft is shown. (transfer none) */
const FmVersionInfo *fm_session_get_version_info (FmSession *self);
const char *fm_session_get_blend_name (FmSession *self);
/** "Pan patty, version 7", "Pan patty, draft"; NULL while no blend is shown. (transfer full) */
char *fm_session_dup_shown (FmSession *self);
/**
 * These read in a thread; what is shown stays until then, and the last wish counts. The shown
 * blend's draft is at hand and shown at once. 0 shows no blend.
 */
void fm_session_show_blend (FmSession *self, gint64 blend_id);
void fm_session_show_version (FmSession *self, gint64 version_id);
void fm_session_show_draft (FmSession *self);
/** Starts a draft from a saved version and shows it. */
void fm_session_branch (FmSession *self, gint64 version_id);
/** TRUE while something that is to be shown is read. */
gboolean fm_session_is_reading (FmSession *self);
/** Saves the draft as the next version with a reason; says so in a toast. */
void fm_session_save_version (FmSession *self, const char *reason);
/**
 * fm_session_add_versions:
 * @parent_id: a version of @blend_id that the new ones grow from
 * @formulas: FmFormula, one a version
 * @reasons: as many, NULL after the last
 *
 * Saves versions beside the draft, which stays as it is. All of them or, on error, none. The lists
 * hear of it before @callback.
 */
void fm_session_add_versions (FmSession *self,
                              gint64 blend_id,
                              gint64 parent_id,
                              const GPtrArray *formulas,
                              const char *const *reasons,
                              GAsyncReadyCallback callback,
                              gpointer user_data);
/** FmVersionInfo in the order of the formulas (transfer full); NULL on error. */
GPtrArray *fm_session_add_versions_finish (FmSession *self, GAsyncResult *result, GError **error);
gint64 fm_session_get_draft_parent (FmSession *self);
/** TRUE when the draft differs from the version it started from. */
gboolean fm_session_has_draft_changes (FmSession *self);

/** TRUE when the draft is shown and the notebook can be written. */
gboolean fm_session_is_editable (FmSession *self);
const FmFormula *fm_session_get_formula (FmSession *self);   /* never NULL while a blend is shown */
const FmAnalysis *fm_session_get_analysis (FmSession *self); /* of that formula */

/**
 * The experiment on the screen as it was made, NULL while none is: title, short title ("Pan patty,
 * version 3"), weighed formula with its analysis, measured cook loss. (transfer none)
 */
const FmCompareItem *fm_session_get_made (FmSession *self);
/** @made: (transfer full) (nullable): tells of "made". */
void fm_session_set_made (FmSession *self, FmCompareItem *made);

/**
 * The one way to change the draft: copy fm_session_get_formula(), edit the copy, hand it in.
 * Recomputes, records undo (label translated; merge_key joins a run of typing), autosaves.
 */
void
fm_session_edit (FmSession *self, const FmFormula *next, const char *label, const char *merge_key);
void fm_session_seal (FmSession *self); /* ends a run of merged edits */
/** The draft that is shown, of which edits are undone and redone; NULL while none can be edited.
 * (transfer none) (nullable) */
FmStoredDocument *fm_session_get_draft (FmSession *self);
/** The draft of @blend_id as it is being edited, newer than the stored one; NULL when it was not
 * shown yet. (transfer full) (nullable) */
FmFormula *fm_session_dup_draft_formula (FmSession *self, gint64 blend_id);
/** What is being edited in the notebook. (transfer none) */
FmDocuments *fm_session_get_documents (FmSession *self);
/** Runs @order in the thread that writes, after all that waits to be saved; the outcome is told as
 * by fm_store_task(). */
void fm_session_write (FmSession *self, const FmStoreTask *order);
/** Writes all that waits now, and returns when it was tried and all that is awaited is read (before
 * closing, tests). */
void fm_session_flush (FmSession *self);
/** TRUE when no edit waits for the disk. */
gboolean fm_session_is_saved (FmSession *self);

/** Stores a setting that travels with the notebook; a failure is only logged, as nothing depends on
 * it. */
void fm_session_remember (FmSession *self, const char *key, const char *value);

/** Tells everyone that something in the store changed; @id 0 = many. */
void fm_session_emit_changed (FmSession *self, FmChangeKind kind, gint64 id);
/** After a blend was renamed or removed; shows none when the shown one is gone. */
void fm_session_blend_renamed (FmSession *self, gint64 blend_id, const char *name);
void fm_session_blend_removed (FmSession *self, gint64 blend_id);
void fm_session_message (FmSession *self, const char *text);
void fm_session_failure (FmSession *self, const GError *error);

G_END_DECLS
