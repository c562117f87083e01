/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "store/notebook/fm-salvage.h"

#include "store/notebook/fm-db.h"

/* Keys that are tried one by one where a list of them breaks off; more would take minutes. */
#define MAX_PROBES 1000000
#define PROBES_WITHOUT_END 10000

typedef struct {
  sqlite3 *from;
  sqlite3 *to;
  GCancellable *cancellable;
  FmSalvageCount *count;
  GHashTable *seen; /* keys as text */
  char *keys;       /* "a, b": what a row is found by */
  char *keys_down;  /* the same, the last first */
  char *first_key;  /* the column that is tried number by number */
  int n_keys;
  sqlite3_stmt *read;   /* a row of @from by its keys */
  sqlite3_stmt *insert; /* the same into @to */
  gint64 last_key;      /* of the walk under way */
} Table;

static void
count_free (gpointer data)
{
  FmSalvageCount *count = data;

  g_free (count->table);
  g_free (count);
}

static void
table_clear (Table *self)
{
  sqlite3_finalize (self->read);
  sqlite3_finalize (self->insert);
  g_clear_pointer (&self->seen, g_hash_table_unref);
  g_free (self->keys);
  g_free (self->keys_down);
  g_free (self->first_key);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Table, table_clear)

/* Names are those of our own schema, in the new database. */
static GPtrArray *
read_strings (sqlite3 *handle, const char *sql, const char *argument, GError **error)
{
  g_autoptr (GPtrArray) strings = g_ptr_array_new_with_free_func (g_free);
  sqlite3_stmt *stmt = NULL;
  int code = sqlite3_prepare_v2 (handle, sql, -1, &stmt, NULL);

  if (code == SQLITE_OK && argument != NULL)
    sqlite3_bind_text (stmt, 1, argument, -1, SQLITE_TRANSIENT);
  while (code == SQLITE_OK && (code = sqlite3_step (stmt)) == SQLITE_ROW) {
    g_ptr_array_add (strings, g_strdup ((const char *)sqlite3_column_text (stmt, 0)));
    code = SQLITE_OK;
  }
  sqlite3_finalize (stmt);
  if (code == SQLITE_DONE)
    return g_steal_pointer (&strings);
  fm_db_set_error (handle, error);
  return NULL;
}

/* Each name in quotes, @after behind it. */
static char *
join (const GPtrArray *names, const char *after)
{
  GString *all = g_string_new (NULL);

  for (guint i = 0; i < names->len; i++)
    g_string_append_printf (all, "%s\"%s\"%s", i > 0 ? ", " : "", (const char *)names->pdata[i],
                            after);
  return g_string_free (all, FALSE);
}

static char *
match (const GPtrArray *names)
{
  GString *all = g_string_new (NULL);

  for (guint i = 0; i < names->len; i++)
    g_string_append_printf (all, "%s\"%s\" IS ?%u", i > 0 ? " AND " : "",
                            (const char *)names->pdata[i], i + 1);
  return g_string_free (all, FALSE);
}

static gboolean
prepare_copy (Table *self, const GPtrArray *columns, const GPtrArray *key_names, GError **error)
{
  g_autofree char *listed = join (columns, "");
  g_autofree char *found_by = match (key_names);
  GString *places = g_string_new ("?1");

  for (guint i = 2; i <= columns->len; i++)
    g_string_append_printf (places, ", ?%u", i);
  g_autofree char *values = g_string_free (places, FALSE);
  g_autofree char *read = g_strdup_printf ("SELECT %s FROM \"%s\" NOT INDEXED WHERE %s", listed,
                                           self->count->table, found_by);
  g_autofree char *insert =
      g_strdup_printf ("INSERT INTO \"%s\" (%s) VALUES (%s)", self->count->table, listed, values);

  if (sqlite3_prepare_v2 (self->to, insert, -1, &self->insert, NULL) != SQLITE_OK) {
    fm_db_set_error (self->to, error);
    return FALSE;
  }
  /* A table that is not there is one that is lost. */
  if (sqlite3_prepare_v2 (self->from, read, -1, &self->read, NULL) != SQLITE_OK)
    self->count->perhaps_more = TRUE;
  return TRUE;
}

