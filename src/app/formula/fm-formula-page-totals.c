/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-formula-page-totals.c - the numbers of the whole blend, as captions with values */
#include "app/formula/fm-formula-page-totals.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "app/session/fm-notebook-settings.h"
#include "app/widgets/fm-derivation-window.h"
#include "app/widgets/fm-widget.h"
#include "app/widgets/fm-wrap-layout.h"
#include "core/base/fm-number.h"
#include "core/formula/fm-derivation.h"

/* Two-sided 95 % of the normal distribution. */
#define COVERAGE_FACTOR_95 1.96

enum {
  CELL_TOTAL,
  CELL_BATCH,
  CELL_FAT,
  CELL_LEAN,
  CELL_PROTEIN,
  CELL_MOISTURE,
  CELL_ENERGY,
  CELL_COST,
  CELL_TARGETS,
  N_CELLS,
};

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
  Cell parts[N_CELLS];
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

static char *
derivation_text (const FmFormula *formula, guint index)
{
  g_autoptr (FmAnalysis) analysis = fm_analysis_new (formula);

  switch (index) {
  case CELL_FAT:
    return fm_derivation_nutrient (formula, analysis, FM_NUTRIENT_FAT);
  case CELL_LEAN:
    return fm_derivation_lean (formula, analysis);
  case CELL_PROTEIN:
    return fm_derivation_nutrient (formula, analysis, FM_NUTRIENT_PROTEIN);
  case CELL_MOISTURE:
    return fm_derivation_nutrient (formula, analysis, FM_NUTRIENT_WATER);
  case CELL_ENERGY:
    return fm_derivation_nutrient (formula, analysis, FM_NUTRIENT_ENERGY_KCAL);
  case CELL_COST:
    return fm_derivation_cost (formula, analysis);
  default:
    return fm_derivation_mass (formula, analysis);
  }
}

static void
clicked_cb (FmFormulaPageTotals *self, GtkWidget *button)
{
  for (guint i = 0; i < N_CELLS; i++) {
    g_autofree char *text = NULL;

    if (self->parts[i].button != button || self->formula == NULL)
      continue;
    text = derivation_text (self->formula, i);
    fm_derivation_window_show (GTK_WIDGET (self), gtk_label_get_text (self->parts[i].caption),
                               text);
  }
}

