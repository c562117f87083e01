/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-record-sum.c - sums of records, and of which records they are */
#include <string.h>

#include "store/notebook/fm-db-private.h"
#include "store/notebook/fm-record-check-private.h"

#define SUM_BYTES 16 /* of a SHA-256, the first: nobody is to be kept from forging one */
#define SUMS_SINCE_VERSION 5

static const FmRecordKind kinds[] = {
  { { { "settings", NULL, "key" } }, NULL },
  { { { "ingredient_names", NULL, "ingredient" } }, NULL },
  { { { "ingredients", "id", "id" } }, "SELECT name FROM ingredients WHERE id = ?1" },
  { { { "prices", "id", "id" } }, NULL },
  { { { "blends", "id", "id" } }, "SELECT name FROM blends WHERE id = ?1" },
  { { { "drafts", "blend_id", "blend_id" } }, "SELECT name FROM blends WHERE id = ?1" },
  { { { "servings", "id", "id" }, { "serving_parts", "serving_id", "position" } },
    "SELECT name FROM servings WHERE id = ?1" },
  { { { "experiments", "id", "id" },
      { "weighings", "experiment_id", "position" },
      { "patties", "experiment_id", "position" },
      { "core_readings", "experiment_id", "position" },
      { "kitchen_events", "experiment_id", "number" },
      { "photos", "experiment_id", "id" } },
    "SELECT title FROM experiments WHERE id = ?1" },
  { { { "tastings", "id", "id" },
      { "tasting_samples", "tasting_id", "position" },
      { "tasting_tasters", "tasting_id", "position" },
      { "tasting_attributes", "tasting_id", "position" },
      { "tasting_cups", "tasting_id", "taster, round, position" },
      { "tasting_marks", "tasting_id", "position" },
      { "tasting_remarks", "tasting_id", "position" },
      { "tasting_events", "tasting_id", "position" },
      { "tasting_outcomes", "tasting_id", "sample" } },
    "SELECT title FROM tastings WHERE id = ?1" },
  { { { "maps", "id", "id" },
      { "map_components", "map_id", "position" },
      { "map_members", "map_id", "component, position" },
      { "map_points", "map_id", "position" } },
    "SELECT name FROM maps WHERE id = ?1" },
};

const FmRecordKind *
fm_record_kinds (guint *n_kinds)
{
  *n_kinds = G_N_ELEMENTS (kinds);
  return kinds;
}

void
fm_record_key_free (gpointer data)
{
  FmRecordKey *key = data;

  if (key == NULL)
    return;
  g_free (key->text);
  g_clear_pointer (&key->sum, g_bytes_unref);
  g_free (key);
}

FmRecordKey *
fm_record_key_read (FmStmt *stmt, int column)
{
  FmRecordKey *key = g_new0 (FmRecordKey, 1);

  if (sqlite3_column_type (stmt, column) == SQLITE_TEXT)
    key->text = fm_stmt_text (stmt, column);
  else
    key->id = fm_stmt_int (stmt, column);
  return key;
}

void
fm_record_key_bind (FmStmt *stmt, int index, const FmRecordKey *key)
{
  if (key->text != NULL)
    fm_stmt_bind_text (stmt, index, key->text);
  else
    fm_stmt_bind_int (stmt, index, key->id);
}

static guint
n_parts (const FmRecordKind *kind)
{
  guint n = 0;

  while (n < FM_RECORD_MAX_PARTS && kind->parts[n].table != NULL)
    n++;
  return n;
}

/* Numbers by their bits, lowest byte first, on every machine. */
static void
add_number (GChecksum *sum, guint64 bits)
{
  const guint64 bytes = GUINT64_TO_LE (bits);

  g_checksum_update (sum, (const guchar *)&bytes, sizeof bytes);
}

/* What is not known adds nothing, so that a column that comes later changes no sum. */
static void
add_value (GChecksum *sum, FmStmt *stmt, int column)
{
  const int type = sqlite3_column_type (stmt, column);
  const char *name = sqlite3_column_name (stmt, column);
  guint64 bits = 0;

  if (type == SQLITE_NULL)
    return;
  g_checksum_update (sum, (const guchar *)name, (gssize)strlen (name) + 1);
  if (type == SQLITE_INTEGER || type == SQLITE_FLOAT) {
    const double value = sqlite3_column_double (stmt, column);

    if (type == SQLITE_INTEGER)
      bits = (guint64)sqlite3_column_int64 (stmt, column);
    else
      memcpy (&bits, &value, sizeof bits);
    add_number (sum, bits);
    return;
  }
  const guchar *bytes = sqlite3_column_blob (stmt, column);
  const int n_bytes = sqlite3_column_bytes (stmt, column);

  add_number (sum, (guint64)n_bytes);
  if (n_bytes > 0)
    g_checksum_update (sum, bytes, n_bytes);
}

