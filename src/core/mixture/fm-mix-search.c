/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-mix-search.c - the blend in a region where something is largest
 *
 * Direct search (Hooke and Jeeves, 1961, J. ACM 8) kept inside the region, from many starts:
 * corners, centroid and the middles between them are climbed from coarsely, the best tops then
 * finely. Steps take from one share and give to another; where linear limits bound the region also
 * towards each vertex, since every way that stays inside is a sum of such steps.
 */
#include <glib/gi18n-lib.h>
#include <gsl/gsl_cdf.h>
#include <gsl/gsl_randist.h>
#include <math.h>
#include <string.h>

#include "core/base/fm-error.h"
#include "core/mixture/fm-mix-fit-private.h"

#define N_COARSE 64
#define N_FINE 6
/* parts of the region's widest side */
#define FIRST_STEP 0.25
#define COARSE_STEP 0.01
#define LAST_STEP 1e-8 /* of the whole mixture */
/* beyond so many corners the middles of all pairs are too many starts */
#define MAX_PAIRED 24
/* beyond so many vertices a step towards each takes too long; the exchange of shares remains */
#define MAX_TARGETS 400

typedef double (*ValueFunc) (gconstpointer data, const double *x);

typedef struct {
  const FmMixRegion *region;
  FmMixPoints *vertices;
  ValueFunc value;
  gconstpointer data;
  const FmStop *stop;
  double size; /* widest side of the region */
} Search;

/* Longest step from @x along @d that stays inside */
static double
room (const FmMixRegion *region, const double *x, const double *d)
{
  double longest = INFINITY;

  for (guint i = 0; i < region->q; i++)
    if (d[i] > 0.0)
      longest = MIN (longest, (region->upper[i] - x[i]) / d[i]);
    else if (d[i] < 0.0)
      longest = MIN (longest, (region->lower[i] - x[i]) / d[i]);
  for (guint l = 0; l < region->n_limits; l++) {
    const FmMixLimit *limit = &region->limit[l];
    double here = 0.0, slope = 0.0;
    for (guint i = 0; i < region->q; i++) {
      here += limit->a[i] * x[i];
      slope += limit->a[i] * d[i];
    }
    if (slope > 0.0)
      longest = MIN (longest, (limit->high - here) / slope);
    else if (slope < 0.0)
      longest = MIN (longest, (limit->low - here) / slope);
  }
  return MAX (longest, 0.0);
}

/* Tries @step along @d, shorter where the region ends; keeps what is better */
static gboolean
try_step (const Search *self, FmMixSpot *at, const double *d, double step)
{
  FmMixSpot next = *at;
  const double length = MIN (step, room (self->region, at->x, d));

  if (length < LAST_STEP / 4)
    return FALSE;
  for (guint i = 0; i < self->region->q; i++)
    next.x[i] = at->x[i] + length * d[i];
  next.value = self->value (self->data, next.x);
  if (!(next.value > at->value + 1e-14 * fabs (at->value)))
    return FALSE;
  *at = next;
  return TRUE;
}

static gboolean
try_exchanges (const Search *self, FmMixSpot *at, double step)
{
  const guint q = self->region->q;
  gboolean better = FALSE;

  for (guint i = 0; i < q; i++)
    for (guint j = 0; j < q; j++) {
      double d[FM_MIX_MAX_COMPONENTS] = { 0 };
      if (i == j)
        continue;
      d[i] = 1.0;
      d[j] = -1.0;
      better |= try_step (self, at, d, step);
    }
  return better;
}

static gboolean
try_vertices (const Search *self, FmMixSpot *at, double step)
{
  gboolean better = FALSE;

  if (self->region->n_limits == 0 || self->vertices->n > MAX_TARGETS)
    return FALSE;
  for (guint v = 0; v < self->vertices->n; v++) {
    const double *vertex = fm_mix_points_get (self->vertices, v);
    double d[FM_MIX_MAX_COMPONENTS], length = 0.0;
    for (guint i = 0; i < self->region->q; i++) {
      d[i] = vertex[i] - at->x[i];
      length = MAX (length, fabs (d[i]));
    }
    if (length < LAST_STEP)
      continue;
    for (guint i = 0; i < self->region->q; i++)
      d[i] /= length;
    better |= try_step (self, at, d, MIN (step, length));
  }
  return better;
}

/* One round of steps, then the same way once more */
static gboolean
explore (const Search *self, FmMixSpot *at, double step)
{
  const FmMixSpot before = *at;
  double d[FM_MIX_MAX_COMPONENTS];

  gboolean better = try_exchanges (self, at, step);
  better |= try_vertices (self, at, step);
  if (!better)
    return FALSE;
  for (guint i = 0; i < self->region->q; i++)
    d[i] = at->x[i] - before.x[i];
  while (try_step (self, at, d, 1.0)) {
  }
  return TRUE;
}

static void
climb (const Search *self, FmMixSpot *at, double first, double last)
{
  for (double step = first; step > last; step /= 2)
    for (guint round = 0; round < 200 && explore (self, at, step); round++)
      if (fm_stop_asked (self->stop))
        return;
}

