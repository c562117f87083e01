/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-fit-job.c - fits a map's responses and looks for the blends worth a trial, in a thread */
#include "app/map/fm-map-fit-job.h"

#include "app/session/fm-store-task.h"

#include <glib/gi18n-lib.h>

#include "app/session/fm-cancel-stop.h"
#include "core/base/fm-error.h"

static const char *const words[FM_MAP_N_RESPONSES] = {
  [FM_MAP_LIKING] = N_ ("liking"),
  [FM_MAP_RATING] = N_ ("rating"),
  [FM_MAP_COOK_LOSS] = N_ ("cook loss"),
  [FM_MAP_COST] = N_ ("cost"),
  [FM_MAP_PEAK_CORE] = N_ ("peak core temperature"),
  [FM_MAP_RAW_MASS] = N_ ("raw patty mass"),
  [FM_MAP_SALT] = N_ ("salt"),
  [FM_MAP_SALT_MINUTES] = N_ ("time from salting to cooking"),
  [FM_MAP_REST_MINUTES] = N_ ("rest"),
  [FM_MAP_MEAT_TEMP] = N_ ("meat temperature"),
  [FM_MAP_SURFACE_TEMP] = N_ ("surface temperature"),
  [FM_MAP_MINUTES] = N_ ("time on the heat"),
};

static gboolean
find_reference (FmMapFit *self, GError **error)
{
  g_autoptr (FmMixPoints) vertices = fm_mix_region_vertices (&self->region, error);

  if (vertices == NULL)
    return FALSE;
  for (guint i = 0; i < vertices->n; i++)
    for (guint j = 0; j < vertices->q; j++)
      self->reference[j] += fm_mix_points_get (vertices, i)[j] / vertices->n;
  return TRUE;
}

/* Best and next are looked for only where the model may be believed. */
static gboolean
find_promising (FmMapFit *self, const FmStop *stop, GError **error)
{
  const FmMixGoal goal = {
    .kind = self->more_is_better ? FM_MIX_GOAL_HIGH : FM_MIX_GOAL_LOW,
    .weight = 1.0,
  };

  return fm_mix_find_best (self->fit, &self->region, &goal, &self->best, stop, error) &&
         fm_mix_find_next (self->fit, self->data, &self->region, &goal, &self->next, stop, error);
}

static void
find_spots (FmMapFit *self, const FmStop *stop)
{
  g_autofree char *unit = NULL;
  const FmMixResponse wording = fm_map_fit_wording (self->response, &unit);
  g_autoptr (GError) error = NULL;

  self->has_unknown =
      find_reference (self, &error) &&
      fm_mix_judge (self->fit, &self->region, &wording, &self->verdict, stop, &error) &&
      fm_mix_find_unknown (self->fit, &self->region, &self->unknown, stop, &error);
  self->predicts = self->has_unknown && self->verdict.standing == FM_MIX_PREDICTS &&
                   find_promising (self, stop, &error);
  if (error != NULL)
    self->search_problem = g_strdup (error->message);
}

static FmMixFit *
fit_model (const FmMixData *data, FmMapModel model, GError **error)
{
  return model == FM_MAP_MODEL_BEST ? fm_mix_fit_best (data, error)
                                    : fm_mix_fit (data, (FmMixOrder)model, error);
}

static gpointer
run_fit (FmNotebook *none, gpointer data, GCancellable *cancellable, GError **error)
{
  FmMapFit *self = data;
  const FmStop stop = fm_cancel_stop (cancellable);
  g_autoptr (GError) refusal = NULL;

  self->fit = fit_model (self->data, self->model, &refusal);
  if (self->fit == NULL)
    self->refusal = g_strdup (refusal->message);
  else
    find_spots (self, &stop);
  return self;
}

