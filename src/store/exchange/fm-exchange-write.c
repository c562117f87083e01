/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-exchange-write.c - a notebook as open data: a row a line, so that memory stays flat */
#include <errno.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <string.h>

#include "store/exchange/fm-exchange-private.h"
#include "store/fm-formula-json.h"

typedef struct {
  FmDb *db;
  const FmExchangeScope *scope;
  GOutputStream *out;
  const char *folder; /* of the photos */
  GCancellable *cancellable;
} Writer;

static gboolean
write_text (Writer *self, const char *text, GError **error)
{
  return g_output_stream_write_all (self->out, text, strlen (text), NULL, self->cancellable, error);
}

static void
add_member (GString *row, const char *name, gsize length)
{
  g_string_append (row, row->len > 1 ? ", \"" : "\"");
  g_string_append_len (row, name, (gssize)length);
  g_string_append (row, "\": ");
}

/* Written as what it is where it can be read, else as the text that it is. */
static void
add_json (GString *row, const char *column, const char *text)
{
  JsonNode *node = json_from_string (text, NULL);
  const gsize suffix = node != NULL ? strlen (FM_EXCHANGE_JSON_SUFFIX) : 0;

  add_member (row, column, strlen (column) - suffix);
  if (node != NULL)
    fm_exchange_append_node (row, node);
  else
    fm_exchange_append_text (row, text);
  g_clear_pointer (&node, json_node_unref);
}

static void
add_words (GString *row, const char *column, FmStmt *stmt, int index)
{
  g_autofree char *text = fm_stmt_text (stmt, index);

  if (g_str_has_suffix (column, FM_EXCHANGE_JSON_SUFFIX)) {
    add_json (row, column, text);
    return;
  }
  add_member (row, column, strlen (column));
  fm_exchange_append_text (row, text);
}

static void
add_value (GString *row, const char *column, FmStmt *stmt, int index)
{
  switch (sqlite3_column_type (stmt, index)) {
  case SQLITE_INTEGER:
    add_member (row, column, strlen (column));
    g_string_append_printf (row, "%" G_GINT64_FORMAT, fm_stmt_int (stmt, index));
    return;
  case SQLITE_FLOAT:
    add_member (row, column, strlen (column));
    fm_json_append_double (row, fm_stmt_double (stmt, index));
    return;
  case SQLITE_TEXT:
    add_words (row, column, stmt, index);
    return;
  default:
    return;
  }
}

static gboolean
write_bytes (Writer *self,
             const FmExchangeTable *table,
             const char *column,
             FmStmt *stmt,
             int index,
             GError **error)
{
  g_autofree char *sha256 = fm_stmt_text (stmt, fm_exchange_find_column (table, "sha256"));
  g_autofree char *path = fm_exchange_photo_file (self->folder, sha256, column);
  g_autoptr (GBytes) bytes = fm_stmt_bytes (stmt, index);

  if (g_mkdir_with_parents (self->folder, 0755) != 0) {
    const int saved_errno = errno;
    g_set_error (error, FM_STORE_ERROR, FM_STORE_ERROR_NO_PERMISSION,
                 _ ("The folder of the photos cannot be made (%s)."), g_strerror (saved_errno));
    return FALSE;
  }
  return g_file_set_contents (path, g_bytes_get_data (bytes, NULL),
                              (gssize)g_bytes_get_size (bytes), error);
}

static gboolean
write_row (Writer *self, const FmExchangeTable *table, FmStmt *stmt, GError **error)
{
  g_autoptr (GString) row = g_string_new ("{");

  for (guint i = 0; i < table->columns->len; i++) {
    const FmExchangeColumn *column = g_ptr_array_index (table->columns, i);

    if (!column->is_bytes)
      add_value (row, column->name, stmt, (int)i);
    else if (!write_bytes (self, table, column->name, stmt, (int)i, error))
      return FALSE;
  }
  g_string_append_c (row, '}');
  return write_text (self, row->str, error);
}

static gboolean
write_rows (Writer *self, const FmExchangeTable *table, FmStmt *stmt, GError **error)
{
  const char *before = "\n";
  FmStep step = FM_FAILED;

  while ((step = fm_stmt_step (self->db, stmt, error)) == FM_ROW) {
    if (!fm_exchange_scope_has (self->scope, table, stmt))
      continue;
    if (!write_text (self, before, error) || !write_row (self, table, stmt, error))
      return FALSE;
    before = ",\n";
  }
  return step == FM_DONE;
}

static gboolean
write_table (Writer *self, const FmExchangeTable *table, GError **error)
{
  GString *sql = g_string_new ("SELECT ");
  g_autofree char *head = g_strdup_printf (",\n\"%s\": [", table->name);
  g_autoptr (FmStmt) stmt = NULL;

  for (guint i = 0; i < table->columns->len; i++) {
    const FmExchangeColumn *column = g_ptr_array_index (table->columns, i);
    g_string_append_printf (sql, "%s%s", i > 0 ? ", " : "", column->name);
  }
  g_string_append_printf (sql, " FROM %s ORDER BY %s", table->name, table->order);
  g_autofree char *text = g_string_free (sql, FALSE);
  stmt = fm_db_prepare (self->db, text, error);
  return stmt != NULL && write_text (self, head, error) && write_rows (self, table, stmt, error) &&
         write_text (self, "]", error);
}

static gboolean
write_all (Writer *self, GError **error)
{
  g_autoptr (GPtrArray) tables = fm_exchange_tables (self->db, error);
  g_autofree char *head = NULL;
  gint64 edition = 0;

  if (tables == NULL || !fm_db_query_int (self->db, "PRAGMA user_version", &edition, error))
    return FALSE;
  head = g_strdup_printf ("{\"" FM_EXCHANGE_FORMAT_KEY "\": \"" FM_EXCHANGE_FORMAT
                          "\",\n\"" FM_EXCHANGE_EDITION_KEY "\": %" G_GINT64_FORMAT,
                          edition);
  if (!write_text (self, head, error))
    return FALSE;
  for (guint i = 0; i < tables->len; i++)
    if (!write_table (self, g_ptr_array_index (tables, i), error))
      return FALSE;
  return write_text (self, "}\n", error);
}

/* An unfinished file is dropped when its stream is closed with a cancelled cancellable. */
static gboolean
write_file (Writer *self, const char *path, GError **error)
{
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GFileOutputStream) stream = g_file_replace (
      file, NULL, FALSE, G_FILE_CREATE_REPLACE_DESTINATION, self->cancellable, error);
  g_autoptr (GCancellable) dropped = g_cancellable_new ();

  if (stream == NULL)
    return FALSE;
  self->out = g_buffered_output_stream_new (G_OUTPUT_STREAM (stream));
  if (write_all (self, error) && g_output_stream_close (self->out, self->cancellable, error)) {
    g_clear_object (&self->out);
    return TRUE;
  }
  g_cancellable_cancel (dropped);
  g_output_stream_close (G_OUTPUT_STREAM (stream), dropped, NULL);
  g_clear_object (&self->out);
  return FALSE;
}

gboolean
fm_exchange_export (FmNotebook *notebook,
                    const FmExchangePart *part,
                    const char *path,
                    GCancellable *cancellable,
                    GError **error)
{
  g_autoptr (FmReader) db = fm_notebook_reader (notebook, cancellable, error);
  g_autoptr (FmExchangeScope) scope = db != NULL ? fm_exchange_scope_new (db, part, error) : NULL;
  g_autofree char *folder = fm_exchange_photo_folder (path);
  Writer writer = { db, scope, NULL, folder, cancellable };

  return scope != NULL && write_file (&writer, path, error);
}
