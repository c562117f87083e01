/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/experiment/fm-experiment-process.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "core/base/fm-double.h"
#include "core/base/fm-error.h"
#include "core/base/fm-number.h"
#include "core/base/fm-text-limit.h"
#include "core/base/fm-units.h"

/* Of the planned patty mass: common practice, no source. */
#define DEFAULT_TOLERANCE_PCT 3.0
/* A batch may count thousands of patties; nobody weighs each, so no more blank rows than this. */
#define MAX_PLANNED_PATTIES 24
#define MINUTES_PER_DAY 1440.0
/* Meat boils off water long before this; a higher figure is most often degrees Fahrenheit. */

static void
clear_weighing (gpointer data)
{
  FmWeighing *weighing = data;

  g_free (weighing->line_id);
  g_free (weighing->name);
}

FmExperiment *
fm_experiment_new (void)
{
  FmExperiment *self = g_new0 (FmExperiment, 1);

  self->weighings = g_array_new (FALSE, TRUE, sizeof (FmWeighing));
  g_array_set_clear_func (self->weighings, clear_weighing);
  self->patties = g_array_new (FALSE, TRUE, sizeof (FmPattyMass));
  self->core_readings = g_array_new (FALSE, TRUE, sizeof (FmCoreReading));
  self->meat_temp_c = NAN;
  self->plate_mm = NAN;
  self->patty_diameter_mm = NAN;
  self->patty_thickness_mm = NAN;
  self->patty_tolerance_pct = DEFAULT_TOLERANCE_PCT;
  self->patty_target_g = NAN;
  self->salt_pct = NAN;
  self->surface_salt_pct = NAN;
  self->salt_minutes_before = NAN;
  self->method = FM_COOK_PATTY_PAN_BROILED;
  self->surface_temp_c = NAN;
  self->minutes_side_1 = NAN;
  self->minutes_side_2 = NAN;
  self->rest_minutes = NAN;
  self->target_core_c = NAN;
  return self;
}

FmExperiment *
fm_experiment_copy (const FmExperiment *self)
{
  FmExperiment *copy = g_memdup2 (self, sizeof *self);

  copy->title = g_strdup (self->title);
  copy->surface = g_strdup (self->surface);
  copy->notes = g_strdup (self->notes);
  copy->patties = g_array_copy (self->patties);
  copy->core_readings = g_array_copy (self->core_readings);
  copy->weighings = g_array_new (FALSE, TRUE, sizeof (FmWeighing));
  g_array_set_clear_func (copy->weighings, clear_weighing);
  for (guint i = 0; i < self->weighings->len; i++) {
    const FmWeighing *weighing = &g_array_index (self->weighings, FmWeighing, i);
    fm_experiment_add_weighing (copy, weighing->line_id, weighing->name, weighing->planned_g,
                                weighing->weighed_g);
  }
  return copy;
}

void
fm_experiment_free (FmExperiment *self)
{
  if (self == NULL)
    return;
  g_free (self->title);
  g_free (self->surface);
  g_free (self->notes);
  g_array_unref (self->weighings);
  g_array_unref (self->patties);
  g_array_unref (self->core_readings);
  g_free (self);
}

static gboolean
same_weighings (const GArray *a, const GArray *b)
{
  if (a->len != b->len)
    return FALSE;
  for (guint i = 0; i < a->len; i++) {
    const FmWeighing *wa = &g_array_index (a, FmWeighing, i);
    const FmWeighing *wb = &g_array_index (b, FmWeighing, i);
    if (g_strcmp0 (wa->line_id, wb->line_id) != 0 || g_strcmp0 (wa->name, wb->name) != 0 ||
        !fm_double_same (wa->planned_g, wb->planned_g) ||
        !fm_double_same (wa->weighed_g, wb->weighed_g))
      return FALSE;
  }
  return TRUE;
}

/* Patties and readings are both pairs of doubles, compared with unknown equal to unknown. */
static gboolean
same_pairs (const GArray *a, const GArray *b)
{
  const double *values_a = (const double *)(const void *)a->data;
  const double *values_b = (const double *)(const void *)b->data;

  G_STATIC_ASSERT (sizeof (FmPattyMass) == 2 * sizeof (double));
  G_STATIC_ASSERT (sizeof (FmCoreReading) == 2 * sizeof (double));
  if (a->len != b->len)
    return FALSE;
  for (guint i = 0; i < 2 * a->len; i++)
    if (!fm_double_same (values_a[i], values_b[i]))
      return FALSE;
  return TRUE;
}

