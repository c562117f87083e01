/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-versions-page-diff.c - what changed between a version and its parent, in lines and numbers */
#include "app/versions/fm-versions-page-diff.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/session/fm-notebook-settings.h"
#include "core/base/fm-number.h"
#include "store/fm-tastings.h"

#define SAME_G 0.005 /* masses are shown to 0.1 g, so smaller steps are none */

struct _FmVersionsPageChange {
  GObject parent_instance;

  char *name;
  const char *kind;
  char *text;
  char *values[3];
};

G_DEFINE_FINAL_TYPE (FmVersionsPageChange, fm_versions_page_change, G_TYPE_OBJECT)

static void
fm_versions_page_change_finalize (GObject *object)
{
  FmVersionsPageChange *self = FM_VERSIONS_PAGE_CHANGE (object);

  g_free (self->name);
  g_free (self->text);
  for (guint i = 0; i < G_N_ELEMENTS (self->values); i++)
    g_free (self->values[i]);
  G_OBJECT_CLASS (fm_versions_page_change_parent_class)->finalize (object);
}

static void
fm_versions_page_change_class_init (FmVersionsPageChangeClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = fm_versions_page_change_finalize;
}

static void
fm_versions_page_change_init (FmVersionsPageChange *self)
{
}

const char *
fm_versions_page_change_get_name (FmVersionsPageChange *self)
{
  return self->name;
}

const char *
fm_versions_page_change_get_kind (FmVersionsPageChange *self)
{
  return self->kind;
}

const char *
fm_versions_page_change_get_text (FmVersionsPageChange *self)
{
  return self->text;
}

const char *
fm_versions_page_change_get_value (FmVersionsPageChange *self, guint column)
{
  return self->values[column];
}

/* "500.0 g (25.0 %)" */
static char *
mass_and_share (const FmFormula *formula, guint index)
{
  g_autofree char *mass =
      fm_notebook_text (FM_MEASURE_MASS, fm_formula_line (formula, index)->mass_g, 1);
  g_autofree char *share = fm_number_format_unit (fm_formula_share_pct (formula, index), 1, "%");

  return g_strdup_printf ("%s (%s)", mass, share);
}

static char *
signed_text (char *text, double value)
{
  char *result = value > 0 ? g_strconcat ("+", text, NULL) : g_strdup (text);

  g_free (text);
  return result;
}

static gboolean
find_line (const FmFormula *formula, const FmFormulaLine *wanted, guint *found)
{
  for (guint i = 0; i < fm_formula_n_lines (formula); i++) {
    if (g_str_equal (fm_formula_line (formula, i)->id, wanted->id)) {
      *found = i;
      return TRUE;
    }
  }
  return FALSE;
}

static FmVersionsPageChange *
line_change (const char *kind, const char *name, char *text)
{
  FmVersionsPageChange *change = g_object_new (FM_TYPE_VERSIONS_PAGE_CHANGE, NULL);

  change->kind = kind;
  change->name = g_strdup (name);
  change->text = text;
  return change;
}

/* NULL when nothing that is shown differs. */
static FmVersionsPageChange *
compare_line (const FmFormula *formula, guint index, const FmFormula *parent, guint parent_index)
{
  const FmFormulaLine *line = fm_formula_line (formula, index);
  const FmFormulaLine *old = fm_formula_line (parent, parent_index);
  double difference_g = line->mass_g - old->mass_g;
  gboolean same_share = fabs (fm_formula_share_pct (formula, index) -
                              fm_formula_share_pct (parent, parent_index)) < 0.05;
  g_autofree char *now = mass_and_share (formula, index);
  g_autofree char *before = mass_and_share (parent, parent_index);
  g_autofree char *difference = NULL;

  if (!g_str_equal (line->ingredient->name, old->ingredient->name) ||
      !g_str_equal (line->ingredient->id, old->ingredient->id))
    return line_change (
        _ ("Changed"), line->ingredient->name,
        g_strdup_printf (_ ("%s in place of %s, %s"), now, old->ingredient->name, before));
  if (fabs (difference_g) >= SAME_G) {
    difference = signed_text (fm_notebook_text (FM_MEASURE_MASS, difference_g, 1), difference_g);
    return line_change (_ ("Changed"), line->ingredient->name,
                        g_strdup_printf (_ ("%s, before %s: %s"), now, before, difference));
  }
  if (!fm_composition_equal (&line->ingredient->composition, &old->ingredient->composition))
    return line_change (_ ("Changed"), line->ingredient->name,
                        g_strdup_printf (_ ("%s, with another composition"), now));
  if (!same_share)
    return line_change (_ ("Share changed"), line->ingredient->name,
                        g_strdup_printf (_ ("%s, before %s: same mass"), now, before));
  return NULL;
}