/* A table with row numbers is walked by them, whatever its indexes say. */
static gboolean
table_init (Table *self, GError **error)
{
  g_autoptr (GPtrArray) columns = read_strings (
      self->to, "SELECT name FROM pragma_table_info(?1) ORDER BY cid", self->count->table, error);
  g_autoptr (GPtrArray) key_names =
      read_strings (self->to,
                    "SELECT i.name FROM pragma_table_info(?1) i, pragma_table_list l"
                    " WHERE l.name = ?1 AND l.wr AND i.pk > 0 ORDER BY i.pk",
                    self->count->table, error);

  if (columns == NULL || key_names == NULL)
    return FALSE;
  if (key_names->len == 0)
    g_ptr_array_add (key_names, g_strdup ("rowid"));
  self->seen = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  self->n_keys = (int)key_names->len;
  self->keys = join (key_names, "");
  self->keys_down = join (key_names, " DESC");
  self->first_key = g_strdup (key_names->pdata[0]);
  return prepare_copy (self, columns, key_names, error);
}

/* A value that the new table refuses is damaged, too; only a disk that fails ends the work. */
static gboolean
insert_row (Table *self, GError **error)
{
  int code;

  for (int i = 0; i < sqlite3_column_count (self->read); i++)
    sqlite3_bind_value (self->insert, i + 1, sqlite3_column_value (self->read, i));
  code = sqlite3_step (self->insert);
  sqlite3_reset (self->insert);
  sqlite3_clear_bindings (self->insert);
  if (code == SQLITE_DONE) {
    self->count->n_taken++;
    return TRUE;
  }
  self->count->n_lost++;
  if ((code & 0xff) == SQLITE_CONSTRAINT || (code & 0xff) == SQLITE_MISMATCH)
    return TRUE;
  fm_db_set_error_code (code, sqlite3_errmsg (self->to), error);
  return FALSE;
}

/* @keys: on a row with the keys of the row to copy */
static gboolean
copy_row (Table *self, sqlite3_stmt *keys, GError **error)
{
  gboolean ok = TRUE;

  for (int i = 0; i < self->n_keys; i++)
    sqlite3_bind_value (self->read, i + 1, sqlite3_column_value (keys, i));
  if (sqlite3_step (self->read) == SQLITE_ROW)
    ok = insert_row (self, error);
  else
    self->count->n_lost++;
  sqlite3_reset (self->read);
  return ok;
}

static gboolean
is_new (Table *self, sqlite3_stmt *keys)
{
  GString *key = g_string_new (NULL);

  for (int i = 0; i < self->n_keys; i++)
    g_string_append_printf (key, "%s\n", (const char *)sqlite3_column_text (keys, i));
  return g_hash_table_add (self->seen, g_string_free (key, FALSE));
}

/* @number: bound to the first parameter if there is one. @ended: (out): FALSE where the list of
 * keys broke off. */
static gboolean
walk (Table *self, const char *sql, gint64 number, gboolean *ended, GError **error)
{
  sqlite3_stmt *keys = NULL;
  int code = sqlite3_prepare_v2 (self->from, sql, -1, &keys, NULL);
  gboolean ok = TRUE;

  if (code == SQLITE_OK && sqlite3_bind_parameter_count (keys) > 0)
    sqlite3_bind_int64 (keys, 1, number);
  while (ok && code == SQLITE_OK && (code = sqlite3_step (keys)) == SQLITE_ROW) {
    ok = !g_cancellable_set_error_if_cancelled (self->cancellable, error);
    self->last_key = sqlite3_column_int64 (keys, 0);
    if (ok && is_new (self, keys))
      ok = copy_row (self, keys, error);
    code = SQLITE_OK;
  }
  sqlite3_finalize (keys);
  *ended = code == SQLITE_DONE;
  return ok;
}

/* Between the last key from below and the last from above. */
static gboolean
probe (Table *self, gint64 low, gint64 high, GError **error)
{
  g_autofree char *sql =
      g_strdup_printf ("SELECT %s FROM \"%s\" NOT INDEXED WHERE \"%s\" = ?1 ORDER BY %s",
                       self->keys, self->count->table, self->first_key, self->keys);
  const gint64 end = high > low ? MIN (high, low + MAX_PROBES) : low + PROBES_WITHOUT_END;
  gboolean ok = TRUE;
  gboolean ended;

  for (gint64 key = low; ok && key <= end; key++)
    ok = walk (self, sql, key, &ended, error);
  return ok;
}

