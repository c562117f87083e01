/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-batch-sheet.c - the sheet that goes to the grinder, as plain rows of text */
#include "report/fm-batch-sheet-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-double.h"
#include "core/base/fm-number.h"
#include "core/base/fm-rounding.h"
#include "core/batch/fm-batch-derivation.h"
#include "core/cooking/fm-caution.h"

/* Names of the dataset are full of commas. */
#define NAME_BREAK "; "

static char *
money_text (const char *currency, double amount)
{
  g_autofree char *number = fm_number_format (amount, 2);

  if (isnan (amount))
    return g_steal_pointer (&number);
  return g_strdup_printf ("%s%s", currency, number);
}

char *
fm_batch_sheet_known_money (const char *currency, gboolean is_whole, double amount)
{
  g_autofree char *money = money_text (currency, amount);

  if (isnan (amount))
    return g_strdup (_ ("not known"));
  if (is_whole)
    return g_steal_pointer (&money);
  /* Translators: the known part of an amount, e.g. "at least 12.3 mg" */
  return g_strdup_printf (_ ("at least %s"), money);
}

static void
add_head (FmBatchSheet *self, const FmBatchSheetInput *input)
{
  const FmBatchPlan *plan = &input->plan;
  g_autofree char *mass = fm_number_format_unit (plan->patty_mass_g, 1, "g");
  g_autoptr (GString) origin = g_string_new (NULL);

  fm_batch_sheet_add (
      self, FM_SHEET_TITLE,
      /* Translators: name of the blend, "version 3" */
      g_strdup_printf (_ ("Batch sheet: %s, %s"), input->blend_name, input->version_name));
  fm_batch_sheet_add (self, FM_SHEET_SUBTITLE,
                      g_strdup_printf (ngettext ("%d patty of %s raw", "%d patties of %s raw",
                                                 (gulong)plan->n_patties),
                                       plan->n_patties, mass));
  if (input->notebook_name != NULL)
    g_string_append_printf (origin, _ ("Notebook: %s"), input->notebook_name);
  if (input->date_text != NULL)
    g_string_append_printf (origin, "%s%s", origin->len > 0 ? " · " : "", input->date_text);
  if (origin->len > 0)
    fm_batch_sheet_add (self, FM_SHEET_SMALL, g_strdup (origin->str));
}

/* The columns of the lines as they are shown: each adds up to its total. */
typedef struct {
  double *share_pct;
  double *edible_g;
  double *cost;
  double edible_total_g;
  double cost_total; /* NaN = none has a price */
  gboolean has_all_costs;
} Columns;

static int
bought_decimals (const FmBatchSheetInput *input)
{
  return input->plan.buy_step_g >= 1.0 ? 0 : 1;
}

static void
columns_init (Columns *self, const FmBatch *batch)
{
  const guint n = batch->lines->len;

  *self = (Columns){ g_new (double, n), g_new (double, n), g_new (double, n), 0.0, NAN, TRUE };
  for (guint i = 0; i < n; i++) {
    const FmBatchLine *line = &g_array_index (batch->lines, FmBatchLine, i);

    self->share_pct[i] = line->share_pct;
    self->edible_g[i] = line->edible_g;
    self->cost[i] = line->cost;
  }
  fm_round_to_sum (n, self->share_pct, 1, self->share_pct);
  fm_round_to_sum (n, self->edible_g, 1, self->edible_g);
  fm_round_to_sum (n, self->cost, 2, self->cost);
  for (guint i = 0; i < n; i++) {
    self->edible_total_g += self->edible_g[i];
    self->has_all_costs &= !isnan (self->cost[i]);
    self->cost_total = fm_double_add_known (self->cost_total, self->cost[i]);
  }
}

static void
columns_clear (Columns *self)
{
  g_free (self->share_pct);
  g_free (self->edible_g);
  g_free (self->cost);
}

static void
add_ingredient (FmBatchSheet *self,
                const FmBatchSheetInput *input,
                const FmBatch *batch,
                const Columns *columns,
                guint i)
{
  const FmBatchLine *line = &g_array_index (batch->lines, FmBatchLine, i);
  FmSheetRow *row =
      fm_batch_sheet_add (self, FM_SHEET_INGREDIENT, g_strdup (line->line->ingredient->name));

  row->cells[1] = fm_number_format_unit (columns->share_pct[i], 1, "%");
  row->cells[2] = fm_number_format_unit (columns->edible_g[i], 1, "g");
  row->cells[3] = fm_number_format_unit (line->bought_g, bought_decimals (input), "g");
  row->cells[4] = money_text (input->currency, columns->cost[i]);
}

