/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-ingredients.c - the developer's own ingredients, kept for other blends */
#include "store/notebook/fm-db.h"
#include "store/fm-formula-json.h"
#include "store/fm-versions.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* Every word of @search somewhere in @name, whatever the case. */
static gboolean
matches (const char *name, const GStrv words)
{
  g_autofree char *folded = g_utf8_casefold (name, -1);

  for (guint i = 0; words[i] != NULL; i++) {
    if (strstr (folded, words[i]) == NULL)
      return FALSE;
  }
  return TRUE;
}

static GStrv
split_words (const char *search)
{
  g_autofree char *valid = g_utf8_make_valid (search != NULL ? search : "", -1);
  g_autofree char *folded = g_utf8_casefold (valid, -1);

  return g_strsplit_set (folded, " \t\n", -1);
}

static int
compare_names (gconstpointer a, gconstpointer b)
{
  const FmIngredient *const *first = a;
  const FmIngredient *const *second = b;

  return g_utf8_collate ((*first)->name, (*second)->name);
}

GPtrArray *
fm_ingredients_list (FmNotebook *self, const char *search, GError **error)
{
  g_autoptr (FmReader) db = fm_notebook_reader (self, NULL, error);
  g_autoptr (GPtrArray) list = g_ptr_array_new_with_free_func ((GDestroyNotify)fm_ingredient_unref);
  g_auto (GStrv) words = split_words (search);
  g_autoptr (FmStmt) stmt = NULL;
  FmStep step;

  if (db == NULL)
    return NULL;
  stmt = fm_db_prepare (db, "SELECT name, ingredient_json FROM ingredients", error);
  if (stmt == NULL)
    return NULL;
  while ((step = fm_stmt_step (db, stmt, error)) == FM_ROW) {
    g_autofree char *name = fm_stmt_text (stmt, 0);
    g_autofree char *json = NULL;
    FmIngredient *ingredient;

    if (!matches (name, words))
      continue;
    json = fm_stmt_text (stmt, 1);
    ingredient = fm_ingredient_from_json (json, error);
    if (ingredient == NULL)
      return NULL;
    g_ptr_array_add (list, ingredient);
  }
  if (step != FM_DONE)
    return NULL;
  g_ptr_array_sort (list, compare_names);
  return g_steal_pointer (&list);
}

static gboolean
save_in (FmDb *db, const FmIngredient *ingredient, const char *json, GError **error)
{
  g_autoptr (FmStmt) stmt =
      fm_db_prepare (db,
                     "INSERT INTO ingredients (id, name, saved_at, ingredient_json)"
                     " VALUES (?1, ?2, ?3, ?4) ON CONFLICT (id) DO UPDATE SET"
                     " name = excluded.name, saved_at = excluded.saved_at,"
                     " ingredient_json = excluded.ingredient_json",
                     error);

  if (stmt == NULL)
    return FALSE;
  fm_stmt_bind_text (stmt, 1, ingredient->id);
  fm_stmt_bind_text (stmt, 2, ingredient->name);
  fm_stmt_bind_int (stmt, 3, g_get_real_time () / G_USEC_PER_SEC);
  fm_stmt_bind_text (stmt, 4, json);
  return fm_stmt_run (db, stmt, error);
}

gboolean
fm_ingredients_save (FmNotebook *self, const FmIngredient *ingredient, GError **error)
{
  g_autofree char *json = NULL;
  FmDb *db;

  if (!fm_ingredient_check (ingredient, error))
    return FALSE;
  json = fm_ingredient_to_json (ingredient);
  db = fm_notebook_begin (self, error);
  return db != NULL && fm_notebook_end (self, save_in (db, ingredient, json, error), error);
}

static gboolean
uses (const char *formula_json, const char *id, GError **error)
{
  g_autoptr (FmFormula) formula = fm_formula_from_json (formula_json, error);

  for (guint i = 0; formula != NULL && i < fm_formula_n_lines (formula); i++) {
    if (g_str_equal (fm_formula_line (formula, i)->ingredient->id, id))
      return TRUE;
  }
  return FALSE;
}

/* Names of the blends whose drafts use it, NULL + error. */
static GPtrArray *
find_users (FmDb *db, const char *id, GError **error)
{
  g_autoptr (GPtrArray) names = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (FmStmt) stmt = fm_db_prepare (db,
                                           "SELECT b.name, d.formula_json FROM drafts d"
                                           " JOIN blends b ON b.id = d.blend_id"
                                           " WHERE instr(d.formula_json, ?1) > 0 ORDER BY b.id",
                                           error);
  GError *failure = NULL;
  FmStep step;

  if (stmt == NULL)
    return NULL;
  fm_stmt_bind_text (stmt, 1, id);
  while ((step = fm_stmt_step (db, stmt, error)) == FM_ROW) {
    g_autofree char *json = fm_stmt_text (stmt, 1);

    if (uses (json, id, &failure))
      g_ptr_array_add (names, fm_stmt_text (stmt, 0));
    if (failure != NULL) {
      g_propagate_error (error, failure);
      return NULL;
    }
  }
  return step == FM_DONE ? g_steal_pointer (&names) : NULL;
}

static gboolean
check_unused (FmDb *db, const char *id, GError **error)
{
  g_autoptr (GPtrArray) names = find_users (db, id, error);
  g_autoptr (GString) list = g_string_new (NULL);

  if (names == NULL || names->len == 0)
    return names != NULL;
  for (guint i = 0; i < names->len; i++)
    g_string_append_printf (list, "%s%s", i > 0 ? ", " : "",
                            (const char *)g_ptr_array_index (names, i));
  g_set_error (error, FM_STORE_ERROR, FM_STORE_ERROR_IN_USE,
               ngettext ("The draft of %s uses this own entry. Take it out of there first.",
                         "The drafts of these blends use this own entry: %s. Take it out of them "
                         "first.",
                         names->len),
               list->str);
  return FALSE;
}

static gboolean
remove_in (FmDb *db, const char *id, GError **error)
{
  g_autoptr (FmStmt) stmt = fm_db_prepare (db, "DELETE FROM ingredients WHERE id = ?1", error);

  if (stmt == NULL)
    return FALSE;
  fm_stmt_bind_text (stmt, 1, id);
  if (!check_unused (db, id, error) || !fm_stmt_run (db, stmt, error))
    return FALSE;
  if (fm_db_changes (db) > 0)
    return TRUE;
  g_set_error_literal (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND,
                       _ ("This ingredient is not in the notebook any more."));
  return FALSE;
}

gboolean
fm_ingredients_remove (FmNotebook *self, const char *id, GError **error)
{
  FmDb *db = fm_notebook_begin (self, error);

  return db != NULL && fm_notebook_end (self, remove_in (db, id, error), error);
}
