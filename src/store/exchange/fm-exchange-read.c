/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-exchange-read.c - a notebook out of open data: all of it or nothing */
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <string.h>

#include "store/exchange/fm-exchange-private.h"
#include "store/fm-versions.h"
#include "store/notebook/fm-schema.h"

typedef struct {
  FmDb *db;
  GPtrArray *tables;
  const char *folder;
  GCancellable *cancellable;
} Reader;

static gboolean
fail (GError **error, const char *table, guint row, const char *what)
{
  g_set_error (error, FM_STORE_ERROR, FM_STORE_ERROR_DAMAGED,
               /* TRANSLATORS: name of a list, number of a row in it, what is wrong there */
               _ ("Nothing was imported: “%s”, row %u: %s."), table, row + 1, what);
  return FALSE;
}

/* Puts where the fault lies in front of what SQLite or the parser says. */
static gboolean
prefix (GError **error, const char *table, guint row)
{
  /* TRANSLATORS: name of a list, number of a row in it; the fault follows */
  g_prefix_error (error, _ ("Nothing was imported: “%s”, row %u: "), table, row + 1);
  return FALSE;
}

static const FmExchangeTable *
find_table (const Reader *self, const char *name)
{
  for (guint i = 0; i < self->tables->len; i++) {
    const FmExchangeTable *table = g_ptr_array_index (self->tables, i);

    if (strcmp (table->name, name) == 0)
      return table;
  }
  return NULL;
}

/* A member without its ending is the JSON of a column with it. */
static int
find_member (const FmExchangeTable *table, const char *member)
{
  const int plain = fm_exchange_find_column (table, member);
  g_autofree char *json = g_strconcat (member, FM_EXCHANGE_JSON_SUFFIX, NULL);

  return plain >= 0 ? plain : fm_exchange_find_column (table, json);
}

static gboolean
bind_json (FmStmt *stmt, int index, const char *column, JsonNode *node, GError **error)
{
  g_autoptr (GString) text = g_string_new (NULL);
  g_autoptr (FmFormula) formula = NULL;

  fm_exchange_append_node (text, node);
  if (strcmp (column, "formula" FM_EXCHANGE_JSON_SUFFIX) == 0) {
    formula = fm_formula_from_json (text->str, error);
    if (formula == NULL)
      return FALSE;
  }
  fm_stmt_bind_text (stmt, index, text->str);
  return TRUE;
}

static gboolean
bind_value (FmStmt *stmt, int index, const char *column, JsonNode *node, GError **error)
{
  const GType type = JSON_NODE_HOLDS_VALUE (node) ? json_node_get_value_type (node) : G_TYPE_NONE;

  if (g_str_has_suffix (column, FM_EXCHANGE_JSON_SUFFIX) && JSON_NODE_HOLDS_OBJECT (node))
    return bind_json (stmt, index, column, node, error);
  if (type == G_TYPE_INT64)
    fm_stmt_bind_int (stmt, index, json_node_get_int (node));
  else if (type == G_TYPE_DOUBLE)
    fm_stmt_bind_double (stmt, index, json_node_get_double (node));
  else if (type == G_TYPE_STRING)
    fm_stmt_bind_text (stmt, index, json_node_get_string (node));
  else if (!JSON_NODE_HOLDS_NULL (node)) {
    g_set_error (error, FM_STORE_ERROR, FM_STORE_ERROR_DAMAGED,
                 _ ("“%s” is neither a number nor a text"), column);
    return FALSE;
  }
  return TRUE;
}

/* A photo whose bytes are not those that were exported is no photo of this notebook. */
static GBytes *
read_bytes (const Reader *self, JsonObject *row, const char *column, GError **error)
{
  const char *sha256 = json_object_get_string_member_with_default (row, "sha256", "");
  g_autofree char *name = g_path_get_basename (sha256);
  g_autofree char *path = fm_exchange_photo_file (self->folder, name, column);
  g_autofree char *found = NULL;
  char *data = NULL;
  gsize size;

  if (!g_file_get_contents (path, &data, &size, error))
    return NULL;
  found = g_compute_checksum_for_data (G_CHECKSUM_SHA256, (const guchar *)data, size);
  if (strcmp (column, "data") != 0 || strcmp (found, sha256) == 0)
    return g_bytes_new_take (data, size);
  g_free (data);
  g_set_error (error, FM_STORE_ERROR, FM_STORE_ERROR_DAMAGED,
               _ ("the photo “%s” is not the one that was exported"), path);
  return NULL;
}

