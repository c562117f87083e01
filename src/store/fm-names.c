/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-names.c - what the cook calls the foods of the dataset, in all blends of the notebook */
#include "store/fm-names-private.h"

#include "core/composition/fm-short-name.h"
#include "store/fm-versions.h"

/* Only rows of the dataset have a name by rule beside the dataset's own. */
static gboolean
is_named_by_rule (const FmIngredient *ingredient)
{
  return ingredient->provenance == FM_PROVENANCE_DATASET && ingredient->source_ref != NULL &&
         ingredient->original_name != NULL;
}

/* *@name stays NULL when the notebook has none. */
static gboolean
read_name (FmDb *db, const char *identity, char **name, GError **error)
{
  g_autoptr (FmStmt) stmt =
      fm_db_prepare (db, "SELECT name FROM ingredient_names WHERE ingredient = ?1", error);
  FmStep step;

  if (stmt == NULL)
    return FALSE;
  fm_stmt_bind_text (stmt, 1, identity);
  step = fm_stmt_step (db, stmt, error);
  if (step == FM_ROW)
    *name = fm_stmt_text (stmt, 0);
  return step != FM_FAILED;
}

/* @ingredient, or a copy that bears the notebook's name. (transfer full); NULL on error. */
static FmIngredient *
named (FmDb *db, FmIngredient *ingredient, GError **error)
{
  g_autofree char *name = NULL;
  FmIngredient *copy;

  if (!is_named_by_rule (ingredient))
    return fm_ingredient_ref (ingredient);
  if (!read_name (db, ingredient->source_ref, &name, error))
    return NULL;
  if (name == NULL || g_str_equal (name, ingredient->name))
    return fm_ingredient_ref (ingredient);
  copy = fm_ingredient_copy (ingredient);
  if (copy->full_name == NULL)
    copy->full_name = g_steal_pointer (&copy->name);
  g_free (copy->name);
  copy->name = g_steal_pointer (&name);
  return copy;
}

static gboolean
is_name_of_rule (const FmIngredient *ingredient)
{
  const char *full = ingredient->full_name != NULL ? ingredient->full_name : ingredient->name;
  g_autofree char *by_rule = fm_short_name (full);
  g_autofree char *with_number = g_strdup_printf ("%s (%s)", by_rule, ingredient->source_ref);

  return g_str_equal (ingredient->name, by_rule) || g_str_equal (ingredient->name, with_number);
}

static gboolean
remember_name (FmDb *db, const FmIngredient *ingredient, GError **error)
{
  const gboolean forget = is_name_of_rule (ingredient);
  g_autoptr (FmStmt) stmt =
      fm_db_prepare (db,
                     forget ? "DELETE FROM ingredient_names WHERE ingredient = ?1"
                            : "INSERT INTO ingredient_names VALUES (?1, ?2)"
                              " ON CONFLICT (ingredient) DO UPDATE SET name = excluded.name",
                     error);

  if (stmt == NULL)
    return FALSE;
  fm_stmt_bind_text (stmt, 1, ingredient->source_ref);
  if (!forget)
    fm_stmt_bind_text (stmt, 2, ingredient->name);
  return fm_stmt_run (db, stmt, error);
}

FmFormula *
fm_names_read_formula (FmDb *db, const char *json, GError **error)
{
  g_autoptr (FmFormula) formula = fm_formula_from_json (json, error);

  if (formula == NULL)
    return NULL;
  for (guint i = 0; i < fm_formula_n_lines (formula); i++) {
    g_autoptr (FmIngredient) ingredient =
        named (db, fm_formula_line (formula, i)->ingredient, error);

    if (ingredient == NULL)
      return NULL;
    fm_formula_set_ingredient (formula, i, ingredient);
  }
  return g_steal_pointer (&formula);
}

gboolean
fm_names_remember (FmDb *db, const FmFormula *formula, GError **error)
{
  for (guint i = 0; i < fm_formula_n_lines (formula); i++) {
    const FmIngredient *ingredient = fm_formula_line (formula, i)->ingredient;

    if (is_named_by_rule (ingredient) && !remember_name (db, ingredient, error))
      return FALSE;
  }
  return TRUE;
}

FmIngredient *
fm_names_new_ingredient (FmNotebook *notebook, const FmFood *food, GError **error)
{
  g_autoptr (FmIngredient) ingredient = fm_ingredient_new_from_food (food);
  g_autoptr (FmReader) db = NULL;

  if (notebook == NULL)
    return g_steal_pointer (&ingredient);
  db = fm_notebook_reader (notebook, NULL, error);
  return db != NULL ? named (db, ingredient, error) : NULL;
}
