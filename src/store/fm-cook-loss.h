/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-cook-loss.h - measured cook loss of the notebook's experiments by fat level */
#pragma once

#include "store/fm-experiments.h"

G_BEGIN_DECLS

/* So many of the latest experiments are looked at. */
#define FM_COOK_LOSS_MOST 300

/** Experiments whose fat rounds to the same whole percent. */
typedef struct {
  double fat_pct; /* mean */
  guint n;
  double measured_pct; /* mean cook loss, percent of the raw mass */
  double min_pct;
  double max_pct;
  double predicted_pct; /* 100 - fm_cook_yield_pct() at @fat_pct; NaN = not known */
} FmCookLoss;

/**
 * fm_cook_losses_of:
 * @method: how they were cooked
 * @version_id: whose animals they are of
 *
 * Returns: (transfer full): FmCookLoss by rising fat.
 */
GArray *fm_cook_losses_of (FmNotebook *self,
                           FmCookMethod method,
                           gint64 version_id,
                           GCancellable *cancellable,
                           GError **error);

G_END_DECLS
