/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-price-sheet.h - a version at today's prices, the change explained by ingredient, on paper */
#pragma once

#include "core/batch/fm-reprice.h"
#include "report/fm-batch-sheet.h"

G_BEGIN_DECLS

/** @formula_name: "Pan patty, version 3"; @date_text: (nullable); @currency: may be "". */
FmBatchSheet *fm_price_sheet_new (const FmReprice *reprice,
                                  const char *formula_name,
                                  const char *date_text,
                                  const char *currency);

G_END_DECLS
