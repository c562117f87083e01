/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-photo-text.h - what is said of a photo, in words */
#pragma once

#include "store/fm-experiments.h"

G_BEGIN_DECLS

/** Its view, its caption and when it was taken, as far as they are known. (transfer full); empty
 * when nothing is. */
char *fm_photo_text_words (const FmPhotoInfo *info);
/** "1,200 × 900 pixels, 210 kB". (transfer full) */
char *fm_photo_text_size (const FmPhotoInfo *info);
/** Which photo of a blend: version, experiment, view and caption. (transfer full) */
char *fm_photo_text_origin (const FmPhotoInfo *info);
/** What a file of it is called: "photo-7.jpg". (transfer full) */
char *fm_photo_text_file_name (const FmPhotoInfo *info);
/**
 * fm_photo_text_find_beside:
 * @photos: (element-type FmPhotoInfo): of a blend, the experiment of @shown first
 *
 * Returns: the place of the photo that is worth to be laid beside @shown: the same view of another
 * experiment, else another photo; 0 when there is no other
 */
guint fm_photo_text_find_beside (GPtrArray *photos, const FmPhotoInfo *shown);

G_END_DECLS
