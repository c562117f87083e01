/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-formula-json.c - the text form of a formula */
#include "store-fixture.h"

#define BRIEF "\"brief\":{\"patty_mass_g\":180,\"n_patties\":6}"
#define MEAT "{\"id\":\"i\",\"name\":\"n\",\"kind\":\"cut\",\"provenance\":\"none\"}"
#define LINE(members) "{\"format\":1," BRIEF ",\"lines\":[{\"id\":\"a\"," members "}]}"

static void
test_round_trip (void)
{
  for (int i = 0; i < 300; i++) {
    g_autoptr (GError) error = NULL;
    g_autoptr (FmFormula) formula = random_formula ();
    g_autofree char *json = fm_formula_to_json (formula);
    g_autoptr (FmFormula) again = fm_formula_from_json (json, &error);
    g_autofree char *json_again = NULL;

    g_assert_no_error (error);
    g_assert_true (fm_formula_equal (formula, again));
    json_again = fm_formula_to_json (again);
    g_assert_cmpstr (json, ==, json_again);
  }
}

static void
test_unknown_is_absent (void)
{
  g_autoptr (FmFormula) formula = new_formula (1.0, 2.0);
  g_autofree char *json = fm_formula_to_json (formula);
  g_autoptr (FmFormula) again = fm_formula_from_json (json, NULL);
  const FmComposition *composition = &fm_formula_line (again, 0)->ingredient->composition;

  g_assert_null (strstr (json, "null"));
  g_assert_null (strstr (json, ":nan"));
  g_assert_null (strstr (json, "sodium"));
  g_assert_true (isnan (composition->per_100g[FM_NUTRIENT_SODIUM]));
  g_assert_cmpfloat (composition->per_100g[FM_NUTRIENT_FAT], ==, 10.0);
}

/* Notebooks from before collagen was noted have no such key. */
static void
test_collagen_came_later (void)
{
  const char *old = LINE ("\"mass_g\":1,\"ingredient\":" MEAT);
  g_autoptr (FmFormula) formula = fm_formula_from_json (old, NULL);
  g_autoptr (FmIngredient) shank = fm_ingredient_new ("Shank", FM_INGREDIENT_CUT);
  g_autoptr (FmFormula) again = NULL;
  g_autofree char *json = NULL;

  g_assert_true (isnan (fm_formula_line (formula, 0)->ingredient->collagen_g_per_100g));
  shank->collagen_g_per_100g = 4.25;
  fm_formula_set_ingredient (formula, 0, shank);
  json = fm_formula_to_json (formula);
  again = fm_formula_from_json (json, NULL);
  g_assert_cmpfloat (fm_formula_line (again, 0)->ingredient->collagen_g_per_100g, ==, 4.25);
}

/* Notebooks from before the process belonged to the version have no such key, and keep their text.
 */
static void
test_process_came_later (void)
{
  g_autoptr (FmFormula) formula = new_formula (1.0, 2.0);
  g_autofree char *before = fm_formula_to_json (formula);
  const double plates_mm[] = { 10.0, 4.5 };
  g_autofree char *json = NULL;
  g_autofree char *json_again = NULL;
  g_autoptr (FmFormula) again = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_null (strstr (before, "process"));
  fm_process_set_plates (formula->process, plates_mm, G_N_ELEMENTS (plates_mm));
  fm_process_add_seasoning (formula->process, "Salt \"fine\"", FM_SEASON_AT_THE_HEAT, TRUE);
  fm_process_set_words (formula->process, FM_PROCESS_STEPS, "One\nTwo");
  formula->process->numbers[FM_PROCESS_MINCE_TEMP] = 6.5;
  json = fm_formula_to_json (formula);
  again = fm_formula_from_json (json, &error);
  g_assert_no_error (error);
  g_assert_true (fm_formula_equal (formula, again));
  json_again = fm_formula_to_json (again);
  g_assert_cmpstr (json, ==, json_again);
}

static void
test_refuses_a_damaged_process (void)
{
  const char *bad[] = {
    "\"rest_minutes\":-1",
    "\"surface\":3",
    "\"plates_mm\":[0]",
    "\"plates_mm\":[1,2,3,4,5]",
    "\"plates_mm\":4",
    "\"seasonings\":[3]",
    "\"seasonings\":[{\"what\":\"Salt\",\"moment\":\"noon\",\"where\":\"mixed\"}]",
    "\"seasonings\":[{\"what\":\"Salt\",\"moment\":\"at-the-heat\",\"where\":\"in\"}]",
  };

  for (guint i = 0; i < G_N_ELEMENTS (bad); i++) {
    g_autofree char *json =
        g_strdup_printf ("{\"format\":1," BRIEF ",\"process\":{%s},\"lines\":[]}", bad[i]);
    g_autoptr (GError) error = NULL;

    g_assert_null (fm_formula_from_json (json, &error));
    g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_DAMAGED);
  }
}

