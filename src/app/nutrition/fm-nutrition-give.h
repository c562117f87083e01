/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-nutrition-give.h - hands the nutrients of a portion out: clipboard, paper, CSV */
#pragma once

#include <gtk/gtk.h>

#include "report/fm-nutrition-table.h"

G_BEGIN_DECLS

/* @owner: a page, whose session says what became of it. */
void fm_nutrition_give_copy (GtkWidget *owner, const FmNutritionTable *table);
/** Asks for a printer. */
void fm_nutrition_give_print (GtkWidget *owner, const FmNutritionTable *table);
/** Asks for a file. */
void fm_nutrition_give_csv (GtkWidget *owner, const FmNutritionTable *table);

G_END_DECLS
