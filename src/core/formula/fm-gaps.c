/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-gaps.c - which figures of a blend some of its mass lacks, in words */
#include "core/formula/fm-gaps.h"

#include <glib/gi18n-lib.h>

#include "core/base/fm-number.h"

/* Sentences in the order of their first figure, each with the figures that share it. */
typedef struct {
  GPtrArray *gaps;    /* char *: "known for 92 % ..." */
  GPtrArray *figures; /* GString *: "Protein, Water" */
} Gaps;

static void
free_string (gpointer string)
{
  g_string_free (string, TRUE);
}

/* Takes @missing. */
static void
add_gap (Gaps *gaps, const char *figure, double covered_pct, GStrv missing)
{
  g_autofree char *names = g_strjoinv (", ", missing);
  g_autofree char *covered = fm_number_format (covered_pct, 0);
  g_autofree char *gap =
      g_strdup_printf (_ ("known for %s %% of the mass, not for %s."), covered, names);
  const gboolean is_gap = missing[0] != NULL;
  guint known = 0;

  g_strfreev (missing);
  if (!is_gap)
    return;
  if (g_ptr_array_find_with_equal_func (gaps->gaps, gap, g_str_equal, &known)) {
    g_string_append_printf (g_ptr_array_index (gaps->figures, known), ", %s", figure);
    return;
  }
  g_ptr_array_add (gaps->gaps, g_steal_pointer (&gap));
  g_ptr_array_add (gaps->figures, g_string_new (figure));
}

char *
fm_gaps_text (const FmFormula *formula, const FmAnalysis *analysis)
{
  static const FmNutrient shown[] = { FM_NUTRIENT_FAT, FM_NUTRIENT_PROTEIN, FM_NUTRIENT_WATER,
                                      FM_NUTRIENT_ENERGY_KCAL };
  g_autoptr (GPtrArray) sentences = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GPtrArray) figures = g_ptr_array_new_with_free_func (free_string);
  Gaps gaps = { sentences, figures };
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; analysis->total_g > 0.0 && i < G_N_ELEMENTS (shown); i++)
    add_gap (&gaps, fm_nutrient_name (shown[i]), analysis->amounts[shown[i]].covered_pct,
             fm_analysis_missing (formula, shown[i]));
  if (analysis->cost_covered_pct > 0.0)
    add_gap (&gaps, _ ("Cost"), analysis->cost_covered_pct, fm_analysis_unpriced (formula));
  for (guint i = 0; i < sentences->len; i++)
    g_string_append_printf (text, "%s%s: %s", i > 0 ? " " : "",
                            ((GString *)g_ptr_array_index (figures, i))->str,
                            (const char *)g_ptr_array_index (sentences, i));
  return g_string_free (g_steal_pointer (&text), FALSE);
}
