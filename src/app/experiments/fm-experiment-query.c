/* fm-experiment-query.c - what the log asks of the notebook, in threads */
#include "app/experiments/fm-experiment-query.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-number.h"

typedef struct {
  FmNotebook *notebook;
  FmExperimentFilter filter;
  char *text;
  gint64 id; /* experiment or version */
  gint64 blend_id;
  char *origin;
} Query;

static void
query_free (Query *query)
{
  fm_notebook_unref (query->notebook);
  g_free (query->text);
  g_free (query->origin);
  g_free (query);
}

static GTask *
query_task_new (FmNotebook *notebook,
                GCancellable *cancellable,
                GAsyncReadyCallback callback,
                gpointer data,
                gpointer tag)
{
  GTask *task = g_task_new (NULL, cancellable, callback, data);
  Query *query = g_new0 (Query, 1);

  query->notebook = fm_notebook_ref (notebook);
  g_task_set_source_tag (task, tag);
  g_task_set_task_data (task, query, (GDestroyNotify)query_free);
  return task;
}

static void
list_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  Query *query = data;
  GError *error = NULL;
  GPtrArray *rows = fm_experiments_list (query->notebook, &query->filter, cancellable, &error);

  if (rows != NULL)
    g_task_return_pointer (task, rows, (GDestroyNotify)g_ptr_array_unref);
  else
    g_task_return_error (task, error);
}

void
fm_experiment_query_list_async (FmNotebook *notebook,
                                const FmExperimentFilter *filter,
                                GCancellable *cancellable,
                                GAsyncReadyCallback callback,
                                gpointer data)
{
  g_autoptr (GTask) task =
      query_task_new (notebook, cancellable, callback, data, fm_experiment_query_list_async);
  Query *query = g_task_get_task_data (task);

  query->filter = *filter;
  query->text = g_strdup (filter->text);
  query->filter.text = query->text;
  g_task_run_in_thread (task, list_thread);
}

GPtrArray *
fm_experiment_query_list_finish (GAsyncResult *result, GError **error)
{
  return g_task_propagate_pointer (G_TASK (result), error);
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
tell_origin (Query *query, gint64 version_id)
{
  g_autoptr (FmVersionInfo) version = fm_versions_info (query->notebook, version_id, NULL);
  g_autofree char *blend = NULL;
  g_autofree char *fat = NULL;

  if (version == NULL) {
    query->origin = g_strdup (_ ("The version cannot be read."));
    return;
  }
  query->blend_id = version->blend_id;
  blend = find_blend_name (query->notebook, version->blend_id);
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

static void
open_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  Query *query = data;
  GError *error = NULL;
  FmExperiment *experiment = fm_experiments_load (query->notebook, query->id, &error);

  if (experiment == NULL) {
    g_task_return_error (task, error);
    return;
  }
  tell_origin (query, experiment->version_id);
  g_task_return_pointer (task, experiment, (GDestroyNotify)fm_experiment_free);
}

void
fm_experiment_query_open_async (FmNotebook *notebook,
                                gint64 id,
                                GCancellable *cancellable,
                                GAsyncReadyCallback callback,
                                gpointer data)
{
  g_autoptr (GTask) task =
      query_task_new (notebook, cancellable, callback, data, fm_experiment_query_open_async);
  Query *query = g_task_get_task_data (task);

  query->id = id;
  g_task_run_in_thread (task, open_thread);
}

FmExperiment *
fm_experiment_query_open_finish (GAsyncResult *result,
                                 gint64 *blend_id,
                                 char **origin,
                                 GError **error)
{
  Query *query = g_task_get_task_data (G_TASK (result));
  FmExperiment *experiment = g_task_propagate_pointer (G_TASK (result), error);

  if (experiment == NULL)
    return NULL;
  *blend_id = query->blend_id;
  *origin = g_steal_pointer (&query->origin);
  return experiment;
}

static FmExperiment *
plan_experiment (Query *query, GError **error)
{
  g_autoptr (FmFormula) formula = fm_versions_load (query->notebook, query->id, error);
  g_autoptr (FmVersionInfo) version = NULL;
  FmExperiment *experiment;

  if (formula == NULL)
    return NULL;
  version = fm_versions_info (query->notebook, query->id, error);
  if (version == NULL)
    return NULL;
  experiment = fm_experiment_new ();
  experiment->version_id = query->id;
  experiment->title = g_strdup_printf (_ ("Trial %u"), version->n_experiments + 1);
  experiment->made_at = g_get_real_time () / G_USEC_PER_SEC;
  fm_experiment_plan (experiment, formula);
  return experiment;
}

static void
create_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  GError *error = NULL;
  Query *query = data;
  g_autoptr (FmExperiment) experiment = plan_experiment (query, &error);

  if (experiment != NULL && fm_experiments_save (query->notebook, experiment, &error)) {
    query->id = experiment->id;
    g_task_return_boolean (task, TRUE);
  } else {
    g_task_return_error (task, error);
  }
}

void
fm_experiment_query_create_async (FmNotebook *notebook,
                                  gint64 version_id,
                                  GAsyncReadyCallback callback,
                                  gpointer data)
{
  g_autoptr (GTask) task =
      query_task_new (notebook, NULL, callback, data, fm_experiment_query_create_async);
  Query *query = g_task_get_task_data (task);

  query->id = version_id;
  g_task_run_in_thread (task, create_thread);
}

gint64
fm_experiment_query_create_finish (GAsyncResult *result, GError **error)
{
  Query *query = g_task_get_task_data (G_TASK (result));

  return g_task_propagate_boolean (G_TASK (result), error) ? query->id : 0;
}
