/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-serving-sheet.c - what a serving is made of, nourishes with and costs, on paper */
#include "report/fm-serving-sheet.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-number.h"
#include "core/formula/fm-nutrition-text.h"
#include "report/fm-batch-sheet-private.h"

#define NAME_BREAK "; "

static void
add_small (FmBatchSheet *self, char *text)
{
  fm_batch_sheet_add (self, FM_SHEET_SMALL, text);
}

static void
add_head (FmBatchSheet *self, const FmServingHead *head)
{
  fm_batch_sheet_add (
      self, FM_SHEET_TITLE,
      /* TRANSLATORS: name of the blend, "version 3, serving 2" */
      g_strdup_printf (_ ("Serving: %s, %s"), head->blend_name, head->version_name));
  if (head->name != NULL && *head->name != '\0')
    fm_batch_sheet_add (self, FM_SHEET_SUBTITLE, g_strdup (head->name));
  if (head->date_text != NULL)
    add_small (self, g_strdup (head->date_text));
}

static void
add_mass (FmBatchSheet *self, FmSheetKind kind, char *name, double mass_g)
{
  FmSheetRow *row = fm_batch_sheet_add (self, kind, name);

  row->cells[3] = fm_number_format_unit (mass_g, 1, "g");
}

static void
add_plate (FmBatchSheet *self, const FmDish *dish, const FmDishSum *sum)
{
  g_autofree char *raw = fm_number_format_unit (dish->patty_raw_g, 1, "g");
  g_autofree char *yield = fm_number_format_unit (sum->yield_pct, 1, "%");

  fm_batch_sheet_add (self, FM_SHEET_HEADING, g_strdup (_ ("On the plate")));
  add_mass (self, FM_SHEET_INGREDIENT,
            /* TRANSLATORS: number of patties, mass of one */
            g_strdup_printf (ngettext ("%d patty of %s raw, cooked", "%d patties of %s raw, cooked",
                                       (gulong)dish->n_patties),
                             dish->n_patties, raw),
            sum->cooked_g);
  for (guint i = 0; i < dish->parts->len; i++) {
    const FmDishPart *part = fm_dish_part (dish, i);

    add_mass (self, FM_SHEET_INGREDIENT,
              /* TRANSLATORS: "Bun", what it is */
              g_strdup_printf (_ ("%s: %s"), fm_dish_role_name (part->role), part->name),
              part->mass_g);
  }
  add_mass (self, FM_SHEET_TOTAL, g_strdup (_ ("The serving")), sum->total_g);
  add_small (self, g_strdup_printf (isnan (dish->cook_yield_pct)
                                        ? _ ("%s: cooked yield %s of the raw mass as predicted.")
                                        : _ ("%s: cooked yield %s of the raw mass as measured."),
                                    fm_cook_method_name (dish->method), yield));
  if (sum->basis != NULL)
    add_small (self, g_strdup (sum->basis));
}

static char *
amount_text (const FmAmount *amount, const FmNutrientInfo *info, double portion_g)
{
  const double value = amount->known_g_per_100g * portion_g / 100.0;
  g_autofree char *text = fm_number_format_unit (value, info->display_decimals, info->unit);

  switch (fm_amount_knowledge (amount)) {
  case FM_KNOWLEDGE_NONE:
    return g_strdup (_ ("not known"));
  case FM_KNOWLEDGE_PART:
    return g_strdup_printf (_ ("at least %s"), text);
  case FM_KNOWLEDGE_FULL:
    return g_steal_pointer (&text);
  }
  g_return_val_if_reached (NULL);
}

static void
add_nutrients (FmBatchSheet *self, const FmDishSum *sum)
{
  g_autoptr (FmAnalysis) analysis = fm_analysis_new (sum->eaten);
  FmSheetRow *row;

  fm_batch_sheet_add (self, FM_SHEET_HEADING, g_strdup (_ ("Nutrition")));
  row = fm_batch_sheet_add (self, FM_SHEET_COLUMNS, g_strdup (_ ("Nutrient")));
  row->cells[2] = g_strdup (_ ("Per 100 g"));
  row->cells[3] = g_strdup (_ ("Per serving"));
  for (int i = 0; i < FM_N_NUTRIENTS; i++) {
    const FmNutrientInfo *info = fm_nutrient_info ((FmNutrient)i);
    const FmAmount *amount = &analysis->amounts[i];

    if (info->group > FM_NUTRIENT_GROUP_MINERALS ||
        (info->group > FM_NUTRIENT_GROUP_ENERGY_MACRO &&
         fm_amount_knowledge (amount) == FM_KNOWLEDGE_NONE))
      continue;
    row = fm_batch_sheet_add (self, FM_SHEET_TOTAL, g_strdup (fm_nutrient_name ((FmNutrient)i)));
    row->cells[2] = amount_text (amount, info, 100.0);
    row->cells[3] = amount_text (amount, info, sum->total_g);
  }
}

static void
add_allergens (FmBatchSheet *self, const FmDishSum *sum)
{
  g_autofree char *stated = fm_allergens_join (sum->allergens);
  g_autofree char *not_stated = g_strjoinv (NAME_BREAK, sum->not_stated);

  fm_batch_sheet_add (self, FM_SHEET_HEADING, g_strdup (_ ("Allergens (US 9 and EU 14 lists)")));
  if (*stated != '\0')
    fm_batch_sheet_add (self, FM_SHEET_TEXT, g_strdup (stated));
  else if (*not_stated == '\0')
    fm_batch_sheet_add (self, FM_SHEET_TEXT, g_strdup (_ ("none stated by whoever entered it")));
  if (*not_stated != '\0')
    fm_batch_sheet_add (self, FM_SHEET_TEXT, g_strdup_printf (_ ("Not stated: %s"), not_stated));
  add_small (self,
             g_strdup (_ ("Check the label of each supplier. Not stated does not mean none, and "
                          "traces are not listed. Local rules decide what must be declared.")));
}

static void
add_cost (FmBatchSheet *self, const FmDishSum *sum, const char *currency)
{
  const gboolean is_whole = sum->without_price[0] == NULL;
  g_autofree char *cost = fm_batch_sheet_known_money (currency, is_whole, sum->cost);
  g_autofree char *names = g_strjoinv (NAME_BREAK, sum->without_price);

  fm_batch_sheet_add (self, FM_SHEET_HEADING, g_strdup (_ ("Cost")));
  fm_batch_sheet_add (self, FM_SHEET_TEXT,
                      g_strdup_printf (_ ("Ingredients of a serving: %s"), cost));
  if (!is_whole)
    add_small (self, g_strdup_printf (_ ("Without a price: %s"), names));
}

FmBatchSheet *
fm_serving_sheet_new (const FmDish *dish, const FmDishSum *sum, const FmServingHead *head)
{
  FmBatchSheet *self = fm_batch_sheet_new_empty (_ ("Serving"));
  const FmBatchSheetInput input = { .food = { .species = fm_formula_species (sum->used) } };

  add_head (self, head);
  add_plate (self, dish, sum);
  add_nutrients (self, sum);
  add_allergens (self, sum);
  add_cost (self, sum, head->currency);
  fm_batch_sheet_add_caution (self, &input);
  return self;
}