/* Notebooks from before the salt on the surface belonged to the brief have no such key. */
static void
test_surface_salt_came_later (void)
{
  const char *old = LINE ("\"mass_g\":1,\"ingredient\":" MEAT);
  g_autoptr (FmFormula) formula = fm_formula_from_json (old, NULL);
  g_autoptr (FmFormula) again = NULL;
  g_autofree char *json = NULL;

  g_assert_true (isnan (formula->brief->surface_salt_pct));
  formula->brief->surface_salt_pct = 1.5;
  json = fm_formula_to_json (formula);
  again = fm_formula_from_json (json, NULL);
  g_assert_cmpfloat (again->brief->surface_salt_pct, ==, 1.5);
}

/* Notebooks from before the kind of animal was noted have no such key. */
static void
test_species_came_later (void)
{
  const char *row =
      LINE ("\"mass_g\":1,\"ingredient\":{\"id\":\"i\",\"name\":\"n\",\"kind\":\"cut\","
            "\"provenance\":\"dataset\",\"source_ref\":\"05305\","
            "\"original_name\":\"GROUND TURKEY,RAW\"}");
  const char *own = LINE ("\"mass_g\":1,\"ingredient\":" MEAT);
  g_autoptr (FmFormula) turkey = fm_formula_from_json (row, NULL);
  g_autoptr (FmFormula) unstated = fm_formula_from_json (own, NULL);
  g_autoptr (FmIngredient) goat = fm_ingredient_new ("Shank", FM_INGREDIENT_CUT);
  g_autoptr (FmFormula) again = NULL;
  g_autofree char *json = NULL;

  g_assert_cmpint (fm_formula_species (turkey), ==, FM_SPECIES_BIT (FM_SPECIES_TURKEY));
  g_assert_cmpint (fm_formula_species (unstated), ==, FM_SPECIES_BIT (FM_SPECIES_UNKNOWN));
  goat->species = FM_SPECIES_GOAT;
  fm_formula_set_ingredient (unstated, 0, goat);
  json = fm_formula_to_json (unstated);
  again = fm_formula_from_json (json, NULL);
  g_assert_cmpint (fm_formula_species (again), ==, FM_SPECIES_BIT (FM_SPECIES_GOAT));
}

/* Found while choosing a writer: json-glib 1.6 prints this one as 1e-10.0. */
#define ROW(ndb_no, members)                                                                       \
  LINE ("\"mass_g\":1,\"ingredient\":{\"id\":\"i\",\"name\":\"n\",\"kind\":\"other\"," members     \
        "\"provenance\":\"dataset\",\"source_ref\":\"" ndb_no "\"}")

/* Older notebooks have "other" alone; what this program writes is "other" for older programs. */
static void
test_use_came_later (void)
{
  const struct {
    const char *json;
    FmIngredientKind kind;
  } cases[] = {
    { ROW ("02030", ""), FM_INGREDIENT_SPICE },
    { ROW ("11282", ""), FM_INGREDIENT_OTHER },
    { ROW ("02030", "\"use\":\"other\","), FM_INGREDIENT_OTHER },
    { ROW ("11282", "\"use\":\"binder\","), FM_INGREDIENT_BINDER },
    { ROW ("11282", "\"use\":\"from-the-future\","), FM_INGREDIENT_OTHER },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++) {
    g_autoptr (GError) error = NULL;
    g_autoptr (FmFormula) formula = fm_formula_from_json (cases[i].json, &error);
    g_autofree char *json = NULL;

    g_assert_no_error (error);
    g_assert_cmpint (fm_formula_line (formula, 0)->ingredient->kind, ==, cases[i].kind);
    json = fm_formula_to_json (formula);
    g_assert_nonnull (strstr (json, "\"kind\":\"other\""));
  }
}

static void
test_power_of_ten (void)
{
  g_autoptr (FmFormula) formula = new_formula (1e-10, 0.1);
  g_autofree char *json = fm_formula_to_json (formula);
  g_autoptr (FmFormula) again = fm_formula_from_json (json, NULL);

  g_assert_nonnull (strstr (json, "\"mass_g\":1e-10,"));
  g_assert_nonnull (strstr (json, "\"mass_g\":0.1,"));
  g_assert_cmpfloat (fm_formula_line (again, 0)->mass_g, ==, 1e-10);
}

static void
test_accepts (void)
{
  static const char *const texts[] = {
    "{\"format\":1," BRIEF ",\"lines\":[]}",
    " {\"format\":1.0,\"later\":[1,{}]," BRIEF ",\"lines\":[]} ",
    LINE ("\"mass_g\":1e3,\"colour\":\"red\",\"ingredient\":" MEAT),
  };

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++) {
    g_autoptr (GError) error = NULL;
    g_autoptr (FmFormula) formula = fm_formula_from_json (texts[i], &error);

    g_assert_no_error (error);
    g_assert_nonnull (formula);
  }
}

