/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-label-panel-text.c - a nutrition panel in sentences */
#include "core/label/fm-label-panel.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-number.h"

/* Two standard uncertainties, some 95 %: JCGM 100:2008, 6.3.3. */
#define COVERAGE_FACTOR 2.0
/* 21 CFR 101.9(b)(6) and (b)(12) of 2016, from memory, % of the reference amount. */
#define TWO_COLUMNS_FROM_PCT 200.0
#define TWO_COLUMNS_TO_PCT 300.0
#define MAX_DECIMALS 3

char *
fm_label_figure_text (const FmLabelFigure *figure, const char *unit)
{
  return *unit != '\0' ? g_strdup_printf ("%s %s", figure->text, unit) : g_strdup (figure->text);
}

/* With so many places that it does not look like the other one. */
static char *
beside_text (double value, double other)
{
  int decimals = 1;

  while (decimals < MAX_DECIMALS && fabs (value - other) < 0.5 / pow (10.0, decimals))
    decimals++;
  return fm_number_format (value, decimals);
}

static void
append_edge (GString *text, const FmLabelLine *line)
{
  const double distance = fm_label_edge_distance (&line->figure, line->amount);
  const gboolean is_below = !(line->figure.edge_above - line->amount <= distance);
  const double edge = is_below ? line->figure.edge_below : line->figure.edge_above;
  g_autofree char *amount = beside_text (line->amount, edge);
  g_autofree char *edge_text = beside_text (edge, line->amount);
  g_autofree char *shown = fm_label_figure_text (&line->figure, line->row->unit);

  if (isnan (distance)) {
    g_string_append_printf (text, _ ("%s, unrounded %s"), shown, amount);
    return;
  }
  /* TRANSLATORS: "22 g", "22.4", "22.5" */
  g_string_append_printf (text, _ ("%s, unrounded %s, another figure from %s on"), shown, amount,
                          edge_text);
  if (is_below)
    g_string_append (text, _ (" down"));
  if (COVERAGE_FACTOR * line->u >= distance)
    g_string_append (text, _ ("; the uncertainty of the fat reaches over it"));
}

static void
append_span (GString *text, const FmLabelLine *line)
{
  g_autofree char *low = fm_number_format (line->span.lowest, 1);
  g_autofree char *high = fm_number_format (line->span.highest, 1);

  if (isnan (line->span.lowest) && isnan (line->span.highest))
    return;
  if (isnan (line->span.lowest))
    g_string_append_printf (text, _ ("; an analysis may find up to %s"), high);
  else if (isnan (line->span.highest))
    g_string_append_printf (text, _ ("; an analysis should find at least %s"), low);
  else
    g_string_append_printf (text, _ ("; an analysis may find %s to %s"), low, high);
  if (line->amount - COVERAGE_FACTOR * line->u < line->span.lowest ||
      line->amount + COVERAGE_FACTOR * line->u > line->span.highest)
    g_string_append (text, _ (", which the uncertainty of the fat does not keep to"));
}

char *
fm_label_edge_text (const FmLabelLine *line)
{
  GString *text = g_string_new (NULL);

  append_edge (text, line);
  append_span (text, line);
  if (line->is_stated)
    g_string_append (text, _ ("; stated, not calculated"));
  return g_string_free (text, FALSE);
}

/* "from 5 g on to the nearest 1 g" or "below 0.5 g: 0". */
static void
append_band (GString *text, FmRounding rounding, double amount, const char *unit)
{
  const FmLabelBand *band = fm_label_band (rounding, amount);
  g_autofree char *from = fm_number_format_unit (band->from, 1, unit);
  g_autofree char *step = fm_number_format_unit (band->step, band->step < 0.1 ? 2 : 1, unit);

  /* TRANSLATORS: an amount from which a rule holds */
  g_string_append_printf (text, band->from_is_in ? _ ("Rule from %s on: ") : _ ("Rule above %s: "),
                          from);
  if (band->step > 0.0)
    g_string_append_printf (text, _ ("to the nearest %s"), step);
  else
    g_string_append_printf (text, _ ("“%s” stands there"), band->text);
  g_string_append_printf (text, " (%s; %s).\n", band->source, band->how_read);
}

static void
append_edges (GString *text, const FmLabelFigure *figure, const char *unit)
{
  g_autofree char *below = fm_number_format_unit (figure->edge_below, 3, unit);
  g_autofree char *above = fm_number_format_unit (figure->edge_above, 3, unit);

  if (!isnan (figure->edge_below) && !isnan (figure->edge_above))
    g_string_append_printf (text, _ ("It shows the same between %s and %s.\n"), below, above);
  else if (!isnan (figure->edge_above))
    g_string_append_printf (text, _ ("It shows the same below %s.\n"), above);
  else if (!isnan (figure->edge_below))
    g_string_append_printf (text, _ ("It shows the same from %s on.\n"), below);
}

