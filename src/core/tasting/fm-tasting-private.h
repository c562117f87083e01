/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-private.h - what the parts of a tasting share */
#pragma once

#include "core/tasting/fm-tasting.h"

G_BEGIN_DECLS

#define FM_TASTING_MAIN_TASKS                                                                      \
  (FM_TASTING_RANK | FM_TASTING_LIKING | FM_TASTING_JAR | FM_TASTING_REMARKS)

/** The cup of this taster with that code; (nullable). */
const FmTastingCup *fm_tasting_find_cup (const FmTasting *self, guint taster, guint code);
/** In which round a task is done. */
FmTastingRound fm_tasting_task_round (FmTastingTask task);
const FmTaster *fm_tasting_taster (const FmTasting *self, guint taster);
/** FM_TASTING_EVENT_SHEET_CHANGED when the tasting is opened, else nothing. */
void fm_tasting_record_change (FmTasting *self, gint64 now, const char *text);

G_END_DECLS
