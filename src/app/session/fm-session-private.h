/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-session-private.h - parts of a session that its files share */
#pragma once

#include "app/session/fm-session-draft.h"
#include "app/session/fm-session-io.h"
#include "app/session/fm-session-read.h"
#include "app/session/fm-session.h"

G_BEGIN_DECLS

struct _FmSession {
  GObject parent_instance;

  FmNotebook *notebook;
  guint serial; /* counts notebooks, so that late results of an old one are told apart */

  GHashTable
      *drafts; /* blend id (gint64*) -> FmSessionDraft: undo outlives a look at another blend */
  FmSessionDraft *draft; /* of the shown blend */
  gint64 blend_id;
  char *blend_name;
  FmVersionInfo *version; /* shown saved version, NULL = the draft */
  FmFormula *version_formula;
  FmAnalysis *analysis;
  FmCompareItem *made; /* (nullable): the experiment on the screen */

  FmWriter *writer;
  FmDocuments *documents;
  FmSessionWish wish;     /* of the latest reading */
  GCancellable *reading;  /* of what is to be shown; NULL = nothing is awaited */
  guint n_in_flight;      /* jobs besides the saves of documents */
  GFileMonitor *monitor;  /* of the file of the notebook */
  FmNotebookPlace *place; /* NULL while the file is where it was opened */
  GCancellable *checking; /* (nullable): of the comparing of records with their sums */
};

/* fm-session-base.c */
/** Analyses the shown formula anew, and tells everyone. */
void fm_session_recompute (FmSession *self);
/** Tells everyone of another blend, version or draft. */
void fm_session_emit_shown (FmSession *self);
gboolean fm_session_is_writable (FmSession *self);

/* fm-session-show.c */
void fm_session_clear_version (FmSession *self);
void fm_session_stop_reading (FmSession *self);
/** Shows what was shown last in this notebook, or its first blend, when it is read. */
void fm_session_restore_shown (FmSession *self);

/* fm-session-place.c */
/** Watches the file of the notebook, whose place is taken as known. */
void fm_session_watch_place (FmSession *self);
void fm_session_forget_place (FmSession *self);

/* fm-session-check.c */
/** Looks in a thread for what was changed by something else, and tells of it. */
void fm_session_begin_check (FmSession *self);
void fm_session_end_check (FmSession *self);

/* fm-session-save.c */
/** Keeps the documents of a new session, and tells of what cannot be saved. */
void fm_session_watch_documents (FmSession *self);

G_END_DECLS
