/* fm-session-draft.h - one blend's draft in memory, with its undo history */
#pragma once

#include "core/formula/fm-history.h"
#include "store/fm-versions.h"

G_BEGIN_DECLS

typedef struct {
  gint64 blend_id;
  gint64 parent_id;          /* version it started from; 0 = from nothing */
  FmFormula *parent_formula; /* (nullable) that version's formula */
  FmHistory *history;
  gboolean dirty;        /* holds edits that the writer has not been given */
  gboolean told_changes; /* what the lists were last told of it */
  gboolean failed;       /* the last write failed; it is tried again */
} FmSessionDraft;

/** Reads the draft of @blend_id. NULL on error. */
FmSessionDraft *fm_session_draft_load (FmNotebook *notebook, gint64 blend_id, GError **error);
void fm_session_draft_free (FmSessionDraft *self);
/** The draft continues from @version_id, whose formula is @formula. */
void
fm_session_draft_set_parent (FmSessionDraft *self, gint64 version_id, const FmFormula *formula);
/** TRUE when it differs from its parent, or has lines and no parent. */
gboolean fm_session_draft_has_changes (const FmSessionDraft *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmSessionDraft, fm_session_draft_free)

G_END_DECLS
