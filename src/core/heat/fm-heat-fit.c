/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-heat-fit.c - the contact coefficient that an experiment's own readings tell */
#include "core/heat/fm-heat.h"

#include <glib/gi18n-lib.h>
#include <gsl/gsl_min.h>
#include <math.h>

#include "core/base/fm-error.h"

#define MIN_READINGS 3
/* Points of the coarse look over the whole range, so that the search cannot stick in a side dip. */
#define N_COARSE 13
/* They only say where to search, and a grid of this kind is ten times faster. */
#define COARSE_CELLS 41
#define COARSE_STEP_S 1.0
/* Until the coefficient is known to this part; far below what readings can tell. */
#define FINE_ENOUGH 1e-3
#define MAX_STEPS 60
#define NO_FIT 1e30

typedef struct {
  FmHeatSetup setup;
  const GArray *readings;
  const FmStop *stop;
  GError *error; /* the first that turned up */
} Search;

static gboolean
is_usable (const FmCoreReading *reading, double end_s)
{
  return isfinite (reading->temp_c) && reading->time_s >= 0 && reading->time_s <= end_s;
}

static guint
count_usable (const FmHeatSetup *setup, const GArray *readings)
{
  guint n = 0;

  for (guint i = 0; readings != NULL && i < readings->len; i++)
    n += is_usable (&g_array_index (readings, FmCoreReading, i), setup->off_s + setup->rest_s);
  return n;
}

/* Mean square of prediction minus reading at 10^@log_contact. */
static double
mean_square (Search *search, double log_contact)
{
  g_autoptr (FmHeatResult) result = NULL;
  double end_s = search->setup.off_s + search->setup.rest_s;
  double sum = 0;
  guint n = 0;

  if (search->error == NULL && fm_stop_asked (search->stop))
    g_set_error_literal (&search->error, FM_CORE_ERROR, FM_CORE_ERROR_STOPPED,
                         _ ("The fit was stopped."));
  if (search->error != NULL) /* what is left of the search would be for nothing */
    return INFINITY;
  search->setup.contact_w_m2k = pow (10.0, log_contact);
  result = fm_heat_predict (&search->setup, &search->error);
  if (result == NULL)
    return INFINITY;
  for (guint i = 0; i < search->readings->len; i++) {
    const FmCoreReading *reading = &g_array_index (search->readings, FmCoreReading, i);

    if (is_usable (reading, end_s)) {
      double difference =
          fm_heat_centre_at (result, fmin (reading->time_s, result->time_s[result->n - 1])) -
          reading->temp_c;
      sum += difference * difference;
      n++;
    }
  }
  return sum / n;
}

/* Best of a coarse grid: the minimum lies between its neighbours. */
static void
bracket (Search *search, double *low, double *high)
{
  double from = log10 (FM_HEAT_CONTACT_MIN_W_M2K);
  double step = (log10 (FM_HEAT_CONTACT_MAX_W_M2K) - from) / (N_COARSE - 1);
  double best = INFINITY;
  int best_i = 0;
  const FmHeatSetup usual = search->setup;

  search->setup.n_cells = MIN (usual.n_cells, COARSE_CELLS);
  search->setup.step_s = fmax (usual.step_s, COARSE_STEP_S);
  for (int i = 0; i < N_COARSE; i++) {
    double square = mean_square (search, from + i * step);
    if (square < best) {
      best = square;
      best_i = i;
    }
  }
  search->setup = usual;
  *low = from + MAX (best_i - 1, 0) * step;
  *high = from + MIN (best_i + 1, N_COARSE - 1) * step;
}

/* The minimiser wants finite values; a search that was stopped has none. */
static double
finite_mean_square (double log_contact, void *params)
{
  return fmin (mean_square (params, log_contact), NO_FIT);
}

typedef struct {
  double low, middle, high;
  double at_low, at_middle, at_high;
} Bracket;

/* Draws the ends together until the middle lies below both; FALSE when an end stays the lowest. */
static gboolean
enclose (Search *search, Bracket *b)
{
  b->at_low = finite_mean_square (b->low, search);
  b->at_high = finite_mean_square (b->high, search);
  while (b->high - b->low > FINE_ENOUGH * M_LOG10E) {
    b->middle = (b->low + b->high) / 2.0;
    b->at_middle = finite_mean_square (b->middle, search);
    if (b->at_middle < b->at_low && b->at_middle < b->at_high)
      return TRUE;
    if (b->at_low <= b->at_high) {
      b->high = b->middle;
      b->at_high = b->at_middle;
    } else {
      b->low = b->middle;
      b->at_low = b->at_middle;
    }
  }
  return FALSE;
}

static double
refine (Search *search, double low, double high)
{
  gsl_function f = { finite_mean_square, search };
  Bracket b = { .low = low, .high = high };
  gsl_min_fminimizer *minimizer;

  if (!enclose (search, &b))
    return (b.low + b.high) / 2.0;
  minimizer = gsl_min_fminimizer_alloc (gsl_min_fminimizer_brent);
  gsl_min_fminimizer_set_with_values (minimizer, &f, b.middle, b.at_middle, b.low, b.at_low, b.high,
                                      b.at_high);
  for (int i = 0; i < MAX_STEPS; i++) {
    gsl_min_fminimizer_iterate (minimizer);
    if (gsl_min_fminimizer_x_upper (minimizer) - gsl_min_fminimizer_x_lower (minimizer) <=
        FINE_ENOUGH * M_LOG10E)
      break;
  }
  b.middle = gsl_min_fminimizer_x_minimum (minimizer);
  gsl_min_fminimizer_free (minimizer);
  return b.middle;
}

gboolean
fm_heat_fit_contact (const FmHeatSetup *setup,
                     const GArray *readings,
                     const FmStop *stop,
                     FmHeatFit *fit,
                     GError **error)
{
  Search search = { .setup = *setup, .readings = readings, .stop = stop, .error = NULL };
  FmHeatFit found = { .n_readings = 0 };
  double low, high, log_contact;

  if (!fm_heat_setup_check (setup, error))
    return FALSE;
  found.n_readings = count_usable (setup, readings);
  if (found.n_readings < MIN_READINGS) {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY,
                 ngettext ("Fitting the pan needs at least %d core reading while the patty cooks "
                           "or rests.",
                           "Fitting the pan needs at least %d core readings while the patty cooks "
                           "or rests.",
                           MIN_READINGS),
                 MIN_READINGS);
    return FALSE;
  }
  found.rms_before_c = sqrt (mean_square (&search, log10 (setup->contact_w_m2k)));
  bracket (&search, &low, &high);
  log_contact = refine (&search, low, high);
  found.rms_c = sqrt (mean_square (&search, log_contact));
  found.contact_w_m2k = pow (10.0, log_contact);
  found.at_bound = found.contact_w_m2k < FM_HEAT_CONTACT_MIN_W_M2K * 1.01 ||
                   found.contact_w_m2k > FM_HEAT_CONTACT_MAX_W_M2K * 0.99;
  /* The search comes near its end but never onto it. */
  if (found.at_bound)
    found.contact_w_m2k = found.contact_w_m2k > FM_HEAT_CONTACT_MAX_W_M2K / 2.0
                              ? FM_HEAT_CONTACT_MAX_W_M2K
                              : FM_HEAT_CONTACT_MIN_W_M2K;
  if (search.error != NULL) {
    g_propagate_error (error, search.error);
    return FALSE;
  }
  *fit = found;
  return TRUE;
}
