/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-result-sections.c - rank order and liking as charts, tables and sentences */
#include "app/tastings/fm-tasting-result-sections.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/charts/fm-chart-intervals.h"
#include "app/charts/fm-chart-orders.h"
#include "app/widgets/fm-text-grid.h"
#include "core/base/fm-chart-scale.h"
#include "app/tastings/fm-tasting-text.h"
#include "app/widgets/fm-widget.h"
#include "core/base/fm-number.h"

static void
add_rank_sums (GtkBox *box, const FmTastingReading *reading)
{
  const FmRankResult *rank = reading->rank;
  g_autofree FmChartInterval *rows = g_new0 (FmChartInterval, rank->n_samples);
  const FmChartIntervalAxis axis = fm_tasting_result_rank_axis (rank);
  GtkWidget *chart = fm_chart_intervals_new ();

  for (guint i = 0; i < rank->n_samples; i++) {
    rows[i].label = reading->labels[i];
    rows[i].value = rank->rank_sum[i];
    /* no bar reaches where no rank sum can lie */
    rows[i].low = MAX (rank->rank_sum[i] - rank->half_width, rank->lowest_sum[i]);
    rows[i].high = MIN (rank->rank_sum[i] + rank->half_width, rank->highest_sum[i]);
    if (isnan (rank->half_width))
      rows[i].low = rows[i].high = NAN;
    rows[i].expected = rank->expected_sum[i];
  }
  fm_chart_intervals_set (FM_CHART_INTERVALS (chart), _ ("Rank sums"), 1, &axis, rows,
                          rank->n_samples);
  fm_tasting_result_add_chart (box, chart);
  fm_tasting_result_add_sentence (
      box,
      isnan (rank->half_width)
          ? _ ("● rank sum (low is liked)   ◇ expected if all were alike. The servings are too "
               "uneven for bars.")
          : _ ("● rank sum (low is liked)   ◇ expected if all were alike. Two samples whose bars "
               "do not overlap are clearly apart: equal samples anywhere among all pairs come that "
               "far apart in at most 5 of 100 sessions."));
}

static void
add_rank_table (GtkBox *box, const FmTastingReading *reading)
{
  const FmRankResult *rank = reading->rank;
  const char *heads[] = { _ ("Sample"), _ ("Rank sum"), _ ("If all were alike"), _ ("Sheets") };
  GtkGrid *grid = fm_tasting_result_add_table (box, _ ("Rank sums as a table"));

  fm_text_grid_add_row (grid, heads, G_N_ELEMENTS (heads), TRUE);
  for (guint i = 0; i < rank->n_samples; i++) {
    g_autofree char *sum = fm_number_format (rank->rank_sum[i], 1);
    g_autofree char *expected = fm_number_format (rank->expected_sum[i], 1);
    g_autofree char *sheets = g_strdup_printf ("%u", rank->n_ranked[i]);
    g_autofree char *sample = fm_tasting_result_sample (reading, i);
    const char *texts[] = { sample, sum, expected, sheets };

    fm_text_grid_add_row (grid, texts, G_N_ELEMENTS (texts), FALSE);
  }
}

static void
add_number (GtkGrid *grid, const char *what, double value, int decimals)
{
  g_autofree char *text = fm_number_format (value, decimals);
  const char *texts[] = { what, text };

  if (!isnan (value))
    fm_text_grid_add_row (grid, texts, G_N_ELEMENTS (texts), FALSE);
}

static void
add_p (GtkGrid *grid, const char *what, double p)
{
  g_autofree char *text = fm_panel_p_text (p);
  const char *texts[] = { what, text };

  if (!isnan (p))
    fm_text_grid_add_row (grid, texts, G_N_ELEMENTS (texts), FALSE);
}

