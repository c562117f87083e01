/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-mix-standing.c - whether a fitted map may speak of a best blend at all */
#include "core/mixture/fm-mix-standing.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-number.h"
#include "core/mixture/fm-mix-fit-private.h"
#include "core/statistics/fm-panel-text.h"

#define ALPHA 0.05
/* beyond an end by less than this part of the scale is rounding */
#define END_TOLERANCE 1e-6

/* The model was perhaps the best of these. */
static guint
n_orders (const FmMixFit *fit)
{
  return fit->q < 3 ? 2 : 3;
}

static FmMixStanding
standing_of_fit (const FmMixFit *fit)
{
  if (!(fit->ss_total > 0.0))
    return FM_MIX_ALL_ALIKE;
  if (isnan (fit->loo_blend_rmse) || isnan (fit->loo_mean_rmse))
    return FM_MIX_QUALITY_UNKNOWN;
  if (fit->p_lack <= ALPHA)
    return FM_MIX_LACKS_FIT;
  if (!(fit->loo_blend_rmse < fit->loo_mean_rmse))
    return FM_MIX_BEATS_NO_MEAN;
  if (!(fit->p <= ALPHA / n_orders (fit)))
    return FM_MIX_NOT_BEYOND_CHANCE;
  return FM_MIX_PREDICTS;
}

static gboolean
find_ends (const FmMixFit *fit,
           const FmMixRegion *region,
           FmMixVerdict *verdict,
           const FmStop *stop,
           GError **error)
{
  const FmMixGoal most = { .kind = FM_MIX_GOAL_HIGH, .weight = 1.0 };
  const FmMixGoal least = { .kind = FM_MIX_GOAL_LOW, .weight = 1.0 };
  FmMixSpot spot;

  if (!fm_mix_find_best (fit, region, &least, &spot, stop, error))
    return FALSE;
  verdict->low = spot.value;
  if (!fm_mix_find_best (fit, region, &most, &spot, stop, error))
    return FALSE;
  verdict->high = spot.value;
  return TRUE;
}

gboolean
fm_mix_judge (const FmMixFit *fit,
              const FmMixRegion *region,
              const FmMixResponse *response,
              FmMixVerdict *verdict,
              const FmStop *stop,
              GError **error)
{
  const double tolerance = END_TOLERANCE * (response->high_end - response->low_end);

  *verdict = (FmMixVerdict){ standing_of_fit (fit), NAN, NAN };
  if (verdict->standing != FM_MIX_PREDICTS || !(response->high_end > response->low_end))
    return TRUE;
  if (!find_ends (fit, region, verdict, stop, error))
    return FALSE;
  if (verdict->low < response->low_end - tolerance ||
      verdict->high > response->high_end + tolerance)
    verdict->standing = FM_MIX_LEAVES_SCALE;
  return TRUE;
}

/* An error that is there is never told as none. */
static char *
off_text (const FmMixResponse *response, double off)
{
  const double step = pow (10.0, -response->decimals);
  g_autofree char *least = fm_mix_value_text (response, step);

  if (off >= step / 2.0)
    return fm_mix_value_text (response, off);
  /* TRANSLATORS: "0.1" */
  return g_strdup_printf (_ ("less than %s"), least);
}

/* "is off by 0.3, typically; the plain mean of the other blends would be off by 0.8" */
static char *
quality_text (const FmMixFit *fit, const FmMixResponse *response)
{
  g_autofree char *model = fm_mix_model_name (fit->order);
  g_autofree char *off = off_text (response, fit->loo_blend_rmse);
  g_autofree char *plain = off_text (response, fit->loo_mean_rmse);

  /* TRANSLATORS: "liking", "quadratic model", "0.3", "0.8" */
  return g_strdup_printf (_ ("For the mean %s of a blend it has not seen, the %s is off by %s, "
                             "typically; the plain mean of the other blends would be off by %s "
                             "(each blend left out in turn)."),
                          response->name, model, off, plain);
}

/* One sentence, then how far off the map is */
static char *
does_not_predict (const char *why, const FmMixFit *fit, const FmMixResponse *response)
{
  g_autofree char *quality = quality_text (fit, response);

  return g_strdup_printf (_ ("This map does not predict yet: %s %s"), why, quality);
}

static char *
chance_text (const FmMixFit *fit, const FmMixResponse *response)
{
  g_autofree char *p = fm_panel_p_text (fit->p);
  g_autofree char *why = NULL;

  /* TRANSLATORS: "liking", "p = 0.2" */
  why = g_strdup_printf (_ ("blends that are all alike would give differences in %s as large as "
                            "these too often (%s; at most 0.05 is asked of all models tried "
                            "together)."),
                         response->name, p);
  return does_not_predict (why, fit, response);
}

static char *
scale_text (const FmMixVerdict *verdict, const FmMixFit *fit, const FmMixResponse *response)
{
  g_autofree char *low = fm_mix_value_text (response, verdict->low);
  g_autofree char *high = fm_mix_value_text (response, verdict->high);
  g_autofree char *low_end = fm_mix_value_text (response, response->low_end);
  g_autofree char *high_end = fm_mix_value_text (response, response->high_end);
  g_autofree char *why = NULL;

  if (!isfinite (response->high_end))
    /* TRANSLATORS: "cost", "-2.0", "0.0" */
    why =
        g_strdup_printf (_ ("within the map the model expects %s down to %s, and there is nothing "
                            "below %s."),
                         response->name, low, low_end);
  else
    /* TRANSLATORS: "liking", "-2.0", "12.7", "1.0", "9.0" */
    why = g_strdup_printf (_ ("within the map the model expects %s from %s to %s, and the scale "
                              "goes from %s to %s."),
                           response->name, low, high, low_end, high_end);
  return does_not_predict (why, fit, response);
}

char *
fm_mix_verdict_sentence (const FmMixVerdict *verdict,
                         const FmMixFit *fit,
                         const FmMixResponse *response)
{
  g_autofree char *model = fm_mix_model_name (fit->order);

  switch (verdict->standing) {
  case FM_MIX_PREDICTS:
    return quality_text (fit, response);
  case FM_MIX_ALL_ALIKE:
    return g_strdup_printf (_ ("All values of %s are the same, so there is nothing to map."),
                            response->name);
  case FM_MIX_QUALITY_UNKNOWN:
    return g_strdup_printf (_ ("This map does not predict yet: how well the %s predicts %s of a "
                               "new blend cannot be told, since without one of the blends the "
                               "others could not carry it. One more different blend inside the "
                               "region would help."),
                            model, response->name);
  case FM_MIX_BEATS_NO_MEAN:
    return does_not_predict (_ ("the model is no nearer than a plain mean."), fit, response);
  case FM_MIX_NOT_BEYOND_CHANCE:
    return chance_text (fit, response);
  case FM_MIX_LACKS_FIT:
    return does_not_predict (_ ("the model misses something."), fit, response);
  case FM_MIX_LEAVES_SCALE:
    return scale_text (verdict, fit, response);
  }
  g_return_val_if_reached (NULL);
}
