/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-formula-private.h - what the history needs of a formula, for the core only */
#pragma once

#include "core/formula/fm-formula.h"

G_BEGIN_DECLS

/**
 * A copy of @self that shares each line that equals the line at the same place in @previous.
 * Neither the copy nor @previous may be changed afterwards.
 */
FmFormula *fm_formula_copy_sharing (const FmFormula *self, const FmFormula *previous);

G_END_DECLS
