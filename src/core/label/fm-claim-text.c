/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-claim-text.c - the criteria of claims in sentences */
#include "core/label/fm-claim.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "core/base/fm-number.h"

#define MAX_DECIMALS 6

static const struct {
  const char *name;
  const char *unit;
} items[] = {
  [FM_CLAIM_TOTAL_FAT] = { N_ ("fat"), "g" },
  [FM_CLAIM_SATURATED_FAT] = { N_ ("saturated fat"), "g" },
  [FM_CLAIM_CHOLESTEROL] = { N_ ("cholesterol"), "mg" },
  [FM_CLAIM_SODIUM] = { N_ ("sodium"), "mg" },
  [FM_CLAIM_SUGARS] = { N_ ("sugars"), "g" },
  [FM_CLAIM_SATURATES_AND_TRANS] = { N_ ("saturated and trans fat"), "g" },
  [FM_CLAIM_SATURATES_AND_TRANS_ENERGY] = { N_ ("energy from saturated and trans fat"), "%" },
  [FM_CLAIM_PROTEIN_ENERGY] = { N_ ("energy from protein"), "%" },
  [FM_CLAIM_PROTEIN_SHARE] = { N_ ("protein, corrected for its quality, of the Daily Value"), "%" },
  [FM_CLAIM_IRON_SHARE] = { N_ ("iron, of the Daily Value"), "%" },
};

const char *
fm_claim_state_name (FmClaimState state)
{
  switch (state) {
  case FM_CLAIM_MET:
    return _ ("met");
  case FM_CLAIM_NOT_MET:
    return _ ("NOT met");
  case FM_CLAIM_NOT_KNOWN:
    return _ ("not known");
  }
  g_return_val_if_reached ("");
}

static const char *
basis_text (FmClaimBasis basis)
{
  switch (basis) {
  case FM_CLAIM_PER_100G:
    return _ (" in 100 g");
  case FM_CLAIM_REFERENCE:
    return _ (" in 114 g, the reference amount");
  case FM_CLAIM_ENERGY:
    return "";
  }
  g_return_val_if_reached ("");
}

static char *
limit_text (const FmClaimCriterion *criterion)
{
  g_autofree char *number = fm_number_to_edit (criterion->limit, 2);
  const char *unit = items[criterion->item].unit;

  switch (criterion->sign) {
  case FM_CLAIM_AT_MOST:
    return g_strdup_printf (_ ("limit: at most %s %s"), number, unit);
  case FM_CLAIM_BELOW:
    return g_strdup_printf (_ ("limit: below %s %s"), number, unit);
  case FM_CLAIM_AT_LEAST:
    return g_strdup_printf (_ ("limit: at least %s %s"), number, unit);
  }
  g_return_val_if_reached (NULL);
}

/* Never rounded across the limit that it is held against. */
static char *
value_text (const FmClaimResult *result)
{
  const double limit = result->criterion->limit;
  int decimals = 1;

  while (decimals < MAX_DECIMALS && result->value != limit &&
         round (result->value * pow (10, decimals)) == round (limit * pow (10, decimals)))
    decimals++;
  return fm_number_format_unit (result->value, decimals, items[result->criterion->item].unit);
}

char *
fm_claim_result_text (const FmClaimResult *result)
{
  const FmClaimCriterion *criterion = result->criterion;
  const char *name = _ (items[criterion->item].name);
  g_autofree char *limit = limit_text (criterion);
  g_autofree char *value = NULL;
  g_autofree char *margin = NULL;

  if (result->state == FM_CLAIM_NOT_KNOWN)
    /* TRANSLATORS: "fat", " in 100 g", "limit: below 10 g" */
    return g_strdup_printf (_ ("%s%s not known, %s"), name, basis_text (criterion->basis), limit);
  value = value_text (result);
  margin = fm_number_format_unit (fabs (result->margin), 1, items[criterion->item].unit);
  /* TRANSLATORS: "fat", "20.0 g", " in 100 g", "limit: below 10 g", "10.0 g", "not met" */
  return g_strdup_printf (result->margin < 0.0 ? _ ("%s %s%s, %s, missed by %s – %s")
                                               : _ ("%s %s%s, %s, %s to spare – %s"),
                          name, value, basis_text (criterion->basis), limit, margin,
                          fm_claim_state_name (result->state));
}

char *
fm_claim_text (const char *claim, const FmClaimInput *input)
{
  GString *text = g_string_new (NULL);
  const FmClaimCriterion *last = NULL;

  for (guint i = 0; i < fm_n_label_criteria; i++) {
    const FmClaimCriterion *criterion = &fm_label_criteria[i];
    const FmClaimResult result = fm_claim_judge (criterion, input);
    g_autofree char *line = NULL;

    if (criterion->set != input->set || strcmp (criterion->claim, claim) != 0)
      continue;
    line = fm_claim_result_text (&result);
    g_string_append_printf (text, "%s\n", line);
    last = criterion;
  }
  if (last != NULL)
    g_string_append_printf (text, "%s: %s", last->source, last->how_read);
  return g_string_free (text, FALSE);
}

char *
fm_claim_lean_text (const FmClaimInput *input)
{
  g_autofree char *point = fm_lean_point_format (input->analysis->fat_pct);

  if (input->set == FM_LABEL_EU)
    return g_strdup ("");
  if (isnan (input->analysis->fat_pct))
    return g_strdup (_ ("% lean: not known, as the fat is not."));
  /* TRANSLATORS: "80/20", lean and fat in % */
  return g_strdup_printf (
      _ ("Lean and fat by calculation: %s. The %% of lean may stand on ground meat that is not low "
         "in fat only together with the %% of fat (9 CFR 317.362(f), read in the summary of 75 FR "
         "82148), next to it and alike in colour, size and type (from memory)."),
      point);
}
