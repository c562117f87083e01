/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-prices.c - what an ingredient cost, and since when */
#include "store/fm-prices.h"

#include <math.h>

#include "core/base/fm-double.h"
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
