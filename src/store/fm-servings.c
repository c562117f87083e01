/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-servings.c - servings of a version in the notebook */
#include "store/fm-servings.h"

#include <glib/gi18n-lib.h>

#include "core/base/fm-error.h"
#include "store/fm-formula-json.h"
#include "store/fm-names-private.h"
#include "store/fm-versions.h"

void
fm_serving_info_free (FmServingInfo *info)
{
  g_free (info->name);
  g_free (info->reason);
  g_free (info);
}

static FmServingInfo *
info_from_row (FmStmt *stmt)
{
  FmServingInfo *info = g_new0 (FmServingInfo, 1);

  info->id = fm_stmt_int (stmt, 0);
  info->version_id = fm_stmt_int (stmt, 1);
  info->version_number = (int)fm_stmt_int (stmt, 2);
  info->number = (int)fm_stmt_int (stmt, 3);
  info->name = fm_stmt_text (stmt, 4);
  info->reason = fm_stmt_text (stmt, 5);
  info->saved_at = fm_stmt_int (stmt, 6);
  return info;
}

GPtrArray *
fm_servings_list (FmNotebook *self, gint64 blend_id, GError **error)
{
  g_autoptr (GPtrArray) infos =
      g_ptr_array_new_with_free_func ((GDestroyNotify)fm_serving_info_free);
  g_autoptr (FmReader) db = fm_notebook_reader (self, NULL, error);
  g_autoptr (FmStmt) stmt =
      db == NULL
          ? NULL
          : fm_db_prepare (db,
                           "SELECT s.id, s.version_id, v.number, s.number, s.name, s.reason,"
                           " s.saved_at FROM servings s JOIN versions v ON v.id = s.version_id"
                           " WHERE v.blend_id = ?1 ORDER BY v.number DESC, s.number DESC",
                           error);
  FmStep step = FM_FAILED;

  if (stmt == NULL)
    return NULL;
  fm_stmt_bind_int (stmt, 1, blend_id);
  while ((step = fm_stmt_step (db, stmt, error)) == FM_ROW)
    g_ptr_array_add (infos, info_from_row (stmt));
  return step == FM_DONE ? g_steal_pointer (&infos) : NULL;
}

static gboolean
read_part (FmDb *db, FmStmt *stmt, FmDish *dish, GError **error)
{
  g_autofree char *role = fm_stmt_text (stmt, 0), *name = fm_stmt_text (stmt, 1);
  g_autofree char *stuff = fm_stmt_text (stmt, 3), *json = fm_stmt_text (stmt, 4);
  const double mass_g = fm_stmt_double (stmt, 2);
  const FmDishRole kind = fm_dish_role_from_key (role);
  g_autoptr (FmIngredient) ingredient = NULL;
  FmFormula *formula = NULL;

  if (stuff != NULL) {
    ingredient = fm_ingredient_from_json (stuff, error);
    if (ingredient == NULL)
      return FALSE;
    fm_ingredient_shorten_name (ingredient);
    fm_dish_add_ingredient (dish, kind, ingredient, mass_g);
    return TRUE;
  }
  formula = fm_names_read_formula (db, json != NULL ? json : "", error);
  if (formula == NULL)
    return FALSE;
  fm_dish_add_formula (dish, kind, name, formula, mass_g);
  return TRUE;
}

static gboolean
read_parts (FmDb *db, gint64 id, FmDish *dish, GError **error)
{
  g_autoptr (FmStmt) stmt =
      fm_db_prepare (db,
                     "SELECT role, name, mass_g, ingredient_json, formula_json FROM serving_parts"
                     " WHERE serving_id = ?1 ORDER BY position",
                     error);
  FmStep step = FM_FAILED;

  if (stmt == NULL)
    return FALSE;
  fm_stmt_bind_int (stmt, 1, id);
  while ((step = fm_stmt_step (db, stmt, error)) == FM_ROW)
    if (!read_part (db, stmt, dish, error))
      return FALSE;
  return step == FM_DONE;
}

static FmDish *
read_dish (FmDb *db, gint64 id, GError **error)
{
  g_autoptr (FmStmt) stmt = fm_db_prepare (
      db, "SELECT n_patties, patty_raw_g, method, cook_yield_pct FROM servings WHERE id = ?1",
      error);
  g_autoptr (FmBrief) brief = fm_brief_new ();
  FmDish *dish;
  FmStep step;

  if (stmt == NULL)
    return NULL;
  fm_stmt_bind_int (stmt, 1, id);
  step = fm_stmt_step (db, stmt, error);
  if (step == FM_DONE)
    g_set_error_literal (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND,
                         _ ("This serving is no longer in the notebook. Choose another one."));
  if (step != FM_ROW)
    return NULL;
  dish = fm_dish_new (brief);
  dish->n_patties = (int)fm_stmt_int (stmt, 0);
  dish->patty_raw_g = fm_stmt_double (stmt, 1);
  dish->method = (FmCookMethod)CLAMP (fm_stmt_int (stmt, 2), 0, FM_N_COOK_METHODS - 1);
  dish->cook_yield_pct = fm_stmt_double (stmt, 3);
  return dish;
}

FmDish *
fm_servings_load (FmNotebook *self, gint64 id, GError **error)
{
  g_autoptr (FmReader) db = fm_notebook_reader (self, NULL, error);
  g_autoptr (FmDish) dish = db != NULL ? read_dish (db, id, error) : NULL;

  if (dish == NULL || !read_parts (db, id, dish, error))
    return NULL;
  return g_steal_pointer (&dish);
}

