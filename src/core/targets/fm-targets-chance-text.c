/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-targets-chance-text.c - how sure the fat of a blend is, in sentences */
#include "core/targets/fm-targets-chance.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-number.h"
#include "core/composition/fm-fat-spread.h"

/* Two-sided 95 % point of the standard normal distribution. */
#define Z_95 1.959963984540054

/* "19.02 to 21.18 %" */
static char *
interval_of (double fat_pct, double u_pct)
{
  g_autofree char *low = fm_number_format (MAX (fat_pct - Z_95 * u_pct, 0.0), 2);
  g_autofree char *high = fm_number_format_unit (MIN (fat_pct + Z_95 * u_pct, 100.0), 2, "%");

  /* Translators: the two ends of an interval, the unit after the second */
  return g_strdup_printf (_ ("%s to %s"), low, high);
}

static char *
interval_text (const FmFatChance *chance)
{
  g_autofree char *fat = fm_number_format_unit (chance->fat_pct, 1, "%");
  g_autofree char *interval = interval_of (chance->fat_pct, chance->u_pct);

  return g_strdup_printf (_ ("Fat %s; 95 %% interval %s."), fat, interval);
}

static char *
weighing_text (const FmFatChance *chance)
{
  g_autofree char *fat = fm_number_format_unit (chance->fat_pct, 1, "%");
  g_autofree char *interval = interval_of (chance->fat_pct, chance->u_weighing_pct);

  if (!(chance->u_weighing_pct > 0.0))
    return g_strdup_printf (_ ("Fat, calculated, %s."), fat);
  return g_strdup_printf (_ ("Fat, calculated, %s; from weighing alone, 95 %% interval %s."), fat,
                          interval);
}

/* No model is so good that it may say 0 or 100 %. */
static char *
probability_text (double probability)
{
  if (probability > 0.99)
    return g_strdup (_ ("more than 99\302\240%"));
  if (probability < 0.01)
    return g_strdup (_ ("less than 1\302\240%"));
  return fm_number_format_unit (100.0 * probability, 0, "%");
}

static double
below (const FmFatChance *chance, double limit_pct, double if_open)
{
  return isnan (limit_pct) ? if_open : fm_normal_below (chance->fat_pct, chance->u_pct, limit_pct);
}

static char *
band_text (const FmFatChance *chance, const FmBand *band)
{
  const double within = below (chance, band->max, 1.0) - below (chance, band->min, 0.0);
  g_autofree char *probability = probability_text (within);
  g_autofree char *min = fm_number_format (band->min, 1);
  g_autofree char *max = fm_number_format_unit (band->max, 1, "%");
  g_autofree char *min_unit = fm_number_format_unit (band->min, 1, "%");

  if (band->min > band->max)
    return g_strdup ("");
  if (isnan (band->min) && isnan (band->max))
    return g_strdup (_ ("The brief sets no fat band to compare with."));
  if (isnan (band->min))
    return g_strdup_printf (_ ("Probability that fat is below %s: %s."), max, probability);
  if (isnan (band->max))
    return g_strdup_printf (_ ("Probability that fat is above %s: %s."), min_unit, probability);
  return g_strdup_printf (_ ("Probability that fat is within %s to %s: %s."), min, max,
                          probability);
}

/* The answer to the developer's own question; "" when it is not asked or the band says the same. */
static char *
limit_text (const FmFatChance *chance, const FmBand *band, double limit_pct)
{
  g_autofree char *limit = fm_number_format_unit (limit_pct, 1, "%");
  g_autofree char *probability = NULL;

  if (isnan (limit_pct) || (isnan (band->min) && band->max == limit_pct))
    return g_strdup ("");
  probability = probability_text (fm_normal_below (chance->fat_pct, chance->u_pct, limit_pct));
  return g_strdup_printf (_ ("Probability that fat is below %s: %s."), limit, probability);
}

/* Whose spread is not stated, and what that means for the numbers. */
static char *
gaps_text (const FmFatChance *chance)
{
  g_autofree char *names = g_strjoinv ("; ", chance->without_u);

  return g_strdup_printf (
      _ ("How sure the fat is cannot be said, as no spread of the fat is stated "
         "for: %s. Type it in their figures as the standard uncertainty of the "
         "fat."),
      names);
}

/* Each ingredient once whose published spread is, or could be, @taken; "" when there is none. */
static char *
published_names (const FmFormula *formula, gboolean taken)
{
  g_autoptr (GString) names = g_string_new (NULL);
  g_autoptr (GHashTable) seen = g_hash_table_new (g_direct_hash, g_direct_equal);

  for (guint i = 0; i < fm_formula_n_lines (formula); i++) {
    const FmFormulaLine *line = fm_formula_line (formula, i);
    const FmFatSpread *spread = fm_fat_spread_of (line->ingredient);
    const gboolean counts = taken ? fm_fat_spread_is_taken (line->ingredient)
                                  : isnan (line->ingredient->fat_u_g_per_100g);
    g_autofree char *text = NULL;

    if (spread == NULL || !counts || !(line->mass_g > 0.0) ||
        !g_hash_table_add (seen, (gpointer)spread))
      continue;
    text = fm_fat_spread_describe (spread);
    g_string_append_printf (names, "%s%s, %s", names->len > 0 ? "; " : "", line->ingredient->name,
                            text);
  }
  return g_string_free (g_steal_pointer (&names), FALSE);
}

static char *
published_text (const FmFormula *formula)
{
  g_autofree char *taken = published_names (formula, TRUE);
  g_autofree char *open = published_names (formula, FALSE);
  g_autoptr (GString) text = g_string_new (NULL);

  if (*open != '\0')
    g_string_append_printf (text, _ (" A spread between samples is published for: %s."), open);
  if (*taken != '\0')
    g_string_append_printf (text, _ (" Taken from what is published, not from your own meat: %s."),
                            taken);
  return g_string_free (g_steal_pointer (&text), FALSE);
}

static char *
known_text (const FmFatChance *chance, const FmBand *band, double limit_pct)
{
  g_autofree char *interval = interval_text (chance);
  g_autofree char *within = band_text (chance, band);
  g_autofree char *limit = limit_text (chance, band, limit_pct);

  return g_strdup_printf ("%s %s%s%s", interval, within, *limit != '\0' ? " " : "", limit);
}

static char *
unknown_text (const FmFatChance *chance)
{
  g_autofree char *weighing = weighing_text (chance);
  g_autofree char *gaps = gaps_text (chance);

  return g_strdup_printf ("%s %s", weighing, gaps);
}

char *
fm_fat_chance_text (const FmFormula *formula, double scale_step_g, double limit_pct)
{
  g_auto (FmFatChance) chance = { 0 };
  g_autoptr (GError) error = NULL;
  g_autofree char *said = NULL;
  g_autofree char *published = NULL;

  g_return_val_if_fail (formula != NULL, NULL);
  if (!fm_fat_chance_init (&chance, formula, NAN, scale_step_g, &error))
    return g_strdup (error->message);
  said = isnan (chance.u_pct)
             ? unknown_text (&chance)
             : known_text (&chance, &formula->brief->bands[FM_TARGET_FAT_PCT], limit_pct);
  published = published_text (formula);
  return g_strconcat (g_strchomp (said), published, NULL);
}
