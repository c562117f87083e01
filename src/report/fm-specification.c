/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-specification.c - what a butcher or a supplier is to deliver */
#include "report/fm-specification.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-number.h"

static void
add_text (FmBatchSheet *self, char *text)
{
  fm_batch_sheet_add (self, FM_SHEET_TEXT, text);
}

static void
add_line_to_write (FmBatchSheet *self, const char *text)
{
  fm_batch_sheet_add (self, FM_SHEET_WRITE, g_strdup (text));
}

static gboolean
is_meat (const FmIngredient *ingredient)
{
  switch (ingredient->kind) {
  case FM_INGREDIENT_CUT:
  case FM_INGREDIENT_TRIM:
  case FM_INGREDIENT_FAT:
  case FM_INGREDIENT_CURED:
    return TRUE;
  case FM_INGREDIENT_SALT:
  case FM_INGREDIENT_SPICE:
  case FM_INGREDIENT_WATER:
  case FM_INGREDIENT_BINDER:
  case FM_INGREDIENT_OTHER:
    return FALSE;
  }
  g_return_val_if_reached (FALSE);
}

/* What the blend was reckoned with, which is no limit for a delivery yet. */
static void
add_fat (FmBatchSheet *self, const FmIngredient *ingredient)
{
  const double fat_pct = fm_ingredient_fat_g_per_100g (ingredient);
  const double u_pct = fm_ingredient_fat_u_g_per_100g (ingredient);
  g_autofree char *fat = fm_number_format_unit (fat_pct, 1, "%");
  g_autofree char *u = fm_number_format (u_pct, 1);
  const char *origin = fm_provenance_name (ingredient->provenance);

  if (isnan (fat_pct))
    add_text (self, g_strdup (_ ("Fat that the blend is reckoned with: not known")));
  else if (isnan (u_pct))
    /* TRANSLATORS: "22.0 %", where the figure comes from */
    add_text (self,
              g_strdup_printf (_ ("Fat that the blend is reckoned with: %s (%s)"), fat, origin));
  else
    /* TRANSLATORS: "22.0 %", "1.5", where the figure comes from */
    add_text (self, g_strdup_printf (_ ("Fat that the blend is reckoned with: %s, standard "
                                        "uncertainty %s (%s)"),
                                     fat, u, origin));
}

static void
add_meat (FmBatchSheet *self, const FmIngredient *ingredient)
{
  add_fat (self, ingredient);
  add_line_to_write (self, _ ("Cut and trim:"));
  add_line_to_write (self, _ ("Fat from – to, %, and by which method:"));
  add_line_to_write (self, _ ("Temperature on receipt, at most:"));
}

static void
add_line (FmBatchSheet *self, const FmBatchLine *line)
{
  const FmIngredient *ingredient = line->line->ingredient;
  g_autofree char *mass = fm_number_format_unit (line->bought_g, 0, "g");
  g_autofree char *share = fm_number_format_unit (line->share_pct, 1, "%");

  fm_batch_sheet_add (self, FM_SHEET_HEADING, g_strdup (ingredient->name));
  /* TRANSLATORS: kind of ingredient, "12000 g", "60.0 %" */
  add_text (self, g_strdup_printf (_ ("%s: %s for this batch, %s of the blend"),
                                   fm_ingredient_kind_name (ingredient->kind), mass, share));
  if (is_meat (ingredient))
    add_meat (self, ingredient);
  add_line_to_write (self, _ ("Pack, lot and date on it:"));
}

static void
add_band (FmBatchSheet *self, const FmBand *band)
{
  g_autofree char *low = fm_number_format_unit (band->min, 1, "%");
  g_autofree char *high = fm_number_format_unit (band->max, 1, "%");

  if (!isnan (band->min) && !isnan (band->max))
    add_text (self, g_strdup_printf (_ ("Fat that the brief asks for: %s to %s"), low, high));
  else if (!isnan (band->min))
    add_text (self, g_strdup_printf (_ ("Fat that the brief asks for: %s or more"), low));
  else if (!isnan (band->max))
    add_text (self, g_strdup_printf (_ ("Fat that the brief asks for: %s or less"), high));
}

static void
add_blend (FmBatchSheet *self, const FmFormula *formula, const FmBatchSheetInput *input)
{
  const FmUnits metric = { 0 };
  g_autofree char *fat = fm_number_format_unit (input->food.fat_pct, 1, "%");
  g_autofree char *plates = fm_process_field_text (formula->process, FM_PROCESS_PLATES, &metric);

  fm_batch_sheet_add (self, FM_SHEET_HEADING, g_strdup (_ ("The blend")));
  if (isnan (input->food.fat_pct))
    add_text (self, g_strdup (_ ("Fat of the blend: not known for every ingredient")));
  else
    add_text (self, g_strdup_printf (_ ("Fat of the blend as calculated: %s"), fat));
  add_band (self, &formula->brief->bands[FM_TARGET_FAT_PCT]);
  if (plates != NULL)
    add_text (self, g_strdup_printf (_ ("Plates of the grinder: %s"), plates));
  else
    add_line_to_write (self, _ ("Plates of the grinder, if it is delivered ground:"));
}

static void
add_signatures (FmBatchSheet *self)
{
  fm_batch_sheet_add (self, FM_SHEET_HEADING, g_strdup (_ ("Agreed")));
  add_line_to_write (self, _ ("Supplier, date, signature:"));
  add_line_to_write (self, _ ("Buyer, date, signature:"));
  fm_batch_sheet_add (
      self, FM_SHEET_SMALL,
      g_strdup (_ ("Figures of the notebook, not of a delivery. Local rules on temperature, dates "
                   "and identification of meat come first; ask a licensed professional.")));
}

FmBatchSheet *
fm_specification_new (const FmFormula *formula, const FmBatchSheetInput *input, GError **error)
{
  g_autoptr (FmBatch) batch = fm_batch_new (formula, &input->plan, error);
  FmBatchSheet *self;

  if (batch == NULL)
    return NULL;
  self = fm_batch_sheet_new_empty (_ ("Specification"));
  self->notice = input->notice;
  fm_batch_sheet_add (
      self, FM_SHEET_TITLE,
      /* TRANSLATORS: name of the blend, "version 3" */
      g_strdup_printf (_ ("Specification: %s, %s"), input->blend_name, input->version_name));
  if (input->date_text != NULL)
    fm_batch_sheet_add (self, FM_SHEET_SMALL, g_strdup (input->date_text));
  add_blend (self, formula, input);
  for (guint i = 0; i < batch->lines->len; i++)
    add_line (self, &g_array_index (batch->lines, FmBatchLine, i));
  add_signatures (self);
  return self;
}
