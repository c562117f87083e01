/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-outlook.c - what this panel can and cannot show, before it starts */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-number.h"
#include "core/statistics/fm-panel-text-private.h"
#include "core/statistics/fm-stat.h"
#include "core/tasting/fm-tasting-private.h"
#include "core/tasting/fm-tasting-reading.h"

/* How far one taster's liking of like samples scatters on the 9-point scale: common practice, no
 * source */
#define LIKING_SCATTER 1.5

typedef struct {
  guint n; /* tasters */
  guint t; /* samples */
  guint k; /* cups a taster gets */
} Size;

static double
log_factorial (guint n)
{
  return lgamma (n + 1.0);
}

/*
 * In a balanced incomplete plan the rank sums lie furthest apart when all sheets follow one order
 * of the t samples: t! of the (k!)^n ways to fill them in. Elsewhere at least an order and its
 * reverse are that far apart, so that p is no smaller than 2 / (k!)^n.
 */
static double
smallest_incomplete_p (const Size *size, gboolean is_balanced)
{
  const double ways = is_balanced ? log_factorial (size->t) : log (2);
  return MIN (1, exp (ways - size->n * log_factorial (size->k)));
}

static char *
incomplete_rank_text (const Size *size, const FmTasting *tasting)
{
  g_autoptr (FmServingPlan) plan =
      fm_serving_plan_new (size->t, size->n, size->k, tasting->seed, NULL);
  if (plan == NULL)
    return g_strdup (_ ("No serving plan is known for that many samples for each person."));
  const double smallest = smallest_incomplete_p (size, plan->is_balanced);
  g_autofree char *odds = fm_panel_odds_text (smallest);
  GString *text = g_string_new (NULL);
  g_string_append_printf (text,
                          _ ("Each person ranks %u of the %u samples, so that a sample is tasted "
                             "by %u to %u tasters and a pair compared by %u to %u."),
                          size->k, size->t, plan->served_min, plan->served_max, plan->together_min,
                          plan->together_max);
  if (smallest > FM_PANEL_ALPHA)
    g_string_append_printf (
        text, _ (" That cannot separate the samples: even if all agree it is %s."), odds);
  else
    g_string_append_printf (text, _ (" If all follow one order it is %s."), odds);
  if (!plan->is_balanced && plan->is_near_balance)
    g_string_append (text, _ (" No small balanced plan is known for these numbers; the plan is as "
                              "even as could be found."));
  else if (!plan->is_balanced)
    g_string_append_printf (text,
                            _ (" All pairs are compared equally often with %u tasters or a "
                               "multiple of that; rank sums have no least significant difference "
                               "until then."),
                            plan->full_round);
  return g_string_free (text, FALSE);
}

static char *
page_text (const Size *size)
{
  if (size->k < size->t)
    return g_strdup (_ ("The order written down before cannot be tested: nobody ranks all "
                        "samples."));
  const double smallest = exp (-(size->n * log_factorial (size->t)));
  g_autofree char *odds = fm_panel_odds_text (smallest);
  return g_strdup_printf (smallest <= FM_PANEL_ALPHA
                              ? _ ("If all tasters find the order written down before, that is %s.")
                              : _ ("The order written down before cannot be shown: even if all "
                                   "tasters find it, that is %s."),
                          odds);
}

static char *
liking_text (const Size *size)
{
  const double servings = (double)size->n * size->k;
  const double df = servings - size->n - size->t + 1;
  if (df < 1)
    return g_strdup (_ ("Liking scores cannot be compared at this size: nothing is left to judge "
                        "chance by."));
  /* efficiency of incomplete blocks (Cochran and Cox, ch. 11); 1 when complete */
  const double efficiency = (double)size->t * (size->k - 1) / ((double)size->k * (size->t - 1));
  const double standard_error = LIKING_SCATTER / sqrt (servings / size->t * efficiency);
  const double needed =
      fm_stat_studentized_range_quantile (FM_PANEL_ALPHA, size->t, df) * standard_error;
  g_autofree char *scatter = fm_number_format (LIKING_SCATTER, 1);
  if (needed > 8)
    return g_strdup_printf (_ ("Liking scores cannot show a difference at this size if a taster's "
                               "scores scatter by %s points, as is common."),
                            scatter);
  g_autofree char *points = fm_number_format (needed, 1);
  return g_strdup_printf (_ ("If a taster's liking scores scatter by %s points, as is common, two "
                             "samples must lie %s points apart to be told from chance."),
                          scatter, points);
}

