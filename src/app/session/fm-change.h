/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-change.h - what changed in a session: the argument of its "changed" signal */
#pragma once

#include <glib-object.h>

G_BEGIN_DECLS

typedef enum {
  FM_CHANGE_NOTEBOOK, /* another notebook, or none: everything is new; shown, formula and history
                         follow */
  FM_CHANGE_BLEND,    /* a blend was added, renamed or removed */
  FM_CHANGE_DRAFT,    /* the draft of a blend starts or stops to differ from its version, or
                         starts from another one; id of the blend */
  FM_CHANGE_VERSION,  /* a version was saved */
  FM_CHANGE_SHOWN,    /* another blend, version or the draft is shown; id of the blend */
  FM_CHANGE_FORMULA,  /* the shown formula or its analysis (each keystroke); id of the blend */
  FM_CHANGE_HISTORY,  /* what can be undone and redone; id of the blend */
  FM_CHANGE_MADE,     /* another experiment, or none, is what the window tells of beside the pages;
                         its id */
  FM_CHANGE_EXPERIMENT, /* an experiment was made, saved or removed */
  FM_CHANGE_PHOTO,      /* a photo was added, changed or removed; id of its experiment */
  FM_CHANGE_TASTING,    /* a tasting was made, saved, opened or removed */
  FM_CHANGE_MAP,        /* a map was made, changed or removed */
  FM_CHANGE_SETTING,    /* a unit, the currency or own D and z of the notebook */
  FM_CHANGE_PLACE,      /* the file of the notebook has left its name */
} FmChangeKind;

#define FM_CHANGE_N_KINDS (FM_CHANGE_PLACE + 1)

typedef struct {
  FmChangeKind kind;
  gint64 id; /* of the row that @kind names; 0 = many, or none */
} FmChange;

#define FM_TYPE_CHANGE (fm_change_get_type ())
GType fm_change_get_type (void);
FmChange *fm_change_copy (const FmChange *change);
void fm_change_free (FmChange *change);
/** The detail of the signal: "notebook", "blend" ... */
const char *fm_change_kind_name (FmChangeKind kind);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmChange, fm_change_free)

G_END_DECLS
