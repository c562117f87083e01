/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-thermal-properties.c - properties by composition against Choi & Okos 1986 */
#include "core/heat/fm-thermal-properties.h"

#include <string.h>

#include "table.h"

/* A decimal middle is not exact in binary. */
#define SLACK 1e-6

static int
component_of (const char *name)
{
  const char *names[] = { "water", "protein", "fat", "carbohydrate", "fiber", "ash" };

  if (strcmp (name, "water_0_150C") == 0)
    return FM_COMPONENT_WATER;
  for (int i = 0; i < FM_N_COMPONENTS; i++)
    if (strcmp (name, names[i]) == 0)
      return i;
  return -1;
}

/* Choi & Okos 1986 (read): every coefficient, through the property of the pure component. Ice and
 * supercooled water are not modelled. */
static void
test_coefficients (void)
{
  g_autoptr (GPtrArray) rows = read_table ("choi_okos_coefficients.csv", ",");
  guint n_checked = 0;

  for (guint i = 0; i < rows->len; i++) {
    int component = component_of (cell (rows, i, 2));

    if (component < 0)
      continue;
    for (double t = 0; t <= 150; t += 25) {
      FmThermalMix pure = { { 0 } };
      FmThermalProperties p;
      double value = number (rows, i, 3) + number (rows, i, 4) * t + number (rows, i, 5) * t * t;
      const char *property = cell (rows, i, 0);

      pure.fraction[component] = 1.0;
      fm_thermal_properties (&pure, t, &p);
      if (strcmp (property, "k") == 0) {
        g_assert_cmpfloat_with_epsilon (p.k_parallel_w_m_k, value, 1e-12);
        g_assert_cmpfloat_with_epsilon (p.k_series_w_m_k, value, 1e-12);
      } else if (strcmp (property, "rho") == 0) {
        g_assert_cmpfloat_with_epsilon (p.rho_kg_m3, value, 1e-9);
      } else {
        g_assert_cmpfloat_with_epsilon (p.cp_j_kg_k, value * 1000.0, 1e-9);
      }
    }
    n_checked++;
  }
  g_assert_cmpuint (n_checked, ==, 3 * FM_N_COMPONENTS);
}

/* Round compositions, computed with NumPy from the same coefficients; bounds are half a unit of
 * the last printed digit: thousandths of kg/m3, hundred-thousandths of the others. */
static void
test_beef (void)
{
  g_autoptr (GPtrArray) rows = read_table ("beef_properties_computed.csv", ",");

  for (guint i = 0; i < rows->len; i++) {
    FmThermalMix mix = { { 0 } };
    FmThermalProperties p;

    mix.fraction[FM_COMPONENT_WATER] = number (rows, i, 2);
    mix.fraction[FM_COMPONENT_PROTEIN] = number (rows, i, 3);
    mix.fraction[FM_COMPONENT_FAT] = number (rows, i, 4);
    mix.fraction[FM_COMPONENT_ASH] = number (rows, i, 5);
    fm_thermal_properties (&mix, number (rows, i, 1), &p);
    g_assert_cmpfloat_with_epsilon (p.rho_kg_m3, number (rows, i, 6), (0.5 + SLACK) * 1e-3);
    g_assert_cmpfloat_with_epsilon (p.cp_j_kg_k / 1000.0, number (rows, i, 7),
                                    (0.5 + SLACK) * 1e-5);
    g_assert_cmpfloat_with_epsilon (p.k_parallel_w_m_k, number (rows, i, 8), (0.5 + SLACK) * 1e-5);
    g_assert_cmpfloat_with_epsilon (p.k_series_w_m_k, number (rows, i, 9), (0.5 + SLACK) * 1e-5);
    g_assert_cmpfloat_with_epsilon (p.k_parallel_w_m_k / p.rho_kg_m3 / p.cp_j_kg_k * 1e7,
                                    number (rows, i, 10) * 1e7, (0.5 + SLACK) * 1e-5);
  }
}

/* Water at 20 °C: 4.18 kJ/(kg K), known from steam tables (memory); tells the original coefficient
 * from the one of a later handbook (4.13). */
static void
test_water (void)
{
  const FmThermalMix water = { { [FM_COMPONENT_WATER] = 1.0 } };
  FmThermalProperties p;

  fm_thermal_properties (&water, 20, &p);
  g_assert_cmpfloat_with_epsilon (p.cp_j_kg_k, 4180, 5); /* 4.18: half of its last digit */
  g_assert_cmpfloat_with_epsilon (
      (fm_thermal_enthalpy_j_kg (&water, 20.01) - fm_thermal_enthalpy_j_kg (&water, 19.99)) / 0.02,
      p.cp_j_kg_k, 1e-3);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/thermal/choi-okos-1986", test_coefficients);
  g_test_add_func ("/thermal/beef-computed", test_beef);
  g_test_add_func ("/thermal/water-steam-tables", test_water);
  return g_test_run ();
}
