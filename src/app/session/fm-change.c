/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-change.c - what changed in a session: the argument of its "changed" signal */
#include "app/session/fm-change.h"

G_DEFINE_BOXED_TYPE (FmChange, fm_change, fm_change_copy, fm_change_free)

FmChange *
fm_change_copy (const FmChange *change)
{
  return g_memdup2 (change, sizeof *change);
}

void
fm_change_free (FmChange *change)
{
  g_free (change);
}

const char *
fm_change_kind_name (FmChangeKind kind)
{
  switch (kind) {
  case FM_CHANGE_NOTEBOOK:
    return "notebook";
  case FM_CHANGE_BLEND:
    return "blend";
  case FM_CHANGE_DRAFT:
    return "draft";
  case FM_CHANGE_VERSION:
    return "version";
  case FM_CHANGE_SHOWN:
    return "shown";
  case FM_CHANGE_FORMULA:
    return "formula";
  case FM_CHANGE_HISTORY:
    return "history";
  case FM_CHANGE_MADE:
    return "made";
  case FM_CHANGE_EXPERIMENT:
    return "experiment";
  case FM_CHANGE_PHOTO:
    return "photo";
  case FM_CHANGE_TASTING:
    return "tasting";
  case FM_CHANGE_MAP:
    return "map";
  case FM_CHANGE_SETTING:
    return "setting";
  case FM_CHANGE_PLACE:
    return "place";
  }
  g_return_val_if_reached (NULL);
}
