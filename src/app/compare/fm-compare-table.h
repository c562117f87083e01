/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-compare-table.h - the numbers of a comparison, one column per item
 *
 * Signal: "row-activated" (char *key): the user wants a chart of that row
 */
#pragma once

#include <gtk/gtk.h>

#include "app/compare/fm-compare-load.h"

G_BEGIN_DECLS

#define FM_TYPE_COMPARE_TABLE (fm_compare_table_get_type ())
G_DECLARE_FINAL_TYPE (FmCompareTable, fm_compare_table, FM, COMPARE_TABLE, GtkWidget)

/**
 * FmCompareTableLook:
 * @reference: column that differences refer to, negative for absolute values
 * @only_differing: without rows that read the same in every column
 */
typedef struct {
  int reference;
  gboolean only_differing;
} FmCompareTableLook;

/**
 * @shown: (nullable): must stay alive until another one is shown
 * @look: (nullable): when nothing is shown
 */
void fm_compare_table_show (FmCompareTable *self,
                            const FmCompareShown *shown,
                            const FmCompareTableLook *look);

/** The row that is selected. (nullable) (transfer none): NULL on a heading and without a row. */
const FmCompareRow *fm_compare_table_get_row (FmCompareTable *self);

G_END_DECLS
