/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-heat-slab.c - the conduction solver against closed solutions of the plane wall */
#include "core/heat/fm-heat-slab.h"

#include "table.h"

/* A wall of half thickness 1 m with k = rho cp = 1: seconds are Fourier numbers, W/(m2 K) are Biot
 * numbers. It starts at 1 and its surroundings are at 0, so temperatures are theta. */
static const FmHeatConstant unit = { 1.0, 1.0, 1.0 };

/* h of "no resistance"; 1 / h vanishes beside the half cell. */
static double
finite_bi (double bi)
{
  return isinf (bi) ? 1e12 : bi;
}

static FmHeatSlab *
run (guint n_cells, double bi, double fo, double step)
{
  const FmHeatFace faces[2] = { { 0, finite_bi (bi) }, { 0, finite_bi (bi) } };
  FmHeatSlab *slab = fm_heat_slab_new_constant (&unit, 2.0, n_cells, 1.0);
  guint n_steps = (guint)round (fo / step);

  for (guint i = 0; i < n_steps; i++)
    fm_heat_slab_step (slab, faces, fo / n_steps);
  return slab;
}

/*
 * Series of 400 terms, computed. With 101 cells and steps of Fo 1e-4 the error is below 5e-4 for
 * the centre and the half depth. At the face it is larger while the front is thin: below 2e-3.
 */
static void
test_series (void)
{
  g_autoptr (GPtrArray) rows = read_table ("heat_slab_series.csv", ",");
  double worst_centre = 0, worst_half = 0, worst_face = 0;

  for (guint i = 0; i < rows->len; i++) {
    double bi = number (rows, i, 0);
    const FmHeatFace face = { 0, finite_bi (bi) };
    g_autoptr (FmHeatSlab) slab = run (101, bi, number (rows, i, 1), 1e-4);
    double half = fm_heat_slab_temp_c (slab, 25);

    /* the middle of cell 25 lies just under half depth: straight to cell 24 */
    half += (fm_heat_slab_temp_c (slab, 24) - half) * (25.5 * 2 / 101 - 0.5) / (2.0 / 101);
    worst_centre = fmax (worst_centre, fabs (fm_heat_slab_temp_c (slab, 50) - number (rows, i, 2)));
    worst_half = fmax (worst_half, fabs (half - number (rows, i, 3)));
    worst_face =
        fmax (worst_face, fabs (fm_heat_slab_face_c (slab, 0, &face) - number (rows, i, 4)));
  }
  g_test_message ("%u cases: worst error of theta %.1e centre, %.1e half, %.1e face", rows->len,
                  worst_centre, worst_half, worst_face);
  g_assert_cmpfloat (worst_centre, <, 5e-4);
  g_assert_cmpfloat (worst_half, <, 5e-4);
  g_assert_cmpfloat (worst_face, <, 2e-3);
}

/* Cengel, Heat Transfer, Table 4-2 (read for Bi 0.01 to 10, else computed): late in time theta of
 * the centre falls as C1 exp (-zeta1^2 Fo), and both follow from two moments. */
static void
test_first_term (void)
{
  g_autoptr (GPtrArray) rows = read_table ("heat_slab_first_term.csv", ",");
  double worst_zeta = 0, worst_c = 0;

  for (guint i = 0; i < rows->len; i++) {
    double bi = number (rows, i, 0);
    double zeta_read = number (rows, i, 1), c_read = number (rows, i, 2);
    g_autoptr (FmHeatSlab) early = run (101, bi, 1.0, 2e-4);
    g_autoptr (FmHeatSlab) late = run (101, bi, 1.5, 2e-4);
    double theta = fm_heat_slab_temp_c (early, 50);
    double zeta_squared = log (theta / fm_heat_slab_temp_c (late, 50)) / 0.5;
    double zeta_error = fabs (sqrt (zeta_squared) - number (rows, i, 3));
    double c_error = fabs (theta * exp (zeta_squared) - number (rows, i, 4));

    worst_zeta = fmax (worst_zeta, zeta_error);
    worst_c = fmax (worst_c, c_error);
    if (!isnan (zeta_read)) {
      g_assert_cmpfloat (fabs (sqrt (zeta_squared) - zeta_read), <, 6e-4);
      g_assert_cmpfloat (fabs (theta * exp (zeta_squared) - c_read), <, 6e-4);
    }
  }
  g_test_message ("%u cases: worst error %.1e of zeta1, %.1e of C1", rows->len, worst_zeta,
                  worst_c);
  g_assert_cmpfloat (worst_zeta, <, 5e-4);
  g_assert_cmpfloat (worst_c, <, 5e-4);
}

/* The order that a finite volume of this kind must have: two in the cell, one in the step. */
static void
test_order (void)
{
  const double exact = 0.77252638; /* series, Bi 1, Fo 0.5 */
  g_autoptr (FmHeatSlab) coarse = run (11, 1, 0.5, 1e-3);
  g_autoptr (FmHeatSlab) fine = run (33, 1, 0.5, 1e-3);
  g_autoptr (FmHeatSlab) finest = run (201, 1, 0.5, 1e-3); /* the same error in time */
  g_autoptr (FmHeatSlab) slow = run (201, 1, 0.5, 1e-2);
  g_autoptr (FmHeatSlab) quick = run (201, 1, 0.5, 5e-3);
  double limit = fm_heat_slab_temp_c (finest, 100);
  double cells =
      (fm_heat_slab_temp_c (coarse, 5) - limit) / (fm_heat_slab_temp_c (fine, 16) - limit);
  double steps =
      (fm_heat_slab_temp_c (slow, 100) - exact) / (fm_heat_slab_temp_c (quick, 100) - exact);

  g_test_message ("cells / 3: error / %.2f; step / 2: error / %.2f", cells, steps);
  g_assert_cmpfloat_with_epsilon (cells, 9.0, 1.5);
  g_assert_cmpfloat_with_epsilon (steps, 2.0, 0.1);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/heat-slab/series", test_series);
  g_test_add_func ("/heat-slab/cengel-table-4-2", test_first_term);
  g_test_add_func ("/heat-slab/order", test_order);
  return g_test_run ();
}
