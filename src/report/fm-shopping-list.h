/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-shopping-list.h - what to buy for several batches, by supplier, on paper */
#pragma once

#include "core/batch/fm-shopping.h"
#include "report/fm-batch-sheet.h"

G_BEGIN_DECLS

/**
 * FmShoppingHead:
 * @notebook_name: (nullable)
 * @date_text: (nullable)
 * @currency: sign beside costs, may be ""
 * @batches: what it is for, a line each: "Pan patty, version 3: 40 patties of 180 g"
 * @buy_step_g: as the list was made with
 */
typedef struct {
  const char *notebook_name;
  const char *date_text;
  const char *currency;
  const char *const *batches;
  double buy_step_g;
} FmShoppingHead;

FmBatchSheet *fm_shopping_list_new (const FmShopping *shopping, const FmShoppingHead *head);

G_END_DECLS
