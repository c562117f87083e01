/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-names.h - what the cook calls the foods of the dataset, in all blends of the notebook
 *
 * A formula is stored with the dataset's own names. Short names are made by rule when it is read,
 * and what the cook calls a food stands in the notebook. A draft that is saved tells the notebook
 * its names, so that undoing a new name takes it back everywhere. Errors are FM_STORE_ERROR.
 */
#pragma once

#include "core/composition/fm-food.h"
#include "core/formula/fm-formula.h"
#include "store/notebook/fm-notebook.h"

G_BEGIN_DECLS

/** @food as an ingredient named as in the notebook. @notebook: (nullable). Returns: (transfer
 * full). */
FmIngredient *fm_names_new_ingredient (FmNotebook *notebook, const FmFood *food, GError **error);

G_END_DECLS
