/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-asked.h - what a planned tasting asks: tasks, attributes, the two of a pair or
 * triangle
 */
#pragma once

#include <gtk/gtk.h>

#include "app/session/fm-tasting-document.h"

G_BEGIN_DECLS

#define FM_TYPE_TASTING_ASKED (fm_tasting_asked_get_type ())
G_DECLARE_FINAL_TYPE (FmTastingAsked, fm_tasting_asked, FM, TASTING_ASKED, GtkWidget)

/** @document: (nullable) of a tasting that is still planned */
void fm_tasting_asked_set_document (FmTastingAsked *self, FmTastingDocument *document);
/** Shows the tasting as it is now: call when it changed elsewhere. */
void fm_tasting_asked_refresh (FmTastingAsked *self);

G_END_DECLS
