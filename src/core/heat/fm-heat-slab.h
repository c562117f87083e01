/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-heat-slab.h - one-dimensional conduction through a slab; private to the heat model, its tests
 * and its benchmark
 *
 * Finite volumes of equal thickness, backward Euler in time. Each face meets its surroundings
 * through a coefficient in series with the half cell behind it. The error falls with the square of
 * the cell and in proportion to the time step.
 *
 * Heat capacity enters as the secant of the enthalpy over the step, so that a step conserves
 * energy whatever cp does; conductivity is that at the step's begin. A wet cell that reaches the
 * boiling point stays there until heat has boiled its water off; then it is dry, its pores hold
 * steam, and it heats on with what it has left.
 */
#pragma once

#include "core/heat/fm-thermal-properties.h"

G_BEGIN_DECLS

/* Latent heat of water at 100 °C, J/kg, and conductivity of steam there: steam tables, from
 * memory. */
#define FM_WATER_LATENT_J_KG 2.257e6
#define FM_STEAM_K_W_M_K 0.025

typedef struct {
  double surround_c;
  double h_w_m2k;
} FmHeatFace;

/** Properties that do not change, for checks against closed solutions. */
typedef struct {
  double rho_kg_m3;
  double cp_j_kg_k;
  double k_w_m_k;
} FmHeatConstant;

typedef struct _FmHeatSlab FmHeatSlab;

/** Composition-dependent slab at one temperature; @rho_kg_m3: of the raw patty. @boiling_c may be
 * INFINITY: no boiling. */
FmHeatSlab *fm_heat_slab_new (const FmThermalMix *mix,
                              double rho_kg_m3,
                              double thickness_m,
                              guint n_cells,
                              double start_c,
                              double boiling_c);
/** Slab of constant properties that never boils. */
FmHeatSlab *fm_heat_slab_new_constant (const FmHeatConstant *constant,
                                       double thickness_m,
                                       guint n_cells,
                                       double start_c);
void fm_heat_slab_free (FmHeatSlab *self);
/** One step; @faces: cell 0 side, last cell side. */
void fm_heat_slab_step (FmHeatSlab *self, const FmHeatFace faces[2], double step_s);

/** Temperature of a cell. */
double fm_heat_slab_temp_c (const FmHeatSlab *self, guint cell);
/** Temperature of the face itself; @face: 0 or 1. */
double fm_heat_slab_face_c (const FmHeatSlab *self, guint face, const FmHeatFace *surround);
/** Heat that came through both faces since the start, J/m2. */
double fm_heat_slab_in_j_m2 (const FmHeatSlab *self);
/** Heat above 0 °C held now, J/m2. */
double fm_heat_slab_stored_j_m2 (const FmHeatSlab *self);
/** Heat above 0 °C that left with the steam, liquid part and latent heat, J/m2. */
double fm_heat_slab_boiled_j_m2 (const FmHeatSlab *self);
double fm_heat_slab_evaporated_kg_m2 (const FmHeatSlab *self);
/** Thickness of layers that have lost all their water, m. */
double fm_heat_slab_crust_m (const FmHeatSlab *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmHeatSlab, fm_heat_slab_free)

G_END_DECLS
