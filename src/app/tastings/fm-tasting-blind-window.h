/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-blind-window.h - the whole screen for a taster at the desk: codes only
 *
 * All other windows are hidden while it is there, so that neither eye nor screen reader meets a
 * name of a sample once tasters are at the desk. They come back when blind mode is ended.
 */
#pragma once

#include <gtk/gtk.h>

#include "app/session/fm-tasting-document.h"

G_BEGIN_DECLS

#define FM_TYPE_TASTING_BLIND_WINDOW (fm_tasting_blind_window_get_type ())
G_DECLARE_FINAL_TYPE (
    FmTastingBlindWindow, fm_tasting_blind_window, FM, TASTING_BLIND_WINDOW, GtkWindow)

/** Hides what is on the screen and takes it over. First it tells whoever leads the tasting what is
 * on record of the samples, by name and without codes. @document: of a sealed tasting; @cautions:
 * of its samples. */
void fm_tasting_blind_window_begin (FmTastingDocument *document, const GPtrArray *cautions);

G_END_DECLS
