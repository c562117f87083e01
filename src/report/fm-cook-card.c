/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-cook-card.c - the cook's card: grams and steps in big type, without costs */
#include "report/fm-cook-card.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-number.h"
#include "core/base/fm-rounding.h"
#include "report/fm-batch-sheet-private.h"

/* Read at arm's length: common practice, no source. */
#define BIG_TYPE 1.5
#define GRAM_DECIMALS 1

/* The masses as they are shown add up to their total. */
static void
add_masses (FmBatchSheet *self, const FmBatch *batch)
{
  const guint n = batch->lines->len;
  g_autofree double *mass_g = g_new (double, n);
  g_autofree char *total = fm_number_format_unit (batch->edible_g, GRAM_DECIMALS, "g");

  for (guint i = 0; i < n; i++)
    mass_g[i] = g_array_index (batch->lines, FmBatchLine, i).edible_g;
  fm_round_to_sum (n, mass_g, GRAM_DECIMALS, mass_g);
  for (guint i = 0; i < n; i++) {
    g_autofree char *mass = fm_number_format_unit (mass_g[i], GRAM_DECIMALS, "g");
    const FmBatchLine *line = &g_array_index (batch->lines, FmBatchLine, i);

    /* TRANSLATORS: "500.0 g", an ingredient */
    fm_batch_sheet_add (self, FM_SHEET_STEP,
                        g_strdup_printf (_ ("%s %s"), mass, line->line->ingredient->name));
  }
  fm_batch_sheet_add (self, FM_SHEET_SUBTITLE, g_strdup_printf (_ ("Into the grinder: %s"), total));
}

FmBatchSheet *
fm_cook_card_new (const FmFormula *formula, const FmBatchSheetInput *input, GError **error)
{
  g_autoptr (FmBatch) batch = fm_batch_new (formula, &input->plan, error);
  g_autofree char *mass = fm_number_format_unit (input->plan.patty_mass_g, 1, "g");
  FmBatchSheet *self;

  if (batch == NULL)
    return NULL;
  self = fm_batch_sheet_new_empty (_ ("Cook’s Card"));
  self->notice = input->notice;
  self->type_scale = BIG_TYPE;
  fm_batch_sheet_add (self, FM_SHEET_TITLE,
                      /* TRANSLATORS: name of the blend, "version 3" */
                      g_strdup_printf (_ ("%s, %s"), input->blend_name, input->version_name));
  fm_batch_sheet_add (self, FM_SHEET_SUBTITLE,
                      g_strdup_printf (ngettext ("%d patty of %s raw", "%d patties of %s raw",
                                                 (gulong)input->plan.n_patties),
                                       input->plan.n_patties, mass));
  if (input->date_text != NULL)
    fm_batch_sheet_add (self, FM_SHEET_SMALL, g_strdup (input->date_text));
  add_masses (self, batch);
  fm_batch_sheet_add_steps (self, formula, input, batch);
  fm_batch_sheet_add_caution (self, input);
  return self;
}