static char *
jar_text (const Size *size)
{
  const double servings = (double)size->n * size->k / size->t;
  if (servings < 5)
    return g_strdup (_ ("Just-about-right answers are counted, not tested; with so few each "
                        "answer is more than a fifth of them, so take them as hints."));
  return g_strdup (_ ("Just-about-right answers are counted, not tested."));
}

/* Chance of a finding at 5 % somewhere among so many looks at equal steps where there is no
 * difference: Armitage, McPherson and Rowe (1969), J. R. Statist. Soc. A 132:235-244, Table 2,
 * normal data; worked out anew and in agreement with the published figures as remembered. */
static const struct {
  guint n_looks;
  double chance;
} looks[] = {
  { 2, 0.083 }, { 3, 0.107 }, { 4, 0.126 }, { 5, 0.142 }, { 10, 0.193 }, { 20, 0.248 },
};

/* NULL for one sheet only. A panel between two rows reads as the smaller of them. */
static char *
looking_text (guint n_sheets)
{
  guint row = G_N_ELEMENTS (looks);
  while (row > 0 && looks[row - 1].n_looks > n_sheets)
    row--;
  if (row == 0)
    return NULL;
  g_autofree char *percent = fm_number_format (100 * looks[row - 1].chance, 0);
  return g_strdup_printf (
      _ ("Open once, with all sheets in: where there is no difference, whoever looks after each of "
         "%u sheets and stops as soon as a test pleases finds one in about %s of 100 tastings, "
         "not in 5 (Armitage, McPherson and Rowe 1969)."),
      looks[row - 1].n_looks, percent);
}

static void
add_text (GPtrArray *texts, char *text)
{
  g_ptr_array_add (texts, text);
}

#define TESTED_TASKS                                                                               \
  (FM_TASTING_RANK | FM_TASTING_LIKING | FM_TASTING_PREFERENCE | FM_TASTING_TRIANGLE)

static void
add_texts (GPtrArray *texts, const FmTasting *tasting, const Size *size)
{
  FmPanelOutlook outlook;
  const guint tasks = tasting->tasks;
  fm_panel_outlook (size->n, size->t, &outlook);

  if ((tasks & FM_TASTING_RANK) != 0)
    add_text (texts, size->k < size->t ? incomplete_rank_text (size, tasting)
                                       : fm_panel_outlook_rank_text (&outlook));
  if ((tasks & FM_TASTING_RANK) != 0 && tasting->expected_place != NULL)
    add_text (texts, page_text (size));
  if ((tasks & FM_TASTING_LIKING) != 0)
    add_text (texts, liking_text (size));
  if ((tasks & FM_TASTING_JAR) != 0)
    add_text (texts, jar_text (size));
  if ((tasks & FM_TASTING_PREFERENCE) != 0)
    add_text (texts, fm_panel_outlook_preference_text (&outlook));
  if ((tasks & FM_TASTING_TRIANGLE) != 0)
    add_text (texts, fm_panel_outlook_triangle_text (&outlook));
  if ((tasks & FM_TASTING_REMARKS) != 0)
    add_text (texts, g_strdup (_ ("Free remarks are collected, not tested.")));
  if ((tasks & TESTED_TASKS) != 0 && size->n > 1)
    add_text (texts, looking_text (size->n));
}

char *
fm_tasting_outlook (const FmTasting *tasting)
{
  const Size size = { tasting->tasters->len, tasting->samples->len,
                      MIN (tasting->max_per_taster, tasting->samples->len) };
  if (size.n == 0 || size.t < 2 || size.k < 2 || tasting->tasks == 0)
    return g_strdup (_ ("Choose samples, tasters and what to ask; then this says what the panel "
                        "can show."));
  g_autoptr (GPtrArray) texts = g_ptr_array_new_with_free_func (g_free);
  add_texts (texts, tasting, &size);
  g_ptr_array_add (texts, NULL);
  return g_strjoinv (" ", (char **)texts->pdata);
}
