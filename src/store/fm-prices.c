/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-prices.c - what an ingredient cost, and since when */
#include "store/fm-prices.h"

#include <math.h>

#include "core/base/fm-double.h"
#include "store/fm-versions.h"
#include "store/notebook/fm-db.h"

#define LATEST_SQL                                                                                 \
  "SELECT price_per_kg, recorded_at FROM prices WHERE ingredient = ?1"                             \
  " ORDER BY recorded_at DESC, id DESC LIMIT ?2"

static gboolean
read_latest (FmDb *db, const char *identity, double *price_per_kg, GError **error)
{
  g_autoptr (FmStmt) stmt = fm_db_prepare (db, LATEST_SQL, error);
  FmStep step;

  *price_per_kg = (double)NAN;
  if (stmt == NULL)
    return FALSE;
  fm_stmt_bind_text (stmt, 1, identity);
  fm_stmt_bind_int (stmt, 2, 1);
  while ((step = fm_stmt_step (db, stmt, error)) == FM_ROW)
    *price_per_kg = fm_stmt_double (stmt, 0);
  return step == FM_DONE;
}

static gboolean
record_in (FmDb *db, const FmIngredient *ingredient, gint64 recorded_at, GError **error)
{
  const char *identity = fm_ingredient_identity (ingredient);
  double latest;

  if (!read_latest (db, identity, &latest, error))
    return FALSE;
  if (fm_double_same (latest, ingredient->price_per_kg))
    return TRUE;

  g_autoptr (FmStmt) stmt = fm_db_prepare (
      db, "INSERT INTO prices (ingredient, recorded_at, price_per_kg) VALUES (?1, ?2, ?3)", error);
  if (stmt == NULL)
    return FALSE;
  fm_stmt_bind_text (stmt, 1, identity);
  fm_stmt_bind_int (stmt, 2, recorded_at);
  fm_stmt_bind_double (stmt, 3, ingredient->price_per_kg);
  return fm_stmt_run (db, stmt, error);
}

gboolean
fm_prices_record (FmNotebook *self,
                  const FmIngredient *ingredient,
                  gint64 recorded_at,
                  GError **error)
{
  FmDb *db;

  if (isnan (ingredient->price_per_kg))
    return TRUE;
  if (!fm_ingredient_check (ingredient, error))
    return FALSE;
  db = fm_notebook_begin (self, error);
  return db != NULL &&
         fm_notebook_end (self, record_in (db, ingredient, recorded_at, error), error);
}

GArray *
fm_prices_list (FmNotebook *self, const char *identity, guint n_max, GError **error)
{
  g_autoptr (FmReader) db = fm_notebook_reader (self, NULL, error);
  g_autoptr (FmStmt) stmt = db == NULL ? NULL : fm_db_prepare (db, LATEST_SQL, error);
  g_autoptr (GArray) prices = g_array_new (FALSE, FALSE, sizeof (FmPrice));
  FmStep step;

  if (stmt == NULL)
    return NULL;
  fm_stmt_bind_text (stmt, 1, identity);
  fm_stmt_bind_int (stmt, 2, n_max);
  while ((step = fm_stmt_step (db, stmt, error)) == FM_ROW) {
    FmPrice price = { fm_stmt_double (stmt, 0), fm_stmt_int (stmt, 1) };

    g_array_append_val (prices, price);
  }
  return step == FM_DONE ? g_steal_pointer (&prices) : NULL;
}

GHashTable *
fm_prices_today (FmNotebook *self, GError **error)
{
  g_autoptr (GHashTable) prices = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  g_autoptr (FmReader) db = fm_notebook_reader (self, NULL, error);
  g_autoptr (FmStmt) stmt =
      db == NULL ? NULL
                 : fm_db_prepare (db,
                                  "SELECT ingredient, price_per_kg, recorded_at FROM prices"
                                  " ORDER BY recorded_at, id",
                                  error);
  FmStep step = FM_FAILED;

  if (stmt == NULL)
    return NULL;
  while ((step = fm_stmt_step (db, stmt, error)) == FM_ROW) {
    const FmPrice price = { fm_stmt_double (stmt, 1), fm_stmt_int (stmt, 2) };

    g_hash_table_replace (prices, fm_stmt_text (stmt, 0), g_memdup2 (&price, sizeof price));
  }
  return step == FM_DONE ? g_steal_pointer (&prices) : NULL;
}

/* Own entries that are kept for all blends; those of one formula alone are left as they are. */
static GHashTable *
read_own (FmNotebook *self, GError **error)
{
  g_autoptr (GPtrArray) own = fm_ingredients_list (self, NULL, error);
  GHashTable *by_id = NULL;

  if (own == NULL)
    return NULL;
  by_id =
      g_hash_table_new_full (g_str_hash, g_str_equal, g_free, (GDestroyNotify)fm_ingredient_unref);
  for (guint i = 0; i < own->len; i++) {
    FmIngredient *ingredient = g_ptr_array_index (own, i);

    g_hash_table_replace (by_id, g_strdup (ingredient->id), fm_ingredient_ref (ingredient));
  }
  return by_id;
}

static gboolean
keep_own (FmNotebook *self, const FmIngredient *own, double price_per_kg, GError **error)
{
  g_autoptr (FmIngredient) priced = fm_ingredient_copy (own);

  priced->price_per_kg = price_per_kg;
  return fm_ingredients_save (self, priced, error);
}

static gboolean
record_one (FmNotebook *self,
            FmDb *db,
            const FmIngredient *ingredient,
            GHashTable *own,
            gint64 recorded_at,
            guint *n_changed,
            GError **error)
{
  const FmIngredient *kept = g_hash_table_lookup (own, ingredient->id);
  double latest;

  if (!read_latest (db, fm_ingredient_identity (ingredient), &latest, error))
    return FALSE;
  *n_changed += !fm_double_same (latest, ingredient->price_per_kg);
  return record_in (db, ingredient, recorded_at, error) &&
         (kept == NULL || keep_own (self, kept, ingredient->price_per_kg, error));
}

gboolean
fm_prices_record_all (FmNotebook *self,
                      const GPtrArray *ingredients,
                      gint64 recorded_at,
                      guint *n_changed,
                      GError **error)
{
  g_autoptr (GHashTable) own = read_own (self, error);
  FmDb *db = own != NULL ? fm_notebook_begin (self, error) : NULL;
  gboolean done = db != NULL;

  *n_changed = 0;
  if (db == NULL)
    return FALSE;
  for (guint i = 0; done && i < ingredients->len; i++)
    done = record_one (self, db, g_ptr_array_index (ingredients, i), own, recorded_at, n_changed,
                       error);
  return fm_notebook_end (self, done, error);
}
