/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-nutrition-table.c - the nutrients of a portion as a table: text, CSV, paper */
#include "report/fm-nutrition-table.h"

#include <glib/gi18n-lib.h>

#include "core/formula/fm-nutrition-order.h"
#include "report/fm-csv-text.h"

typedef void (*RowFunc) (const FmNutritionTable *self, FmNutrient nutrient, gpointer out);
typedef void (*GroupFunc) (const FmNutritionTable *self, FmNutritionGroup group, gpointer out);

static gboolean
is_known (const FmNutritionTable *self, FmNutrient nutrient)
{
  return fm_amount_knowledge (&self->amounts[nutrient]) != FM_KNOWLEDGE_NONE;
}

static gboolean
any_known (const FmNutritionTable *self, FmNutritionGroup group)
{
  guint n = 0;
  const FmNutrient *nutrients = fm_nutrition_group_nutrients (group, &n);

  for (guint i = 0; i < n; i++)
    if (is_known (self, nutrients[i]))
      return TRUE;
  return FALSE;
}

/* @head: (nullable): before the rows of each group that has any. */
static void
each_row (
    const FmNutritionTable *self, gboolean with_unknown, GroupFunc head, RowFunc row, gpointer out)
{
  for (guint group = 0; group < FM_N_NUTRITION_GROUPS; group++) {
    guint n = 0;
    const FmNutrient *nutrients = fm_nutrition_group_nutrients ((FmNutritionGroup)group, &n);

    if (head != NULL && (with_unknown || any_known (self, (FmNutritionGroup)group)))
      head (self, (FmNutritionGroup)group, out);
    for (guint i = 0; i < n; i++)
      if (with_unknown || is_known (self, nutrients[i]))
        row (self, nutrients[i], out);
  }
}

static void
append_text_row (const FmNutritionTable *self, FmNutrient nutrient, gpointer out)
{
  const FmNutritionText *text = &self->texts[nutrient];

  g_string_append_printf (out, "%s\t%s", fm_nutrient_name (nutrient), text->amount);
  if (self->has_daily_value)
    g_string_append_printf (out, "\t%s", text->daily_value);
  g_string_append_c (out, '\n');
}

char *
fm_nutrition_table_text (const FmNutritionTable *self)
{
  g_autoptr (GString) text = g_string_new (NULL);

  g_return_val_if_fail (self != NULL, NULL);
  g_string_append_printf (text, "%s\n%s\n", self->subject, self->portion);
  if (self->notes != NULL)
    g_string_append_printf (text, "%s\n", self->notes);
  each_row (self, FALSE, NULL, append_text_row, text);
  return g_string_free (g_steal_pointer (&text), FALSE);
}

static void
append_csv_row (const FmNutritionTable *self, FmNutrient nutrient, gpointer out)
{
  const FmNutrientInfo *info = fm_nutrient_info (nutrient);
  const FmAmount *amount = &self->amounts[nutrient];
  const double value = amount->known_g_per_100g * self->portion_g / 100.0;

  fm_csv_append_text (out, fm_nutrient_name (nutrient));
  g_string_append_c (out, ',');
  /* One place more than on the screen, so that a spreadsheet can round for itself. */
  fm_csv_append_number (out, value, info->display_decimals + 1);
  g_string_append_c (out, ',');
  fm_csv_append_text (out, info->unit);
  g_string_append_c (out, ',');
  fm_csv_append_number (out, amount->covered_pct, 1);
  g_string_append_c (out, ',');
  fm_csv_append_number (out, 100.0 * value / info->daily_value, 1);
  g_string_append (out, "\r\n");
}

static void
append_csv_line (GString *csv, const char *name, const char *text)
{
  fm_csv_append_text (csv, name);
  g_string_append_c (csv, ',');
  fm_csv_append_text (csv, text);
  g_string_append (csv, ",,,\r\n");
}

char *
fm_nutrition_table_csv (const FmNutritionTable *self)
{
  const char *const columns[] = { _ ("Nutrient"), _ ("Amount"), _ ("Unit"),
                                  _ ("Known for, % of the mass"), _ ("Daily Value, %") };
  g_autoptr (GString) csv = g_string_new (NULL);

  g_return_val_if_fail (self != NULL, NULL);
  append_csv_line (csv, _ ("Of"), self->subject);
  append_csv_line (csv, _ ("Portion"), self->portion);
  if (self->notes != NULL)
    append_csv_line (csv, _ ("Notes"), self->notes);
  for (guint i = 0; i < G_N_ELEMENTS (columns); i++) {
    g_string_append (csv, i > 0 ? "," : "");
    fm_csv_append_text (csv, columns[i]);
  }
  g_string_append (csv, "\r\n");
  each_row (self, TRUE, NULL, append_csv_row, csv);
  return g_string_free (g_steal_pointer (&csv), FALSE);
}

static void
add_group (const FmNutritionTable *self, FmNutritionGroup group, gpointer sheet)
{
  FmSheetRow *row;

  fm_batch_sheet_add (sheet, FM_SHEET_HEADING, g_strdup (fm_nutrition_group_name (group)));
  row = fm_batch_sheet_add (sheet, FM_SHEET_COLUMNS, g_strdup (_ ("Nutrient")));
  row->cells[3] = g_strdup (_ ("Amount"));
  row->cells[4] = g_strdup (self->has_daily_value ? _ ("Daily Value") : "");
}

static void
add_row (const FmNutritionTable *self, FmNutrient nutrient, gpointer sheet)
{
  const FmNutritionText *text = &self->texts[nutrient];
  FmSheetRow *row =
      fm_batch_sheet_add (sheet, FM_SHEET_TOTAL, g_strdup (fm_nutrient_name (nutrient)));

  row->cells[3] = g_strdup (text->amount);
  row->cells[4] = g_strdup (self->has_daily_value ? text->daily_value : "");
}

FmBatchSheet *
fm_nutrition_table_sheet (const FmNutritionTable *self)
{
  g_autoptr (FmBatchSheet) sheet = NULL;

  g_return_val_if_fail (self != NULL, NULL);
  sheet = fm_batch_sheet_new_empty (_ ("Nutrition"));
  fm_batch_sheet_add (sheet, FM_SHEET_TITLE, g_strdup (self->subject));
  fm_batch_sheet_add (sheet, FM_SHEET_SUBTITLE, g_strdup (self->portion));
  if (self->notes != NULL)
    fm_batch_sheet_add (sheet, FM_SHEET_TEXT, g_strdup (self->notes));
  each_row (self, FALSE, add_group, add_row, sheet);
  fm_batch_sheet_add (sheet, FM_SHEET_SMALL,
                      g_strdup (_ ("Composition: USDA National Nutrient Database for Standard "
                                   "Reference, Release 28, and your own entries.")));
  if (self->has_daily_value)
    fm_batch_sheet_add (sheet, FM_SHEET_SMALL,
                        g_strdup (_ ("Daily Values: US FDA, 2016 (21 CFR 101.9), for adults and "
                                     "children from 4 years.")));
  return g_steal_pointer (&sheet);
}
