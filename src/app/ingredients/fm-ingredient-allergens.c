/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-ingredient-allergens.c - what somebody stated about the allergens of an ingredient */
#include "app/ingredients/fm-ingredient-allergens.h"

#include <glib/gi18n-lib.h>

#include "app/widgets/fm-accessible.h"

struct _FmIngredientAllergens {
  AdwBin parent_instance;

  AdwExpanderRow *row;
  GtkCheckButton *checks[FM_N_ALLERGENS];
};

G_DEFINE_FINAL_TYPE (FmIngredientAllergens, fm_ingredient_allergens, ADW_TYPE_BIN)

static FmAllergenSet
read_checks (FmIngredientAllergens *self)
{
  FmAllergenSet set = 0;

  for (int i = 0; i < FM_N_ALLERGENS; i++)
    if (gtk_check_button_get_active (self->checks[i]))
      set |= FM_ALLERGEN_BIT (i);
  return set;
}

static void
say_state (FmIngredientAllergens *self)
{
  g_autofree char *names = fm_allergens_join (read_checks (self));
  const char *text = names;

  if (!adw_expander_row_get_enable_expansion (self->row))
    text = _ ("Not stated, which does not mean none");
  else if (*names == '\0')
    text = _ ("Stated: none of these");
  adw_expander_row_set_subtitle (self->row, text);
}

static void
add_check (FmIngredientAllergens *self, FmAllergen allergen)
{
  GtkWidget *row = adw_action_row_new ();
  GtkWidget *check = gtk_check_button_new ();
  const char *name = fm_allergen_name (allergen);

  gtk_widget_set_valign (check, GTK_ALIGN_CENTER);
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), name);
  adw_action_row_set_subtitle (ADW_ACTION_ROW (row),
                               fm_allergen_is_us (allergen) ? _ ("US and EU list") : _ ("EU list"));
  adw_action_row_add_prefix (ADW_ACTION_ROW (row), check);
  /* Names the box after the title as well. */
  adw_action_row_set_activatable_widget (ADW_ACTION_ROW (row), check);
  adw_expander_row_add_row (self->row, row);
  g_signal_connect_swapped (check, "toggled", G_CALLBACK (say_state), self);
  self->checks[allergen] = GTK_CHECK_BUTTON (check);
}

static void
fm_ingredient_allergens_class_init (FmIngredientAllergensClass *klass)
{
}

static void
fm_ingredient_allergens_init (FmIngredientAllergens *self)
{
  GtkWidget *group = adw_preferences_group_new ();
  GtkWidget *row = adw_expander_row_new ();

  self->row = ADW_EXPANDER_ROW (row);
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), _ ("Allergens stated on the label"));
  adw_expander_row_set_show_enable_switch (self->row, TRUE);
  adw_expander_row_set_enable_expansion (self->row, FALSE);
  fm_accessible_name_parts (row, _ ("Allergens stated on the label"));
  for (int i = 0; i < FM_N_ALLERGENS; i++)
    add_check (self, (FmAllergen)i);
  g_signal_connect_swapped (row, "notify::enable-expansion", G_CALLBACK (say_state), self);
  adw_preferences_group_add (ADW_PREFERENCES_GROUP (group), row);
  adw_bin_set_child (ADW_BIN (self), group);
  say_state (self);
}

void
fm_ingredient_allergens_show (FmIngredientAllergens *self, const FmIngredient *from)
{
  for (int i = 0; i < FM_N_ALLERGENS; i++)
    gtk_check_button_set_active (self->checks[i], (from->allergens & FM_ALLERGEN_BIT (i)) != 0);
  adw_expander_row_set_enable_expansion (self->row, from->allergens_known);
  adw_expander_row_set_expanded (self->row, FALSE);
  say_state (self);
}

void
fm_ingredient_allergens_read (FmIngredientAllergens *self, FmIngredient *to)
{
  to->allergens_known = adw_expander_row_get_enable_expansion (self->row);
  to->allergens = to->allergens_known ? read_checks (self) : 0;
}
