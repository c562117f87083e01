/* fm-heat-fit.c - the contact coefficient that an experiment's own readings tell */
#include "core/heat/fm-heat.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-error.h"

#define MIN_READINGS 3
/* Points of the coarse look over the whole range, so that the search cannot stick in a side dip. */
#define N_COARSE 13
/* Golden section until the coefficient is known to this part; far below what readings can tell. */
#define FINE_ENOUGH 1e-3
#define GOLDEN 0.6180339887498949

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

  for (int i = 0; i < N_COARSE; i++) {
    double square = mean_square (search, from + i * step);
    if (square < best) {
      best = square;
      best_i = i;
    }
  }
  *low = from + MAX (best_i - 1, 0) * step;
  *high = from + MIN (best_i + 1, N_COARSE - 1) * step;
}

static double
golden_section (Search *search, double low, double high)
{
  double a = high - GOLDEN * (high - low);
  double b = low + GOLDEN * (high - low);
  double square_a = mean_square (search, a);
  double square_b = mean_square (search, b);

  while (high - low > FINE_ENOUGH * M_LOG10E) {
    if (square_a <= square_b) {
      high = b;
      b = a;
      square_b = square_a;
      a = high - GOLDEN * (high - low);
      square_a = mean_square (search, a);
    } else {
      low = a;
      a = b;
      square_a = square_b;
      b = low + GOLDEN * (high - low);
      square_b = mean_square (search, b);
    }
  }
  return (low + high) / 2.0;
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
  log_contact = golden_section (&search, low, high);
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
