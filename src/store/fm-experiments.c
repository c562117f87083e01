/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-experiments.c - one experiment in and out of the notebook, whole or not at all */
#include "store/fm-experiments.h"

#include <glib/gi18n-lib.h>

#include "store/fm-formula-json.h"
#include "store/notebook/fm-db.h"

static gboolean
set_not_found (GError **error)
{
  g_set_error_literal (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND,
                       _ ("This experiment is no longer in the notebook. Choose another one."));
  return FALSE;
}

void
fm_experiment_info_free (FmExperimentInfo *info)
{
  if (info == NULL)
    return;
  g_free (info->blend_name);
  g_free (info->title);
  g_free (info);
}

/* Columns 3 to 26 of both the insert and the update; 1 is the id (or NULL), 2 the version. */
static void
bind_fields (FmStmt *stmt, const FmExperiment *experiment)
{
  FmPattyStats stats;

  fm_experiment_patty_stats (experiment, &stats);
  fm_stmt_bind_int (stmt, 3, experiment->made_at);
  fm_stmt_bind_text (stmt, 4, experiment->title);
  fm_stmt_bind_int (stmt, 5, experiment->rating);
  fm_stmt_bind_double (stmt, 6, stats.mean_g);
  fm_stmt_bind_double (stmt, 7, stats.cook_loss_pct);
  fm_stmt_bind_double (stmt, 8, fm_experiment_peak_core_c (experiment));
  fm_stmt_bind_double (stmt, 9, experiment->meat_temp_c);
  fm_stmt_bind_double (stmt, 10, experiment->plate_mm);
  fm_stmt_bind_int (stmt, 11, experiment->grind_passes);
  fm_stmt_bind_double (stmt, 12, experiment->patty_tolerance_pct);
  fm_stmt_bind_double (stmt, 13, experiment->patty_target_g);
  fm_stmt_bind_double (stmt, 14, experiment->salt_pct);
  fm_stmt_bind_double (stmt, 15, experiment->salt_minutes_before);
  fm_stmt_bind_int (stmt, 16, experiment->method);
  fm_stmt_bind_text (stmt, 17, experiment->surface);
  fm_stmt_bind_double (stmt, 18, experiment->surface_temp_c);
  fm_stmt_bind_double (stmt, 19, experiment->minutes_side_1);
  fm_stmt_bind_double (stmt, 20, experiment->minutes_side_2);
  fm_stmt_bind_double (stmt, 21, experiment->rest_minutes);
  fm_stmt_bind_text (stmt, 22, experiment->notes);
  fm_stmt_bind_double (stmt, 23, experiment->patty_diameter_mm);
  fm_stmt_bind_double (stmt, 24, experiment->patty_thickness_mm);
  fm_stmt_bind_double (stmt, 25, experiment->target_core_c);
  fm_stmt_bind_double (stmt, 26, experiment->surface_salt_pct);
}

/* The version gives blend and fat, which is why an unknown version inserts no row at all. */
static gboolean
insert_row (FmDb *db, const FmExperiment *experiment, gint64 *id, GError **error)
{
  g_autoptr (FmStmt) stmt = fm_db_prepare (
      db,
      "INSERT INTO experiments (version_id, blend_id, fat_pct, made_at, title, rating, mean_raw_g,"
      " cook_loss_pct, peak_core_c, meat_temp_c, plate_mm, grind_passes, patty_tolerance_pct,"
      " patty_target_g, salt_pct, salt_minutes_before, method, surface, surface_temp_c,"
      " minutes_side_1, minutes_side_2, rest_minutes, notes, patty_diameter_mm, patty_thickness_mm,"
      " target_core_c, surface_salt_pct)"
      " SELECT id, blend_id, fat_pct, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15,"
      " ?16, ?17, ?18, ?19, ?20, ?21, ?22, ?23, ?24, ?25, ?26 FROM versions WHERE id = ?2",
      error);

  if (stmt == NULL)
    return FALSE;
  fm_stmt_bind_int (stmt, 2, experiment->version_id);
  bind_fields (stmt, experiment);
  if (!fm_stmt_run (db, stmt, error))
    return FALSE;
  if (fm_db_changes (db) == 0) {
    g_set_error_literal (
        error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND,
        _ ("The version of this experiment is not in the notebook. Save the version first."));
    return FALSE;
  }
  *id = fm_db_last_id (db);
  return TRUE;
}