static void
test_refuses (void)
{
  static const char *const texts[] = {
    "",
    "null",
    "[]",
    "{",
    "{}",
    "\xff\xfe",
    "{\"format\":1,\"lines\":[]}",
    "{\"format\":1," BRIEF "}",
    "{\"format\":1," BRIEF ",\"lines\":{}}",
    "{\"format\":1," BRIEF ",\"lines\":[5]}",
    "{\"format\":0," BRIEF ",\"lines\":[]}",
    "/*\"*/{\"format\":1," BRIEF ",\"lines\":[]}",
    "{\"format\":1,\"brief\":{\"patty_mass_g\":-1,\"n_patties\":6},\"lines\":[]}",
    "{\"format\":1,\"brief\":{\"patty_mass_g\":180,\"n_patties\":1e9},\"lines\":[]}",
    LINE ("\"ingredient\":" MEAT),
    LINE ("\"mass_g\":-1,\"ingredient\":" MEAT),
    LINE ("\"mass_g\":1e400,\"ingredient\":" MEAT),
    LINE ("\"mass_g\":99999999999999999999999,\"ingredient\":" MEAT),
    LINE ("\"mass_g\":NaN,\"ingredient\":" MEAT),
    LINE ("\"mass_g\":\"5\",\"ingredient\":" MEAT),
    LINE ("\"mass_g\":5"),
    LINE ("\"mass_g\":5,\"ingredient\":{\"id\":\"i\",\"name\":\"n\",\"kind\":\"gas\","
          "\"provenance\":\"none\"}"),
    LINE ("\"mass_g\":5,\"ingredient\":{\"id\":\"i\",\"kind\":\"cut\",\"provenance\":\"none\"}"),
    LINE ("\"mass_g\":5,\"ingredient\":{\"id\":\"i\",\"name\":\"n\",\"kind\":\"cut\","
          "\"provenance\":\"none\",\"per_100g\":{\"fat\":-3}}"),
    LINE ("\"mass_g\":5,\"locked\":1,\"ingredient\":" MEAT),
    LINE ("\"mass_g\":5,\"ingredient\":" MEAT "},{\"id\":\"a\",\"mass_g\":5,\"ingredient\":" MEAT),
  };

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++) {
    g_autoptr (GError) error = NULL;
    g_autoptr (FmFormula) formula = fm_formula_from_json (texts[i], &error);

    g_test_message ("text %" G_GSIZE_FORMAT, i);
    g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_DAMAGED);
    g_assert_null (formula);
  }
}

static void
test_refuses_newer (void)
{
  g_autoptr (GError) error = NULL;

  g_assert_null (fm_formula_from_json ("{\"format\":2," BRIEF ",\"lines\":[]}", &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_NEWER);
}

static void
test_refuses_depth (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GString) text = g_string_new ("{\"a\":");

  for (int i = 0; i < 1000000; i++)
    g_string_append_c (text, '[');
  g_assert_null (fm_formula_from_json (text->str, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_DAMAGED);
}

static void
test_refuses_too_many_lines (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FmFormula) formula = fm_formula_new ();
  g_autoptr (FmIngredient) ingredient = new_ingredient ("Shoulder", 10.0);
  g_autofree char *json = NULL;

  for (int i = 0; i < 1001; i++)
    fm_formula_add (formula, ingredient, 1.0);
  json = fm_formula_to_json (formula);
  g_assert_null (fm_formula_from_json (json, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_FAILED);
}

/* A cut of valid text anywhere is refused or, at worst, still read as a whole. */
static void
test_mangled (void)
{
  g_autoptr (FmFormula) formula = random_formula ();
  g_autofree char *json = fm_formula_to_json (formula);
  gsize length = strlen (json);

  for (int i = 0; i < 500; i++) {
    g_autofree char *mangled = g_strdup (json);
    g_autoptr (FmFormula) again = NULL;

    mangled[g_test_rand_int_range (0, (int)length)] = (char)g_test_rand_int_range (0, 256);
    again = fm_formula_from_json (mangled, NULL);
    if (again != NULL)
      g_assert_cmpuint (fm_formula_n_lines (again), ==, fm_formula_n_lines (formula));
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/formula-json/round-trip", test_round_trip);
  g_test_add_func ("/formula-json/unknown-is-absent", test_unknown_is_absent);
  g_test_add_func ("/formula-json/power-of-ten", test_power_of_ten);
  g_test_add_func ("/formula-json/collagen-came-later", test_collagen_came_later);
  g_test_add_func ("/formula-json/process-came-later", test_process_came_later);
  g_test_add_func ("/formula-json/refuses-a-damaged-process", test_refuses_a_damaged_process);
  g_test_add_func ("/formula-json/surface-salt-came-later", test_surface_salt_came_later);
  g_test_add_func ("/formula-json/species-came-later", test_species_came_later);
  g_test_add_func ("/formula-json/use-came-later", test_use_came_later);
  g_test_add_func ("/formula-json/accepts", test_accepts);
  g_test_add_func ("/formula-json/refuses", test_refuses);
  g_test_add_func ("/formula-json/refuses-newer", test_refuses_newer);
  g_test_add_func ("/formula-json/refuses-depth", test_refuses_depth);
  g_test_add_func ("/formula-json/refuses-too-many-lines", test_refuses_too_many_lines);
  g_test_add_func ("/formula-json/mangled", test_mangled);
  return g_test_run ();
}
