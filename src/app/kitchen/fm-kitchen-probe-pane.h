/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-kitchen-probe-pane.h - which probe is listened to, and which portion it is in
 *
 * Signal: "heard" (int portion, double temp_c): a good line, at most one a second.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define FM_TYPE_KITCHEN_PROBE_PANE (fm_kitchen_probe_pane_get_type ())
G_DECLARE_FINAL_TYPE (FmKitchenProbePane, fm_kitchen_probe_pane, FM, KITCHEN_PROBE_PANE, GtkWidget)

/** The portion that the probe goes into when it is listened to next. */
void fm_kitchen_probe_pane_set_portion (FmKitchenProbePane *self, int portion);

G_END_DECLS
