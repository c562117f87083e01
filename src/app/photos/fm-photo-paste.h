/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-photo-paste.h - Ctrl+V anywhere on a page adds the photo of the clipboard
 *
 * In a text field text comes first: there a photo is taken where the clipboard holds no text.
 */
#pragma once

#include "app/photos/fm-photo-grid.h"

G_BEGIN_DECLS

/** @page: around @grid. */
void fm_photo_paste_install (GtkWidget *page, FmPhotoGrid *grid);

G_END_DECLS
