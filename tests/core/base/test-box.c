/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-box.c - labels keep clear of each other and of the edge */
#include "core/base/fm-box.h"

static void
test_overlap (void)
{
  const FmBox box = { 10, 10, 20, 10 };
  const FmBox beside = { 30, 10, 5, 10 };
  const FmBox across = { 29, 19, 5, 10 };
  const FmBox inside = { 12, 12, 2, 2 };

  g_assert_false (fm_box_overlaps (&box, &beside));
  g_assert_true (fm_box_overlaps (&box, &across));
  g_assert_true (fm_box_overlaps (&across, &box));
  g_assert_true (fm_box_overlaps (&inside, &box));
  g_assert_true (fm_box_is_within (&inside, &box));
  g_assert_true (fm_box_is_within (&box, &box));
  g_assert_false (fm_box_is_within (&across, &box));
}

static void
test_moved_into (void)
{
  const FmBox room = { 0, 0, 100, 50 };
  const FmBox over_the_end = { 95, -3, 20, 10 };
  const FmBox too_wide = { 10, 45, 200, 10 };
  FmBox moved = fm_box_moved_into (&over_the_end, &room);

  g_assert_cmpfloat (moved.x, ==, 80.0);
  g_assert_cmpfloat (moved.y, ==, 0.0);
  moved = fm_box_moved_into (&too_wide, &room);
  g_assert_cmpfloat (moved.x, ==, 0.0);
  g_assert_cmpfloat (moved.y, ==, 40.0);
}

static void
test_distance (void)
{
  const FmBox box = { 10, 10, 20, 10 };

  g_assert_cmpfloat (fm_box_distance (&box, 15, 15), ==, 0.0);
  g_assert_cmpfloat (fm_box_distance (&box, 33, 24), ==, 5.0);
  g_assert_cmpfloat (fm_box_distance (&box, 5, 12), ==, 5.0);
}

/* The first free place in the written order: right, left, above ... */
static void
test_order_of_places (void)
{
  const FmBox room = { 0, 0, 200, 100 };
  const FmBox mark = { 95, 45, 10, 10 };
  FmBox taken[3] = { { 105, 45, 95, 10 }, { 0, 45, 95, 10 } };
  FmBox label = { .width = 30, .height = 8 };

  g_assert_true (fm_box_place_label (&label, &mark, 3, &room, taken, 0));
  g_assert_cmpfloat (label.x, ==, 108.0);
  g_assert_cmpfloat (label.y, ==, 46.0);
  g_assert_true (fm_box_place_label (&label, &mark, 3, &room, taken, 1));
  g_assert_cmpfloat (label.x, ==, 62.0);
  g_assert_true (fm_box_place_label (&label, &mark, 3, &room, taken, 2));
  g_assert_cmpfloat (label.x, ==, 85.0);
  g_assert_cmpfloat (label.y, ==, 34.0);
  taken[2] = (FmBox){ 0, 0, 200, 100 };
  g_assert_false (fm_box_place_label (&label, &mark, 3, &room, taken, 3));
  g_assert_cmpfloat (label.x, ==, 85.0);
}

static void
test_many_labels (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (8);
  const FmBox room = { 0, 0, 400, 300 };
  FmBox taken[60];
  guint n = 0;

  for (guint i = 0; i < 30; i++) {
    const FmBox mark = { g_rand_double_range (random, 0, 390), g_rand_double_range (random, 0, 290),
                         10, 10 };
    FmBox label = { .width = 40, .height = 14 };

    if (!fm_box_place_label (&label, &mark, 4, &room, taken, n))
      continue;
    g_assert_true (fm_box_is_within (&label, &room));
    g_assert_false (fm_box_overlaps (&label, &mark));
    for (guint j = 0; j < n; j++)
      g_assert_false (fm_box_overlaps (&label, &taken[j]));
    taken[n++] = label;
  }
  g_assert_cmpuint (n, >, 25);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/box/overlap", test_overlap);
  g_test_add_func ("/box/moved-into", test_moved_into);
  g_test_add_func ("/box/distance", test_distance);
  g_test_add_func ("/box/order-of-places", test_order_of_places);
  g_test_add_func ("/box/many-labels", test_many_labels);
  return g_test_run ();
}
