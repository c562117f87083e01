/* fm-experiment-query.c - what the log asks of the notebook, in threads */
#include "app/experiments/fm-experiment-query.h"

#include "app/session/fm-store-task.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-number.h"

typedef struct {
  FmExperimentFilter filter;
  char *text;
  gint64 id; /* experiment or version */
  gint64 blend_id;
  char *origin;
} Query;

static void
query_free (Query *query)
{
  g_free (query->text);
  g_free (query->origin);
  g_free (query);
}

/* (transfer full query) */
static void
run (FmNotebook *notebook,
     Query *query,
     FmStoreFunc func,
     GDestroyNotify free_result,
     GCancellable *cancellable,
     GAsyncReadyCallback callback,
     gpointer data)
{
  fm_store_task (&(FmStoreTask){
      .notebook = notebook,
      .run = func,
      .free_result = free_result,
      .data = query,
      .free_data = (GDestroyNotify)query_free,
      .cancellable = cancellable,
      .done = callback,
      .user_data = data,
  });
}

static gpointer
list (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  const Query *query = data;

  return fm_experiments_list (notebook, &query->filter, cancellable, error);
}

void
fm_experiment_query_list_async (FmNotebook *notebook,
                                const FmExperimentFilter *filter,
                                GCancellable *cancellable,
                                GAsyncReadyCallback callback,
                                gpointer data)
{
  Query *query = g_new0 (Query, 1);

  query->filter = *filter;
  query->text = g_strdup (filter->text);
  query->filter.text = query->text;
  run (notebook, query, list, (GDestroyNotify)g_ptr_array_unref, cancellable, callback, data);
}

GPtrArray *
fm_experiment_query_list_finish (GAsyncResult *result, GError **error)
{
  return fm_store_task_finish (result, error);
}

static char *
find_blend_name (FmNotebook *notebook, gint64 blend_id)
{
  g_autoptr (GPtrArray) blends = fm_blends_list (notebook, NULL);

  for (guint i = 0; blends != NULL && i < blends->len; i++) {
    const FmBlendInfo *blend = g_ptr_array_index (blends, i);

    if (blend->id == blend_id)
      return g_strdup (blend->name);
  }
  return g_strdup ("");
}

static void
tell_origin (FmNotebook *notebook, Query *query, gint64 version_id)
{
  g_autoptr (FmVersionInfo) version = fm_versions_info (notebook, version_id, NULL);
  g_autofree char *blend = NULL;
  g_autofree char *fat = NULL;

  if (version == NULL) {
    query->origin = g_strdup (_ ("The version cannot be read."));
    return;
  }
  query->blend_id = version->blend_id;
  blend = find_blend_name (notebook, version->blend_id);
  if (isnan (version->fat_pct)) {
    query->origin =
        g_strdup_printf (_ ("Made from %s, version %d, fat not known"), blend, version->number);
    return;
  }
  fat = fm_number_format_unit (version->fat_pct, 1, "%");
  query->origin =
      /* Translators: blend name, version number, fat with its percent sign */
      g_strdup_printf (_ ("Made from %s, version %d, %s fat"), blend, version->number, fat);
}

static gpointer
load (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  Query *query = data;
  FmExperiment *experiment = fm_experiments_load (notebook, query->id, error);

  if (experiment != NULL)
    tell_origin (notebook, query, experiment->version_id);
  return experiment;
}

void
fm_experiment_query_open_async (FmNotebook *notebook,
                                gint64 id,
                                GCancellable *cancellable,
                                GAsyncReadyCallback callback,
                                gpointer data)
{
  Query *query = g_new0 (Query, 1);

  query->id = id;
  run (notebook, query, load, (GDestroyNotify)fm_experiment_free, cancellable, callback, data);
}

FmExperiment *
fm_experiment_query_open_finish (GAsyncResult *result,
                                 gint64 *blend_id,
                                 char **origin,
                                 GError **error)
{
  Query *query = fm_store_task_data (result);
  FmExperiment *experiment = fm_store_task_finish (result, error);

  if (experiment == NULL)
    return NULL;
  *blend_id = query->blend_id;
  *origin = g_steal_pointer (&query->origin);
  return experiment;
}

static FmExperiment *
plan_experiment (FmNotebook *notebook, gint64 version_id, GError **error)
{
  g_autoptr (FmFormula) formula = fm_versions_load (notebook, version_id, error);
  g_autoptr (FmVersionInfo) version = NULL;
  FmExperiment *experiment;

  if (formula == NULL)
    return NULL;
  version = fm_versions_info (notebook, version_id, error);
  if (version == NULL)
    return NULL;
  experiment = fm_experiment_new ();
  experiment->version_id = version_id;
  experiment->title = g_strdup_printf (_ ("Trial %u"), version->n_experiments + 1);
  experiment->made_at = g_get_real_time () / G_USEC_PER_SEC;
  fm_experiment_plan (experiment, formula);
  return experiment;
}

static gpointer
create (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  Query *query = data;
  g_autoptr (FmExperiment) experiment = plan_experiment (notebook, query->id, error);

  if (experiment == NULL || !fm_experiments_save (notebook, experiment, error))
    return NULL;
  query->id = experiment->id;
  return query;
}

void
fm_experiment_query_create_async (FmNotebook *notebook,
                                  gint64 version_id,
                                  GAsyncReadyCallback callback,
                                  gpointer data)
{
  Query *query = g_new0 (Query, 1);

  query->id = version_id;
  run (notebook, query, create, NULL, NULL, callback, data);
}

gint64
fm_experiment_query_create_finish (GAsyncResult *result, GError **error)
{
  const Query *query = fm_store_task_finish (result, error);

  return query != NULL ? query->id : 0;
}
