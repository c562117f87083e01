/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-history.c - undo and redo over whole formula values
 *
 * Every state is a whole formula, so undo cannot get an act's reverse wrong. Neighbouring states
 * share the lines that stay as and where they are, so most steps cost one line.
 */
#include "core/formula/fm-history.h"

#include "core/formula/fm-formula-private.h"

typedef struct {
  FmFormula *state; /* after the act */
  char *label;      /* NULL for the initial state */
  char *merge_key;
} Step;

struct _FmHistory {
  GPtrArray *steps; /* Step; never empty */
  guint current;
  gboolean run_open;
};

static void
step_free (gpointer data)
{
  Step *step = data;
  fm_formula_free (step->state);
  g_free (step->label);
  g_free (step->merge_key);
  g_free (step);
}

static Step *
step_at (const FmHistory *self, guint index)
{
  return g_ptr_array_index (self->steps, index);
}

static void
append_step (FmHistory *self, FmFormula *state, const char *label, const char *merge_key)
{
  Step *step = g_new0 (Step, 1);
  step->state = state;
  step->label = g_strdup (label);
  step->merge_key = g_strdup (merge_key);
  g_ptr_array_add (self->steps, step);
}

FmHistory *
fm_history_new (const FmFormula *initial)
{
  FmHistory *self = g_new0 (FmHistory, 1);
  self->steps = g_ptr_array_new_with_free_func (step_free);
  append_step (self, fm_formula_copy (initial), NULL, NULL);
  return self;
}

void
fm_history_free (FmHistory *self)
{
  g_ptr_array_unref (self->steps);
  g_free (self);
}

const FmFormula *
fm_history_current (const FmHistory *self)
{
  return step_at (self, self->current)->state;
}

static gboolean
continues_run (const FmHistory *self, const char *merge_key)
{
  return self->run_open && merge_key && self->current > 0 &&
         g_strcmp0 (step_at (self, self->current)->merge_key, merge_key) == 0;
}

void
fm_history_push (FmHistory *self, const FmFormula *next, const char *label, const char *merge_key)
{
  const FmFormula *now = fm_history_current (self);
  if (fm_formula_equal (now, next))
    return;
  FmFormula *state = fm_formula_copy_sharing (next, now);
  g_ptr_array_set_size (self->steps, (int)self->current + 1);
  if (continues_run (self, merge_key)) {
    Step *step = step_at (self, self->current);
    fm_formula_free (step->state);
    step->state = state;
    return;
  }
  append_step (self, state, label, merge_key);
  self->current++;
  self->run_open = TRUE;
}

void
fm_history_seal (FmHistory *self)
{
  self->run_open = FALSE;
}

gboolean
fm_history_can_undo (const FmHistory *self)
{
  return self->current > 0;
}

gboolean
fm_history_can_redo (const FmHistory *self)
{
  return self->current + 1 < self->steps->len;
}

const char *
fm_history_undo_label (const FmHistory *self)
{
  return step_at (self, self->current)->label;
}

const char *
fm_history_redo_label (const FmHistory *self)
{
  return fm_history_can_redo (self) ? step_at (self, self->current + 1)->label : NULL;
}

const FmFormula *
fm_history_undo (FmHistory *self)
{
  if (fm_history_can_undo (self))
    self->current--;
  fm_history_seal (self);
  return fm_history_current (self);
}

const FmFormula *
fm_history_redo (FmHistory *self)
{
  if (fm_history_can_redo (self))
    self->current++;
  fm_history_seal (self);
  return fm_history_current (self);
}
