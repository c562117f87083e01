/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-newer.h - calls whose newer form the oldest toolkit that we build on does not have */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/** The colour in which @widget writes its text. */
void fm_newer_get_colour (GtkWidget *widget, GdkRGBA *colour);

G_END_DECLS
