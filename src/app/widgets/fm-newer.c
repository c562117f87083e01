/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-newer.c - calls whose newer form the oldest toolkit that we build on does not have */
#include "app/widgets/fm-newer.h"

void
fm_newer_get_colour (GtkWidget *widget, GdkRGBA *colour)
{
#if GTK_CHECK_VERSION(4, 10, 0)
  gtk_widget_get_color (widget, colour);
#else
  gtk_style_context_get_color (gtk_widget_get_style_context (widget), colour);
#endif
}