static int
compare_spots (gconstpointer a, gconstpointer b)
{
  const double x = ((const FmMixSpot *)a)->value, y = ((const FmMixSpot *)b)->value;
  return x > y ? -1 : x < y;
}

static void
add_start (const Search *self, GArray *starts, const double *x)
{
  FmMixSpot spot = { 0 };
  memcpy (spot.x, x, self->region->q * sizeof (double));
  spot.value = self->value (self->data, x);
  if (!isnan (spot.value))
    g_array_append_val (starts, spot);
}

static void
add_middle (const Search *self, GArray *starts, const double *a, const double *b)
{
  double middle[FM_MIX_MAX_COMPONENTS];

  for (guint i = 0; i < self->region->q; i++)
    middle[i] = (a[i] + b[i]) / 2;
  add_start (self, starts, middle);
}

/* The centroid, corners, the middles between each and the centroid, those of pairs; best first */
static GArray *
gather_starts (const Search *self)
{
  const guint q = self->region->q, n = self->vertices->n;
  GArray *starts = g_array_new (FALSE, FALSE, sizeof (FmMixSpot));
  double centroid[FM_MIX_MAX_COMPONENTS] = { 0 };

  for (guint v = 0; v < n; v++)
    for (guint i = 0; i < q; i++)
      centroid[i] += fm_mix_points_get (self->vertices, v)[i] / n;
  add_start (self, starts, centroid);
  for (guint v = 0; v < n; v++) {
    const double *vertex = fm_mix_points_get (self->vertices, v);
    /* of many corners only the next in turn: edges and diagonals */
    const guint last = n <= MAX_PAIRED ? n : MIN (v + 2, n);
    add_start (self, starts, vertex);
    add_middle (self, starts, vertex, centroid);
    for (guint w = v + 1; w < last; w++)
      add_middle (self, starts, vertex, fm_mix_points_get (self->vertices, w));
  }
  g_array_sort (starts, compare_spots);
  return starts;
}

/* Coarsely up from the best starts, then finely from the best tops; FALSE when stopped */
static gboolean
climb_all (const Search *self, GArray *starts, FmMixSpot *best)
{
  const double coarse = self->size * COARSE_STEP;

  if (starts->len > N_COARSE)
    g_array_set_size (starts, N_COARSE);
  for (guint s = 0; s < starts->len; s++) {
    climb (self, &g_array_index (starts, FmMixSpot, s), self->size * FIRST_STEP, coarse);
    if (fm_stop_asked (self->stop))
      return FALSE;
  }
  g_array_sort (starts, compare_spots);
  *best = g_array_index (starts, FmMixSpot, 0);
  for (guint s = 0; s < MIN (starts->len, N_FINE); s++) {
    FmMixSpot at = g_array_index (starts, FmMixSpot, s);
    climb (self, &at, coarse, LAST_STEP);
    if (fm_stop_asked (self->stop))
      return FALSE;
    if (at.value > best->value)
      *best = at;
  }
  return TRUE;
}

static double
widest_side (const FmMixPoints *vertices)
{
  double widest = 0.0;

  for (guint i = 0; i < vertices->q; i++) {
    double low = 1.0, high = 0.0;
    for (guint v = 0; v < vertices->n; v++) {
      low = MIN (low, fm_mix_points_get (vertices, v)[i]);
      high = MAX (high, fm_mix_points_get (vertices, v)[i]);
    }
    widest = MAX (widest, high - low);
  }
  return widest;
}

/* Rounding of many small steps must not leave the mixture */
static void
settle (const FmMixRegion *region, double *x)
{
  double sum = 0.0;
  for (guint i = 0; i < region->q; i++) {
    x[i] = CLAMP (x[i], region->lower[i], region->upper[i]);
    sum += x[i];
  }
  for (guint i = 0; i < region->q; i++)
    if (x[i] + 1.0 - sum >= region->lower[i] && x[i] + 1.0 - sum <= region->upper[i]) {
      x[i] += 1.0 - sum;
      break;
    }
}

static gboolean
search (const FmMixRegion *region,
        ValueFunc value,
        gconstpointer data,
        FmMixSpot *spot,
        const FmStop *stop,
        GError **error)
{
  g_autoptr (FmMixPoints) vertices = fm_mix_region_vertices (region, error);
  Search self = { region, vertices, value, data, stop, 0.0 };

  if (vertices == NULL)
    return FALSE;
  self.size = widest_side (vertices);
  g_autoptr (GArray) starts = gather_starts (&self);
  if (starts->len == 0) {
    g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_UNKNOWN_VALUE,
                         _ ("The model gives no number in this region."));
    return FALSE;
  }
  if (!climb_all (&self, starts, spot)) {
    g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_STOPPED,
                         _ ("The search was stopped."));
    return FALSE;
  }
  settle (region, spot->x);
  return TRUE;
}

typedef struct {
  const FmMixFit *fit;
  const FmMixGoal *goal;
  double best; /* of the blends tasted: mean, or distance from the target */
} Aim;

