/* fm-formula-page-totals.c - the numbers of the whole blend, as captions with values */
#include "app/fm-formula-page-totals.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "app/fm-formula-line-mass.h"
#include "app/fm-preferences.h"
#include "core/fm-number.h"

/* Two-sided 95 % of the normal distribution. */
#define COVERAGE_FACTOR_95 1.96

enum {
  CELL_TOTAL,
  CELL_PATTY,
  CELL_BATCH,
  CELL_LEAN_POINT,
  CELL_FAT,
  CELL_LEAN,
  CELL_PROTEIN,
  CELL_MOISTURE,
  CELL_ENERGY,
  CELL_COST,
  N_CELLS,
};

typedef struct {
  GtkWidget *child;
  GtkLabel *caption;
  GtkLabel *value;
  GtkLabel *note;
} Cell;

struct _FmFormulaPageTotals {
  GtkWidget parent_instance;

  GtkFlowBox *cells;
  Cell parts[N_CELLS];
};

G_DEFINE_FINAL_TYPE (FmFormulaPageTotals, fm_formula_page_totals, GTK_TYPE_WIDGET)

static GtkLabel *
add_label (GtkWidget *box, const char *css_class)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0F);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_width_chars (GTK_LABEL (label), 12);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 16);
  gtk_widget_add_css_class (label, css_class);
  gtk_box_append (GTK_BOX (box), label);
  return GTK_LABEL (label);
}

static void
add_cell (FmFormulaPageTotals *self, guint index)
{
  Cell *cell = &self->parts[index];
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  cell->child = gtk_flow_box_child_new ();
  gtk_widget_set_focusable (cell->child, FALSE);
  cell->caption = add_label (box, "caption");
  cell->value = add_label (box, "heading");
  cell->note = add_label (box, "caption");
  gtk_widget_add_css_class (GTK_WIDGET (cell->caption), "dim-label");
  gtk_widget_add_css_class (GTK_WIDGET (cell->value), "numeric");
  gtk_widget_add_css_class (GTK_WIDGET (cell->note), "dim-label");
  gtk_flow_box_child_set_child (GTK_FLOW_BOX_CHILD (cell->child), box);
  gtk_flow_box_append (self->cells, cell->child);
}

static void
set_label (GtkLabel *label, const char *text)
{
  if (g_strcmp0 (gtk_label_get_text (label), text) != 0)
    gtk_label_set_text (label, text);
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

  set_label (cell->caption, caption);
  set_label (cell->value, value);
  set_label (cell->note, note != NULL ? note : "");
  gtk_widget_set_visible (GTK_WIDGET (cell->note), note != NULL);
  gtk_widget_set_visible (cell->child, TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (cell->child), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  spoken, -1);
}

static void
show_masses (FmFormulaPageTotals *self, const FmFormula *formula, const FmAnalysis *analysis)
{
  const FmBrief *brief = formula->brief;
  const double patties = analysis->total_g / brief->patty_mass_g;
  g_autofree char *total = fm_mass_text (analysis->total_g, 1);
  g_autofree char *patty = fm_mass_text (brief->patty_mass_g, 1);
  g_autofree char *batch = fm_mass_text (brief->patty_mass_g * brief->n_patties, 1);
  g_autofree char *made = fm_number_format (patties, 1);
  /* Translators: how many patties the lines make. */
  g_autofree char *note = g_strdup_printf (_ ("makes %s patties"), made);
  g_autofree char *caption = g_strdup_printf (
      ngettext ("For %d patty", "For %d patties", (gulong)brief->n_patties), brief->n_patties);

  show_cell (self, CELL_TOTAL, _ ("Total of the lines"), total, note);
  show_cell (self, CELL_PATTY, _ ("Per patty"), patty, NULL);
  show_cell (self, CELL_BATCH, caption, batch, NULL);
}

/* Says how much of the blend an incomplete figure speaks for, and who lacks it. */
static char *
coverage_note (const FmFormula *formula, const FmAnalysis *analysis, FmNutrient nutrient)
{
  const FmAmount *amount = &analysis->amounts[nutrient];
  g_auto (GStrv) missing = NULL;
  g_autofree char *names = NULL;
  g_autofree char *covered = NULL;

  if (analysis->total_g <= 0.0 || !isnan (fm_analysis_value (analysis, nutrient)))
    return NULL;
  missing = fm_analysis_missing (formula, nutrient);
  names = g_strjoinv (", ", missing);
  covered = fm_number_format (amount->covered_pct, 0);
  return g_strdup_printf (_ ("known for %s %% of the mass; missing: %s"), covered, names);
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
  return g_strdup_printf (_ ("at least %s"), known);
}

