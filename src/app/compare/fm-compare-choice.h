/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-compare-choice.h - a version or experiment that can be compared */
#pragma once

#include <gio/gio.h>

#include "core/compare/fm-comparison.h"

G_BEGIN_DECLS

#define FM_TYPE_COMPARE_CHOICE (fm_compare_choice_get_type ())
G_DECLARE_FINAL_TYPE (FmCompareChoice, fm_compare_choice, FM, COMPARE_CHOICE, GObject)

/** Property: "chosen" (read-write). */
FmCompareChoice *
fm_compare_choice_new (FmCompareKind kind, gint64 id, const char *title, const char *subtitle);
/** As of fm_compare_key(). Returns: (transfer none). */
const char *fm_compare_choice_get_key (FmCompareChoice *self);
const char *fm_compare_choice_get_title (FmCompareChoice *self);
const char *fm_compare_choice_get_subtitle (FmCompareChoice *self);
gboolean fm_compare_choice_get_chosen (FmCompareChoice *self);
void fm_compare_choice_set_chosen (FmCompareChoice *self, gboolean chosen);
/** Whether every word of @words (case folded, NULL-terminated) occurs in title or subtitle. */
gboolean fm_compare_choice_matches (FmCompareChoice *self, const char *const *words);
/** Whether every word of @words occurs in the title alone. */
gboolean fm_compare_choice_is_called (FmCompareChoice *self, const char *const *words);

/** "v12" for a version, "e34" for an experiment, "d5" for the draft of a blend. (transfer full) */
char *fm_compare_key (FmCompareKind kind, gint64 id);
/** Key of an item; FALSE when @key is none. */
gboolean fm_compare_key_parse (const char *key, FmCompareKind *kind, gint64 *id);

G_END_DECLS
