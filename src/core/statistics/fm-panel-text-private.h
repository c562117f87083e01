/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-panel-text-private.h - small words shared by the sentences on panels */
#pragma once

#include "core/statistics/fm-panel-text.h"

G_BEGIN_DECLS

#define FM_PANEL_ALPHA 0.05

/** "three"; digits above twelve. (transfer full) */
char *fm_panel_count_word (guint n);
/** "Three" */
char *fm_panel_count_word_first (guint n);
/** "731, 264": the wanted ones of @n names. (transfer full) */
char *fm_panel_join_names (const char *const *names, const gboolean *wanted, guint n);
/** "third" for 2; digits above twelve. (transfer full) */
char *fm_panel_ordinal_word (guint index);

G_END_DECLS
