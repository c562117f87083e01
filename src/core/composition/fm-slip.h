/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-slip.h - whether the figures of a composition can all be true, and how its energy was counted
 *
 * Factors of meat, kcal/g: printed under each fresh item of USDA SR18 (2005). General factors:
 * 21 CFR 101.9 (c)(1)(i). Fibre at 2 kcal/g: Regulation (EU) No 1169/2011, Annex XIV. The bounds
 * are those of the check of the whole dataset in data/sr28/slips.tsv.
 */
#pragma once

#include "core/composition/fm-composition.h"

G_BEGIN_DECLS

/* Water, protein, fat, ash and carbohydrate make up 100 g within this. */
#define FM_SLIP_MASS_G 2.0
/* Energy agrees with one of the rules within this part of it. */
#define FM_SLIP_ENERGY_PCT 5.0

typedef enum {
  FM_SLIP_MASS = 1 << 0,        /* the parts do not add up */
  FM_SLIP_FATTY_ACIDS = 1 << 1, /* more fatty acids than fat */
  FM_SLIP_ENERGY = 1 << 2,      /* no rule gives the energy */
} FmSlip;

typedef enum {
  FM_ENERGY_RULE_UNKNOWN, /* energy or what it is counted from is not known */
  FM_ENERGY_RULE_MEAT,    /* 4.27 protein, 9.02 fat, 3.87 carbohydrate */
  FM_ENERGY_RULE_GENERAL, /* 4 protein, 9 fat, 4 carbohydrate */
  FM_ENERGY_RULE_OTHER,
} FmEnergyRule;

/** FmSlip set; what is not known is no slip. */
guint fm_composition_slips (const FmComposition *self);
/** The rule that gives the energy to what its whole kcal and the amounts' hundredths leave open. */
FmEnergyRule fm_composition_energy_rule (const FmComposition *self);
/** "by the factors of meat ...". Translated. */
const char *fm_energy_rule_name (FmEnergyRule rule);
/** Each slip as a sentence, one a line. Returns: (transfer full) (nullable): NULL without a slip.
 */
char *fm_composition_slip_text (const FmComposition *self);
/**
 * Whether the dataset's protein of this row is a slip that counts as not known: 0.01 g in bread
 * whose parts fall short by 5 to 14 g. @ndb_no: (nullable)
 */
gboolean fm_slip_protein_is_dropped (const char *ndb_no);

G_END_DECLS
