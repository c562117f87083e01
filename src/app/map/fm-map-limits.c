/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-limits.c - the bands of a brief as limits of a map */
#include "app/map/fm-map-limits.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/session/fm-notebook-settings.h"
#include "core/base/fm-error.h"
#include "core/base/fm-number.h"

static void
limit_free (FmMapLimit *self)
{
  g_free (self->unknown);
  g_free (self);
}

GPtrArray *
fm_map_limits_new (const FmBrief *brief, const FmMixBlend *blend)
{
  GPtrArray *limits = g_ptr_array_new_with_free_func ((GDestroyNotify)limit_free);

  for (int i = 0; i < FM_N_TARGETS; i++) {
    FmMapLimit *limit;

    if (isnan (brief->bands[i].min) && isnan (brief->bands[i].max))
      continue;
    limit = g_new0 (FmMapLimit, 1);
    limit->kind = (FmTargetKind)i;
    limit->band = brief->bands[i];
    limit->is_used = blend != NULL && fm_mix_blend_limit (blend, limit->kind, &limit->band,
                                                          &limit->limit, &limit->unknown);
    g_ptr_array_add (limits, limit);
  }
  return limits;
}

gboolean
fm_map_limits_apply (const GPtrArray *limits,
                     FmMixRegion *region,
                     const char *const *names,
                     GError **error)
{
  region->n_limits = 0;
  if (!fm_mix_region_check (region, names, error))
    return FALSE;
  for (guint i = 0; i < limits->len && region->n_limits < FM_MIX_MAX_LIMITS; i++) {
    const FmMapLimit *limit = g_ptr_array_index (limits, i);

    if (limit->is_used)
      region->limit[region->n_limits++] = limit->limit;
  }
  if (region->n_limits == 0 || fm_mix_region_check (region, names, NULL))
    return TRUE;
  g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                       _ ("No blend within these shares meets the limits of the brief. Widen the "
                          "shares, or save a base version with a wider brief."));
  return FALSE;
}

char *
fm_map_limit_text (const FmMapLimit *self)
{
  const int decimals = fm_target_info (self->kind)->decimals;
  const char *unit = fm_notebook_target_unit (self->kind);
  g_autofree char *low = fm_number_to_edit (self->band.min, decimals);
  g_autofree char *high = fm_number_to_edit (self->band.max, decimals);
  const char *name = fm_target_name (self->kind);

  if (isnan (self->band.max))
    return g_strdup_printf (_ ("%s: at least %s %s"), name, low, unit);
  if (isnan (self->band.min))
    return g_strdup_printf (_ ("%s: at most %s %s"), name, high, unit);
  return g_strdup_printf (_ ("%s: %s to %s %s"), name, low, high, unit);
}

char *
fm_map_limit_reason (const FmMapLimit *self)
{
  if (self->is_used)
    return NULL;
  if (self->unknown == NULL)
    return g_strdup (_ ("Not drawn: it cannot be worked out from the shares."));
  return g_strdup_printf (_ ("Not drawn: no value is known for %s."), self->unknown);
}
