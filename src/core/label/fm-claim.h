/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-claim.h - what must hold before a label may claim something, beside what the blend has
 *
 * Criteria: data/label/claims.tsv. Figures, never a claim by default: whether a claim may be made,
 * a licensed professional or the authority must check. Not known stays not known.
 */
#pragma once

#include "core/label/fm-label-amount.h"

G_BEGIN_DECLS

typedef enum {
  FM_CLAIM_MET,
  FM_CLAIM_NOT_MET,
  FM_CLAIM_NOT_KNOWN,
} FmClaimState;

typedef struct {
  FmLabelSetId set;
  const FmFormula *formula;
  const FmAnalysis *analysis;
  const FmLabelStated *stated; /* (nullable) */
} FmClaimInput;

typedef struct {
  const FmClaimCriterion *criterion;
  double value; /* in the unit of the criterion, on its basis; NaN = not known */
  double
      margin; /* how far on the good side of the limit, below 0 when on the other; NaN likewise */
  FmClaimState state;
} FmClaimResult;

FmClaimResult fm_claim_judge (const FmClaimCriterion *criterion, const FmClaimInput *input);
/** All criteria of @claim together; not met as soon as one is not. */
FmClaimState fm_claim_state (const char *claim, const FmClaimInput *input);
/** The claims of @set in the order of the table, each once. Returns: (transfer full). */
GStrv fm_claims_of (FmLabelSetId set);
const char *fm_claim_state_name (FmClaimState state); /* translated */
/** "fat 20.0 g of 100 g, limit: below 10 g, 10.0 over – not met". Returns: (transfer full). */
char *fm_claim_result_text (const FmClaimResult *result);
/** Every criterion of @claim, a line each, with its sources. Returns: (transfer full). */
char *fm_claim_text (const char *claim, const FmClaimInput *input);
/** The lean and fat point and the rule about it; "" in the European Union. (transfer full) */
char *fm_claim_lean_text (const FmClaimInput *input);

G_END_DECLS
