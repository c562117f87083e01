/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-ingredient-list.c - the list of ingredients of a label */
#include "core/label/fm-ingredient-list-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

FmLabelWords *
fm_label_words_new (const char *name, const char *parts)
{
  FmLabelWords *self = g_new0 (FmLabelWords, 1);

  self->name = g_strdup (name);
  self->parts = g_strdup (parts);
  return self;
}

void
fm_label_words_free (FmLabelWords *self)
{
  g_free (self->name);
  g_free (self->parts);
  g_free (self);
}

static void
entry_free (FmListEntry *entry)
{
  g_free (entry->name);
  g_free (entry->parts);
  g_free (entry);
}

/* Organs have names of their own on a label and are no meat by Annex VII Part B no 17. */
static gboolean
is_organ (const FmIngredient *ingredient)
{
  return (ingredient->original_name != NULL &&
          strstr (ingredient->original_name, "variety meats") != NULL) ||
         strstr (ingredient->name, "variety meats") != NULL;
}

const char *
fm_ingredient_list_word (const FmIngredient *ingredient)
{
  const char *word = NULL;

  if (is_organ (ingredient))
    return ingredient->name;
  if (ingredient->kind == FM_INGREDIENT_CUT || ingredient->kind == FM_INGREDIENT_TRIM)
    word = fm_meat_word (ingredient->species);
  else if (ingredient->kind == FM_INGREDIENT_FAT)
    word = fm_meat_fat_word (ingredient->species);
  else if (ingredient->kind == FM_INGREDIENT_SALT)
    word = "salt";
  else if (ingredient->kind == FM_INGREDIENT_WATER)
    word = "water";
  return word != NULL ? word : ingredient->name;
}

static FmListEntry *
find_entry (GPtrArray *entries, const char *name, const char *parts)
{
  FmListEntry *entry;

  for (guint i = 0; i < entries->len; i++) {
    entry = g_ptr_array_index (entries, i);
    if (g_ascii_strcasecmp (entry->name, name) == 0 && g_strcmp0 (entry->parts, parts) == 0)
      return entry;
  }
  entry = g_new0 (FmListEntry, 1);
  entry->name = g_strdup (name);
  entry->parts = g_strdup (parts);
  g_ptr_array_add (entries, entry);
  return entry;
}

static void
add_line (GPtrArray *entries, const FmFormulaLine *line, GHashTable *words)
{
  const FmIngredient *stuff = line->ingredient;
  const FmLabelWords *own =
      words != NULL ? g_hash_table_lookup (words, fm_ingredient_identity (stuff)) : NULL;
  const char *name = own != NULL && own->name != NULL ? own->name : fm_ingredient_list_word (stuff);
  FmListEntry *entry = find_entry (entries, name, own != NULL ? own->parts : NULL);

  entry->species = stuff->species;
  entry->kind = is_organ (stuff) ? FM_INGREDIENT_OTHER : stuff->kind;
  entry->mass_g += line->mass_g;
  entry->fat_g += line->mass_g * fm_ingredient_fat_g_per_100g (stuff) / 100.0;
  entry->collagen_g += line->mass_g * fm_ingredient_collagen_g_per_100g (stuff) / 100.0;
  entry->protein_g += line->mass_g * fm_ingredient_value (stuff, FM_NUTRIENT_PROTEIN) / 100.0;
  entry->allergens |= stuff->allergens;
}

static int
heavier_first (gconstpointer a, gconstpointer b)
{
  const FmListEntry *first = *(FmListEntry *const *)a, *second = *(FmListEntry *const *)b;

  return (first->mass_g < second->mass_g) - (first->mass_g > second->mass_g);
}

/* Meat over the limit: what does not count goes to the fat of the same animal. */
static void
split_fat (GPtrArray *entries)
{
  const guint n = entries->len;

  for (guint i = 0; i < n; i++) {
    FmListEntry *meat = g_ptr_array_index (entries, i);
    const double limit_pct = fm_meat_fat_limit_pct (meat->species);
    const double fat_pct = 100.0 * meat->fat_g / meat->mass_g;
    double counts_g;

    if (!fm_list_entry_is_meat (meat) || !(fat_pct > limit_pct))
      continue;
    counts_g = fm_meat_that_counts_g (meat->mass_g, fat_pct, limit_pct);
    FmListEntry *fat = find_entry (entries, fm_meat_fat_word (meat->species), NULL);
    fat->species = meat->species;
    fat->kind = FM_INGREDIENT_FAT;
    fat->mass_g += meat->mass_g - counts_g;
    meat->mass_g = counts_g;
  }
}

/* Annex VII Part A no 1: the finished mass less all that is not water. */
static void
leave_water (GPtrArray *entries, double total_g, double finished_g)
{
  for (guint i = 0; i < entries->len; i++) {
    FmListEntry *entry = g_ptr_array_index (entries, i);

    if (entry->kind == FM_INGREDIENT_WATER)
      entry->mass_g = fmax (entry->mass_g - fmax (total_g - finished_g, 0.0), 0.0);
  }
}

double
fm_list_finished_g (const FmFormula *formula, const FmIngredientListInput *input)
{
  return isnan (input->finished_g) ? fm_formula_total_g (formula) : input->finished_g;
}

GPtrArray *
fm_list_entries_new (const FmFormula *formula, const FmIngredientListInput *input)
{
  GPtrArray *entries = g_ptr_array_new_with_free_func ((GDestroyNotify)entry_free);

  for (guint i = 0; i < fm_formula_n_lines (formula); i++)
    if (fm_formula_line (formula, i)->mass_g > 0.0)
      add_line (entries, fm_formula_line (formula, i), input->words);
  if (input->set == FM_LABEL_EU) {
    split_fat (entries);
    leave_water (entries, fm_formula_total_g (formula), fm_list_finished_g (formula, input));
  }
  g_ptr_array_sort (entries, heavier_first);
  return entries;
}

static char *
who_states_nothing (const FmFormula *formula)
{
  g_autoptr (GString) names = g_string_new (NULL);

  for (guint i = 0; i < fm_formula_n_lines (formula); i++) {
    const FmFormulaLine *line = fm_formula_line (formula, i);

    if (line->mass_g > 0.0 && !line->ingredient->allergens_known &&
        strstr (names->str, line->ingredient->name) == NULL)
      g_string_append_printf (names, "%s%s", names->len > 0 ? "; " : "", line->ingredient->name);
  }
  if (names->len == 0)
    return NULL;
  return g_strdup_printf (_ ("No list of ingredients: the allergens are not stated of %s. State "
                             "them in the ingredient, even where there are none."),
                          names->str);
}

FmIngredientList *
fm_ingredient_list_new (const FmFormula *formula, const FmIngredientListInput *input)
{
  FmIngredientList *self = g_new0 (FmIngredientList, 1);
  g_autoptr (GPtrArray) entries = fm_list_entries_new (formula, input);

  self->spans = g_array_new (FALSE, FALSE, sizeof (FmTextSpan));
  self->held_back = who_states_nothing (formula);
  fm_ingredient_list_write (self, entries, fm_list_finished_g (formula, input), input);
  return self;
}

void
fm_ingredient_list_free (FmIngredientList *self)
{
  g_free (self->text);
  g_array_unref (self->spans);
  g_free (self->contains);
  g_free (self->held_back);
  g_free (self->notes);
  g_free (self);
}
