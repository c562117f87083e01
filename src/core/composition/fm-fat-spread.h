/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-fat-spread.h - how much the fat of a cut is known to vary between samples
 *
 * Source: USDA National Nutrient Database for Standard Reference, Release 18 (2005), which prints
 * the standard error and the number of samples beside the mean; read from the reports of its pork
 * and its lamb, veal and game. Only rows whose mean still stands in Release 28 are held, and of
 * two samples or more. Beef and poultry are not among them: that report could not be read.
 */
#pragma once

#include "core/composition/fm-ingredient.h"

G_BEGIN_DECLS

/**
 * FmFatSpread:
 * @ndb_no: the dataset's number
 * @mean_g_per_100g: fat as printed
 * @standard_error_g: of that mean
 * @n_samples: behind it
 */
typedef struct {
  const char *ndb_no;
  double mean_g_per_100g;
  double standard_error_g;
  guint n_samples;
} FmFatSpread;

const FmFatSpread *fm_fat_spreads (guint *n_spreads);
/** The spread of a dataset row; NULL for other ingredients and where none is published. */
const FmFatSpread *fm_fat_spread_of (const FmIngredient *ingredient);
/** Standard deviation of single samples, standard error x sqrt (n), in g per 100 g. */
double fm_fat_spread_sd_g (const FmFatSpread *self);
/** Whether @ingredient states just the published spread. */
gboolean fm_fat_spread_is_taken (const FmIngredient *ingredient);
/** "3.93 g over 33 samples (USDA SR18, 2005)". Returns: (transfer full). */
char *fm_fat_spread_describe (const FmFatSpread *self);

G_END_DECLS
