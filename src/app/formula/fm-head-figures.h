/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-head-figures.h - the table of the figures at the head of a formula: a new one is one row */
#pragma once

#include "core/formula/fm-analysis.h"

G_BEGIN_DECLS

/** What a figure says of a formula; all translated. */
typedef struct {
  char *caption;
  char *value;
  char *note; /* (nullable) */
} FmHeadText;

void fm_head_text_clear (FmHeadText *self);

typedef struct {
  const char *caption; /* untranslated; NULL where @say makes it */
  FmNutrient nutrient; /* whose derivation is shown; else NONE */
  int decimals;        /* of the nutrient */
  const char *unit;    /* likewise, untranslated */
  /* (nullable): the nutrient alone. FALSE: there is nothing to say of this formula. */
  gboolean (*say) (const FmFormula *formula, const FmAnalysis *analysis, FmHeadText *text);
  /* (nullable): the one of the nutrient, or of the mass */
  char *(*derive) (const FmFormula *formula, const FmAnalysis *analysis);
  gboolean leads_to_targets; /* in place of a derivation */
} FmHeadFigure;

/** In the order shown. */
const FmHeadFigure *fm_head_figures (guint *n);
/** @text: (out): to be cleared. FALSE: the figure is not shown. */
gboolean fm_head_figure_say (const FmHeadFigure *self,
                             const FmFormula *formula,
                             const FmAnalysis *analysis,
                             FmHeadText *text);
/** Where the figure comes from. (transfer full) */
char *fm_head_figure_derivation (const FmHeadFigure *self, const FmFormula *formula);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (FmHeadText, fm_head_text_clear)

G_END_DECLS
