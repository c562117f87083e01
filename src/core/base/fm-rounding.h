/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-rounding.h - numbers of a list that add up to its total as they are shown */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * Rounds @value to @decimals (0 to 6) so that what is shown adds up to the rounded sum: each down,
 * and the steps that are left to the largest remainders. None moves by a whole step or more. NaN
 * (not known) stays NaN and counts nowhere. @value, @shown: (array length=n), >= 0; may be the
 * same.
 */
void fm_round_to_sum (guint n, const double *value, int decimals, double *shown);

G_END_DECLS
