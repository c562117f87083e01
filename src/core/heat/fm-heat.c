/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/heat/fm-heat.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-error.h"
#include "core/base/fm-number.h"
#include "core/heat/fm-heat-slab.h"

#define DEFAULT_CELLS 161
#define DEFAULT_STEP_S 0.5
#define ROOM_C 22.0
#define MAX_TIME_S (4 * 3600.0)
/* Ground meat pressed hard or laid loosely; anything beyond is a slip of the pen. */
#define MIN_RHO_KG_M3 600.0
#define MAX_RHO_KG_M3 1300.0

void
fm_heat_setup_init (FmHeatSetup *self)
{
  *self = (FmHeatSetup){ .mass_g = NAN,
                         .diameter_mm = NAN,
                         .thickness_mm = NAN,
                         .start_c = NAN,
                         .pan_c = NAN,
                         .air_c = ROOM_C,
                         .contact_w_m2k = FM_HEAT_CONTACT_DEFAULT_W_M2K,
                         .air_w_m2k = FM_HEAT_AIR_DEFAULT_W_M2K,
                         .boiling_c = 100.0,
                         .turns_s = g_array_new (FALSE, FALSE, sizeof (double)),
                         .off_s = NAN,
                         .rest_s = 0,
                         .n_cells = DEFAULT_CELLS,
                         .step_s = DEFAULT_STEP_S };
}

void
fm_heat_setup_clear (FmHeatSetup *self)
{
  g_clear_pointer (&self->turns_s, g_array_unref);
}

void
fm_heat_setup_copy (const FmHeatSetup *self, FmHeatSetup *copy)
{
  *copy = *self;
  copy->turns_s = self->turns_s != NULL ? g_array_copy (self->turns_s)
                                        : g_array_new (FALSE, FALSE, sizeof (double));
}

void
fm_heat_setup_from_experiment (FmHeatSetup *self, const FmExperiment *experiment)
{
  FmPattyStats stats;

  fm_experiment_patty_stats (experiment, &stats);
  if (isfinite (stats.mean_g))
    self->mass_g = stats.mean_g;
  if (isfinite (experiment->patty_diameter_mm))
    self->diameter_mm = experiment->patty_diameter_mm;
  if (isfinite (experiment->patty_thickness_mm))
    self->thickness_mm = experiment->patty_thickness_mm;
  if (isfinite (experiment->meat_temp_c))
    self->start_c = experiment->meat_temp_c;
  if (isfinite (experiment->surface_temp_c))
    self->pan_c = experiment->surface_temp_c;
  if (isfinite (experiment->rest_minutes))
    self->rest_s = experiment->rest_minutes * 60.0;
  if (isfinite (experiment->minutes_side_1)) {
    double turn_s = experiment->minutes_side_1 * 60.0;

    g_array_set_size (self->turns_s, 0);
    self->off_s = turn_s;
    if (experiment->minutes_side_2 > 0) {
      g_array_append_val (self->turns_s, turn_s);
      self->off_s += experiment->minutes_side_2 * 60.0;
    }
  }
}

static gboolean
check_number (double value, const char *what, double min, double max, GError **error)
{
  if (isnan (value)) {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_UNKNOWN_VALUE,
                 _ ("%s is not known. Enter it to estimate the cook."), what);
    return FALSE;
  }
  if (!(value >= min && value <= max)) {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("%s must lie between %g and %g."), what, min, max);
    return FALSE;
  }
  return TRUE;
}

/* Of the three, one may be left open. */
static gboolean
check_size (const FmHeatSetup *self, GError **error)
{
  int n_open = isnan (self->mass_g) + isnan (self->diameter_mm) + isnan (self->thickness_mm);

  if (n_open > 1) {
    g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_UNKNOWN_VALUE,
                         _ ("Enter two of the patty's mass, diameter and thickness."));
    return FALSE;
  }
  return (isnan (self->mass_g) ||
          check_number (self->mass_g, _ ("The patty's mass in grams"), 1, 5000, error)) &&
         (isnan (self->diameter_mm) ||
          check_number (self->diameter_mm, _ ("The diameter in mm"), 10, 500, error)) &&
         (isnan (self->thickness_mm) ||
          check_number (self->thickness_mm, _ ("The thickness in mm"), 2, 100, error));
}

static gboolean
check_schedule (const FmHeatSetup *self, GError **error)
{
  double last_s = 0;

  if (!check_number (self->off_s, _ ("The time on the pan in seconds"), 1, MAX_TIME_S, error) ||
      !check_number (self->rest_s, _ ("The rest in seconds"), 0, MAX_TIME_S, error))
    return FALSE;
  for (guint i = 0; self->turns_s != NULL && i < self->turns_s->len; i++) {
    double turn_s = g_array_index (self->turns_s, double, i);

    if (!(turn_s > last_s && turn_s < self->off_s)) {
      g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                           _ ("Each turn must come after the one before and before the patty is "
                              "taken off. Correct the times of turning."));
      return FALSE;
    }
    last_s = turn_s;
  }
  return TRUE;
}

