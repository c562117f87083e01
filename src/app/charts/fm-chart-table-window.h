/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-chart-table-window.h - the numbers behind a picture, to read and to copy */
#pragma once

#include <adwaita.h>

#include "app/charts/fm-chart-table.h"

G_BEGIN_DECLS

#define FM_TYPE_CHART_TABLE_WINDOW (fm_chart_table_window_get_type ())
G_DECLARE_FINAL_TYPE (FmChartTableWindow, fm_chart_table_window, FM, CHART_TABLE_WINDOW, AdwWindow)

/** Over the window of @parent. @table: copied; @subject: (nullable): what it is of. */
void fm_chart_table_window_show (GtkWidget *parent,
                                 const char *title,
                                 const char *subject,
                                 const FmChartTable *table);

G_END_DECLS
