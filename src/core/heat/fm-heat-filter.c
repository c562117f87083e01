/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-heat-filter.c - what the readings of a cook tell of its pan, and what follows for the centre
 */
#include "core/heat/fm-heat-filter.h"

#include <math.h>

/* For the slopes of the model: small beside the spreads, large beside its own error. */
#define CONTACT_STEP 0.02
#define PAN_STEP_K 1.0
#define MAX_ITERATIONS 12
#define NEAR_ENOUGH 1e-2 /* of a spread */
/* The nodes that weigh the posterior reach further than its top tells: our choice, no source. */
#define WIDER 2.0
/* What the model takes (fm_heat_setup_check()). */
#define MIN_PAN_C 45.0
#define MAX_PAN_C 345.0

/* A symmetric matrix of two rows. */
typedef struct {
  double a, b, d;
} Symmetric;

static Symmetric
invert (Symmetric m)
{
  const double determinant = m.a * m.d - m.b * m.b;

  return (Symmetric){ m.d / determinant, -m.b / determinant, m.a / determinant };
}

void
fm_heat_belief_init (FmHeatBelief *self, double contact_w_m2k, double pan_c)
{
  *self = (FmHeatBelief){
    .log_contact = log (contact_w_m2k),
    .pan_c = pan_c,
    .var_contact = FM_HEAT_LOG_CONTACT_SD * FM_HEAT_LOG_CONTACT_SD,
    .var_pan = FM_HEAT_PAN_SD_K * FM_HEAT_PAN_SD_K,
  };
}

void
fm_heat_belief_age (FmHeatBelief *self)
{
  self->var_contact += 0.1 * 0.1;
  self->var_pan += 5.0 * 5.0;
  self->n_readings = 0;
}

static FmHeatResult *
run (const FmHeatSetup *setup, double log_contact, double pan_c, GError **error)
{
  FmHeatSetup one = *setup;

  one.contact_w_m2k = exp (log_contact);
  one.pan_c = pan_c;
  return fm_heat_predict (&one, error);
}

/* The model at one place and a step beside it in both directions. */
typedef struct {
  FmHeatResult *at;
  FmHeatResult *contact;
  FmHeatResult *pan;
} Runs;

static void
runs_clear (Runs *self)
{
  g_clear_pointer (&self->at, fm_heat_result_free);
  g_clear_pointer (&self->contact, fm_heat_result_free);
  g_clear_pointer (&self->pan, fm_heat_result_free);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Runs, runs_clear)

static gboolean
run_all (Runs *self, const FmHeatSetup *setup, const FmHeatBelief *belief, GError **error)
{
  self->at = run (setup, belief->log_contact, belief->pan_c, error);
  if (self->at != NULL)
    self->contact = run (setup, belief->log_contact + CONTACT_STEP, belief->pan_c, error);
  if (self->contact != NULL)
    self->pan = run (setup, belief->log_contact, belief->pan_c + PAN_STEP_K, error);
  return self->pan != NULL;
}

/* Centre and its slopes at @time_s; NaN outside. */
static double
look (const Runs *self, double time_s, double *by_contact, double *by_pan)
{
  const double centre_c = fm_heat_centre_at (self->at, time_s);

  *by_contact = (fm_heat_centre_at (self->contact, time_s) - centre_c) / CONTACT_STEP;
  *by_pan = (fm_heat_centre_at (self->pan, time_s) - centre_c) / PAN_STEP_K;
  return centre_c;
}

static void
clamp (FmHeatBelief *self)
{
  self->log_contact =
      CLAMP (self->log_contact, log (FM_HEAT_CONTACT_MIN_W_M2K), log (FM_HEAT_CONTACT_MAX_W_M2K));
  self->pan_c = CLAMP (self->pan_c, MIN_PAN_C, MAX_PAN_C);
}

