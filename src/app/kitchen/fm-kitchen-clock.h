/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-kitchen-clock.h - now, by every clock of this machine */
#pragma once

#include "core/kitchen/fm-kitchen-event.h"

G_BEGIN_DECLS

void fm_kitchen_clock_now (FmKitchenMoment *now);
/** "1:05", "1:02:05" from an hour on. (transfer full) */
char *fm_kitchen_clock_text (double s);

G_END_DECLS