static gboolean
bind_row (const Reader *self,
          const FmExchangeTable *table,
          FmStmt *stmt,
          JsonObject *row,
          GPtrArray *kept,
          GError **error)
{
  JsonObjectIter iter;
  const char *member;
  JsonNode *node;

  json_object_iter_init (&iter, row);
  while (json_object_iter_next (&iter, &member, &node)) {
    const int index = find_member (table, member);

    if (index < 0) {
      g_set_error (error, FM_STORE_ERROR, FM_STORE_ERROR_DAMAGED, _ ("“%s” is not known here"),
                   member);
      return FALSE;
    }
    const FmExchangeColumn *column = g_ptr_array_index (table->columns, (guint)index);
    if (!bind_value (stmt, index + 1, column->name, node, error))
      return FALSE;
  }
  for (guint i = 0; i < table->columns->len; i++) {
    const FmExchangeColumn *column = g_ptr_array_index (table->columns, i);
    GBytes *bytes = column->is_bytes ? read_bytes (self, row, column->name, error) : NULL;

    if (column->is_bytes && bytes == NULL)
      return FALSE;
    if (bytes != NULL) {
      g_ptr_array_add (kept, bytes);
      fm_stmt_bind_bytes (stmt, (int)i + 1, bytes);
    }
  }
  return TRUE;
}

/* Members that a row leaves out are unknown, or have the default of the table. */
static char *
insert_sql (const FmExchangeTable *table, JsonObject *row)
{
  g_autoptr (GString) columns = g_string_new (NULL);
  g_autoptr (GString) values = g_string_new (NULL);

  for (guint i = 0; i < table->columns->len; i++) {
    const FmExchangeColumn *column = g_ptr_array_index (table->columns, i);
    g_autofree char *bare =
        g_str_has_suffix (column->name, FM_EXCHANGE_JSON_SUFFIX)
            ? g_strndup (column->name, strlen (column->name) - strlen (FM_EXCHANGE_JSON_SUFFIX))
            : g_strdup (column->name);

    if (!column->is_bytes && !json_object_has_member (row, bare) &&
        !json_object_has_member (row, column->name))
      continue;
    g_string_append_printf (columns, "%s%s", columns->len > 0 ? ", " : "", column->name);
    g_string_append_printf (values, "%s?%u", values->len > 0 ? ", " : "", i + 1);
  }
  return g_strdup_printf ("INSERT INTO %s (%s) VALUES (%s)", table->name, columns->str,
                          values->str);
}

static gboolean
insert_row (const Reader *self, const FmExchangeTable *table, JsonObject *row, GError **error)
{
  g_autofree char *sql = insert_sql (table, row);
  g_autoptr (FmStmt) stmt = fm_db_prepare (self->db, sql, error);
  g_autoptr (GPtrArray) kept = g_ptr_array_new_with_free_func ((GDestroyNotify)g_bytes_unref);

  return stmt != NULL && bind_row (self, table, stmt, row, kept, error) &&
         fm_stmt_run (self->db, stmt, error);
}

static gboolean
insert_table (const Reader *self, const char *name, JsonNode *node, GError **error)
{
  const FmExchangeTable *table = find_table (self, name);
  JsonArray *rows = JSON_NODE_HOLDS_ARRAY (node) ? json_node_get_array (node) : NULL;

  if (table == NULL || rows == NULL)
    return fail (error, name, 0, _ ("this is no list that this program knows"));
  for (guint i = 0; i < json_array_get_length (rows); i++) {
    JsonNode *row = json_array_get_element (rows, i);

    if (g_cancellable_set_error_if_cancelled (self->cancellable, error))
      return FALSE;
    if (!JSON_NODE_HOLDS_OBJECT (row))
      return fail (error, name, i, _ ("this is no row"));
    if (!insert_row (self, table, json_node_get_object (row), error))
      return prefix (error, name, i);
  }
  return TRUE;
}

static gboolean
insert_all (const Reader *self, JsonObject *root, GError **error)
{
  JsonObjectIter iter;
  const char *name;
  JsonNode *node;

  json_object_iter_init_ordered (&iter, root);
  while (json_object_iter_next_ordered (&iter, &name, &node))
    if (strcmp (name, FM_EXCHANGE_FORMAT_KEY) != 0 && strcmp (name, FM_EXCHANGE_EDITION_KEY) != 0 &&
        !insert_table (self, name, node, error))
      return FALSE;
  return TRUE;
}

