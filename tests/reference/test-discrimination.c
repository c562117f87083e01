/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-discrimination.c - triangle, duo-trio and paired tests against tables */
#include "core/statistics/fm-stat-choice.h"
#include "test-stat-csv.h"

static void
check_triangle (char **field, guint n_fields, gpointer data)
{
  const double alpha[] = { 0.20, 0.10, 0.05, 0.01, 0.001 };
  const guint n = stat_csv_count (field[0]);

  for (guint i = 0; i < 5; i++)
    g_assert_cmpuint (fm_choice_critical (FM_CHOICE_TRIANGLE, n, alpha[i]), ==,
                      stat_csv_count (field[1 + i]));
  for (guint i = 0; i < 4; i++)
    if (field[7 + i][0] != '\0')
      g_assert_cmpuint (fm_choice_critical (FM_CHOICE_TRIANGLE, n, alpha[1 + i]), ==,
                        stat_csv_count (field[7 + i]));
}

/* FAO document V7180E, Appendix A: read; the rule P(X >= x | n, 1/3) <= alpha: computed. */
static void
test_triangle (void)
{
  stat_csv_read ("triangle_critical.csv", check_triangle, NULL);
}

static void
check_half (char **field, guint n_fields, gpointer data)
{
  const double alpha[] = { 0.10, 0.05, 0.01, 0.001 };
  const guint n = stat_csv_count (field[0]);

  for (guint i = 0; i < 4; i++) {
    g_assert_cmpuint (fm_choice_critical (FM_CHOICE_DUO_TRIO, n, alpha[i]), ==,
                      stat_csv_count (field[1 + i]));
    g_assert_cmpuint (fm_choice_critical (FM_CHOICE_PAIRED_PREFERENCE, n, alpha[i]), ==,
                      stat_csv_count (field[5 + i]));
  }
}

/* half_critical.csv: computed with SciPy. */
static void
test_half (void)
{
  stat_csv_read ("half_critical.csv", check_half, NULL);
}

static void
check_power (char **field, guint n_fields, gpointer data)
{
  const double able[] = { 0.2, 0.3, 0.5, 0.7 };
  const guint n = stat_csv_count (field[0]);

  for (guint i = 0; i < 4; i++)
    g_assert_cmpfloat_with_epsilon (fm_choice_power (FM_CHOICE_TRIANGLE, n, able[i], 0.05),
                                    stat_csv_number (field[2 + i]), 0.00005001);
}

/* triangle_power.csv: computed with SciPy. */
static void
test_power (void)
{
  stat_csv_read ("triangle_power.csv", check_power, NULL);
}

static void
check_share (char **field, guint n_fields, gpointer data)
{
  const FmChoiceKind kind[] = { FM_CHOICE_TRIANGLE, FM_CHOICE_DUO_TRIO,
                                FM_CHOICE_PAIRED_DIRECTIONAL };
  for (guint i = 0; i < 3; i++)
    g_assert_cmpfloat_with_epsilon (
        fm_choice_share_from_d_prime (kind[i], stat_csv_number (field[0])),
        stat_csv_number (field[1 + i]), 1e-6);
}

static void
check_distance (char **field, guint n_fields, gpointer data)
{
  const FmChoiceKind kind[] = { FM_CHOICE_TRIANGLE, FM_CHOICE_DUO_TRIO,
                                FM_CHOICE_PAIRED_DIRECTIONAL };
  for (guint i = 0; i < 3; i++)
    if (field[1 + i][0] != '\0')
      g_assert_cmpfloat_with_epsilon (fm_choice_d_prime (kind[i], stat_csv_number (field[0])),
                                      stat_csv_number (field[1 + i]), 1e-5);
}

/* dprime_*.csv: computed two ways. Ennis (1993): 2-AFC .7602, triangle .418 at 1, memory. */
static void
test_d_prime (void)
{
  stat_csv_read ("dprime_pc.csv", check_share, NULL);
  stat_csv_read ("dprime_inverse.csv", check_distance, NULL);
  g_assert_cmpfloat_with_epsilon (fm_choice_share_from_d_prime (FM_CHOICE_PAIRED_DIRECTIONAL, 1),
                                  0.7602, 0.00005);
  g_assert_cmpfloat_with_epsilon (fm_choice_share_from_d_prime (FM_CHOICE_TRIANGLE, 1), 0.418,
                                  0.0005);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/reference/discrimination/fao-v7180e-triangle", test_triangle);
  g_test_add_func ("/reference/discrimination/half-computed", test_half);
  g_test_add_func ("/reference/discrimination/triangle-power-computed", test_power);
  g_test_add_func ("/reference/discrimination/ennis-1993-d-prime", test_d_prime);
  return g_test_run ();
}
