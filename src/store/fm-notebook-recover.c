/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "store/fm-notebook-recover.h"

#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <stdlib.h>
#include <string.h>

#include "core/base/fm-number.h"
#include "store/fm-versions.h"
#include "store/notebook/fm-notebook-private.h"
#include "store/notebook/fm-record-check-private.h"
#include "store/notebook/fm-salvage.h"
#include "store/notebook/fm-schema.h"
#include "store/notebook/fm-store-thread.h"

/* What the cook calls the rows of a table; parts of a record are called by it. */
static const struct {
  const char *table;
  const char *name;
} names[] = {
  { "settings", N_ ("Settings") },
  { "ingredients", N_ ("Own ingredients") },
  { "prices", N_ ("Prices") },
  { "blends", N_ ("Blends") },
  { "versions", N_ ("Versions") },
  { "drafts", N_ ("Drafts") },
  { "experiments", N_ ("Experiments") },
  { "weighings", N_ ("Weighings of experiments") },
  { "patties", N_ ("Patties of experiments") },
  { "core_readings", N_ ("Core readings") },
  { "photo_blobs", N_ ("Pictures") },
  { "kitchen_events", N_ ("Events at the pan") },
  { "photos", N_ ("Photos of experiments") },
  { "tastings", N_ ("Tastings") },
  { "tasting_samples", N_ ("Samples of tastings") },
  { "tasting_tasters", N_ ("Tasters of tastings") },
  { "tasting_attributes", N_ ("Attributes of tastings") },
  { "tasting_cups", N_ ("Portions of tastings") },
  { "tasting_marks", N_ ("Marks of tasters") },
  { "tasting_remarks", N_ ("Remarks of tasters") },
  { "tasting_events", N_ ("Entries in the record of a tasting") },
  { "tasting_outcomes", N_ ("Outcomes of tastings") },
  { "maps", N_ ("Maps") },
  { "map_components", N_ ("Components of maps") },
  { "map_members", N_ ("Ingredients of maps") },
  { "map_points", N_ ("Trials of maps") },
  { "ingredient_names", N_ ("Short names of ingredients") },
  { "servings", N_ ("Servings") },
  { "serving_parts", N_ ("Parts of servings") },
};

static const char *
name_of (const char *table)
{
  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    if (strcmp (names[i].table, table) == 0)
      return _ (names[i].name);
  return table;
}

static char *
describe_lost (const FmSalvageCount *count)
{
  g_autofree char *n = fm_number_format (count->n_lost, 0);

  if (!count->perhaps_more)
    return g_strdup_printf ("%s: %s", name_of (count->table), n);
  if (count->n_lost == 0)
    /* TRANSLATORS: %s names a kind of record, like "Versions". */
    return g_strdup_printf (_ ("%s: perhaps some"), name_of (count->table));
  /* TRANSLATORS: The first %s names a kind of record, like "Versions"; the second is a number. */
  return g_strdup_printf (_ ("%s: %s, perhaps more"), name_of (count->table), n);
}

static char *
write_report (GPtrArray *counts)
{
  GString *lost = g_string_new (NULL);
  guint n_taken = 0;

  for (guint i = 0; i < counts->len; i++) {
    const FmSalvageCount *count = counts->pdata[i];

    /* Sums of records say nothing that could be lost. */
    if (strcmp (count->table, "record_checks") == 0)
      continue;
    n_taken += count->n_taken;
    if (count->n_lost > 0 || count->perhaps_more) {
      g_autofree char *line = describe_lost (count);
      g_string_append_printf (lost, "\n• %s", line);
    }
  }
  g_autofree char *number = fm_number_format (n_taken, 0);
  g_autofree char *lines = g_string_free (lost, FALSE);
  g_autofree char *taken =
      g_strdup_printf (ngettext ("%s record could be read and is in the new notebook.",
                                 "%s records could be read and are in the new notebook.", n_taken),
                       number);

  if (*lines == '\0')
    return g_strdup_printf ("%s\n%s", taken, _ ("No record was found that could not be read."));
  /* TRANSLATORS: The first %s says how many records were read; the second is a list. */
  return g_strdup_printf (_ ("%s\nLost:%s"), taken, lines);
}

