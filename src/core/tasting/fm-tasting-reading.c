/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-reading.c - from sheets to tests */
#include "core/tasting/fm-tasting-reading.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-error.h"
#include "core/tasting/fm-tasting-private.h"
#include "core/tasting/fm-tasting-reading-private.h"

#define ALPHA 0.05

static gboolean
is_counted (const FmTaster *taster)
{
  return taster->sheet == FM_SHEET_IN || taster->sheet == FM_SHEET_DROPPED_OUT;
}

static void
jar_free (gpointer data)
{
  FmTastingJar *jar = data;
  g_free (jar->sentence);
  g_free (jar);
}

void
fm_tasting_reading_free (FmTastingReading *self)
{
  if (self == NULL)
    return;
  g_strfreev (self->labels);
  g_strfreev (self->tasters);
  g_free (self->sample);
  g_free (self->code);
  fm_rank_table_free (self->ranks);
  fm_rank_result_free (self->rank);
  g_free (self->rank_problem);
  g_free (self->page_problem);
  g_free (self->liking);
  fm_anova_result_free (self->anova);
  g_free (self->anova_problem);
  g_clear_pointer (&self->jar, g_ptr_array_unref);
  for (guint i = 0; i < 2; i++) {
    g_free (self->preference_names[i]);
    g_free (self->triangle_names[i]);
  }
  fm_rank_result_free (self->position_rank);
  fm_anova_result_free (self->position_liking);
  g_free (self->position_mean_liking);
  g_free (self->agreement_sentence);
  g_free (self->position_sentence);
  g_free (self->headline);
  g_clear_pointer (&self->lines, g_ptr_array_unref);
  g_free (self);
}

/* By code while sealed: the plan's order would tell who is who */
static void
sort_by_code (guint *sample, const guint *code_of, guint n)
{
  for (guint i = 1; i < n; i++) {
    const guint moved = sample[i];
    guint j = i;
    for (; j > 0 && code_of[sample[j - 1]] > code_of[moved]; j--)
      sample[j] = sample[j - 1];
    sample[j] = moved;
  }
}

/* The samples that somebody got in the main round, or in the pair where there is no main round */
static void
fill_columns (FmTastingReading *self, const FmTasting *tasting)
{
  const FmTastingRound round =
      (tasting->tasks & FM_TASTING_MAIN_TASKS) != 0 ? FM_TASTING_ROUND_MAIN : FM_TASTING_ROUND_PAIR;
  guint code_of[FM_TASTING_MAX_SAMPLES] = { 0 };
  for (guint i = 0; i < tasting->cups->len; i++) {
    const FmTastingCup *cup = &g_array_index (tasting->cups, FmTastingCup, i);
    if (cup->round == round && cup->sample < FM_TASTING_MAX_SAMPLES)
      code_of[cup->sample] = cup->code;
  }

  self->sample = g_new0 (guint, FM_TASTING_MAX_SAMPLES);
  for (guint s = 0; s < tasting->samples->len; s++)
    if (code_of[s] > 0)
      self->sample[self->n_samples++] = s;
  if (fm_tasting_is_sealed (tasting))
    sort_by_code (self->sample, code_of, self->n_samples);
  self->labels = g_new0 (char *, self->n_samples + 1);
  self->code = g_new0 (guint, MAX (self->n_samples, 1));
  for (guint i = 0; i < self->n_samples; i++) {
    self->labels[i] = fm_tasting_sample_label (tasting, self->sample[i]);
    self->code[i] = code_of[self->sample[i]];
  }
}

static void
fill_rows (FmTastingReading *self, FmTastingSheets *sheets)
{
  const FmTasting *tasting = sheets->tasting;
  sheets->taster = g_new0 (guint, tasting->tasters->len);
  self->tasters = g_new0 (char *, tasting->tasters->len + 1);
  for (guint t = 0; t < tasting->tasters->len; t++) {
    const FmTaster *taster = fm_tasting_taster (tasting, t);
    if (!is_counted (taster))
      continue;
    self->tasters[self->n_tasters] = g_strdup (taster->name);
    sheets->taster[self->n_tasters++] = t;
  }
}

static double
mark_at (const FmTastingReading *self,
         const FmTastingSheets *sheets,
         guint row,
         guint column,
         FmTastingTask task,
         guint attribute)
{
  return fm_tasting_mark (sheets->tasting, sheets->taster[row], self->code[column], task,
                          attribute);
}

