/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-claim.c - what must hold before a label may claim something, beside what the blend has */
#include "core/label/fm-claim.h"

#include <math.h>
#include <string.h>

#include "core/label/fm-label-panel.h"

/* Arithmetic may leave a value this far beside a limit that it was made for. */
#define TOLERANCE 1e-9
#define FAT_KCAL_PER_G 9.0
#define PROTEIN_KCAL_PER_G 4.0

static double
amount (const FmClaimInput *input, FmLabelItem item)
{
  return fm_label_amount (item, input->formula, input->analysis, input->stated);
}

static double
saturates_and_trans (const FmClaimInput *input)
{
  return amount (input, FM_LABEL_ITEM_SATURATED_FAT) + amount (input, FM_LABEL_ITEM_TRANS_FAT);
}

/* Share of the energy by Regulation (EU) No 1169/2011, Annex XIV, %. */
static double
energy_pct (const FmClaimInput *input, double kcal_per_g, double g_per_100g)
{
  return 100.0 * kcal_per_g * g_per_100g / amount (input, FM_LABEL_ITEM_ENERGY_KCAL);
}

static double
daily_value (FmLabelSetId set, FmLabelItem item)
{
  for (guint i = 0; i < fm_n_label_rows; i++)
    if (fm_label_rows[i].set == set && fm_label_rows[i].item == item)
      return fm_label_rows[i].daily_value;
  return NAN;
}

static double
per_100g (FmClaimItem item, const FmClaimInput *input)
{
  const double protein_g = amount (input, FM_LABEL_ITEM_PROTEIN);

  switch (item) {
  case FM_CLAIM_TOTAL_FAT:
    return amount (input, FM_LABEL_ITEM_TOTAL_FAT);
  case FM_CLAIM_SATURATED_FAT:
    return amount (input, FM_LABEL_ITEM_SATURATED_FAT);
  case FM_CLAIM_CHOLESTEROL:
    return amount (input, FM_LABEL_ITEM_CHOLESTEROL);
  case FM_CLAIM_SODIUM:
    return amount (input, FM_LABEL_ITEM_SODIUM);
  case FM_CLAIM_SUGARS:
    return amount (input, FM_LABEL_ITEM_SUGARS);
  case FM_CLAIM_SATURATES_AND_TRANS:
    return saturates_and_trans (input);
  case FM_CLAIM_SATURATES_AND_TRANS_ENERGY:
    return energy_pct (input, FAT_KCAL_PER_G, saturates_and_trans (input));
  case FM_CLAIM_PROTEIN_ENERGY:
    return energy_pct (input, PROTEIN_KCAL_PER_G, protein_g);
  case FM_CLAIM_PROTEIN_SHARE:
    return input->stated != NULL && !isnan (input->stated->protein_quality)
               ? fm_label_protein_share_pct (protein_g, input->stated->protein_quality)
               : (double)NAN;
  case FM_CLAIM_IRON_SHARE:
    return 100.0 * amount (input, FM_LABEL_ITEM_IRON) /
           daily_value (input->set, FM_LABEL_ITEM_IRON);
  }
  g_return_val_if_reached (NAN);
}

static FmClaimState
judge_value (const FmClaimCriterion *criterion, double value)
{
  gboolean is_met = FALSE;

  if (isnan (value))
    return FM_CLAIM_NOT_KNOWN;
  switch (criterion->sign) {
  case FM_CLAIM_AT_MOST:
    is_met = value <= criterion->limit + TOLERANCE;
    break;
  case FM_CLAIM_BELOW:
    is_met = value < criterion->limit - TOLERANCE;
    break;
  case FM_CLAIM_AT_LEAST:
    is_met = value >= criterion->limit - TOLERANCE;
    break;
  }
  return is_met ? FM_CLAIM_MET : FM_CLAIM_NOT_MET;
}

FmClaimResult
fm_claim_judge (const FmClaimCriterion *criterion, const FmClaimInput *input)
{
  const double factor =
      criterion->basis == FM_CLAIM_REFERENCE ? FM_LABEL_REFERENCE_RAW_G / 100.0 : 1.0;
  FmClaimResult result = { .criterion = criterion };

  result.value = factor * per_100g (criterion->item, input);
  result.margin = criterion->sign == FM_CLAIM_AT_LEAST ? result.value - criterion->limit
                                                       : criterion->limit - result.value;
  result.state = judge_value (criterion, result.value);
  return result;
}

FmClaimState
fm_claim_state (const char *claim, const FmClaimInput *input)
{
  FmClaimState state = FM_CLAIM_MET;

  for (guint i = 0; i < fm_n_label_criteria; i++) {
    const FmClaimCriterion *criterion = &fm_label_criteria[i];
    FmClaimState one;

    if (criterion->set != input->set || strcmp (criterion->claim, claim) != 0)
      continue;
    one = fm_claim_judge (criterion, input).state;
    if (one == FM_CLAIM_NOT_MET || state == FM_CLAIM_MET)
      state = one;
  }
  return state;
}

GStrv
fm_claims_of (FmLabelSetId set)
{
  g_autoptr (GStrvBuilder) claims = g_strv_builder_new ();
  const char *last = "";

  for (guint i = 0; i < fm_n_label_criteria; i++) {
    const FmClaimCriterion *criterion = &fm_label_criteria[i];

    if (criterion->set != set || strcmp (criterion->claim, last) == 0)
      continue;
    last = criterion->claim;
    g_strv_builder_add (claims, last);
  }
  return g_strv_builder_end (claims);
}
