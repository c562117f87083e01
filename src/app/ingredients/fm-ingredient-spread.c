/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-ingredient-spread.c - a published spread of the fat, for the cook to take or leave */
#include "app/ingredients/fm-ingredient-spread.h"

#include <glib/gi18n-lib.h>

#include "core/composition/fm-fat-spread.h"

static void
use_cb (GtkButton *button, FmNumberEntry *entry)
{
  const FmFatSpread *spread = g_object_get_data (G_OBJECT (button), "spread");

  fm_number_entry_set_value (entry, fm_fat_spread_sd_g (spread));
}

static GtkWidget *
make_button (const FmFatSpread *spread, FmNumberEntry *entry)
{
  GtkWidget *button = gtk_button_new_with_label (_ ("Use"));

  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Use the published spread"), -1);
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  g_object_set_data (G_OBJECT (button), "spread", (gpointer)spread);
  g_signal_connect_object (button, "clicked", G_CALLBACK (use_cb), entry, 0);
  return button;
}

void
fm_ingredient_spread_offer (AdwPreferencesGroup *group,
                            const FmIngredient *ingredient,
                            FmNumberEntry *entry)
{
  const FmFatSpread *spread = fm_fat_spread_of (ingredient);
  GtkWidget *row = NULL;
  g_autofree char *text = NULL;

  if (spread == NULL)
    return;
  text = fm_fat_spread_describe (spread);
  row = adw_action_row_new ();
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), _ ("Published spread of this cut"));
  adw_action_row_set_subtitle (ADW_ACTION_ROW (row), text);
  adw_action_row_set_subtitle_lines (ADW_ACTION_ROW (row), 0);
  adw_action_row_add_suffix (ADW_ACTION_ROW (row), make_button (spread, entry));
  adw_preferences_group_add (group, row);
}
