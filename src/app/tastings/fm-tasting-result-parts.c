/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-result-parts.c - what the sections of a reading are made of */
#include "app/tastings/fm-tasting-result-sections.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define MAX_TICKS 9

static GtkWidget *
text_new (const char *text, const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_selectable (GTK_LABEL (label), css_class == NULL);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);
  return label;
}

void
fm_tasting_result_add_heading (GtkBox *box, const char *text)
{
  GtkWidget *label = text_new (text, "heading");

  gtk_widget_set_margin_top (label, 12);
  gtk_box_append (box, label);
}

void
fm_tasting_result_add_sentence (GtkBox *box, const char *text)
{
  gtk_box_append (box, text_new (text, NULL));
}

static GtkWidget *
scroller_new (GtkWidget *child)
{
  GtkWidget *scroller = gtk_scrolled_window_new ();

  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_AUTOMATIC,
                                  GTK_POLICY_NEVER);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), child);
  return scroller;
}

/* A folded scroller that is the very child of an expander swallows Tab; the box is in between. */
static void
add_expander (GtkBox *box, const char *title, GtkWidget *child)
{
  GtkWidget *expander = gtk_expander_new (title);
  GtkWidget *inside = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  gtk_accessible_update_property (GTK_ACCESSIBLE (expander), GTK_ACCESSIBLE_PROPERTY_LABEL, title,
                                  -1);
  gtk_box_append (GTK_BOX (inside), child);
  gtk_expander_set_child (GTK_EXPANDER (expander), inside);
  gtk_box_append (box, expander);
}

static GtkWidget *
grid_new (void)
{
  GtkWidget *grid = gtk_grid_new ();

  gtk_grid_set_column_spacing (GTK_GRID (grid), 12);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 4);
  gtk_widget_set_margin_top (grid, 6);
  gtk_widget_set_margin_bottom (grid, 12);
  return grid;
}

GtkGrid *
fm_tasting_result_add_table (GtkBox *box, const char *title)
{
  GtkWidget *grid = grid_new ();

  add_expander (box, title, scroller_new (grid));
  return GTK_GRID (grid);
}

GtkGrid *
fm_tasting_result_add_method (GtkBox *box, char *text)
{
  GtkWidget *label = text_new (text, "dim-label");
  GtkWidget *grid = grid_new ();
  GtkWidget *inside = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  gtk_widget_set_margin_top (label, 6);
  gtk_box_append (GTK_BOX (inside), label);
  gtk_box_append (GTK_BOX (inside), scroller_new (grid));
  add_expander (box, _ ("Method and source"), inside);
  g_free (text);
  return GTK_GRID (grid);
}

FmChartIntervalAxis
fm_tasting_result_rank_axis (const FmRankResult *rank)
{
  FmChartIntervalAxis axis = { .low_words = _ ("← liked more"), .high_words = _ ("liked less →") };
  double low = INFINITY;
  double high = -INFINITY;

  for (guint i = 0; i < rank->n_samples; i++) {
    low = MIN (low, rank->lowest_sum[i]);
    high = MAX (high, rank->highest_sum[i]);
  }
  if (high > low)
    fm_chart_scale_init_ends (&axis.scale, low, high, (guint)(high - low), MAX_TICKS);
  return axis;
}

FmChartIntervalAxis
fm_tasting_result_liking_axis (void)
{
  FmChartIntervalAxis axis = { .low_words = _ ("← liked less"), .high_words = _ ("liked more →") };

  fm_chart_scale_init_ends (&axis.scale, 1, 9, 8, MAX_TICKS);
  return axis;
}

void
fm_tasting_result_add_chart (GtkBox *box, GtkWidget *chart)
{
  gtk_box_append (box, scroller_new (chart));
}

char *
fm_tasting_result_sample (const FmTastingReading *reading, guint column)
{
  /* TRANSLATORS: code of a sample, its name */
  return g_strdup_printf (_ ("%u – %s"), reading->code[column], reading->labels[column]);
}
