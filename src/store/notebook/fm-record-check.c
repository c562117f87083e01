/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-record-check.c - was a record changed by anything but this program? */
#include "store/notebook/fm-record-check.h"

#include "store/notebook/fm-record-check-private.h"

#define N_AT_ONCE 100

void
fm_altered_record_free (FmAlteredRecord *record)
{
  if (record == NULL)
    return;
  g_free (record->name);
  g_free (record);
}

/* Up to N_AT_ONCE records behind @last (nullable), with the sums that are stored. */
static GPtrArray *
list_keys (FmDb *db, const FmRecordPart *root, const FmRecordKey *last, GError **error)
{
  g_autofree char *sql = g_strdup_printf (
      "SELECT r.\"%s\", c.sum FROM \"%s\" r LEFT JOIN record_checks c ON c.kind = ?1 AND"
      " c.id = +r.\"%s\" %s%s%s ORDER BY 1 LIMIT %d",
      root->column, root->table, root->column, last != NULL ? "WHERE r.\"" : "",
      last != NULL ? root->column : "", last != NULL ? "\" > ?2" : "", N_AT_ONCE);
  g_autoptr (GPtrArray) keys = g_ptr_array_new_with_free_func (fm_record_key_free);
  g_autoptr (FmStmt) stmt = fm_db_prepare (db, sql, error);
  FmStep step = FM_FAILED;

  if (stmt == NULL)
    return NULL;
  fm_stmt_bind_text (stmt, 1, root->table);
  if (last != NULL)
    fm_record_key_bind (stmt, 2, last);
  while ((step = fm_stmt_step (db, stmt, error)) == FM_ROW) {
    FmRecordKey *key = fm_record_key_read (stmt, 0);

    key->sum = fm_stmt_bytes (stmt, 1);
    g_ptr_array_add (keys, key);
  }
  return step == FM_DONE ? g_steal_pointer (&keys) : NULL;
}

/* A table that is one record is there even without rows. */
static GPtrArray *
list_whole (FmDb *db, const FmRecordPart *root, GError **error)
{
  g_autoptr (GPtrArray) keys = g_ptr_array_new_with_free_func (fm_record_key_free);
  g_autoptr (FmStmt) stmt = fm_db_prepare (
      db, "SELECT (SELECT sum FROM record_checks WHERE kind = ?1 AND id = 0)", error);
  FmStep step = FM_FAILED;

  if (stmt == NULL)
    return NULL;
  fm_stmt_bind_text (stmt, 1, root->table);
  while ((step = fm_stmt_step (db, stmt, error)) == FM_ROW) {
    FmRecordKey *key = g_new0 (FmRecordKey, 1);

    key->sum = fm_stmt_bytes (stmt, 0);
    g_ptr_array_add (keys, key);
  }
  return step == FM_DONE ? g_steal_pointer (&keys) : NULL;
}

static char *
read_name (FmDb *db, const FmRecordKind *kind, const FmRecordKey *key)
{
  g_autoptr (FmStmt) stmt =
      kind->name_sql != NULL ? fm_db_prepare (db, kind->name_sql, NULL) : NULL;
  char *name = NULL;

  if (stmt == NULL)
    return NULL;
  fm_record_key_bind (stmt, 1, key);
  while (fm_stmt_step (db, stmt, NULL) == FM_ROW)
    name = name != NULL ? name : fm_stmt_text (stmt, 0);
  return name;
}

static void
add_altered (GPtrArray *altered, FmDb *db, const FmRecordKind *kind, const FmRecordKey *key)
{
  FmAlteredRecord *record = g_new0 (FmAlteredRecord, 1);

  record->table = kind->parts[0].table;
  record->id = key->id;
  record->name = read_name (db, kind, key);
  g_ptr_array_add (altered, record);
}

