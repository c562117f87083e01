/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-ingredient-dialog.h - the figures of one ingredient: an own entry, or those of a line
 *
 * Blank means unknown, which is never zero. What is saved goes through fm_ingredient_check().
 */
#pragma once

#include <adwaita.h>

#include "app/session/fm-session.h"

G_BEGIN_DECLS

#define FM_TYPE_INGREDIENT_DIALOG (fm_ingredient_dialog_get_type ())
G_DECLARE_FINAL_TYPE (FmIngredientDialog, fm_ingredient_dialog, FM, INGREDIENT_DIALOG, AdwWindow)

/**
 * Opens the dialog over the window of @parent.
 * @line_id: (nullable): the line whose ingredient is edited; NULL adds a new line
 * @ingredient: what to start from; it is copied
 */
void fm_ingredient_dialog_present (GtkWidget *parent,
                                   FmSession *session,
                                   const char *line_id,
                                   const FmIngredient *ingredient);

/**
 * The same for an ingredient that is no line of the draft: the draft stays as it is, and what was
 * written comes with the signal "written" (gpointer FmIngredient; valid during the emission).
 * @keep: whether it is kept for other blends unless the user says otherwise
 * Returns: (transfer none): the shown dialog
 */
FmIngredientDialog *fm_ingredient_dialog_ask (GtkWidget *parent,
                                              FmSession *session,
                                              const FmIngredient *ingredient,
                                              gboolean keep);

G_END_DECLS