static void
append_share (GString *text, const FmLabelLine *line)
{
  g_autofree char *amount = fm_number_format (line->amount, MAX_DECIMALS);
  g_autofree char *daily = fm_number_format (line->row->daily_value, 1);
  g_autofree char *share = fm_number_format (line->share_pct, MAX_DECIMALS);

  if (isnan (line->share_pct) || isnan (line->row->daily_value))
    return;
  /* TRANSLATORS: "11.600 ÷ 78.0 × 100 = 14.872 % of the Daily Value, shown as 15" */
  g_string_append_printf (text, _ ("%s ÷ %s × 100 = %s %% of the Daily Value, shown as %s.\n"),
                          amount, daily, share, line->share.text);
}

char *
fm_label_panel_derivation (const FmLabelPanel *self)
{
  const double basis_g = fm_label_basis_g (&self->input);
  g_autofree char *basis = fm_number_format_unit (basis_g, 1, "g");
  g_autofree char *rules = fm_label_set_text (self->input.set);
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < self->lines->len; i++) {
    const FmLabelLine *line = &g_array_index (self->lines, FmLabelLine, i);
    const char *unit = line->row->unit;
    g_autofree char *shown = fm_label_figure_text (&line->figure, unit);
    g_autofree char *amount = fm_number_format_unit (line->amount, MAX_DECIMALS, unit);
    g_autofree char *per_100g =
        fm_number_format_unit (line->amount * 100.0 / basis_g, MAX_DECIMALS, unit);

    /* TRANSLATORS: "Total Fat: 12 g", "11.600 g", "112.0 g", "10.357 g" */
    g_string_append_printf (text, _ ("%s: %s. Unrounded %s in %s, %s in 100 g of the raw blend.\n"),
                            fm_label_row_name (line->row), shown, amount, basis, per_100g);
    append_band (text, line->row->rounding, line->amount, unit);
    append_edges (text, &line->figure, unit);
    append_share (text, line);
    g_string_append (text, line->is_stated ? _ ("Stated, not calculated.\n\n") : "\n");
  }
  g_string_append (text, rules);
  return g_string_free (text, FALSE);
}

static void
append_unit_note (GString *text, double serving_g)
{
  g_autofree char *share =
      fm_number_format_unit (100.0 * serving_g / FM_LABEL_REFERENCE_RAW_G, 0, "%");
  const char *meaning = "";

  switch (fm_label_serving_units (serving_g, FM_LABEL_REFERENCE_RAW_G)) {
  case FM_SERVING_SEVERAL:
    meaning = _ ("as many patties as come closest to it make a serving");
    break;
  case FM_SERVING_ONE_OR_TWO:
    meaning = _ ("one or two patties make a serving");
    break;
  case FM_SERVING_ONE:
    meaning = _ ("one patty makes a serving");
    break;
  case FM_SERVING_ONE_IF_EATEN_AT_ONCE:
    meaning = _ ("one patty makes a serving if it can be eaten at once");
    break;
  }
  /* TRANSLATORS: "158 %", "one patty makes a serving" */
  g_string_append_printf (text, _ ("The serving is %s of the reference amount, 114 g raw: %s.\n"),
                          share, meaning);
}

static void
append_pack_note (GString *text, double pack_g)
{
  const double share_pct = 100.0 * pack_g / FM_LABEL_REFERENCE_RAW_G;

  if (share_pct < TWO_COLUMNS_FROM_PCT)
    g_string_append (text, _ ("The pack is below 200 % of the reference amount: it counts as one "
                              "serving (21 CFR 101.9(b)(6), from memory).\n"));
  else if (share_pct <= TWO_COLUMNS_TO_PCT)
    g_string_append (text, _ ("The pack is 200 to 300 % of the reference amount: a second column "
                              "for the whole pack is asked for (21 CFR 101.9(b)(12), from memory). "
                              "It is not drawn here.\n"));
}

char *
fm_label_panel_notes (const FmLabelPanel *self)
{
  GString *text = g_string_new (NULL);

  if (self->input.set == FM_LABEL_EU)
    return g_string_free (text, FALSE);
  append_unit_note (text, self->input.serving_g);
  if (!isnan (self->input.pack_g))
    append_pack_note (text, self->input.pack_g);
  return g_string_free (text, FALSE);
}

char *
fm_label_set_text (FmLabelSetId set)
{
  const FmLabelSet *rules = &fm_label_sets[set];

  /* TRANSLATORS: set of rules, section of a law, date of its text, what of it was read */
  return g_strdup_printf (_ ("Rules: %s. %s (%s). %s"), _ (rules->title), rules->source,
                          rules->text_date, rules->how_read);
}

const char *
fm_label_caution (void)
{
  return _ ("Calculated from the ingredients, not analysed, and not checked against the law as it "
            "stands today. A licensed professional or the authority must check it before it goes "
            "on a food.");
}
