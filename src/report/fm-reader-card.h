/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-reader-card.h - the card for readers at home, on paper and as a page of the web
 *
 * Amounts are rounded for a kitchen scale so that the targets stand as they did
 * (fm-home-amounts.h). The page carries schema.org/Recipe and NutritionInformation as JSON-LD; what
 * is not known is left out of it.
 */
#pragma once

#include "report/fm-batch-sheet.h"

G_BEGIN_DECLS

/** NULL + error for a formula that weighs nothing. */
FmBatchSheet *fm_reader_card_new (const FmFormula *formula,
                                  const FmBatchSheetInput *input,
                                  gboolean ounces,
                                  GError **error);
/** @date: (nullable): ISO 8601, of the page. NULL + error likewise. Returns: (transfer full). */
char *fm_reader_card_html (const FmFormula *formula,
                           const FmBatchSheetInput *input,
                           gboolean ounces,
                           const char *date,
                           GError **error);
/** ISO 8601-1, clause 5.5.2: "PT7M", "PT1H30M". NULL for NaN and below zero. (transfer full) */
char *fm_duration_iso (double minutes);

G_END_DECLS
