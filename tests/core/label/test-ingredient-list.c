/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-ingredient-list.c - cases worked by hand after 21 CFR 101.4 and Regulation (EU) No 1169/2011
 */
#include "core/label/fm-ingredient-list.h"

#include <string.h>

#include "blends.h"

typedef struct {
  const char *name;
  double mass_g;
  FmIngredientKind kind;
  FmSpecies species;
  const char *parts;
  FmAllergenSet allergens;
} Part;

#define END                                                                                        \
  {                                                                                                \
    NULL, 0.0, FM_INGREDIENT_OTHER, FM_SPECIES_NONE, NULL, 0                                       \
  }
#define MEAT(species, mass_g)                                                                      \
  {                                                                                                \
    "Meat " #species, mass_g, FM_INGREDIENT_CUT, FM_SPECIES_##species, NULL, 0                     \
  }
#define STUFF(name, mass_g)                                                                        \
  {                                                                                                \
    name, mass_g, FM_INGREDIENT_SPICE, FM_SPECIES_NONE, NULL, 0                                    \
  }

typedef struct {
  FmFormula *formula;
  GHashTable *words;
} Case;

static void
case_init (Case *self, const Part *parts)
{
  self->formula = fm_formula_new ();
  self->words =
      g_hash_table_new_full (g_str_hash, g_str_equal, g_free, (GDestroyNotify)fm_label_words_free);
  for (; parts->name != NULL; parts++) {
    g_autoptr (FmIngredient) ingredient = fm_ingredient_new (parts->name, parts->kind);

    ingredient->species = parts->species;
    ingredient->allergens_known = TRUE;
    ingredient->allergens = parts->allergens;
    if (parts->parts != NULL)
      g_hash_table_insert (self->words, g_strdup (fm_ingredient_identity (ingredient)),
                           fm_label_words_new (NULL, parts->parts));
    fm_formula_add (self->formula, ingredient, parts->mass_g);
  }
}

static void
case_clear (Case *self)
{
  fm_formula_free (self->formula);
  g_hash_table_unref (self->words);
}

static FmIngredientList *
list_of (const Part *parts, FmLabelSetId set, double gather_pct, double finished_g)
{
  Case self;
  FmIngredientList *list;

  case_init (&self, parts);
  const FmIngredientListInput input = { set, gather_pct, finished_g, self.words };
  list = fm_ingredient_list_new (self.formula, &input);
  case_clear (&self);
  return list;
}

/* Case I01: plain order, and what is 2 % or less behind the phrase. */
static void
test_small_amounts (void)
{
  static const Part parts[] = { MEAT (PORK, 200),
                                MEAT (BEEF, 800),
                                STUFF ("water", 50),
                                STUFF ("garlic powder", 2),
                                STUFF ("black pepper", 3),
                                STUFF ("salt", 15),
                                END };
  g_autoptr (FmIngredientList) gathered = list_of (parts, FM_LABEL_US_RETAIL, 2.0, NAN);
  g_autoptr (FmIngredientList) plain = list_of (parts, FM_LABEL_US_RETAIL, 0.0, NAN);

  g_assert_cmpstr (gathered->text, ==,
                   "Beef, pork, water, contains 2% or less of salt, black pepper, garlic powder");
  g_assert_cmpstr (plain->text, ==, "Beef, pork, water, salt, black pepper, garlic powder");
  g_assert_null (gathered->contains);
}

/* Case I02: crumbs stand with their parts, and the statement follows. */
static void
test_compound (void)
{
  static const Part parts[] = {
    MEAT (BEEF, 900),
    { "bread crumbs", 60, FM_INGREDIENT_BINDER, FM_SPECIES_NONE, "wheat flour, sugar, salt, yeast",
      FM_ALLERGEN_BIT (FM_ALLERGEN_WHEAT) },
    { "egg", 40, FM_INGREDIENT_BINDER, FM_SPECIES_NONE, NULL, FM_ALLERGEN_BIT (FM_ALLERGEN_EGGS) },
    STUFF ("salt", 12),
    END
  };
  g_autoptr (FmIngredientList) list = list_of (parts, FM_LABEL_US_MEAT, 0.0, NAN);

  g_assert_cmpstr (list->text, ==,
                   "Beef, bread crumbs (wheat flour, sugar, salt, yeast), egg, salt");
  g_assert_cmpstr (list->contains, ==, "Contains: Egg, Wheat");
  g_assert_cmpuint (list->spans->len, ==, 0);
}

