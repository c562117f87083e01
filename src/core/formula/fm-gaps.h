/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-gaps.h - which figures of a blend some of its mass lacks, in words */
#pragma once

#include "core/formula/fm-analysis.h"

G_BEGIN_DECLS

/**
 * Sentences on fat, protein, water, energy and cost where they are not known for all of the mass:
 * for how much they are, and whose they are not. "" when nothing is missing. Without a single price
 * nothing is said of the cost. Returns: (transfer full).
 */
char *fm_gaps_text (const FmFormula *formula, const FmAnalysis *analysis);

G_END_DECLS
