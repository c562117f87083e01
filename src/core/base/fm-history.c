/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-history.c - undo and redo over whole values
 *
 * Every state is a whole value, so undo cannot get an act's reverse wrong. Neighbouring states may
 * share what stays as it is, as those of a formula share lines.
 */
#include "core/base/fm-history.h"

typedef struct {
  gpointer state; /* after the act */
  char *label;    /* NULL for the initial state */
  char *merge_key;
} Step;

struct _FmHistory {
  const FmHistoryKind *kind;
  GPtrArray *steps; /* Step; never empty */
  guint current;
  gboolean run_open;
};

/* The states are freed apart: a step does not know their kind. */
static void
step_free (gpointer data)
{
  Step *step = data;

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
cut_to (FmHistory *self, guint n_steps)
{
  for (guint i = n_steps; i < self->steps->len; i++)
    self->kind->free (step_at (self, i)->state);
  g_ptr_array_set_size (self->steps, (int)n_steps);
}

static void
append_step (FmHistory *self, gpointer state, const char *label, const char *merge_key)
{
  Step *step = g_new0 (Step, 1);
  step->state = state;
  step->label = g_strdup (label);
  step->merge_key = g_strdup (merge_key);
  g_ptr_array_add (self->steps, step);
}

FmHistory *
fm_history_new (const FmHistoryKind *kind, gconstpointer initial)
{
  FmHistory *self = g_new0 (FmHistory, 1);
  self->kind = kind;
  self->steps = g_ptr_array_new_with_free_func (step_free);
  append_step (self, kind->copy (initial, NULL), NULL, NULL);
  return self;
}

void
fm_history_free (FmHistory *self)
{
  cut_to (self, 0);
  g_ptr_array_unref (self->steps);
  g_free (self);
}

gconstpointer
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

/* What was typed back to where it began is no step. */
static gboolean
ends_where_it_began (const FmHistory *self)
{
  return self->kind->equal (step_at (self, self->current)->state,
                            step_at (self, self->current - 1)->state);
}

static void
continue_run (FmHistory *self, gpointer state)
{
  Step *step = step_at (self, self->current);

  self->kind->free (step->state);
  step->state = state;
  if (!ends_where_it_began (self))
    return;
  cut_to (self, self->current);
  self->current--;
  fm_history_seal (self);
}

void
fm_history_push (FmHistory *self, gconstpointer next, const char *label, const char *merge_key)
{
  gconstpointer now = fm_history_current (self);
  gpointer state;

  if (self->kind->equal (now, next))
    return;
  state = self->kind->copy (next, now);
  cut_to (self, self->current + 1);
  if (continues_run (self, merge_key)) {
    continue_run (self, state);
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

gconstpointer
fm_history_undo (FmHistory *self)
{
  if (fm_history_can_undo (self))
    self->current--;
  fm_history_seal (self);
  return fm_history_current (self);
}

gconstpointer
fm_history_redo (FmHistory *self)
{
  if (fm_history_can_redo (self))
    self->current++;
  fm_history_seal (self);
  return fm_history_current (self);
}
