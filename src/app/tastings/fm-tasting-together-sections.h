/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-together-sections.h - a reading of several tastings as sentences, charts and a table
 */
#pragma once

#include <gtk/gtk.h>

#include "core/tasting/fm-tasting-together.h"

G_BEGIN_DECLS

/** Fills @box, which is cleared first. @reading: (nullable) */
void fm_tasting_together_sections_show (GtkBox *box, const FmTastingTogether *reading);

G_END_DECLS