/* One of an older program is brought up to date afterwards, like any other. */
static int
version_of (FmDb *from)
{
  gint64 version;

  if (fm_db_query_int (from, "PRAGMA user_version", &version, NULL) && version >= 1 &&
      version <= fm_schema_version ())
    return (int)version;
  return fm_schema_version ();
}

static gboolean
make_tables (sqlite3 *to, int version, GError **error)
{
  guint n_steps;
  const FmMigration *steps = fm_schema_migrations (&n_steps);

  for (guint i = 0; i < n_steps && steps[i].to_version <= version; i++)
    if (!fm_schema_migrate_step (to, &steps[i], error))
      return FALSE;
  sqlite3_db_config (to, SQLITE_DBCONFIG_ENABLE_TRIGGER, 0, NULL);
  return fm_db_exec_handle (to, "PRAGMA foreign_keys = OFF", error);
}

/* Links that say where something came from are let go; what holds a name or a formula is put in. */
static gboolean
mend_links (sqlite3 *to, GError **error)
{
  g_autoptr (FmFormula) empty = fm_formula_new ();
  g_autofree char *json = fm_formula_to_json (empty);
  char *sql = sqlite3_mprintf (
      "INSERT INTO blends (id, name, created_at) SELECT DISTINCT blend_id, %Q || blend_id, 0 FROM"
      " (SELECT blend_id FROM versions UNION SELECT blend_id FROM experiments UNION SELECT blend_id"
      " FROM drafts)"
      " WHERE blend_id NOT IN (SELECT id FROM blends);"
      "INSERT INTO versions (id, blend_id, number, reason, saved_at, n_lines, formula_json)"
      " SELECT version_id, blend_id, (SELECT coalesce(max(number), 0) FROM versions v WHERE"
      " v.blend_id = e.blend_id) + row_number() OVER (PARTITION BY blend_id), %Q, 0, 0, %Q"
      " FROM (SELECT DISTINCT version_id, blend_id FROM experiments"
      " WHERE version_id NOT IN (SELECT id FROM versions)) e;"
      "UPDATE versions SET parent_id = NULL WHERE parent_id NOT IN (SELECT id FROM versions);"
      "UPDATE drafts SET parent_id = NULL WHERE parent_id NOT IN (SELECT id FROM versions);",
      _ ("Recovered blend "), _ ("Its formula was lost with the damaged notebook"), json);

  const gboolean ok = fm_db_exec_handle (to, sql, error);

  sqlite3_free (sql);
  return ok;
}

static gboolean
fill (FmDb *from, sqlite3 *to, char **report, GCancellable *cancellable, GError **error)
{
  g_autoptr (GPtrArray) counts = NULL;

  if (!fm_db_exec_handle (to, "BEGIN", error))
    return FALSE;
  counts = fm_salvage_rows (fm_db_handle (from), to, cancellable, error);
  if (counts == NULL || !mend_links (to, error) || !fm_salvage_drop_orphans (to, counts, error) ||
      !fm_db_exec_handle (to,
                          "UPDATE experiments SET n_photos = (SELECT count(*) FROM photos p WHERE"
                          " p.experiment_id = experiments.id);"
                          "INSERT INTO experiments_fts (experiments_fts) VALUES ('rebuild');"
                          "COMMIT",
                          error))
    return FALSE;
  *report = write_report (counts);
  return TRUE;
}

/* A file that is shorter than it says, and tables that are not all there, are read only by a
 * connection that would be allowed to mend them. This one reads, and nothing else. */
static void
take_as_it_is (FmDb *db)
{
  sqlite3_db_config (fm_db_handle (db), SQLITE_DBCONFIG_DEFENSIVE, 0, NULL);
  sqlite3_db_config (fm_db_handle (db), SQLITE_DBCONFIG_WRITABLE_SCHEMA, 1, NULL);
}

