/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-strange.h - measured values that physics objects to: said, never refused
 *
 * Each returns a translated sentence (transfer none), NULL when nothing is strange or a value is
 * not known (NaN).
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/** Cooking drives water and fat out of ground meat: it does not gain mass. */
const char *fm_strange_cooked (double raw_g, double cooked_g);
/** A core takes its heat from the surface and stays below it. */
const char *fm_strange_core (double core_c, double surface_c);
/** Ten times the planned mass, or a tenth: most likely a digit too many or too few. Common
 * practice, no source. */
const char *fm_strange_patty (double mass_g, double planned_g);

G_END_DECLS
