/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-target.h - what a target band of a brief can be about */
#pragma once

#include "core/composition/fm-nutrient.h"

G_BEGIN_DECLS

typedef enum {
  FM_TARGET_FAT_PCT,         /* % by mass, raw */
  FM_TARGET_PROTEIN_PCT,     /* % by mass, raw */
  FM_TARGET_MOISTURE_PCT,    /* % by mass, raw */
  FM_TARGET_SATURATED_FAT_G, /* g per raw patty */
  FM_TARGET_SODIUM_MG,       /* mg per raw patty */
  FM_TARGET_ENERGY_KCAL,     /* kcal per raw patty */
  FM_TARGET_COST,            /* currency per raw patty */
  FM_N_TARGETS,
} FmTargetKind;

/**
 * FmTargetInfo: what is fixed about one kind of target.
 *
 * @key: stable ASCII name, used in files, never translated
 * @name: untranslated; use fm_target_name()
 * @unit: "" for the notebook's currency
 * @nutrient: of which there may be so much; FM_NUTRIENT_NONE: it is the cost
 * @is_per_patty: of one raw patty; else the share of the blend in per cent by mass
 * @max: more is no sensible limit, in @unit
 * @decimals: places worth showing of a value
 * @limit_decimals: places worth showing of a limit in its field
 */
typedef struct {
  const char *key;
  const char *name;
  const char *unit;
  FmNutrient nutrient;
  gboolean is_per_patty;
  double max;
  int decimals;
  int limit_decimals;
} FmTargetInfo;

/** @kind must lie in [0, FM_N_TARGETS). Never NULL then. */
const FmTargetInfo *fm_target_info (FmTargetKind kind);
const char *fm_target_name (FmTargetKind kind); /* translated */
/** What an amount in 100 g (or, for the cost, in a kilogram) is multiplied with. */
double fm_target_factor (FmTargetKind kind, double patty_mass_g);

G_END_DECLS
