/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-photo-viewer.h - a window with a photo of an experiment, or two side by side
 *
 * Two photos have the same scale and are moved together.
 */
#pragma once

#include <adwaita.h>

#include "store/fm-experiments.h"

G_BEGIN_DECLS

#define FM_TYPE_PHOTO_VIEWER (fm_photo_viewer_get_type ())
G_DECLARE_FINAL_TYPE (FmPhotoViewer, fm_photo_viewer, FM, PHOTO_VIEWER, AdwWindow)

/** @photos: (element-type FmPhotoInfo): kept; @index: the one to show first. */
FmPhotoViewer *
fm_photo_viewer_new (GtkWindow *parent, FmNotebook *notebook, GPtrArray *photos, guint index);

G_END_DECLS
