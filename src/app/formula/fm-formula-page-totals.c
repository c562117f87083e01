/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-formula-page-totals.c - the numbers of the whole blend, as captions with values */
#include "app/formula/fm-formula-page-totals.h"

#include <glib/gi18n-lib.h>

#include "app/formula/fm-head-figures.h"
#include "app/widgets/fm-derivation-window.h"
#include "app/widgets/fm-widget.h"
#include "app/widgets/fm-wrap-layout.h"

typedef struct {
  GtkWidget *button;
  GtkLabel *caption;
  GtkLabel *value;
  GtkLabel *note;
} Cell;

struct _FmFormulaPageTotals {
  GtkWidget parent_instance;

  GtkWidget *box;
  GtkBox *cells;
  GtkLabel *gaps_label;
  Cell *parts;        /* one a figure of the table */
  FmFormula *formula; /* (nullable): shown last */
};

G_DEFINE_FINAL_TYPE (FmFormulaPageTotals, fm_formula_page_totals, GTK_TYPE_WIDGET)

static GtkLabel *
add_label (GtkWidget *box, const char *css_class)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0F);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_width_chars (GTK_LABEL (label), 9);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 13);
  gtk_widget_add_css_class (label, css_class);
  gtk_box_append (GTK_BOX (box), label);
  return GTK_LABEL (label);
}

static void
clicked_cb (FmFormulaPageTotals *self, GtkWidget *button)
{
  guint n;
  const FmHeadFigure *figures = fm_head_figures (&n);

  for (guint i = 0; i < n; i++) {
    g_autofree char *text = NULL;

    if (self->parts[i].button != button || self->formula == NULL)
      continue;
    text = fm_head_figure_derivation (&figures[i], self->formula);
    fm_derivation_window_show (GTK_WIDGET (self), gtk_label_get_text (self->parts[i].caption),
                               text);
  }
}

static void
add_cell (FmFormulaPageTotals *self, Cell *cell)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  cell->button = gtk_button_new ();
  gtk_button_set_child (GTK_BUTTON (cell->button), box);
  gtk_widget_add_css_class (cell->button, "flat");
  gtk_widget_add_css_class (cell->button, "fm-figure");
  gtk_widget_set_tooltip_text (cell->button, _ ("Where it comes from"));
  g_signal_connect_object (cell->button, "clicked", G_CALLBACK (clicked_cb), self,
                           G_CONNECT_SWAPPED);
  cell->caption = add_label (box, "caption");
  cell->value = add_label (box, "heading");
  cell->note = add_label (box, "caption");
  gtk_widget_add_css_class (GTK_WIDGET (cell->caption), "dim-label");
  gtk_widget_add_css_class (GTK_WIDGET (cell->value), "numeric");
  gtk_widget_add_css_class (GTK_WIDGET (cell->note), "dim-label");
  gtk_box_append (self->cells, cell->button);
}

static void
show_cell (Cell *cell, const FmHeadText *text)
{
  g_autofree char *spoken = g_strdup_printf ("%s: %s %s", text->caption, text->value,
                                             text->note != NULL ? text->note : "");

  fm_widget_set_label (cell->caption, text->caption);
  fm_widget_set_label (cell->value, text->value);
  fm_widget_set_label (cell->note, text->note != NULL ? text->note : "");
  gtk_widget_set_visible (GTK_WIDGET (cell->note), text->note != NULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (cell->button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  spoken, -1);
}

static void
show_figures (FmFormulaPageTotals *self, const FmFormula *formula, const FmAnalysis *analysis)
{
  guint n;
  const FmHeadFigure *figures = fm_head_figures (&n);

  for (guint i = 0; i < n; i++) {
    g_auto (FmHeadText) text = { NULL, NULL, NULL };
    const gboolean is_shown = fm_head_figure_say (&figures[i], formula, analysis, &text);

    gtk_widget_set_visible (self->parts[i].button, is_shown);
    if (is_shown)
      show_cell (&self->parts[i], &text);
  }
}

/* The figures of this page that some of the mass lacks, with how much and whose. */
static void
show_gaps (FmFormulaPageTotals *self, const FmFormula *formula, const FmAnalysis *analysis)
{
  g_autofree char *text = fm_head_figures_gaps (formula, analysis);

  fm_widget_set_label (self->gaps_label, text);
  gtk_widget_set_visible (GTK_WIDGET (self->gaps_label), *text != '\0');
}

static void
fm_formula_page_totals_dispose (GObject *object)
{
  g_clear_pointer (&FM_FORMULA_PAGE_TOTALS (object)->formula, fm_formula_free);
  fm_widget_drop_template (GTK_WIDGET (object), FM_TYPE_FORMULA_PAGE_TOTALS);
  g_clear_pointer (&FM_FORMULA_PAGE_TOTALS (object)->parts, g_free);
  G_OBJECT_CLASS (fm_formula_page_totals_parent_class)->dispose (object);
}

static void
fm_formula_page_totals_class_init (FmFormulaPageTotalsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_formula_page_totals_dispose;
  g_type_ensure (FM_TYPE_WRAP_LAYOUT);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/formula/fm-formula-page-totals.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmFormulaPageTotals, box);
  gtk_widget_class_bind_template_child (widget_class, FmFormulaPageTotals, cells);
  gtk_widget_class_bind_template_child (widget_class, FmFormulaPageTotals, gaps_label);
}

static void
fm_formula_page_totals_init (FmFormulaPageTotals *self)
{
  guint n;

  fm_head_figures (&n);
  self->parts = g_new0 (Cell, n);
  gtk_widget_init_template (GTK_WIDGET (self));
  for (guint i = 0; i < n; i++)
    add_cell (self, &self->parts[i]);
}

void
fm_formula_page_totals_update (FmFormulaPageTotals *self,
                               const FmFormula *formula,
                               const FmAnalysis *analysis)
{
  g_return_if_fail (FM_IS_FORMULA_PAGE_TOTALS (self));
  g_clear_pointer (&self->formula, fm_formula_free);
  self->formula = fm_formula_copy (formula);
  show_figures (self, formula, analysis);
  show_gaps (self, formula, analysis);
}
