/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-local-units.c - the units and the currency that people of a place are used to */
#include "core/base/fm-local-units.h"

#include <langinfo.h>
#include <locale.h>
#include <string.h>

#define US_CUSTOMARY 2
#define CODE_LENGTH 3

static gboolean
is_a_place (const char *name)
{
  return name != NULL && *name != '\0' && strcmp (name, "POSIX") != 0 && strcmp (name, "C") != 0 &&
         !g_str_has_prefix (name, "C.");
}

/* One sign is of one currency alone; "$" or "kr" would leave open which. */
static void
set_currency (FmUnits *units, const char *code)
{
  for (guint i = 0; i < CODE_LENGTH; i++)
    if (!g_ascii_isupper (code[i]))
      return;
  memset (units->currency, 0, sizeof units->currency);
  if (strncmp (code, "EUR", CODE_LENGTH) == 0)
    g_strlcpy (units->currency, "€", sizeof units->currency);
  else
    memcpy (units->currency, code, CODE_LENGTH);
}

void
fm_local_units_apply (const FmLocale *locale, FmUnits *units)
{
  if (is_a_place (locale->place)) {
    units->us_masses = locale->measurement == US_CUSTOMARY;
    units->fahrenheit = units->us_masses;
  }
  if (locale->currency != NULL)
    set_currency (units, locale->currency);
}

void
fm_local_units_read (FmUnits *units)
{
  FmLocale locale = { .place = setlocale (LC_MEASUREMENT, NULL),
                      .currency = localeconv ()->int_curr_symbol };
  const char *measurement = nl_langinfo (_NL_MEASUREMENT_MEASUREMENT);

  locale.measurement = measurement != NULL ? measurement[0] : 0;
  fm_local_units_apply (&locale, units);
}
