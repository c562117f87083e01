/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-photo-export.h - the original file of a photo, saved under a name of the user's choice */
#pragma once

#include <gtk/gtk.h>

#include "store/fm-experiments.h"

G_BEGIN_DECLS

/** Called in the main thread when the export has failed; @owner still exists. */
typedef void (*FmPhotoExportFailed) (GtkWidget *owner, const GError *error);

/** Asks for a file name, then writes the bytes as they were imported, in a thread. */
void fm_photo_export (GtkWidget *owner,
                      FmNotebook *notebook,
                      const FmPhotoInfo *info,
                      FmPhotoExportFailed failed);

G_END_DECLS
