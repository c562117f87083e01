/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-paste-lines.h - lines of a formula out of two columns of a spreadsheet or a text */
#pragma once

#include "core/base/fm-measure.h"

G_BEGIN_DECLS

typedef struct {
  char *name;
  double mass_g; /* [0, FM_MAX_LINE_MASS_G] */
} FmPasteLine;

/**
 * Reads a name and a mass from each line of @text: parted by a tab or a semicolon, else the mass
 * stands last ("Chuck 600 g"). A bare number is in the unit of @units. Blank lines and a first line
 * of headings are left out. FM_CORE_ERROR with the number of the line that cannot be read.
 * Returns: (transfer full) (element-type FmPasteLine): owns its elements; NULL on error.
 */
GPtrArray *fm_paste_lines_read (const char *text, const FmUnits *units, GError **error);

G_END_DECLS
