/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-experiment-patties.c - mean, spread and cook loss of single patties */
#include "core/experiment/fm-experiment.h"

#include <math.h>

/* Running mean and sum of squared deviations (Welford 1962), which does not cancel when the
 * spread is small beside the mean. */
typedef struct {
  guint n;
  double mean;
  double m2;
} Spread;

static void
spread_add (Spread *spread, double value)
{
  double delta = value - spread->mean;

  spread->n++;
  spread->mean += delta / spread->n;
  spread->m2 += delta * (value - spread->mean);
}

static double
spread_sd (const Spread *spread)
{
  return spread->n < 2 ? NAN : sqrt (spread->m2 / (spread->n - 1));
}

static gboolean
outside_tolerance (const FmExperiment *self, double raw_g)
{
  double allowed_g = self->patty_target_g * self->patty_tolerance_pct / 100.0;

  /* The hair keeps a patty exactly at the limit inside; an unknown limit counts nobody. */
  return fabs (raw_g - self->patty_target_g) > allowed_g + 1e-9;
}

void
fm_experiment_patty_stats (const FmExperiment *self, FmPattyStats *stats)
{
  Spread raw = { 0 };
  Spread loss = { 0 };
  double raw_sum_g = 0;
  double cooked_sum_g = 0;

  *stats = (FmPattyStats){ .min_g = NAN, .max_g = NAN };
  for (guint i = 0; i < self->patties->len; i++) {
    const FmPattyMass *patty = &g_array_index (self->patties, FmPattyMass, i);
    if (isnan (patty->raw_g))
      continue;
    spread_add (&raw, patty->raw_g);
    stats->min_g = fmin (stats->min_g, patty->raw_g);
    stats->max_g = fmax (stats->max_g, patty->raw_g);
    stats->n_outside += outside_tolerance (self, patty->raw_g) ? 1 : 0;
    if (isnan (patty->cooked_g) || patty->raw_g <= 0)
      continue;
    raw_sum_g += patty->raw_g;
    cooked_sum_g += patty->cooked_g;
    spread_add (&loss, 100.0 * (1.0 - patty->cooked_g / patty->raw_g));
  }
  stats->n = raw.n;
  stats->mean_g = raw.n > 0 ? raw.mean : NAN;
  stats->sd_g = spread_sd (&raw);
  stats->n_cooked = loss.n;
  stats->cook_loss_pct = loss.n > 0 ? 100.0 * (1.0 - cooked_sum_g / raw_sum_g) : NAN;
  stats->cook_loss_sd_pct = spread_sd (&loss);
}