/* An experiment stays with the version that it was made from, so the version is not written. */
static gboolean
update_row (FmDb *db, const FmExperiment *experiment, GError **error)
{
  g_autoptr (FmStmt) stmt = fm_db_prepare (
      db,
      "UPDATE experiments SET made_at = ?3, title = ?4, rating = ?5, mean_raw_g = ?6,"
      " cook_loss_pct = ?7, peak_core_c = ?8, meat_temp_c = ?9, plate_mm = ?10,"
      " grind_passes = ?11, patty_tolerance_pct = ?12, patty_target_g = ?13, salt_pct = ?14,"
      " salt_minutes_before = ?15, method = ?16, surface = ?17, surface_temp_c = ?18,"
      " minutes_side_1 = ?19, minutes_side_2 = ?20, rest_minutes = ?21, notes = ?22,"
      " patty_diameter_mm = ?23, patty_thickness_mm = ?24, target_core_c = ?25,"
      " surface_salt_pct = ?26 WHERE id = ?1",
      error);

  if (stmt == NULL)
    return FALSE;
  fm_stmt_bind_int (stmt, 1, experiment->id);
  bind_fields (stmt, experiment);
  if (!fm_stmt_run (db, stmt, error))
    return FALSE;
  return fm_db_changes (db) > 0 || set_not_found (error);
}

static gboolean
write_weighings (FmDb *db, gint64 id, const GArray *weighings, GError **error)
{
  g_autoptr (FmStmt) stmt =
      fm_db_prepare (db, "INSERT INTO weighings VALUES (?1, ?2, ?3, ?4, ?5, ?6)", error);

  if (stmt == NULL)
    return FALSE;
  for (guint i = 0; i < weighings->len; i++) {
    const FmWeighing *weighing = &g_array_index (weighings, FmWeighing, i);
    fm_stmt_bind_int (stmt, 1, id);
    fm_stmt_bind_int (stmt, 2, i);
    fm_stmt_bind_text (stmt, 3, weighing->line_id);
    fm_stmt_bind_text (stmt, 4, weighing->name != NULL ? weighing->name : "");
    fm_stmt_bind_double (stmt, 5, weighing->planned_g);
    fm_stmt_bind_double (stmt, 6, weighing->weighed_g);
    if (!fm_stmt_run (db, stmt, error))
      return FALSE;
  }
  return TRUE;
}

/* Patties and core readings are both lists of two numbers. */
static gboolean
write_pairs (FmDb *db, const char *sql, gint64 id, const GArray *pairs, GError **error)
{
  g_autoptr (FmStmt) stmt = fm_db_prepare (db, sql, error);
  const double *values = (const double *)(const void *)pairs->data;

  G_STATIC_ASSERT (sizeof (FmPattyMass) == 2 * sizeof (double));
  G_STATIC_ASSERT (sizeof (FmCoreReading) == 2 * sizeof (double));
  if (stmt == NULL)
    return FALSE;
  for (guint i = 0; i < pairs->len; i++) {
    fm_stmt_bind_int (stmt, 1, id);
    fm_stmt_bind_int (stmt, 2, i);
    fm_stmt_bind_double (stmt, 3, values[2 * i]);
    fm_stmt_bind_double (stmt, 4, values[2 * i + 1]);
    if (!fm_stmt_run (db, stmt, error))
      return FALSE;
  }
  return TRUE;
}

static gboolean
write_search_row (FmDb *db, gint64 id, const FmExperiment *experiment, GError **error)
{
  g_autoptr (FmStmt) stmt = fm_db_prepare (
      db, "INSERT INTO experiments_fts (rowid, title, notes) VALUES (?1, ?2, ?3)", error);

  if (stmt == NULL)
    return FALSE;
  fm_stmt_bind_int (stmt, 1, id);
  fm_stmt_bind_text (stmt, 2, experiment->title);
  fm_stmt_bind_text (stmt, 3, experiment->notes);
  return fm_stmt_run (db, stmt, error);
}

/* The search index says a second time what is in the rows. A damaged one is made anew, so that no
 * words are refused for it. */
static gboolean
mend_search (FmDb *db, GError **error)
{
  if (!g_error_matches (*error, FM_STORE_ERROR, FM_STORE_ERROR_DAMAGED))
    return FALSE;
  g_clear_error (error);
  return fm_db_exec (db, "INSERT INTO experiments_fts (experiments_fts) VALUES ('rebuild')", error);
}

static gboolean
remove_search_row (FmDb *db, gint64 id, GError **error)
{
  static const char sql[] = "DELETE FROM experiments_fts WHERE rowid = ?1";
  g_autoptr (GError) local_error = NULL;

  if (fm_db_run_with_id (db, sql, id, &local_error) ||
      (mend_search (db, &local_error) && fm_db_run_with_id (db, sql, id, &local_error)))
    return TRUE;
  g_propagate_error (error, g_steal_pointer (&local_error));
  return FALSE;
}