GPtrArray *
fm_versions_page_diff_lines (const FmFormula *formula, const FmFormula *parent, guint *n_same)
{
  GPtrArray *changes = g_ptr_array_new_with_free_func (g_object_unref);

  *n_same = 0;
  for (guint i = 0; i < fm_formula_n_lines (formula); i++) {
    const FmFormulaLine *line = fm_formula_line (formula, i);
    FmVersionsPageChange *change;
    guint parent_index;

    if (parent == NULL || !find_line (parent, line, &parent_index))
      change = line_change (_ ("Added"), line->ingredient->name, mass_and_share (formula, i));
    else
      change = compare_line (formula, i, parent, parent_index);
    if (change != NULL)
      g_ptr_array_add (changes, change);
    else
      (*n_same)++;
  }
  for (guint i = 0; parent != NULL && i < fm_formula_n_lines (parent); i++) {
    const FmFormulaLine *line = fm_formula_line (parent, i);
    guint index;

    if (!find_line (formula, line, &index))
      g_ptr_array_add (
          changes, line_change (_ ("Removed"), line->ingredient->name, mass_and_share (parent, i)));
  }
  return changes;
}

/* NULL when neither plans it. */
static FmVersionsPageChange *
compare_field (const FmProcess *process, const FmProcess *parent, FmProcessField field)
{
  const char *name = fm_process_field_name (field);
  g_autofree char *now = fm_process_field_text (process, field, fm_notebook_units ());
  g_autofree char *before =
      parent != NULL ? fm_process_field_text (parent, field, fm_notebook_units ()) : NULL;

  if (now == NULL && before == NULL)
    return NULL;
  if (now == NULL)
    return line_change (_ ("Removed"), name, g_steal_pointer (&before));
  if (parent == NULL || fm_process_field_equal (process, parent, field))
    return line_change ("", name, g_steal_pointer (&now));
  if (before == NULL)
    return line_change (_ ("Added"), name, g_steal_pointer (&now));
  return line_change (_ ("Changed"), name, g_strdup_printf (_ ("%s, before: %s"), now, before));
}

GPtrArray *
fm_versions_page_diff_process (const FmProcess *process, const FmProcess *parent)
{
  GPtrArray *changes = g_ptr_array_new_with_free_func (g_object_unref);

  for (int i = 0; i < FM_N_PROCESS_FIELDS; i++) {
    FmVersionsPageChange *change = compare_field (process, parent, (FmProcessField)i);

    if (change != NULL)
      g_ptr_array_add (changes, change);
  }
  return changes;
}

static void
add_number (
    GPtrArray *numbers, const char *name, double now, double before, int decimals, const char *unit)
{
  FmVersionsPageChange *change = g_object_new (FM_TYPE_VERSIONS_PAGE_CHANGE, NULL);
  double step = pow (10, -decimals);
  double difference = now - before;

  /* A difference that the shown figures do not have is none. */
  if (fabs (difference) < step / 2)
    difference = 0;
  change->name = g_strdup_printf ("%s, %s", name, unit);
  change->values[0] = fm_number_format (now, decimals);
  change->values[1] = fm_number_format (before, decimals);
  change->values[2] = signed_text (fm_number_format (difference, decimals), difference);
  g_ptr_array_add (numbers, change);
}

/* The first row of the numbers says what the columns are. */
static void
add_headings (GPtrArray *numbers)
{
  FmVersionsPageChange *headings = g_object_new (FM_TYPE_VERSIONS_PAGE_CHANGE, NULL);

  headings->values[0] = g_strdup (_ ("This"));
  headings->values[1] = g_strdup (_ ("Parent"));
  headings->values[2] = g_strdup (_ ("Change"));
  g_ptr_array_add (numbers, headings);
}

