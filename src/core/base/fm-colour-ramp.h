/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-colour-ramp.h - a ramp of colours whose steps look alike
 *
 * A straight line through CIELAB: equal steps of the value are equal colour differences, lightness
 * among them, so that the ramp also reads without hue.
 * Sources: CIE 15:2004, Colorimetry, section 8.2.1 (L*a*b* and the difference of two colours);
 * IEC 61966-2-1:1999 (sRGB: matrix, transfer function, white D65).
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/** sRGB, 0 .. 1. */
typedef struct {
  double red;
  double green;
  double blue;
} FmColour;

/** CIELAB under D65: l 0 .. 100. */
typedef struct {
  double l;
  double a;
  double b;
} FmLab;

/** What no screen can show is moved to the nearest value of each channel. */
FmColour fm_colour_from_lab (const FmLab *lab);
FmLab fm_colour_to_lab (const FmColour *colour);
/** The colour at @part of the way, 0 .. 1. */
FmColour fm_colour_ramp (const FmLab *from, const FmLab *to, double part);

G_END_DECLS
