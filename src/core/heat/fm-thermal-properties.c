/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/heat/fm-thermal-properties.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-error.h"

/* value = a[0] + a[1] T + a[2] T^2, T in °C */
typedef struct {
  double k_w_m_k[3];
  double rho_kg_m3[3];
  double cp_kj_kg_k[3];
} Component;

/*
 * Choi & Okos 1986, read in three reprints. Where those disagree: cp of water is the original's
 * 4.1762 and not the 4.1289 of a 2006 handbook, which misses water's known 4.18 at 20 °C; the
 * slope of cp is 1.4733e-3 for fat and 1.8306e-3 for fibre (one scan each differs); k of fat
 * falls with temperature (one scan lost the minus).
 */
static const Component components[FM_N_COMPONENTS] = {
  [FM_COMPONENT_WATER] = { { 0.57109, 1.7625e-3, -6.7036e-6 },
                           { 997.18, 3.1439e-3, -3.7574e-3 },
                           { 4.1762, -9.0864e-5, 5.4731e-6 } },
  [FM_COMPONENT_PROTEIN] = { { 0.17881, 1.1958e-3, -2.7178e-6 },
                             { 1329.9, -0.5184, 0 },
                             { 2.0082, 1.2089e-3, -1.3129e-6 } },
  [FM_COMPONENT_FAT] = { { 0.18071, -2.7604e-4, -1.7749e-7 },
                         { 925.59, -0.41757, 0 },
                         { 1.9842, 1.4733e-3, -4.8008e-6 } },
  [FM_COMPONENT_CARBOHYDRATE] = { { 0.20141, 1.3874e-3, -4.3312e-6 },
                                  { 1599.1, -0.31046, 0 },
                                  { 1.5488, 1.9625e-3, -5.9399e-6 } },
  [FM_COMPONENT_FIBRE] = { { 0.18331, 1.2497e-3, -3.1683e-6 },
                           { 1311.5, -0.36589, 0 },
                           { 1.8459, 1.8306e-3, -4.6509e-6 } },
  [FM_COMPONENT_ASH] = { { 0.32962, 1.4011e-3, -2.9069e-6 },
                         { 2423.8, -0.28063, 0 },
                         { 1.0926, 1.8896e-3, -3.6817e-6 } },
};

static double
polynomial (const double a[3], double t)
{
  return a[0] + t * (a[1] + t * a[2]);
}

static double
integral (const double a[3], double t)
{
  return t * (a[0] + t * (a[1] / 2.0 + t * a[2] / 3.0));
}

/* One fraction must be above zero. */
static void
normalise (FmThermalMix *mix)
{
  double sum = 0;

  for (int i = 0; i < FM_N_COMPONENTS; i++)
    sum += mix->fraction[i];
  for (int i = 0; i < FM_N_COMPONENTS; i++)
    mix->fraction[i] /= sum;
}

/* The dataset's carbohydrate is by difference and contains the fibre. What nobody measured is
 * taken from the remainder, ash first. */
static void
fill_minor (const FmAnalysis *analysis, FmThermalMix *mix)
{
  double *x = mix->fraction;
  double ash = fm_analysis_value (analysis, FM_NUTRIENT_ASH) / 100.0;
  double carbohydrate = fm_analysis_value (analysis, FM_NUTRIENT_CARBOHYDRATE) / 100.0;
  double fibre = fm_analysis_value (analysis, FM_NUTRIENT_FIBRE) / 100.0;
  double rest =
      fmax (1.0 - x[FM_COMPONENT_WATER] - x[FM_COMPONENT_PROTEIN] - x[FM_COMPONENT_FAT], 0);

  if (isnan (carbohydrate))
    carbohydrate = isnan (ash) ? 0 : fmax (rest - ash, 0);
  if (isnan (ash))
    ash = fmax (rest - carbohydrate, 0);
  if (isnan (fibre))
    fibre = 0;
  x[FM_COMPONENT_ASH] = ash;
  x[FM_COMPONENT_FIBRE] = fmin (fibre, carbohydrate);
  x[FM_COMPONENT_CARBOHYDRATE] = carbohydrate - x[FM_COMPONENT_FIBRE];
}

gboolean
fm_thermal_mix_from_analysis (const FmAnalysis *analysis, FmThermalMix *mix, GError **error)
{
  FmThermalMix found = { { 0 } };
  double *x = found.fraction;

  x[FM_COMPONENT_WATER] = fm_analysis_value (analysis, FM_NUTRIENT_WATER) / 100.0;
  x[FM_COMPONENT_PROTEIN] = fm_analysis_value (analysis, FM_NUTRIENT_PROTEIN) / 100.0;
  x[FM_COMPONENT_FAT] = analysis->fat_pct / 100.0;
  if (isnan (x[FM_COMPONENT_WATER]) || isnan (x[FM_COMPONENT_PROTEIN]) ||
      isnan (x[FM_COMPONENT_FAT])) {
    g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_UNKNOWN_VALUE,
                         _ ("Water, protein and fat of every ingredient must be known to estimate "
                            "how the patty heats. Add the missing values or use the fat alone."));
    return FALSE;
  }
  fill_minor (analysis, &found);
  normalise (&found);
  *mix = found;
  return TRUE;
}

gboolean
fm_thermal_mix_from_fat (double fat_pct, FmThermalMix *mix, GError **error)
{
  double fat_free;

  if (!(fat_pct >= 0 && fat_pct <= 100)) {
    g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                         _ ("The fat must lie between 0 and 100 %."));
    return FALSE;
  }
  fat_free = 1.0 - fat_pct / 100.0;
  *mix = (FmThermalMix){ { 0 } };
  mix->fraction[FM_COMPONENT_FAT] = 1.0 - fat_free;
  mix->fraction[FM_COMPONENT_WATER] = fat_free * 0.74 / 0.96;
  mix->fraction[FM_COMPONENT_PROTEIN] = fat_free * 0.21 / 0.96;
  mix->fraction[FM_COMPONENT_ASH] = fat_free * 0.01 / 0.96;
  return TRUE;
}

void
fm_thermal_properties (const FmThermalMix *mix, double temp_c, FmThermalProperties *properties)
{
  double volume = 0; /* m3 per kg */
  double cp = 0;
  double along = 0;
  double across = 0;

  for (int i = 0; i < FM_N_COMPONENTS; i++) {
    double part = mix->fraction[i] / polynomial (components[i].rho_kg_m3, temp_c);
    double k = polynomial (components[i].k_w_m_k, temp_c);

    volume += part;
    cp += mix->fraction[i] * polynomial (components[i].cp_kj_kg_k, temp_c);
    along += part * k;
    across += part / k;
  }
  properties->rho_kg_m3 = 1.0 / volume;
  properties->cp_j_kg_k = cp * 1000.0;
  properties->k_parallel_w_m_k = along / volume;
  properties->k_series_w_m_k = volume / across;
}

void
fm_thermal_cp_polynomial (const FmThermalMix *mix, double a[3])
{
  for (int power = 0; power < 3; power++) {
    a[power] = 0;
    for (int i = 0; i < FM_N_COMPONENTS; i++)
      a[power] += mix->fraction[i] * components[i].cp_kj_kg_k[power] * 1000.0;
  }
}

double
fm_thermal_enthalpy_j_kg (const FmThermalMix *mix, double temp_c)
{
  double a[3];

  fm_thermal_cp_polynomial (mix, a);
  return integral (a, temp_c);
}
