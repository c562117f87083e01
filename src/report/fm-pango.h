/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-pango.h - sizes of laid out text in points */
#pragma once

#include <pango/pango.h>

G_BEGIN_DECLS

double fm_pango_height_pt (PangoLayout *layout);

G_END_DECLS
