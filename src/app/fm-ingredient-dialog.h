/* fm-ingredient-dialog.h - the figures of one ingredient: an own entry, or those of a line
 *
 * Blank means unknown, which is never zero. What is saved goes through fm_ingredient_check().
 */
#pragma once

#include <adwaita.h>

#include "app/fm-session.h"

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

G_END_DECLS