gboolean
fm_heat_setup_check (const FmHeatSetup *self, GError **error)
{
  double sum = 0;

  for (int i = 0; i < FM_N_COMPONENTS; i++)
    sum += self->mix.fraction[i] >= 0 ? self->mix.fraction[i] : NAN;
  if (!(fabs (sum - 1.0) < 1e-6)) {
    g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_UNKNOWN_VALUE,
                         _ ("The patty's composition is not known. Add it to the ingredients."));
    return FALSE;
  }
  if (self->n_cells < 5 || self->n_cells > 1001 || self->n_cells % 2 == 0) {
    g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                         _ ("The number of layers must be odd, from 5 to 1001."));
    return FALSE;
  }
  return check_size (self, error) &&
         check_number (self->start_c, _ ("The patty's temperature at the start in °C"), 0, 60,
                       error) &&
         check_number (self->pan_c, _ ("The pan's temperature in °C"), 40, 350, error) &&
         check_number (self->air_c, _ ("The air's temperature in °C"), -20, 350, error) &&
         check_number (self->contact_w_m2k, _ ("The contact coefficient in W/(m² K)"), 1, 10000,
                       error) &&
         check_number (self->air_w_m2k, _ ("The coefficient to the air in W/(m² K)"), 0, 500,
                       error) &&
         check_number (self->boiling_c, _ ("The boiling point in °C"), 80, 110, error) &&
         check_number (self->step_s, _ ("The time step in seconds"), 0.001, 30, error) &&
         check_schedule (self, error);
}

/* Fills the one of three that was left open. */
static gboolean
find_size (const FmHeatSetup *setup, FmHeatResult *result, double *rho_kg_m3, GError **error)
{
  FmThermalProperties raw;
  double area_m2 = G_PI / 4.0 * setup->diameter_mm * setup->diameter_mm * 1e-6;

  fm_thermal_properties (&setup->mix, setup->start_c, &raw);
  *rho_kg_m3 = raw.rho_kg_m3;
  result->mass_g = setup->mass_g;
  result->diameter_mm = setup->diameter_mm;
  result->thickness_mm = setup->thickness_mm;
  if (isnan (setup->mass_g)) {
    result->mass_g = raw.rho_kg_m3 * area_m2 * setup->thickness_mm;
  } else if (isnan (setup->thickness_mm)) {
    result->thickness_mm = setup->mass_g / (raw.rho_kg_m3 * area_m2);
  } else if (isnan (setup->diameter_mm)) {
    area_m2 = setup->mass_g / (raw.rho_kg_m3 * setup->thickness_mm);
    result->diameter_mm = sqrt (area_m2 * 4.0 / G_PI) * 1000.0;
  } else {
    *rho_kg_m3 = setup->mass_g / (area_m2 * setup->thickness_mm);
  }
  if (*rho_kg_m3 < MIN_RHO_KG_M3 || *rho_kg_m3 > MAX_RHO_KG_M3) {
    g_autofree char *made = fm_number_format (*rho_kg_m3, 0);
    g_autofree char *usual = fm_number_format (raw.rho_kg_m3, 0);

    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("Mass, diameter and thickness do not fit together: they make %s g per litre, "
                    "where ground meat has about %s. Measure again or leave one open."),
                 made, usual);
    return FALSE;
  }
  return TRUE;
}

static void
record (FmHeatResult *self, const FmHeatSlab *slab, guint n_cells, double time_s)
{
  double coldest_c = INFINITY;
  guint i = self->n++;

  for (guint cell = 0; cell < n_cells; cell++)
    coldest_c = fmin (coldest_c, fm_heat_slab_temp_c (slab, cell));
  self->time_s[i] = time_s;
  self->centre_c[i] = fm_heat_slab_temp_c (slab, n_cells / 2);
  self->coldest_c[i] = coldest_c;
  if (i == 0 || self->centre_c[i] > self->peak_centre_c) {
    self->peak_centre_c = self->centre_c[i];
    self->peak_s = time_s;
  }
}

/* Equal steps from the last recorded time to @end_s, none longer than the setup's. */
static void
run_until (FmHeatResult *self,
           FmHeatSlab *slab,
           const FmHeatSetup *setup,
           const FmHeatFace faces[2],
           double end_s)
{
  double begin_s = self->time_s[self->n - 1];
  guint n_steps = (guint)ceil ((end_s - begin_s) / setup->step_s - 1e-9);

  for (guint i = 1; i <= n_steps; i++) {
    fm_heat_slab_step (slab, faces, (end_s - begin_s) / n_steps);
    record (self, slab, setup->n_cells, begin_s + (end_s - begin_s) * i / n_steps);
  }
}

