/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-exchange-scope.c - what belongs to a part of a notebook */
#include <glib/gi18n-lib.h>
#include <string.h>

#include "store/exchange/fm-exchange-private.h"
#include "store/fm-versions.h"

/* A version and all that it grew from. */
#define GROWN_FROM                                                                                 \
  "WITH RECURSIVE line(id, parent) AS (SELECT id, parent_id FROM versions WHERE id = ?1"           \
  " UNION SELECT v.id, v.parent_id FROM versions v JOIN line ON v.id = line.parent)"               \
  " SELECT id FROM line"

static GHashTable *
new_ids (void)
{
  return g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, NULL);
}

static gboolean
has_id (GHashTable *ids, gint64 id)
{
  return g_hash_table_contains (ids, &id);
}

static void
add_id (GHashTable *ids, gint64 id)
{
  g_hash_table_add (ids, g_memdup2 (&id, sizeof id));
}

/* Adds the first column of what @sql finds for @id. */
static gboolean
collect (FmDb *db, const char *sql, gint64 id, GHashTable *ids, GError **error)
{
  g_autoptr (FmStmt) stmt = fm_db_prepare (db, sql, error);
  FmStep step = FM_FAILED;

  if (stmt == NULL)
    return FALSE;
  fm_stmt_bind_int (stmt, 1, id);
  while ((step = fm_stmt_step (db, stmt, error)) == FM_ROW)
    add_id (ids, fm_stmt_int (stmt, 0));
  return step == FM_DONE;
}

static gboolean
collect_blend (FmDb *db, FmExchangeScope *self, gint64 id, GError **error)
{
  self->has_draft = TRUE;
  return collect (db, "SELECT id FROM blends WHERE id = ?1", id, self->blends, error) &&
         collect (db, "SELECT id FROM versions WHERE blend_id = ?1", id, self->versions, error) &&
         collect (db, "SELECT id FROM experiments WHERE blend_id = ?1", id, self->experiments,
                  error) &&
         collect (db, "SELECT id FROM maps WHERE blend_id = ?1", id, self->maps, error);
}

static gboolean
collect_version (FmDb *db, FmExchangeScope *self, gint64 id, GError **error)
{
  return collect (db, "SELECT blend_id FROM versions WHERE id = ?1", id, self->blends, error) &&
         collect (db, GROWN_FROM, id, self->versions, error);
}

static gboolean
collect_experiment (FmDb *db, FmExchangeScope *self, gint64 id, GError **error)
{
  gint64 version_id = 0;
  g_autofree char *sql =
      g_strdup_printf ("SELECT version_id FROM experiments WHERE id = %" G_GINT64_FORMAT, id);

  return fm_db_query_int (db, sql, &version_id, error) &&
         collect (db, "SELECT id FROM experiments WHERE id = ?1", id, self->experiments, error) &&
         collect_version (db, self, version_id, error);
}

/* Tastings of other experiments as well would not be whole. */
static gboolean
collect_tastings (FmDb *db, FmExchangeScope *self, GError **error)
{
  g_autoptr (FmStmt) stmt =
      fm_db_prepare (db, "SELECT tasting_id, experiment_id FROM tasting_samples", error);
  g_autoptr (GHashTable) others = new_ids ();
  FmStep step = FM_FAILED;
  GHashTableIter iter;
  gpointer id;

  if (stmt == NULL)
    return FALSE;
  while ((step = fm_stmt_step (db, stmt, error)) == FM_ROW) {
    const gboolean is_ours = has_id (self->experiments, fm_stmt_int (stmt, 1));

    add_id (is_ours ? self->tastings : others, fm_stmt_int (stmt, 0));
  }
  g_hash_table_iter_init (&iter, others);
  while (g_hash_table_iter_next (&iter, &id, NULL))
    g_hash_table_remove (self->tastings, id);
  return step == FM_DONE;
}

static gboolean
collect_photos (FmDb *db, FmExchangeScope *self, GError **error)
{
  g_autoptr (FmStmt) stmt = fm_db_prepare (db, "SELECT experiment_id, sha256 FROM photos", error);
  FmStep step = FM_FAILED;

  if (stmt == NULL)
    return FALSE;
  while ((step = fm_stmt_step (db, stmt, error)) == FM_ROW)
    if (has_id (self->experiments, fm_stmt_int (stmt, 0)))
      g_hash_table_add (self->photos, fm_stmt_text (stmt, 1));
  return step == FM_DONE;
}