static void
show_nutrient (FmFormulaPageTotals *self,
               guint index,
               const char *caption,
               FmNutrient nutrient,
               const FmFormula *formula,
               const FmAnalysis *analysis)
{
  g_autofree char *value = nutrient_text (analysis, nutrient, 1, "%");
  g_autofree char *note = coverage_note (formula, analysis, nutrient);

  show_cell (self, index, caption, value, note);
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
  return g_strdup_printf (_ ("95 %% interval %s to %s %%"), low, high);
}

static void
show_fat (FmFormulaPageTotals *self, const FmFormula *formula, const FmAnalysis *analysis)
{
  g_autofree char *value = nutrient_text (analysis, FM_NUTRIENT_FAT, 1, "%");
  g_autofree char *lean = fm_number_format_unit (analysis->lean_pct, 1, "%");
  g_autofree char *point = fm_lean_point_format (analysis->fat_pct);
  g_autofree char *declared = fm_lean_point_format (analysis->declared_fat_pct);
  g_autofree char *note = coverage_note (formula, analysis, FM_NUTRIENT_FAT);
  g_autofree char *declared_note = NULL;

  if (note == NULL)
    note = interval_note (analysis);
  if (!isnan (analysis->declared_fat_pct) && g_strcmp0 (declared, point) != 0)
    declared_note = g_strdup_printf (_ ("declared: %s"), declared);
  show_cell (self, CELL_FAT, _ ("Fat by analysis"), value, note);
  show_cell (self, CELL_LEAN, _ ("Lean by analysis"), lean, NULL);
  show_cell (self, CELL_LEAN_POINT, _ ("Lean point"), point, declared_note);
}

static void
show_energy (FmFormulaPageTotals *self, const FmFormula *formula, const FmAnalysis *analysis)
{
  g_autofree char *value = nutrient_text (analysis, FM_NUTRIENT_ENERGY_KCAL, 0, _ ("kcal/100 g"));
  g_autofree char *note = coverage_note (formula, analysis, FM_NUTRIENT_ENERGY_KCAL);

  if (note == NULL && analysis->total_g > 0.0) {
    const double kcal = fm_analysis_value (analysis, FM_NUTRIENT_ENERGY_KCAL) *
                        formula->brief->patty_mass_g / 100.0;
    g_autofree char *patty = fm_number_format_unit (kcal, 0, _ ("kcal"));

    note = g_strdup_printf (_ ("%s per raw patty"), patty);
  }
  show_cell (self, CELL_ENERGY, _ ("Energy, raw"), value, note);
}

static void
show_cost (FmFormulaPageTotals *self, const FmFormula *formula, const FmAnalysis *analysis)
{
  g_autofree char *currency = fm_preferences_currency ();
  g_autofree char *kilogram = NULL;
  g_autofree char *patty = NULL;
  g_autofree char *value = NULL;
  g_autofree char *note = NULL;

  if (isnan (analysis->cost_per_kg)) {
    gtk_widget_set_visible (self->parts[CELL_COST].child, FALSE);
    return;
  }
  kilogram = fm_number_format_unit (analysis->cost_per_kg, 2, currency);
  patty = fm_number_format_unit (analysis->cost_per_kg * formula->brief->patty_mass_g / 1000.0, 2,
                                 currency);
  value = g_strdup_printf (_ ("%s per kg"), kilogram);
  note = g_strdup_printf (_ ("%s per raw patty"), patty);
  show_cell (self, CELL_COST, _ ("Cost, edible"), value, note);
}

static void
fm_formula_page_totals_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), FM_TYPE_FORMULA_PAGE_TOTALS);
  G_OBJECT_CLASS (fm_formula_page_totals_parent_class)->dispose (object);
}

static void
fm_formula_page_totals_class_init (FmFormulaPageTotalsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_formula_page_totals_dispose;
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/fm-formula-page-totals.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmFormulaPageTotals, cells);
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
  show_masses (self, formula, analysis);
  show_fat (self, formula, analysis);
  show_nutrient (self, CELL_PROTEIN, _ ("Protein"), FM_NUTRIENT_PROTEIN, formula, analysis);
  show_nutrient (self, CELL_MOISTURE, _ ("Moisture"), FM_NUTRIENT_WATER, formula, analysis);
  show_energy (self, formula, analysis);
  show_cost (self, formula, analysis);
}
