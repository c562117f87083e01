/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-text-grid.h - small tables of text for numbers that also stand in a curve */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

void fm_text_grid_clear (GtkGrid *grid);
/** Adds a row below the last: the first text at the start, the others as numbers at the end. */
void
fm_text_grid_add_row (GtkGrid *grid, const char *const *texts, guint n_texts, gboolean is_heading);

G_END_DECLS
