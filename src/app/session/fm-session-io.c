/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-session-io.c - what a session writes besides its documents */
#include "app/session/fm-session-io.h"

typedef struct {
  gint64 blend_id;
  gint64 version_id;
  FmFormula *formula;
  char *text; /* reason or key */
  char *value;
  GPtrArray *formulas; /* of versions beside the draft */
  GStrv reasons;
} Order;

static Order *
order_new (gint64 blend_id, const FmFormula *formula)
{
  Order *order = g_new0 (Order, 1);

  order->blend_id = blend_id;
  order->formula = formula != NULL ? fm_formula_copy (formula) : NULL;
  return order;
}

static void
order_free (Order *order)
{
  g_clear_pointer (&order->formula, fm_formula_free);
  g_free (order->text);
  g_free (order->value);
  g_clear_pointer (&order->formulas, g_ptr_array_unref);
  g_strfreev (order->reasons);
  g_free (order);
}

static gpointer
branch (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  Order *order = data;

  return GINT_TO_POINTER (fm_draft_branch (notebook, order->blend_id, order->version_id, error));
}

static gpointer
save_version (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  Order *order = data;
  gint64 id = fm_versions_save (notebook, order->blend_id, order->formula, order->text, error);

  return id != 0 ? fm_versions_info (notebook, id, error) : NULL;
}

static GPtrArray *
read_infos (FmNotebook *notebook, const GArray *ids, GError **error)
{
  g_autoptr (GPtrArray) infos =
      g_ptr_array_new_with_free_func ((GDestroyNotify)fm_version_info_free);

  for (guint i = 0; i < ids->len; i++) {
    FmVersionInfo *info = fm_versions_info (notebook, g_array_index (ids, gint64, i), error);

    if (info == NULL)
      return NULL;
    g_ptr_array_add (infos, info);
  }
  return g_steal_pointer (&infos);
}

static gpointer
add_versions (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  Order *order = data;
  g_autoptr (GArray) ids =
      fm_versions_add (notebook, order->blend_id, order->version_id, order->formulas,
                       (const char *const *)order->reasons, error);

  return ids != NULL ? read_infos (notebook, ids, error) : NULL;
}

static gpointer
save_setting (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  Order *order = data;

  return GINT_TO_POINTER (fm_notebook_set_setting (notebook, order->text, order->value, error));
}

/* Runs after all earlier orders. */
static void
push (FmWriter *self,
      FmNotebook *notebook,
      FmStoreFunc run,
      GDestroyNotify free_result,
      Order *order,
      gpointer source,
      GAsyncReadyCallback callback,
      gpointer user_data)
{
  fm_writer_push (self, &(FmStoreTask){
                            .owner = source,
                            .notebook = notebook,
                            .run = run,
                            .free_result = free_result,
                            .data = order,
                            .free_data = (GDestroyNotify)order_free,
                            .done = callback,
                            .user_data = user_data,
                        });
}

void
fm_session_io_branch (FmWriter *self,
                      FmNotebook *notebook,
                      gint64 blend_id,
                      gint64 version_id,
                      gpointer source,
                      GAsyncReadyCallback callback,
                      gpointer user_data)
{
  Order *order = order_new (blend_id, NULL);

  order->version_id = version_id;
  push (self, notebook, branch, NULL, order, source, callback, user_data);
}

void
fm_session_io_save_version (FmWriter *self,
                            FmNotebook *notebook,
                            gint64 blend_id,
                            const FmFormula *formula,
                            const char *reason,
                            gpointer source,
                            GAsyncReadyCallback callback,
                            gpointer user_data)
{
  Order *order = order_new (blend_id, formula);

  order->text = g_strdup (reason);
  push (self, notebook, save_version, (GDestroyNotify)fm_version_info_free, order, source, callback,
        user_data);
}

void
fm_session_io_add_versions (FmWriter *self,
                            FmNotebook *notebook,
                            gint64 blend_id,
                            gint64 parent_id,
                            const GPtrArray *formulas,
                            const char *const *reasons,
                            gpointer source,
                            GAsyncReadyCallback callback,
                            gpointer user_data)
{
  Order *order = order_new (blend_id, NULL);

  order->version_id = parent_id;
  order->formulas = g_ptr_array_new_with_free_func ((GDestroyNotify)fm_formula_free);
  for (guint i = 0; i < formulas->len; i++)
    g_ptr_array_add (order->formulas, fm_formula_copy (g_ptr_array_index (formulas, i)));
  order->reasons = g_strdupv ((char **)reasons);
  push (self, notebook, add_versions, (GDestroyNotify)g_ptr_array_unref, order, source, callback,
        user_data);
}

void
fm_session_io_save_setting (FmWriter *self,
                            FmNotebook *notebook,
                            const char *key,
                            const char *value,
                            gpointer source,
                            GAsyncReadyCallback callback,
                            gpointer user_data)
{
  Order *order = order_new (0, NULL);

  order->text = g_strdup (key);
  order->value = g_strdup (value);
  push (self, notebook, save_setting, NULL, order, source, callback, user_data);
}

gboolean
fm_session_io_finish (GAsyncResult *result, GError **error)
{
  return fm_store_task_finish (result, error) != NULL;
}

FmVersionInfo *
fm_session_io_save_version_finish (GAsyncResult *result, GError **error)
{
  return fm_store_task_finish (result, error);
}

GPtrArray *
fm_session_io_add_versions_finish (GAsyncResult *result, GError **error)
{
  return fm_store_task_finish (result, error);
}

gint64
fm_session_io_blend_id (GAsyncResult *result)
{
  Order *order = fm_store_task_data (result);

  return order->blend_id;
}

const FmFormula *
fm_session_io_formula (GAsyncResult *result)
{
  Order *order = fm_store_task_data (result);

  return order->formula;
}
