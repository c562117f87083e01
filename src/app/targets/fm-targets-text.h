/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-targets-text.h - what a solution says, in sentences */
#pragma once

#include "core/targets/fm-targets.h"

G_BEGIN_DECLS

/* All return (transfer full) translated text; NULL where there is nothing to say. */

/** "Fat: 20.0 %, within the band 18-22; 5.0-27.0 % can be reached". */
char *fm_targets_text_row (const FmTargets *targets, const FmTargetsResult *result, guint row);
/** "One more % of Chuck changes the cost by +0.12 € per kg." */
char *
fm_targets_text_share_cost (const FmTargets *targets, const FmTargetsResult *result, guint index);
/** "One unit more of the Fat limit changes the cost by ..." */
char *
fm_targets_text_limit_cost (const FmTargets *targets, const FmTargetsResult *result, guint row);
/** Cost per kg, or why it is not known. */
char *fm_targets_text_cost (double cost_per_kg);
/** How far fat can go with these ingredients. */
char *fm_targets_text_fat_reach (const FmReach *reach);

G_END_DECLS
