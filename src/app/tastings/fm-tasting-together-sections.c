/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-together-sections.c - a reading of several tastings as sentences, charts and a table
 */
#include "app/tastings/fm-tasting-together-sections.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/charts/fm-chart-intervals.h"
#include "app/tastings/fm-tasting-result-sections.h"
#include "app/widgets/fm-text-grid.h"
#include "app/widgets/fm-widget.h"
#include "core/base/fm-number.h"

/* Two-sided 95 % of the normal distribution. */
#define COVERAGE_FACTOR_95 1.959964

/* Takes @text. */
static void
add_text (GtkBox *box, char *text)
{
  if (text != NULL && *text != '\0')
    fm_tasting_result_add_sentence (box, text);
  g_free (text);
}

static void
add_chart (GtkBox *box,
           const char *title,
           const FmChartIntervalAxis *axis,
           const FmChartInterval *rows,
           guint n_rows)
{
  GtkWidget *chart = fm_chart_intervals_new ();

  fm_chart_intervals_set (FM_CHART_INTERVALS (chart), title, 2, axis, rows, n_rows);
  fm_chart_set_subject (FM_CHART (chart), _ ("Tastings Read Together"));
  fm_tasting_result_add_chart (box, chart);
}

static void
add_worths (GtkBox *box, const FmTastingTogether *reading, const guint *order)
{
  const FmPoolFit *fit = reading->orders;
  const guint n = reading->pool->items->len;
  g_autofree FmChartInterval *rows = g_new0 (FmChartInterval, n);
  const FmChartIntervalAxis axis = { .low_words = _ ("← liked less"),
                                     .high_words = _ ("liked more →") };

  if (fit == NULL)
    return;
  for (guint i = 0; i < n; i++) {
    const double half = COVERAGE_FACTOR_95 * fit->se[order[i]];

    rows[i] = (FmChartInterval){ reading->pool->items->pdata[order[i]], fit->worth[order[i]],
                                 fit->worth[order[i]] - half, fit->worth[order[i]] + half, NAN };
  }
  fm_tasting_result_add_heading (box, _ ("Worths by the orders"));
  add_text (box, g_strdup (_ ("The further right, the better liked; 0 is the mean of what was "
                              "compared. At a distance of 1.1 the better one is put first three "
                              "times in four.")));
  add_chart (box, _ ("Worths with 95 % intervals"), &axis, rows, n);
}

static void
add_likings (GtkBox *box, const FmTastingTogether *reading, const guint *order)
{
  const FmPoolLiking *liking = reading->liking;
  const guint n = reading->pool->items->len;
  g_autofree FmChartInterval *rows = g_new0 (FmChartInterval, n);
  const FmChartIntervalAxis axis = fm_tasting_result_liking_axis ();

  if (liking == NULL)
    return;
  for (guint i = 0; i < n; i++)
    rows[i] = (FmChartInterval){ reading->pool->items->pdata[order[i]], liking->mean[order[i]],
                                 liking->low[order[i]], liking->high[order[i]], NAN };
  fm_tasting_result_add_heading (box, _ ("Liking by the scores, 1 to 9"));
  add_text (box, fm_tasting_together_liking_text (reading));
  add_chart (box, _ ("Mean liking with 95 % intervals"), &axis, rows, n);
}

static char *
chance_text (const FmTastingTogether *reading, guint a, guint b)
{
  const double better = fm_tasting_together_better (reading, a, b);

  return isnan (better) ? g_strdup ("—")
                        : fm_number_format (CLAMP (round (100.0 * better), 1, 99), 0);
}

static void
add_matrix_row (GtkGrid *grid, const FmTastingTogether *reading, const guint *order, guint row)
{
  const guint n = reading->pool->items->len;
  g_autoptr (GStrvBuilder) texts = g_strv_builder_new ();

  g_strv_builder_add (texts, reading->pool->items->pdata[order[row]]);
  for (guint i = 0; i < n; i++) {
    g_autofree char *text = chance_text (reading, order[row], order[i]);

    g_strv_builder_add (texts, text);
  }
  g_auto (GStrv) cells = g_strv_builder_end (texts);
  fm_text_grid_add_row (grid, (const char *const *)cells, n + 1, FALSE);
}

static void
add_matrix (GtkBox *box, const FmTastingTogether *reading, const guint *order)
{
  const guint n = reading->pool->items->len;
  g_autoptr (GStrvBuilder) heads = g_strv_builder_new ();
  GtkGrid *grid;

  fm_tasting_result_add_heading (box,
                                 _ ("How probable it is that the row is better than the column"));
  grid = fm_tasting_result_add_table (box, _ ("In 100; a dash where they were never compared"));
  gtk_expander_set_expanded (GTK_EXPANDER (gtk_widget_get_last_child (GTK_WIDGET (box))), TRUE);
  g_strv_builder_add (heads, "");
  for (guint i = 0; i < n; i++)
    g_strv_builder_add (heads, reading->pool->items->pdata[order[i]]);
  g_auto (GStrv) cells = g_strv_builder_end (heads);
  fm_text_grid_add_row (grid, (const char *const *)cells, n + 1, TRUE);
  for (guint row = 0; row < n; row++)
    add_matrix_row (grid, reading, order, row);
}

void
fm_tasting_together_sections_show (GtkBox *box, const FmTastingTogether *reading)
{
  g_autofree guint *order = NULL;

  fm_widget_clear_box (box);
  if (reading == NULL)
    return;
  order = fm_tasting_together_order (reading);
  add_text (box, g_strdup (reading->problem));
  add_text (box, fm_tasting_together_apart_text (reading));
  add_worths (box, reading, order);
  add_likings (box, reading, order);
  add_matrix (box, reading, order);
  fm_tasting_result_add_heading (box, _ ("Who disagrees"));
  add_text (box, fm_tasting_together_tasters_text (reading));
  fm_tasting_result_add_heading (box, _ ("From one tasting to the next"));
  add_text (box, fm_tasting_together_drift_text (reading));
  add_text (box, fm_tasting_together_repeat_text (reading));
  fm_tasting_result_add_method (box, fm_tasting_together_method_text (reading));
}
