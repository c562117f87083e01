/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-kitchen-probe.h - listens to a probe at a pipe, a file or a serial port
 *
 * What it says is read as of fm-probe.h. A file is read from its end on, as it grows. A serial port
 * keeps the speed that the system has set for it.
 *
 * Signal: "heard" (double temp_c): a good line; NaN when a line was refused.
 */
#pragma once

#include <gio/gio.h>

G_BEGIN_DECLS

#define FM_TYPE_KITCHEN_PROBE (fm_kitchen_probe_get_type ())
G_DECLARE_FINAL_TYPE (FmKitchenProbe, fm_kitchen_probe, FM, KITCHEN_PROBE, GObject)

/** NULL + error when @path cannot be read. */
FmKitchenProbe *fm_kitchen_probe_new (const char *path, GError **error);
guint fm_kitchen_probe_n_good (FmKitchenProbe *self);
guint fm_kitchen_probe_n_refused (FmKitchenProbe *self);

G_END_DECLS
