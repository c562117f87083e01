/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-result-choices.c - preference, triangle, just about right and serving positions */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/charts/fm-chart-intervals.h"
#include "app/widgets/fm-text-grid.h"
#include "app/tastings/fm-tasting-result-sections.h"
#include "core/base/fm-number.h"

static char *
percent (double share)
{
  return fm_number_format_unit (100 * share, 0, "%");
}

static void
add_share (GtkGrid *grid, const char *what, double share, double low, double high)
{
  g_autofree char *value = percent (share);
  g_autofree char *from = percent (low);
  g_autofree char *to = percent (high);
  const char *texts[] = { what, value, from, to };

  if (!isnan (share))
    fm_text_grid_add_row (grid, texts, G_N_ELEMENTS (texts), FALSE);
}

/* @count: (transfer full): how many answered what */
static void
add_choice (GtkBox *box, const char *heading, const FmChoiceResult *result, char *count)
{
  const char *heads[] = { "", _ ("Share"), _ ("From"), _ ("To") };
  g_autofree char *chance = fm_panel_chance_text (result->p);
  g_autofree char *sentence =
      /* TRANSLATORS: what was counted, "in 8 of 1,000 sessions" */
      g_strdup_printf (_ ("%s; chance gives as much %s."), count, chance);
  GtkGrid *grid;

  fm_tasting_result_add_heading (box, heading);
  fm_tasting_result_add_sentence (box, sentence);
  grid = fm_tasting_result_add_table (box, _ ("Shares with 95 % intervals"));
  fm_text_grid_add_row (grid, heads, G_N_ELEMENTS (heads), TRUE);
  add_share (grid, _ ("Answers"), result->share, result->share_low, result->share_high);
  add_share (grid, _ ("Tasters who tell them apart"), result->discriminators,
             result->discriminators_low, result->discriminators_high);
  fm_tasting_result_add_method (box, fm_panel_choice_method (result->kind));
  g_free (count);
}

void
fm_tasting_result_add_choices (GtkBox *box, const FmTastingReading *reading)
{
  const FmChoiceResult *preference = &reading->preference;
  const FmChoiceResult *triangle = &reading->triangle;

  if (reading->has_preference)
    add_choice (box, _ ("Preference"), preference,
                g_strdup_printf (ngettext ("%s was chosen by %u of %u taster",
                                           "%s was chosen by %u of %u tasters", preference->n),
                                 reading->preference_names[0], preference->n_right, preference->n));
  if (reading->has_triangle)
    add_choice (
        box, _ ("Triangle"), triangle,
        g_strdup_printf (ngettext ("The odd sample was found by %u of %u taster",
                                   "The odd sample was found by %u of %u tasters", triangle->n),
                         triangle->n_right, triangle->n));
}

static void
add_jar_row (GtkGrid *grid,
             const FmTastingReading *reading,
             const FmTastingJar *jar,
             const GPtrArray *attributes)
{
  const FmJarResult *result = &jar->result;
  const double share_right = 1 - result->share_low - result->share_high;
  g_autofree char *low = percent (result->share_low);
  g_autofree char *right = percent (share_right);
  g_autofree char *high = percent (result->share_high);
  g_autofree char *drop_low = fm_number_format (result->drop_low, 1);
  g_autofree char *drop_high = fm_number_format (result->drop_high, 1);
  g_autofree char *sample = fm_tasting_result_sample (reading, jar->sample);
  const char *texts[] = {
    sample, g_ptr_array_index (attributes, jar->attribute), low, right, high, drop_low, drop_high
  };

  fm_text_grid_add_row (grid, texts, G_N_ELEMENTS (texts), FALSE);
}

void
fm_tasting_result_add_jar (GtkBox *box,
                           const FmTastingReading *reading,
                           const GPtrArray *attributes)
{
  const char *heads[] = { _ ("Sample"),
                          _ ("Attribute"),
                          _ ("Too little"),
                          _ ("Just right"),
                          _ ("Too much"),
                          _ ("Liking lost by too little"),
                          _ ("Liking lost by too much") };
  GtkGrid *grid;

  if (reading->jar->len == 0)
    return;
  fm_tasting_result_add_heading (box, _ ("Just about right"));
  for (guint i = 0; i < reading->jar->len; i++) {
    const FmTastingJar *jar = g_ptr_array_index (reading->jar, i);
    g_autofree char *text = g_strdup_printf ("%s: %s", reading->labels[jar->sample], jar->sentence);

    fm_tasting_result_add_sentence (box, text);
  }
  grid = fm_tasting_result_add_table (box, _ ("Counts as a table"));
  fm_text_grid_add_row (grid, heads, G_N_ELEMENTS (heads), TRUE);
  for (guint i = 0; i < reading->jar->len; i++)
    add_jar_row (grid, reading, g_ptr_array_index (reading->jar, i), attributes);
}

/* Rank sums where ranks were asked, else mean liking, by the place in the serving order. */
void
fm_tasting_result_add_positions (GtkBox *box, const FmTastingReading *reading)
{
  const FmRankResult *rank = reading->position_rank;
  g_autofree FmChartInterval *rows = g_new0 (FmChartInterval, MAX (reading->n_positions, 1));
  GtkWidget *chart;
  const char *heads[] = { _ ("Serving position"), _ ("Value") };
  FmChartIntervalAxis axis = fm_tasting_result_liking_axis ();
  GtkGrid *grid;

  if (rank == NULL && reading->position_mean_liking == NULL)
    return;
  fm_tasting_result_add_heading (box, _ ("Serving positions"));
  if (reading->position_sentence != NULL)
    fm_tasting_result_add_sentence (box, reading->position_sentence);
  for (guint i = 0; i < reading->n_positions; i++)
    rows[i] =
        (FmChartInterval){ g_strdup_printf ("%u", i + 1),
                           rank != NULL ? rank->rank_sum[i] : reading->position_mean_liking[i], NAN,
                           NAN, rank != NULL ? rank->expected_sum[i] : NAN };
  chart = fm_chart_intervals_new ();
  if (rank != NULL)
    axis = fm_tasting_result_rank_axis (rank);
  fm_chart_intervals_set (FM_CHART_INTERVALS (chart),
                          rank != NULL ? _ ("Rank sum by serving position")
                                       : _ ("Mean liking by serving position"),
                          2, &axis, rows, reading->n_positions);
  fm_tasting_result_add_chart (box, chart);
  grid = fm_tasting_result_add_table (box, rank != NULL ? _ ("Rank sums by serving position")
                                                        : _ ("Mean liking by serving position"));
  fm_text_grid_add_row (grid, heads, G_N_ELEMENTS (heads), TRUE);
  for (guint i = 0; i < reading->n_positions; i++) {
    g_autofree char *value = fm_number_format (rows[i].value, 2);
    const char *texts[] = { rows[i].label, value };

    fm_text_grid_add_row (grid, texts, G_N_ELEMENTS (texts), FALSE);
    g_free (rows[i].label);
  }
}
