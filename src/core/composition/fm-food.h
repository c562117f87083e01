/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-food.h - one row of the food-composition dataset */
#pragma once

#include "core/composition/fm-composition.h"

G_BEGIN_DECLS

#define FM_N_HOUSEHOLD_WEIGHTS 2

/** A household measure, e.g. 113 g "4 oz". */
typedef struct {
  double mass_g;     /* NaN when the row has no such measure */
  char *description; /* (nullable) as the dataset prints it */
} FmHouseholdWeight;

/**
 * FmFood: immutable once shared; reference counted (atomic).
 *
 * @ndb_no: the dataset's five-digit number, e.g. "23572"
 * @name: readable for a cook, e.g. "Beef, ground, 80/20 (80% lean, 20% fat), raw"
 * @original_name: the dataset's own description, for citation
 * @refuse_pct: inedible part of the mass as purchased, NaN when not known
 * @is_raw: whether the description says that the food is raw
 */
typedef struct {
  gatomicrefcount ref_count;
  char *ndb_no;
  char *name;
  char *original_name;
  FmComposition composition;
  double refuse_pct;
  FmHouseholdWeight household_weights[FM_N_HOUSEHOLD_WEIGHTS];
  gboolean is_raw;
} FmFood;

/** New food with this text (copied) and every number unknown. */
FmFood *fm_food_new (const char *ndb_no, const char *name, const char *original_name);
FmFood *fm_food_ref (FmFood *self);
void fm_food_unref (FmFood *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmFood, fm_food_unref)

G_END_DECLS
