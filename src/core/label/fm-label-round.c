/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-label-round.c - figures as a label may show them, and how near they stand to another one */
#include "core/label/fm-label-round.h"

#include <math.h>
#include <string.h>

#include "core/base/fm-number.h"

/* An exact middle in decimals may lie this much below itself in binary. */
#define MIDDLE_SLACK 1e-9
#define PROTEIN_DAILY_VALUE_G 50.0
#define HALVES_FROM 2.0
#define HALVES_TO 5.0

static gboolean
is_european (FmRounding rounding)
{
  return rounding >= FM_ROUNDING_EU_ENERGY;
}

static gboolean
is_in_band (const FmLabelBand *band, double amount)
{
  return band->from_is_in ? amount >= band->from : amount > band->from;
}

static guint
find_band (FmRounding rounding, double amount)
{
  guint found = 0;

  for (guint i = 0; i < fm_n_label_bands; i++)
    if (fm_label_bands[i].rounding == rounding && is_in_band (&fm_label_bands[i], amount))
      found = i;
  return found;
}

static double
to_step (double amount, double step)
{
  return floor (amount / step + 0.5 + MIDDLE_SLACK) * step;
}

/* The trade prints "5" and not "5.0" where half grams are allowed, and in America with a point. */
static void
write_american (char *text, double value)
{
  g_ascii_formatd (text, FM_LABEL_TEXT_LENGTH, "%.1f", value);
  if (g_str_has_suffix (text, ".0"))
    text[strlen (text) - 2] = '\0';
}

static void
write_european (char *text, double value, double step)
{
  g_autofree char *number = fm_number_format (value, step < 0.05 ? 2 : step < 0.5 ? 1 : 0);

  g_strlcpy (text, number, FM_LABEL_TEXT_LENGTH);
}

static void
write_words (FmLabelFigure *figure, const FmLabelBand *band)
{
  g_autofree char *number = NULL;

  figure->value = strcmp (band->text, "0") == 0 ? 0.0 : (double)NAN;
  if (band->text[0] != '<') {
    g_strlcpy (figure->text, band->text, FM_LABEL_TEXT_LENGTH);
    return;
  }
  number = fm_number_to_edit (g_ascii_strtod (band->text + 1, NULL), 2);
  g_snprintf (figure->text, FM_LABEL_TEXT_LENGTH, "<%s", number);
}

static void
fill_text (FmLabelFigure *figure, guint index, double amount)
{
  const FmLabelBand *band = &fm_label_bands[index];

  if (*band->text != '\0') {
    write_words (figure, band);
    return;
  }
  figure->value = to_step (amount, band->step);
  if (is_european (band->rounding))
    write_european (figure->text, figure->value, band->step);
  else
    write_american (figure->text, figure->value);
}

static gboolean
is_shown_as (guint index, double amount, const char *text)
{
  FmLabelFigure other;

  fill_text (&other, index, amount);
  return strcmp (other.text, text) == 0;
}

static gboolean
has_band (guint index, FmRounding rounding)
{
  return index < fm_n_label_bands && fm_label_bands[index].rounding == rounding;
}

/* Goes down over bands that show the same. */
static double
edge_below (const FmLabelFigure *figure, guint index)
{
  const FmLabelBand *band = &fm_label_bands[index];
  const double half = *band->text == '\0' ? figure->value - band->step / 2.0 : -INFINITY;

  if (half > band->from)
    return half;
  if (index > 0 && has_band (index - 1, band->rounding) &&
      is_shown_as (index - 1, band->from, figure->text))
    return edge_below (figure, index - 1);
  return band->from > 0.0 ? band->from : (double)NAN;
}

static double
edge_above (const FmLabelFigure *figure, guint index)
{
  const FmLabelBand *band = &fm_label_bands[index];
  const double half = *band->text == '\0' ? figure->value + band->step / 2.0 : INFINITY;
  double end;

  if (!has_band (index + 1, band->rounding))
    return half;
  end = fm_label_bands[index + 1].from;
  if (half < end)
    return half;
  return is_shown_as (index + 1, end, figure->text) ? edge_above (figure, index + 1) : end;
}

const FmLabelBand *
fm_label_band (FmRounding rounding, double amount)
{
  return &fm_label_bands[find_band (rounding, amount)];
}

FmLabelFigure
fm_label_round (FmRounding rounding, double amount)
{
  FmLabelFigure figure = { .value = NAN, .edge_below = NAN, .edge_above = NAN };
  const guint index = find_band (rounding, amount);

  fill_text (&figure, index, amount);
  figure.edge_below = edge_below (&figure, index);
  figure.edge_above = edge_above (&figure, index);
  return figure;
}

double
fm_label_edge_distance (const FmLabelFigure *figure, double amount)
{
  return fmin (amount - figure->edge_below, figure->edge_above - amount);
}

FmLabelSpan
fm_label_tolerance_span (FmTolerance tolerance, double declared)
{
  FmLabelSpan span = { NAN, NAN };

  for (guint i = 0; i < fm_n_label_tolerances; i++) {
    const FmLabelTolerance *row = &fm_label_tolerances[i];
    const double unit = row->is_percent ? declared / 100.0 : 1.0;

    if (row->tolerance != tolerance || declared < row->from || !(unit > 0.0))
      continue;
    span.lowest = fmax (declared - row->below * unit, 0.0);
    span.highest = declared + row->above * unit;
    if (isnan (row->below))
      span.lowest = NAN;
  }
  return span;
}

double
fm_label_servings (double pack_g, double serving_g, gboolean *is_about)
{
  const double exact = pack_g / serving_g;
  const double step = exact >= HALVES_FROM && exact <= HALVES_TO ? 0.5 : 1.0;
  const double rounded = fmax (to_step (exact, step), 1.0);

  *is_about = fabs (rounded - exact) > MIDDLE_SLACK;
  return rounded;
}

FmServingUnits
fm_label_serving_units (double unit_g, double reference_g)
{
  const double share_pct = 100.0 * unit_g / reference_g;

  if (share_pct <= 50.0)
    return FM_SERVING_SEVERAL;
  if (share_pct < 67.0)
    return FM_SERVING_ONE_OR_TWO;
  return share_pct < 200.0 ? FM_SERVING_ONE : FM_SERVING_ONE_IF_EATEN_AT_ONCE;
}

double
fm_label_protein_share_pct (double protein_g, double quality_score)
{
  return 100.0 * protein_g * fmin (quality_score, 1.0) / PROTEIN_DAILY_VALUE_G;
}
