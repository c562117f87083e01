/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-one-stop.h - a list that Tab enters once and leaves again; the arrows go through its rows
 *
 * Its child is a list, or what scrolls one. Tab goes through what a row holds besides, then out of
 * the list; it comes back to the row that was left.
 *
 * Property "child" (GtkWidget).
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define FM_TYPE_ONE_STOP (fm_one_stop_get_type ())
G_DECLARE_FINAL_TYPE (FmOneStop, fm_one_stop, FM, ONE_STOP, GtkWidget)

GtkWidget *fm_one_stop_new (GtkWidget *child);

G_END_DECLS
