/* fm-map-load.c - reads a map with its base version, off the main thread */
#include "app/map/fm-map-document.h"

typedef struct {
  FmNotebook *notebook;
  gint64 id; /* of the map or of the base version */
  FmMap *map;
  FmFormula *base;
} Job;

static void
job_free (gpointer data)
{
  Job *job = data;

  fm_notebook_unref (job->notebook);
  g_clear_pointer (&job->map, fm_map_free);
  g_clear_pointer (&job->base, fm_formula_free);
  g_free (job);
}

static void
load_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  Job *job = data;
  GError *error = NULL;

  job->map = fm_maps_load (job->notebook, job->id, &error);
  if (job->map != NULL)
    job->base = fm_versions_load (job->notebook, job->map->base_version_id, &error);
  if (job->base != NULL)
    g_task_return_boolean (task, TRUE);
  else
    g_task_return_error (task, error);
}

void
fm_map_document_load_async (FmSession *session,
                            gint64 id,
                            GCancellable *cancellable,
                            GAsyncReadyCallback callback,
                            gpointer user_data)
{
  g_autoptr (GTask) task = g_task_new (session, cancellable, callback, user_data);
  Job *job = g_new0 (Job, 1);

  job->notebook = fm_notebook_ref (fm_session_get_notebook (session));
  job->id = id;
  g_task_set_source_tag (task, fm_map_document_load_async);
  g_task_set_task_data (task, job, job_free);
  g_task_run_in_thread (task, load_thread);
}

FmMapDocument *
fm_map_document_load_finish (GAsyncResult *result, GError **error)
{
  Job *job = g_task_get_task_data (G_TASK (result));

  if (!g_task_propagate_boolean (G_TASK (result), error))
    return NULL;
  return fm_map_document_open (FM_SESSION (g_task_get_source_object (G_TASK (result))),
                               g_steal_pointer (&job->map), g_steal_pointer (&job->base));
}

static void
base_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  Job *job = data;
  GError *error = NULL;

  job->base = fm_versions_load (job->notebook, job->id, &error);
  if (job->base != NULL)
    g_task_return_boolean (task, TRUE);
  else
    g_task_return_error (task, error);
}

static void
base_read_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  FmMapDocument *document = FM_MAP_DOCUMENT (source);
  Job *job = g_task_get_task_data (G_TASK (result));
  g_autoptr (GError) error = NULL;

  if (g_task_propagate_boolean (G_TASK (result), &error))
    fm_map_document_set_base (document, job->id, g_steal_pointer (&job->base));
  else
    fm_session_failure (fm_map_document_get_session (document), error);
}

void
fm_map_document_choose_base (FmMapDocument *self, gint64 version_id)
{
  g_autoptr (GTask) task = g_task_new (self, NULL, base_read_cb, NULL);
  Job *job = g_new0 (Job, 1);

  job->notebook = fm_notebook_ref (fm_stored_document_get_notebook (FM_STORED_DOCUMENT (self)));
  job->id = version_id;
  g_task_set_source_tag (task, fm_map_document_choose_base);
  g_task_set_task_data (task, job, job_free);
  g_task_run_in_thread (task, base_thread);
}
