/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-column-keys.h - keys that go through the rows of a list as through a table
 *
 * Tab goes down a column and then to the next one, Shift+Tab back, so that numbers follow numbers
 * and what removes a row stands last. Enter, Down and Up go along a column of numbers.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/** The control of a row in a column. Returns: (transfer none) (nullable): NULL when it has none. */
typedef GtkWidget *(*FmColumnCell) (GtkWidget *row, guint column);

/** @n_numbers: how many of the @n_columns, the first ones, are numbers. */
void fm_column_keys_install (GtkWidget *list, FmColumnCell cell, guint n_columns, guint n_numbers);

G_END_DECLS
