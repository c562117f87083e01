/* fm-targets-sure.c - how sure the fat of a blend is, in sentences */
#include "app/targets/fm-targets-sure.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-number.h"
#include "core/targets/fm-targets-chance.h"

static char *
interval_text (const FmFatChance *chance)
{
  g_autofree char *fat = fm_number_format_unit (chance->fat_pct, 1, "%");
  g_autofree char *low = fm_number_format (MAX (chance->low_pct, 0.0), 2);
  g_autofree char *high = fm_number_format_unit (MIN (chance->high_pct, 100.0), 2, "%");

  return g_strdup_printf (_ ("Fat %s; 95 %% interval %s to %s."), fat, low, high);
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

/* Named once, and what that means for the numbers. */
static char *
gaps_text (const FmFatChance *chance)
{
  g_autofree char *names = g_strjoinv ("; ", chance->without_u);

  if (chance->without_u[0] == NULL)
    return g_strdup ("");
  return g_strdup_printf (_ ("Taken as exact, because they state no uncertainty: %s."), names);
}

char *
fm_targets_sure_text (const FmFormula *formula, double scale_step_g, double limit_pct)
{
  g_auto (FmFatChance) chance = { 0 };
  g_autoptr (GError) error = NULL;
  g_autofree char *interval = NULL;
  g_autofree char *band = NULL;
  g_autofree char *limit = NULL;
  g_autofree char *gaps = NULL;

  g_return_val_if_fail (formula != NULL, NULL);
  if (!fm_fat_chance_init (&chance, formula, NAN, scale_step_g, &error))
    return g_strdup (error->message);
  if (isnan (chance.u_pct))
    return g_strdup (_ ("How sure the fat is cannot be said: no ingredient states how uncertain "
                        "its fat is, and no scale step is given."));
  interval = interval_text (&chance);
  band = band_text (&chance, &formula->brief->bands[FM_TARGET_FAT_PCT]);
  limit = limit_text (&chance, &formula->brief->bands[FM_TARGET_FAT_PCT], limit_pct);
  gaps = gaps_text (&chance);
  return g_strstrip (g_strdup_printf ("%s %s%s%s%s%s", interval, band, *limit ? " " : "", limit,
                                      *gaps ? " " : "", gaps));
}