/* Places of the columns in the order written down; closes gaps of samples that nobody got */
static void
expected_places (const FmTastingReading *self, const GArray *expected, guint *place)
{
  for (guint i = 0; i < self->n_samples; i++) {
    place[i] = 1;
    for (guint j = 0; j < self->n_samples; j++)
      place[i] += g_array_index (expected, guint, self->sample[j]) <
                  g_array_index (expected, guint, self->sample[i]);
  }
}

static void
read_page (FmTastingReading *self, const FmTasting *tasting)
{
  guint place[FM_TASTING_MAX_SAMPLES];
  g_autoptr (GError) error = NULL;

  if (tasting->expected_place == NULL)
    return;
  /* beside the rank sums of the codes it would tell which code was expected where */
  if (fm_tasting_is_sealed (tasting)) {
    self->page_problem =
        g_strdup (_ ("Whether the order written down before was found is told after opening."));
    return;
  }
  expected_places (self, tasting->expected_place, place);
  self->has_page = fm_rank_page (self->ranks, place, tasting->seed, &self->page, &error);
  if (!self->has_page)
    self->page_problem = g_strdup (error->message);
}

static void
read_ranks (FmTastingReading *self, const FmTastingSheets *sheets)
{
  g_autoptr (GError) error = NULL;

  if ((sheets->tasting->tasks & FM_TASTING_RANK) == 0)
    return;
  self->ranks = fm_rank_table_new (self->n_tasters, self->n_samples);
  for (guint t = 0; t < self->n_tasters; t++)
    for (guint s = 0; s < self->n_samples; s++)
      fm_rank_table_set (self->ranks, t, s, mark_at (self, sheets, t, s, FM_TASTING_RANK, 0));
  self->rank = fm_rank_test (self->ranks, sheets->tasting->seed, &error);
  if (self->rank == NULL) {
    self->rank_problem = g_strdup (error->message);
    return;
  }
  if (self->rank->p <= ALPHA)
    self->lsd_conover = fm_rank_lsd_conover (self->ranks, ALPHA);
  read_page (self, sheets->tasting);
}

static void
read_liking (FmTastingReading *self, const FmTastingSheets *sheets)
{
  g_autoptr (GError) error = NULL;

  if ((sheets->tasting->tasks & FM_TASTING_LIKING) == 0)
    return;
  self->liking = g_new (double, (gsize)self->n_tasters * self->n_samples);
  for (guint t = 0; t < self->n_tasters; t++)
    for (guint s = 0; s < self->n_samples; s++)
      self->liking[t * self->n_samples + s] = mark_at (self, sheets, t, s, FM_TASTING_LIKING, 0);
  self->anova = fm_anova_liking (self->n_tasters, self->n_samples, self->liking, &error);
  if (self->anova == NULL)
    self->anova_problem = g_strdup (error->message);
}

static void
read_jar_of (FmTastingReading *self, const FmTastingSheets *sheets, guint sample, guint attribute)
{
  g_autofree guint *jar = g_new0 (guint, self->n_tasters);
  g_autofree double *liking = g_new (double, self->n_tasters);
  FmTastingJar *read = g_new0 (FmTastingJar, 1);

  for (guint t = 0; t < self->n_tasters; t++) {
    const double mark = mark_at (self, sheets, t, sample, FM_TASTING_JAR, attribute);
    jar[t] = isnan (mark) ? 0 : (guint)mark;
    liking[t] = self->liking != NULL ? self->liking[t * self->n_samples + sample] : NAN;
  }
  read->sample = sample;
  read->attribute = attribute;
  if (!fm_panel_jar (self->n_tasters, jar, liking, &read->result, NULL)) {
    jar_free (read);
    return;
  }
  read->sentence =
      fm_panel_jar_sentence (&read->result, sheets->tasting->attributes->pdata[attribute]);
  g_ptr_array_add (self->jar, read);
}

static void
read_jar (FmTastingReading *self, const FmTastingSheets *sheets)
{
  self->jar = g_ptr_array_new_with_free_func (jar_free);
  if ((sheets->tasting->tasks & FM_TASTING_JAR) == 0)
    return;
  for (guint a = 0; a < sheets->tasting->attributes->len; a++)
    for (guint s = 0; s < self->n_samples; s++)
      read_jar_of (self, sheets, s, a);
}

/* The cup of a pair or triangle this taster chose; (nullable) */
static const FmTastingCup *
chosen_cup (const GPtrArray *cups, const FmTasting *tasting, FmTastingTask task)
{
  for (guint i = 0; i < cups->len; i++) {
    const FmTastingCup *cup = cups->pdata[i];
    if (!isnan (fm_tasting_mark (tasting, cup->taster, cup->code, task, 0)))
      return cup;
  }
  return NULL;
}

