/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-text-grid.c - small tables of text for numbers that also stand in a curve */
#include "app/widgets/fm-text-grid.h"

void
fm_text_grid_clear (GtkGrid *grid)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (grid))) != NULL)
    gtk_grid_remove (grid, child);
}

static GtkWidget *
cell_new (const char *text, gboolean is_first, gboolean is_heading)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), is_first ? 0.0f : 1.0f);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_widget_add_css_class (label, is_heading ? "caption-heading" : "numeric");
  return label;
}

void
fm_text_grid_add_row (GtkGrid *grid, const char *const *texts, guint n_texts, gboolean is_heading)
{
  GtkWidget *last = gtk_widget_get_last_child (GTK_WIDGET (grid));
  int row = 0;

  if (last != NULL) {
    gtk_grid_query_child (grid, last, NULL, &row, NULL, NULL);
    row++;
  }
  for (guint i = 0; i < n_texts; i++)
    gtk_grid_attach (grid, cell_new (texts[i], i == 0, is_heading), (int)i, row, 1, 1);
}
