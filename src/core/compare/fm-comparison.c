/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-comparison.c - versions and experiments side by side, as plain numbers */
#include "core/compare/fm-comparison-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-number.h"
#include "core/formula/fm-nutrition-text.h"

const char *
fm_compare_section_name (FmCompareSection section)
{
  switch (section) {
  case FM_COMPARE_SECTION_FAT_LEAN:
    return _ ("Fat and lean");
  case FM_COMPARE_SECTION_INGREDIENTS:
    return _ ("Ingredients, by mass");
  case FM_COMPARE_SECTION_MAKING:
    return _ ("Making and cooking");
  case FM_COMPARE_SECTION_FINDINGS:
    return _ ("Notes, tastings and photos");
  case FM_COMPARE_SECTION_PROCESS:
    return _ ("Process, as planned");
  case FM_COMPARE_SECTION_COST:
    return _ ("Cost");
  case FM_COMPARE_SECTION_NUTRIENTS:
  case FM_N_COMPARE_SECTIONS:
    break;
  }
  /* One section a group, from the first on. */
  return fm_nutrient_group_name (section - FM_COMPARE_SECTION_NUTRIENTS);
}

/* Blends that know nothing of each other may call two foods alike. */
static void
name_apart (FmComparison *self, FmCompareRow *row, const FmIngredient *ingredient)
{
  guint nth = 1;

  for (guint i = 0; i < self->rows->len; i++) {
    const FmCompareRow *other = g_ptr_array_index (self->rows, i);

    if (other == row || other->section != row->section || !g_str_equal (other->name, row->name))
      continue;
    g_free (row->name);
    row->name = fm_ingredient_name_apart (ingredient, ++nth);
    i = 0;
  }
}

static FmCompareRow *
ingredient_row (FmComparison *self, const FmIngredient *ingredient)
{
  g_autofree char *key = g_strconcat ("ingredient:", fm_ingredient_identity (ingredient), NULL);
  FmCompareRow *row = (FmCompareRow *)fm_comparison_find_row (self, key);

  if (row != NULL)
    return row;
  row = fm_comparison_add_row (self, FM_COMPARE_SECTION_INGREDIENTS, key, ingredient->name, "%", 1);
  name_apart (self, row, ingredient);
  /* A blend that does not hold the ingredient holds none of it, which is known. */
  for (guint i = 0; i < self->items->len; i++)
    row->values[i] = fm_comparison_item (self, i)->analysis->total_g > 0.0 ? 0.0 : NAN;
  return row;
}

static void
add_ingredients (FmComparison *self)
{
  for (guint column = 0; column < self->items->len; column++) {
    const FmCompareItem *item = fm_comparison_item (self, column);

    for (guint i = 0; i < fm_formula_n_lines (item->formula); i++) {
      FmCompareRow *row = ingredient_row (self, fm_formula_line (item->formula, i)->ingredient);

      row->values[column] += item->analysis->line_share_pct[i];
    }
  }
}

static double
fat_pct (const FmCompareItem *item)
{
  return item->analysis->fat_pct;
}

static double
lean_pct (const FmCompareItem *item)
{
  return item->analysis->lean_pct;
}

static double
declared_fat_pct (const FmCompareItem *item)
{
  return item->analysis->declared_fat_pct;
}

static double
fat_u_pct (const FmCompareItem *item)
{
  return item->analysis->fat_u_pct;
}

static double
batch_g (const FmCompareItem *item)
{
  return item->analysis->total_g;
}

static double
planned_patty_g (const FmCompareItem *item)
{
  return item->formula->brief->patty_mass_g;
}

static double
cost_per_kg (const FmCompareItem *item)
{
  return item->analysis->cost_per_kg;
}

static double
cost_per_patty (const FmCompareItem *item)
{
  return item->analysis->cost_per_kg * planned_patty_g (item) / 1000.0;
}

static double
cook_loss_pct (const FmCompareItem *item)
{
  return item->cook_loss_pct;
}

static double
predicted_loss_pct (const FmCompareItem *item)
{
  const FmCookFood food = { fm_formula_species (item->formula), item->analysis->fat_pct };

  return 100.0 - fm_cook_yield_pct (FM_COOK_PATTY_PAN_BROILED, &food);
}

static double
rating (const FmCompareItem *item)
{
  return item->rating;
}

static double
n_experiments (const FmCompareItem *item)
{
  return item->n_experiments;
}

static double
liking (const FmCompareItem *item)
{
  return item->liking;
}

static double
n_tasters (const FmCompareItem *item)
{
  return item->n_tasters;
}

static double
mean_patty_g (const FmCompareItem *item)
{
  FmPattyStats stats;

  if (item->experiment == NULL)
    return NAN;
  fm_experiment_patty_stats (item->experiment, &stats);
  return stats.mean_g;
}

