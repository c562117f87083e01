/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-cover.h - one window alone on the screen while others must not be seen or heard */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/** Hides every shown window but @alone. Returns: (transfer full): GtkWindow, for the end. */
GPtrArray *fm_tasting_cover_begin (GtkWindow *alone);
/** Brings the windows of @hidden back and empties it. */
void fm_tasting_cover_end (GPtrArray *hidden);

G_END_DECLS