static gboolean
collect_servings (FmDb *db, FmExchangeScope *self, GError **error)
{
  g_autoptr (FmStmt) stmt = fm_db_prepare (db, "SELECT version_id, id FROM servings", error);
  FmStep step = FM_FAILED;

  if (stmt == NULL)
    return FALSE;
  while ((step = fm_stmt_step (db, stmt, error)) == FM_ROW)
    if (has_id (self->versions, fm_stmt_int (stmt, 0)))
      add_id (self->servings, fm_stmt_int (stmt, 1));
  return step == FM_DONE;
}

static gboolean
collect_part (FmDb *db, FmExchangeScope *self, const FmExchangePart *part, GError **error)
{
  if (part->blend_id != 0)
    return collect_blend (db, self, part->blend_id, error);
  if (part->version_id != 0)
    return collect_version (db, self, part->version_id, error) &&
           collect (db, "SELECT id FROM experiments WHERE version_id = ?1", part->version_id,
                    self->experiments, error);
  return collect_experiment (db, self, part->experiment_id, error);
}

FmExchangeScope *
fm_exchange_scope_new (FmDb *db, const FmExchangePart *part, GError **error)
{
  g_autoptr (FmExchangeScope) self = g_new0 (FmExchangeScope, 1);

  if (part->blend_id == 0 && part->version_id == 0 && part->experiment_id == 0)
    return g_steal_pointer (&self);
  self->blends = new_ids ();
  self->versions = new_ids ();
  self->experiments = new_ids ();
  self->tastings = new_ids ();
  self->maps = new_ids ();
  self->servings = new_ids ();
  self->photos = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  if (!collect_part (db, self, part, error) || !collect_tastings (db, self, error) ||
      !collect_photos (db, self, error) || !collect_servings (db, self, error))
    return NULL;
  if (g_hash_table_size (self->blends) > 0)
    return g_steal_pointer (&self);
  g_set_error_literal (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND,
                       _ ("What was to be exported is not in this notebook."));
  return NULL;
}

void
fm_exchange_scope_free (FmExchangeScope *self)
{
  g_clear_pointer (&self->blends, g_hash_table_unref);
  g_clear_pointer (&self->versions, g_hash_table_unref);
  g_clear_pointer (&self->experiments, g_hash_table_unref);
  g_clear_pointer (&self->tastings, g_hash_table_unref);
  g_clear_pointer (&self->maps, g_hash_table_unref);
  g_clear_pointer (&self->servings, g_hash_table_unref);
  g_clear_pointer (&self->photos, g_hash_table_unref);
  g_free (self);
}

static gboolean
has_hash (const FmExchangeScope *self, FmStmt *stmt, int column)
{
  g_autofree char *sha256 = fm_stmt_text (stmt, column);

  return sha256 != NULL && g_hash_table_contains (self->photos, sha256);
}

static gboolean
is_notice (FmStmt *stmt, int column)
{
  g_autofree char *key = fm_stmt_text (stmt, column);

  return g_strcmp0 (key, FM_SETTING_INVENTED) == 0;
}

/* Rows are found by the column that says whose they are; what belongs to nothing of a part, such as
 * settings and prices, stays with the whole notebook. That all is invented is true of each part. */
gboolean
fm_exchange_scope_has (const FmExchangeScope *self, const FmExchangeTable *table, FmStmt *stmt)
{
  const struct {
    const char *table;
    const char *column;
    GHashTable *ids;
  } owners[] = {
    { "versions", "id", self->versions },   { "experiments", "id", self->experiments },
    { "blends", "id", self->blends },       { "maps", "id", self->maps },
    { "tastings", "id", self->tastings },   { NULL, "experiment_id", self->experiments },
    { NULL, "tasting_id", self->tastings }, { NULL, "map_id", self->maps },
    { NULL, "serving_id", self->servings }, { NULL, "version_id", self->versions },
    { NULL, "blend_id", self->blends },
  };

  if (self->blends == NULL)
    return TRUE;
  if (strcmp (table->name, "drafts") == 0 && !self->has_draft)
    return FALSE;
  if (strcmp (table->name, "settings") == 0)
    return is_notice (stmt, fm_exchange_find_column (table, "key"));
  if (strcmp (table->name, FM_EXCHANGE_PHOTOS) == 0)
    return has_hash (self, stmt, fm_exchange_find_column (table, "sha256"));
  if (strcmp (table->name, "tasting_samples") == 0)
    return has_id (self->tastings,
                   fm_stmt_int (stmt, fm_exchange_find_column (table, "tasting_id")));
  for (guint i = 0; i < G_N_ELEMENTS (owners); i++) {
    const int column = fm_exchange_find_column (table, owners[i].column);

    if (column >= 0 && (owners[i].table == NULL || strcmp (owners[i].table, table->name) == 0))
      return has_id (owners[i].ids, fm_stmt_int (stmt, column));
  }
  return FALSE;
}