static gboolean
salvage_table (Table *self, GError **error)
{
  g_autofree char *up = g_strdup_printf ("SELECT %s FROM \"%s\" NOT INDEXED ORDER BY %s",
                                         self->keys, self->count->table, self->keys);
  g_autofree char *down = g_strdup_printf ("SELECT %s FROM \"%s\" NOT INDEXED ORDER BY %s",
                                           self->keys, self->count->table, self->keys_down);
  gboolean ended;
  gint64 low;

  if (!walk (self, up, 0, &ended, error))
    return FALSE;
  if (ended)
    return TRUE;
  self->count->perhaps_more = TRUE;
  low = self->last_key;
  self->last_key = 0;
  return walk (self, down, 0, &ended, error) && probe (self, low, self->last_key, error);
}

GPtrArray *
fm_salvage_rows (sqlite3 *from, sqlite3 *to, GCancellable *cancellable, GError **error)
{
  g_autoptr (GPtrArray) counts = g_ptr_array_new_with_free_func (count_free);
  g_autoptr (GPtrArray) names = read_strings (
      to,
      "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite\\_%' ESCAPE"
      " '\\' AND name NOT LIKE 'experiments\\_fts%' ESCAPE '\\' ORDER BY rowid",
      NULL, error);

  for (guint i = 0; names != NULL && i < names->len; i++) {
    g_auto (Table) table = { .from = from, .to = to, .cancellable = cancellable };

    table.count = g_new0 (FmSalvageCount, 1);
    table.count->table = g_strdup (names->pdata[i]);
    g_ptr_array_add (counts, table.count);
    if (!table_init (&table, error) || (table.read != NULL && !salvage_table (&table, error)))
      return NULL;
  }
  return names != NULL ? g_steal_pointer (&counts) : NULL;
}

/* Deletes the rows that have no parent by this foreign key. */
static char *
orphan_sql (sqlite3 *to, const char *table, const char *key, GError **error)
{
  g_autofree char *sql = g_strdup_printf (
      "SELECT 'DELETE FROM \"' || ?1 || '\" WHERE NOT EXISTS (SELECT 1 FROM \"' || \"table\" ||"
      " '\" p WHERE ' || group_concat('p.\"' || \"to\" || '\" = \"' || ?1 || '\".\"' || \"from\" ||"
      " '\"', ' AND ') || ') AND ' || group_concat('\"' || \"from\" || '\" IS NOT NULL', ' AND ')"
      " FROM pragma_foreign_key_list(?1) WHERE id = %s",
      key);
  g_autoptr (GPtrArray) made = read_strings (to, sql, table, error);

  return made != NULL ? g_strdup (made->pdata[0]) : NULL;
}

static gboolean
drop_orphans_of (sqlite3 *to, FmSalvageCount *count, guint *n_dropped, GError **error)
{
  g_autoptr (GPtrArray) keys =
      read_strings (to, "SELECT DISTINCT id FROM pragma_foreign_key_list(?1)", count->table, error);

  for (guint i = 0; keys != NULL && i < keys->len; i++) {
    g_autofree char *sql = orphan_sql (to, count->table, keys->pdata[i], error);
    guint n;

    if (sql == NULL)
      return FALSE;
    if (sqlite3_exec (to, sql, NULL, NULL, NULL) != SQLITE_OK) {
      fm_db_set_error (to, error);
      return FALSE;
    }
    n = (guint)sqlite3_changes (to);
    count->n_taken -= MIN (n, count->n_taken);
    count->n_lost += n;
    *n_dropped += n;
  }
  return keys != NULL;
}

gboolean
fm_salvage_drop_orphans (sqlite3 *to, GPtrArray *counts, GError **error)
{
  guint n_dropped;

  /* What belongs to an orphan is one as well. */
  do {
    n_dropped = 0;
    for (guint i = 0; i < counts->len; i++)
      if (!drop_orphans_of (to, counts->pdata[i], &n_dropped, error))
        return FALSE;
  } while (n_dropped > 0);
  return TRUE;
}