static gboolean
add_part (GChecksum *sum,
          FmDb *db,
          const FmRecordPart *part,
          const FmRecordKey *key,
          guint *n_rows,
          GError **error)
{
  g_autofree char *sql =
      part->column != NULL
          ? g_strdup_printf ("SELECT * FROM \"%s\" WHERE \"%s\" = ?1 ORDER BY %s", part->table,
                             part->column, part->order)
          : g_strdup_printf ("SELECT * FROM \"%s\" ORDER BY %s", part->table, part->order);
  g_autoptr (FmStmt) stmt = fm_db_prepare (db, sql, error);
  FmStep step = FM_FAILED;

  if (stmt == NULL)
    return FALSE;
  if (part->column != NULL)
    fm_record_key_bind (stmt, 1, key);
  while ((step = fm_stmt_step (db, stmt, error)) == FM_ROW) {
    g_checksum_update (sum, (const guchar *)part->table, (gssize)strlen (part->table) + 1);
    for (int i = 0; i < sqlite3_column_count (stmt); i++)
      add_value (sum, stmt, i);
    (*n_rows)++;
  }
  return step == FM_DONE;
}

gboolean
fm_record_sum (
    FmDb *db, const FmRecordKind *kind, const FmRecordKey *key, GBytes **sum, GError **error)
{
  g_autoptr (GChecksum) checksum = g_checksum_new (G_CHECKSUM_SHA256);
  guint8 digest[32];
  gsize length = sizeof digest;
  guint n_rows = 0;

  *sum = NULL;
  for (guint i = 0; i < n_parts (kind); i++) {
    if (!add_part (checksum, db, &kind->parts[i], key, &n_rows, error))
      return FALSE;
    if (n_rows == 0)
      return TRUE;
  }
  g_checksum_get_digest (checksum, digest, &length);
  *sum = g_bytes_new (digest, SUM_BYTES);
  return TRUE;
}

static char *
trigger_sql (const FmRecordKind *kind, const FmRecordPart *part, const char *event, const char *row)
{
  g_autofree char *id =
      part->column != NULL ? g_strconcat ("+", row, ".", part->column, NULL) : g_strdup ("0");

  /* Not OR IGNORE: what is to be done then, the statement says that fires the trigger. */
  return g_strdup_printf ("CREATE TEMP TRIGGER touched_%s_%s_%s AFTER %s ON main.%s WHEN NOT EXISTS"
                          " (SELECT 1 FROM touched_records t WHERE t.kind = '%s' AND t.id = %s)"
                          " BEGIN INSERT INTO touched_records VALUES ('%s', %s); END;",
                          part->table, event, row, event, part->table, kind->parts[0].table, id,
                          kind->parts[0].table, id);
}

static gboolean
watch_part (FmDb *db, const FmRecordKind *kind, const FmRecordPart *part, GError **error)
{
  g_autofree char *inserted = trigger_sql (kind, part, "INSERT", "new");
  g_autofree char *updated = trigger_sql (kind, part, "UPDATE", "new");
  g_autofree char *moved = trigger_sql (kind, part, "UPDATE", "old");
  g_autofree char *deleted = trigger_sql (kind, part, "DELETE", "old");
  g_autofree char *sql = g_strconcat (inserted, updated, moved, deleted, NULL);

  return fm_db_exec (db, sql, error);
}

gboolean
fm_record_check_watch (FmDb *db, GError **error)
{
  gint64 version;

  if (!fm_db_query_int (db, "PRAGMA user_version", &version, error))
    return FALSE;
  if (version < SUMS_SINCE_VERSION)
    return TRUE;
  if (!fm_db_exec (db,
                   "PRAGMA temp_store = MEMORY;"
                   "CREATE TEMP TABLE touched_records (kind TEXT NOT NULL, id NOT NULL,"
                   " PRIMARY KEY (kind, id)) WITHOUT ROWID;",
                   error))
    return FALSE;
  for (gsize i = 0; i < G_N_ELEMENTS (kinds); i++)
    for (guint j = 0; j < n_parts (&kinds[i]); j++)
      if (!watch_part (db, &kinds[i], &kinds[i].parts[j], error))
        return FALSE;
  db->has_sums = TRUE;
  return TRUE;
}

