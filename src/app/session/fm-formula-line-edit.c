/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-formula-line-edit.c - the acts on the lines of the draft, each one step of undo */
#include "app/session/fm-formula-line-edit.h"

#include <glib/gi18n-lib.h>

/* Common practice, no source: a round mass to start from. */
#define NEW_LINE_MASS_G 100.0

static FmFormula *
copy_draft (FmSession *session)
{
  const FmFormula *formula = fm_session_get_formula (session);

  return formula != NULL && fm_session_is_editable (session) ? fm_formula_copy (formula) : NULL;
}

static gboolean
find_line (const FmFormula *formula, const char *id, guint *index)
{
  for (guint i = 0; formula != NULL && i < fm_formula_n_lines (formula); i++) {
    if (g_strcmp0 (fm_formula_line (formula, i)->id, id) == 0) {
      *index = i;
      return TRUE;
    }
  }
  return FALSE;
}

static const char *
line_name (const FmFormula *formula, guint index)
{
  return fm_formula_line (formula, index)->ingredient->name;
}

gboolean
fm_line_edit_mass (FmSession *session, const char *id, double mass_g, GError **error)
{
  g_autoptr (FmFormula) next = copy_draft (session);
  g_autofree char *label = NULL;
  g_autofree char *key = NULL;
  guint index = 0;

  if (!find_line (next, id, &index))
    return TRUE;
  if (!fm_formula_set_mass (next, index, mass_g, error))
    return FALSE;
  label = g_strdup_printf (_ ("Change mass of %s"), line_name (next, index));
  key = g_strconcat ("mass:", id, NULL);
  fm_session_edit (session, next, label, key);
  return TRUE;
}

void
fm_share_run_clear (FmShareRun *run)
{
  g_clear_pointer (&run->before, fm_formula_free);
  g_clear_pointer (&run->after, fm_formula_free);
}

/* Somebody else's edit, undo included, ends the run. */
static FmFormula *
copy_before_run (FmShareRun *run, const FmFormula *current)
{
  if (run->after == NULL || !fm_formula_equal (run->after, current)) {
    fm_share_run_clear (run);
    run->before = fm_formula_copy (current);
    run->after = fm_formula_copy (current);
  }
  return fm_formula_copy (run->before);
}

gboolean
fm_line_edit_share (
    FmSession *session, const char *id, double share_pct, FmShareRun *run, GError **error)
{
  g_autoptr (FmFormula) next = NULL;
  g_autofree char *label = NULL;
  g_autofree char *key = NULL;
  guint index = 0;

  if (!fm_session_is_editable (session))
    return TRUE;
  next = copy_before_run (run, fm_session_get_formula (session));
  if (!find_line (next, id, &index))
    return TRUE;
  if (!fm_formula_set_share (next, index, share_pct, error))
    return FALSE;
  fm_formula_free (run->after);
  run->after = fm_formula_copy (next);
  label = g_strdup_printf (_ ("Change share of %s"), line_name (next, index));
  key = g_strconcat ("share:", id, NULL);
  fm_session_edit (session, next, label, key);
  return TRUE;
}

void
fm_line_edit_lock (FmSession *session, const char *id, gboolean locked)
{
  g_autoptr (FmFormula) next = copy_draft (session);
  g_autofree char *label = NULL;
  guint index = 0;

  if (!find_line (next, id, &index) || fm_formula_line (next, index)->locked == locked)
    return;
  fm_formula_line (next, index)->locked = locked;
  label = g_strdup_printf (locked ? _ ("Lock %s") : _ ("Unlock %s"), line_name (next, index));
  fm_session_edit (session, next, label, NULL);
}

void
fm_line_edit_remove (FmSession *session, const char *id)
{
  g_autoptr (FmFormula) next = copy_draft (session);
  g_autofree char *label = NULL;
  guint index = 0;

  if (!find_line (next, id, &index))
    return;
  label = g_strdup_printf (_ ("Remove %s"), line_name (next, index));
  fm_formula_remove (next, index);
  fm_session_edit (session, next, label, NULL);
}

static void
move_line (FmSession *session, FmFormula *next, guint from, guint to)
{
  g_autofree char *label = g_strdup_printf (_ ("Move %s"), line_name (next, from));

  if (from == to || to >= fm_formula_n_lines (next))
    return;
  fm_formula_move (next, from, to);
  fm_session_edit (session, next, label, NULL);
}

void
fm_line_edit_shift (FmSession *session, const char *id, int offset)
{
  g_autoptr (FmFormula) next = copy_draft (session);
  guint index = 0;

  if (find_line (next, id, &index) && (offset > 0 || index > 0))
    move_line (session, next, index, offset > 0 ? index + 1 : index - 1);
}