static double
closeness (const FmMixGoal *goal, double mean)
{
  switch (goal->kind) {
  case FM_MIX_GOAL_HIGH:
    return mean;
  case FM_MIX_GOAL_LOW:
    return -mean;
  case FM_MIX_GOAL_NEAR:
    return -fabs (mean - goal->target);
  }
  g_return_val_if_reached (NAN);
}

static double
best_value (gconstpointer data, const double *x)
{
  const Aim *aim = data;
  return closeness (aim->goal, fm_mix_fit_mean (aim->fit, x));
}

gboolean
fm_mix_find_best (const FmMixFit *fit,
                  const FmMixRegion *region,
                  const FmMixGoal *goal,
                  FmMixSpot *spot,
                  const FmStop *stop,
                  GError **error)
{
  const Aim aim = { fit, goal, 0.0 };

  g_return_val_if_fail (fit->q == region->q, FALSE);
  if (!search (region, best_value, &aim, spot, stop, error))
    return FALSE;
  spot->value = fm_mix_fit_mean (fit, spot->x);
  return TRUE;
}

typedef struct {
  guint n;
  const FmMixFit *const *fits;
  const FmMixGoal *goals;
} Join;

/* How far outside its goal a value lies, in widths of the goal */
static double
outside (const FmMixGoal *goal, double value)
{
  const double width = MAX (goal->high - goal->low, 1e-12);
  double miss = 0.0;
  if (goal->kind != FM_MIX_GOAL_LOW)
    miss = MAX (miss, goal->low - value);
  if (goal->kind != FM_MIX_GOAL_HIGH)
    miss = MAX (miss, value - goal->high);
  return miss / width;
}

/* The joined desirability; below zero where it is zero, so that the way out can be found */
static double
joined_value (gconstpointer data, const double *x)
{
  const Join *join = data;
  g_autofree double *values = g_new (double, join->n);
  double miss = 0.0;

  for (guint i = 0; i < join->n; i++) {
    values[i] = fm_mix_fit_mean (join->fits[i], x);
    miss += join->goals[i].weight * outside (&join->goals[i], values[i]);
  }
  const double d = fm_mix_desirability_joined (join->n, join->goals, values);
  return d > 0.0 || isnan (d) ? d : -miss;
}

gboolean
fm_mix_find_joined (guint n,
                    const FmMixFit *const *fits,
                    const FmMixGoal *goals,
                    const FmMixRegion *region,
                    FmMixSpot *spot,
                    const FmStop *stop,
                    GError **error)
{
  const Join join = { n, fits, goals };

  g_return_val_if_fail (n > 0 && fits[0]->q == region->q, FALSE);
  if (!search (region, joined_value, &join, spot, stop, error))
    return FALSE;
  spot->value = MAX (joined_value (&join, spot->x), 0.0);
  return TRUE;
}

/* E max (0, mean + se Z), Z standard normal */
static double
expected_excess (double mean, double se)
{
  if (se <= 0.0)
    return MAX (mean, 0.0);
  return mean * gsl_cdf_ugaussian_P (mean / se) + se * gsl_ran_ugaussian_pdf (mean / se);
}

static double
improvement_value (gconstpointer data, const double *x)
{
  const Aim *aim = data;
  const double mean = fm_mix_fit_mean (aim->fit, x), se = fm_mix_fit_se (aim->fit, x);

  if (aim->goal->kind != FM_MIX_GOAL_NEAR)
    return expected_excess (closeness (aim->goal, mean) - aim->best, se);
  /* max (0, d - |u|) = max (0, u + d) - 2 max (0, u) + max (0, u - d), d = best distance so far */
  const double u = mean - aim->goal->target, d = -aim->best;
  const double sum =
      expected_excess (u + d, se) - 2 * expected_excess (u, se) + expected_excess (u - d, se);
  return MAX (sum, 0.0);
}

gboolean
fm_mix_find_next (const FmMixFit *fit,
                  const FmMixData *data,
                  const FmMixRegion *region,
                  const FmMixGoal *goal,
                  FmMixSpot *spot,
                  const FmStop *stop,
                  GError **error)
{
  Aim aim = { fit, goal, -INFINITY };

  g_return_val_if_fail (fit->q == region->q && data->x->n > 0, FALSE);
  for (guint row = 0; row < data->x->n; row++)
    aim.best = MAX (aim.best, best_value (&aim, fm_mix_points_get (data->x, row)));
  if (!search (region, improvement_value, &aim, spot, stop, error))
    return FALSE;
  spot->value = improvement_value (&aim, spot->x);
  return TRUE;
}

static double
se_value (gconstpointer data, const double *x)
{
  return fm_mix_fit_se (data, x);
}

gboolean
fm_mix_find_unknown (const FmMixFit *fit,
                     const FmMixRegion *region,
                     FmMixSpot *spot,
                     const FmStop *stop,
                     GError **error)
{
  g_return_val_if_fail (fit->q == region->q, FALSE);
  if (!search (region, se_value, fit, spot, stop, error))
    return FALSE;
  spot->value = fm_mix_fit_se (fit, spot->x);
  return TRUE;
}
