/* fm-map-query.c - reads and makes maps of a blend, off the main thread */
#include "app/map/fm-map-query.h"

#include "app/session/fm-cancel-stop.h"
#include "core/mixture/fm-map-design.h"
#include "store/fm-versions.h"

typedef struct {
  FmNotebook *notebook;
  gint64 blend_id;
  FmMap *map;
  FmMixRegion region;
} Job;

static void
job_free (gpointer data)
{
  Job *job = data;

  g_clear_pointer (&job->notebook, fm_notebook_unref);
  g_clear_pointer (&job->map, fm_map_free);
  g_free (job);
}

static void
run (Job *job,
     gpointer tag,
     GTaskThreadFunc func,
     GCancellable *cancellable,
     GAsyncReadyCallback callback,
     gpointer user_data)
{
  g_autoptr (GTask) task = g_task_new (NULL, cancellable, callback, user_data);

  g_task_set_source_tag (task, tag);
  g_task_set_task_data (task, job, job_free);
  g_task_run_in_thread (task, func);
}

void
fm_map_list_free (FmMapList *self)
{
  g_clear_pointer (&self->maps, g_ptr_array_unref);
  g_clear_pointer (&self->versions, g_ptr_array_unref);
  g_free (self);
}

static void
list_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  Job *job = data;
  GError *error = NULL;
  g_autoptr (FmMapList) list = g_new0 (FmMapList, 1);

  list->maps = fm_maps_list (job->notebook, job->blend_id, &error);
  if (list->maps != NULL)
    list->versions = fm_versions_list (job->notebook, job->blend_id, &error);
  if (list->versions != NULL)
    g_task_return_pointer (task, g_steal_pointer (&list), (GDestroyNotify)fm_map_list_free);
  else
    g_task_return_error (task, error);
}

void
fm_map_list_async (FmNotebook *notebook,
                   gint64 blend_id,
                   GCancellable *cancellable,
                   GAsyncReadyCallback callback,
                   gpointer user_data)
{
  Job *job = g_new0 (Job, 1);

  job->notebook = fm_notebook_ref (notebook);
  job->blend_id = blend_id;
  run (job, fm_map_list_async, list_thread, cancellable, callback, user_data);
}

FmMapList *
fm_map_list_finish (GAsyncResult *result, GError **error)
{
  return g_task_propagate_pointer (G_TASK (result), error);
}

static void
add_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  Job *job = data;
  GError *error = NULL;

  if (fm_maps_save (job->notebook, job->map, &error))
    g_task_return_boolean (task, TRUE);
  else
    g_task_return_error (task, error);
}

void
fm_map_add_async (FmNotebook *notebook,
                  FmMap *map,
                  GCancellable *cancellable,
                  GAsyncReadyCallback callback,
                  gpointer user_data)
{
  Job *job = g_new0 (Job, 1);

  job->notebook = fm_notebook_ref (notebook);
  job->map = map;
  run (job, fm_map_add_async, add_thread, cancellable, callback, user_data);
}

gint64
fm_map_add_finish (GAsyncResult *result, GError **error)
{
  const Job *job = g_task_get_task_data (G_TASK (result));

  return g_task_propagate_boolean (G_TASK (result), error) ? job->map->id : 0;
}

static void
draw_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  Job *job = data;
  GError *error = NULL;
  const FmStop stop = fm_cancel_stop (cancellable);
  GArray *points = fm_map_design_points (job->map, &job->region, &stop, &error);

  if (points != NULL)
    g_task_return_pointer (task, points, (GDestroyNotify)g_array_unref);
  else
    g_task_return_error (task, error);
}

void
fm_map_draw_async (const FmMap *map,
                   const FmMixRegion *region,
                   GCancellable *cancellable,
                   GAsyncReadyCallback callback,
                   gpointer user_data)
{
  Job *job = g_new0 (Job, 1);

  job->map = fm_map_copy (map);
  job->region = *region;
  run (job, fm_map_draw_async, draw_thread, cancellable, callback, user_data);
}

GArray *
fm_map_draw_finish (GAsyncResult *result, GError **error)
{
  return g_task_propagate_pointer (G_TASK (result), error);
}