/* A log beside it is read as well, unless it makes things worse. */
static FmDb *
open_damaged (const char *path, GError **error)
{
  g_autofree char *real = realpath (path, NULL);
  g_autofree char *uri = g_filename_to_uri (real != NULL ? real : path, NULL, NULL);
  g_autofree char *alone = g_strconcat (uri, "?immutable=1", NULL);
  const gboolean has_log = fm_notebook_has_beside (real != NULL ? real : path, "-wal");
  gint64 application_id;

  for (int i = has_log ? 0 : 1; i < 2; i++) {
    g_autoptr (FmDb) db =
        fm_db_open (i == 0 ? uri : alone, SQLITE_OPEN_READONLY | SQLITE_OPEN_URI, NULL);

    if (db != NULL)
      take_as_it_is (db);
    if (db != NULL && fm_db_query_int (db, "PRAGMA application_id", &application_id, NULL) &&
        application_id == FM_NOTEBOOK_APPLICATION_ID)
      return g_steal_pointer (&db);
  }
  g_set_error_literal (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_A_NOTEBOOK,
                       _ ("Nothing can be read of this file: it is no Forcemeat notebook, or its "
                          "beginning is damaged. Open a backup or a saved copy."));
  return NULL;
}

static gboolean
recover_into (
    FmDb *from, const char *temp_path, char **report, GCancellable *cancellable, GError **error)
{
  g_autoptr (FmDb) mark = NULL;
  sqlite3 *to = NULL;
  gboolean ok;

  if (sqlite3_open (temp_path, &to) != SQLITE_OK) {
    fm_db_set_error (to, error);
    sqlite3_close (to);
    return FALSE;
  }
  ok = make_tables (to, version_of (from), error) && fill (from, to, report, cancellable, error);
  sqlite3_close (to);
  if (!ok)
    return FALSE;
  mark = fm_db_open (temp_path, SQLITE_OPEN_READWRITE, error);
  return mark != NULL && fm_notebook_mark_sealed (mark, error) &&
         fm_record_check_forget_gone (mark, error);
}

FmNotebook *
fm_notebook_recover (
    const char *damaged, const char *path, char **report, GCancellable *cancellable, GError **error)
{
  g_autofree char *temp_path = g_strconcat (path, ".recovering", NULL);
  g_autofree char *told = NULL;
  g_autofree char *notice = NULL;
  g_autoptr (FmDb) from = NULL;
  g_autoptr (FmNotebook) made = NULL;

  fm_store_check_thread ();
  if (!fm_notebook_check_file (damaged, error) || (from = open_damaged (damaged, error)) == NULL ||
      !fm_notebook_clear_name (path, &notice, error))
    return NULL;
  g_unlink (temp_path);
  if (recover_into (from, temp_path, &told, cancellable, error) &&
      fm_notebook_publish_new (temp_path, path, error))
    made = fm_notebook_open (path, cancellable, error);
  g_unlink (temp_path);
  if (made != NULL && notice != NULL)
    fm_notebook_set_notice (made, notice);
  if (made != NULL)
    *report = g_steal_pointer (&told);
  return g_steal_pointer (&made);
}

char *
fm_notebook_recover_path (const char *damaged)
{
  const gsize ending = g_str_has_suffix (damaged, ".forcemeat") ? strlen (".forcemeat") : 0;
  g_autofree char *bare = g_strndup (damaged, strlen (damaged) - ending);
  /* TRANSLATORS: Stands at the end of the name of a file. */
  char *path = g_strdup_printf ("%s %s.forcemeat", bare, _ ("recovered"));

  for (guint i = 2; g_file_test (path, G_FILE_TEST_EXISTS); i++) {
    g_free (path);
    path = g_strdup_printf ("%s %s %u.forcemeat", bare, _ ("recovered"), i);
  }
  return path;
}