static gboolean
is_odd_one (const GPtrArray *cups, const FmTastingCup *chosen)
{
  guint same = 0;
  for (guint i = 0; i < cups->len; i++)
    same += ((const FmTastingCup *)cups->pdata[i])->sample == chosen->sample;
  return same == 1;
}

static guint
pair_code (const FmTasting *tasting, guint sample)
{
  return fm_tasting_round_code (tasting, sample, FM_TASTING_ROUND_PAIR);
}

static void
read_preference (FmTastingReading *self, const FmTastingSheets *sheets)
{
  const FmTasting *tasting = sheets->tasting;
  guint n = 0, n_first = 0;

  if ((tasting->tasks & FM_TASTING_PREFERENCE) == 0)
    return;
  guint sample[2] = { (guint)tasting->pair[0], (guint)tasting->pair[1] };
  if (fm_tasting_is_sealed (tasting) &&
      pair_code (tasting, sample[0]) > pair_code (tasting, sample[1])) {
    sample[0] = (guint)tasting->pair[1];
    sample[1] = (guint)tasting->pair[0];
  }
  for (guint t = 0; t < self->n_tasters; t++) {
    g_autoptr (GPtrArray) cups =
        fm_tasting_cups (tasting, sheets->taster[t], FM_TASTING_ROUND_PAIR);
    const FmTastingCup *chosen = chosen_cup (cups, tasting, FM_TASTING_PREFERENCE);
    n += chosen != NULL;
    n_first += chosen != NULL && chosen->sample == sample[0];
  }
  for (guint i = 0; i < 2; i++)
    self->preference_names[i] = fm_tasting_is_sealed (tasting)
                                    ? g_strdup_printf ("%u", pair_code (tasting, sample[i]))
                                    : fm_tasting_sample_label (tasting, sample[i]);
  self->has_preference =
      fm_choice_test (FM_CHOICE_PAIRED_PREFERENCE, n, n_first, &self->preference, NULL);
}

static void
read_triangle (FmTastingReading *self, const FmTastingSheets *sheets)
{
  const FmTasting *tasting = sheets->tasting;
  guint n = 0, n_right = 0;

  if ((tasting->tasks & FM_TASTING_TRIANGLE) == 0)
    return;
  for (guint t = 0; t < self->n_tasters; t++) {
    g_autoptr (GPtrArray) cups =
        fm_tasting_cups (tasting, sheets->taster[t], FM_TASTING_ROUND_TRIANGLE);
    const FmTastingCup *chosen = chosen_cup (cups, tasting, FM_TASTING_TRIANGLE);
    n += chosen != NULL;
    n_right += chosen != NULL && is_odd_one (cups, chosen);
  }
  /* the codes of the main round are no business of the triangle while sealed */
  for (guint i = 0; i < 2; i++)
    self->triangle_names[i] = fm_tasting_is_sealed (tasting)
                                  ? g_strdup (_ ("sealed"))
                                  : fm_tasting_sample_label (tasting, (guint)tasting->triangle[i]);
  self->has_triangle = fm_choice_test (FM_CHOICE_TRIANGLE, n, n_right, &self->triangle, NULL);
}

static gboolean
check_readable (const FmTasting *tasting, GError **error)
{
  if (tasting->state == FM_TASTING_PLANNED) {
    g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY,
                         _ ("This tasting is only planned. Give out the codes and taste first."));
    return FALSE;
  }
  for (guint t = 0; t < tasting->tasters->len; t++)
    if (is_counted (fm_tasting_taster (tasting, t)))
      return TRUE;
  g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY,
                       _ ("No sheet is in yet. Enter at least one and mark it as in."));
  return FALSE;
}

FmTastingReading *
fm_tasting_read (const FmTasting *tasting, const FmStop *stop, GError **error)
{
  static void (*const steps[]) (FmTastingReading *, const FmTastingSheets *) = {
    read_ranks, read_liking, read_jar, read_preference, read_triangle, fm_tasting_reading_positions,
  };
  if (!check_readable (tasting, error))
    return NULL;

  g_autoptr (FmTastingReading) self = g_new0 (FmTastingReading, 1);
  FmTastingSheets sheets = { tasting, NULL };
  self->lsd_conover = NAN;
  fill_columns (self, tasting);
  fill_rows (self, &sheets);
  guint step = 0;
  for (; step < G_N_ELEMENTS (steps) && !fm_stop_asked (stop); step++)
    steps[step](self, &sheets);
  g_free (sheets.taster);
  if (step < G_N_ELEMENTS (steps)) {
    g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_STOPPED, _ ("Reading was stopped."));
    return NULL;
  }
  fm_tasting_reading_tell (self, tasting);
  return g_steal_pointer (&self);
}
