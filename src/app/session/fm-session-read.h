/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-session-read.h - reads a blend, its draft or a version to be shown, off the main thread */
#pragma once

#include "app/session/fm-session-draft.h"

G_BEGIN_DECLS

/** What is to be shown. */
typedef struct {
  gboolean restores; /* what was shown last in the notebook, or its first blend */
  gboolean branches; /* the version starts a draft */
  gint64 blend_id;
  gint64 version_id; /* 0 = the draft */
} FmSessionWish;

/** A wish and what was found of it. */
typedef struct {
  FmSessionWish wish; /* its blend as found; 0 = there is none */
  gint64 known_id;    /* blend whose draft is in memory already and is not read */

  char *blend_name;
  FmSessionDraftContent *draft;
  FmVersionInfo *version;
  FmFormula *formula; /* of the version */
} FmSessionRead;

/** For fm_store_task(): fills @read. */
gpointer fm_session_read_run (FmNotebook *notebook,
                              gpointer read,
                              GCancellable *cancellable,
                              GError **error);
void fm_session_read_free (FmSessionRead *self);

G_END_DECLS
