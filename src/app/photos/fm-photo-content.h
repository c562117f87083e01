/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-photo-content.h - a photo for another program: its bytes, or a file that is made when it is
 * asked for
 */
#pragma once

#include <gdk/gdk.h>

#include "store/fm-experiments.h"

G_BEGIN_DECLS

#define FM_TYPE_PHOTO_CONTENT (fm_photo_content_get_type ())
G_DECLARE_FINAL_TYPE (FmPhotoContent, fm_photo_content, FM, PHOTO_CONTENT, GdkContentProvider)

GdkContentProvider *fm_photo_content_new (FmNotebook *notebook, const FmPhotoInfo *info);
/** Removes all files that were made. Another program may read one until this one ends. */
void fm_photo_content_clean_up (void);

G_END_DECLS
