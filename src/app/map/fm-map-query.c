/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-query.c - what the map page asks of the notebook and of the design, in threads */
#include "app/map/fm-map-query.h"

#include <glib/gi18n-lib.h>

#include "app/session/fm-cancel-stop.h"
#include "app/session/fm-store-task.h"
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

static GPtrArray *
read_rows (FmNotebook *notebook,
           gconstpointer query,
           gint64 only_id,
           GCancellable *cancellable,
           GError **error)
{
  const gint64 *blend_id = query;

  return fm_maps_list (notebook, *blend_id, only_id, error);
}

static int
compare_rows (gconstpointer a, gconstpointer b, gconstpointer query)
{
  const FmMapInfo *first = a;
  const FmMapInfo *second = b;

  return fm_log_compare_newest (first->created_at, first->id, second->created_at, second->id);
}

const FmLogKind fm_map_log_kind = {
  .read = read_rows,
  .compare = compare_rows,
  .is_same_query = g_int64_equal,
  .copy_query = fm_log_id_copy,
  .free_query = g_free,
};

void
fm_map_record_free (FmMapRecord *self)
{
  g_clear_pointer (&self->map, fm_map_free);
  g_clear_pointer (&self->base, fm_formula_free);
  g_free (self);
}

gpointer
fm_map_query_load (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  const gint64 *id = data;
  g_autoptr (FmMapRecord) record = g_new0 (FmMapRecord, 1);

  record->map = fm_maps_load (notebook, *id, error);
  if (record->map != NULL)
    record->base = fm_versions_load (notebook, record->map->base_version_id, error);
  return record->base != NULL ? g_steal_pointer (&record) : NULL;
}

gpointer
fm_map_query_create (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  FmMap *map = data;
  g_autoptr (GPtrArray) rows = fm_maps_list (notebook, map->blend_id, 0, error);

  if (rows == NULL)
    return NULL;
  map->name = g_strdup_printf (_ ("Map %u"), rows->len + 1);
  return fm_maps_save (notebook, map, error) ? fm_log_id_copy (&map->id) : NULL;
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
