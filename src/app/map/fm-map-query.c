/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-query.c - reads and makes maps of a blend, off the main thread */
#include "app/map/fm-map-query.h"

#include "app/session/fm-store-task.h"
#include "app/session/fm-cancel-stop.h"
#include "core/mixture/fm-map-design.h"
#include "store/fm-versions.h"

typedef struct {
  FmMap *map;
  FmMixRegion region;
} Job;

static void
job_free (gpointer data)
{
  Job *job = data;

  fm_map_free (job->map);
  g_free (job);
}

void
fm_map_list_free (FmMapList *self)
{
  g_clear_pointer (&self->maps, g_ptr_array_unref);
  g_clear_pointer (&self->versions, g_ptr_array_unref);
  g_free (self);
}

static gpointer
list (FmNotebook *notebook, gpointer blend_id, GCancellable *cancellable, GError **error)
{
  g_autoptr (FmMapList) list = g_new0 (FmMapList, 1);

  list->maps = fm_maps_list (notebook, *(gint64 *)blend_id, error);
  if (list->maps != NULL)
    list->versions = fm_versions_list (notebook, *(gint64 *)blend_id, error);
  return list->versions != NULL ? g_steal_pointer (&list) : NULL;
}

void
fm_map_list_async (FmNotebook *notebook,
                   gint64 blend_id,
                   GCancellable *cancellable,
                   GAsyncReadyCallback callback,
                   gpointer user_data)
{
  fm_store_task (&(FmStoreTask){
      .notebook = notebook,
      .run = list,
      .free_result = (GDestroyNotify)fm_map_list_free,
      .data = g_memdup2 (&blend_id, sizeof blend_id),
      .free_data = g_free,
      .cancellable = cancellable,
      .done = callback,
      .user_data = user_data,
  });
}

FmMapList *
fm_map_list_finish (GAsyncResult *result, GError **error)
{
  return fm_store_task_finish (result, error);
}

static gpointer
add (FmNotebook *notebook, gpointer map, GCancellable *cancellable, GError **error)
{
  return fm_maps_save (notebook, map, error) ? map : NULL;
}

void
fm_map_add_async (FmNotebook *notebook,
                  FmMap *map,
                  GCancellable *cancellable,
                  GAsyncReadyCallback callback,
                  gpointer user_data)
{
  fm_store_task (&(FmStoreTask){
      .notebook = notebook,
      .run = add,
      .data = map,
      .free_data = (GDestroyNotify)fm_map_free,
      .cancellable = cancellable,
      .done = callback,
      .user_data = user_data,
  });
}

gint64
fm_map_add_finish (GAsyncResult *result, GError **error)
{
  const FmMap *map = fm_store_task_finish (result, error);

  return map != NULL ? map->id : 0;
}

static gpointer
draw (FmNotebook *none, gpointer data, GCancellable *cancellable, GError **error)
{
  const Job *job = data;
  const FmStop stop = fm_cancel_stop (cancellable);

  return fm_map_design_points (job->map, &job->region, &stop, error);
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
  fm_store_task (&(FmStoreTask){
      .run = draw,
      .free_result = (GDestroyNotify)g_array_unref,
      .data = job,
      .free_data = job_free,
      .cancellable = cancellable,
      .done = callback,
      .user_data = user_data,
  });
}

GArray *
fm_map_draw_finish (GAsyncResult *result, GError **error)
{
  return fm_store_task_finish (result, error);
}
