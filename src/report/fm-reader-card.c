/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-reader-card.c - the card for readers at home, on paper */
#include "report/fm-reader-card.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-number.h"
#include "core/batch/fm-home-amounts.h"
#include "report/fm-batch-sheet-private.h"
#include "report/fm-batch-sheet-process.h"
#include "report/fm-reader-card-private.h"

#define BIG_TYPE 1.2

GStrv
fm_reader_ingredients (const FmHomeAmounts *amounts, gboolean ounces)
{
  g_autoptr (GStrvBuilder) lines = g_strv_builder_new ();

  for (guint i = 0; i < fm_formula_n_lines (amounts->formula); i++) {
    const FmFormulaLine *line = fm_formula_line (amounts->formula, i);
    g_autofree char *amount = fm_home_amount_text (line->mass_g, ounces);
    g_autofree char *text = NULL;

    if (!(line->mass_g > 0.0))
      continue;
    /* TRANSLATORS: "225 g", an ingredient */
    text = g_strdup_printf (_ ("%s %s"), amount, line->ingredient->name);
    g_strv_builder_add (lines, text);
  }
  return g_strv_builder_end (lines);
}

double
fm_reader_patty_g (const FmHomeAmounts *amounts, const FmBatchSheetInput *input)
{
  return fm_formula_total_g (amounts->formula) / input->plan.n_patties;
}

char *
fm_reader_yield (const FmHomeAmounts *amounts, const FmBatchSheetInput *input, gboolean ounces)
{
  g_autofree char *mass = fm_home_amount_text (fm_reader_patty_g (amounts, input), ounces);

  return g_strdup_printf (ngettext ("%d patty of about %s raw", "%d patties of about %s raw",
                                    (gulong)input->plan.n_patties),
                          input->plan.n_patties, mass);
}

/* What the cook wrote and planned, in the order of the work. */
GStrv
fm_reader_steps (const FmFormula *formula, const FmBatchSheetInput *input)
{
  g_autoptr (FmBatchSheet) steps = fm_batch_sheet_new_empty ("");
  g_autoptr (GStrvBuilder) lines = g_strv_builder_new ();

  fm_batch_sheet_add_process (steps, formula->process, FM_PROCESS_ORDER, FM_PROCESS_ORDER);
  fm_batch_sheet_add (steps, FM_SHEET_STEP, fm_batch_sheet_grind_step (formula, input));
  fm_batch_sheet_add_process (steps, formula->process, FM_PROCESS_MINCE_TEMP, FM_PROCESS_STEPS);
  for (guint i = 0; i < steps->rows->len; i++)
    g_strv_builder_add (lines, ((const FmSheetRow *)g_ptr_array_index (steps->rows, i))->cells[0]);
  return g_strv_builder_end (lines);
}

double
fm_reader_cook_minutes (const FmFormula *formula)
{
  return formula->process->numbers[FM_PROCESS_SIDE_1] +
         formula->process->numbers[FM_PROCESS_SIDE_2];
}

static void
add_times (FmBatchSheet *self, const FmFormula *formula)
{
  const double cook_min = fm_reader_cook_minutes (formula);
  const double rest_min = formula->process->numbers[FM_PROCESS_REST];
  g_autofree char *cook = fm_number_format_unit (cook_min, 0, _ ("min"));
  g_autofree char *rest = fm_number_format_unit (rest_min, 0, _ ("min"));

  if (!isnan (cook_min))
    fm_batch_sheet_add (self, FM_SHEET_TEXT, g_strdup_printf (_ ("At the heat: %s"), cook));
  if (!isnan (rest_min))
    fm_batch_sheet_add (self, FM_SHEET_TEXT, g_strdup_printf (_ ("Rest: %s"), rest));
}

static void
add_list (FmBatchSheet *self, FmSheetKind kind, const char *const *lines)
{
  for (; *lines != NULL; lines++)
    fm_batch_sheet_add (self, kind, g_strdup (*lines));
}

const char *
fm_reader_rounding_note (const FmHomeAmounts *amounts)
{
  return amounts->holds
             ? _ ("Rounded for a kitchen scale; the targets of the brief stand as in the "
                  "exact amounts.")
             : _ ("Rounded for a kitchen scale. The targets of the brief do not all stand "
                  "as in the exact amounts.");
}

FmBatchSheet *
fm_reader_card_new (const FmFormula *formula,
                    const FmBatchSheetInput *input,
                    gboolean ounces,
                    GError **error)
{
  g_autoptr (FmHomeAmounts) amounts =
      fm_home_amounts_new (formula, input->plan.n_patties, ounces, error);
  g_auto (GStrv) ingredients = amounts != NULL ? fm_reader_ingredients (amounts, ounces) : NULL;
  g_auto (GStrv) steps = fm_reader_steps (formula, input);
  FmBatchSheet *self;

  if (amounts == NULL)
    return NULL;
  self = fm_batch_sheet_new_empty (_ ("Reader’s Card"));
  self->notice = input->notice;
  self->type_scale = BIG_TYPE;
  fm_batch_sheet_add (self, FM_SHEET_TITLE, g_strdup (input->blend_name));
  fm_batch_sheet_add (self, FM_SHEET_SUBTITLE, fm_reader_yield (amounts, input, ounces));
  fm_batch_sheet_add (self, FM_SHEET_SMALL,
                      g_strdup_printf ("%s%s%s", input->version_name,
                                       input->date_text != NULL ? " · " : "",
                                       input->date_text != NULL ? input->date_text : ""));
  add_times (self, formula);
  fm_batch_sheet_add (self, FM_SHEET_HEADING, g_strdup (_ ("Ingredients")));
  add_list (self, FM_SHEET_TEXT, (const char *const *)ingredients);
  fm_batch_sheet_add (self, FM_SHEET_SMALL, g_strdup (fm_reader_rounding_note (amounts)));
  fm_batch_sheet_add (self, FM_SHEET_HEADING, g_strdup (_ ("Steps")));
  add_list (self, FM_SHEET_STEP, (const char *const *)steps);
  fm_batch_sheet_add_caution (self, input);
  return self;
}
