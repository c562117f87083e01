/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-story.c - opened tastings in the story of a version: one line each, and one liking */
#include "core/base/fm-date.h"
#include "core/tasting/fm-tasting-story.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-number.h"

static char *
opening (const FmTastingOutcome *outcome)
{
  g_autofree char *date = outcome->held_at > 0 ? fm_date_text (outcome->held_at) : NULL;
  gboolean has_title = outcome->tasting_title != NULL && outcome->tasting_title[0] != '\0';

  if (date == NULL)
    return has_title ? g_strdup_printf (_ ("Tasted, %s"), outcome->tasting_title)
                     : g_strdup (_ ("Tasted"));
  return has_title ? g_strdup_printf (_ ("Tasted %s, %s"), date, outcome->tasting_title)
                   : g_strdup_printf (_ ("Tasted %s"), date);
}

char *
fm_tasting_story_line (const FmTastingOutcome *outcome)
{
  g_autofree char *start = opening (outcome);
  const char *sentence = outcome->sentence != NULL ? outcome->sentence : "";

  if (!isnan (outcome->rank_sum)) {
    g_autofree char *rank_sum = fm_number_to_edit (outcome->rank_sum, 1);

    return g_strdup_printf (_ ("%s: %s. Rank sum %s."), start, sentence, rank_sum);
  }
  return g_strdup_printf (_ ("%s: %s."), start, sentence);
}

double
fm_tasting_story_liking (const GPtrArray *outcomes, guint *n_tasters)
{
  double sum = 0.0;
  guint n = 0;

  for (guint i = 0; i < outcomes->len; i++) {
    const FmTastingOutcome *outcome = g_ptr_array_index (outcomes, i);

    if (isnan (outcome->liking_mean))
      continue;
    sum += outcome->liking_mean * outcome->n_tasters;
    n += outcome->n_tasters;
  }
  *n_tasters = n;
  return n > 0 ? sum / n : NAN;
}
