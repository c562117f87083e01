/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-cook-method.c - how ground meat is cooked, in words */
#include "core/cooking/fm-cooking.h"

#include <glib/gi18n-lib.h>

const char *
fm_cook_method_name (FmCookMethod method)
{
  switch (method) {
  case FM_COOK_PATTY_BROILED:
    return _ ("Patty, broiled");
  case FM_COOK_PATTY_PAN_BROILED:
    return _ ("Patty, pan-broiled");
  case FM_COOK_CRUMBLES_PAN_BROWNED:
    return _ ("Crumbles, pan-browned");
  case FM_COOK_LOAF_BAKED:
    return _ ("Loaf, baked");
  case FM_N_COOK_METHODS:
    break;
  }
  g_return_val_if_reached ("");
}
