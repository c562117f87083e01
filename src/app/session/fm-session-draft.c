/* fm-session-draft.c - one blend's draft in memory, with its undo history */
#include "app/session/fm-session-draft.h"

FmSessionDraft *
fm_session_draft_load (FmNotebook *notebook, gint64 blend_id, GError **error)
{
  g_autoptr (FmSessionDraft) self = g_new0 (FmSessionDraft, 1);
  g_autoptr (FmFormula) formula = NULL;

  self->blend_id = blend_id;
  formula = fm_draft_load (notebook, blend_id, &self->parent_id, error);
  if (formula == NULL)
    return NULL;
  self->history = fm_history_new (formula);
  /* Without the parent the draft can still be worked on; it only counts as changed. */
  if (self->parent_id != 0)
    self->parent_formula = fm_versions_load (notebook, self->parent_id, NULL);
  self->told_changes = fm_session_draft_has_changes (self);
  return g_steal_pointer (&self);
}

void
fm_session_draft_free (FmSessionDraft *self)
{
  g_clear_pointer (&self->history, fm_history_free);
  g_clear_pointer (&self->parent_formula, fm_formula_free);
  g_free (self);
}

void
fm_session_draft_set_parent (FmSessionDraft *self, gint64 version_id, const FmFormula *formula)
{
  self->parent_id = version_id;
  g_clear_pointer (&self->parent_formula, fm_formula_free);
  self->parent_formula = fm_formula_copy (formula);
}

gboolean
fm_session_draft_has_changes (const FmSessionDraft *self)
{
  const FmFormula *current = fm_history_current (self->history);

  if (self->parent_formula != NULL)
    return !fm_formula_equal (current, self->parent_formula);
  return self->parent_id != 0 || fm_formula_n_lines (current) > 0;
}
