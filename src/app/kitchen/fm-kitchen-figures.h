/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-kitchen-figures.h - what each authority asks for the blend's animals, while it cooks */
#pragma once

#include "core/cooking/fm-caution.h"

G_BEGIN_DECLS

/** One line for each authority whose figures apply, the one that rules first. Translated.
 * (transfer full) */
char *fm_kitchen_figures_text (const FmCookFood *food);

G_END_DECLS