/* Rows come as they are, so nothing may count or refuse them: the triggers watch what is edited. */
static GPtrArray *
take_triggers (FmDb *db, GError **error)
{
  g_autoptr (FmStmt) stmt = fm_db_prepare (
      db, "SELECT name, sql FROM sqlite_schema WHERE type = 'trigger' ORDER BY rowid", error);
  g_autoptr (GPtrArray) drops = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GPtrArray) triggers = g_ptr_array_new_with_free_func (g_free);
  FmStep step = FM_FAILED;

  if (stmt == NULL)
    return NULL;
  while ((step = fm_stmt_step (db, stmt, error)) == FM_ROW) {
    g_autofree char *name = fm_stmt_text (stmt, 0);
    g_ptr_array_add (drops, g_strdup_printf ("DROP TRIGGER %s", name));
    g_ptr_array_add (triggers, fm_stmt_text (stmt, 1));
  }
  for (guint i = 0; step == FM_DONE && i < drops->len; i++)
    if (!fm_db_exec (db, g_ptr_array_index (drops, i), error))
      return NULL;
  return step == FM_DONE ? g_steal_pointer (&triggers) : NULL;
}

static gboolean
put_triggers_back (FmDb *db, GPtrArray *triggers, GError **error)
{
  for (guint i = 0; i < triggers->len; i++)
    if (!fm_db_exec (db, g_ptr_array_index (triggers, i), error))
      return FALSE;
  return TRUE;
}

static gboolean
fill (const Reader *self, JsonObject *root, GError **error)
{
  g_autoptr (GPtrArray) triggers = take_triggers (self->db, error);

  return triggers != NULL &&
         fm_db_exec (self->db, "PRAGMA defer_foreign_keys = ON; DELETE FROM settings", error) &&
         insert_all (self, root, error) &&
         fm_db_exec (self->db,
                     "INSERT INTO experiments_fts (rowid, title, notes)"
                     " SELECT id, coalesce(title, ''), coalesce(notes, '') FROM experiments",
                     error) &&
         put_triggers_back (self->db, triggers, error);
}

static gboolean
fill_notebook (FmNotebook *notebook,
               JsonObject *root,
               const char *path,
               GCancellable *cancellable,
               GError **error)
{
  g_autofree char *folder = fm_exchange_photo_folder (path);
  FmDb *db = fm_notebook_begin (notebook, error);
  Reader reader = { db, NULL, folder, cancellable };
  gboolean success;

  if (db == NULL)
    return FALSE;
  reader.tables = fm_exchange_tables (db, error);
  success = reader.tables != NULL && fill (&reader, root, error);
  success = fm_notebook_end (notebook, success, error);
  g_clear_pointer (&reader.tables, g_ptr_array_unref);
  return success;
}

/* The root of the text when this program can read it. */
static JsonObject *
check_root (JsonParser *parser, GError **error)
{
  JsonNode *node = json_parser_get_root (parser);
  JsonObject *root =
      node != NULL && JSON_NODE_HOLDS_OBJECT (node) ? json_node_get_object (node) : NULL;
  const char *format =
      root != NULL ? json_object_get_string_member_with_default (root, FM_EXCHANGE_FORMAT_KEY, NULL)
                   : NULL;

  if (g_strcmp0 (format, FM_EXCHANGE_FORMAT) != 0) {
    g_set_error_literal (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_A_NOTEBOOK,
                         _ ("Nothing was imported: this is no open data of a notebook."));
    return NULL;
  }
  if (json_object_get_int_member_with_default (root, FM_EXCHANGE_EDITION_KEY, 0) <=
      fm_schema_version ())
    return root;
  g_set_error_literal (error, FM_STORE_ERROR, FM_STORE_ERROR_NEWER,
                       _ ("Nothing was imported: a newer program wrote this. Get the newer one."));
  return NULL;
}

static void
remove_file (const char *path)
{
  static const char *const endings[] = { "", "-wal", "-shm" };

  for (guint i = 0; i < G_N_ELEMENTS (endings); i++) {
    g_autofree char *name = g_strconcat (path, endings[i], NULL);
    g_unlink (name);
  }
}

FmNotebook *
fm_exchange_import (const char *path,
                    const char *notebook_path,
                    GCancellable *cancellable,
                    GError **error)
{
  g_autoptr (JsonParser) parser = json_parser_new_immutable ();
  g_autoptr (FmNotebook) notebook = NULL;
  JsonObject *root;

  if (!json_parser_load_from_mapped_file (parser, path, error)) {
    g_prefix_error (error, "%s", _ ("Nothing was imported: "));
    return NULL;
  }
  root = check_root (parser, error);
  notebook = root != NULL ? fm_notebook_create (notebook_path, error) : NULL;
  if (notebook == NULL)
    return NULL;
  if (fill_notebook (notebook, root, path, cancellable, error))
    return g_steal_pointer (&notebook);
  g_clear_pointer (&notebook, fm_notebook_unref);
  remove_file (notebook_path);
  return NULL;
}