/* One step of Gauss and Newton. Returns: its size in spreads of the prior. */
static double
step (FmHeatBelief *self, const FmHeatBelief *prior, const Runs *runs, const GArray *readings)
{
  const double weight = 1.0 / (FM_HEAT_READING_SD_K * FM_HEAT_READING_SD_K);
  const Symmetric before = { prior->var_contact, prior->covariance, prior->var_pan };
  Symmetric curvature = invert (before);
  const double from_contact = prior->log_contact - self->log_contact;
  const double from_pan = prior->pan_c - self->pan_c;
  double pull_contact = curvature.a * from_contact + curvature.b * from_pan;
  double pull_pan = curvature.b * from_contact + curvature.d * from_pan;
  double move_contact, move_pan;
  Symmetric spread;
  double squares = 0.0;

  self->n_readings = 0;
  for (guint i = 0; i < readings->len; i++) {
    const FmCoreReading *reading = &g_array_index (readings, FmCoreReading, i);
    double by_contact, by_pan;
    const double missing_k = reading->temp_c - look (runs, reading->time_s, &by_contact, &by_pan);

    if (isnan (missing_k))
      continue;
    self->n_readings++;
    squares += missing_k * missing_k;
    curvature.a += weight * by_contact * by_contact;
    curvature.b += weight * by_contact * by_pan;
    curvature.d += weight * by_pan * by_pan;
    pull_contact += weight * by_contact * missing_k;
    pull_pan += weight * by_pan * missing_k;
  }
  self->misfit_k = self->n_readings > 0 ? sqrt (squares / self->n_readings) : 0.0;
  spread = invert (curvature);
  move_contact = spread.a * pull_contact + spread.b * pull_pan;
  move_pan = spread.b * pull_contact + spread.d * pull_pan;
  self->log_contact += move_contact;
  self->pan_c += move_pan;
  clamp (self);
  self->var_contact = spread.a;
  self->covariance = spread.b;
  self->var_pan = spread.d;
  return hypot (move_contact / sqrt (before.a), move_pan / sqrt (before.d));
}

/* What is to be made small: squares of the readings about the model and of the move from @prior,
 * each in its own spread. */
static double
badness (const FmHeatBelief *self,
         const FmHeatBelief *prior,
         const Runs *runs,
         const GArray *readings)
{
  const Symmetric curvature =
      invert ((Symmetric){ prior->var_contact, prior->covariance, prior->var_pan });
  const double by_contact = self->log_contact - prior->log_contact;
  const double by_pan = self->pan_c - prior->pan_c;
  double sum = curvature.a * by_contact * by_contact + 2.0 * curvature.b * by_contact * by_pan +
               curvature.d * by_pan * by_pan;

  for (guint i = 0; i < readings->len; i++) {
    const FmCoreReading *reading = &g_array_index (readings, FmCoreReading, i);
    const double missing_k =
        (reading->temp_c - fm_heat_centre_at (runs->at, reading->time_s)) / FM_HEAT_READING_SD_K;

    if (!isnan (missing_k))
      sum += missing_k * missing_k;
  }
  return sum;
}

static void
go_halfway (FmHeatBelief *self, const FmHeatBelief *to)
{
  self->log_contact = (self->log_contact + to->log_contact) / 2.0;
  self->pan_c = (self->pan_c + to->pan_c) / 2.0;
}

/* Gauss and Hermite's three points: exact for polynomials up to the fifth power. */
typedef struct {
  double at;
  double weight;
} Node;

static const Node nodes[] = { { -1.7320508075688772, 1.0 / 6.0 },
                              { 0.0, 2.0 / 3.0 },
                              { 1.7320508075688772, 1.0 / 6.0 } };

/* @belief moved by so many spreads along each axis of its ellipse, as one that is certain. */
static FmHeatBelief
move (const FmHeatBelief *belief, double first, double second)
{
  FmHeatBelief moved = *belief;
  const double by_contact = sqrt (belief->var_contact);
  const double slope = belief->covariance / by_contact;
  const double left = sqrt (fmax (belief->var_pan - slope * slope, 0.0));

  moved.log_contact += by_contact * first;
  moved.pan_c += slope * first + left * second;
  clamp (&moved);
  return moved;
}

/* The best place so far, with the spread that the curvature there tells. */
static void
keep (FmHeatBelief *best, const FmHeatBelief *place, const FmHeatBelief *spread)
{
  *best = *spread;
  best->log_contact = place->log_contact;
  best->pan_c = place->pan_c;
}

/* Gauss and Hermite's five points (Abramowitz & Stegun, table 25.10; from memory). */
static const Node fine_nodes[] = {
  { -2.8569700138728056, 0.011257411327720689 },
  { -1.3556261799742659, 0.22207592200561266 },
  { 0.0, 0.53333333333333333 },
  { 1.3556261799742659, 0.22207592200561266 },
  { 2.8569700138728056, 0.011257411327720689 },
};

/* The sums that make mean and spread of the posterior. */
typedef struct {
  double weight;
  double contact, pan;
  double contact_2, both, pan_2;
} Moments;

static void
add_moment (Moments *self, double weight, double contact, double pan)
{
  self->weight += weight;
  self->contact += weight * contact;
  self->pan += weight * pan;
  self->contact_2 += weight * contact * contact;
  self->both += weight * contact * pan;
  self->pan_2 += weight * pan * pan;
}

