/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-kitchen-remark-pane.h - where a remark is typed at the pan
 *
 * Signal: "entered" (char *words): the cook is done; words may be empty.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define FM_TYPE_KITCHEN_REMARK_PANE (fm_kitchen_remark_pane_get_type ())
G_DECLARE_FINAL_TYPE (
    FmKitchenRemarkPane, fm_kitchen_remark_pane, FM, KITCHEN_REMARK_PANE, GtkWidget)

G_END_DECLS
