/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-outcome.c - from a reading to what is kept of each sample */
#include "core/tasting/fm-tasting-outcome.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-error.h"
#include "core/base/fm-number.h"
#include "core/statistics/fm-panel-text-private.h"

#define NO_COLUMN G_MAXUINT

void
fm_tasting_outcome_free (FmTastingOutcome *outcome)
{
  if (outcome == NULL)
    return;
  g_free (outcome->tasting_title);
  g_free (outcome->sentence);
  g_free (outcome);
}

static guint
column_of (const FmTastingReading *reading, guint sample)
{
  for (guint i = 0; i < reading->n_samples; i++)
    if (reading->sample[i] == sample)
      return i;
  return NO_COLUMN;
}

static guint
n_scores (const FmTastingReading *reading, guint column)
{
  guint n = 0;
  for (guint t = 0; t < reading->n_tasters && reading->liking != NULL; t++)
    n += !isnan (reading->liking[t * reading->n_samples + column]);
  return n;
}

static char *
with_tasters (char *start, guint n)
{
  g_autofree char *text = start;
  /* TRANSLATORS: "first of four", then how many tasted it */
  return g_strdup_printf (ngettext ("%s, %u taster", "%s, %u tasters", n), text, n);
}

static char *
rank_text (const FmTastingReading *reading, const FmTastingOutcome *outcome, gboolean is_shared)
{
  g_autofree char *ordinal = fm_panel_ordinal_word (outcome->place - 1);
  g_autofree char *samples = fm_panel_count_word (reading->n_samples);
  return with_tasters (g_strdup_printf (is_shared
                                            /* TRANSLATORS: "shares first place of four" */
                                            ? _ ("shares %s place of %s")
                                            /* TRANSLATORS: "first of four" */
                                            : _ ("%s of %s"),
                                        ordinal, samples),
                       outcome->n_tasters);
}

static char *
liking_text (const FmTastingOutcome *outcome)
{
  g_autofree char *mean = fm_number_format (outcome->liking_mean, 1);
  g_autofree char *low = fm_number_format (outcome->liking_low, 1);
  g_autofree char *high = fm_number_format (outcome->liking_high, 1);
  if (isnan (outcome->liking_low))
    return g_strdup_printf (_ ("liked %s of 9"), mean);
  return g_strdup_printf (_ ("liked %s of 9 (%s to %s)"), mean, low, high);
}

static char *
choice_text (const FmTasting *tasting, const FmTastingReading *reading, guint sample)
{
  const gboolean is_first = tasting->pair[0] == (int)sample;
  const gboolean in_pair = reading->has_preference && (is_first || tasting->pair[1] == (int)sample);
  const gboolean in_triangle = reading->has_triangle && (tasting->triangle[0] == (int)sample ||
                                                         tasting->triangle[1] == (int)sample);
  if (in_pair)
    return g_strdup_printf (_ ("chosen by %u of %u"),
                            is_first ? reading->preference.n_right
                                     : reading->preference.n - reading->preference.n_right,
                            reading->preference.n);
  if (in_triangle)
    return g_strdup_printf (_ ("%u of %u triangles right"), reading->triangle.n_right,
                            reading->triangle.n);
  return g_strdup (_ ("tasted, nothing tested"));
}

static char *
sentence_of (const FmTasting *tasting,
             const FmTastingReading *reading,
             const FmTastingOutcome *outcome,
             guint sample,
             gboolean is_shared)
{
  const gboolean is_ranked = outcome->place > 0, is_liked = !isnan (outcome->liking_mean);
  if (!is_ranked && !is_liked)
    return choice_text (tasting, reading, sample);

  g_autofree char *liked = is_liked ? liking_text (outcome) : NULL;
  g_autofree char *first = is_ranked ? rank_text (reading, outcome, is_shared)
                                     : with_tasters (g_strdup (liked), outcome->n_tasters);
  g_autofree char *both =
      is_ranked && is_liked ? g_strdup_printf ("%s; %s", first, liked) : g_strdup (first);
  if (outcome->is_separated)
    return g_steal_pointer (&both);
  return g_strdup_printf (is_ranked && is_liked ? _ ("%s; no difference is shown by rank order")
                                                : _ ("%s; no difference is shown"),
                          both);
}

static void
fill_from_column (FmTastingOutcome *self,
                  const FmTastingReading *reading,
                  guint column,
                  gboolean *is_shared)
{
  const FmRankResult *rank = reading->rank;
  self->code = reading->code[column];
  if (rank != NULL && rank->n_ranked[column] > 0) {
    self->rank_sum = rank->rank_sum[column];
    self->n_tasters = rank->n_ranked[column];
    self->place = fm_rank_place (rank, column, is_shared);
  }
  if (reading->anova != NULL && !isnan (reading->anova->mean[column])) {
    self->n_tasters = MAX (self->n_tasters, n_scores (reading, column));
    self->liking_mean = reading->anova->adjusted_mean[column];
    self->liking_low = reading->anova->low[column];
    self->liking_high = reading->anova->high[column];
  }
}

static gboolean
is_separated (const FmTastingReading *reading)
{
  if (reading->rank != NULL)
    return reading->rank->p <= FM_PANEL_ALPHA;
  return reading->anova != NULL && reading->anova->p_sample <= FM_PANEL_ALPHA;
}

static FmTastingOutcome *
outcome_new (const FmTasting *tasting, const FmTastingReading *reading, guint index)
{
  const FmTastingSample *sample = tasting->samples->pdata[index];
  const guint column = column_of (reading, index);
  gboolean is_shared = FALSE;
  FmTastingOutcome *self = g_new0 (FmTastingOutcome, 1);

  self->tasting_id = tasting->id;
  self->tasting_title = g_strdup (tasting->title);
  self->held_at = tasting->held_at;
  self->experiment_id = sample->experiment_id;
  self->version_id = sample->version_id;
  self->n_samples = tasting->samples->len;
  self->rank_sum = self->liking_mean = self->liking_low = self->liking_high = NAN;
  self->is_separated = is_separated (reading);
  if (column != NO_COLUMN)
    fill_from_column (self, reading, column, &is_shared);
  self->sentence = sentence_of (tasting, reading, self, index, is_shared);
  return self;
}

GPtrArray *
fm_tasting_outcomes_new (const FmTasting *tasting, const FmTastingReading *reading, GError **error)
{
  if (tasting->state != FM_TASTING_OPENED) {
    g_set_error_literal (
        error, FM_CORE_ERROR, FM_CORE_ERROR_LOCKED,
        _ ("This tasting is not open yet, so it has found nothing. Open it first."));
    return NULL;
  }
  GPtrArray *outcomes = g_ptr_array_new_with_free_func ((GDestroyNotify)fm_tasting_outcome_free);
  for (guint i = 0; i < tasting->samples->len; i++)
    g_ptr_array_add (outcomes, outcome_new (tasting, reading, i));
  return outcomes;
}
