/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-demo-panel.c - an invented panel with a taste of its own, and what it tasted */
#include "store/demo/fm-demo-panel.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/formula/fm-analysis.h"
#include "core/mixture/fm-map-design.h"
#include "core/base/fm-number.h"
#include "store/demo/fm-demo-tasting.h"
#include "store/demo/fm-demo-version.h"
#include "store/fm-maps.h"

#define N_TRIALS 8
#define SEED 20250325
#define FIRST_DAY 23
/* The hill: liking at the top, and how steeply it falls with each share. */
#define LIKING_AT_TOP 7.4
static const double steepness[FM_DEMO_PANEL_CUTS] = { 20, 20, 350 };
const double fm_demo_panel_top[FM_DEMO_PANEL_CUTS] = { 0.48, 0.42, 0.10 };

static const double lower[FM_DEMO_PANEL_CUTS] = { 0.30, 0.20, 0.04 };
static const double upper[FM_DEMO_PANEL_CUTS] = { 0.70, 0.55, 0.14 };
static const char *const cuts[FM_DEMO_PANEL_CUTS] = { N_ ("Chuck"), N_ ("Shank"), N_ ("Suet") };

/* Trials served together. Neighbouring tastings share some, so that all can be compared. */
#define N_SERVED 4
static const guint served[][N_SERVED] = { { 0, 1, 2, 3 }, { 3, 4, 5, 6 }, { 6, 7, 0, 4 } };

/** What is needed while the map is made. */
typedef struct {
  FmNotebook *notebook;
  gint64 blend_id;
  const FmDemoMade *base;
  FmMap *map;
  FmMixBlend *blend;
  FmDemoSample sample[N_TRIALS];
  char *name[N_TRIALS];
} Maker;

double
fm_demo_panel_liking (const double *x)
{
  double liking = LIKING_AT_TOP;

  for (guint i = 0; i < FM_DEMO_PANEL_CUTS; i++)
    liking -= steepness[i] * (x[i] - fm_demo_panel_top[i]) * (x[i] - fm_demo_panel_top[i]);
  return CLAMP (liking, 1, 9);
}

static FmMap *
map_new (gint64 blend_id, const FmDemoMade *base)
{
  FmMap *map = fm_map_new ();

  map->blend_id = blend_id;
  map->base_version_id = base->version_id;
  g_free (map->name);
  map->name = g_strdup (_ ("Chuck, shank and suet"));
  map->created_at = fm_demo_moment (FIRST_DAY, 9);
  map->design = FM_MAP_OPTIMAL;
  map->order = FM_MIX_QUADRATIC;
  map->n_trials = N_TRIALS;
  map->seed = SEED;
  for (guint i = 0; i < FM_DEMO_PANEL_CUTS; i++) {
    const FmFormulaLine *line = fm_formula_line (base->formula, i);
    FmMixComponent *component = fm_mix_component_new (_ (cuts[i]));

    g_ptr_array_add (component->members, g_strdup (fm_ingredient_identity (line->ingredient)));
    g_ptr_array_add (map->components, component);
    map->lower[i] = lower[i];
    map->upper[i] = upper[i];
  }
  return map;
}

/* The bounds of the map and the fat band of the brief. */
static gboolean
limit_region (Maker *self, GError **error)
{
  FmMixRegion *region = &self->blend->region;
  g_autofree char *unknown = NULL;

  for (guint i = 0; i < FM_DEMO_PANEL_CUTS; i++) {
    region->lower[i] = lower[i];
    region->upper[i] = upper[i];
  }
  if (fm_mix_blend_limit (self->blend, FM_TARGET_FAT_PCT,
                          &self->base->formula->brief->bands[FM_TARGET_FAT_PCT], &region->limit[0],
                          &unknown))
    region->n_limits = 1;
  return fm_mix_region_check (region, NULL, error);
}

static gboolean
draw_trials (Maker *self, GError **error)
{
  GArray *points = NULL;

  self->map = map_new (self->blend_id, self->base);
  self->blend = fm_mix_blend_new (self->base->formula, self->map->components, error);
  if (self->blend == NULL || !limit_region (self, error))
    return FALSE;
  points = fm_map_design_points (self->map, &self->blend->region, NULL, error);
  if (points == NULL)
    return FALSE;
  g_array_unref (self->map->points);
  self->map->points = points;
  return TRUE;
}

static gboolean
save_version (Maker *self, guint trial, FmDemoMade *made, GError **error)
{
  g_autofree char *reason = g_strdup_printf (_ ("Map “%s”, trial %u"), self->map->name, trial + 1);
  const FmDemoSaved saved = { .blend_id = self->blend_id,
                              .parent_id = self->base->version_id,
                              .number = (int)trial + 2,
                              .reason = reason,
                              .saved_at = fm_demo_moment (FIRST_DAY, 10) };
  FmDb *db = fm_notebook_begin (self->notebook, error);

  return db != NULL &&
         fm_notebook_end (self->notebook, fm_demo_version_insert (db, &saved, made, error), error);
}

