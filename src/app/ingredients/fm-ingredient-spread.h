/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-ingredient-spread.h - a published spread of the fat, for the cook to take or leave */
#pragma once

#include <adwaita.h>

#include "app/widgets/fm-number-entry.h"
#include "core/composition/fm-ingredient.h"

G_BEGIN_DECLS

/** Adds a row to @group that fills @entry on request; none when no spread is published. */
void fm_ingredient_spread_offer (AdwPreferencesGroup *group,
                                 const FmIngredient *ingredient,
                                 FmNumberEntry *entry);

G_END_DECLS
