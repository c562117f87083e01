/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-version-pictures.c - the tree of versions and the Pearson square, drawn */
#include "app/charts/fm-chart-square.h"
#include "app/versions/fm-version-tree-graph.h"

#include "tests/charts/picture.h"

#define ROW_PX 40

static void
draw_row (Picture *picture,
          FmChartScheme scheme,
          int scale,
          const FmVersionTreePlace *place,
          guint n_lanes,
          gboolean hollow)
{
  picture_init (picture, 14.0 * n_lanes, ROW_PX, scheme, scale);
  fm_version_tree_graph_draw (place, n_lanes, hollow, &picture->canvas);
}

static gboolean
has_line (const Picture *picture, double x, double y)
{
  return picture_ink (picture, &(FmBox){ x - 2, y, 4, 2 }) > 0;
}

/* Version 2 of a chain from which another lane opens, with a lane that passes by. */
static void
test_fork (void)
{
  const FmVersionTreePlace place = { .lane = 0, .above = 5, .below = 7, .forks = 2 };

  PICTURE_FOREACH (scheme, scale)
  {
    Picture picture;
    const double own = fm_version_tree_graph_x (3, 0);
    const double fork = fm_version_tree_graph_x (3, 1);
    const double other = fm_version_tree_graph_x (3, 2);

    draw_row (&picture, scheme, scale, &place, 3, FALSE);
    g_assert_true (picture_has (&picture, own, ROW_PX / 2, &picture.canvas.palette.ink));
    g_assert_true (has_line (&picture, own, 2));
    g_assert_true (has_line (&picture, own, ROW_PX - 4));
    /* The new lane only goes down. */
    g_assert_cmpuint (picture_ink (&picture, &(FmBox){ fork - 3, 0, 6, ROW_PX / 2.0 - 3 }), ==, 0);
    g_assert_true (has_line (&picture, fork, ROW_PX - 4));
    /* The one that passes by goes through, and bears no node. */
    for (int y = 0; y < ROW_PX - 2; y += 4)
      g_assert_true (has_line (&picture, other, y));
    g_assert_cmpuint (picture_ink (&picture, &(FmBox){ other + 2, 0, 4, ROW_PX }), ==, 0);
    picture_clear (&picture);
  }
}

/* The first version, alone in its lane: a node without lines. */
static void
test_alone (void)
{
  const FmVersionTreePlace place = { .lane = 0 };

  PICTURE_FOREACH (scheme, scale)
  {
    Picture picture;

    draw_row (&picture, scheme, scale, &place, 1, FALSE);
    g_assert_cmpuint (picture_ink (&picture, &(FmBox){ 0, 0, 14, ROW_PX / 2.0 - 6 }), ==, 0);
    g_assert_cmpuint (picture_ink (&picture, &(FmBox){ 0, ROW_PX / 2.0 + 6, 14, 10 }), ==, 0);
    picture_clear (&picture);
  }
}

/* The draft is a ring: told from a version by its shape. */
static void
test_draft (void)
{
  const FmVersionTreePlace place = { .lane = 1, .above = 2 };

  PICTURE_FOREACH (scheme, scale)
  {
    Picture picture;
    const double x = fm_version_tree_graph_x (2, 1);

    draw_row (&picture, scheme, scale, &place, 2, TRUE);
    g_assert_true (picture_has (&picture, x, ROW_PX / 2, &picture.canvas.palette.ground));
    g_assert_cmpuint (picture_ink (&picture, &(FmBox){ x + 3, ROW_PX / 2.0 - 1, 3, 2 }), >, 0);
    g_assert_true (has_line (&picture, x, 4));
    g_assert_cmpuint (picture_ink (&picture, &(FmBox){ 0, ROW_PX / 2.0 + 6, 28, 10 }), ==, 0);
    picture_clear (&picture);
  }
}

static void
test_square (void)
{
  static const char *const names[] = { "Lean", "A cut with a name that is longer than the square" };
  FmPearson square;

  g_assert_true (fm_pearson_init (&square, 10, 30, 15, NULL));
  PICTURE_FOREACH (scheme, scale)
  {
    for (guint i = 0; i < G_N_ELEMENTS (names); i++) {
      Picture picture;
      const GArray *marks;
      FmBox a, middle, between;

      picture_init (&picture, i == 0 ? 420 : 240, 150, scheme, scale);
      fm_chart_square_draw (names[i], "Plate", &square, &picture.canvas);
      picture_check_labels (&picture);
      picture_check_marks (&picture, 3);
      /* Two lines at each corner and in the middle. */
      g_assert_cmpuint (picture.canvas.labels->len, ==, 10);
      marks = picture.canvas.marks;
      a = g_array_index (marks, FmChartMark, 0).box;
      middle = g_array_index (marks, FmChartMark, 1).box;
      g_assert_cmpfloat (a.x, <, middle.x);
      g_assert_cmpfloat (a.y + a.height, <, middle.y);
      /* Between the side and the middle, in height, nothing but the diagonals: no line runs
       * through a text. */
      between = (FmBox){ 2, a.y + a.height + 1, a.x, middle.y - a.y - a.height - 2 };
      g_assert_cmpuint (picture_ink (&picture, &between), ==, 0);
      between.width = picture.canvas.width - 4;
      g_assert_cmpuint (picture_ink (&picture, &between), >, 0);
      picture_clear (&picture);
    }
  }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/version-pictures/fork", test_fork);
  g_test_add_func ("/version-pictures/alone", test_alone);
  g_test_add_func ("/version-pictures/draft", test_draft);
  g_test_add_func ("/version-pictures/square", test_square);
  return g_test_run ();
}
