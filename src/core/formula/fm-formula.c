/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-formula.c - the lines of a blend */
#include "core/formula/fm-formula.h"

#include "core/base/fm-double.h"

#include <math.h>

static void
line_clear (gpointer data)
{
  FmFormulaLine *line = data;
  g_free (line->id);
  g_clear_pointer (&line->ingredient, fm_ingredient_unref);
  g_free (line->note);
}

static void
line_unref (gpointer data)
{
  g_rc_box_release_full (data, line_clear);
}

static FmFormulaLine *
line_new (const char *id, FmIngredient *ingredient, double mass_g)
{
  FmFormulaLine *line = g_rc_box_new0 (FmFormulaLine);
  line->id = id ? g_strdup (id) : g_uuid_string_random ();
  line->ingredient = fm_ingredient_ref (ingredient);
  line->mass_g = mass_g;
  line->min_share_pct = NAN;
  line->max_share_pct = NAN;
  return line;
}

static FmFormulaLine *
line_copy (const FmFormulaLine *line)
{
  FmFormulaLine *copy = line_new (line->id, line->ingredient, line->mass_g);
  copy->locked = line->locked;
  copy->min_share_pct = line->min_share_pct;
  copy->max_share_pct = line->max_share_pct;
  copy->note = g_strdup (line->note);
  return copy;
}

static gboolean
line_equal (const FmFormulaLine *a, const FmFormulaLine *b)
{
  if (a == b)
    return TRUE;
  return g_strcmp0 (a->id, b->id) == 0 && fm_double_same (a->mass_g, b->mass_g) &&
         !a->locked == !b->locked && fm_double_same (a->min_share_pct, b->min_share_pct) &&
         fm_double_same (a->max_share_pct, b->max_share_pct) && g_strcmp0 (a->note, b->note) == 0 &&
         fm_ingredient_equal (a->ingredient, b->ingredient);
}

FmFormula *
fm_formula_new (void)
{
  FmFormula *self = g_new0 (FmFormula, 1);
  self->lines = g_ptr_array_new_with_free_func (line_unref);
  self->brief = fm_brief_new ();
  self->process = fm_process_new ();
  return self;
}

/* A copy whose lines come from @copy_line; @data is handed through. */
static FmFormula *
copy_lines_by (const FmFormula *self,
               FmFormulaLine *(*copy_line) (const FmFormulaLine *line, guint index, gpointer data),
               gpointer data)
{
  FmFormula *copy = g_new0 (FmFormula, 1);
  copy->brief = fm_brief_copy (self->brief);
  copy->process = fm_process_copy (self->process);
  copy->lines = g_ptr_array_new_full (self->lines->len, line_unref);
  for (guint i = 0; i < self->lines->len; i++)
    g_ptr_array_add (copy->lines, copy_line (fm_formula_line (self, i), i, data));
  return copy;
}

static FmFormulaLine *
copy_one (const FmFormulaLine *line, guint index, gpointer data)
{
  return line_copy (line);
}

FmFormula *
fm_formula_copy (const FmFormula *self)
{
  return copy_lines_by (self, copy_one, NULL);
}

static FmFormulaLine *
share_or_copy_one (const FmFormulaLine *line, guint index, gpointer data)
{
  const FmFormula *previous = data;
  if (index < previous->lines->len && line_equal (line, fm_formula_line (previous, index)))
    return g_rc_box_acquire (fm_formula_line (previous, index));
  return line_copy (line);
}

/* The copy shares each line that equals the one at the same place before it. */
static gpointer
copy_for_history (gconstpointer formula, gconstpointer before)
{
  if (before == NULL)
    return fm_formula_copy (formula);
  return copy_lines_by (formula, share_or_copy_one, (gpointer)before);
}

static gboolean
equal_for_history (gconstpointer a, gconstpointer b)
{
  return fm_formula_equal (a, b);
}

static void
free_for_history (gpointer formula)
{
  fm_formula_free (formula);
}

const FmHistoryKind fm_formula_history_kind = {
  .equal = equal_for_history,
  .copy = copy_for_history,
  .free = free_for_history,
};

void
fm_formula_free (FmFormula *self)
{
  g_ptr_array_unref (self->lines);
  fm_brief_free (self->brief);
  fm_process_free (self->process);
  g_free (self);
}

gboolean
fm_formula_equal (const FmFormula *a, const FmFormula *b)
{
  if (a->lines->len != b->lines->len || !fm_brief_equal (a->brief, b->brief) ||
      !fm_process_equal (a->process, b->process))
    return FALSE;
  for (guint i = 0; i < a->lines->len; i++)
    if (!line_equal (fm_formula_line (a, i), fm_formula_line (b, i)))
      return FALSE;
  return TRUE;
}

guint
fm_formula_n_lines (const FmFormula *self)
{
  return self->lines->len;
}

FmFormulaLine *
fm_formula_line (const FmFormula *self, guint index)
{
  g_return_val_if_fail (index < self->lines->len, NULL);
  return g_ptr_array_index (self->lines, index);
}

double
fm_formula_total_g (const FmFormula *self)
{
  double total_g = 0.0;
  for (guint i = 0; i < self->lines->len; i++)
    total_g += fm_formula_line (self, i)->mass_g;
  return total_g;
}

FmSpeciesSet
fm_formula_species (const FmFormula *self)
{
  FmSpeciesSet set = 0;

  for (guint i = 0; i < self->lines->len; i++) {
    const FmFormulaLine *line = fm_formula_line (self, i);
    if (line->mass_g > 0.0)
      set |= FM_SPECIES_BIT (line->ingredient->species);
  }
  return set;
}

