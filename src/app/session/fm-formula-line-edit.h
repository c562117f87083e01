/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-formula-line-edit.h - the acts on the lines of the draft, each one step of undo
 *
 * Lines are named by id, because their position may have changed since the view was drawn. An
 * unknown id does nothing. Functions with an error leave the formula alone when they fail.
 */
#pragma once

#include "app/session/fm-session.h"

G_BEGIN_DECLS

/**
 * A run of typing in one share entry, zeroed at first. Each keystroke starts from the formula
 * before the run: on the way from "10" to "100" and back the other lines keep their proportions.
 */
typedef struct {
  FmFormula *before;
  FmFormula *after; /* what the run has made of it so far */
} FmShareRun;

gboolean fm_line_edit_mass (FmSession *session, const char *id, double mass_g, GError **error);
gboolean fm_line_edit_share (
    FmSession *session, const char *id, double share_pct, FmShareRun *run, GError **error);
void fm_share_run_clear (FmShareRun *run);
void fm_line_edit_lock (FmSession *session, const char *id, gboolean locked);
void fm_line_edit_remove (FmSession *session, const char *id);
/** @offset: -1 one up, +1 one down. */
void fm_line_edit_shift (FmSession *session, const char *id, int offset);
/** Moves line @id to where line @target_id is. */
void fm_line_edit_move_to (FmSession *session, const char *id, const char *target_id);
void fm_line_edit_ingredient (FmSession *session, const char *id, FmIngredient *ingredient);
/** @price_per_kg: as purchased, in the notebook's currency; NaN = not known. */
gboolean
fm_line_edit_price (FmSession *session, const char *id, double price_per_kg, GError **error);
/** Adds 100 g, or what the batch still lacks if that is less. Returns the new id: (transfer full).
 */
char *fm_line_edit_add (FmSession *session, FmIngredient *ingredient);
/** Adds what @lines holds, as one step. */
void fm_line_edit_add_all (FmSession *session, const FmFormula *lines);
void fm_line_edit_merge_duplicates (FmSession *session);
gboolean fm_line_edit_scale_to_batch (FmSession *session, GError **error);
/** Replaces the brief. @what: of it, translated; a run of changes of the same is one step. */
void fm_line_edit_brief (FmSession *session, const FmBrief *brief, const char *what);
/** Replaces the process. @what: as of fm_line_edit_brief(). */
void fm_line_edit_process (FmSession *session, const FmProcess *process, const char *what);

G_END_DECLS
