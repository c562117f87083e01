/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-photo-grid.h - the photos of an experiment: add, caption, view, export, remove
 *
 * Photos come by file chooser, drag and drop (files or a picture) and paste. Signal:
 *   "photos-changed" ()  photos were added or removed
 */
#pragma once

#include <gtk/gtk.h>

#include "app/session/fm-session.h"

G_BEGIN_DECLS

#define FM_TYPE_PHOTO_GRID (fm_photo_grid_get_type ())
G_DECLARE_FINAL_TYPE (FmPhotoGrid, fm_photo_grid, FM, PHOTO_GRID, GtkWidget)

/** @session: (nullable): none while no experiment is shown. */
void fm_photo_grid_set_experiment (FmPhotoGrid *self, FmSession *session, gint64 experiment_id);
/** Asks for photos to add, as its button does. */
void fm_photo_grid_add (FmPhotoGrid *self);
/** Adds what the clipboard holds: files or a picture. */
void fm_photo_grid_paste (FmPhotoGrid *self);

G_END_DECLS