static void
add_salt (FmBatchSheet *self,
          const FmBatchSheetInput *input,
          const FmBatch *batch,
          const Columns *columns)
{
  const double salt_cost = round (batch->salt_cost * 100.0) / 100.0;
  const gboolean is_whole = columns->has_all_costs && !isnan (salt_cost);
  const double cost = fm_double_add_known (columns->cost_total, salt_cost);
  g_autofree char *salt_pct = fm_number_to_edit (input->plan.salt_pct, 2);
  FmSheetRow *row =
      fm_batch_sheet_add (self, FM_SHEET_INGREDIENT,
                          g_strdup_printf (_ ("Salt, %s %% of the ground mass, on top"), salt_pct));

  row->cells[2] = fm_number_format_unit (batch->salt_g, 1, "g");
  row->cells[3] = fm_number_format_unit (batch->salt_bought_g, bought_decimals (input), "g");
  row->cells[4] = money_text (input->currency, salt_cost);
  row = fm_batch_sheet_add (self, FM_SHEET_TOTAL, g_strdup (_ ("In all, with the salt on top")));
  row->cells[3] =
      fm_number_format_unit (batch->bought_g + batch->salt_bought_g, bought_decimals (input), "g");
  row->cells[4] = fm_batch_sheet_known_money (input->currency, is_whole, cost);
}

static void
add_totals (FmBatchSheet *self,
            const FmBatchSheetInput *input,
            const FmBatch *batch,
            const Columns *columns)
{
  FmSheetRow *row = fm_batch_sheet_add (self, FM_SHEET_TOTAL, g_strdup (_ ("Into the grinder")));

  row->cells[2] = fm_number_format_unit (columns->edible_total_g, 1, "g");
  row->cells[3] = fm_number_format_unit (batch->bought_g, bought_decimals (input), "g");
  row->cells[4] =
      fm_batch_sheet_known_money (input->currency, columns->has_all_costs, columns->cost_total);
  row = fm_batch_sheet_add (self, FM_SHEET_TOTAL, g_strdup (_ ("Ground, for the patties")));
  row->cells[2] = fm_number_format_unit (batch->ground_g, 1, "g");
  if (batch->salt_g > 0.0)
    add_salt (self, input, batch, columns);
}

/* Buying is in whole steps, and the rest stays in the cold room: it is no cost of this batch. */
static void
add_buying_note (FmBatchSheet *self, const FmBatchSheetInput *input)
{
  g_autofree char *step = fm_number_to_edit (input->plan.buy_step_g, 1);

  if (input->plan.buy_step_g > 0.0)
    fm_batch_sheet_add (self, FM_SHEET_SMALL,
                        g_strdup_printf (_ ("To buy: with trim loss, rounded up to steps of %s g. "
                                            "Costs are of what goes in."),
                                         step));
}

static void
add_table_notes (FmBatchSheet *self, const FmBatch *batch)
{
  g_autoptr (GString) assumed = g_string_new (NULL);

  for (guint i = 0; i < batch->lines->len; i++) {
    const FmBatchLine *line = &g_array_index (batch->lines, FmBatchLine, i);

    if (line->yield_assumed)
      g_string_append_printf (assumed, "%s%s", assumed->len > 0 ? NAME_BREAK : "",
                              line->line->ingredient->name);
  }
  if (assumed->len > 0)
    fm_batch_sheet_add (
        self, FM_SHEET_SMALL,
        g_strdup_printf (_ ("No trim loss is stated, so all of it is taken as edible: %s."),
                         assumed->str));
}

static void
add_table (FmBatchSheet *self, const FmBatchSheetInput *input, const FmBatch *batch)
{
  FmSheetRow *head = NULL;
  Columns columns;

  fm_batch_sheet_add (self, FM_SHEET_HEADING, g_strdup (_ ("Weigh")));
  head = fm_batch_sheet_add (self, FM_SHEET_COLUMNS, g_strdup (_ ("Ingredient")));
  head->cells[1] = g_strdup (_ ("Share"));
  head->cells[2] = g_strdup (_ ("Edible"));
  head->cells[3] = g_strdup (_ ("To buy"));
  head->cells[4] = g_strdup (_ ("Cost"));
  columns_init (&columns, batch);
  for (guint i = 0; i < batch->lines->len; i++)
    add_ingredient (self, input, batch, &columns, i);
  add_totals (self, input, batch, &columns);
  columns_clear (&columns);
  add_buying_note (self, input);
  add_table_notes (self, batch);
}

static char *
costs_text (const FmBatchSheetInput *input, const FmBatch *batch)
{
  const gboolean is_whole = batch->without_price[0] == NULL;
  g_autofree char *raw =
      fm_batch_sheet_known_money (input->currency, is_whole, batch->cost_per_raw_patty);
  g_autofree char *cooked =
      fm_batch_sheet_known_money (input->currency, is_whole, batch->cost_per_cooked_patty);
  g_autofree char *cooked_100g =
      fm_batch_sheet_known_money (input->currency, is_whole, batch->cost_per_100g_cooked);
  g_autofree char *costs =
      g_strdup_printf (_ ("Cost per raw patty %s, per cooked patty %s, per 100 g cooked %s"), raw,
                       cooked, cooked_100g);
  g_autofree char *names = g_strjoinv (NAME_BREAK, batch->without_price);

  if (is_whole)
    return g_steal_pointer (&costs);
  /* Translators: a sentence about costs, then names of ingredients */
  return g_strdup_printf (_ ("%s. Without a price: %s"), costs, names);
}

