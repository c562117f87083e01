/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-session-base.c - what the other files of a session stand on: its state and what it tells */
#include "app/session/fm-session-private.h"

gint64
fm_session_get_version_id (FmSession *self)
{
  return self->version != NULL ? self->version->id : 0;
}

const FmFormula *
fm_session_get_formula (FmSession *self)
{
  if (self->version_formula != NULL)
    return self->version_formula;
  return self->draft != NULL ? fm_session_draft_get_formula (self->draft) : NULL;
}

gboolean
fm_session_is_writable (FmSession *self)
{
  return self->notebook != NULL && !fm_notebook_is_read_only (self->notebook);
}

void
fm_session_seal (FmSession *self)
{
  if (self->draft != NULL)
    fm_stored_document_seal (FM_STORED_DOCUMENT (self->draft));
}

void
fm_session_emit_changed (FmSession *self, FmChangeKind kind, gint64 id)
{
  const FmChange change = { .kind = kind, .id = id };

  g_signal_emit (self, g_signal_lookup ("changed", G_OBJECT_TYPE (self)),
                 g_quark_from_static_string (fm_change_kind_name (kind)), &change);
}

void
fm_session_message (FmSession *self, const char *text)
{
  g_signal_emit_by_name (self, "message", text);
}

void
fm_session_failure (FmSession *self, const GError *error)
{
  g_signal_emit_by_name (self, "failure", error->message);
}

void
fm_session_recompute (FmSession *self)
{
  const FmFormula *formula = fm_session_get_formula (self);

  g_clear_pointer (&self->analysis, fm_analysis_free);
  if (formula != NULL)
    self->analysis = fm_analysis_new (formula);
  fm_session_emit_changed (self, FM_CHANGE_FORMULA, self->blend_id);
}

void
fm_session_emit_shown (FmSession *self)
{
  fm_session_emit_changed (self, FM_CHANGE_SHOWN, self->blend_id);
  fm_session_recompute (self);
  fm_session_emit_changed (self, FM_CHANGE_HISTORY, self->blend_id);
}

const FmCompareItem *
fm_session_get_made (FmSession *self)
{
  g_return_val_if_fail (FM_IS_SESSION (self), NULL);
  return self->made;
}

void
fm_session_set_made (FmSession *self, FmCompareItem *made)
{
  const gboolean is_none = made == NULL && self->made == NULL;

  g_return_if_fail (FM_IS_SESSION (self));
  g_clear_pointer (&self->made, fm_compare_item_free);
  self->made = made;
  if (!is_none)
    fm_session_emit_changed (self, FM_CHANGE_MADE, made != NULL ? made->id : 0);
}
