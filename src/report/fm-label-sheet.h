/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-label-sheet.h - a label and all that stands beside it, as rows of a sheet
 *
 * The panel at its true size or why there is none, the list of ingredients, how near each figure
 * stands to another one, claims criterion by criterion, the rules with their sources, and who must
 * check it.
 */
#pragma once

#include "core/label/fm-claim.h"
#include "core/label/fm-label-choice.h"
#include "report/fm-batch-sheet.h"
#include "report/fm-label-paint.h"

G_BEGIN_DECLS

typedef struct {
  const FmFormula *formula;
  const FmFormula *used; /* (nullable) what went in, for the list; of a patty @formula itself */
  const FmAnalysis *analysis;
  const char *blend_name;
  const char *version_name;
  const char *date_text;     /* (nullable) */
  const char *serving_words; /* "1 patty" */
  const char *notice;        /* (nullable) static: on the sheet and beside the panel */
} FmLabelOrigin;

/** On a panel a serving is one patty. Not translated: it stands on the food. */
#define FM_LABEL_SERVING_WORDS "1 patty"
/** Of a patty with what comes with it. */
#define FM_LABEL_DISH_WORDS "1 serving"

/** A panel and its texts. */
typedef struct {
  FmLabelPanel *panel; /* (nullable) */
  char *refused;       /* (nullable) why there is none */
  FmIngredientList *list;
  char *caption; /* blend, version, date and caution */
  char *serving_words;
} FmLabel;

FmLabel *fm_label_new (const FmLabelOrigin *origin, const FmLabelChoice *choice);
void fm_label_free (FmLabel *self);
/** What there is to draw; its panel must not be NULL. Lives as long as @self. */
FmLabelPicture fm_label_picture (const FmLabel *self);
/** The sheet, which keeps @self. (transfer full) @self */
FmBatchSheet *
fm_label_sheet_new (FmLabel *self, const FmLabelOrigin *origin, const FmLabelChoice *choice);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmLabel, fm_label_free)

G_END_DECLS