static gboolean
write_part (FmDb *db, gint64 id, guint position, const FmDishPart *part, GError **error)
{
  g_autoptr (FmStmt) stmt =
      fm_db_prepare (db, "INSERT INTO serving_parts VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)", error);
  g_autofree char *stuff =
      part->ingredient != NULL ? fm_ingredient_to_json (part->ingredient) : NULL;
  g_autofree char *json = part->formula != NULL ? fm_formula_to_json (part->formula) : NULL;

  if (stmt == NULL)
    return FALSE;
  fm_stmt_bind_int (stmt, 1, id);
  fm_stmt_bind_int (stmt, 2, position);
  fm_stmt_bind_text (stmt, 3, fm_dish_role_key (part->role));
  fm_stmt_bind_text (stmt, 4, part->name);
  fm_stmt_bind_double (stmt, 5, part->mass_g);
  fm_stmt_bind_text (stmt, 6, stuff);
  fm_stmt_bind_text (stmt, 7, json);
  return fm_stmt_run (db, stmt, error);
}

typedef struct {
  gint64 version_id;
  int number;
  const char *name;
  const char *reason;
  const FmDish *dish;
} Row;

static gboolean
write_row (FmDb *db, const Row *row, GError **error)
{
  g_autoptr (FmStmt) stmt =
      fm_db_prepare (db,
                     "INSERT INTO servings (version_id, number, name, reason, saved_at, n_patties,"
                     " patty_raw_g, method, cook_yield_pct)"
                     " VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9)",
                     error);

  if (stmt == NULL)
    return FALSE;
  fm_stmt_bind_int (stmt, 1, row->version_id);
  fm_stmt_bind_int (stmt, 2, row->number);
  fm_stmt_bind_text (stmt, 3, row->name);
  fm_stmt_bind_text (stmt, 4, row->reason);
  fm_stmt_bind_int (stmt, 5, g_get_real_time () / G_USEC_PER_SEC);
  fm_stmt_bind_int (stmt, 6, row->dish->n_patties);
  fm_stmt_bind_double (stmt, 7, row->dish->patty_raw_g);
  fm_stmt_bind_int (stmt, 8, row->dish->method);
  fm_stmt_bind_double (stmt, 9, row->dish->cook_yield_pct);
  return fm_stmt_run (db, stmt, error);
}

static gboolean
write_serving (FmDb *db, const Row *row, GError **error)
{
  guint position = 0;
  gint64 id;

  if (!write_row (db, row, error))
    return FALSE;
  id = fm_db_last_id (db);
  for (guint i = 0; i < row->dish->parts->len; i++) {
    const FmDishPart *part = fm_dish_part (row->dish, i);

    /* A draft may have rows without a mass yet. */
    if (part->mass_g > 0.0 && !write_part (db, id, position++, part, error))
      return FALSE;
  }
  return TRUE;
}

/* The number after the last one of the version; 0 + error. */
static int
next_number (FmDb *db, gint64 version_id, GError **error)
{
  g_autoptr (FmStmt) stmt =
      fm_db_prepare (db,
                     "SELECT coalesce(max(s.number), 0) + 1 FROM versions v"
                     " LEFT JOIN servings s ON s.version_id = v.id WHERE v.id = ?1 GROUP BY v.id",
                     error);
  FmStep step;

  if (stmt == NULL)
    return 0;
  fm_stmt_bind_int (stmt, 1, version_id);
  step = fm_stmt_step (db, stmt, error);
  if (step == FM_DONE)
    g_set_error_literal (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND,
                         _ ("This version is not in the notebook. Choose another one."));
  return step == FM_ROW ? (int)fm_stmt_int (stmt, 0) : 0;
}

static gboolean
remove_draft (FmDb *db, gint64 version_id, GError **error)
{
  return fm_db_run_with_id (db, "DELETE FROM servings WHERE version_id = ?1 AND number = 0",
                            version_id, error);
}

static gboolean
is_blank (const char *text)
{
  g_autofree char *bare = g_strstrip (g_strdup (text != NULL ? text : ""));

  return *bare == '\0';
}

static int
save_in (FmDb *db, Row *row, GError **error)
{
  row->number = next_number (db, row->version_id, error);
  return row->number > 0 && remove_draft (db, row->version_id, error) &&
                 write_serving (db, row, error)
             ? row->number
             : 0;
}

int
fm_servings_save (FmNotebook *self,
                  gint64 version_id,
                  const char *name,
                  const char *reason,
                  const FmDish *dish,
                  GError **error)
{
  Row row = { version_id, 0, name, reason, dish };
  FmDb *db;
  int number;

  if (!fm_dish_check (dish, error))
    return 0;
  if (is_blank (name) || is_blank (reason)) {
    g_set_error_literal (error, FM_STORE_ERROR, FM_STORE_ERROR_FAILED,
                         _ ("Type what this serving is called and why it is saved."));
    return 0;
  }
  db = fm_notebook_begin (self, error);
  number = db != NULL ? save_in (db, &row, error) : 0;
  return db != NULL && fm_notebook_end (self, number > 0, error) ? number : 0;
}

gboolean
fm_servings_save_draft (FmNotebook *self, gint64 version_id, const FmDish *dish, GError **error)
{
  const Row row = { version_id, 0, "", "", dish };
  FmDb *db = fm_notebook_begin (self, error);

  return db != NULL &&
         fm_notebook_end (
             self, remove_draft (db, version_id, error) && write_serving (db, &row, error), error);
}
