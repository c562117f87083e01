/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-nutrition-made.h - an experiment as it was made, in a few words above its nutrients */
#pragma once

#include "core/compare/fm-comparison.h"

G_BEGIN_DECLS

/** "Trial 3, as weighed: fat 19.7 %, 13.67 € per kg, cook loss 25.1 % as measured". Returns:
 * (transfer full). */
char *fm_nutrition_made_text (const FmCompareItem *made);

G_END_DECLS