static double
value_of (const FmAnalysis *analysis, FmNutrient nutrient)
{
  return analysis != NULL ? fm_analysis_value (analysis, nutrient) : NAN;
}

static GPtrArray *
compare_numbers (const FmFormula *formula, const FmFormula *parent, const char *currency)
{
  GPtrArray *numbers = g_ptr_array_new_with_free_func (g_object_unref);
  g_autoptr (FmAnalysis) now = fm_analysis_new (formula);
  g_autoptr (FmAnalysis) before = parent != NULL ? fm_analysis_new (parent) : NULL;
  g_autofree char *cost_unit = g_strdup_printf (_ ("%s per kg"), currency);
  const struct {
    const char *name;
    FmNutrient nutrient;
    int decimals;
    const char *unit;
  } rows[] = {
    { _ ("Protein"), FM_NUTRIENT_PROTEIN, 1, "%" },
    { _ ("Moisture"), FM_NUTRIENT_WATER, 1, "%" },
    { _ ("Energy"), FM_NUTRIENT_ENERGY_KCAL, 0, _ ("kcal per 100 g") },
    { _ ("Sodium"), FM_NUTRIENT_SODIUM, 0, _ ("mg per 100 g") },
  };

  add_headings (numbers);
  add_number (numbers, _ ("Fat"), now->fat_pct, before != NULL ? before->fat_pct : NAN, 1, "%");
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    add_number (numbers, rows[i].name, value_of (now, rows[i].nutrient),
                value_of (before, rows[i].nutrient), rows[i].decimals, rows[i].unit);
  add_number (numbers, _ ("Cost"), now->cost_per_kg, before != NULL ? before->cost_per_kg : NAN, 2,
              cost_unit);
  add_number (numbers, _ ("Total mass"), now->total_g, before != NULL ? before->total_g : NAN, 1,
              "g");
  return numbers;
}

FmVersionsPageDiff *
fm_versions_page_diff_read (
    FmNotebook *notebook, gint64 blend_id, gint64 version_id, const char *currency, GError **error)
{
  g_autoptr (FmVersionsPageDiff) self = g_new0 (FmVersionsPageDiff, 1);
  g_autoptr (FmFormula) formula = NULL;
  g_autoptr (FmFormula) parent = NULL;
  gint64 parent_id = 0;

  self->version_id = version_id;
  if (version_id == 0) {
    formula = fm_draft_load (notebook, blend_id, &parent_id, error);
  } else {
    self->info = fm_versions_info (notebook, version_id, error);
    formula = self->info != NULL ? fm_versions_load (notebook, version_id, error) : NULL;
    parent_id = self->info != NULL ? self->info->parent_id : 0;
  }
  if (formula == NULL)
    return NULL;
  if (parent_id != 0) {
    self->parent = fm_versions_info (notebook, parent_id, error);
    parent = self->parent != NULL ? fm_versions_load (notebook, parent_id, error) : NULL;
    if (parent == NULL)
      return NULL;
  }
  if (version_id != 0) {
    self->tastings = fm_tastings_outcomes (notebook, 0, version_id, 0, error);
    if (self->tastings == NULL)
      return NULL;
  }
  self->lines = fm_versions_page_diff_lines (formula, parent, &self->n_same);
  self->process =
      fm_versions_page_diff_process (formula->process, parent != NULL ? parent->process : NULL);
  self->numbers = compare_numbers (formula, parent, currency);
  return g_steal_pointer (&self);
}

void
fm_versions_page_diff_free (FmVersionsPageDiff *self)
{
  g_clear_pointer (&self->info, fm_version_info_free);
  g_clear_pointer (&self->parent, fm_version_info_free);
  g_clear_pointer (&self->lines, g_ptr_array_unref);
  g_clear_pointer (&self->process, g_ptr_array_unref);
  g_clear_pointer (&self->numbers, g_ptr_array_unref);
  g_clear_pointer (&self->tastings, g_ptr_array_unref);
  g_free (self);
}