static void
add_costs (FmBatchSheet *self, const FmBatchSheetInput *input, const FmBatch *batch)
{
  g_autofree char *mass = fm_number_format_unit (batch->cooked_patty_g, 0, "g");
  g_autofree char *yield = fm_number_format_unit (input->plan.cook_yield_pct, 1, "%");
  g_autofree char *unknown = fm_cook_unknown_text (input->method, &input->food);

  self->costs = costs_text (input, batch);
  self->cost_derivation = fm_batch_cost_derivation (batch, &input->plan);
  fm_batch_sheet_add (self, FM_SHEET_HEADING, g_strdup (_ ("Cost")));
  fm_batch_sheet_add (self, FM_SHEET_TEXT, g_strdup (self->costs));
  fm_batch_sheet_add (
      self, FM_SHEET_SMALL,
      isnan (input->plan.cook_yield_pct)
          ? g_strdup (unknown != NULL ? unknown : _ ("The cooked mass is not known."))
          /* Translators: cooking method, yield in %, mass of a cooked patty */
          : g_strdup_printf (_ ("%s: cooked yield %s of the raw mass as predicted, %s for a "
                                "patty."),
                             fm_cook_method_name (input->method), yield, mass));
}

static char *
joined_names (const FmBatch *batch, gboolean stated)
{
  g_autoptr (GString) names = g_string_new (NULL);

  for (guint i = 0; i < batch->lines->len; i++) {
    const FmIngredient *ingredient = g_array_index (batch->lines, FmBatchLine, i).line->ingredient;

    if (!ingredient->allergens_known == !stated)
      g_string_append_printf (names, "%s%s", names->len > 0 ? NAME_BREAK : "", ingredient->name);
  }
  return g_string_free (g_steal_pointer (&names), FALSE);
}

static void
add_stated_allergens (FmBatchSheet *self, const FmBatch *batch)
{
  for (guint i = 0; i < batch->lines->len; i++) {
    const FmIngredient *ingredient = g_array_index (batch->lines, FmBatchLine, i).line->ingredient;
    g_autofree char *text = fm_allergens_join (ingredient->allergens);

    if (!ingredient->allergens_known)
      continue;
    fm_batch_sheet_add (
        self, FM_SHEET_TEXT,
        g_strdup_printf ("%s: %s", ingredient->name,
                         *text != '\0' ? text : _ ("none stated by whoever entered it")));
  }
}

static void
add_allergens (FmBatchSheet *self, const FmBatch *batch)
{
  g_autofree char *not_stated = joined_names (batch, FALSE);

  fm_batch_sheet_add (self, FM_SHEET_HEADING, g_strdup (_ ("Allergens (US 9 and EU 14 lists)")));
  add_stated_allergens (self, batch);
  if (*not_stated != '\0')
    fm_batch_sheet_add (self, FM_SHEET_TEXT, g_strdup_printf (_ ("Not stated: %s"), not_stated));
  fm_batch_sheet_add (
      self, FM_SHEET_SMALL,
      g_strdup (_ ("Check the label of each supplier. Not stated does not mean none, and traces "
                   "are not listed. Local rules decide what must be declared.")));
}

static void
add_citation (FmBatchSheet *self, const FmBatch *batch)
{
  for (guint i = 0; i < batch->lines->len; i++) {
    if (g_array_index (batch->lines, FmBatchLine, i).line->ingredient->provenance !=
        FM_PROVENANCE_DATASET)
      continue;
    fm_batch_sheet_add (
        self, FM_SHEET_SMALL,
        g_strdup (_ ("Composition and cooked yields: USDA National Nutrient Database for "
                     "Standard Reference, Release 28, and own entries.")));
    return;
  }
  fm_batch_sheet_add (
      self, FM_SHEET_SMALL,
      g_strdup (_ ("Composition: own entries. Cooked yields: USDA National Nutrient Database "
                   "for Standard Reference, Release 28.")));
}

void
fm_batch_sheet_add_caution (FmBatchSheet *self, const FmBatchSheetInput *input)
{
  g_autofree char *figure = fm_caution_figure_text (input->food.species);

  fm_batch_sheet_add (self, FM_SHEET_HEADING, g_strdup (_ ("Ground meat")));
  fm_batch_sheet_add (self, FM_SHEET_CAUTION, g_strdup (fm_caution_text ()));
  fm_batch_sheet_add (self, FM_SHEET_CAUTION,
                      g_strdup_printf (_ ("The figure that rules for this blend: %s."), figure));
}

FmBatchSheet *
fm_batch_sheet_new (const FmFormula *formula, const FmBatchSheetInput *input, GError **error)
{
  g_autoptr (FmBatch) batch = fm_batch_new (formula, &input->plan, error);
  FmBatchSheet *self;

  if (batch == NULL)
    return NULL;
  self = fm_batch_sheet_new_empty (_ ("Batch Sheet"));
  self->notice = input->notice;
  add_head (self, input);
  add_table (self, input, batch);
  add_costs (self, input, batch);
  fm_batch_sheet_add_steps (self, formula, input, batch);
  add_allergens (self, batch);
  fm_batch_sheet_add_caution (self, input);
  add_citation (self, batch);
  return self;
}
