/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-comparison-derivation.h - where the figures of a row come from, as text that can be copied */
#pragma once

#include "core/compare/fm-comparison.h"

G_BEGIN_DECLS

/** Column by column; @reference: as fm_compare_row_value(). Returns: (transfer full). */
char *fm_comparison_derivation (const FmComparison *self, const FmCompareRow *row, int reference);

G_END_DECLS