void
fm_line_edit_move_to (FmSession *session, const char *id, const char *target_id)
{
  g_autoptr (FmFormula) next = copy_draft (session);
  guint from = 0;
  guint to = 0;

  if (find_line (next, id, &from) && find_line (next, target_id, &to))
    move_line (session, next, from, to);
}

void
fm_line_edit_ingredient (FmSession *session, const char *id, FmIngredient *ingredient)
{
  g_autoptr (FmFormula) next = copy_draft (session);
  g_autofree char *label = NULL;
  guint index = 0;

  if (!find_line (next, id, &index))
    return;
  fm_formula_set_ingredient (next, index, ingredient);
  label = g_strdup_printf (_ ("Change figures of %s"), ingredient->name);
  fm_session_edit (session, next, label, NULL);
}

gboolean
fm_line_edit_price (FmSession *session, const char *id, double price_per_kg, GError **error)
{
  g_autoptr (FmFormula) next = copy_draft (session);
  g_autoptr (FmIngredient) ingredient = NULL;
  g_autofree char *label = NULL;
  g_autofree char *key = NULL;
  guint index = 0;

  if (!find_line (next, id, &index))
    return TRUE;
  ingredient = fm_ingredient_copy (fm_formula_line (next, index)->ingredient);
  ingredient->price_per_kg = price_per_kg;
  if (!fm_ingredient_check (ingredient, error))
    return FALSE;
  fm_formula_set_ingredient (next, index, ingredient);
  label = g_strdup_printf (_ ("Change price of %s"), ingredient->name);
  key = g_strconcat ("price:", id, NULL);
  fm_session_edit (session, next, label, key);
  return TRUE;
}

static double
new_line_mass_g (const FmFormula *formula)
{
  const double batch_g = formula->brief->patty_mass_g * formula->brief->n_patties;
  const double missing_g = batch_g - fm_formula_total_g (formula);

  return missing_g > 0.0 && missing_g < NEW_LINE_MASS_G ? missing_g : NEW_LINE_MASS_G;
}

char *
fm_line_edit_add (FmSession *session, FmIngredient *ingredient)
{
  g_autoptr (FmFormula) next = copy_draft (session);
  g_autofree char *label = NULL;
  guint index = 0;

  if (next == NULL)
    return NULL;
  index = fm_formula_add (next, ingredient, new_line_mass_g (next));
  label = g_strdup_printf (_ ("Add %s"), ingredient->name);
  fm_session_edit (session, next, label, NULL);
  return g_strdup (fm_formula_line (next, index)->id);
}

void
fm_line_edit_add_all (FmSession *session, const FmFormula *lines)
{
  g_autoptr (FmFormula) next = copy_draft (session);
  const guint n_lines = fm_formula_n_lines (lines);
  g_autofree char *label = NULL;

  if (next == NULL || n_lines == 0)
    return;
  for (guint i = 0; i < n_lines; i++)
    fm_formula_add (next, fm_formula_line (lines, i)->ingredient,
                    fm_formula_line (lines, i)->mass_g);
  label = g_strdup_printf (ngettext ("Paste %u line", "Paste %u lines", n_lines), n_lines);
  fm_session_edit (session, next, label, NULL);
}

void
fm_line_edit_merge_duplicates (FmSession *session)
{
  g_autoptr (FmFormula) next = copy_draft (session);

  if (next != NULL && fm_formula_merge_duplicates (next) > 0)
    fm_session_edit (session, next, _ ("Merge duplicates"), NULL);
}

gboolean
fm_line_edit_scale_to_batch (FmSession *session, GError **error)
{
  g_autoptr (FmFormula) next = copy_draft (session);

  if (next == NULL)
    return TRUE;
  if (!fm_formula_scale_to (next, next->brief->patty_mass_g * next->brief->n_patties, error))
    return FALSE;
  fm_session_edit (session, next, _ ("Scale to the batch"), NULL);
  return TRUE;
}

void
fm_line_edit_brief (FmSession *session, const FmBrief *brief, const char *what)
{
  g_autoptr (FmFormula) next = copy_draft (session);
  g_autofree char *label = NULL;

  if (next == NULL || fm_brief_equal (next->brief, brief))
    return;
  fm_brief_free (next->brief);
  next->brief = fm_brief_copy (brief);
  /* TRANSLATORS: an act that can be undone: "Brief: Patty mass" */
  label = g_strdup_printf (_ ("Brief: %s"), what);
  fm_session_edit (session, next, label, label);
}

void
fm_line_edit_process (FmSession *session, const FmProcess *process, const char *what)
{
  g_autoptr (FmFormula) next = copy_draft (session);
  g_autofree char *label = NULL;

  if (next == NULL || fm_process_equal (next->process, process))
    return;
  fm_process_free (next->process);
  next->process = fm_process_copy (process);
  /* TRANSLATORS: an act that can be undone: "Process: Plates" */
  label = g_strdup_printf (_ ("Process: %s"), what);
  fm_session_edit (session, next, label, label);
}
