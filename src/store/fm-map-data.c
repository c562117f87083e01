/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-data.c - collects what is known of the blends that lie on a map */
#include "store/fm-map-data.h"

#include <math.h>

#include "core/formula/fm-analysis.h"
#include "store/fm-experiments.h"
#include "store/fm-tastings.h"

static void
place_free (gpointer data)
{
  FmMapPlace *place = data;

  g_free (place->reason);
  g_free (place->unplaced);
  g_free (place);
}

static FmMapData *
map_data_new (guint q)
{
  FmMapData *self = g_new0 (FmMapData, 1);

  self->q = q;
  self->places = g_ptr_array_new_with_free_func (place_free);
  for (int i = 0; i < FM_MAP_N_RESPONSES; i++) {
    self->series[i].data = fm_mix_data_new (q, i == FM_MAP_LIKING ? 2 : 0);
    self->series[i].version_id = g_array_new (FALSE, FALSE, sizeof (gint64));
  }
  return self;
}

void
fm_map_data_free (FmMapData *self)
{
  g_ptr_array_unref (self->places);
  for (int i = 0; i < FM_MAP_N_RESPONSES; i++) {
    fm_mix_data_free (self->series[i].data);
    g_array_unref (self->series[i].version_id);
  }
  g_free (self);
}

static FmMapPlace *
find_place (const FmMapData *self, gint64 version_id)
{
  for (guint i = 0; i < self->places->len; i++) {
    FmMapPlace *place = g_ptr_array_index (self->places, i);

    if (place->version_id == version_id)
      return place;
  }
  return NULL;
}

/* An unknown value is no observation. */
static void
add_value (FmMapData *self,
           FmMapResponse response,
           const FmMapPlace *place,
           double value,
           const guint *level)
{
  if (!isfinite (value))
    return;
  fm_mix_data_add (self->series[response].data, place->x, value, level);
  g_array_append_val (self->series[response].version_id, place->version_id);
}

/* NaN when it was not recorded or is no matter of experiments. */
static double
of_experiment (FmMapResponse response, const FmExperiment *experiment)
{
  FmPattyStats stats;

  fm_experiment_patty_stats (experiment, &stats);
  switch (response) {
  case FM_MAP_RATING:
    return experiment->rating > 0 ? experiment->rating : NAN;
  case FM_MAP_COOK_LOSS:
    return stats.cook_loss_pct;
  case FM_MAP_PEAK_CORE:
    return fm_experiment_peak_core_c (experiment);
  case FM_MAP_RAW_MASS:
    return stats.mean_g;
  case FM_MAP_SALT:
    return fm_experiment_salt_pct (experiment);
  case FM_MAP_SALT_MINUTES:
    return experiment->salt_minutes_before;
  case FM_MAP_REST_MINUTES:
    return experiment->rest_minutes;
  case FM_MAP_MEAT_TEMP:
    return experiment->meat_temp_c;
  case FM_MAP_SURFACE_TEMP:
    return experiment->surface_temp_c;
  case FM_MAP_MINUTES:
    return experiment->minutes_side_1 + experiment->minutes_side_2;
  case FM_MAP_LIKING:
  case FM_MAP_COST:
  case FM_MAP_N_RESPONSES:
    return NAN;
  }
  g_return_val_if_reached (NAN);
}

static gboolean
add_experiments (FmMapData *self,
                 FmNotebook *notebook,
                 FmMapPlace *place,
                 GCancellable *cancellable,
                 GError **error)
{
  const FmExperimentFilter filter = { .version_id = place->version_id };
  g_autoptr (GPtrArray) infos = fm_experiments_list (notebook, &filter, cancellable, error);

  if (infos == NULL)
    return FALSE;
  for (guint i = 0; i < infos->len; i++) {
    const FmExperimentInfo *info = g_ptr_array_index (infos, i);
    g_autoptr (FmExperiment) experiment = fm_experiments_load (notebook, info->id, error);

    if (experiment == NULL || g_cancellable_set_error_if_cancelled (cancellable, error))
      return FALSE;
    for (int k = 0; k < FM_MAP_N_RESPONSES; k++)
      add_value (self, (FmMapResponse)k, place, of_experiment ((FmMapResponse)k, experiment), NULL);
  }
  return TRUE;
}

