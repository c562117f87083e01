/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-cancel-stop.h - how the core, which knows no GCancellable, is told to stop by one */
#pragma once

#include <gio/gio.h>

#include "core/base/fm-stop.h"

G_BEGIN_DECLS

/** @cancellable: (nullable): never stops; has to live as long as the result is used. */
FmStop fm_cancel_stop (GCancellable *cancellable);

G_END_DECLS
