/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-target.c - what a target band of a brief can be about */
#include "core/formula/fm-target.h"

#include <glib/gi18n-lib.h>

#define MAX_PER_PATTY 1e7

static const FmTargetInfo infos[FM_N_TARGETS] = {
  [FM_TARGET_FAT_PCT] = { "fat_pct", N_ ("Fat"), "%", FM_NUTRIENT_FAT, FALSE, 100.0, 1, 1 },
  [FM_TARGET_PROTEIN_PCT] = { "protein_pct", N_ ("Protein"), "%", FM_NUTRIENT_PROTEIN, FALSE, 100.0,
                              1, 1 },
  [FM_TARGET_MOISTURE_PCT] = { "moisture_pct", N_ ("Moisture"), "%", FM_NUTRIENT_WATER, FALSE,
                               100.0, 1, 1 },
  [FM_TARGET_SATURATED_FAT_G] = { "saturated_fat_g", N_ ("Saturated fat per patty"), "g",
                                  FM_NUTRIENT_SATURATED_FAT, TRUE, MAX_PER_PATTY, 1, 1 },
  [FM_TARGET_SODIUM_MG] = { "sodium_mg", N_ ("Sodium per patty"), "mg", FM_NUTRIENT_SODIUM, TRUE,
                            MAX_PER_PATTY, 1, 0 },
  [FM_TARGET_ENERGY_KCAL] = { "energy_kcal", N_ ("Energy per patty"), "kcal",
                              FM_NUTRIENT_ENERGY_KCAL, TRUE, MAX_PER_PATTY, 1, 0 },
  [FM_TARGET_COST] = { "cost", N_ ("Cost per patty"), "", FM_NUTRIENT_NONE, TRUE, MAX_PER_PATTY, 2,
                       2 },
};

const FmTargetInfo *
fm_target_info (FmTargetKind kind)
{
  g_return_val_if_fail (kind < FM_N_TARGETS, NULL);
  return &infos[kind];
}

const char *
fm_target_name (FmTargetKind kind)
{
  return _ (fm_target_info (kind)->name);
}

double
fm_target_factor (FmTargetKind kind, double patty_mass_g)
{
  const FmTargetInfo *info = fm_target_info (kind);

  if (!info->is_per_patty)
    return 1.0;
  return patty_mass_g / (info->nutrient == FM_NUTRIENT_NONE ? 1000.0 : 100.0);
}
