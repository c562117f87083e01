/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-session-draft.h - one blend's draft being edited; its formula is the state of its history */
#pragma once

#include "app/session/fm-documents.h"
#include "core/formula/fm-formula.h"
#include "store/fm-versions.h"

G_BEGIN_DECLS

#define FM_TYPE_SESSION_DRAFT (fm_session_draft_get_type ())
G_DECLARE_FINAL_TYPE (FmSessionDraft, fm_session_draft, FM, SESSION_DRAFT, FmStoredDocument)

struct _FmSessionDraft {
  FmStoredDocument parent_instance;

  char *blend_name;
  gint64 parent_id;          /* version it started from; 0 = from nothing */
  FmFormula *parent_formula; /* (nullable) that version's formula */
  gboolean told_changes;     /* what the lists were last told of it */
};

/** A draft as the notebook holds it. */
typedef struct {
  FmFormula *formula;
  gint64 parent_id;          /* version it started from; 0 = from nothing */
  FmFormula *parent_formula; /* (nullable) */
  GError *damage;            /* (nullable) why the draft could not be read: it starts anew */
} FmSessionDraftContent;

/** In a thread. Returns: (transfer full), NULL on error. */
FmSessionDraftContent *
fm_session_draft_read (FmNotebook *notebook, gint64 blend_id, GError **error);
void fm_session_draft_content_free (FmSessionDraftContent *self);

/** The draft of @blend_id: as it is being edited, else as it was read. Returns: (transfer full). */
FmSessionDraft *fm_session_draft_open (FmDocuments *documents,
                                       FmNotebook *notebook,
                                       gint64 blend_id,
                                       const FmSessionDraftContent *content);
void fm_session_draft_set_blend_name (FmSessionDraft *self, const char *name);
/** The draft continues from @version_id, whose formula is @formula. */
void
fm_session_draft_set_parent (FmSessionDraft *self, gint64 version_id, const FmFormula *formula);
/** (transfer none) */
const FmFormula *fm_session_draft_get_formula (const FmSessionDraft *self);
/** TRUE when it differs from its parent, or has lines and no parent. */
gboolean fm_session_draft_has_changes (const FmSessionDraft *self);

G_END_DECLS