/* What cannot be read does not match, either; only a wish to stop ends the comparing. */
static gboolean
compare (
    FmDb *db, const FmRecordKind *kind, const FmRecordKey *key, GPtrArray *altered, GError **error)
{
  g_autoptr (GError) local_error = NULL;
  g_autoptr (GBytes) sum = NULL;
  gboolean is_same;

  if (!fm_record_sum (db, kind, key, &sum, &local_error) &&
      g_error_matches (local_error, G_IO_ERROR, G_IO_ERROR_CANCELLED)) {
    g_propagate_error (error, g_steal_pointer (&local_error));
    return FALSE;
  }
  /* A sum that is not there was read as no bytes. */
  is_same = sum != NULL ? g_bytes_equal (sum, key->sum)
                        : local_error == NULL && g_bytes_get_size (key->sum) == 0;
  if (!is_same)
    add_altered (altered, db, kind, key);
  return TRUE;
}

/* Compares some more; @last: (inout): the last record of them, NULL behind the end. */
static gboolean
compare_some (FmNotebook *self,
              const FmRecordKind *kind,
              FmRecordKey **last,
              GPtrArray *altered,
              GCancellable *cancellable,
              GError **error)
{
  const FmRecordPart *root = &kind->parts[0];
  g_autoptr (FmReader) db = fm_notebook_reader (self, cancellable, error);
  g_autoptr (GPtrArray) keys = NULL;

  if (db == NULL)
    return FALSE;
  keys = root->column != NULL ? list_keys (db, root, *last, error) : list_whole (db, root, error);
  if (keys == NULL)
    return FALSE;
  for (guint i = 0; i < keys->len; i++)
    if (!compare (db, kind, keys->pdata[i], altered, error))
      return FALSE;
  g_clear_pointer (last, fm_record_key_free);
  if (keys->len == N_AT_ONCE)
    *last = g_ptr_array_steal_index (keys, keys->len - 1);
  return TRUE;
}

/* A sum without its record. */
static gboolean
find_gone (FmNotebook *self,
           const FmRecordKind *kind,
           GPtrArray *altered,
           GCancellable *cancellable,
           GError **error)
{
  const FmRecordPart *root = &kind->parts[0];
  g_autofree char *sql =
      root->column == NULL
          ? NULL
          : g_strdup_printf ("SELECT c.id FROM record_checks c WHERE c.kind = '%s' AND NOT EXISTS"
                             " (SELECT 1 FROM \"%s\" r WHERE r.\"%s\" = c.id)",
                             root->table, root->table, root->column);
  g_autoptr (FmReader) db = fm_notebook_reader (self, cancellable, error);
  g_autoptr (FmStmt) stmt = db != NULL && sql != NULL ? fm_db_prepare (db, sql, error) : NULL;
  FmStep step = stmt != NULL ? FM_ROW : FM_DONE;

  if (db == NULL || (sql != NULL && stmt == NULL))
    return FALSE;
  while (step == FM_ROW && (step = fm_stmt_step (db, stmt, error)) == FM_ROW) {
    FmAlteredRecord *record = g_new0 (FmAlteredRecord, 1);

    record->table = root->table;
    record->id = fm_stmt_int (stmt, 0);
    record->is_gone = TRUE;
    g_ptr_array_add (altered, record);
  }
  return step == FM_DONE;
}

GPtrArray *
fm_record_check_run (FmNotebook *self, GCancellable *cancellable, GError **error)
{
  g_autoptr (GPtrArray) altered =
      g_ptr_array_new_with_free_func ((GDestroyNotify)fm_altered_record_free);
  guint n_kinds;
  const FmRecordKind *kinds = fm_record_kinds (&n_kinds);

  for (guint i = 0; i < n_kinds; i++) {
    g_autoptr (FmRecordKey) last = NULL;

    do {
      if (!compare_some (self, &kinds[i], &last, altered, cancellable, error))
        return NULL;
    } while (last != NULL);
    if (!find_gone (self, &kinds[i], altered, cancellable, error))
      return NULL;
  }
  return g_steal_pointer (&altered);
}
