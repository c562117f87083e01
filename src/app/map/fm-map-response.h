/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-response.h - what a map can show: the numbers that are measured of a blend */
#pragma once

#include "store/fm-map-data.h"

G_BEGIN_DECLS

/** Translated: "liking", "cook loss" ... */
const char *fm_map_response_name (FmMapResponse response);
/** "%" ...; "" where there is none; cost in the person's currency. Returns: (transfer full). */
char *fm_map_response_unit (FmMapResponse response);
int fm_map_response_decimals (FmMapResponse response);
/** What can be measured at all; @high may be INFINITY, both 0 = no ends. */
void fm_map_response_ends (FmMapResponse response, double *low, double *high);

G_END_DECLS
