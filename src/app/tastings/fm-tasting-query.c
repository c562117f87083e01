/* fm-tasting-query.c - what the tastings page asks of the notebook, in threads */
#include "app/tastings/fm-tasting-query.h"

#include <glib/gi18n-lib.h>

#define MAX_TASTINGS_READ 40 /* for the names of tasters: more would only be slower */

typedef struct {
  FmNotebook *notebook;
  gint64 id; /* of a tasting or a blend */
} Query;

static void
query_free (Query *query)
{
  fm_notebook_unref (query->notebook);
  g_free (query);
}

static void
run (FmNotebook *notebook,
     gint64 id,
     GCancellable *cancellable,
     GAsyncReadyCallback callback,
     gpointer data,
     GTaskThreadFunc thread)
{
  g_autoptr (GTask) task = g_task_new (NULL, cancellable, callback, data);
  Query *query = g_new0 (Query, 1);

  query->notebook = fm_notebook_ref (notebook);
  query->id = id;
  g_task_set_source_tag (task, thread);
  g_task_set_task_data (task, query, (GDestroyNotify)query_free);
  g_task_run_in_thread (task, thread);
}

static gboolean
has_id (GPtrArray *rows, gint64 id)
{
  for (guint i = 0; i < rows->len; i++)
    if (((const FmTastingInfo *)g_ptr_array_index (rows, i))->id == id)
      return TRUE;
  return FALSE;
}

/* A tasting without experiments belongs to no blend, so it is listed with each. */
static GPtrArray *
list_of_blend (FmNotebook *notebook, gint64 blend_id, GError **error)
{
  g_autoptr (GPtrArray) rows = fm_tastings_list (notebook, 0, error);
  g_autoptr (GPtrArray) own = NULL;

  if (rows == NULL || blend_id == 0)
    return g_steal_pointer (&rows);
  own = fm_tastings_list (notebook, blend_id, error);
  if (own == NULL)
    return NULL;
  for (guint i = rows->len; i > 0; i--) {
    const FmTastingInfo *info = g_ptr_array_index (rows, i - 1);

    if (info->n_experiments > 0 && !has_id (own, info->id))
      g_ptr_array_remove_index (rows, i - 1);
  }
  return g_steal_pointer (&rows);
}

static void
list_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  Query *query = data;
  GError *error = NULL;
  GPtrArray *rows = list_of_blend (query->notebook, query->id, &error);

  if (rows != NULL)
    g_task_return_pointer (task, rows, (GDestroyNotify)g_ptr_array_unref);
  else
    g_task_return_error (task, error);
}

void
fm_tasting_query_list_async (FmNotebook *notebook,
                             gint64 blend_id,
                             GCancellable *cancellable,
                             GAsyncReadyCallback callback,
                             gpointer data)
{
  run (notebook, blend_id, cancellable, callback, data, list_thread);
}

GPtrArray *
fm_tasting_query_list_finish (GAsyncResult *result, GError **error)
{
  return g_task_propagate_pointer (G_TASK (result), error);
}

static void
open_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  Query *query = data;
  GError *error = NULL;
  FmTasting *tasting = fm_tastings_load (query->notebook, query->id, &error);

  if (tasting != NULL)
    g_task_return_pointer (task, tasting, (GDestroyNotify)fm_tasting_free);
  else
    g_task_return_error (task, error);
}

void
fm_tasting_query_open_async (FmNotebook *notebook,
                             gint64 id,
                             GCancellable *cancellable,
                             GAsyncReadyCallback callback,
                             gpointer data)
{
  run (notebook, id, cancellable, callback, data, open_thread);
}

FmTasting *
fm_tasting_query_open_finish (GAsyncResult *result, GError **error)
{
  return g_task_propagate_pointer (G_TASK (result), error);
}

static void
create_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  Query *query = data;
  GError *error = NULL;
  g_autoptr (FmTasting) tasting = fm_tasting_new ();
  g_autoptr (GPtrArray) rows = fm_tastings_list (query->notebook, 0, &error);

  if (rows != NULL) {
    tasting->title = g_strdup_printf (_ ("Tasting %u"), rows->len + 1);
    if (fm_tastings_save (query->notebook, tasting, &error))
      query->id = tasting->id;
  }
  if (error != NULL)
    g_task_return_error (task, error);
  else
    g_task_return_boolean (task, TRUE);
}

void
fm_tasting_query_create_async (FmNotebook *notebook, GAsyncReadyCallback callback, gpointer data)
{
  run (notebook, 0, NULL, callback, data, create_thread);
}

gint64
fm_tasting_query_create_finish (GAsyncResult *result, GError **error)
{
  Query *query = g_task_get_task_data (G_TASK (result));

  return g_task_propagate_boolean (G_TASK (result), error) ? query->id : 0;
}

static void
add_tasters (GPtrArray *names, const FmTasting *tasting)
{
  for (guint i = 0; i < tasting->tasters->len; i++) {
    const FmTaster *taster = g_ptr_array_index (tasting->tasters, i);

    if (taster->name != NULL && taster->name[0] != '\0' &&
        !g_ptr_array_find_with_equal_func (names, taster->name, g_str_equal, NULL))
      g_ptr_array_add (names, g_strdup (taster->name));
  }
}

static void
tasters_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  Query *query = data;
  GError *error = NULL;
  g_autoptr (GPtrArray) names = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GPtrArray) rows = fm_tastings_list (query->notebook, 0, &error);

  if (rows == NULL) {
    g_task_return_error (task, error);
    return;
  }
  for (guint i = 0; i < rows->len && i < MAX_TASTINGS_READ; i++) {
    const FmTastingInfo *info = g_ptr_array_index (rows, i);
    g_autoptr (FmTasting) tasting = fm_tastings_load (query->notebook, info->id, NULL);

    /* One that cannot be read only offers no names. */
    if (tasting != NULL)
      add_tasters (names, tasting);
  }
  g_task_return_pointer (task, g_steal_pointer (&names), (GDestroyNotify)g_ptr_array_unref);
}

void
fm_tasting_query_tasters_async (FmNotebook *notebook,
                                GCancellable *cancellable,
                                GAsyncReadyCallback callback,
                                gpointer data)
{
  run (notebook, 0, cancellable, callback, data, tasters_thread);
}

GPtrArray *
fm_tasting_query_tasters_finish (GAsyncResult *result, GError **error)
{
  return g_task_propagate_pointer (G_TASK (result), error);
}