gboolean
fm_experiment_equal (const FmExperiment *a, const FmExperiment *b)
{
  return a->id == b->id && a->version_id == b->version_id && a->made_at == b->made_at &&
         a->grind_passes == b->grind_passes && a->method == b->method && a->rating == b->rating &&
         g_strcmp0 (a->title, b->title) == 0 && g_strcmp0 (a->surface, b->surface) == 0 &&
         g_strcmp0 (a->notes, b->notes) == 0 && fm_double_same (a->meat_temp_c, b->meat_temp_c) &&
         fm_double_same (a->plate_mm, b->plate_mm) &&
         fm_double_same (a->patty_diameter_mm, b->patty_diameter_mm) &&
         fm_double_same (a->patty_thickness_mm, b->patty_thickness_mm) &&
         fm_double_same (a->patty_tolerance_pct, b->patty_tolerance_pct) &&
         fm_double_same (a->patty_target_g, b->patty_target_g) &&
         fm_double_same (a->salt_pct, b->salt_pct) &&
         fm_double_same (a->surface_salt_pct, b->surface_salt_pct) &&
         fm_double_same (a->salt_minutes_before, b->salt_minutes_before) &&
         fm_double_same (a->surface_temp_c, b->surface_temp_c) &&
         fm_double_same (a->minutes_side_1, b->minutes_side_1) &&
         fm_double_same (a->minutes_side_2, b->minutes_side_2) &&
         fm_double_same (a->rest_minutes, b->rest_minutes) &&
         fm_double_same (a->target_core_c, b->target_core_c) &&
         same_weighings (a->weighings, b->weighings) && same_pairs (a->patties, b->patties) &&
         same_pairs (a->core_readings, b->core_readings);
}

void
fm_experiment_add_weighing (
    FmExperiment *self, const char *line_id, const char *name, double planned_g, double weighed_g)
{
  FmWeighing weighing = { g_strdup (line_id), g_strdup (name), planned_g, weighed_g };

  g_array_append_val (self->weighings, weighing);
}

/* What was weighed before for the line, so that planning anew loses nothing. */
static double
weighed_before (const GArray *weighings, const char *line_id)
{
  for (guint i = 0; i < weighings->len; i++) {
    const FmWeighing *weighing = &g_array_index (weighings, FmWeighing, i);
    if (g_strcmp0 (weighing->line_id, line_id) == 0)
      return weighing->weighed_g;
  }
  return NAN;
}

static void
plan_weighings (FmExperiment *self, const FmFormula *formula)
{
  g_autoptr (GArray) before = self->weighings;
  double batch_g = formula->brief->patty_mass_g * formula->brief->n_patties;

  self->weighings = g_array_new (FALSE, TRUE, sizeof (FmWeighing));
  g_array_set_clear_func (self->weighings, clear_weighing);
  for (guint i = 0; i < fm_formula_n_lines (formula); i++) {
    const FmFormulaLine *line = fm_formula_line (formula, i);
    double planned_g = fm_formula_share_pct (formula, i) / 100.0 * batch_g;
    fm_experiment_add_weighing (self, line->id, line->ingredient->name, planned_g,
                                weighed_before (before, line->id));
  }
  for (guint i = 0; i < before->len; i++) {
    const FmWeighing *extra = &g_array_index (before, FmWeighing, i);
    if (extra->line_id == NULL)
      fm_experiment_add_weighing (self, NULL, extra->name, extra->planned_g, extra->weighed_g);
  }
}

static double
planned_salt_pct (const FmFormula *formula)
{
  double salt_pct = NAN;

  for (guint i = 0; i < fm_formula_n_lines (formula); i++)
    if (fm_formula_line (formula, i)->ingredient->kind == FM_INGREDIENT_SALT)
      salt_pct = (isnan (salt_pct) ? 0.0 : salt_pct) + fm_formula_share_pct (formula, i);
  return salt_pct;
}

void
fm_experiment_plan (FmExperiment *self, const FmFormula *formula)
{
  guint n_wanted = (guint)CLAMP (formula->brief->n_patties, 0, MAX_PLANNED_PATTIES);
  const FmPattyMass blank = { NAN, NAN };

  plan_weighings (self, formula);
  self->patty_target_g = formula->brief->patty_mass_g;
  self->salt_pct = planned_salt_pct (formula);
  self->surface_salt_pct = formula->brief->surface_salt_pct;
  while (self->patties->len < n_wanted)
    g_array_append_val (self->patties, blank);
  fm_experiment_take_process (self, formula->process, FM_TAKE_SETTINGS);
}

/* TRUE when unknown or within [min, max]. */
static gboolean
check_value (
    double value, const char *what, double min, double max, const char *unit, GError **error)
{
  if (isnan (value) || (value >= min && value <= max))
    return TRUE;
  g_autofree char *min_text = fm_number_format (min, min == floor (min) ? 0 : 1);
  g_autofree char *max_text = fm_number_format (max, max == floor (max) ? 0 : 1);
  g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
               _ ("%s must lie between %s and %s %s. Check the figure and its unit."), what,
               min_text, max_text, unit);
  return FALSE;
}

static gboolean
check_weighings (const FmExperiment *self, GError **error)
{
  for (guint i = 0; i < self->weighings->len; i++) {
    const FmWeighing *weighing = &g_array_index (self->weighings, FmWeighing, i);
    g_autofree char *what =
        g_strdup_printf (_ ("The mass of %s"), weighing->name != NULL ? weighing->name : "?");
    if (!check_value (weighing->planned_g, what, 0, FM_MAX_LINE_MASS_G, "g", error) ||
        !check_value (weighing->weighed_g, what, 0, FM_MAX_LINE_MASS_G, "g", error))
      return FALSE;
  }
  return TRUE;
}