static gboolean
store_sum (FmDb *db, const FmRecordKind *kind, const FmRecordKey *key, GError **error)
{
  g_autoptr (GBytes) sum = NULL;
  g_autoptr (FmStmt) stmt = NULL;

  if (!fm_record_sum (db, kind, key, &sum, error))
    return FALSE;
  stmt = fm_db_prepare (db,
                        sum != NULL ? "INSERT OR REPLACE INTO record_checks VALUES (?1, ?2, ?3)"
                                    : "DELETE FROM record_checks WHERE kind = ?1 AND id = ?2",
                        error);
  if (stmt == NULL)
    return FALSE;
  fm_stmt_bind_text (stmt, 1, kind->parts[0].table);
  fm_record_key_bind (stmt, 2, key);
  if (sum != NULL)
    fm_stmt_bind_bytes (stmt, 3, sum);
  return fm_stmt_run (db, stmt, error);
}

/* The touched records of @kind. */
static gboolean
store_kind (FmDb *db, const FmRecordKind *kind, GError **error)
{
  g_autoptr (GPtrArray) keys = g_ptr_array_new_with_free_func (fm_record_key_free);
  g_autoptr (FmStmt) stmt =
      fm_db_prepare (db, "SELECT id FROM touched_records WHERE kind = ?1", error);
  FmStep step = FM_FAILED;

  if (stmt == NULL)
    return FALSE;
  fm_stmt_bind_text (stmt, 1, kind->parts[0].table);
  while ((step = fm_stmt_step (db, stmt, error)) == FM_ROW)
    g_ptr_array_add (keys, fm_record_key_read (stmt, 0));
  for (guint i = 0; step == FM_DONE && i < keys->len; i++)
    if (!store_sum (db, kind, keys->pdata[i], error))
      return FALSE;
  return step == FM_DONE;
}

gboolean
fm_record_check_store (FmDb *db, GError **error)
{
  gint64 any;

  if (!db->has_sums)
    return TRUE;
  if (!fm_db_query_int (db, "SELECT EXISTS (SELECT 1 FROM touched_records)", &any, error))
    return FALSE;
  if (!any)
    return TRUE;
  for (gsize i = 0; i < G_N_ELEMENTS (kinds); i++)
    if (!store_kind (db, &kinds[i], error))
      return FALSE;
  return fm_db_exec (db, "DELETE FROM touched_records", error);
}

static gboolean
touch_all (FmDb *db, GError **error)
{
  for (gsize i = 0; i < G_N_ELEMENTS (kinds); i++) {
    const FmRecordPart *root = &kinds[i].parts[0];
    g_autofree char *sql =
        g_strdup_printf ("INSERT OR IGNORE INTO touched_records SELECT '%s', %s FROM \"%s\"",
                         root->table, root->column != NULL ? root->column : "0", root->table);

    if (!fm_db_exec (db, sql, error))
      return FALSE;
  }
  return TRUE;
}

gboolean
fm_record_check_begin (FmDb *db, GError **error)
{
  gint64 any = TRUE;

  if (db->has_sums &&
      !fm_db_query_int (db, "SELECT EXISTS (SELECT 1 FROM record_checks)", &any, error))
    return FALSE;
  if (any)
    return TRUE;
  if (!fm_db_exec (db, "BEGIN IMMEDIATE", error))
    return FALSE;
  if (touch_all (db, error) && fm_record_check_store (db, error) &&
      fm_db_exec (db, "COMMIT", error))
    return TRUE;
  if (!sqlite3_get_autocommit (fm_db_handle (db)))
    fm_db_exec (db, "ROLLBACK", NULL);
  return FALSE;
}

gboolean
fm_record_check_forget_gone (FmDb *db, GError **error)
{
  for (gsize i = 0; db->has_sums && i < G_N_ELEMENTS (kinds); i++) {
    const FmRecordPart *root = &kinds[i].parts[0];
    g_autofree char *sql =
        g_strdup_printf ("DELETE FROM record_checks WHERE kind = '%s' AND NOT EXISTS (SELECT 1 FROM"
                         " \"%s\" r WHERE r.\"%s\" = record_checks.id)",
                         root->table, root->table, root->column);

    if (root->column != NULL && !fm_db_exec (db, sql, error))
      return FALSE;
  }
  return TRUE;
}