/* Cases I04 and I05: exactly 2 % may go behind "2 %", not behind "1.5 %". */
static void
test_thresholds (void)
{
  static const Part turkey[] = { MEAT (TURKEY, 950), STUFF ("water", 30), STUFF ("salt", 20), END };
  static const Part pork[] = { MEAT (PORK, 960), STUFF ("salt", 15), STUFF ("sugar", 14),
                               STUFF ("spice", 11), END };
  g_autoptr (FmIngredientList) two = list_of (turkey, FM_LABEL_US_MEAT, 2.0, NAN);
  g_autoptr (FmIngredientList) less = list_of (turkey, FM_LABEL_US_MEAT, 1.5, NAN);
  g_autoptr (FmIngredientList) sausage = list_of (pork, FM_LABEL_US_MEAT, 1.5, NAN);

  g_assert_cmpstr (two->text, ==, "Turkey, water, contains 2% or less of salt");
  g_assert_cmpstr (less->text, ==, "Turkey, water, salt");
  g_assert_cmpstr (sausage->text, ==, "Pork, contains 1.5% or less of salt, sugar, spice");
}

static gboolean
is_emphasised (const FmIngredientList *list, const char *word)
{
  for (guint i = 0; i < list->spans->len; i++) {
    const FmTextSpan span = g_array_index (list->spans, FmTextSpan, i);

    if (strlen (word) == span.end - span.start &&
        strncmp (list->text + span.start, word, strlen (word)) == 0)
      return TRUE;
  }
  return FALSE;
}

/* Cases I07 and I10: the share of meat, and allergens emphasised in the list alone. */
static void
test_european (void)
{
  static const Part beef[] = { MEAT (BEEF, 700),
                               STUFF ("water", 100),
                               STUFF ("onion", 120),
                               { "rusk", 60, FM_INGREDIENT_BINDER, FM_SPECIES_NONE,
                                 "wheat flour, salt", FM_ALLERGEN_BIT (FM_ALLERGEN_WHEAT) },
                               STUFF ("salt", 12),
                               STUFF ("spices", 8),
                               END };
  static const Part lamb[] = { MEAT (LAMB, 900),
                               { "mustard", 15, FM_INGREDIENT_OTHER, FM_SPECIES_NONE,
                                 "water, mustard seed, vinegar, salt",
                                 FM_ALLERGEN_BIT (FM_ALLERGEN_MUSTARD) },
                               STUFF ("salt", 12),
                               END };
  g_autoptr (FmIngredientList) list = list_of (beef, FM_LABEL_EU, 2.0, NAN);
  g_autoptr (FmIngredientList) other = list_of (lamb, FM_LABEL_EU, 0.0, NAN);

  g_assert_cmpstr (list->text, ==,
                   "beef (70%), onion, water, rusk (WHEAT flour, salt), salt, spices");
  g_assert_true (is_emphasised (list, "WHEAT"));
  g_assert_null (list->contains);
  g_assert_cmpstr (other->text, ==,
                   "lamb (97%), MUSTARD (water, MUSTARD seed, vinegar, salt), salt");
}

/* An allergen that no word stands for is named. */
static void
test_unnamed_allergen (void)
{
  static const Part parts[] = { MEAT (BEEF, 900),
                                { "binder", 50, FM_INGREDIENT_BINDER, FM_SPECIES_NONE, NULL,
                                  FM_ALLERGEN_BIT (FM_ALLERGEN_CELERY) },
                                END };
  g_autoptr (FmIngredientList) list = list_of (parts, FM_LABEL_EU, 0.0, NAN);

  g_assert_cmpstr (list->text, ==, "beef (95%), binder (contains CELERY)");
}

