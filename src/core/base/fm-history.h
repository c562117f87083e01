/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-history.h - undo and redo without limit, over whole values of one kind */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/** What a history has to know of the values that it keeps. */
typedef struct {
  gboolean (*equal) (gconstpointer a, gconstpointer b);
  /** @before: (nullable): may share with the copy what both have. */
  gpointer (*copy) (gconstpointer value, gconstpointer before);
  GDestroyNotify free;
} FmHistoryKind;

typedef struct _FmHistory FmHistory;

/** @kind: lives as long as the history. @initial: is copied. */
FmHistory *fm_history_new (const FmHistoryKind *kind, gconstpointer initial);
void fm_history_free (FmHistory *self);
/** The current state; valid until the next push or free. (transfer none) */
gconstpointer fm_history_current (const FmHistory *self);
/**
 * Records @next (copied) as the new current state and drops the redo side. Does nothing when
 * @next equals the current state.
 * @label: translated name of the act ("Change mass of Chuck")
 * @merge_key: (nullable): a following act with the same key within the same run (no
 *   fm_history_seal() between) replaces this one, so typing is one step, and typing back to where
 *   it began is none
 */
void
fm_history_push (FmHistory *self, gconstpointer next, const char *label, const char *merge_key);
/** Ends a run of merged acts, e.g. when an entry loses the focus. */
void fm_history_seal (FmHistory *self);
gboolean fm_history_can_undo (const FmHistory *self);
gboolean fm_history_can_redo (const FmHistory *self);
const char *fm_history_undo_label (const FmHistory *self); /* (nullable) */
const char *fm_history_redo_label (const FmHistory *self); /* (nullable) */
gconstpointer fm_history_undo (FmHistory *self);
gconstpointer fm_history_redo (FmHistory *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmHistory, fm_history_free)

G_END_DECLS