double
fm_formula_share_pct (const FmFormula *self, guint index)
{
  double total_g = fm_formula_total_g (self);
  return total_g > 0.0 ? fm_formula_line (self, index)->mass_g / total_g * 100.0 : NAN;
}

static gboolean
is_name_taken (const FmFormula *self, guint index, const char *name)
{
  const char *identity = fm_ingredient_identity (fm_formula_line (self, index)->ingredient);

  for (guint i = 0; i < self->lines->len; i++) {
    const FmIngredient *other = fm_formula_line (self, i)->ingredient;

    if (i != index && g_str_equal (other->name, name) &&
        !g_str_equal (fm_ingredient_identity (other), identity))
      return TRUE;
  }
  return FALSE;
}

/* No two stuffs of a formula bear one name. */
static void
name_apart (FmFormula *self, guint index)
{
  FmFormulaLine *line = fm_formula_line (self, index);
  g_autofree char *name = g_strdup (line->ingredient->name);
  FmIngredient *renamed;

  for (guint nth = 2; is_name_taken (self, index, name); nth++) {
    g_free (name);
    name = fm_ingredient_name_apart (line->ingredient, nth);
  }
  if (g_str_equal (name, line->ingredient->name))
    return;
  renamed = fm_ingredient_copy (line->ingredient);
  g_free (renamed->name);
  renamed->name = g_steal_pointer (&name);
  fm_ingredient_unref (line->ingredient);
  line->ingredient = renamed;
}

guint
fm_formula_add (FmFormula *self, FmIngredient *ingredient, double mass_g)
{
  gboolean usable = mass_g >= 0.0 && mass_g <= FM_MAX_LINE_MASS_G;
  g_ptr_array_add (self->lines, line_new (NULL, ingredient, usable ? mass_g : 0.0));
  name_apart (self, self->lines->len - 1);
  return self->lines->len - 1;
}

void
fm_formula_remove (FmFormula *self, guint index)
{
  g_return_if_fail (index < self->lines->len);
  g_ptr_array_remove_index (self->lines, index);
}

void
fm_formula_move (FmFormula *self, guint from, guint to)
{
  g_return_if_fail (from < self->lines->len && to < self->lines->len);
  FmFormulaLine *line = g_ptr_array_steal_index (self->lines, from);
  g_ptr_array_insert (self->lines, (int)to, line);
}

void
fm_formula_set_ingredient (FmFormula *self, guint index, FmIngredient *ingredient)
{
  FmFormulaLine *line = fm_formula_line (self, index);
  g_return_if_fail (line);
  fm_ingredient_ref (ingredient);
  fm_ingredient_unref (line->ingredient);
  line->ingredient = ingredient;
  name_apart (self, index);
}

static gboolean
can_merge (const FmFormulaLine *a, const FmFormulaLine *b)
{
  return g_strcmp0 (fm_ingredient_identity (a->ingredient),
                    fm_ingredient_identity (b->ingredient)) == 0 &&
         fm_double_same (a->ingredient->collagen_g_per_100g, b->ingredient->collagen_g_per_100g) &&
         fm_composition_equal (&a->ingredient->composition, &b->ingredient->composition);
}

/* The earlier line that @index could join, NULL when there is none. */
static FmFormulaLine *
find_twin (const FmFormula *self, guint index)
{
  FmFormulaLine *line = fm_formula_line (self, index);
  for (guint i = 0; i < index; i++)
    if (can_merge (fm_formula_line (self, i), line))
      return fm_formula_line (self, i);
  return NULL;
}

/* Lower limits hold for the sum of both lines; an upper one only if both have one. */
static void
merge_limits (FmFormulaLine *into, const FmFormulaLine *from)
{
  if (isnan (into->min_share_pct))
    into->min_share_pct = from->min_share_pct;
  else if (!isnan (from->min_share_pct))
    into->min_share_pct = MIN (into->min_share_pct + from->min_share_pct, 100.0);
  if (isnan (into->max_share_pct) || isnan (from->max_share_pct))
    into->max_share_pct = NAN;
  else
    into->max_share_pct = MIN (into->max_share_pct + from->max_share_pct, 100.0);
}

static void
merge_line (FmFormulaLine *into, const FmFormulaLine *from)
{
  into->mass_g = MIN (into->mass_g + from->mass_g, FM_MAX_LINE_MASS_G);
  into->locked = into->locked || from->locked;
  merge_limits (into, from);
  if (from->note && g_strcmp0 (into->note, from->note) != 0) {
    char *joined =
        into->note ? g_strjoin ("\n", into->note, from->note, NULL) : g_strdup (from->note);
    g_free (into->note);
    into->note = joined;
  }
}

guint
fm_formula_n_duplicates (const FmFormula *self)
{
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);
  guint n = 0;

  /* Asked at each keystroke: only lines of one ingredient are compared. */
  for (guint i = 0; i < self->lines->len; i++) {
    const char *identity = fm_ingredient_identity (fm_formula_line (self, i)->ingredient);

    if (!g_hash_table_add (seen, (gpointer)(identity != NULL ? identity : "")))
      n += find_twin (self, i) != NULL;
  }
  return n;
}

guint
fm_formula_merge_duplicates (FmFormula *self)
{
  guint n = 0;
  for (guint i = 1; i < self->lines->len;) {
    FmFormulaLine *twin = find_twin (self, i);
    if (!twin) {
      i++;
      continue;
    }
    merge_line (twin, fm_formula_line (self, i));
    g_ptr_array_remove_index (self->lines, i);
    n++;
  }
  return n;
}
