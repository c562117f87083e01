/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-comparison-private.h - what the parts of a comparison share */
#pragma once

#include "core/compare/fm-comparison.h"

G_BEGIN_DECLS

void fm_compare_row_free (FmCompareRow *row);
/** A row whose values are not known yet, at the end. Returns: (transfer none). */
FmCompareRow *fm_comparison_add_row (FmComparison *self,
                                     FmCompareSection section,
                                     const char *key,
                                     const char *name,
                                     const char *unit,
                                     int decimals);
/** A row in words, left out where no column has any. @texts: (transfer full): one per column. */
void fm_comparison_add_words (
    FmComparison *self, FmCompareSection section, const char *key, const char *name, char **texts);
/** Rows in words: what each version plans, field by field and step by step. */
void fm_comparison_add_process (FmComparison *self);

G_END_DECLS
