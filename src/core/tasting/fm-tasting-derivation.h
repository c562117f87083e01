/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-derivation.h - where the sentence and the chances of a tasting come from, as text */
#pragma once

#include "core/tasting/fm-tasting-reading.h"

G_BEGIN_DECLS

/**
 * The sheets counted, rank sums or scores, the statistic with its chance, how that was worked out
 * and its source, for each task with an answer. Names samples as the reading does: by code while
 * sealed. Returns: (transfer full).
 */
char *fm_tasting_derivation (const FmTastingReading *reading);

G_END_DECLS
