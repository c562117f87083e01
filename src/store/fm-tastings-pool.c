/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tastings-pool.c - the opened tastings of a blend, to be read together */
#include <glib/gi18n-lib.h>

#include "store/fm-tastings-private.h"

static gboolean
is_left_out (const GArray *left_out, gint64 id)
{
  for (guint i = 0; left_out != NULL && i < left_out->len; i++)
    if (g_array_index (left_out, gint64, i) == id)
      return TRUE;
  return FALSE;
}

static GPtrArray *
load_opened (FmNotebook *self, gint64 blend_id, const GArray *left_out, GError **error)
{
  g_autoptr (GPtrArray) infos = fm_tastings_list (self, blend_id, error);
  g_autoptr (GPtrArray) tastings = g_ptr_array_new_with_free_func ((GDestroyNotify)fm_tasting_free);

  for (guint i = 0; infos != NULL && i < infos->len; i++) {
    const FmTastingInfo *info = infos->pdata[i];
    FmTasting *tasting;

    if (info->state != FM_TASTING_OPENED || is_left_out (left_out, info->id))
      continue;
    tasting = fm_tastings_load (self, info->id, error);
    if (tasting == NULL)
      return NULL;
    g_ptr_array_add (tastings, tasting);
  }
  return infos != NULL ? g_steal_pointer (&tastings) : NULL;
}

/* "version 7"; of another blend "Lean trial, version 2". A version that is gone keeps its name. */
static gboolean
call_by_number (FmReader *db, gint64 version_id, gint64 blend_id, char **name, GError **error)
{
  g_autoptr (FmStmt) stmt = fm_db_prepare (db,
                                           "SELECT v.number, v.blend_id, b.name FROM versions v"
                                           " JOIN blends b ON b.id = v.blend_id WHERE v.id = ?1",
                                           error);
  FmStep step;

  if (stmt == NULL)
    return FALSE;
  fm_stmt_bind_int (stmt, 1, version_id);
  step = fm_stmt_step (db, stmt, error);
  if (step == FM_ROW) {
    const int number = (int)fm_stmt_int (stmt, 0);
    g_autofree char *blend = fm_stmt_text (stmt, 2);

    g_free (*name);
    *name = fm_stmt_int (stmt, 1) == blend_id
                ? g_strdup_printf (_ ("version %d"), number)
                /* Translators: name of a blend, number of its version */
                : g_strdup_printf (_ ("%s, version %d"), blend, number);
  }
  return step != FM_FAILED;
}

FmTastingPool *
fm_tastings_pool (FmNotebook *self, gint64 blend_id, const GArray *left_out, GError **error)
{
  g_autoptr (GPtrArray) tastings = load_opened (self, blend_id, left_out, error);
  g_autoptr (FmTastingPool) pool = tastings != NULL ? fm_tasting_pool_new (tastings) : NULL;
  g_autoptr (FmReader) db = pool != NULL ? fm_notebook_reader (self, NULL, error) : NULL;

  if (db == NULL)
    return NULL;
  for (guint i = 0; i < pool->items->len; i++) {
    const gint64 version_id = g_array_index (pool->version_ids, gint64, i);

    if (version_id != 0 &&
        !call_by_number (db, version_id, blend_id, (char **)&pool->items->pdata[i], error))
      return NULL;
  }
  return g_steal_pointer (&pool);
}
