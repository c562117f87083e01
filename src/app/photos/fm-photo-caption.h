/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-photo-caption.h - caption and view of a photo being edited, saved as they change
 *
 * Signals: as of FmStoredDocument.
 */
#pragma once

#include "app/session/fm-session.h"

G_BEGIN_DECLS

#define FM_TYPE_PHOTO_CAPTION (fm_photo_caption_get_type ())
G_DECLARE_FINAL_TYPE (FmPhotoCaption, fm_photo_caption, FM, PHOTO_CAPTION, FmStoredDocument)

/** As of fm_documents_open(): what was typed and is not saved counts before what @info says. */
FmPhotoCaption *fm_photo_caption_open (FmSession *session, const FmPhotoInfo *info);
/** Never NULL. (transfer none) */
const char *fm_photo_caption_get_text (FmPhotoCaption *self);
void fm_photo_caption_set_text (FmPhotoCaption *self, const char *text);
FmPhotoView fm_photo_caption_get_view (FmPhotoCaption *self);
void fm_photo_caption_set_view (FmPhotoCaption *self, FmPhotoView view);

G_END_DECLS
