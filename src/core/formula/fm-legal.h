/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-legal.h - limits that rules of law set for ground meat, beside what the blend has
 *
 * Figures, never a verdict: whether a food may be sold under a name, a licensed professional or the
 * authority must check. The limits, their sources and how they were read stand in
 * data/legal/limits.tsv. Not known stays not known.
 */
#pragma once

#include "core/formula/fm-analysis.h"

G_BEGIN_DECLS

typedef enum {
  FM_LEGAL_FAT,          /* % of the raw blend */
  FM_LEGAL_COLLAGEN,     /* collagen as % of meat protein */
  FM_LEGAL_SALT,         /* sodium x 2.5 as % of the blend: Regulation (EU) No 1169/2011, Annex I */
  FM_LEGAL_WATER_BINDER, /* share of water and binders, % */
  FM_LEGAL_ADDED_FAT,    /* share of fat added as such, % */
} FmLegalFigure;

/** Which blends a limit speaks of. */
typedef enum {
  FM_LEGAL_MEAT_ANY,
  FM_LEGAL_MEAT_BEEF, /* beef alone */
  FM_LEGAL_MEAT_PORK, /* pork among others */
  FM_LEGAL_MEAT_OTHER /* neither beef alone nor with pork */
} FmLegalMeat;

typedef struct {
  FmRuleSet set;
  const char *designation; /* in the words of the rule */
  FmLegalMeat meat;
  FmLegalFigure figure;
  gboolean must_be_below; /* FALSE: the limit itself still meets it */
  double limit_pct;
  const char *source;
  const char *text_date;
  const char *how_read;
} FmLegalLimit;

typedef enum {
  FM_LEGAL_MET,
  FM_LEGAL_NOT_MET,
  FM_LEGAL_UNKNOWN,    /* the figure or the kind of animal is not known */
  FM_LEGAL_OTHER_MEAT, /* the limit speaks of other blends */
} FmLegalState;

typedef struct {
  const FmLegalLimit *limit;
  double value_pct;  /* NaN = not known */
  double margin_pct; /* limit less value; NaN = not known */
  FmLegalState state;
} FmLegalResult;

/* Written by the build. */
extern const FmLegalLimit fm_legal_limits[];
extern const guint fm_n_legal_limits;

FmLegalResult
fm_legal_judge (const FmLegalLimit *limit, const FmFormula *formula, const FmAnalysis *analysis);
/** "minced pure beef: fat 21.2 %, limit 20 %, 1.2 over – not met". Returns: (transfer full). */
char *fm_legal_result_text (const FmLegalResult *result);
/** Every limit of @set that speaks of the blend, then sources, how they were read and who must
 * check; "" for no set. Returns: (transfer full). */
char *fm_legal_text (const FmFormula *formula, const FmAnalysis *analysis, FmRuleSet set);

G_END_DECLS
