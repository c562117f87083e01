/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-marks.c - the blends marked on a map's pictures: versions measured, and those proposed */
#include "app/map/fm-map-marks.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "core/base/fm-number.h"

static int
compare_numbers (gconstpointer a, gconstpointer b)
{
  return ((const FmMapMark *)a)->number - ((const FmMapMark *)b)->number;
}

static void
predict (FmMapMark *mark, const FmMapFit *fit)
{
  g_autofree char *unit = NULL;
  const FmMixResponse wording = fm_map_fit_wording (fit->response, &unit);

  mark->prediction = (FmMixPrediction){ NAN, NAN, NAN, NAN, NAN, NAN };
  if (fit->predicts)
    fm_mix_predict_within (fit->fit, mark->x, &wording, &mark->prediction);
}

static FmMapMark *
mark_of_version (GArray *marks, int number)
{
  for (guint i = 0; i < marks->len; i++)
    if (g_array_index (marks, FmMapMark, i).number == number)
      return &g_array_index (marks, FmMapMark, i);
  return NULL;
}

static void
add_value (GArray *marks, const FmMapFit *fit, guint row, const FmMapPlace *place)
{
  FmMapMark *mark = mark_of_version (marks, place->number);

  if (mark == NULL) {
    FmMapMark fresh = { .kind = FM_MAP_MARK_VERSION,
                        .number = place->number,
                        .version_id = place->version_id };

    memcpy (fresh.x, fm_mix_points_get (fit->data->x, row), fit->region.q * sizeof *fresh.x);
    predict (&fresh, fit);
    g_array_append_val (marks, fresh);
    mark = &g_array_index (marks, FmMapMark, marks->len - 1);
  }
  mark->measured = (mark->measured * mark->n_values + fit->data->y[row]) / (mark->n_values + 1);
  mark->n_values++;
}

static void
add_spot (GArray *marks, const FmMapFit *fit, FmMapMarkKind kind, const FmMixSpot *spot)
{
  FmMapMark mark = { .kind = kind, .measured = NAN };

  memcpy (mark.x, spot->x, sizeof mark.x);
  predict (&mark, fit);
  g_array_append_val (marks, mark);
}

GArray *
fm_map_marks_new (FmMapDocument *document, const FmMapFit *fit)
{
  const FmMapData *data = fm_map_document_get_data (document);
  GArray *marks = g_array_new (FALSE, FALSE, sizeof (FmMapMark));

  for (guint i = 0; i < fit->data->x->n; i++) {
    const FmMapPlace *place =
        data != NULL ? fm_map_data_place (data, g_array_index (fit->version_id, gint64, i)) : NULL;

    if (place != NULL)
      add_value (marks, fit, i, place);
  }
  g_array_sort (marks, compare_numbers);
  if (fit->has_unknown)
    add_spot (marks, fit, FM_MAP_MARK_UNKNOWN, &fit->unknown);
  if (fit->predicts) {
    add_spot (marks, fit, FM_MAP_MARK_NEXT, &fit->next);
    add_spot (marks, fit, FM_MAP_MARK_BEST, &fit->best);
  }
  return marks;
}

char *
fm_map_mark_name (const FmMapMark *self)
{
  switch (self->kind) {
  case FM_MAP_MARK_BEST:
    return g_strdup (_ ("Predicted best"));
  case FM_MAP_MARK_NEXT:
    return g_strdup (_ ("Worth trying next"));
  case FM_MAP_MARK_UNKNOWN:
    return g_strdup (_ ("Least known"));
  case FM_MAP_MARK_VERSION:
    return g_strdup_printf (_ ("Version %d"), self->number);
  }
  g_return_val_if_reached (NULL);
}

char *
fm_map_mark_text (const FmMapMark *self, FmMapDocument *document, FmMapResponse response)
{
  const int decimals = fm_map_response_decimals (response);
  g_autofree char *name = fm_map_mark_name (self);
  g_autofree char *shares = fm_map_document_shares_text (document, self->x);
  g_autofree char *mean = fm_number_format (self->prediction.mean, decimals);
  g_autofree char *low = fm_number_format (self->prediction.low, decimals);
  g_autofree char *high = fm_number_format (self->prediction.high, decimals);
  g_autofree char *measured = fm_number_format (self->measured, decimals);

  if (isnan (self->prediction.mean) && self->n_values == 0)
    /* Translators: "Least known", shares. */
    return g_strdup_printf (_ ("%s: %s."), name, shares);
  if (isnan (self->prediction.mean))
    return g_strdup_printf (
        /* Translators: "Version 3", shares, a mean, how many values. */
        ngettext ("%s: %s; measured %s (%u value).", "%s: %s; measured %s (%u values).",
                  self->n_values),
        name, shares, measured, self->n_values);
  if (self->n_values == 0)
    /* Translators: "Predicted best", shares, three numbers. */
    return g_strdup_printf (_ ("%s: %s; predicted %s (95 %% interval of the mean %s to %s)."), name,
                            shares, mean, low, high);
  return g_strdup_printf (
      /* Translators: "Version 3", shares, a mean, how many values, three numbers. */
      ngettext (
          "%s: %s; measured %s (%u value), predicted %s (95 %% interval of the mean %s to %s).",
          "%s: %s; measured %s (%u values), predicted %s (95 %% interval of the mean %s to %s).",
          self->n_values),
      name, shares, measured, self->n_values, mean, low, high);
}

FmChartTable *
fm_map_marks_table_new (void)
{
  const char *headings[] = {
    _ ("Blend"),     _ ("Shares"),           _ ("Values"), _ ("Measured mean"),
    _ ("Predicted"), _ ("95 % of the mean"), NULL
  };

  return fm_chart_table_new (headings);
}

void
fm_map_mark_add_row (const FmMapMark *self,
                     FmMapDocument *document,
                     FmMapResponse response,
                     FmChartTable *table)
{
  const int decimals = fm_map_response_decimals (response);
  g_autofree char *name = fm_map_mark_name (self);
  g_autofree char *shares = fm_map_document_shares_text (document, self->x);
  g_autofree char *n = self->n_values > 0 ? g_strdup_printf ("%u", self->n_values) : g_strdup ("—");
  g_autofree char *measured = fm_number_format (self->measured, decimals);
  g_autofree char *mean = fm_number_format (self->prediction.mean, decimals);
  g_autofree char *low = fm_number_format (self->prediction.low, decimals);
  g_autofree char *high = fm_number_format (self->prediction.high, decimals);
  g_autofree char *interval = g_strdup_printf (_ ("%s to %s"), low, high);
  const char *cells[] = { name, shares, n, measured, mean, interval, NULL };

  fm_chart_table_add (table, fm_map_mark_text (self, document, response), cells);
}
