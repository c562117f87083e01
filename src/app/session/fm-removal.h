/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-removal.h - removing with a way back
 *
 * What is removed only disappears from view at first; a toast offers to undo. The notebook is
 * changed, in a thread, once the toast is gone. A crash in between therefore loses nothing.
 */
#pragma once

#include <adwaita.h>

#include "store/notebook/fm-notebook.h"

G_BEGIN_DECLS

typedef gboolean (*FmRemovalFunc) (FmNotebook *notebook, gint64 id, GError **error);
/** @removed: FALSE when undone (@error NULL) or failed (@error set). */
typedef void (*FmRemovalSettled) (GtkWidget *owner,
                                  gint64 id,
                                  gboolean removed,
                                  const GError *error);

/** A toast that stays a while and has a button to undo what @title says. (transfer full) */
AdwToast *fm_removal_toast_new (const char *title);

/**
 * fm_removal_offer:
 * @owner: inside an AdwToastOverlay; may go away before the removal is settled
 * @title: translated, says what was removed
 * @remove: called in a thread
 * @settled: called with @owner in the main thread, if @owner still exists
 */
void fm_removal_offer (GtkWidget *owner,
                       const char *title,
                       FmNotebook *notebook,
                       gint64 id,
                       FmRemovalFunc remove,
                       FmRemovalSettled settled);

G_END_DECLS