static void
take_moments (FmHeatBelief *self, const Moments *moments)
{
  const double contact = moments->contact / moments->weight;
  const double pan = moments->pan / moments->weight;

  const double var_contact = moments->contact_2 / moments->weight - contact * contact;
  const double covariance = moments->both / moments->weight - contact * pan;
  const double var_pan = moments->pan_2 / moments->weight - pan * pan;

  /* Where one node outweighs all others it tells no spread: that at the top stands. */
  if (!(var_contact > 0.1 * self->var_contact && var_pan > 0.1 * self->var_pan &&
        covariance * covariance < 0.9999 * var_contact * var_pan))
    return;
  self->log_contact += contact;
  self->pan_c += pan;
  self->var_contact = var_contact;
  self->covariance = covariance;
  self->var_pan = var_pan;
}

/* The posterior is not normal: mean and spread of its own, by weighing nodes about its top by how
 * probable each is beside a normal one of twice the variance. */
static gboolean
match_moments (FmHeatBelief *top,
               const FmHeatBelief *prior,
               const FmHeatSetup *setup,
               const GArray *readings,
               double least,
               GError **error)
{
  const guint n = G_N_ELEMENTS (fine_nodes);
  FmHeatBelief wide = *top;
  Moments moments = { 0 };

  wide.var_contact *= WIDER;
  wide.covariance *= WIDER;
  wide.var_pan *= WIDER;
  for (guint i = 0; i < n * n; i++) {
    const Node *one = &fine_nodes[i / n];
    const Node *other = &fine_nodes[i % n];
    const FmHeatBelief node = move (&wide, one->at, other->at);
    Runs runs = { run (setup, node.log_contact, node.pan_c, error), NULL, NULL };
    double surplus;

    if (runs.at == NULL)
      return FALSE;
    surplus =
        badness (&node, prior, &runs, readings) - least - one->at * one->at - other->at * other->at;
    runs_clear (&runs);
    add_moment (&moments, one->weight * other->weight * exp (-surplus / 2.0),
                node.log_contact - top->log_contact, node.pan_c - top->pan_c);
  }
  take_moments (top, &moments);
  return TRUE;
}

gboolean
fm_heat_belief_update (const FmHeatBelief *prior,
                       const FmHeatSetup *setup,
                       const GArray *readings,
                       FmHeatBelief *posterior,
                       GError **error)
{
  const FmHeatBelief start = *prior;
  FmHeatBelief belief = start;
  FmHeatBelief best = start;
  double least = INFINITY;

  for (int i = 0; i < MAX_ITERATIONS; i++) {
    const FmHeatBelief place = belief;
    g_auto (Runs) runs = { NULL, NULL, NULL };
    double bad, size;

    if (!run_all (&runs, setup, &belief, error))
      return FALSE;
    bad = badness (&belief, &start, &runs, readings);
    if (bad > least) {
      go_halfway (&belief, &best);
      continue;
    }
    least = bad;
    size = step (&belief, &start, &runs, readings);
    keep (&best, &place, &belief);
    if (size < NEAR_ENOUGH)
      break;
  }
  if (best.n_readings > 0 && !match_moments (&best, &start, setup, readings, least, error))
    return FALSE;
  *posterior = best;
  return TRUE;
}

/* Adds what the model says at one node to mean and mean square. */
static gboolean
add_node (const FmHeatBelief *belief,
          const FmHeatSetup *setup,
          double weight,
          FmHeatForecast *forecasts,
          guint n,
          GError **error)
{
  g_autoptr (FmHeatResult) result = run (setup, belief->log_contact, belief->pan_c, error);

  for (guint i = 0; result != NULL && i < n; i++) {
    const double centre_c = fm_heat_centre_at (result, forecasts[i].time_s);

    forecasts[i].centre_c += weight * centre_c;
    forecasts[i].sd_k += weight * centre_c * centre_c;
  }
  return result != NULL;
}

gboolean
fm_heat_forecast (const FmHeatBelief *belief,
                  const FmHeatSetup *setup,
                  FmHeatForecast *forecasts,
                  guint n,
                  GError **error)
{
  const guint n_nodes = G_N_ELEMENTS (nodes);

  for (guint i = 0; i < n; i++)
    forecasts[i].centre_c = forecasts[i].sd_k = 0.0;
  for (guint i = 0; i < n_nodes * n_nodes; i++) {
    const FmHeatBelief one = move (belief, nodes[i / n_nodes].at, nodes[i % n_nodes].at);

    if (!add_node (&one, setup, nodes[i / n_nodes].weight * nodes[i % n_nodes].weight, forecasts, n,
                   error))
      return FALSE;
  }
  for (guint i = 0; i < n; i++)
    forecasts[i].sd_k =
        sqrt (fmax (forecasts[i].sd_k - forecasts[i].centre_c * forecasts[i].centre_c, 0.0));
  return TRUE;
}

double
fm_heat_forecast_half_band_k (const FmHeatForecast *forecast, double start_c)
{
  return FM_HEAT_BAND_90 *
         hypot (forecast->sd_k, FM_HEAT_MODEL_PART * (forecast->centre_c - start_c));
}
