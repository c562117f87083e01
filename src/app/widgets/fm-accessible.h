/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-accessible.h - names where the toolkit gives none */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/**
 * fm_accessible_name_drop_down:
 * @what: translated name of the choice
 *
 * A drop-down hands the focus to a button inside that has no name of its own; this names it
 * after @what and the chosen string, and keeps that current. The model holds GtkStringObjects.
 */
void fm_accessible_name_drop_down (GtkDropDown *drop_down, const char *what);

/** Names the lists and switches inside a composite row, and its labels without a text, after @what.
 */
void fm_accessible_name_parts (GtkWidget *widget, const char *what);

G_END_DECLS
