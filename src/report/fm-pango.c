/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-pango.c - sizes of laid out text in points */
#include "report/fm-pango.h"

double
fm_pango_height_pt (PangoLayout *layout)
{
  int height;

  pango_layout_get_size (layout, NULL, &height);
  return (double)height / PANGO_SCALE;
}
