/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-formula-mass.c - changing the masses and shares of a formula */
#include "core/formula/fm-formula.h"

#include "core/base/fm-error.h"
#include "core/base/fm-number.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Rounding that a cook could not weigh; relative to the total. */
#define MASS_TOLERANCE 1e-9

/* What lies beside one line: how many other lines may give or take, and what they weigh. */
typedef struct {
  double total_g;
  double locked_g;
  double free_g;
  guint n_free;
} Surroundings;

static const char *
line_name (const FmFormula *self, guint index)
{
  return fm_formula_line (self, index)->ingredient->name;
}

gboolean
fm_formula_set_mass (FmFormula *self, guint index, double mass_g, GError **error)
{
  if (mass_g >= 0.0 && mass_g <= FM_MAX_LINE_MASS_G) {
    fm_formula_line (self, index)->mass_g = mass_g;
    return TRUE;
  }
  g_autofree char *max = fm_number_to_edit (FM_MAX_LINE_MASS_G, 0);
  g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
               _ ("The mass of %s must lie from 0 to %s g. Type it in grams."),
               line_name (self, index), max);
  return FALSE;
}

static Surroundings
look_around (const FmFormula *self, guint index)
{
  Surroundings around = { .total_g = fm_formula_total_g (self) };
  for (guint i = 0; i < fm_formula_n_lines (self); i++) {
    const FmFormulaLine *line = fm_formula_line (self, i);
    if (i == index)
      continue;
    if (line->locked) {
      around.locked_g += line->mass_g;
    } else {
      around.free_g += line->mass_g;
      around.n_free++;
    }
  }
  return around;
}

static gboolean
fail_empty (GError **error)
{
  g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY,
               _ ("The blend weighs nothing yet. Type the mass of at least one line first."));
  return FALSE;
}

static gboolean
fail_no_room (const FmFormula *self, guint index, const Surroundings *around, GError **error)
{
  const char *name = line_name (self, index);
  double room_pct = (around->total_g - around->locked_g) / around->total_g * 100.0;
  g_autofree char *room = fm_number_format (room_pct, 2);
  if (fm_formula_n_lines (self) == 1)
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_LOCKED,
                 _ ("%s is the only line and so the whole blend. Add another line first."), name);
  else if (around->n_free == 0)
    g_set_error (
        error, FM_CORE_ERROR, FM_CORE_ERROR_LOCKED,
        _ ("All other lines are locked, so %s must stay at %s %%. Unlock a line, or change "
           "the mass."),
        name, room);
  else
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_LOCKED,
                 _ ("The locked lines leave at most %s %% for %s. Unlock a line, or type a smaller "
                    "share."),
                 room, name);
  return FALSE;
}

/* Gives the unlocked lines beside @index @rest_g in all, in proportion to what they weigh. */
static void
spread_rest (FmFormula *self, guint index, const Surroundings *around, double rest_g)
{
  for (guint i = 0; i < fm_formula_n_lines (self); i++) {
    FmFormulaLine *line = fm_formula_line (self, i);
    if (i == index || line->locked)
      continue;
    if (around->free_g > 0.0)
      line->mass_g *= rest_g / around->free_g;
    else
      line->mass_g = rest_g / around->n_free;
  }
}

gboolean
fm_formula_set_share (FmFormula *self, guint index, double share_pct, GError **error)
{
  if (!(share_pct >= 0.0 && share_pct <= 100.0)) {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("The share of %s must lie from 0 to 100 %%. Type a number such as 25."),
                 line_name (self, index));
    return FALSE;
  }
  Surroundings around = look_around (self, index);
  if (!(around.total_g > 0.0))
    return fail_empty (error);
  double mass_g = around.total_g * share_pct / 100.0;
  double rest_g = around.total_g - around.locked_g - mass_g;
  double tolerance_g = around.total_g * MASS_TOLERANCE;
  if (rest_g < -tolerance_g || (around.n_free == 0 && rest_g > tolerance_g))
    return fail_no_room (self, index, &around, error);
  fm_formula_line (self, index)->mass_g = mass_g;
  spread_rest (self, index, &around, MAX (rest_g, 0.0));
  return TRUE;
}

gboolean
fm_formula_scale_to (FmFormula *self, double total_g, GError **error)
{
  double now_g = fm_formula_total_g (self);
  if (!(total_g > 0.0 && isfinite (total_g))) {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("The new total must be more than 0 g. Type it in grams."));
    return FALSE;
  }
  if (!(now_g > 0.0))
    return fail_empty (error);
  double factor = total_g / now_g;
  for (guint i = 0; i < fm_formula_n_lines (self); i++) {
    if (fm_formula_line (self, i)->mass_g * factor <= FM_MAX_LINE_MASS_G)
      continue;
    g_autofree char *max = fm_number_to_edit (FM_MAX_LINE_MASS_G, 0);
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("%s would weigh more than %s g. Type a smaller total."), line_name (self, i),
                 max);
    return FALSE;
  }
  for (guint i = 0; i < fm_formula_n_lines (self); i++)
    fm_formula_line (self, i)->mass_g *= factor;
  return TRUE;
}
