/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-colour-ramp.c - a ramp of colours whose steps look alike */
#include "core/base/fm-colour-ramp.h"

#include <math.h>

/* CIE 15:2004: where the cube root gives way to a straight line. */
#define EPSILON (216.0 / 24389.0)
#define KAPPA (24389.0 / 27.0)

/* IEC 61966-2-1:1999: white of sRGB, and its matrices. */
static const double white[3] = { 0.9505, 1.0, 1.0890 };
static const double to_xyz[3][3] = {
  { 0.4124, 0.3576, 0.1805 },
  { 0.2126, 0.7152, 0.0722 },
  { 0.0193, 0.1192, 0.9505 },
};
static const double from_xyz[3][3] = {
  { 3.2406, -1.5372, -0.4986 },
  { -0.9689, 1.8758, 0.0415 },
  { 0.0557, -0.2040, 1.0570 },
};

static double
multiply (const double row[3], const double v[3])
{
  return row[0] * v[0] + row[1] * v[1] + row[2] * v[2];
}

static double
encode (double linear)
{
  const double value = CLAMP (linear, 0.0, 1.0);

  return value <= 0.0031308 ? 12.92 * value : 1.055 * pow (value, 1 / 2.4) - 0.055;
}

static double
decode (double value)
{
  return value <= 0.04045 ? value / 12.92 : pow ((value + 0.055) / 1.055, 2.4);
}

static double
lab_of_ratio (double ratio)
{
  return ratio > EPSILON ? cbrt (ratio) : (KAPPA * ratio + 16) / 116;
}

static double
ratio_of_lab (double value)
{
  const double cube = value * value * value;

  return cube > EPSILON ? cube : (116 * value - 16) / KAPPA;
}

FmColour
fm_colour_from_lab (const FmLab *lab)
{
  const double y = (lab->l + 16) / 116;
  const double xyz[3] = { white[0] * ratio_of_lab (y + lab->a / 500), white[1] * ratio_of_lab (y),
                          white[2] * ratio_of_lab (y - lab->b / 200) };

  return (FmColour){ encode (multiply (from_xyz[0], xyz)), encode (multiply (from_xyz[1], xyz)),
                     encode (multiply (from_xyz[2], xyz)) };
}

FmLab
fm_colour_to_lab (const FmColour *colour)
{
  const double rgb[3] = { decode (colour->red), decode (colour->green), decode (colour->blue) };
  const double x = lab_of_ratio (multiply (to_xyz[0], rgb) / white[0]);
  const double y = lab_of_ratio (multiply (to_xyz[1], rgb) / white[1]);
  const double z = lab_of_ratio (multiply (to_xyz[2], rgb) / white[2]);

  return (FmLab){ 116 * y - 16, 500 * (x - y), 200 * (y - z) };
}

FmColour
fm_colour_ramp (const FmLab *from, const FmLab *to, double part)
{
  const double p = CLAMP (part, 0.0, 1.0);
  const FmLab lab = { from->l + p * (to->l - from->l), from->a + p * (to->a - from->a),
                      from->b + p * (to->b - from->b) };

  return fm_colour_from_lab (&lab);
}
