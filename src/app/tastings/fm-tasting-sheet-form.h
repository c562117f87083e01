/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-sheet-form.h - one taster's sheet to be typed: marks by the code on the cup
 *
 * A grid as the marks lie on the paper: the samples down in this taster's serving order, the
 * questions across. Enter and Down go on down a question and then to the top of the next, Up goes
 * back, Tab goes across. Knows codes only: no sample has a name here. Each change goes into the
 * document at once.
 */
#pragma once

#include <gtk/gtk.h>

#include "app/session/fm-tasting-document.h"

G_BEGIN_DECLS

#define FM_TYPE_TASTING_SHEET_FORM (fm_tasting_sheet_form_get_type ())
G_DECLARE_FINAL_TYPE (FmTastingSheetForm, fm_tasting_sheet_form, FM, TASTING_SHEET_FORM, GtkWidget)

/** @document: (nullable). What was typed for the taster before is in its document already. */
void
fm_tasting_sheet_form_show (FmTastingSheetForm *self, FmTastingDocument *document, guint taster);
/** The sentence about a field whose text is no mark, NULL when there is none. (transfer full) */
char *fm_tasting_sheet_form_get_trouble (FmTastingSheetForm *self);
/** Puts the keyboard into the first field. */
void fm_tasting_sheet_form_focus (FmTastingSheetForm *self);

G_END_DECLS
