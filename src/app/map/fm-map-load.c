/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-load.c - reads a map with its base version, off the main thread */
#include "app/map/fm-map-document.h"

#include "app/session/fm-store-task.h"

typedef struct {
  gint64 id; /* of the map or of the base version */
  FmMap *map;
  FmFormula *base;
} Job;

static void
job_free (gpointer data)
{
  Job *job = data;

  g_clear_pointer (&job->map, fm_map_free);
  g_clear_pointer (&job->base, fm_formula_free);
  g_free (job);
}

static gpointer
load (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  Job *job = data;

  job->map = fm_maps_load (notebook, job->id, error);
  if (job->map != NULL)
    job->base = fm_versions_load (notebook, job->map->base_version_id, error);
  return job->base != NULL ? job : NULL;
}

static gpointer
load_base (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  Job *job = data;

  job->base = fm_versions_load (notebook, job->id, error);
  return job->base != NULL ? job : NULL;
}

static Job *
job_new (gint64 id)
{
  Job *job = g_new0 (Job, 1);

  job->id = id;
  return job;
}

void
fm_map_document_load_async (FmSession *session,
                            gint64 id,
                            GCancellable *cancellable,
                            GAsyncReadyCallback callback,
                            gpointer user_data)
{
  fm_store_task (&(FmStoreTask){
      .owner = session,
      .notebook = fm_session_get_notebook (session),
      .run = load,
      .data = job_new (id),
      .free_data = job_free,
      .cancellable = cancellable,
      .done = callback,
      .user_data = user_data,
  });
}

FmMapDocument *
fm_map_document_load_finish (GAsyncResult *result, GError **error)
{
  Job *job = fm_store_task_finish (result, error);

  if (job == NULL)
    return NULL;
  return fm_map_document_open (FM_SESSION (g_task_get_source_object (G_TASK (result))),
                               g_steal_pointer (&job->map), g_steal_pointer (&job->base));
}

static void
base_read_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  FmMapDocument *document = FM_MAP_DOCUMENT (source);
  g_autoptr (GError) error = NULL;
  Job *job = fm_store_task_finish (result, &error);

  if (job != NULL)
    fm_map_document_set_base (document, job->id, g_steal_pointer (&job->base));
  else
    fm_session_failure (fm_map_document_get_session (document), error);
}

void
fm_map_document_choose_base (FmMapDocument *self, gint64 version_id)
{
  fm_store_task (&(FmStoreTask){
      .owner = self,
      .notebook = fm_stored_document_get_notebook (FM_STORED_DOCUMENT (self)),
      .run = load_base,
      .data = job_new (version_id),
      .free_data = job_free,
      .done = base_read_cb,
  });
}
