/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-batch-derivation.c - where the costs of a batch come from, as text that can be copied */
#include "core/batch/fm-batch-derivation.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-number.h"

#define MASS_DECIMALS 1
#define MONEY_DECIMALS 3

static void
add_line (GString *text, char *line)
{
  g_string_append (text, line);
  g_string_append_c (text, '\n');
  g_free (line);
}

static void
add_masses (GString *text, const FmBatch *batch, const FmBatchPlan *plan)
{
  g_autofree char *patty = fm_number_format (plan->patty_mass_g, MASS_DECIMALS);
  g_autofree char *ground = fm_number_format (batch->ground_g, MASS_DECIMALS);
  g_autofree char *loss = fm_number_format (plan->grind_loss_pct, MASS_DECIMALS);
  g_autofree char *edible = fm_number_format (batch->edible_g, MASS_DECIMALS);

  add_line (text,
            g_strdup_printf (ngettext ("%d patty × %s g = %s g shaped.",
                                       "%d patties × %s g = %s g shaped.", (gulong)plan->n_patties),
                             plan->n_patties, patty, ground));
  add_line (text, g_strdup_printf (_ ("%s g ÷ (100 %% − %s %% grind loss) = %s g edible into the "
                                      "grinder, shared out as the formula says."),
                                   ground, loss, edible));
}

/* What has to be bought for the edible mass, and whether its yield was stated. */
static char *
purchased_text (const FmBatchLine *line)
{
  const char *name = line->line->ingredient->name;
  g_autofree char *edible = fm_number_format (line->edible_g, MASS_DECIMALS);
  g_autofree char *purchased = fm_number_format (line->purchased_g, MASS_DECIMALS);
  g_autofree char *yield = fm_number_format (line->line->ingredient->ep_yield_pct, MASS_DECIMALS);

  if (line->yield_assumed)
    /* TRANSLATORS: name, masses in g */
    return g_strdup_printf (_ ("%s: %s g edible = %s g as purchased, since no yield is stated for "
                               "it and all of it is taken as edible"),
                            name, edible, purchased);
  /* TRANSLATORS: name, mass in g, yield in percent, mass in g */
  return g_strdup_printf (_ ("%s: %s g edible ÷ %s %% stated yield = %s g as purchased"), name,
                          edible, yield, purchased);
}

static void
add_price (GString *text, const FmBatchLine *line)
{
  g_autofree char *purchased = purchased_text (line);
  g_autofree char *price = fm_number_format (line->line->ingredient->price_per_kg, 2);
  g_autofree char *cost = fm_number_format (line->cost, MONEY_DECIMALS);

  if (isnan (line->cost))
    /* TRANSLATORS: "Chuck: 500.0 g edible ÷ 95.0 % stated yield = 526.3 g as purchased" */
    add_line (text, g_strdup_printf (_ ("%s; no price: what it costs is not known, never nothing."),
                                     purchased));
  else
    add_line (text, g_strdup_printf (_ ("%s; × %s per kg = %s"), purchased, price, cost));
}

static void
add_salt (GString *text, const FmBatch *batch)
{
  g_autofree char *mass = fm_number_format (batch->salt_g, MASS_DECIMALS);
  g_autofree char *cost = fm_number_format (batch->salt_cost, MONEY_DECIMALS);

  if (isnan (batch->salt_g))
    return;
  add_line (text, isnan (batch->salt_cost)
                      ? g_strdup_printf (_ ("Salt on the surface: %s g, no price"), mass)
                      : g_strdup_printf (_ ("Salt on the surface: %s g = %s"), mass, cost));
}

static void
add_part (GString *text, const char *what, double cost)
{
  g_autofree char *amount = fm_number_format (cost, MONEY_DECIMALS);

  if (!isnan (cost))
    add_line (text, g_strdup_printf ("%s: %s", what, amount));
}

char *
fm_batch_cost_derivation (const FmBatch *batch, const FmBatchPlan *plan)
{
  g_autofree char *cooked = fm_number_format (plan->cook_yield_pct, MASS_DECIMALS);
  GString *text = g_string_new (NULL);

  add_masses (text, batch, plan);
  g_string_append_c (text, '\n');
  for (guint i = 0; i < batch->lines->len; i++)
    add_price (text, &g_array_index (batch->lines, FmBatchLine, i));
  add_salt (text, batch);
  g_string_append_c (text, '\n');
  add_part (text, _ ("Their sum, the whole batch"), batch->cost);
  add_part (text, _ ("÷ patties, each raw patty"), batch->cost_per_raw_patty);
  add_part (text, _ ("The same money, each cooked patty"), batch->cost_per_cooked_patty);
  add_part (text, _ ("100 g raw"), batch->cost_per_100g_raw);
  add_part (text, _ ("100 g cooked"), batch->cost_per_100g_cooked);
  if (!isnan (plan->cook_yield_pct))
    add_line (text, g_strdup_printf (_ ("Cooked mass: %s %% of the raw."), cooked));
  if (batch->without_price != NULL && batch->without_price[0] != NULL)
    add_line (text, g_strdup (_ ("Without every price these are the least that it costs.")));
  g_string_append (text, _ ("Prices are those entered for the ingredients. What is bought in whole "
                            "steps may cost more."));
  return g_string_free (text, FALSE);
}
