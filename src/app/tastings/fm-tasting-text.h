/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-text.h - tastings in words: state, sheets, events. Says nothing about who is who. */
#pragma once

#include "core/tasting/fm-tasting.h"

G_BEGIN_DECLS

/** "Sealed, 3 of 5 sheets in"; (transfer full). */
char *fm_tasting_text_state (FmTastingState state, guint n_in, guint n_tasters);
/** "4 samples · 3 tasters"; (transfer full). */
char *fm_tasting_text_size (guint n_samples, guint n_tasters);
/** "Key sheet printed or saved, 25 Nov 2026 14:02"; (transfer full). */
char *fm_tasting_text_event (const FmTastingEvent *event);
/** @title: (nullable) */
const char *fm_tasting_text_title (const char *title);

G_END_DECLS