static void
add_cell (FmFormulaPageTotals *self, guint index)
{
  Cell *cell = &self->parts[index];
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
show_cell (FmFormulaPageTotals *self,
           guint index,
           const char *caption,
           const char *value,
           const char *note)
{
  Cell *cell = &self->parts[index];
  g_autofree char *spoken = g_strdup_printf ("%s: %s %s", caption, value, note != NULL ? note : "");

  fm_widget_set_label (cell->caption, caption);
  fm_widget_set_label (cell->value, value);
  fm_widget_set_label (cell->note, note != NULL ? note : "");
  gtk_widget_set_visible (GTK_WIDGET (cell->note), note != NULL);
  gtk_widget_set_visible (cell->button, TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (cell->button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  spoken, -1);
}

static void
show_masses (FmFormulaPageTotals *self, const FmFormula *formula, const FmAnalysis *analysis)
{
  const FmBrief *brief = formula->brief;
  const double patties = analysis->total_g / brief->patty_mass_g;
  g_autofree char *total = fm_notebook_text (FM_MEASURE_MASS, analysis->total_g, 1);
  g_autofree char *patty = fm_notebook_text (FM_MEASURE_MASS, brief->patty_mass_g, 1);
  g_autofree char *batch =
      fm_notebook_text (FM_MEASURE_MASS, brief->patty_mass_g * brief->n_patties, 1);
  g_autofree char *made = fm_number_format (patties, 1);
  /* Translators: how many patties the lines make. */
  g_autofree char *note = g_strdup_printf (_ ("makes %s patties"), made);
  g_autofree char *each = g_strdup_printf (_ ("%s per patty"), patty);
  g_autofree char *caption = g_strdup_printf (
      ngettext ("For %d patty", "For %d patties", (gulong)brief->n_patties), brief->n_patties);

  show_cell (self, CELL_TOTAL, _ ("Total"), total, note);
  show_cell (self, CELL_BATCH, caption, batch, each);
}

static char *
nutrient_text (const FmAnalysis *analysis, FmNutrient nutrient, int decimals, const char *unit)
{
  const double value = fm_analysis_value (analysis, nutrient);
  const FmAmount *amount = &analysis->amounts[nutrient];
  g_autofree char *known = NULL;

  if (!isnan (value) || !(amount->covered_pct > 0.0))
    return fm_number_format_unit (value, decimals, unit);
  known = fm_number_format_unit (amount->known_g_per_100g, decimals, unit);
  /* Translators: the known part of a figure; the rest is not known. */
  return g_strdup_printf (_ ("≥ %s"), known);
}

static void
show_nutrient (FmFormulaPageTotals *self,
               guint index,
               const char *caption,
               FmNutrient nutrient,
               const FmAnalysis *analysis)
{
  g_autofree char *value = nutrient_text (analysis, nutrient, 1, "%");

  show_cell (self, index, caption, value, NULL);
}

static char *
interval_note (const FmAnalysis *analysis)
{
  const double half = COVERAGE_FACTOR_95 * analysis->fat_u_pct;
  g_autofree char *low = NULL;
  g_autofree char *high = NULL;

  if (isnan (half))
    return NULL;
  low = fm_number_format (MAX (0.0, analysis->fat_pct - half), 1);
  high = fm_number_format (MIN (100.0, analysis->fat_pct + half), 1);
  return g_strdup_printf (_ ("95 %%: %s to %s %%"), low, high);
}

static void
show_fat (FmFormulaPageTotals *self, const FmAnalysis *analysis)
{
  g_autofree char *value = nutrient_text (analysis, FM_NUTRIENT_FAT, 1, "%");
  g_autofree char *lean = fm_number_format_unit (analysis->lean_pct, 1, "%");
  g_autofree char *point = fm_lean_point_format (analysis->fat_pct);
  g_autofree char *declared = fm_lean_point_format (analysis->declared_fat_pct);
  g_autofree char *note = interval_note (analysis);
  g_autofree char *lean_text = NULL;
  g_autofree char *declared_note = NULL;

  if (!isnan (analysis->declared_fat_pct) && g_strcmp0 (declared, point) != 0)
    declared_note = g_strdup_printf (_ ("declared: %s"), declared);
  show_cell (self, CELL_FAT, _ ("Fat, calculated"), value, note);
  /* Translators: chemical lean, then the same as a lean point. */
  lean_text =
      isnan (analysis->lean_pct) ? g_strdup (lean) : g_strdup_printf (_ ("%s = %s"), lean, point);
  show_cell (self, CELL_LEAN, _ ("Lean, calculated"), lean_text, declared_note);
}

static void
show_energy (FmFormulaPageTotals *self, const FmFormula *formula, const FmAnalysis *analysis)
{
  const double kcal = fm_analysis_value (analysis, FM_NUTRIENT_ENERGY_KCAL);
  g_autofree char *value = nutrient_text (analysis, FM_NUTRIENT_ENERGY_KCAL, 0, _ ("kcal"));
  g_autofree char *patty =
      fm_number_format_unit (kcal * formula->brief->patty_mass_g / 100.0, 0, _ ("kcal"));
  g_autofree char *note = g_strdup_printf (_ ("%s per patty"), patty);

  show_cell (self, CELL_ENERGY, _ ("Energy/100 g, raw"), value, isnan (kcal) ? NULL : note);
}

static void
show_targets (FmFormulaPageTotals *self, const FmFormula *formula, const FmAnalysis *analysis)
{
  g_autofree char *value = NULL;
  guint n_set = 0;
  guint n_met = 0;

  for (guint i = 0; i < FM_N_TARGETS; i++) {
    const double now = fm_analysis_target_value (analysis, formula->brief, (FmTargetKind)i);
    const FmBandState state = fm_band_state (&formula->brief->bands[i], now);

    n_set += state != FM_BAND_NONE;
    n_met += state == FM_BAND_WITHIN;
  }
  if (n_set == 0) {
    gtk_widget_set_visible (self->parts[CELL_TARGETS].button, FALSE);
    return;
  }
  /* Translators: how many target bands the blend meets, of how many that are set. */
  value = g_strdup_printf (_ ("%u of %u met"), n_met, n_set);
  show_cell (self, CELL_TARGETS, _ ("Targets"), value, NULL);
}

/* The figures of this page that some of the mass lacks, with how much and whose. */
static void
show_gaps (FmFormulaPageTotals *self, const FmFormula *formula, const FmAnalysis *analysis)
{
  static const FmNutrient shown[] = { FM_NUTRIENT_FAT, FM_NUTRIENT_PROTEIN, FM_NUTRIENT_WATER,
                                      FM_NUTRIENT_ENERGY_KCAL };
  g_autoptr (GPtrArray) gaps = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; analysis->total_g > 0.0 && i < G_N_ELEMENTS (shown); i++) {
    g_auto (GStrv) missing = fm_analysis_missing (formula, shown[i]);
    g_autofree char *names = g_strjoinv (", ", missing);
    g_autofree char *covered = fm_number_format (analysis->amounts[shown[i]].covered_pct, 0);
    g_autofree char *gap =
        g_strdup_printf (_ ("known for %s %% of the mass, not for %s."), covered, names);
    const gboolean again =
        gaps->len > 0 && g_str_equal (g_ptr_array_index (gaps, gaps->len - 1), gap);

    if (missing[0] == NULL)
      continue;
    if (again)
      g_string_truncate (text, text->len - strlen (gap) - 2);
    g_string_append_printf (text, "%s%s: %s",
                            again           ? ", "
                            : text->len > 0 ? " "
                                            : "",
                            fm_nutrient_name (shown[i]), gap);
    g_ptr_array_add (gaps, g_steal_pointer (&gap));
  }
  fm_widget_set_label (self->gaps_label, text->str);
  gtk_widget_set_visible (GTK_WIDGET (self->gaps_label), text->len > 0);
}

static void
show_cost (FmFormulaPageTotals *self, const FmFormula *formula, const FmAnalysis *analysis)
{
  const char *currency = fm_notebook_units ()->currency;
  g_autofree char *kilogram = NULL;
  g_autofree char *patty = NULL;
  g_autofree char *value = NULL;
  g_autofree char *note = NULL;

  if (isnan (analysis->cost_per_kg)) {
    gtk_widget_set_visible (self->parts[CELL_COST].button, FALSE);
    return;
  }
  kilogram = fm_number_format_unit (analysis->cost_per_kg, 2, currency);
  patty = fm_number_format_unit (analysis->cost_per_kg * formula->brief->patty_mass_g / 1000.0, 2,
                                 currency);
  value = g_strdup_printf (_ ("%s per kg"), kilogram);
  note = g_strdup_printf (_ ("%s per patty"), patty);
  show_cell (self, CELL_COST, _ ("Cost, edible"), value, note);
}

static void
fm_formula_page_totals_dispose (GObject *object)
{
  g_clear_pointer (&FM_FORMULA_PAGE_TOTALS (object)->formula, fm_formula_free);
  fm_widget_drop_template (GTK_WIDGET (object), FM_TYPE_FORMULA_PAGE_TOTALS);
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
  gtk_widget_init_template (GTK_WIDGET (self));
  for (guint i = 0; i < N_CELLS; i++)
    add_cell (self, i);
}

void
fm_formula_page_totals_update (FmFormulaPageTotals *self,
                               const FmFormula *formula,
                               const FmAnalysis *analysis)
{
  g_return_if_fail (FM_IS_FORMULA_PAGE_TOTALS (self));
  g_clear_pointer (&self->formula, fm_formula_free);
  self->formula = fm_formula_copy (formula);
  show_masses (self, formula, analysis);
  show_fat (self, analysis);
  show_nutrient (self, CELL_PROTEIN, _ ("Protein"), FM_NUTRIENT_PROTEIN, analysis);
  show_nutrient (self, CELL_MOISTURE, _ ("Moisture"), FM_NUTRIENT_WATER, analysis);
  show_energy (self, formula, analysis);
  show_cost (self, formula, analysis);
  show_targets (self, formula, analysis);
  show_gaps (self, formula, analysis);
}
