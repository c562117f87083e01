/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-photo-view.h - what side of a patty a photo shows */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/** One slot a photo. A blend is judged by these four. Common practice, no source. */
typedef enum {
  FM_PHOTO_VIEW_NONE,
  FM_PHOTO_VIEW_RAW,           /* formed, not yet cooked */
  FM_PHOTO_VIEW_CRUST,         /* the browned side, from above */
  FM_PHOTO_VIEW_CROSS_SECTION, /* cut through, from the side */
  FM_PHOTO_VIEW_CRUMB,         /* the texture of the cut, from near */
} FmPhotoView;

#define FM_N_PHOTO_VIEWS 5

/** The word by which it is stored and exported; NULL for none. */
const char *fm_photo_view_key (FmPhotoView view);
/** @key: (nullable). A word that is not known counts as none. */
FmPhotoView fm_photo_view_of_key (const char *key);
/** As it is shown. */
const char *fm_photo_view_name (FmPhotoView view);

G_END_DECLS