static gboolean
add_version (FmMapData *self,
             FmNotebook *notebook,
             const FmMixBlend *blend,
             const FmVersionInfo *info,
             GCancellable *cancellable,
             GError **error)
{
  g_autoptr (FmFormula) formula = fm_versions_load (notebook, info->id, error);
  g_autoptr (FmAnalysis) analysis = NULL;
  FmMapPlace *place;

  if (formula == NULL)
    return FALSE;
  place = g_new0 (FmMapPlace, 1);
  place->version_id = info->id;
  place->number = info->number;
  place->reason = g_strdup (info->reason);
  place->n_experiments = info->n_experiments;
  place->is_placed = fm_mix_blend_locate (blend, formula, place->x, &place->unplaced);
  g_ptr_array_add (self->places, place);
  if (!place->is_placed)
    return TRUE;
  analysis = fm_analysis_new (formula);
  add_value (self, FM_MAP_COST, place, analysis->cost_per_kg, NULL);
  return info->n_experiments == 0 || add_experiments (self, notebook, place, cancellable, error);
}

/* The number of @key among the keys met before, which it joins. */
static guint
level_of (GHashTable *levels, const char *key)
{
  gpointer level;

  if (!g_hash_table_lookup_extended (levels, key, NULL, &level)) {
    level = GUINT_TO_POINTER (g_hash_table_size (levels));
    g_hash_table_insert (levels, g_strdup (key), level);
  }
  return GPOINTER_TO_UINT (level);
}

static void
count_tasting (FmMapPlace *place, gint64 tasting_id, GHashTable *seen)
{
  char *key =
      g_strdup_printf ("%" G_GINT64_FORMAT " %" G_GINT64_FORMAT, tasting_id, place->version_id);

  if (g_hash_table_add (seen, key))
    place->n_tastings++;
}

/* Only opened tastings are told of by the store, so nothing here can give a code away. */
static gboolean
add_scores (
    FmMapData *self, FmNotebook *notebook, const FmMap *map, GHashTable *seen, GError **error)
{
  g_autoptr (GPtrArray) scores = fm_tastings_scores (notebook, map->blend_id, error);
  g_autoptr (GHashTable) sessions = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_autoptr (GHashTable) tasters = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  if (scores == NULL)
    return FALSE;
  for (guint i = 0; i < scores->len; i++) {
    const FmTastingScore *score = g_ptr_array_index (scores, i);
    g_autofree char *session = g_strdup_printf ("%" G_GINT64_FORMAT, score->tasting_id);
    FmMapPlace *place = find_place (self, score->version_id);
    guint level[2];

    if (place == NULL)
      continue;
    count_tasting (place, score->tasting_id, seen);
    if (!place->is_placed || !isfinite (score->liking))
      continue;
    level[0] = level_of (sessions, session);
    level[1] = level_of (tasters, score->taster);
    add_value (self, FM_MAP_LIKING, place, score->liking, level);
  }
  return TRUE;
}

/* A tasting without liking leaves no score, but its outcome. */
static gboolean
count_outcomes (
    FmMapData *self, FmNotebook *notebook, const FmMap *map, GHashTable *seen, GError **error)
{
  g_autoptr (GPtrArray) outcomes = fm_tastings_outcomes (notebook, map->blend_id, 0, 0, error);

  if (outcomes == NULL)
    return FALSE;
  for (guint i = 0; i < outcomes->len; i++) {
    const FmTastingOutcome *outcome = g_ptr_array_index (outcomes, i);
    FmMapPlace *place = find_place (self, outcome->version_id);

    if (place != NULL)
      count_tasting (place, outcome->tasting_id, seen);
  }
  return TRUE;
}

FmMapData *
fm_map_data_load (FmNotebook *notebook, const FmMap *map, GCancellable *cancellable, GError **error)
{
  g_autoptr (FmFormula) base = fm_versions_load (notebook, map->base_version_id, error);
  g_autoptr (FmMixBlend) blend =
      base != NULL ? fm_mix_blend_new (base, map->components, error) : NULL;
  g_autoptr (GPtrArray) versions =
      blend != NULL ? fm_versions_list (notebook, map->blend_id, error) : NULL;
  g_autoptr (GHashTable) seen = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_autoptr (FmMapData) data = NULL;

  if (versions == NULL)
    return NULL;
  data = map_data_new (map->components->len);
  for (guint i = 0; i < versions->len; i++) {
    if (g_cancellable_set_error_if_cancelled (cancellable, error) ||
        !add_version (data, notebook, blend, g_ptr_array_index (versions, i), cancellable, error))
      return NULL;
  }
  if (!add_scores (data, notebook, map, seen, error) ||
      !count_outcomes (data, notebook, map, seen, error))
    return NULL;
  return g_steal_pointer (&data);
}

const FmMapPlace *
fm_map_data_place (const FmMapData *self, gint64 version_id)
{
  return find_place (self, version_id);
}