static double
patty_spread_g (const FmCompareItem *item)
{
  FmPattyStats stats;

  if (item->experiment == NULL)
    return NAN;
  fm_experiment_patty_stats (item->experiment, &stats);
  return stats.sd_g;
}

static double
peak_core_c (const FmCompareItem *item)
{
  return item->experiment != NULL ? fm_experiment_peak_core_c (item->experiment) : NAN;
}

static double
meat_temp_c (const FmCompareItem *item)
{
  return item->experiment != NULL ? item->experiment->meat_temp_c : NAN;
}

static double
plate_mm (const FmCompareItem *item)
{
  return item->experiment != NULL ? item->experiment->plate_mm : NAN;
}

static double
salt_pct (const FmCompareItem *item)
{
  return item->experiment != NULL ? item->experiment->salt_pct : NAN;
}

static double
surface_salt_pct (const FmCompareItem *item)
{
  return item->experiment != NULL ? item->experiment->surface_salt_pct : NAN;
}

static double
salt_minutes (const FmCompareItem *item)
{
  return item->experiment != NULL ? item->experiment->salt_minutes_before : NAN;
}

static double
surface_temp_c (const FmCompareItem *item)
{
  return item->experiment != NULL ? item->experiment->surface_temp_c : NAN;
}

static double
cook_minutes (const FmCompareItem *item)
{
  return item->experiment != NULL
             ? item->experiment->minutes_side_1 + item->experiment->minutes_side_2
             : NAN;
}

static double
rest_minutes (const FmCompareItem *item)
{
  return item->experiment != NULL ? item->experiment->rest_minutes : NAN;
}

/** A quantity that is one number per item. */
typedef struct {
  FmCompareSection section;
  const char *key;
  const char *name;
  const char *unit;
  int decimals;
  double (*value) (const FmCompareItem *item);
  gboolean of_experiments; /* left out when no experiment is compared */
} Quantity;

static const Quantity quantities[] = {
  { FM_COMPARE_SECTION_FAT_LEAN, "fat", N_ ("Fat, calculated"), "%", 1, fat_pct, FALSE },
  { FM_COMPARE_SECTION_FAT_LEAN, "lean", N_ ("Lean, calculated"), "%", 1, lean_pct, FALSE },
  { FM_COMPARE_SECTION_FAT_LEAN, "declared_fat", N_ ("Fat, by declared lean point"), "%", 1,
    declared_fat_pct, FALSE },
  { FM_COMPARE_SECTION_FAT_LEAN, "fat_uncertainty", N_ ("Standard uncertainty of fat"), "%", 2,
    fat_u_pct, FALSE },
  { FM_COMPARE_SECTION_MAKING, "cook_loss", N_ ("Cook loss, recorded"), "%", 1, cook_loss_pct,
    FALSE },
  { FM_COMPARE_SECTION_MAKING, "predicted_loss",
    N_ ("Cook loss, predicted for a pan-broiled patty"), "%", 1, predicted_loss_pct, FALSE },
  { FM_COMPARE_SECTION_MAKING, "rating", N_ ("Rating, 1 to 10"), "", 1, rating, FALSE },
  { FM_COMPARE_SECTION_MAKING, "experiments", N_ ("Experiments behind these"), "", 0, n_experiments,
    FALSE },
  { FM_COMPARE_SECTION_MAKING, "liking", N_ ("Liking in blind tastings, 1 to 9"), "", 1, liking,
    FALSE },
  { FM_COMPARE_SECTION_MAKING, "tasters", N_ ("Tasters behind the liking"), "", 0, n_tasters,
    FALSE },
  { FM_COMPARE_SECTION_MAKING, "batch", N_ ("Batch"), "g", 0, batch_g, FALSE },
  { FM_COMPARE_SECTION_MAKING, "planned_patty", N_ ("Patty, planned"), "g", 0, planned_patty_g,
    FALSE },
  { FM_COMPARE_SECTION_MAKING, "mean_patty", N_ ("Raw patty, mean"), "g", 1, mean_patty_g, TRUE },
  { FM_COMPARE_SECTION_MAKING, "patty_spread", N_ ("Raw patty, standard deviation"), "g", 1,
    patty_spread_g, TRUE },
  { FM_COMPARE_SECTION_MAKING, "peak_core", N_ ("Highest core temperature"), "°C", 1, peak_core_c,
    TRUE },
  { FM_COMPARE_SECTION_MAKING, "meat_temp", N_ ("Meat temperature at grinding"), "°C", 1,
    meat_temp_c, TRUE },
  { FM_COMPARE_SECTION_MAKING, "plate", N_ ("Grinder plate"), "mm", 1, plate_mm, TRUE },
  { FM_COMPARE_SECTION_MAKING, "salt", N_ ("Salt mixed in"), "%", 2, salt_pct, TRUE },
  { FM_COMPARE_SECTION_MAKING, "surface_salt", N_ ("Salt on the surface"), "%", 2, surface_salt_pct,
    TRUE },
  { FM_COMPARE_SECTION_MAKING, "salt_time", N_ ("Salted before cooking"), "min", 0, salt_minutes,
    TRUE },
  { FM_COMPARE_SECTION_MAKING, "surface_temp", N_ ("Surface temperature"), "°C", 0, surface_temp_c,
    TRUE },
  { FM_COMPARE_SECTION_MAKING, "cook_time", N_ ("Cooking time, both sides"), "min", 1, cook_minutes,
    TRUE },
  { FM_COMPARE_SECTION_MAKING, "rest", N_ ("Rest"), "min", 1, rest_minutes, TRUE },
  { FM_COMPARE_SECTION_COST, "cost_per_kg", N_ ("Cost per kg, edible"), "", 2, cost_per_kg, FALSE },
  { FM_COMPARE_SECTION_COST, "cost_per_patty", N_ ("Cost per raw patty"), "", 2, cost_per_patty,
    FALSE },
};

