/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-seal.h - head of an arranged tasting: how far it is, what happened, the way to open
 *
 * Knows how many sheets are in and what was done, and nothing of who is who.
 */
#pragma once

#include <gtk/gtk.h>

#include "app/session/fm-tasting-document.h"

G_BEGIN_DECLS

#define FM_TYPE_TASTING_SEAL (fm_tasting_seal_get_type ())
G_DECLARE_FINAL_TYPE (FmTastingSeal, fm_tasting_seal, FM, TASTING_SEAL, GtkWidget)

/** @document: (nullable) of a tasting whose cups are arranged */
void fm_tasting_seal_set_document (FmTastingSeal *self, FmTastingDocument *document);

G_END_DECLS
