/* fm-map-data.c - collects what is known of the blends that lie on a map, off the main thread */
#include "app/map/fm-map-data.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/map/fm-map-response.h"
#include "core/formula/fm-analysis.h"
#include "store/fm-experiments.h"
#include "store/fm-tastings.h"

typedef struct {
  FmNotebook *notebook;
  FmMap *map;
} Job;

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

const FmMapPlace *
fm_map_data_place (const FmMapData *self, gint64 version_id)
{
  return find_place (self, version_id);
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
      add_value (self, (FmMapResponse)k, place,
                 fm_map_response_of_experiment ((FmMapResponse)k, experiment), NULL);
  }
  return TRUE;
}

static gboolean
add_version (FmMapData *self,
             const Job *job,
             const FmMixBlend *blend,
             const FmVersionInfo *info,
             GCancellable *cancellable,
             GError **error)
{
  g_autoptr (FmFormula) formula = fm_versions_load (job->notebook, info->id, error);
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
  return info->n_experiments == 0 ||
         add_experiments (self, job->notebook, place, cancellable, error);
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
add_scores (FmMapData *self, const Job *job, GHashTable *seen, GError **error)
{
  g_autoptr (GPtrArray) scores = fm_tastings_scores (job->notebook, job->map->blend_id, error);
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
count_outcomes (FmMapData *self, const Job *job, GHashTable *seen, GError **error)
{
  g_autoptr (GPtrArray) outcomes =
      fm_tastings_outcomes (job->notebook, job->map->blend_id, 0, 0, error);

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

static FmMapData *
collect (const Job *job, GCancellable *cancellable, GError **error)
{
  g_autoptr (FmFormula) base = fm_versions_load (job->notebook, job->map->base_version_id, error);
  g_autoptr (FmMixBlend) blend =
      base != NULL ? fm_mix_blend_new (base, job->map->components, error) : NULL;
  g_autoptr (GPtrArray) versions =
      blend != NULL ? fm_versions_list (job->notebook, job->map->blend_id, error) : NULL;
  g_autoptr (GHashTable) seen = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_autoptr (FmMapData) data = NULL;

  if (versions == NULL)
    return NULL;
  data = map_data_new (job->map->components->len);
  for (guint i = 0; i < versions->len; i++) {
    if (g_cancellable_set_error_if_cancelled (cancellable, error) ||
        !add_version (data, job, blend, g_ptr_array_index (versions, i), cancellable, error))
      return NULL;
  }
  if (!add_scores (data, job, seen, error) || !count_outcomes (data, job, seen, error))
    return NULL;
  return g_steal_pointer (&data);
}

static void
load_thread (GTask *task, gpointer source, gpointer task_data, GCancellable *cancellable)
{
  GError *error = NULL;
  FmMapData *data = collect (task_data, cancellable, &error);

  if (data != NULL)
    g_task_return_pointer (task, data, (GDestroyNotify)fm_map_data_free);
  else
    g_task_return_error (task, error);
}

static void
job_free (gpointer data)
{
  Job *job = data;

  fm_notebook_unref (job->notebook);
  fm_map_free (job->map);
  g_free (job);
}

void
fm_map_data_load_async (FmNotebook *notebook,
                        const FmMap *map,
                        GCancellable *cancellable,
                        GAsyncReadyCallback callback,
                        gpointer user_data)
{
  g_autoptr (GTask) task = g_task_new (NULL, cancellable, callback, user_data);
  Job *job = g_new0 (Job, 1);

  job->notebook = fm_notebook_ref (notebook);
  job->map = fm_map_copy (map);
  g_task_set_source_tag (task, fm_map_data_load_async);
  g_task_set_task_data (task, job, job_free);
  g_task_run_in_thread (task, load_thread);
}

FmMapData *
fm_map_data_load_finish (GAsyncResult *result, GError **error)
{
  return g_task_propagate_pointer (G_TASK (result), error);
}
