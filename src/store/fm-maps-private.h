/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-maps-private.h - what the fm-maps-*.c files share */
#pragma once

#include "store/notebook/fm-db.h"
#include "store/fm-maps.h"

G_BEGIN_DECLS

gboolean fm_maps_set_not_found (GError **error);
/** Whether all parts fit each other: counts, shares, no ingredient twice. */
gboolean fm_maps_check_parts (const FmMap *map, GError **error);

G_END_DECLS
