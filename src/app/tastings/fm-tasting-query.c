/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-query.c - what the tastings page asks of the notebook, in threads */
#include "app/tastings/fm-tasting-query.h"

#include <glib/gi18n-lib.h>

#include "app/session/fm-clock.h"
#include "app/session/fm-store-task.h"

static GPtrArray *
read_rows (FmNotebook *notebook,
           gconstpointer query,
           gint64 only_id,
           GCancellable *cancellable,
           GError **error)
{
  const gint64 *blend_id = query;

  return fm_tastings_list_near (notebook, *blend_id, only_id, error);
}

static int
compare_rows (gconstpointer a, gconstpointer b, gconstpointer query)
{
  const FmTastingInfo *first = a;
  const FmTastingInfo *second = b;

  return fm_log_compare_newest (first->held_at, first->id, second->held_at, second->id);
}

const FmLogKind fm_tasting_log_kind = {
  .read = read_rows,
  .compare = compare_rows,
  .is_same_query = g_int64_equal,
  .copy_query = fm_log_id_copy,
  .free_query = g_free,
};

gpointer
fm_tasting_query_load (FmNotebook *notebook,
                       gpointer data,
                       GCancellable *cancellable,
                       GError **error)
{
  const gint64 *id = data;

  return fm_tastings_load (notebook, *id, error);
}

gpointer
fm_tasting_query_create (FmNotebook *notebook,
                         gpointer data,
                         GCancellable *cancellable,
                         GError **error)
{
  g_autoptr (GPtrArray) rows = NULL;
  g_autoptr (FmTasting) empty = NULL;
  FmTasting *plan = data;

  if (plan == NULL) {
    rows = fm_tastings_list (notebook, 0, error);
    if (rows == NULL)
      return NULL;
    plan = empty = fm_tasting_new ();
    plan->held_at = fm_clock_now_s ();
    plan->title = g_strdup_printf (_ ("Tasting %u"), rows->len + 1);
  }
  if (!fm_tastings_save (notebook, plan, error))
    return NULL;
  return fm_log_id_copy (&plan->id);
}

gpointer
fm_tasting_query_create_all (FmNotebook *notebook,
                             gpointer data,
                             GCancellable *cancellable,
                             GError **error)
{
  const GPtrArray *plans = data;
  GArray *ids;

  if (!fm_tastings_save_all (notebook, plans, error))
    return NULL;
  ids = g_array_new (FALSE, FALSE, sizeof (gint64));
  for (guint i = 0; i < plans->len; i++)
    g_array_append_val (ids, ((const FmTasting *)plans->pdata[i])->id);
  return ids;
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
  fm_store_task (&(FmStoreTask){
      .notebook = notebook,
      .run = list_tasters,
      .free_result = (GDestroyNotify)g_ptr_array_unref,
      .cancellable = cancellable,
      .done = callback,
      .user_data = data,
  });
}

GPtrArray *
fm_tasting_query_tasters_finish (GAsyncResult *result, GError **error)
{
  return fm_store_task_finish (result, error);
}
