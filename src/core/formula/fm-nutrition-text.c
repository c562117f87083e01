/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-nutrition-text.c - one nutrient of a portion, in words that never hide a gap */
#include "core/formula/fm-nutrition-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-number.h"

#define FULL_COVER_PCT 99.995
#define NO_COVER_PCT 0.005

FmKnowledge
fm_amount_knowledge (const FmAmount *amount)
{
  if (amount->covered_pct >= FULL_COVER_PCT)
    return FM_KNOWLEDGE_FULL;
  return amount->covered_pct > NO_COVER_PCT ? FM_KNOWLEDGE_PART : FM_KNOWLEDGE_NONE;
}

static char *
amount_text (const FmNutrientInfo *info, FmKnowledge knowledge, double value)
{
  g_autofree char *number = NULL;

  if (knowledge == FM_KNOWLEDGE_NONE || isnan (value))
    return g_strdup (_ ("not known"));
  number = fm_number_format_unit (value, info->display_decimals, info->unit);
  if (knowledge == FM_KNOWLEDGE_FULL)
    return g_steal_pointer (&number);
  /* Translators: the known part of an amount, e.g. "at least 12.3 mg" */
  return g_strdup_printf (_ ("at least %s"), number);
}

static char *
daily_value_text (const FmNutrientInfo *info, FmKnowledge knowledge, double value)
{
  g_autofree char *number = NULL;

  if (isnan (info->daily_value))
    return g_strdup ("");
  if (knowledge == FM_KNOWLEDGE_NONE || isnan (value))
    return g_strdup ("—");
  number = fm_number_format_unit (100.0 * value / info->daily_value, 0, "%");
  if (knowledge == FM_KNOWLEDGE_FULL)
    return g_steal_pointer (&number);
  return g_strdup_printf ("≥ %s", number);
}

static char *
gap_text (FmKnowledge knowledge, double covered_pct, const char *const *missing)
{
  gboolean have_names = missing != NULL && missing[0] != NULL;
  g_autofree char *names = have_names ? g_strjoinv ("; ", (char **)missing) : NULL;
  g_autofree char *cover = NULL;

  if (knowledge == FM_KNOWLEDGE_FULL)
    return NULL;
  if (knowledge == FM_KNOWLEDGE_NONE)
    return have_names ? g_strdup_printf (_ ("Without a value: %s"), names)
                      : g_strdup (_ ("The cooking table cannot tell"));
  /* One place below 1 % and above 99 %, so that a pinch of salt does not read as 100 %. */
  cover = fm_number_format (covered_pct, covered_pct < 1.0 || covered_pct > 99.0 ? 1 : 0);
  if (!have_names)
    return g_strdup_printf (_ ("%s %% of the mass covered"), cover);
  return g_strdup_printf (_ ("%s %% of the mass covered; without a value: %s"), cover, names);
}

static char *
spoken_text (const FmNutritionText *self, FmNutrient nutrient)
{
  const FmNutrientInfo *info = fm_nutrient_info (nutrient);
  GString *text = g_string_new (fm_nutrient_name (nutrient));

  g_string_append_printf (text, ": %s", self->amount);
  if (!isnan (info->daily_value))
    g_string_append_printf (text, _ (", %s of the Daily Value"), self->daily_value);
  if (self->gap != NULL)
    g_string_append_printf (text, ". %s", self->gap);
  return g_string_free (text, FALSE);
}

void
fm_nutrition_text_init (FmNutritionText *self,
                        FmNutrient nutrient,
                        const FmAmount *amount,
                        double portion_g,
                        const char *const *missing)
{
  const FmNutrientInfo *info = fm_nutrient_info (nutrient);
  FmKnowledge knowledge = fm_amount_knowledge (amount);
  double value = amount->known_g_per_100g * portion_g / 100.0;

  self->amount = amount_text (info, knowledge, value);
  self->daily_value = daily_value_text (info, knowledge, value);
  self->gap = gap_text (knowledge, amount->covered_pct, missing);
  self->spoken = spoken_text (self, nutrient);
}

static guint
count_gap (const FmNutritionText *texts, guint n, const char *gap)
{
  guint found = 0;

  for (guint i = 0; i < n; i++)
    found += g_strcmp0 (texts[i].gap, gap) == 0 ? 1 : 0;
  return found;
}

const char *
fm_nutrition_common_gap (const FmNutritionText *texts, guint n)
{
  const char *common = NULL;
  guint most = 1;

  for (guint i = 0; i < n; i++) {
    guint found = texts[i].gap != NULL ? count_gap (texts, n, texts[i].gap) : 0;
    if (found > most) {
      most = found;
      common = texts[i].gap;
    }
  }
  return common;
}

/* TRUE when the gap of text @i stands in a line before. */
static gboolean
is_said (const FmNutritionText *texts, guint i, const char *common)
{
  if (g_strcmp0 (texts[i].gap, common) == 0)
    return TRUE;
  return count_gap (texts, i, texts[i].gap) > 0;
}

static void
append_gap (GString *said, const FmNutritionText *texts, guint first)
{
  g_string_append (said, said->len > 0 ? "\n" : "");
  for (guint i = first; i < FM_N_NUTRIENTS; i++)
    if (g_strcmp0 (texts[i].gap, texts[first].gap) == 0)
      g_string_append_printf (said, "%s%s", i > first ? ", " : "",
                              fm_nutrient_name ((FmNutrient)i));
  g_string_append_printf (said, ": %s", texts[first].gap);
}

char *
fm_nutrition_gaps (const FmNutritionText *texts)
{
  const char *common = fm_nutrition_common_gap (texts, FM_N_NUTRIENTS);
  g_autoptr (GString) said = g_string_new (NULL);

  if (common != NULL)
    /* Translators: "92 % of the mass covered; without a value: Beef trim 50/50" */
    g_string_append_printf (said, _ ("Gaps, unless more is said: %s"), common);
  for (guint i = 0; i < FM_N_NUTRIENTS; i++)
    if (texts[i].gap != NULL && !is_said (texts, i, common))
      append_gap (said, texts, i);
  return g_string_free (g_steal_pointer (&said), FALSE);
}

void
fm_nutrition_text_clear (FmNutritionText *self)
{
  g_clear_pointer (&self->amount, g_free);
  g_clear_pointer (&self->daily_value, g_free);
  g_clear_pointer (&self->gap, g_free);
  g_clear_pointer (&self->spoken, g_free);
}
