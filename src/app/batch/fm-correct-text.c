/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-correct-text.c - a correction of a batch, in sentences */
#include "app/batch/fm-correct-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/session/fm-notebook-settings.h"
#include "core/base/fm-number.h"
#include "core/formula/fm-analysis.h"

/* Additions below this are no act for a cook. */
#define LEAST_ADDITION_G 0.05

FmFormula *
fm_correct_weighed_formula (const FmFormula *planned, const double *weighed_g)
{
  FmFormula *weighed = fm_formula_copy (planned);

  for (guint i = 0; i < fm_formula_n_lines (weighed); i++)
    fm_formula_line (weighed, i)->mass_g = weighed_g[i];
  return weighed;
}

GPtrArray *
fm_correct_ingredients (const FmFormula *formula)
{
  GPtrArray *ingredients = g_ptr_array_new_with_free_func ((GDestroyNotify)fm_ingredient_unref);
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < fm_formula_n_lines (formula); i++) {
    FmIngredient *ingredient = fm_formula_line (formula, i)->ingredient;

    if (g_hash_table_add (seen, (gpointer)fm_ingredient_identity (ingredient)))
      g_ptr_array_add (ingredients, fm_ingredient_ref (ingredient));
  }
  return ingredients;
}

FmBand
fm_correct_default_band (const FmFormula *formula)
{
  const FmBand *band = &formula->brief->bands[FM_TARGET_FAT_PCT];
  g_autoptr (FmAnalysis) analysis = NULL;

  if (!isnan (band->min) || !isnan (band->max))
    return *band;
  analysis = fm_analysis_new (formula);
  return (FmBand){ analysis->fat_pct, analysis->fat_pct };
}

char *
fm_correct_text (const FmCorrection *correction)
{
  const FmAddition *edge = &correction->to_edge;
  const FmAddition *middle = &correction->to_middle;
  g_autofree char *edge_pct = fm_number_format_unit (edge->aim_pct, 1, "%");
  g_autofree char *middle_pct = fm_number_format_unit (middle->aim_pct, 1, "%");
  g_autofree char *to_edge = NULL;
  g_autofree char *to_middle = NULL;

  if (isnan (middle->aim_pct))
    return g_strdup (edge->sentence);
  /* Translators: a fat in %, then a sentence such as "Add 120 g of chuck: ..." */
  to_edge = edge->add_g == 0.0 ? g_strdup_printf (_ ("In the band already. %s"), edge->sentence)
                               : g_strdup_printf (_ ("To the nearest edge of the band, %s: %s"),
                                                  edge_pct, edge->sentence);
  to_middle = g_strdup_printf (_ ("To its middle, %s: %s"), middle_pct, middle->sentence);
  return g_strjoin ("\n", to_edge, to_middle, NULL);
}

static char *
additions_text (const FmTopUp *top_up, const char *const *names)
{
  g_autoptr (GPtrArray) parts = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < top_up->n; i++) {
    g_autofree char *mass = fm_notebook_text (FM_MEASURE_MASS, top_up->add_g[i], 1);

    if (top_up->add_g[i] >= LEAST_ADDITION_G)
      g_ptr_array_add (parts, g_strdup_printf (_ ("%s of %s"), mass, names[i]));
  }
  if (parts->len == 0)
    return NULL;
  g_ptr_array_add (parts, NULL);
  return g_strjoinv (", ", (char **)parts->pdata);
}

char *
fm_correct_top_up_text (const FmFormula *planned, const double *weighed_g)
{
  const guint n = fm_formula_n_lines (planned);
  g_autofree const char **names = g_new0 (const char *, n + 1);
  g_autofree double *planned_g = g_new0 (double, n + 1);
  g_auto (FmTopUp) top_up = { 0 };
  g_autoptr (GError) error = NULL;
  g_autofree char *additions = NULL;
  g_autofree char *total = NULL;

  for (guint i = 0; i < n; i++) {
    names[i] = fm_formula_line (planned, i)->ingredient->name;
    planned_g[i] = fm_formula_line (planned, i)->mass_g;
  }
  if (!fm_top_up_init (&top_up, n, names, planned_g, weighed_g, &error))
    return g_strdup (error->message);
  additions = additions_text (&top_up, names);
  if (additions == NULL)
    return g_strdup (_ ("Nothing to add: the batch has the planned shares."));
  total = fm_notebook_text (FM_MEASURE_MASS, top_up.total_g, 1);
  if (!top_up.is_sane)
    return g_strdup_printf (_ ("Too much of %s is in: the planned shares would take a batch of %s, "
                               "more than twice the planned one. Make a new batch, or correct its "
                               "fat alone."),
                            names[top_up.most_over], total);
  return g_strdup_printf (_ ("Add %s: the batch has the planned shares again and becomes %s."),
                          additions, total);
}