void
fm_map_fit_async (FmMapDocument *document,
                  FmMapResponse response,
                  FmMapModel model,
                  gboolean more_is_better,
                  GCancellable *cancellable,
                  GAsyncReadyCallback callback,
                  gpointer user_data)
{
  const FmMapSeries *series = &fm_map_document_get_data (document)->series[response];
  FmMapFit *self = g_new0 (FmMapFit, 1);

  self->response = response;
  self->model = model;
  self->more_is_better = more_is_better;
  self->region = fm_map_document_get_blend (document)->region;
  self->data = fm_map_fit_copy_data (series->data, fm_map_document_get_short_names (document));
  self->version_id = g_array_copy (series->version_id);
  fm_store_task (&(FmStoreTask){
      .owner = document,
      .run = run_fit,
      .data = self,
      .free_data = (GDestroyNotify)fm_map_fit_free,
      .cancellable = cancellable,
      .done = callback,
      .user_data = user_data,
  });
}

/* The task gives its data away: what is left is an empty result. */
FmMapFit *
fm_map_fit_finish (GAsyncResult *result, GError **error)
{
  FmMapFit *from = fm_store_task_finish (result, error);
  FmMapFit *self;

  if (from == NULL)
    return NULL;
  self = g_memdup2 (from, sizeof *from);
  *from = (FmMapFit){ 0 };
  return self;
}

void
fm_map_fit_free (FmMapFit *self)
{
  g_clear_pointer (&self->data, fm_mix_data_free);
  g_clear_pointer (&self->version_id, g_array_unref);
  g_clear_pointer (&self->fit, fm_mix_fit_free);
  g_free (self->refusal);
  g_free (self->search_problem);
  g_free (self);
}

gboolean
fm_map_fit_is_ready (FmMapDocument *document)
{
  const FmMapData *data;

  if (document == NULL || !fm_map_document_has_region (document))
    return FALSE;
  data = fm_map_document_get_data (document);
  return data != NULL && data->q == fm_map_document_get_blend (document)->region.q;
}

FmMixData *
fm_map_fit_copy_data (const FmMixData *data, const char *const *names)
{
  FmMixData *copy = fm_mix_data_new (data->x->q, data->n_factors);

  for (guint i = 0; i < data->x->n; i++)
    fm_mix_data_add (copy, fm_mix_points_get (data->x, i), data->y[i],
                     data->n_factors > 0 ? data->level + i * data->n_factors : NULL);
  fm_mix_data_set_names (copy, names);
  return copy;
}

const char *
fm_map_fit_word (FmMapResponse response)
{
  return _ (words[response]);
}

FmMixResponse
fm_map_fit_wording (FmMapResponse response, char **unit)
{
  FmMixResponse wording = {
    .name = fm_map_fit_word (response),
    .decimals = fm_map_response_decimals (response),
  };

  *unit = fm_map_response_unit (response);
  wording.unit = *unit;
  if (response == FM_MAP_COST)
    wording.confirm = _ ("This is a prediction: confirm it with a blend that you weigh and price.");
  else if (response != FM_MAP_LIKING && response != FM_MAP_RATING)
    wording.confirm = _ ("This is a prediction: confirm it in a weighed cook.");
  if (response == FM_MAP_LIKING)
    wording.once = _ ("one new score");
  else if (response != FM_MAP_COST)
    wording.once = _ ("one new cook");
  fm_map_response_ends (response, &wording.low_end, &wording.high_end);
  return wording;
}

FmMixFit *
fm_map_fit_judged (const FmMixData *data,
                   const FmMixRegion *region,
                   FmMapResponse response,
                   const FmStop *stop,
                   GError **error)
{
  g_autofree char *unit = NULL;
  const FmMixResponse wording = fm_map_fit_wording (response, &unit);
  g_autoptr (FmMixFit) fit = fm_mix_fit_best (data, error);
  FmMixVerdict verdict;

  if (fit == NULL || !fm_mix_judge (fit, region, &wording, &verdict, stop, error))
    return NULL;
  if (verdict.standing == FM_MIX_PREDICTS)
    return g_steal_pointer (&fit);
  g_autofree char *why = fm_mix_verdict_sentence (&verdict, fit, &wording);
  g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_UNKNOWN_VALUE, why);
  return NULL;
}

gboolean
fm_map_fit_wants_more (FmMapResponse response)
{
  return response != FM_MAP_COOK_LOSS && response != FM_MAP_COST;
}
