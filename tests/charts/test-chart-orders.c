/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-chart-orders.c - the picture of each taster's order */
#include "app/charts/fm-chart-orders.h"

#include "tests/charts/picture.h"

#define WIDTH 300
#define HEIGHT 140

static const char *const tasters[] = { "Ann", "Ben", "Cleo" };

/* Ann: A B C; Ben: C and A, then B; Cleo: B, A, and has not tasted C. */
static FmRankTable *
new_ranks (void)
{
  static const double places[3][3] = { { 1, 2, 3 }, { 1, 2, 1 }, { 2, 1, NAN } };
  FmRankTable *ranks = fm_rank_table_new (3, 3);

  for (guint taster = 0; taster < 3; taster++)
    for (guint sample = 0; sample < 3; sample++)
      fm_rank_table_set (ranks, taster, sample, places[taster][sample]);
  return ranks;
}

static void
draw (Picture *picture, FmChartScheme scheme, int scale)
{
  g_autoptr (FmRankTable) ranks = new_ranks ();

  picture_init (picture, WIDTH, HEIGHT, scheme, scale);
  fm_chart_orders_draw (ranks, tasters, &picture->canvas);
}

static const FmBox *
mark_of (const Picture *picture, guint row)
{
  for (guint i = 0; i < picture->canvas.marks->len; i++)
    if (g_array_index (picture->canvas.marks, FmChartMark, i).row == row)
      return &g_array_index (picture->canvas.marks, FmChartMark, i).box;
  g_assert_not_reached ();
}

static void
test_all (void)
{
  PICTURE_FOREACH (scheme, scale)
  {
    Picture picture;

    draw (&picture, scheme, scale);
    picture_check_labels (&picture);
    picture_check_marks (&picture, 8);
    picture_clear (&picture);
  }
}

/* A circle was joined to the text before it by a line, the first one right across the chart. */
static void
test_nothing_strays (void)
{
  PICTURE_FOREACH (scheme, scale)
  {
    Picture picture;
    const FmBox *last;

    draw (&picture, scheme, scale);
    /* Between the names and the first circles, over the whole width. */
    last = &g_array_index (picture.canvas.labels, FmBox, 2);
    g_assert_cmpuint (picture_ink (&picture, &(FmBox){ 0, last->y + last->height + 1, WIDTH, 4 }),
                      ==, 0);
    /* Between two circles of one taster: lines only lead to the next taster. */
    for (guint row = 0; row < 2; row++) {
      last = mark_of (&picture, row);
      g_assert_cmpuint (
          picture_ink (&picture, &(FmBox){ last->x, last->y + last->height + 1, last->width, 12 }),
          ==, 0);
    }
    /* The last taster ranked two samples: nothing at the third place. */
    last = mark_of (&picture, 2);
    g_assert_cmpuint (picture_ink (&picture, &(FmBox){ WIDTH - 100, last->y, WIDTH, HEIGHT }), ==,
                      0);
    /* Right of the last taster's marks. */
    last = mark_of (&picture, 6);
    g_assert_cmpuint (
        picture_ink (&picture, &(FmBox){ last->x + last->width + 1, last->y, WIDTH, HEIGHT }), ==,
        0);
    picture_clear (&picture);
  }
}

static void
test_places (void)
{
  Picture picture;

  draw (&picture, FM_CHART_LIGHT, 2);
  g_assert_cmpfloat (mark_of (&picture, 0)->y, <, mark_of (&picture, 1)->y);
  g_assert_cmpfloat (mark_of (&picture, 1)->y, <, mark_of (&picture, 2)->y);
  /* Tied samples stand beside each other at one height. */
  g_assert_cmpfloat (mark_of (&picture, 3)->y, ==, mark_of (&picture, 5)->y);
  g_assert_cmpfloat (mark_of (&picture, 3)->x + mark_of (&picture, 3)->width, ==,
                     mark_of (&picture, 5)->x);
  /* One column a taster. */
  g_assert_cmpfloat (mark_of (&picture, 0)->x, ==, mark_of (&picture, 2)->x);
  picture_clear (&picture);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/chart-orders/all", test_all);
  g_test_add_func ("/chart-orders/nothing-strays", test_nothing_strays);
  g_test_add_func ("/chart-orders/places", test_places);
  return g_test_run ();
}