static gboolean
put_search_row (FmDb *db, gint64 id, const FmExperiment *experiment, GError **error)
{
  g_autoptr (GError) local_error = NULL;

  if (write_search_row (db, id, experiment, &local_error) ||
      (mend_search (db, &local_error) && write_search_row (db, id, experiment, &local_error)))
    return TRUE;
  g_propagate_error (error, g_steal_pointer (&local_error));
  return FALSE;
}

static gboolean
clear_parts (FmDb *db, gint64 id, GError **error)
{
  return fm_db_run_with_id (db, "DELETE FROM weighings WHERE experiment_id = ?1", id, error) &&
         fm_db_run_with_id (db, "DELETE FROM patties WHERE experiment_id = ?1", id, error) &&
         fm_db_run_with_id (db, "DELETE FROM core_readings WHERE experiment_id = ?1", id, error) &&
         remove_search_row (db, id, error);
}

static gboolean
write_parts (FmDb *db, gint64 id, const FmExperiment *experiment, GError **error)
{
  return write_weighings (db, id, experiment->weighings, error) &&
         write_pairs (db, "INSERT INTO patties VALUES (?1, ?2, ?3, ?4)", id, experiment->patties,
                      error) &&
         write_pairs (db, "INSERT INTO core_readings VALUES (?1, ?2, ?3, ?4)", id,
                      experiment->core_readings, error) &&
         put_search_row (db, id, experiment, error);
}

static gboolean
save_in (FmDb *db, const FmExperiment *experiment, gint64 *id, GError **error)
{
  if (experiment->id == 0)
    return insert_row (db, experiment, id, error) && write_parts (db, *id, experiment, error);
  *id = experiment->id;
  return update_row (db, experiment, error) && clear_parts (db, *id, error) &&
         write_parts (db, *id, experiment, error);
}

gboolean
fm_experiments_save (FmNotebook *self, FmExperiment *experiment, GError **error)
{
  gint64 id = 0;

  if (!fm_experiment_check (experiment, error))
    return FALSE;
  FmDb *db = fm_notebook_begin (self, error);
  if (db == NULL || !fm_notebook_end (self, save_in (db, experiment, &id, error), error))
    return FALSE;
  experiment->id = id;
  return TRUE;
}

static gboolean
check_not_tasted (FmDb *db, gint64 id, GError **error)
{
  g_autoptr (FmStmt) stmt =
      fm_db_prepare (db,
                     "SELECT t.title FROM tasting_samples s JOIN tastings t ON t.id = s.tasting_id"
                     " WHERE s.experiment_id = ?1 ORDER BY t.held_at, t.id LIMIT 1",
                     error);

  if (stmt == NULL)
    return FALSE;
  fm_stmt_bind_int (stmt, 1, id);
  FmStep step = fm_stmt_step (db, stmt, error);
  if (step != FM_ROW)
    return step == FM_DONE;
  g_autofree char *title = fm_stmt_text (stmt, 0);
  g_set_error (error, FM_STORE_ERROR, FM_STORE_ERROR_FROZEN,
               _ ("The tasting “%s” uses this experiment as a sample, so it cannot be removed. "
                  "Remove the tasting first."),
               title != NULL && *title != '\0' ? title : _ ("without a title"));
  return FALSE;
}

static gboolean
remove_in (FmDb *db, gint64 id, GError **error)
{
  /* Weighings, patties, readings and photos go with the row by their foreign keys. */
  if (!check_not_tasted (db, id, error) || !remove_search_row (db, id, error) ||
      !fm_db_run_with_id (db, "DELETE FROM experiments WHERE id = ?1", id, error))
    return FALSE;
  return fm_db_changes (db) > 0 || set_not_found (error);
}

gboolean
fm_experiments_remove (FmNotebook *self, gint64 id, GError **error)
{
  FmDb *db = fm_notebook_begin (self, error);

  return db != NULL && fm_notebook_end (self, remove_in (db, id, error), error);
}

static void
read_fields (FmStmt *stmt, FmExperiment *experiment)
{
  gint64 method = fm_stmt_int (stmt, 10);

  experiment->id = fm_stmt_int (stmt, 0);
  experiment->version_id = fm_stmt_int (stmt, 1);
  experiment->made_at = fm_stmt_int (stmt, 2);
  experiment->title = fm_stmt_text (stmt, 3);
  experiment->rating = (int)CLAMP (fm_stmt_int (stmt, 4), 0, 10);
  experiment->meat_temp_c = fm_stmt_double (stmt, 5);
  experiment->plate_mm = fm_stmt_double (stmt, 6);
  experiment->grind_passes = (int)CLAMP (fm_stmt_int (stmt, 7), 0, 20);
  experiment->patty_tolerance_pct = fm_stmt_double (stmt, 8);
  experiment->patty_target_g = fm_stmt_double (stmt, 9);
  experiment->method = (FmCookMethod)CLAMP (method, 0, FM_N_COOK_METHODS - 1);
  experiment->surface = fm_stmt_text (stmt, 11);
  experiment->surface_temp_c = fm_stmt_double (stmt, 12);
  experiment->minutes_side_1 = fm_stmt_double (stmt, 13);
  experiment->minutes_side_2 = fm_stmt_double (stmt, 14);
  experiment->rest_minutes = fm_stmt_double (stmt, 15);
  experiment->notes = fm_stmt_text (stmt, 16);
  experiment->salt_pct = fm_stmt_double (stmt, 17);
  experiment->salt_minutes_before = fm_stmt_double (stmt, 18);
  experiment->patty_diameter_mm = fm_stmt_double (stmt, 19);
  experiment->patty_thickness_mm = fm_stmt_double (stmt, 20);
  experiment->target_core_c = fm_stmt_double (stmt, 21);
  experiment->surface_salt_pct = fm_stmt_double (stmt, 22);
}

