/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-brief.c - what is to be developed */
#include "core/formula/fm-brief.h"

#include "core/base/fm-double.h"
#include "core/base/fm-error.h"
#include "core/base/fm-number.h"
#include "core/base/fm-text-limit.h"
#include "core/base/fm-units.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Arithmetic may leave a value this far (relatively) outside a limit that it was set to. */
#define BAND_TOLERANCE 1e-9
#define EN_DASH "\xe2\x80\x93"

FmBrief *
fm_brief_new (void)
{
  FmBrief *self = g_new0 (FmBrief, 1);
  self->patty_mass_g = FM_DEFAULT_PATTY_MASS_G;
  self->n_patties = FM_DEFAULT_N_PATTIES;
  self->surface_salt_pct = NAN;
  for (int i = 0; i < FM_N_TARGETS; i++)
    self->bands[i] = (FmBand){ NAN, NAN };
  return self;
}

FmBrief *
fm_brief_copy (const FmBrief *self)
{
  FmBrief *copy = g_memdup2 (self, sizeof *self);
  copy->doneness = g_strdup (self->doneness);
  copy->notes = g_strdup (self->notes);
  return copy;
}

void
fm_brief_free (FmBrief *self)
{
  g_free (self->doneness);
  g_free (self->notes);
  g_free (self);
}

gboolean
fm_brief_equal (const FmBrief *a, const FmBrief *b)
{
  for (int i = 0; i < FM_N_TARGETS; i++)
    if (!fm_double_same (a->bands[i].min, b->bands[i].min) ||
        !fm_double_same (a->bands[i].max, b->bands[i].max))
      return FALSE;
  return fm_double_same (a->patty_mass_g, b->patty_mass_g) && a->n_patties == b->n_patties &&
         fm_double_same (a->surface_salt_pct, b->surface_salt_pct) && a->rules == b->rules &&
         g_strcmp0 (a->doneness, b->doneness) == 0 && g_strcmp0 (a->notes, b->notes) == 0;
}

double
fm_brief_surface_sodium_mg_per_100g (const FmBrief *self)
{
  /* Per cent of the mass are grams in 100 g. */
  return isnan (self->surface_salt_pct) ? 0.0 : self->surface_salt_pct * FM_SODIUM_MG_PER_G_SALT;
}

static gboolean
check_band (const FmBand *band, FmTargetKind kind, GError **error)
{
  double max = fm_target_info (kind)->max;
  if (!fm_double_unknown_or_within (band->min, 0.0, max) ||
      !fm_double_unknown_or_within (band->max, 0.0, max)) {
    g_autofree char *limit = fm_number_to_edit (max, 0);
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("Target for %s: type limits from 0 to %s, or leave them blank."),
                 fm_target_name (kind), limit);
    return FALSE;
  }
  if (band->min > band->max) {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("Target for %s: the lower limit lies above the upper one. "
                    "Change or clear the other one first."),
                 fm_target_name (kind));
    return FALSE;
  }
  return TRUE;
}

gboolean
fm_brief_check (const FmBrief *self, GError **error)
{
  if (!(self->patty_mass_g > 0.0 && self->patty_mass_g <= FM_MAX_PATTY_MASS_G)) {
    g_autofree char *limit = fm_number_to_edit (FM_MAX_PATTY_MASS_G, 0);
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("The patty mass must be more than 0 g and at most %s g. Type it in grams."),
                 limit);
    return FALSE;
  }
  if (self->n_patties < 1 || self->n_patties > FM_MAX_N_PATTIES) {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("The number of patties must lie from 1 to %d. Type a whole number."),
                 FM_MAX_N_PATTIES);
    return FALSE;
  }
  if (!fm_double_unknown_or_within (self->surface_salt_pct, 0.0, FM_MAX_SURFACE_SALT_PCT)) {
    g_autofree char *limit = fm_number_to_edit (FM_MAX_SURFACE_SALT_PCT, 0);
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("Salt on the surface must lie from 0 to %s %%. Type it in %% of the patty, or "
                    "leave it blank."),
                 limit);
    return FALSE;
  }
  if (!fm_text_check (self->notes, _ ("Notes"), error))
    return FALSE;
  for (int i = 0; i < FM_N_TARGETS; i++)
    if (!check_band (&self->bands[i], (FmTargetKind)i, error))
      return FALSE;
  return TRUE;
}

