/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-schema.c - migrations one step at a time, and the check against strange schemas */
#include "store/notebook/fm-schema.h"

#include <glib/gi18n-lib.h>

#include "store/notebook/fm-db.h"
#include "store/notebook/fm-schema-v1.h"
#include "store/notebook/fm-schema-v2.h"
#include "store/notebook/fm-schema-v3.h"
#include "store/notebook/fm-schema-v4.h"
#include "store/notebook/fm-schema-v5.h"

#define FTS_SHADOW_PREFIX "experiments_fts_"

static const FmMigration migrations[] = {
  { 1, fm_schema_v1_sql }, { 2, fm_schema_v2_sql }, { 3, fm_schema_v3_sql },
  { 4, fm_schema_v4_sql }, { 5, fm_schema_v5_sql },
};
static const FmMigration *test_migrations;
static guint n_test_migrations;

const FmMigration *
fm_schema_migrations (guint *n_migrations)
{
  if (test_migrations != NULL) {
    *n_migrations = n_test_migrations;
    return test_migrations;
  }
  *n_migrations = G_N_ELEMENTS (migrations);
  return migrations;
}

int
fm_schema_version (void)
{
  guint n_migrations;
  const FmMigration *steps = fm_schema_migrations (&n_migrations);

  return steps[n_migrations - 1].to_version;
}

void
fm_schema_set_migrations_for_test (const FmMigration *steps, guint n_migrations)
{
  test_migrations = steps;
  n_test_migrations = n_migrations;
}

/* Foreign keys are not checked while tables are rebuilt, so look at the result. */
static gboolean
check_foreign_keys (sqlite3 *handle, GError **error)
{
  sqlite3_stmt *stmt = NULL;
  int code = sqlite3_prepare_v2 (handle, "PRAGMA foreign_key_check", -1, &stmt, NULL);

  if (code == SQLITE_OK)
    code = sqlite3_step (stmt);
  sqlite3_finalize (stmt);
  if (code == SQLITE_DONE)
    return TRUE;
  fm_db_set_error_code (code == SQLITE_ROW ? SQLITE_CORRUPT : code, NULL, error);
  return FALSE;
}

gboolean
fm_schema_migrate_step (sqlite3 *handle, const FmMigration *migration, GError **error)
{
  g_autofree char *stamp = g_strdup_printf ("PRAGMA application_id = %d; PRAGMA user_version = %d;",
                                            FM_NOTEBOOK_APPLICATION_ID, migration->to_version);

  if (!fm_db_exec_handle (handle, "BEGIN IMMEDIATE", error))
    return FALSE;
  if (fm_db_exec_handle (handle, migration->sql, error) && check_foreign_keys (handle, error) &&
      fm_db_exec_handle (handle, stamp, error) && fm_db_exec_handle (handle, "COMMIT", error))
    return TRUE;
  if (!sqlite3_get_autocommit (handle))
    fm_db_exec_handle (handle, "ROLLBACK", NULL);
  return FALSE;
}

gboolean
fm_schema_create (sqlite3 *handle, GError **error)
{
  guint n_migrations;
  const FmMigration *steps = fm_schema_migrations (&n_migrations);

  for (guint i = 0; i < n_migrations; i++) {
    if (!fm_schema_migrate_step (handle, &steps[i], error))
      return FALSE;
  }
  return TRUE;
}

static gboolean
create_expected (sqlite3 *handle, int version, GError **error)
{
  guint n_migrations;
  const FmMigration *steps = fm_schema_migrations (&n_migrations);

  for (guint i = 0; i < n_migrations && steps[i].to_version <= version; i++) {
    if (!fm_db_exec_handle (handle, steps[i].sql, error))
      return FALSE;
  }
  return TRUE;
}

/* Tables that SQLite itself words, perhaps otherwise in another release: the name must do. */
static gboolean
is_worded_by_sqlite (const char *type, const char *name, const char *sql)
{
  return g_strcmp0 (type, "table") == 0 && g_str_has_prefix (name, FTS_SHADOW_PREFIX) &&
         sql != NULL && g_str_has_prefix (sql, "CREATE TABLE ");
}

static gboolean
is_statistics (const char *type, const char *name)
{
  return g_strcmp0 (type, "table") == 0 &&
         (g_strcmp0 (name, "sqlite_stat1") == 0 || g_strcmp0 (name, "sqlite_stat4") == 0);
}

/* All objects as "type name" -> SQL text. */
static GHashTable *
read_objects (sqlite3 *handle, GError **error)
{
  g_autoptr (GHashTable) objects = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  sqlite3_stmt *stmt = NULL;
  int code =
      sqlite3_prepare_v2 (handle, "SELECT type, name, sql FROM sqlite_schema", -1, &stmt, NULL);

  while (code == SQLITE_OK || code == SQLITE_ROW) {
    const char *type, *name, *sql;

    code = sqlite3_step (stmt);
    if (code != SQLITE_ROW)
      break;
    type = (const char *)sqlite3_column_text (stmt, 0);
    name = (const char *)sqlite3_column_text (stmt, 1);
    sql = (const char *)sqlite3_column_text (stmt, 2);
    if (!is_statistics (type, name))
      g_hash_table_insert (objects, g_strdup_printf ("%s %s", type, name),
                           is_worded_by_sqlite (type, name, sql) ? NULL : g_strdup (sql));
  }
  if (code != SQLITE_DONE) {
    fm_db_set_error (handle, error);
    sqlite3_finalize (stmt);
    return NULL;
  }
  sqlite3_finalize (stmt);
  return g_steal_pointer (&objects);
}

static gboolean
compare_objects (GHashTable *found, GHashTable *expected, GError **error)
{
  GHashTableIter iter;
  gpointer key, sql;

  g_hash_table_iter_init (&iter, found);
  while (g_hash_table_iter_next (&iter, &key, &sql)) {
    gpointer expected_sql;

    if (!g_hash_table_lookup_extended (expected, key, NULL, &expected_sql) ||
        g_strcmp0 (sql, expected_sql) != 0) {
      g_autofree char *name = g_utf8_make_valid (key, -1);

      g_set_error (error, FM_STORE_ERROR, FM_STORE_ERROR_HOSTILE,
                   _ ("This file holds something that Forcemeat did not put there (%s), so it was "
                      "not opened. Ask whoever sent it for a copy saved by Forcemeat."),
                   name);
      return FALSE;
    }
  }
  g_hash_table_iter_init (&iter, expected);
  while (g_hash_table_iter_next (&iter, &key, NULL)) {
    if (!g_hash_table_contains (found, key)) {
      g_set_error (error, FM_STORE_ERROR, FM_STORE_ERROR_DAMAGED,
                   _ ("The notebook is damaged: a part of it is missing (%s). Leave it as it is, "
                      "and open a backup or a saved copy."),
                   (const char *)key);
      return FALSE;
    }
  }
  return TRUE;
}

gboolean
fm_schema_check (sqlite3 *handle, int version, GError **error)
{
  g_autoptr (GHashTable) found = read_objects (handle, error);
  g_autoptr (GHashTable) expected = NULL;
  sqlite3 *model = NULL;
  gboolean ok;

  if (found == NULL)
    return FALSE;
  if (sqlite3_open (":memory:", &model) == SQLITE_OK) {
    if (create_expected (model, version, error))
      expected = read_objects (model, error);
  } else {
    fm_db_set_error (model, error);
  }
  ok = expected != NULL && compare_objects (found, expected, error);
  sqlite3_close (model);
  return ok;
}
