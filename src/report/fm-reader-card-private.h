/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-reader-card-private.h - the texts of the card, shared by paper and page */
#pragma once

#include "core/batch/fm-home-amounts.h"
#include "report/fm-reader-card.h"

G_BEGIN_DECLS

/** "225 g Chuck", one each. (transfer full) */
GStrv fm_reader_ingredients (const FmHomeAmounts *amounts, gboolean ounces);
/** (transfer full) */
GStrv fm_reader_steps (const FmFormula *formula, const FmBatchSheetInput *input);
/** What a patty of the rounded amounts weighs, g. */
double fm_reader_patty_g (const FmHomeAmounts *amounts, const FmBatchSheetInput *input);
/** "4 patties of about 113 g raw". (transfer full) */
char *
fm_reader_yield (const FmHomeAmounts *amounts, const FmBatchSheetInput *input, gboolean ounces);
/** Both sides; NaN when one is not planned. */
double fm_reader_cook_minutes (const FmFormula *formula);
const char *fm_reader_rounding_note (const FmHomeAmounts *amounts); /* translated */

G_END_DECLS
