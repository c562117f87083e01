/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tastings-caution.c - what the notebook knows of samples before somebody eats them */
#include <math.h>

#include "store/fm-experiments.h"
#include "store/fm-tastings.h"

static void
add_ingredients (FmTastingCaution *caution, const FmFormula *formula)
{
  for (guint i = 0; i < fm_formula_n_lines (formula); i++) {
    const FmFormulaLine *line = fm_formula_line (formula, i);

    if (line->mass_g <= 0.0)
      continue;
    caution->n_parts++;
    caution->n_unstated += !line->ingredient->allergens_known;
    caution->allergens |= line->ingredient->allergens;
  }
}

/* Of what was weighed in beside the formula nobody stated anything. */
static void
add_extras (FmTastingCaution *caution, const FmExperiment *experiment)
{
  for (guint i = 0; i < experiment->weighings->len; i++) {
    const FmWeighing *weighing = &g_array_index (experiment->weighings, FmWeighing, i);

    if (weighing->line_id != NULL || !(weighing->weighed_g > 0.0))
      continue;
    caution->n_parts++;
    caution->n_unstated++;
  }
}

static gboolean
fill_caution (FmNotebook *self, FmTastingCaution *caution, gint64 experiment_id, GError **error)
{
  g_autoptr (FmExperiment) experiment = fm_experiments_load (self, experiment_id, error);
  g_autoptr (FmFormula) formula = NULL;

  if (experiment == NULL)
    return FALSE;
  formula = fm_versions_load (self, experiment->version_id, error);
  if (formula == NULL)
    return FALSE;
  caution->peak_core_c = fm_experiment_peak_core_c (experiment);
  caution->species = fm_formula_species (formula);
  add_ingredients (caution, formula);
  add_extras (caution, experiment);
  return TRUE;
}

GPtrArray *
fm_tastings_cautions (FmNotebook *self, const FmTasting *tasting, GError **error)
{
  g_autoptr (GPtrArray) cautions =
      g_ptr_array_new_with_free_func ((GDestroyNotify)fm_tasting_caution_free);

  for (guint i = 0; i < tasting->samples->len; i++) {
    const FmTastingSample *sample = g_ptr_array_index (tasting->samples, i);
    FmTastingCaution *caution = fm_tasting_caution_new (sample->name);

    g_ptr_array_add (cautions, caution);
    caution->is_outside = sample->experiment_id == 0;
    if (!caution->is_outside && !fill_caution (self, caution, sample->experiment_id, error))
      return NULL;
  }
  return g_steal_pointer (&cautions);
}
