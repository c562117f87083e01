/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-label-panel.c - the figures of a nutrition panel by one set of rules */
#include "core/label/fm-label-panel.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-error.h"

double
fm_label_basis_g (const FmLabelInput *input)
{
  return input->set == FM_LABEL_EU ? 100.0 : input->serving_g;
}

const char *
fm_label_row_name (const FmLabelRow *row)
{
  return *row->name != '\0' ? row->name : row[-1].name;
}

static gboolean
is_vitamin_or_mineral (FmLabelItem item)
{
  return item >= FM_LABEL_ITEM_VITAMIN_A_IU;
}

static void
fill_share (FmLabelLine *line)
{
  const FmRounding rounding =
      is_vitamin_or_mineral (line->row->item) ? FM_ROUNDING_DV_MICRO : FM_ROUNDING_DV_MACRO;

  line->share_pct = 100.0 * line->amount / line->row->daily_value;
  if (!isnan (line->share_pct))
    line->share = fm_label_round (rounding, line->share_pct);
}

static void
fill_line (FmLabelLine *line, const FmLabelInput *input, double per_100g, double u_per_100g)
{
  const double factor = fm_label_basis_g (input) / 100.0;

  line->amount = per_100g * factor;
  line->u = u_per_100g * factor;
  line->figure = fm_label_round (line->row->rounding, line->amount);
  line->portion_amount = per_100g * input->serving_g / 100.0;
  line->portion = fm_label_round (line->row->rounding, line->portion_amount);
  line->span = fm_label_tolerance_span (line->row->tolerance, line->figure.value);
  fill_share (line);
}

/* The last one of a list without one is the whole message. */
static void
append_missing (GString *missing, const FmLabelRow *row, const FmFormula *formula)
{
  g_auto (GStrv) names = fm_label_amount_missing (row->item, formula);
  g_autofree char *joined = g_strjoinv ("; ", names);

  /* TRANSLATORS: a row of a label, names of ingredients */
  g_string_append_printf (missing, _ ("\n%s: not known for %s"), fm_label_row_name (row), joined);
}

static void
add_row (FmLabelPanel *self,
         const FmLabelRow *row,
         const FmFormula *formula,
         const FmAnalysis *analysis,
         const FmLabelStated *stated,
         GString *missing)
{
  FmLabelLine line = { .row = row };
  const double per_100g = fm_label_amount (row->item, formula, analysis, stated);

  if (isnan (per_100g) && row->must)
    append_missing (missing, row, formula);
  if (isnan (per_100g) || !(row->must || self->input.with_more))
    return;
  line.is_stated = fm_label_amount_is_stated (row->item, formula, analysis, stated);
  fill_line (&line, &self->input, per_100g, fm_label_amount_u (row->item, analysis));
  g_array_append_val (self->lines, line);
}

static gboolean
check_input (const FmFormula *formula, const FmLabelInput *input, GError **error)
{
  if (!(fm_formula_total_g (formula) > 0.0)) {
    g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY,
                         _ ("The formula weighs nothing. Enter masses first."));
    return FALSE;
  }
  if (input->serving_g > 0.0 && input->serving_g <= FM_MAX_PATTY_MASS_G)
    return TRUE;
  g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                       _ ("Enter what a serving weighs."));
  return FALSE;
}

FmLabelPanel *
fm_label_panel_new (const FmFormula *formula,
                    const FmAnalysis *analysis,
                    const FmLabelInput *input,
                    const FmLabelStated *stated,
                    GError **error)
{
  g_autoptr (FmLabelPanel) self = NULL;
  g_autoptr (GString) missing = g_string_new (NULL);

  if (!check_input (formula, input, error))
    return NULL;
  self = g_new0 (FmLabelPanel, 1);
  self->input = *input;
  self->lines = g_array_new (FALSE, FALSE, sizeof (FmLabelLine));
  for (guint i = 0; i < fm_n_label_rows; i++)
    if (fm_label_rows[i].set == input->set)
      add_row (self, &fm_label_rows[i], formula, analysis, stated, missing);
  if (missing->len == 0)
    return g_steal_pointer (&self);
  g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_UNKNOWN_VALUE,
               _ ("No panel: figures that must stand on it are not known. Give the ingredients a "
                  "full composition, or state the figure for the whole blend.%s"),
               missing->str);
  return NULL;
}

void
fm_label_panel_free (FmLabelPanel *self)
{
  g_array_unref (self->lines);
  g_free (self);
}

const FmLabelLine *
fm_label_panel_line (const FmLabelPanel *self, FmLabelItem item)
{
  for (guint i = 0; i < self->lines->len; i++) {
    const FmLabelLine *line = &g_array_index (self->lines, FmLabelLine, i);

    if (line->row->item == item)
      return line;
  }
  return NULL;
}
