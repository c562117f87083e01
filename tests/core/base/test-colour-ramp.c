/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-colour-ramp.c - colours by the formulas of CIE 15:2004 and IEC 61966-2-1:1999 */
#include <math.h>

#include "core/base/fm-colour-ramp.h"

static double
distance (const FmLab *a, const FmLab *b)
{
  return sqrt (pow (a->l - b->l, 2) + pow (a->a - b->a, 2) + pow (a->b - b->b, 2));
}

static void
test_ends (void)
{
  const FmColour white = { 1, 1, 1 }, black = { 0, 0, 0 };
  const FmLab light = fm_colour_to_lab (&white), dark = fm_colour_to_lab (&black);

  g_assert_cmpfloat_with_epsilon (light.l, 100, 0.01);
  g_assert_cmpfloat_with_epsilon (light.a, 0, 0.05);
  g_assert_cmpfloat_with_epsilon (light.b, 0, 0.05);
  g_assert_cmpfloat_with_epsilon (dark.l, 0, 1e-9);
}

/* The red primary of sRGB in CIELAB; from memory, to the figures given. */
static void
test_red (void)
{
  const FmColour red = { 1, 0, 0 };
  const FmLab lab = fm_colour_to_lab (&red);

  g_assert_cmpfloat_with_epsilon (lab.l, 53.2, 0.1);
  g_assert_cmpfloat_with_epsilon (lab.a, 80.1, 0.1);
  g_assert_cmpfloat_with_epsilon (lab.b, 67.2, 0.1);
}

static void
test_there_and_back (void)
{
  for (int i = 0; i < 125; i++) {
    const FmColour colour = { i % 5 / 4.0, i / 5 % 5 / 4.0, i / 25 / 4.0 };
    const FmLab lab = fm_colour_to_lab (&colour);
    const FmColour back = fm_colour_from_lab (&lab);

    g_assert_cmpfloat_with_epsilon (back.red, colour.red, 0.002);
    g_assert_cmpfloat_with_epsilon (back.green, colour.green, 0.002);
    g_assert_cmpfloat_with_epsilon (back.blue, colour.blue, 0.002);
  }
}

static void
test_even (void)
{
  const FmLab from = { 94, -5, 25 }, to = { 60, -15, -25 };
  const double step = distance (&from, &to) / 10;
  FmLab before = from;

  for (int i = 1; i <= 10; i++) {
    const FmColour colour = fm_colour_ramp (&from, &to, i / 10.0);
    const FmLab lab = fm_colour_to_lab (&colour);

    g_assert_cmpfloat_with_epsilon (distance (&before, &lab), step, 0.02 * step);
    before = lab;
  }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/colour-ramp/ends", test_ends);
  g_test_add_func ("/colour-ramp/red", test_red);
  g_test_add_func ("/colour-ramp/there-and-back", test_there_and_back);
  g_test_add_func ("/colour-ramp/even", test_even);
  return g_test_run ();
}
