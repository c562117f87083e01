/* fm-tasting-query.c - what the tastings page asks of the notebook, in threads */
#include "app/tastings/fm-tasting-query.h"

#include "app/session/fm-store-task.h"

#include <glib/gi18n-lib.h>

static void
run (FmNotebook *notebook,
     gint64 id,
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
      .data = g_memdup2 (&id, sizeof id),
      .free_data = g_free,
      .cancellable = cancellable,
      .done = callback,
      .user_data = data,
  });
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

static gpointer
list (FmNotebook *notebook, gpointer blend_id, GCancellable *cancellable, GError **error)
{
  return list_of_blend (notebook, *(gint64 *)blend_id, error);
}

void
fm_tasting_query_list_async (FmNotebook *notebook,
                             gint64 blend_id,
                             GCancellable *cancellable,
                             GAsyncReadyCallback callback,
                             gpointer data)
{
  run (notebook, blend_id, list, (GDestroyNotify)g_ptr_array_unref, cancellable, callback, data);
}

GPtrArray *
fm_tasting_query_list_finish (GAsyncResult *result, GError **error)
{
  return fm_store_task_finish (result, error);
}

static gpointer
load (FmNotebook *notebook, gpointer id, GCancellable *cancellable, GError **error)
{
  return fm_tastings_load (notebook, *(gint64 *)id, error);
}

void
fm_tasting_query_open_async (FmNotebook *notebook,
                             gint64 id,
                             GCancellable *cancellable,
                             GAsyncReadyCallback callback,
                             gpointer data)
{
  run (notebook, id, load, (GDestroyNotify)fm_tasting_free, cancellable, callback, data);
}

FmTasting *
fm_tasting_query_open_finish (GAsyncResult *result, GError **error)
{
  return fm_store_task_finish (result, error);
}

static gpointer
create (FmNotebook *notebook, gpointer id, GCancellable *cancellable, GError **error)
{
  g_autoptr (FmTasting) tasting = fm_tasting_new ();
  g_autoptr (GPtrArray) rows = fm_tastings_list (notebook, 0, error);

  if (rows == NULL)
    return NULL;
  tasting->title = g_strdup_printf (_ ("Tasting %u"), rows->len + 1);
  if (!fm_tastings_save (notebook, tasting, error))
    return NULL;
  *(gint64 *)id = tasting->id;
  return id;
}

void
fm_tasting_query_create_async (FmNotebook *notebook, GAsyncReadyCallback callback, gpointer data)
{
  run (notebook, 0, create, NULL, NULL, callback, data);
}

gint64
fm_tasting_query_create_finish (GAsyncResult *result, GError **error)
{
  const gint64 *id = fm_store_task_finish (result, error);

  return id != NULL ? *id : 0;
}

static gpointer
list_tasters (FmNotebook *notebook, gpointer none, GCancellable *cancellable, GError **error)
{
  return fm_tastings_tasters (notebook, error);
}

void
fm_tasting_query_tasters_async (FmNotebook *notebook,
                                GCancellable *cancellable,
                                GAsyncReadyCallback callback,
                                gpointer data)
{
  run (notebook, 0, list_tasters, (GDestroyNotify)g_ptr_array_unref, cancellable, callback, data);
}

GPtrArray *
fm_tasting_query_tasters_finish (GAsyncResult *result, GError **error)
{
  return fm_store_task_finish (result, error);
}