static void
add_rank_numbers (GtkGrid *grid, const FmTastingReading *reading)
{
  const FmRankResult *rank = reading->rank;

  add_p (grid, _ ("Chance of such sums if all were alike"), rank->p);
  add_number (grid,
              rank->design == FM_RANK_FRIEDMAN ? _ ("Friedman's statistic")
                                               : _ ("Durbin's statistic"),
              rank->statistic, 3);
  add_number (grid, _ ("Distance of two rank sums at 5 % over all pairs"), rank->clear_distance, 1);
  add_number (grid, _ ("The same for one pair chosen before, large panels"), rank->lsd, 1);
  add_number (grid, _ ("The same for one pair chosen before, Conover"), reading->lsd_conover, 1);
  add_number (grid, _ ("Kendall's W"), rank->kendall_w, 3);
  add_number (grid, _ ("Mean Spearman correlation of two tasters"), rank->mean_spearman, 3);
}

static void
add_orders (GtkBox *box, const FmTastingReading *reading)
{
  const char *const *labels = (const char *const *)reading->labels;
  GtkWidget *chart = fm_chart_orders_new ();
  GString *legend = g_string_new (NULL);
  GtkGrid *grid;

  fm_chart_orders_set (FM_CHART_ORDERS (chart), reading->ranks,
                       (const char *const *)reading->tasters, labels);
  fm_tasting_result_add_chart (box, chart);
  for (guint i = 0; i < reading->n_samples; i++)
    g_string_append_printf (legend, "%s%s = %s", i > 0 ? "   " : "", fm_chart_letter (i),
                            labels[i]);
  fm_tasting_result_add_sentence (box, legend->str);
  g_string_free (legend, TRUE);
  grid = fm_tasting_result_add_table (box, _ ("Orders as a table"));
  for (guint taster = 0; taster < reading->n_tasters; taster++) {
    g_autofree char *order = fm_chart_orders_text (reading->ranks, taster, labels);
    const char *texts[] = { reading->tasters[taster], order };

    fm_text_grid_add_row (grid, texts, G_N_ELEMENTS (texts), FALSE);
  }
}

/* Agreement of each pair of tasters, as far as both ranked the same samples. */
static void
add_agreement (GtkBox *box, const FmTastingReading *reading)
{
  GtkGrid *grid;

  if (reading->n_tasters < 2)
    return;
  grid = fm_tasting_result_add_table (box, _ ("Agreement of each pair of tasters"));
  for (guint a = 0; a < reading->n_tasters; a++) {
    for (guint b = a + 1; b < reading->n_tasters; b++) {
      g_autofree char *pair =
          g_strdup_printf (_ ("%s and %s"), reading->tasters[a], reading->tasters[b]);

      add_number (grid, pair, fm_rank_agreement (reading->ranks, a, b), 2);
    }
  }
}

static void
add_rank (GtkBox *box, const FmTastingReading *reading)
{
  GtkGrid *grid;

  if (reading->rank == NULL && reading->rank_problem == NULL)
    return;
  fm_tasting_result_add_heading (box, _ ("Rank order"));
  if (reading->rank_problem != NULL)
    fm_tasting_result_add_sentence (box, reading->rank_problem);
  if (reading->rank == NULL)
    return;
  add_rank_sums (box, reading);
  add_rank_table (box, reading);
  if (reading->page_problem != NULL)
    fm_tasting_result_add_sentence (box, reading->page_problem);
  add_orders (box, reading);
  add_agreement (box, reading);
  grid = fm_tasting_result_add_method (box, fm_panel_rank_method (reading->rank));
  add_rank_numbers (grid, reading);
  if (reading->has_page) {
    grid = fm_tasting_result_add_method (box, fm_panel_page_method (&reading->page));
    add_number (grid, _ ("Page's L"), reading->page.l, 1);
    add_p (grid, _ ("Chance of Page's L if all were alike"), reading->page.p);
  }
}

static void
add_liking_table (GtkBox *box, const FmTastingReading *reading)
{
  const FmAnovaResult *anova = reading->anova;
  const char *heads[] = { _ ("Sample"), _ ("Mean"), _ ("As if all had scored it"), _ ("From"),
                          _ ("To") };
  GtkGrid *grid = fm_tasting_result_add_table (box, _ ("Liking as a table"));

  fm_text_grid_add_row (grid, heads, G_N_ELEMENTS (heads), TRUE);
  for (guint i = 0; i < anova->n_samples; i++) {
    g_autofree char *mean = fm_number_format (anova->mean[i], 2);
    g_autofree char *adjusted = fm_number_format (anova->adjusted_mean[i], 2);
    g_autofree char *low = fm_number_format (anova->low[i], 2);
    g_autofree char *high = fm_number_format (anova->high[i], 2);
    g_autofree char *sample = fm_tasting_result_sample (reading, i);
    const char *texts[] = { sample, mean, adjusted, low, high };

    fm_text_grid_add_row (grid, texts, G_N_ELEMENTS (texts), FALSE);
  }
}

