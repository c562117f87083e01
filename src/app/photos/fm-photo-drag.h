/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-photo-drag.h - a photo is dragged out of the window as a file */
#pragma once

#include <gtk/gtk.h>

#include "store/fm-experiments.h"

G_BEGIN_DECLS

/** @widget: what is dragged. @info: lives as long as @widget. @picture: what it looks like. */
void fm_photo_drag_install (GtkWidget *widget,
                            FmNotebook *notebook,
                            const FmPhotoInfo *info,
                            GtkPicture *picture);

G_END_DECLS
