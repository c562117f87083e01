/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-photo-pane.h - one photo as large as wanted, which scrolls
 *
 * Signals:
 *   "loaded" ()    the photo is there
 *   "resized" ()   the room for it is another one now
 *   "panned" ()    the user moved it
 */
#pragma once

#include <gtk/gtk.h>

#include "store/fm-experiments.h"

G_BEGIN_DECLS

#define FM_TYPE_PHOTO_PANE (fm_photo_pane_get_type ())
G_DECLARE_FINAL_TYPE (FmPhotoPane, fm_photo_pane, FM, PHOTO_PANE, GtkWidget)

/** @what: says which photo it is, for a screen reader. */
void
fm_photo_pane_load (FmPhotoPane *self, FmNotebook *notebook, gint64 photo_id, const char *what);
/** @message: (nullable) */
void fm_photo_pane_show_message (FmPhotoPane *self, const char *message);
/** Pixels of the screen for a pixel of the photo; 0 = as large as the room is. */
void fm_photo_pane_set_zoom (FmPhotoPane *self, double zoom);
/** The zoom at which all of the photo is in view; NaN while there is none. */
double fm_photo_pane_get_fit (FmPhotoPane *self);
/** The place of the photo that is in the middle, 0 to 1 from its left and from its top. */
void fm_photo_pane_get_centre (FmPhotoPane *self, double *x, double *y);
void fm_photo_pane_set_centre (FmPhotoPane *self, double x, double y);
/** Moves what is seen, in tenths of the room. */
void fm_photo_pane_pan (FmPhotoPane *self, int right, int down);

G_END_DECLS
