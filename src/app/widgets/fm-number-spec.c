/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-number-spec.c - what an entry for a number takes and how it writes it */
#include "app/widgets/fm-number-spec.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/session/fm-notebook-settings.h"
#include "core/base/fm-error.h"

void
fm_number_spec_clear (FmNumberSpec *self)
{
  g_clear_pointer (&self->what, g_free);
  g_clear_pointer (&self->own_unit, g_free);
}

gboolean
fm_number_spec_read (const FmNumberSpec *self, const char *text, double *value, GError **error)
{
  const FmMeasureRange range = { self->measure, self->what, self->own_unit, self->minimum,
                                 self->maximum };
  g_autofree char *bare = g_strstrip (g_strdup (text));

  if (bare[0] == '\0' && self->optional) {
    *value = NAN;
    return TRUE;
  }
  if (!fm_measure_parse (bare, &range, fm_notebook_units (), value, error))
    return FALSE;
  if (self->measure != FM_MEASURE_NUMBER || self->decimals > 0 || *value == floor (*value))
    return TRUE;
  g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_NOT_A_NUMBER,
               _ ("%s is counted in whole numbers."), self->what);
  return FALSE;
}

char *
fm_number_spec_text (const FmNumberSpec *self, double value)
{
  return fm_measure_to_edit (self->measure, fm_notebook_units (), value, self->decimals);
}

char *
fm_number_spec_text_with_unit (const FmNumberSpec *self, double value)
{
  g_autofree char *number = fm_number_spec_text (self, value);
  g_autofree char *unit = fm_number_spec_unit (self);

  if (number[0] == '\0' || unit == NULL || unit[0] == '\0')
    return g_steal_pointer (&number);
  return g_strdup_printf ("%s %s", number, unit);
}

char *
fm_number_spec_unit (const FmNumberSpec *self)
{
  return self->measure != FM_MEASURE_NUMBER ? fm_measure_unit (self->measure, fm_notebook_units ())
                                            : g_strdup (self->own_unit);
}
