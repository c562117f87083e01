/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-exif.h - when a photo was taken, as its camera wrote it (inside the store only)
 *
 * Source: Exif 2.3 (CIPA DC-008), 4.6.5: DateTimeOriginal, "YYYY:MM:DD HH:MM:SS".
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * fm_exif_taken:
 * @bytes: what the camera says: a TIFF, with or without the mark "Exif" ahead of it
 *
 * Returns: (transfer full) (nullable): "YYYY-MM-DD HH:MM:SS" by the camera's own clock, whose zone
 * nobody knows; NULL when it says nothing, or no day that exists
 */
char *fm_exif_taken (const guint8 *bytes, gsize size);

G_END_DECLS
