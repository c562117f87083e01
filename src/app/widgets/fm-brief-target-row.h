/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-brief-target-row.h - one target band: its ends, the value now, and what that means */
#pragma once

#include <gtk/gtk.h>

#include "core/formula/fm-brief.h"

G_BEGIN_DECLS

#define FM_TYPE_BRIEF_TARGET_ROW (fm_brief_target_row_get_type ())
G_DECLARE_FINAL_TYPE (FmBriefTargetRow, fm_brief_target_row, FM, BRIEF_TARGET_ROW, GtkListBoxRow)

GtkWidget *fm_brief_target_row_new (FmTargetKind kind);
FmTargetKind fm_brief_target_row_get_kind (FmBriefTargetRow *self);
void
fm_brief_target_row_update (FmBriefTargetRow *self, FmBand band, double value, gboolean editable);
/** Says why the band just typed was not taken; @maximum: at its upper end. */
void fm_brief_target_row_refuse (FmBriefTargetRow *self, gboolean maximum, const char *message);

/** Puts the focus into the band. */
void fm_brief_target_row_focus (FmBriefTargetRow *self);
/** Style class of a state, beside the words for it. */
const char *fm_band_state_css_class (FmBandState state);

/** Signal "band-end-changed" (gboolean maximum, double value): the user typed another end. */

G_END_DECLS
