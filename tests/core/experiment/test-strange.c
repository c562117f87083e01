/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-strange.c - what physics objects to is said, and nothing else */
#include "core/experiment/fm-strange.h"

#include <math.h>
#include <string.h>

static void
test_cooked_heavier_than_raw (void)
{
  g_assert_nonnull (strstr (fm_strange_cooked (180.0, 180.1), "Heavier cooked than raw"));
  g_assert_null (fm_strange_cooked (180.0, 180.0));
  g_assert_null (fm_strange_cooked (180.0, 130.0));
  g_assert_null (fm_strange_cooked (NAN, 130.0));
  g_assert_null (fm_strange_cooked (180.0, NAN));
}

static void
test_core_hotter_than_surface (void)
{
  g_assert_nonnull (strstr (fm_strange_core (90.0, 80.0), "hotter than the surface"));
  g_assert_null (fm_strange_core (71.1, 71.1));
  g_assert_null (fm_strange_core (71.1, 230.0));
  g_assert_null (fm_strange_core (71.1, NAN));
  g_assert_null (fm_strange_core (NAN, 230.0));
}

static void
test_patty_far_from_its_plan (void)
{
  g_assert_nonnull (strstr (fm_strange_patty (1800.0, 180.0), "Ten times"));
  g_assert_null (fm_strange_patty (1799.0, 180.0));
  g_assert_null (fm_strange_patty (18.1, 180.0));
  g_assert_nonnull (strstr (fm_strange_patty (18.0, 180.0), "A tenth"));
  g_assert_null (fm_strange_patty (NAN, 180.0));
  g_assert_null (fm_strange_patty (180.0, NAN));
  g_assert_null (fm_strange_patty (180.0, 0.0));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/strange/cooked-heavier-than-raw", test_cooked_heavier_than_raw);
  g_test_add_func ("/strange/core-hotter-than-surface", test_core_hotter_than_surface);
  g_test_add_func ("/strange/patty-far-from-its-plan", test_patty_far_from_its_plan);
  return g_test_run ();
}
