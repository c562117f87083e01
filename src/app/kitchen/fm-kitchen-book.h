/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-kitchen-book.h - the log of one cook: each event is written as it happens and lands in the
 * experiment
 *
 * Events are written one after another in a thread; one that cannot be written is tried again until
 * it can.
 *
 * Signals:
 *   "changed" ()               events were read or one was added
 *   "unwritten" (char *text)   why an event is not on the disk yet; NULL when all are
 */
#pragma once

#include "app/session/fm-experiment-document.h"
#include "core/kitchen/fm-kitchen-land.h"

G_BEGIN_DECLS

#define FM_TYPE_KITCHEN_BOOK (fm_kitchen_book_get_type ())
G_DECLARE_FINAL_TYPE (FmKitchenBook, fm_kitchen_book, FM, KITCHEN_BOOK, GObject)

/** Reads what the log holds; until then fm_kitchen_book_is_read() is FALSE. */
FmKitchenBook *fm_kitchen_book_new (FmExperimentDocument *document);
gboolean fm_kitchen_book_is_read (FmKitchenBook *self);
/** (transfer none) (element-type FmKitchenEvent) */
const GPtrArray *fm_kitchen_book_get_events (FmKitchenBook *self);
/** What follows from the events; never NULL. (transfer none) */
const FmKitchenState *fm_kitchen_book_get_state (FmKitchenBook *self);
/** Something happened now. @portion: -1 = none; @value: NaN = none; @words: (nullable) */
void fm_kitchen_book_add (
    FmKitchenBook *self, FmKitchenKind kind, int portion, double value, const char *words);
/** What the machine did since it was last looked at (sleep, a set clock) is noted. */
void fm_kitchen_book_note_gap (FmKitchenBook *self, const FmKitchenMoment *now);
/** Takes the last act back. FALSE when there is none. */
gboolean fm_kitchen_book_take_back (FmKitchenBook *self);

G_END_DECLS