static gboolean
read_row (FmReader *db, gint64 id, FmExperiment *experiment, GError **error)
{
  g_autoptr (FmStmt) stmt = fm_db_prepare (
      db,
      "SELECT id, version_id, made_at, title, rating, meat_temp_c, plate_mm, grind_passes,"
      " patty_tolerance_pct, patty_target_g, method, surface, surface_temp_c, minutes_side_1,"
      " minutes_side_2, rest_minutes, notes, salt_pct, salt_minutes_before,"
      " patty_diameter_mm, patty_thickness_mm, target_core_c, surface_salt_pct"
      " FROM experiments WHERE id = ?1",
      error);

  if (stmt == NULL)
    return FALSE;
  fm_stmt_bind_int (stmt, 1, id);
  FmStep step = fm_stmt_step (db, stmt, error);
  if (step == FM_DONE)
    return set_not_found (error);
  if (step == FM_ROW)
    read_fields (stmt, experiment);
  return step == FM_ROW;
}

/* Only a file that another program wrote has so many rows. */
static gboolean
set_too_many (GError **error)
{
  g_set_error_literal (error, FM_STORE_ERROR, FM_STORE_ERROR_DAMAGED,
                       _ ("This experiment has more weighings, patties or core readings than "
                          "Forcemeat writes, so it is not shown."));
  return FALSE;
}

static gboolean
read_weighings (FmReader *db, FmExperiment *experiment, GError **error)
{
  g_autoptr (FmStmt) stmt = fm_db_prepare (db,
                                           "SELECT line_id, name, planned_g, weighed_g"
                                           " FROM weighings WHERE experiment_id = ?1"
                                           " ORDER BY position",
                                           error);
  FmStep step = FM_FAILED;

  if (stmt == NULL)
    return FALSE;
  fm_stmt_bind_int (stmt, 1, experiment->id);
  while ((step = fm_stmt_step (db, stmt, error)) == FM_ROW) {
    FmWeighing weighing = { fm_stmt_text (stmt, 0), fm_stmt_text (stmt, 1),
                            fm_stmt_double (stmt, 2), fm_stmt_double (stmt, 3) };
    g_array_append_val (experiment->weighings, weighing);
    if (experiment->weighings->len > FM_FORMULA_MAX_LINES)
      return set_too_many (error);
  }
  return step == FM_DONE;
}

static gboolean
read_pairs (FmReader *db, const char *sql, gint64 id, GArray *pairs, GError **error)
{
  g_autoptr (FmStmt) stmt = fm_db_prepare (db, sql, error);
  FmStep step = FM_FAILED;

  if (stmt == NULL)
    return FALSE;
  fm_stmt_bind_int (stmt, 1, id);
  while ((step = fm_stmt_step (db, stmt, error)) == FM_ROW) {
    double pair[2] = { fm_stmt_double (stmt, 0), fm_stmt_double (stmt, 1) };
    g_array_append_vals (pairs, pair, 1);
    if (pairs->len > FM_MAX_READINGS)
      return set_too_many (error);
  }
  return step == FM_DONE;
}

FmExperiment *
fm_experiments_load (FmNotebook *self, gint64 id, GError **error)
{
  g_autoptr (FmExperiment) experiment = fm_experiment_new ();
  g_autoptr (FmReader) db = fm_notebook_reader (self, NULL, error);

  if (db == NULL || !read_row (db, id, experiment, error) ||
      !read_weighings (db, experiment, error) ||
      !read_pairs (db,
                   "SELECT raw_g, cooked_g FROM patties WHERE experiment_id = ?1"
                   " ORDER BY position",
                   id, experiment->patties, error) ||
      !read_pairs (db,
                   "SELECT time_s, temp_c FROM core_readings WHERE experiment_id = ?1"
                   " ORDER BY position",
                   id, experiment->core_readings, error))
    return NULL;
  return g_steal_pointer (&experiment);
}
