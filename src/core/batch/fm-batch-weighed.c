/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-batch-weighed.c - an experiment's weighings beside what its version planned */
#include "core/batch/fm-batch-weighed.h"

#include <math.h>

static guint
find_line (const FmFormula *formula, const FmWeighing *weighing)
{
  for (guint i = 0; weighing->line_id != NULL && i < fm_formula_n_lines (formula); i++)
    if (g_strcmp0 (fm_formula_line (formula, i)->id, weighing->line_id) == 0)
      return i;
  return G_MAXUINT;
}

static guint
add_extra (FmFormula *plan, const FmWeighing *weighing)
{
  g_autoptr (FmIngredient) extra = fm_ingredient_new (weighing->name, FM_INGREDIENT_OTHER);

  return fm_formula_add (plan, extra, weighing->planned_g);
}

FmFormula *
fm_batch_weighed_plan (const FmFormula *version, const GArray *weighings, double **weighed_g)
{
  FmFormula *plan = fm_formula_copy (version);
  const guint n_planned = fm_formula_n_lines (plan);

  *weighed_g = g_new0 (double, n_planned + weighings->len + 1);
  for (guint i = 0; i < n_planned; i++)
    fm_formula_line (plan, i)->mass_g = 0.0;
  for (guint w = 0; w < weighings->len; w++) {
    const FmWeighing *weighing = &g_array_index (weighings, FmWeighing, w);
    guint index = find_line (version, weighing);

    if (index == G_MAXUINT)
      index = add_extra (plan, weighing);
    else
      fm_formula_line (plan, index)->mass_g =
          isnan (weighing->planned_g) ? 0.0 : weighing->planned_g;
    (*weighed_g)[index] = weighing->weighed_g;
    if (isnan (weighing->weighed_g) && !(fm_formula_line (plan, index)->mass_g > 0.0))
      (*weighed_g)[index] = 0.0;
  }
  return plan;
}