static void
run_schedule (FmHeatResult *self, FmHeatSlab *slab, const FmHeatSetup *setup)
{
  const FmHeatFace pan = { setup->pan_c, setup->contact_w_m2k };
  const FmHeatFace air = { setup->air_c, setup->air_w_m2k };
  FmHeatFace faces[2] = { pan, air };
  guint n_turns = setup->turns_s != NULL ? setup->turns_s->len : 0;

  record (self, slab, setup->n_cells, 0);
  for (guint i = 0; i <= n_turns; i++) {
    faces[i % 2] = pan;
    faces[(i + 1) % 2] = air;
    run_until (self, slab, setup, faces,
               i < n_turns ? g_array_index (setup->turns_s, double, i) : setup->off_s);
  }
  self->off_s = setup->off_s;
  self->off_centre_c = self->centre_c[self->n - 1];
  faces[0] = air;
  faces[1] = air;
  run_until (self, slab, setup, faces, setup->off_s + setup->rest_s);
}

static void
sum_up (FmHeatResult *self, const FmHeatSlab *slab, double stored_before_j_m2)
{
  double area_m2 = G_PI / 4.0 * self->diameter_mm * self->diameter_mm * 1e-6;

  self->evaporated_g = fm_heat_slab_evaporated_kg_m2 (slab) * area_m2 * 1000.0;
  self->evaporated_pct = 100.0 * self->evaporated_g / self->mass_g;
  self->crust_mm = fm_heat_slab_crust_m (slab) * 1000.0;
  self->heat_in_j = fm_heat_slab_in_j_m2 (slab) * area_m2;
  self->heat_stored_j = (fm_heat_slab_stored_j_m2 (slab) - stored_before_j_m2) * area_m2;
  self->heat_boiled_j = fm_heat_slab_boiled_j_m2 (slab) * area_m2;
}

FmHeatResult *
fm_heat_predict (const FmHeatSetup *setup, GError **error)
{
  g_autoptr (FmHeatResult) self = g_new0 (FmHeatResult, 1);
  g_autoptr (FmHeatSlab) slab = NULL;
  double rho_kg_m3;
  gsize n_points;

  if (!fm_heat_setup_check (setup, error) || !find_size (setup, self, &rho_kg_m3, error))
    return NULL;
  n_points = (gsize)ceil ((setup->off_s + setup->rest_s) / setup->step_s) + 4 +
             (setup->turns_s != NULL ? setup->turns_s->len : 0);
  self->time_s = g_new (double, n_points);
  self->centre_c = g_new (double, n_points);
  self->coldest_c = g_new (double, n_points);
  slab = fm_heat_slab_new (&setup->mix, rho_kg_m3, self->thickness_mm / 1000.0, setup->n_cells,
                           setup->start_c, setup->boiling_c);
  double stored_before = fm_heat_slab_stored_j_m2 (slab);
  run_schedule (self, slab, setup);
  sum_up (self, slab, stored_before);
  return g_steal_pointer (&self);
}

void
fm_heat_result_free (FmHeatResult *self)
{
  if (self == NULL)
    return;
  g_free (self->time_s);
  g_free (self->centre_c);
  g_free (self->coldest_c);
  g_free (self);
}

double
fm_heat_centre_at (const FmHeatResult *self, double time_s)
{
  guint low = 0;
  guint high = self->n - 1;

  if (!(time_s >= self->time_s[0] && time_s <= self->time_s[high]))
    return NAN;
  while (high - low > 1) {
    guint middle = (low + high) / 2;
    if (self->time_s[middle] <= time_s)
      low = middle;
    else
      high = middle;
  }
  double span_s = self->time_s[high] - self->time_s[low];
  double part = span_s > 0 ? (time_s - self->time_s[low]) / span_s : 0;
  return self->centre_c[low] + part * (self->centre_c[high] - self->centre_c[low]);
}

double
fm_heat_time_to (const FmHeatResult *self, double temp_c)
{
  if (self->centre_c[0] >= temp_c)
    return self->time_s[0];
  for (guint i = 1; i < self->n; i++)
    if (self->centre_c[i] >= temp_c) {
      double part = (temp_c - self->centre_c[i - 1]) / (self->centre_c[i] - self->centre_c[i - 1]);
      return self->time_s[i - 1] + part * (self->time_s[i] - self->time_s[i - 1]);
    }
  return NAN;
}
