/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-demo-photo.h - paints the pictures of the demo notebook (inside the store only) */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum {
  FM_DEMO_PHOTO_RAW,      /* a raw patty on a board, from above */
  FM_DEMO_PHOTO_SEARED,   /* a seared patty in a pan, from above */
  FM_DEMO_PHOTO_CUT_FACE, /* a cooked patty cut through, from the side */
} FmDemoPhotoKind;

/**
 * What to paint; the same values give the same pixels.
 *
 * @seed: chooses grain and outline
 * @fat_pct: 0-50: share of pale flecks
 * @peak_core_c: core temperature that sets browning and the colour of a cut face
 * @portrait: a picture as held upright: stored lying, with EXIF orientation 6
 */
typedef struct {
  FmDemoPhotoKind kind;
  guint32 seed;
  double fat_pct;
  double peak_core_c;
  gboolean portrait;
  gint64 taken_at; /* by a clock that shows UTC; 0 = the camera knew no time */
} FmDemoPhoto;

/** JPEG bytes. */
GBytes *fm_demo_photo_paint (const FmDemoPhoto *photo, GError **error);
/** The same JPEG with an APP1 segment that states @orientation (EXIF 1-8) and @taken_at, as above.
 */
GBytes *fm_demo_photo_tag (GBytes *jpeg, int orientation, gint64 taken_at);

G_END_DECLS
