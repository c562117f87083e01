/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-nutrition-table.h - the nutrients of a portion as a table: text, CSV, paper */
#pragma once

#include "core/formula/fm-nutrition-text.h"
#include "report/fm-batch-sheet.h"

G_BEGIN_DECLS

/**
 * FmNutritionTable:
 * @subject: what it is of: "Pan patty, version 3"
 * @portion: "One raw patty, 180 g"
 * @notes: (nullable): what is missing, and how it was cooked
 * @amounts: FM_N_NUTRIENTS of 100 g of the portion
 * @texts: FM_N_NUTRIENTS
 * @portion_g: NaN when not known
 * @has_daily_value: with shares of the Daily Value
 */
typedef struct {
  const char *subject;
  const char *portion;
  const char *notes;
  const FmAmount *amounts;
  const FmNutritionText *texts;
  double portion_g;
  gboolean has_daily_value;
} FmNutritionTable;

/** Columns parted by tabs, as a spreadsheet takes them from the clipboard. Without rows that have
 * no value. Returns: (transfer full). */
char *fm_nutrition_table_text (const FmNutritionTable *self);
/** All nutrients; what is not known is an empty cell. Returns: (transfer full). */
char *fm_nutrition_table_csv (const FmNutritionTable *self);
/** Without rows that have no value. Returns: (transfer full). */
FmBatchSheet *fm_nutrition_table_sheet (const FmNutritionTable *self);

G_END_DECLS
