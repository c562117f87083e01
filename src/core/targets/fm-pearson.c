/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-pearson.c - the Pearson square: two ingredients that meet one target between them */
#include "core/targets/fm-pearson.h"

#include "core/base/fm-error.h"
#include "core/base/fm-number.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define DECIMALS 2

static gboolean
check (double a_pct, double b_pct, double target_pct, GError **error)
{
  if (isnan (a_pct) || isnan (b_pct) || isnan (target_pct)) {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_UNKNOWN_VALUE,
                 _ ("The Pearson square needs the value of both ingredients and the target. "
                    "Type the value that is missing."));
    return FALSE;
  }
  double low = MIN (a_pct, b_pct);
  double high = MAX (a_pct, b_pct);
  if (low >= 0.0 && high <= 100.0 && target_pct >= low && target_pct <= high)
    return TRUE;
  g_autofree char *target = fm_number_format_unit (target_pct, DECIMALS, "%");
  g_autofree char *from = fm_number_format_unit (low, DECIMALS, "%");
  g_autofree char *to = fm_number_format_unit (high, DECIMALS, "%");
  g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
               _ ("A target of %s does not lie between the ingredients, %s and %s. Choose one "
                  "ingredient above the target and one below."),
               target, from, to);
  return FALSE;
}

gboolean
fm_pearson_init (FmPearson *self, double a_pct, double b_pct, double target_pct, GError **error)
{
  if (!check (a_pct, b_pct, target_pct, error))
    return FALSE;
  *self = (FmPearson){ .a_pct = a_pct, .b_pct = b_pct, .target_pct = target_pct };
  self->a_parts = fabs (b_pct - target_pct);
  self->b_parts = fabs (a_pct - target_pct);
  double parts = self->a_parts + self->b_parts;
  self->a_share_pct = parts > 0.0 ? self->a_parts / parts * 100.0 : 50.0;
  self->b_share_pct = 100.0 - self->a_share_pct;
  return TRUE;
}

void
fm_pearson_batch (const FmPearson *self, double total, double *a, double *b)
{
  *a = total * self->a_share_pct / 100.0;
  *b = total - *a;
}

double
fm_pearson_b_for_a (const FmPearson *self, double a)
{
  return self->a_share_pct > 0.0 ? a * self->b_share_pct / self->a_share_pct : NAN;
}
