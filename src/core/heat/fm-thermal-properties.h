/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-thermal-properties.h - density, heat capacity and conductivity from composition
 *
 * Choi & Okos 1986, "Effects of temperature and composition on the thermal properties of foods",
 * Food Engineering and Process Applications 1: each component's property = a0 + a1 T + a2 T^2 with
 * T in °C, from -40 to 150 °C. Coefficients read in three reprints that disagree in places; the
 * ones here give water at 20 °C its 4.18 kJ/(kg K) and let fat conduct less when hot (see the
 * table in fm-thermal-properties.c). They do not cover ice, phase change or evaporation.
 */
#pragma once

#include "core/formula/fm-analysis.h"

G_BEGIN_DECLS

typedef enum {
  FM_COMPONENT_WATER,
  FM_COMPONENT_PROTEIN,
  FM_COMPONENT_FAT,
  FM_COMPONENT_CARBOHYDRATE,
  FM_COMPONENT_FIBRE,
  FM_COMPONENT_ASH,
  FM_N_COMPONENTS,
} FmComponent;

/** Mass fractions; they add up to 1. */
typedef struct {
  double fraction[FM_N_COMPONENTS];
} FmThermalMix;

typedef struct {
  double rho_kg_m3;
  double cp_j_kg_k;
  double k_parallel_w_m_k; /* heat along layers of the components: the upper bound */
  double k_series_w_m_k;   /* heat across them: the lower bound */
} FmThermalProperties;

/** Water, fat and protein must be known (UNKNOWN_VALUE otherwise); unknown ash, carbohydrate and
 * fibre share what is left. Scaled to add up to 1. */
gboolean
fm_thermal_mix_from_analysis (const FmAnalysis *analysis, FmThermalMix *mix, GError **error);
/** When only fat is known: the rest split as in lean beef (74 % water, 21 % protein, 1 % ash with
 * 4 % fat; round figures, no source). OUT_OF_RANGE outside 0-100 %. */
gboolean fm_thermal_mix_from_fat (double fat_pct, FmThermalMix *mix, GError **error);
void
fm_thermal_properties (const FmThermalMix *mix, double temp_c, FmThermalProperties *properties);
/** cp = a0 + a1 T + a2 T^2, J/(kg K), of a mix whose fractions may add up to anything. */
void fm_thermal_cp_polynomial (const FmThermalMix *mix, double a[3]);
/** Integral of cp from 0 °C, J/kg. */
double fm_thermal_enthalpy_j_kg (const FmThermalMix *mix, double temp_c);

G_END_DECLS
