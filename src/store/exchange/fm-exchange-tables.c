/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-exchange-tables.c - tables of a notebook as open data sees them */
#include <string.h>

#include "store/exchange/fm-exchange-private.h"

#define SEARCH_INDEX "experiments_fts"
#define SUMS "record_checks" /* of the rows of one file */

static void
column_free (FmExchangeColumn *column)
{
  g_free (column->name);
  g_free (column);
}

static void
table_free (FmExchangeTable *table)
{
  g_free (table->name);
  g_ptr_array_unref (table->columns);
  g_free (table->order);
  g_free (table);
}

/* The columns of the primary key come first in each table of a notebook. */
static void
add_key (GString *order, gint64 place_in_key, const char *name)
{
  if (place_in_key > 0)
    g_string_append_printf (order, "%s%s", order->len > 0 ? ", " : "", name);
}

static gboolean
read_columns (FmDb *db, FmExchangeTable *table, GError **error)
{
  g_autoptr (FmStmt) stmt =
      fm_db_prepare (db, "SELECT name, type, pk FROM pragma_table_info(?1) ORDER BY cid", error);
  g_autoptr (GString) order = g_string_new (NULL);
  FmStep step = FM_FAILED;

  if (stmt == NULL)
    return FALSE;
  fm_stmt_bind_text (stmt, 1, table->name);
  while ((step = fm_stmt_step (db, stmt, error)) == FM_ROW) {
    FmExchangeColumn *column = g_new0 (FmExchangeColumn, 1);
    g_autofree char *type = fm_stmt_text (stmt, 1);

    column->name = fm_stmt_text (stmt, 0);
    column->is_bytes = g_strcmp0 (type, "BLOB") == 0;
    g_ptr_array_add (table->columns, column);
    add_key (order, fm_stmt_int (stmt, 2), column->name);
  }
  table->order = g_strdup (order->str);
  return step == FM_DONE;
}

static GPtrArray *
read_names (FmDb *db, GError **error)
{
  g_autoptr (FmStmt) stmt = fm_db_prepare (db,
                                           "SELECT name FROM sqlite_schema WHERE type = 'table' AND"
                                           " name NOT LIKE 'sqlite\\_%' ESCAPE '\\' AND"
                                           " substr(name, 1, length(?1)) <> ?1 AND name <> ?2"
                                           " ORDER BY name",
                                           error);
  g_autoptr (GPtrArray) tables = g_ptr_array_new_with_free_func ((GDestroyNotify)table_free);
  FmStep step = FM_FAILED;

  if (stmt == NULL)
    return NULL;
  fm_stmt_bind_text (stmt, 1, SEARCH_INDEX);
  fm_stmt_bind_text (stmt, 2, SUMS);
  while ((step = fm_stmt_step (db, stmt, error)) == FM_ROW) {
    FmExchangeTable *table = g_new0 (FmExchangeTable, 1);

    table->name = fm_stmt_text (stmt, 0);
    table->columns = g_ptr_array_new_with_free_func ((GDestroyNotify)column_free);
    g_ptr_array_add (tables, table);
  }
  return step == FM_DONE ? g_steal_pointer (&tables) : NULL;
}

GPtrArray *
fm_exchange_tables (FmDb *db, GError **error)
{
  g_autoptr (GPtrArray) tables = read_names (db, error);

  for (guint i = 0; tables != NULL && i < tables->len; i++)
    if (!read_columns (db, g_ptr_array_index (tables, i), error))
      return NULL;
  return g_steal_pointer (&tables);
}

int
fm_exchange_find_column (const FmExchangeTable *table, const char *name)
{
  for (guint i = 0; i < table->columns->len; i++) {
    const FmExchangeColumn *column = g_ptr_array_index (table->columns, i);

    if (strcmp (column->name, name) == 0)
      return (int)i;
  }
  return -1;
}

char *
fm_exchange_photo_folder (const char *path)
{
  const gsize length = strlen (path) - (g_str_has_suffix (path, ".json") ? strlen (".json") : 0);
  g_autofree char *name = g_strndup (path, length);

  return g_strconcat (name, "-photos", NULL);
}

/* The photo as it was imported has its hash as its name, the small one an ending as well. */
char *
fm_exchange_photo_file (const char *folder, const char *sha256, const char *column)
{
  const gboolean is_original = strcmp (column, "data") == 0;
  g_autofree char *name =
      g_strconcat (sha256, is_original ? "" : ".", is_original ? "" : column, NULL);

  return g_build_filename (folder, name, NULL);
}
