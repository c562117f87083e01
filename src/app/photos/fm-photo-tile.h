/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-photo-tile.h - a photo's thumbnail with its caption and view
 *
 * Signals: "open" () the thumbnail was pressed; "export" (); "remove" ().
 */
#pragma once

#include <gtk/gtk.h>

#include "app/session/fm-session.h"

G_BEGIN_DECLS

#define FM_TYPE_PHOTO_TILE (fm_photo_tile_get_type ())
G_DECLARE_FINAL_TYPE (FmPhotoTile, fm_photo_tile, FM, PHOTO_TILE, GtkWidget)

/** @info: belongs to @photos, which is kept. @number: counts from 1, for accessible names. */
GtkWidget *
fm_photo_tile_new (FmSession *session, GPtrArray *photos, FmPhotoInfo *info, guint number);
FmPhotoInfo *fm_photo_tile_get_info (FmPhotoTile *self);
/** @texture: (nullable): NULL says that the thumbnail cannot be shown. */
void fm_photo_tile_set_thumbnail (FmPhotoTile *self, GdkTexture *texture);

G_END_DECLS