static gboolean
check_patties (const FmExperiment *self, GError **error)
{
  for (guint i = 0; i < self->patties->len; i++) {
    const FmPattyMass *patty = &g_array_index (self->patties, FmPattyMass, i);
    g_autofree char *raw = g_strdup_printf (_ ("The raw mass of patty %u"), i + 1);
    g_autofree char *cooked = g_strdup_printf (_ ("The cooked mass of patty %u"), i + 1);
    /* A raw patty of no mass would make the cook loss meaningless. */
    if (!check_value (patty->raw_g, raw, 0.1, FM_MAX_PATTY_MASS_G, "g", error) ||
        !check_value (patty->cooked_g, cooked, 0, FM_MAX_PATTY_MASS_G, "g", error))
      return FALSE;
  }
  return TRUE;
}

static gboolean
check_texts (const FmExperiment *self, GError **error)
{
  return fm_text_check (self->title, _ ("Title"), error) &&
         fm_text_check (self->surface, _ ("Surface"), error) &&
         fm_text_check (self->notes, _ ("Notes"), error);
}

static gboolean
check_readings (const GArray *readings, GError **error)
{
  if (!fm_experiment_check_n_readings (readings->len, error))
    return FALSE;
  for (guint i = 0; i < readings->len; i++) {
    const FmCoreReading *reading = &g_array_index (readings, FmCoreReading, i);
    if (isnan (reading->time_s) || isnan (reading->temp_c)) {
      g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_NOT_A_NUMBER,
                           _ ("Each core reading needs a time and a temperature."));
      return FALSE;
    }
    if (!check_value (reading->time_s / 60.0, _ ("The time of a core reading"), 0, MINUTES_PER_DAY,
                      _ ("min"), error) ||
        !check_value (reading->temp_c, _ ("A core temperature"), FM_MIN_CORE_C, FM_MAX_CORE_C, "°C",
                      error))
      return FALSE;
  }
  return TRUE;
}

static gboolean
check_counts (const FmExperiment *self, GError **error)
{
  if (self->rating < 0 || self->rating > 10) {
    g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                         _ ("The rating goes from 1 to 10; leave it empty for none."));
    return FALSE;
  }
  if (self->grind_passes < 0 || self->grind_passes > 20) {
    g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                         _ ("The grinder passes go from 1 to 20; leave them empty if unknown."));
    return FALSE;
  }
  if ((int)self->method < 0 || self->method >= FM_N_COOK_METHODS) {
    g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                         _ ("Choose a cooking method."));
    return FALSE;
  }
  return TRUE;
}

gboolean
fm_experiment_check (const FmExperiment *self, GError **error)
{
  const struct {
    double value;
    const char *what;
    double min;
    double max;
    const char *unit;
  } fields[] = {
    { self->meat_temp_c, _ ("The meat temperature"), -40, 60, "°C" },
    { self->plate_mm, _ ("The grinder plate"), 0.5, 50, "mm" },
    { self->patty_diameter_mm, _ ("The patty diameter"), 10, 500, "mm" },
    { self->patty_thickness_mm, _ ("The patty thickness"), 1, 150, "mm" },
    { self->patty_tolerance_pct, _ ("The tolerance"), 0, 100, "%" },
    { self->patty_target_g, _ ("The planned patty mass"), 0.1, FM_MAX_PATTY_MASS_G, "g" },
    { self->salt_pct, _ ("The salt mixed in"), 0, 100, "%" },
    { self->surface_salt_pct, _ ("The salt on the surface"), 0, 100, "%" },
    { self->salt_minutes_before, _ ("The time from salting to cooking"), 0, 100000, _ ("min") },
    { self->surface_temp_c, _ ("The surface temperature"), 0, 1000, "°C" },
    { self->minutes_side_1, _ ("The time on the first side"), 0, MINUTES_PER_DAY, _ ("min") },
    { self->minutes_side_2, _ ("The time on the second side"), 0, MINUTES_PER_DAY, _ ("min") },
    { self->rest_minutes, _ ("The rest"), 0, MINUTES_PER_DAY, _ ("min") },
    { self->target_core_c, _ ("The chosen core temperature"), 20, FM_MAX_CORE_C, "°C" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (fields); i++)
    if (!check_value (fields[i].value, fields[i].what, fields[i].min, fields[i].max, fields[i].unit,
                      error))
      return FALSE;
  return check_texts (self, error) && check_counts (self, error) && check_weighings (self, error) &&
         check_patties (self, error) && check_readings (self->core_readings, error);
}

double
fm_experiment_salt_pct (const FmExperiment *self)
{
  return fm_double_add_known (self->salt_pct, self->surface_salt_pct);
}

double
fm_experiment_peak_core_c (const FmExperiment *self)
{
  double peak_c = NAN;

  for (guint i = 0; i < self->core_readings->len; i++)
    peak_c = fmax (peak_c, g_array_index (self->core_readings, FmCoreReading, i).temp_c);
  return peak_c;
}