static double
slack (double limit)
{
  return BAND_TOLERANCE * MAX (1.0, fabs (limit));
}

FmBandState
fm_band_state (const FmBand *band, double value)
{
  if (isnan (band->min) && isnan (band->max))
    return FM_BAND_NONE;
  if (isnan (value))
    return FM_BAND_UNKNOWN;
  if (value < band->min - slack (band->min))
    return FM_BAND_BELOW;
  if (value > band->max + slack (band->max))
    return FM_BAND_ABOVE;
  return FM_BAND_WITHIN;
}

/* "18–22 %", "at least 18 %", "at most 22 %" */
static char *
band_text (const FmBand *band, int decimals, const char *unit)
{
  g_autofree char *high = fm_number_format_unit (band->max, decimals, unit);
  if (isnan (band->min))
    return g_strdup_printf (_ ("at most %s"), high);
  if (isnan (band->max)) {
    g_autofree char *low = fm_number_format_unit (band->min, decimals, unit);
    return g_strdup_printf (_ ("at least %s"), low);
  }
  g_autofree char *low = fm_number_format (band->min, decimals);
  return g_strconcat (low, EN_DASH, high, NULL);
}

/* A distance that would round to 0 is still told as a distance. */
static char *
distance_text (double distance, int decimals)
{
  double step = pow (10.0, -decimals);
  if (distance >= 0.5 * step)
    return fm_number_format (distance, decimals);
  g_autofree char *smallest = fm_number_format (step, decimals);
  return g_strdup_printf (_ ("less than %s"), smallest);
}

static char *
describe_outside (const FmBand *band, gboolean below, double value, int decimals, const char *unit)
{
  double limit = below ? band->min : band->max;
  g_autofree char *distance = distance_text (fabs (value - limit), decimals);
  if (isnan (band->min) || isnan (band->max)) {
    g_autofree char *text = fm_number_format_unit (limit, decimals, unit);
    return below ? g_strdup_printf (_ ("%s below the lower limit %s"), distance, text)
                 : g_strdup_printf (_ ("%s above the upper limit %s"), distance, text);
  }
  g_autofree char *range = band_text (band, decimals, unit);
  /* Translators: distance, band, as in "3.1 above the band 18-22 %" */
  return below ? g_strdup_printf (_ ("%s below the band %s"), distance, range)
               : g_strdup_printf (_ ("%s above the band %s"), distance, range);
}

char *
fm_band_describe (const FmBand *band, double value, int decimals, const char *unit)
{
  FmBandState state = fm_band_state (band, value);
  if (state == FM_BAND_NONE)
    return g_strdup (_ ("no target"));
  if (state == FM_BAND_BELOW || state == FM_BAND_ABOVE)
    return describe_outside (band, state == FM_BAND_BELOW, value, decimals, unit);
  g_autofree char *range = band_text (band, decimals, unit);
  return state == FM_BAND_WITHIN ? g_strdup_printf (_ ("within the target: %s"), range)
                                 : g_strdup_printf (_ ("not known; the target is %s"), range);
}

static const struct {
  const char *key;
  const char *name;
} rule_sets[FM_N_RULE_SETS] = {
  [FM_RULE_SET_NONE] = { NULL, N_ ("No legal limits shown") },
  [FM_RULE_SET_US] = { "us", N_ ("United States, 9 CFR 319.15") },
  [FM_RULE_SET_EU] = { "eu", N_ ("European Union, minced meat") },
};

const char *
fm_rule_set_name (FmRuleSet rules)
{
  g_return_val_if_fail (rules < FM_N_RULE_SETS, "");
  return _ (rule_sets[rules].name);
}

const char *
fm_rule_set_key (FmRuleSet rules)
{
  g_return_val_if_fail (rules < FM_N_RULE_SETS, NULL);
  return rule_sets[rules].key;
}

FmRuleSet
fm_rule_set_from_key (const char *key)
{
  for (guint i = 0; i < FM_N_RULE_SETS; i++)
    if (g_strcmp0 (rule_sets[i].key, key) == 0)
      return (FmRuleSet)i;
  return FM_RULE_SET_NONE;
}
