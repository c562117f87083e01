/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-serving-sheet.h - what a serving is made of, nourishes with and costs, on paper */
#pragma once

#include "core/dish/fm-dish.h"
#include "report/fm-batch-sheet.h"

G_BEGIN_DECLS

/**
 * FmServingHead:
 * @version_name: "version 3, serving 2" or "version 3, serving not saved", translated
 * @name: (nullable) what the serving is called
 * @date_text: (nullable)
 * @currency: sign beside costs, may be ""
 */
typedef struct {
  const char *blend_name;
  const char *version_name;
  const char *name;
  const char *date_text;
  const char *currency;
} FmServingHead;

FmBatchSheet *
fm_serving_sheet_new (const FmDish *dish, const FmDishSum *sum, const FmServingHead *head);

G_END_DECLS
