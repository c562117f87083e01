/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-comparison-item.c - one version or experiment that is compared */
#include <math.h>

#include "core/compare/fm-comparison.h"

static double
number_or_nan (double value)
{
  return value > 0.0 ? value : NAN;
}

FmCompareItem *
fm_compare_item_new_version (gint64 id,
                             const char *title,
                             const char *short_title,
                             const char *subtitle,
                             FmFormula *formula,
                             guint n_experiments,
                             double cook_loss_pct,
                             double rating)
{
  FmCompareItem *self = g_new0 (FmCompareItem, 1);

  self->kind = FM_COMPARE_VERSION;
  self->id = id;
  self->title = g_strdup (title);
  self->short_title = g_strdup (short_title);
  self->subtitle = g_strdup (subtitle);
  self->formula = formula;
  self->analysis = fm_analysis_new (formula);
  self->n_experiments = n_experiments;
  self->cook_loss_pct = cook_loss_pct;
  self->rating = number_or_nan (rating);
  self->liking = NAN;
  return self;
}

FmCompareItem *
fm_compare_item_new_draft (gint64 blend_id,
                           const char *title,
                           const char *short_title,
                           const char *subtitle,
                           FmFormula *formula)
{
  FmCompareItem *self =
      fm_compare_item_new_version (blend_id, title, short_title, subtitle, formula, 0, NAN, NAN);

  self->kind = FM_COMPARE_DRAFT;
  return self;
}

static double
weighed_mass_g (const FmExperiment *experiment, const char *line_id)
{
  for (guint i = 0; i < experiment->weighings->len; i++) {
    const FmWeighing *weighing = &g_array_index (experiment->weighings, FmWeighing, i);

    if (weighing->line_id != NULL && g_strcmp0 (weighing->line_id, line_id) == 0)
      return weighing->weighed_g;
  }
  return NAN;
}

/* All or nothing: a mix of weighed and planned masses would be no making at all. */
static gboolean
apply_weighings (FmFormula *formula, const FmExperiment *experiment)
{
  guint n = fm_formula_n_lines (formula);

  for (guint i = 0; i < n; i++)
    if (!isfinite (weighed_mass_g (experiment, fm_formula_line (formula, i)->id)))
      return FALSE;
  for (guint i = 0; i < n; i++) {
    FmFormulaLine *line = fm_formula_line (formula, i);

    line->mass_g = weighed_mass_g (experiment, line->id);
  }
  return n > 0;
}

/* What was strewn on belongs to the making; what nobody recorded stays as planned. */
static void
apply_surface_salt (FmFormula *formula, const FmExperiment *experiment)
{
  if (!isnan (experiment->surface_salt_pct))
    formula->brief->surface_salt_pct = experiment->surface_salt_pct;
}

FmCompareItem *
fm_compare_item_new_experiment (const char *title,
                                const char *short_title,
                                const char *subtitle,
                                FmFormula *formula,
                                FmExperiment *experiment)
{
  FmCompareItem *self = g_new0 (FmCompareItem, 1);
  FmPattyStats stats;

  fm_experiment_patty_stats (experiment, &stats);
  self->kind = FM_COMPARE_EXPERIMENT;
  self->id = experiment->id;
  self->title = g_strdup (title);
  self->short_title = g_strdup (short_title);
  self->subtitle = g_strdup (subtitle);
  self->formula = formula;
  self->as_weighed = apply_weighings (formula, experiment);
  apply_surface_salt (formula, experiment);
  self->analysis = fm_analysis_new (formula);
  self->experiment = experiment;
  self->n_experiments = 1;
  self->cook_loss_pct = stats.cook_loss_pct;
  self->rating = number_or_nan (experiment->rating);
  self->liking = NAN;
  return self;
}

void
fm_compare_item_set_liking (FmCompareItem *self, double liking, guint n_tasters)
{
  self->liking = liking;
  self->n_tasters = n_tasters;
}

void
fm_compare_item_set_findings (FmCompareItem *self, char *notes, char *tastings, guint n_photos)
{
  g_free (self->notes);
  g_free (self->tastings);
  self->notes = notes;
  self->tastings = tastings;
  self->n_photos = n_photos;
}

void
fm_compare_item_free (FmCompareItem *self)
{
  if (self == NULL)
    return;
  g_free (self->title);
  g_free (self->short_title);
  g_free (self->subtitle);
  g_free (self->notes);
  g_free (self->tastings);
  g_clear_pointer (&self->analysis, fm_analysis_free);
  g_clear_pointer (&self->formula, fm_formula_free);
  g_clear_pointer (&self->experiment, fm_experiment_free);
  g_free (self);
}