/* Case I08: above 100 %. Water that evaporated is not listed. */
static void
test_cooked (void)
{
  static const Part parts[] = { MEAT (BEEF, 1000), STUFF ("salt", 15), END };
  static const Part watered[] = { MEAT (BEEF, 700),
                                  { "Tap", 100, FM_INGREDIENT_WATER, FM_SPECIES_NONE, NULL, 0 },
                                  END };
  g_autoptr (FmIngredientList) list = list_of (parts, FM_LABEL_EU, 0.0, 700.0);
  g_autoptr (FmIngredientList) dry = list_of (watered, FM_LABEL_EU, 0.0, 700.0);

  g_assert_cmpstr (list->text, ==, "beef (made with 143 g of beef per 100 g), salt");
  g_assert_cmpstr (dry->text, ==, "beef (100%)");
}

/* Cases I11, I12 and I14. */
static void
test_meat_content (void)
{
  g_autoptr (FmFormula) formula = fm_formula_new ();
  const FmIngredientListInput input = { FM_LABEL_EU, 0.0, NAN, NULL };

  assert_near (fm_meat_that_counts_g (1000.0, 40.0, 30.0), 857.142857, 1e-4);
  assert_near (fm_meat_that_counts_g (1000.0, 28.0, 25.0), 960.0, 1e-9);
  assert_near (fm_meat_that_counts_g (1000.0, 20.0, 25.0), 1000.0, 1e-9);
  assert_near (fm_connective_tissue_pct (2.4), 11.1, 1e-9);
  add_line (formula, "Shoulder", 40.0, 1000.0);
  fm_formula_line (formula, 0)->ingredient->species = FM_SPECIES_PORK;
  fm_formula_line (formula, 0)->ingredient->allergens_known = TRUE;
  g_autoptr (FmIngredientList) list = fm_ingredient_list_new (formula, &input);
  g_assert_cmpstr (list->text, ==, "pork (86%), pork fat");
}

/* Cuts of one animal are one ingredient; who states nothing holds the list back. */
static void
test_held_back (void)
{
  static const Part parts[] = { MEAT (BEEF, 300), MEAT (PORK, 500), MEAT (BEEF, 300), END };
  Case self;

  case_init (&self, parts);
  const FmIngredientListInput input = { FM_LABEL_US_MEAT, 0.0, NAN, NULL };
  g_autoptr (FmIngredientList) list = fm_ingredient_list_new (self.formula, &input);
  g_assert_cmpstr (list->text, ==, "Beef, pork");
  fm_formula_line (self.formula, 1)->ingredient->allergens_known = FALSE;
  g_autoptr (FmIngredientList) held = fm_ingredient_list_new (self.formula, &input);
  g_assert_null (held->text);
  g_assert_null (held->contains);
  g_assert_nonnull (strstr (held->held_back, "Meat PORK"));
  g_assert_null (strstr (held->held_back, "Meat BEEF"));
  case_clear (&self);
}

/* Heart is not listed as beef, nor as meat. */
static void
test_organs (void)
{
  static const Part parts[] = { MEAT (BEEF, 800),
                                { "Beef, variety meats and by-products, heart, raw", 200,
                                  FM_INGREDIENT_CUT, FM_SPECIES_BEEF, NULL, 0 },
                                END };
  g_autoptr (FmIngredientList) list = list_of (parts, FM_LABEL_EU, 0.0, NAN);

  g_assert_cmpstr (list->text, ==, "beef (80%), Beef, variety meats and by-products, heart, raw");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/ingredient-list/small-amounts", test_small_amounts);
  g_test_add_func ("/ingredient-list/compound", test_compound);
  g_test_add_func ("/ingredient-list/thresholds", test_thresholds);
  g_test_add_func ("/ingredient-list/european", test_european);
  g_test_add_func ("/ingredient-list/unnamed-allergen", test_unnamed_allergen);
  g_test_add_func ("/ingredient-list/cooked", test_cooked);
  g_test_add_func ("/ingredient-list/meat-content", test_meat_content);
  g_test_add_func ("/ingredient-list/held-back", test_held_back);
  g_test_add_func ("/ingredient-list/organs", test_organs);
  return g_test_run ();
}
