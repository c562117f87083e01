/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-ingredient-keep.h - the notebook keeps an ingredient and what it cost */
#pragma once

#include "app/session/fm-session.h"

G_BEGIN_DECLS

/**
 * Notes the price of @ingredient in the history of prices, and with @for_reuse the ingredient among
 * the own entries, in a thread. A failure is told by the session. Without a notebook it does
 * nothing.
 */
void fm_ingredient_keep (FmSession *session, FmIngredient *ingredient, gboolean for_reuse);

G_END_DECLS
