/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-cook-verdict-row.h - what one authority's table says about the core readings, in words */
#pragma once

#include <gtk/gtk.h>

#include "core/heat/fm-hold-table.h"

G_BEGIN_DECLS

#define FM_TYPE_COOK_VERDICT_ROW (fm_cook_verdict_row_get_type ())
G_DECLARE_FINAL_TYPE (FmCookVerdictRow, fm_cook_verdict_row, FM, COOK_VERDICT_ROW, GtkWidget)

GtkWidget *fm_cook_verdict_row_new (FmAuthority authority, const FmCookFood *food);
/** @readings: FmCoreReading, any order */
void fm_cook_verdict_row_set_readings (FmCookVerdictRow *self, const GArray *readings);

G_END_DECLS
