/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-accessible.c - names where the toolkit gives none */
#include "app/widgets/fm-accessible.h"

#define WHAT "fm-accessible-what"

static void
name_button (GtkDropDown *drop_down)
{
  GtkWidget *button = gtk_widget_get_first_child (GTK_WIDGET (drop_down));
  gpointer selected = gtk_drop_down_get_selected_item (drop_down);
  const char *what = g_object_get_data (G_OBJECT (drop_down), WHAT);
  const char *spoken = what;
  g_autofree char *name = NULL;

  if (GTK_IS_STRING_OBJECT (selected))
    spoken = name = g_strdup_printf ("%s: %s", what, gtk_string_object_get_string (selected));
  /* Newer toolkits name a choice by what is chosen, and its button as the choice is named. */
  gtk_accessible_reset_relation (GTK_ACCESSIBLE (drop_down), GTK_ACCESSIBLE_RELATION_LABELLED_BY);
  gtk_accessible_update_property (GTK_ACCESSIBLE (drop_down), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken,
                                  -1);
  if (button != NULL)
    gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken,
                                    -1);
}

void
fm_accessible_name_drop_down (GtkDropDown *drop_down, const char *what)
{
  g_return_if_fail (GTK_IS_DROP_DOWN (drop_down));
  g_object_set_data_full (G_OBJECT (drop_down), WHAT, g_strdup (what), g_free);
  g_signal_connect (drop_down, "notify::selected-item", G_CALLBACK (name_button), NULL);
  name_button (drop_down);
}

void
fm_accessible_name_parts (GtkWidget *widget, const char *what)
{
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child)) {
    gboolean nameless = GTK_IS_LIST_VIEW (child) || GTK_IS_SWITCH (child) ||
                        (GTK_IS_LABEL (child) && *gtk_label_get_text (GTK_LABEL (child)) == '\0');

    if (nameless)
      gtk_accessible_update_property (GTK_ACCESSIBLE (child), GTK_ACCESSIBLE_PROPERTY_LABEL, what,
                                      -1);
    fm_accessible_name_parts (child, what);
  }
}
