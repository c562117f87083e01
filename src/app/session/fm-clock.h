/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-clock.h - the time of day, which the window hands to the core */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/** Unix seconds. */
static inline gint64
fm_clock_now_s (void)
{
  return g_get_real_time () / G_USEC_PER_SEC;
}

G_END_DECLS
