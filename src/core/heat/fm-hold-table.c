/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-hold-table.c - what a hold table asks for, and the words of a verdict */
#include "core/heat/fm-hold-table.h"

#include <glib/gi18n-lib.h>
#include <math.h>

double
fm_hold_required_s (FmAuthority authority, const FmCookFood *food, double temp_c)
{
  FmHoldRow rows[FM_AUTHORITY_MAX_ROWS];
  guint n_rows = fm_authority_rows (authority, food, rows);
  double required_s = (double)NAN;

  for (guint i = 0; i < n_rows; i++)
    if (fm_hold_row_is_met (&rows[i], temp_c))
      required_s = rows[i].hold_s;
  return required_s;
}

const char *
fm_hold_state_name (FmHoldState state)
{
  switch (state) {
  case FM_HOLD_REACHED:
    return _ ("Reached");
  case FM_HOLD_NOT_REACHED:
    return _ ("Not reached");
  case FM_HOLD_NOT_KNOWN:
    break;
  }
  return _ ("Not known");
}
