/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-label-stated.h - entries for the figures that the rules ask for and no composition tells */
#pragma once

#include <adwaita.h>

#include "core/label/fm-label-choice.h"

G_BEGIN_DECLS

/** Entries in a group of a window; what is typed goes into the choice. */
typedef struct _FmLabelStatedRows FmLabelStatedRows;

/** @group, @choice and @owner outlive it. @changed (owner) is called after each change. */
FmLabelStatedRows *fm_label_stated_rows_new (AdwPreferencesGroup *group,
                                             FmLabelChoice *choice,
                                             gpointer owner,
                                             void (*changed) (gpointer owner));
/** An entry for each figure that the rules of the choice ask for and @formula does not tell. */
void fm_label_stated_rows_show (FmLabelStatedRows *self,
                                const FmFormula *formula,
                                const FmAnalysis *analysis);
/** NULL when all texts are good, else why one is not. (transfer none) */
const char *fm_label_stated_rows_bad_text (FmLabelStatedRows *self);
/** The entries stay with their group, which is to go. */
void fm_label_stated_rows_free (FmLabelStatedRows *self);

G_END_DECLS