static gint64
find_experiment (FmNotebook *notebook, gint64 version_id, GError **error)
{
  const FmExperimentFilter filter = { .version_id = version_id };
  g_autoptr (GPtrArray) found = fm_experiments_list (notebook, &filter, NULL, error);

  return found != NULL && found->len > 0
             ? ((const FmExperimentInfo *)g_ptr_array_index (found, 0))->id
             : 0;
}

/* Fatter patties lose more. */
static FmDemoExperiment
making_of (guint trial, const double *x, const char *title)
{
  return (FmDemoExperiment){ .blend = FM_DEMO_MAP_BLEND,
                             .version = (int)trial + 2,
                             .day = FIRST_DAY + 1 + (int)trial / N_SERVED,
                             .title = title,
                             .notes = N_ ("One of the trials of the map."),
                             .meat_temp_c = 2.5,
                             .plate_mm = 6,
                             .passes = 2,
                             .patty_sd_g = 2.0,
                             .surface = N_ ("Cast iron pan"),
                             .surface_temp_c = 220,
                             .minutes_side_1 = 4,
                             .minutes_side_2 = 3.5,
                             .peak_core_c = 72.5,
                             .rest_minutes = 3,
                             .loss_pct = 20 + 60 * x[2] + 5 * x[0] };
}

static gboolean
make_trial (Maker *self, guint trial, GError **error)
{
  FmMapPoint *point = &g_array_index (self->map->points, FmMapPoint, trial);
  g_autoptr (FmFormula) formula = fm_mix_blend_apply (self->blend, point->x);
  g_autoptr (FmAnalysis) analysis = fm_analysis_new (formula);
  FmDemoMade made = { .formula = formula, .fat_pct = analysis->fat_pct };
  FmDemoExperiment making;

  self->name[trial] = g_strdup_printf (_ ("Map trial %u"), trial + 1);
  making = making_of (trial, point->x, self->name[trial]);
  if (!save_version (self, trial, &made, error) ||
      !fm_demo_log_add (self->notebook, &making, &made, 100 + trial, error))
    return FALSE;
  point->version_id = made.version_id;
  self->sample[trial] = (FmDemoSample){
    .experiment_id = find_experiment (self->notebook, made.version_id, error),
    .version_id = made.version_id,
    .name = self->name[trial],
    .liking = fm_demo_panel_liking (point->x),
  };
  return self->sample[trial].experiment_id != 0;
}

static gboolean
taste_trials (Maker *self, GError **error)
{
  for (guint i = 0; i < G_N_ELEMENTS (served); i++) {
    g_autofree char *title = g_strdup_printf (_ ("Map tasting %u"), i + 1);
    FmDemoSample samples[N_SERVED];

    for (guint j = 0; j < N_SERVED; j++)
      samples[j] = self->sample[served[i][j]];
    if (!fm_demo_tasting_add (self->notebook, title, fm_demo_moment (FIRST_DAY + 2 + (int)i, 15),
                              samples, N_SERVED, FALSE, SEED + i, error))
      return FALSE;
  }
  return TRUE;
}

static gboolean
make_map (Maker *self, GError **error)
{
  if (!draw_trials (self, error))
    return FALSE;
  for (guint i = 0; i < self->map->points->len && i < N_TRIALS; i++)
    if (!make_trial (self, i, error))
      return FALSE;
  return fm_maps_save (self->notebook, self->map, error) && taste_trials (self, error);
}

gboolean
fm_demo_panel_add_map (FmNotebook *notebook,
                       gint64 blend_id,
                       const FmDemoMade *base,
                       GError **error)
{
  Maker maker = { .notebook = notebook, .blend_id = blend_id, .base = base };
  const gboolean made = make_map (&maker, error);

  for (guint i = 0; i < N_TRIALS; i++)
    g_free (maker.name[i]);
  g_clear_pointer (&maker.blend, fm_mix_blend_free);
  g_clear_pointer (&maker.map, fm_map_free);
  return made;
}

gboolean
fm_demo_panel_add_sealed (FmNotebook *notebook, gint64 blend_id, GError **error)
{
  const FmExperimentFilter filter = { .blend_id = blend_id };
  g_autoptr (GPtrArray) found = fm_experiments_list (notebook, &filter, NULL, error);
  FmDemoSample samples[N_SERVED];
  guint n = 0;

  if (found == NULL)
    return FALSE;
  for (; n < found->len && n < N_SERVED; n++) {
    const FmExperimentInfo *info = g_ptr_array_index (found, n);

    samples[n] = (FmDemoSample){ info->id, info->version_id, info->title, 5 + 0.5 * n };
  }
  return fm_demo_tasting_add (notebook, _ ("Counter panel"), fm_demo_moment (FIRST_DAY + 6, 15),
                              samples, n, TRUE, SEED - 1, error);
}