static void
add_pairs (GtkBox *box, const FmTastingReading *reading)
{
  const FmAnovaResult *anova = reading->anova;
  const char *heads[] = { _ ("Pair"), _ ("Difference"), _ ("From"), _ ("To"),
                          _ ("Chance gives as much") };
  GtkGrid *grid = fm_tasting_result_add_table (box, _ ("Pairs of samples"));

  fm_text_grid_add_row (grid, heads, G_N_ELEMENTS (heads), TRUE);
  for (guint i = 0; i < anova->n_pairs; i++) {
    const FmAnovaPair *pair = &anova->pair[i];
    g_autofree char *names =
        /* Translators: the second sample's mean minus the first's */
        g_strdup_printf (_ ("%s over %s"), reading->labels[pair->b], reading->labels[pair->a]);
    g_autofree char *difference = fm_number_format (pair->difference, 2);
    g_autofree char *low = fm_number_format (pair->low, 2);
    g_autofree char *high = fm_number_format (pair->high, 2);
    g_autofree char *chance = fm_panel_chance_text (pair->p);
    const char *texts[] = { names, difference, low, high, chance };

    fm_text_grid_add_row (grid, texts, G_N_ELEMENTS (texts), FALSE);
  }
}

static void
add_liking (GtkBox *box, const FmTastingReading *reading)
{
  const FmAnovaResult *anova = reading->anova;
  g_autofree FmChartInterval *rows = g_new0 (FmChartInterval, MAX (reading->n_samples, 1));
  const FmChartIntervalAxis axis = fm_tasting_result_liking_axis ();
  GtkWidget *chart;
  GtkGrid *grid;

  if (anova == NULL && reading->anova_problem == NULL)
    return;
  fm_tasting_result_add_heading (box, _ ("Liking, 1 to 9"));
  if (reading->anova_problem != NULL)
    fm_tasting_result_add_sentence (box, reading->anova_problem);
  if (anova == NULL)
    return;
  for (guint i = 0; i < anova->n_samples; i++)
    rows[i] = (FmChartInterval){ reading->labels[i], anova->adjusted_mean[i], anova->low[i],
                                 anova->high[i], NAN };
  chart = fm_chart_intervals_new ();
  fm_chart_intervals_set (FM_CHART_INTERVALS (chart), _ ("Mean liking with 95 % intervals"), 2,
                          &axis, rows, anova->n_samples);
  fm_tasting_result_add_chart (box, chart);
  add_liking_table (box, reading);
  add_pairs (box, reading);
  grid = fm_tasting_result_add_method (box, fm_panel_liking_method (anova));
  add_p (grid, _ ("Chance of such means if all were alike"), anova->p_sample);
}

void
fm_tasting_result_sections_show (GtkBox *box,
                                 const FmTasting *tasting,
                                 const FmTastingReading *reading)
{
  fm_widget_clear_box (box);
  if (reading == NULL)
    return;
  fm_tasting_result_add_key (box, tasting);
  for (guint i = 0; i < reading->lines->len; i++)
    fm_tasting_result_add_sentence (box, g_ptr_array_index (reading->lines, i));
  add_rank (box, reading);
  add_liking (box, reading);
  fm_tasting_result_add_choices (box, reading);
  fm_tasting_result_add_jar (box, reading, tasting->attributes);
  fm_tasting_result_add_remarks (box, tasting);
  fm_tasting_result_add_sheets (box, tasting);
  fm_tasting_result_add_positions (box, reading);
  fm_chart_set_subject_in (GTK_WIDGET (box), fm_tasting_text_title (tasting->title));
}