static gboolean
has_experiment (const FmComparison *self)
{
  for (guint i = 0; i < self->items->len; i++)
    if (fm_comparison_item (self, i)->experiment != NULL)
      return TRUE;
  return FALSE;
}

static void
add_quantities (FmComparison *self, FmCompareSection section)
{
  gboolean with_experiments = has_experiment (self);

  for (guint i = 0; i < G_N_ELEMENTS (quantities); i++) {
    const Quantity *quantity = &quantities[i];
    FmCompareRow *row;

    if (quantity->section != section || (quantity->of_experiments && !with_experiments))
      continue;
    row = fm_comparison_add_row (self, section, quantity->key, _ (quantity->name), quantity->unit,
                                 quantity->decimals);
    for (guint column = 0; column < self->items->len; column++)
      row->values[column] = quantity->value (fm_comparison_item (self, column));
  }
}

static void
add_nutrient (FmComparison *self, FmNutrient nutrient)
{
  const FmNutrientInfo *info = fm_nutrient_info (nutrient);
  g_autofree char *key = g_strconcat ("nutrient_", info->key, NULL);
  FmCompareRow *row =
      fm_comparison_add_row (self, FM_COMPARE_SECTION_NUTRIENTS + info->group, key,
                             fm_nutrient_name (nutrient), info->unit, info->display_decimals);

  for (guint column = 0; column < self->items->len; column++) {
    const FmAmount *amount = &fm_comparison_item (self, column)->analysis->amounts[nutrient];

    row->values[column] = fm_analysis_value (fm_comparison_item (self, column)->analysis, nutrient);
    if (fm_amount_knowledge (amount) == FM_KNOWLEDGE_PART)
      row->at_least[column] = amount->known_g_per_100g;
  }
}

static void
add_nutrients (FmComparison *self, FmNutrientGroup group)
{
  for (guint i = 0; i < FM_N_NUTRIENTS; i++)
    if (fm_nutrient_info (i)->group == group)
      add_nutrient (self, i);
}

static char *
photos_text (const FmCompareItem *item)
{
  if (item->n_photos == 0)
    return NULL;
  return g_strdup_printf (ngettext ("%u photo", "%u photos", item->n_photos), item->n_photos);
}

static void
add_findings (FmComparison *self)
{
  const guint n = self->items->len;
  char **photos = g_new0 (char *, n);
  char **notes = g_new0 (char *, n);
  char **tastings = g_new0 (char *, n);

  for (guint i = 0; i < n; i++) {
    const FmCompareItem *item = fm_comparison_item (self, i);

    photos[i] = photos_text (item);
    notes[i] = g_strdup (item->notes);
    tastings[i] = g_strdup (item->tastings);
  }
  fm_comparison_add_words (self, FM_COMPARE_SECTION_FINDINGS, FM_COMPARE_PHOTOS_KEY, _ ("Photos"),
                           photos);
  fm_comparison_add_words (self, FM_COMPARE_SECTION_FINDINGS, "notes", _ ("Notes"), notes);
  fm_comparison_add_words (self, FM_COMPARE_SECTION_FINDINGS, "tastings", _ ("Blind tastings"),
                           tastings);
}

FmComparison *
fm_comparison_new (GPtrArray *items)
{
  FmComparison *self = g_new0 (FmComparison, 1);

  self->items = items;
  self->rows = g_ptr_array_new_with_free_func ((GDestroyNotify)fm_compare_row_free);
  add_quantities (self, FM_COMPARE_SECTION_FAT_LEAN);
  add_ingredients (self);
  add_quantities (self, FM_COMPARE_SECTION_MAKING);
  add_findings (self);
  fm_comparison_add_process (self);
  add_quantities (self, FM_COMPARE_SECTION_COST);
  for (guint group = 0; group < FM_N_NUTRIENT_GROUPS; group++)
    add_nutrients (self, group);
  return self;
}
