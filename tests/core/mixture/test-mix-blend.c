/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-mix-blend.c - a formula as a mixture with a fixed part */
#include "core/mixture/fm-mix-blend.h"

#include <math.h>
#include <string.h>

#include "core/formula/fm-analysis.h"
#include "core/base/fm-error.h"

static FmIngredient *
make_ingredient (const char *name, double fat, double price_per_kg)
{
  FmIngredient *ingredient = fm_ingredient_new (name, FM_INGREDIENT_CUT);
  ingredient->declared_fat_pct = fat;
  ingredient->price_per_kg = price_per_kg;
  return ingredient;
}

static void
add (FmFormula *formula, const char *name, double fat, double price_per_kg, double mass_g)
{
  g_autoptr (FmIngredient) ingredient = make_ingredient (name, fat, price_per_kg);
  fm_formula_add (formula, ingredient, mass_g);
}

/* Chuck 500 g, belly 200 g and flank 100 g (a group), fat 180 g, salt 20 g: invented. */
static FmFormula *
make_base (void)
{
  FmFormula *base = fm_formula_new ();
  add (base, "chuck", 16.0, 9.0, 500.0);
  add (base, "belly", 34.0, 7.0, 200.0);
  add (base, "flank", 10.0, 12.0, 100.0);
  add (base, "fat", 85.0, 3.0, 180.0);
  add (base, "salt", 0.0, 1.0, 20.0);
  return base;
}

static const char *
identity (const FmFormula *formula, guint line)
{
  return fm_ingredient_identity (fm_formula_line (formula, line)->ingredient);
}

static void
add_component (GPtrArray *components, const char *name, const char *first, const char *second)
{
  FmMixComponent *component = fm_mix_component_new (name);
  g_ptr_array_add (component->members, g_strdup (first));
  if (second != NULL)
    g_ptr_array_add (component->members, g_strdup (second));
  g_ptr_array_add (components, component);
}

static GPtrArray *
make_components (const FmFormula *base)
{
  GPtrArray *components = g_ptr_array_new_with_free_func ((GDestroyNotify)fm_mix_component_free);
  add_component (components, "Chuck", identity (base, 0), NULL);
  add_component (components, "Belly and flank", identity (base, 1), identity (base, 2));
  add_component (components, "Fat", identity (base, 3), NULL);
  return components;
}

static FmMixBlend *
make_blend (const FmFormula *base)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) components = make_components (base);
  FmMixBlend *blend = fm_mix_blend_new (base, components, &error);
  g_assert_no_error (error);
  return blend;
}

static void
assert_masses (const FmFormula *formula, const double *mass_g)
{
  for (guint i = 0; i < fm_formula_n_lines (formula); i++)
    g_assert_cmpfloat_with_epsilon (fm_formula_line (formula, i)->mass_g, mass_g[i], 1e-9);
}

static void
test_apply (void)
{
  const double x[] = { 0.25, 0.6, 0.15 }, expected[] = { 245, 392, 196, 147, 20 };
  g_autoptr (FmFormula) base = make_base ();
  fm_formula_line (base, 0)->locked = TRUE;
  fm_formula_line (base, 4)->locked = TRUE;
  g_autoptr (FmMixBlend) blend = make_blend (base);
  g_autoptr (FmFormula) applied = fm_mix_blend_apply (blend, x);
  double back[3];
  char *reason = NULL;

  g_assert_cmpfloat_with_epsilon (blend->mixture_share, 0.98, 1e-12);
  assert_masses (applied, expected);
  g_assert_false (fm_formula_line (applied, 0)->locked);
  g_assert_true (fm_formula_line (applied, 4)->locked);
  g_assert_cmpfloat_with_epsilon (fm_formula_total_g (applied), 1000.0, 1e-9);
  g_assert_true (fm_mix_blend_locate (blend, applied, back, &reason));
  g_assert_null (reason);
  for (guint i = 0; i < 3; i++)
    g_assert_cmpfloat_with_epsilon (back[i], x[i], 1e-12);
}

/* The base at its own shares is the base, locks and all. */
static void
test_base_again (void)
{
  double x[3];
  g_autoptr (FmFormula) base = make_base ();
  fm_formula_line (base, 0)->locked = TRUE;
  g_autoptr (FmMixBlend) blend = make_blend (base);
  fm_mix_blend_base_x (blend, x);
  g_assert_cmpfloat_with_epsilon (x[0] + x[1] + x[2], 1.0, 1e-12);
  g_autoptr (FmFormula) again = fm_mix_blend_apply (blend, x);
  g_assert_true (fm_formula_equal (again, base));
}

/* Two lines of one ingredient are one member, and divide it as they did. */
static void
test_two_lines (void)
{
  const double x[] = { 0.4, 0.6, 0.0 };
  g_autoptr (FmFormula) base = make_base ();
  const guint line = fm_formula_add (base, fm_formula_line (base, 0)->ingredient, 500.0);
  g_autoptr (FmMixBlend) blend = make_blend (base);
  g_autoptr (FmFormula) applied = fm_mix_blend_apply (blend, x);
  g_assert_cmpfloat_with_epsilon (fm_formula_line (applied, 0)->mass_g, 0.2 * 1480.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (fm_formula_line (applied, line)->mass_g, 0.2 * 1480.0, 1e-9);
}

/* A group that the base holds nothing of is taken in equal parts. */
static void
test_empty_group (void)
{
  const double x[] = { 0.5, 0.5, 0.0 };
  g_autoptr (FmFormula) base = make_base ();
  fm_formula_set_mass (base, 1, 0.0, NULL);
  fm_formula_set_mass (base, 2, 0.0, NULL);
  g_autoptr (FmMixBlend) blend = make_blend (base);
  g_autoptr (FmFormula) applied = fm_mix_blend_apply (blend, x);
  g_assert_cmpfloat_with_epsilon (fm_formula_line (applied, 1)->mass_g, 170.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (fm_formula_line (applied, 2)->mass_g, 170.0, 1e-9);
}

static void
assert_not_placed (const FmMixBlend *blend, const FmFormula *other, const char *part)
{
  double x[3];
  g_autofree char *reason = NULL;
  g_assert_false (fm_mix_blend_locate (blend, other, x, &reason));
  g_assert_nonnull (strstr (reason, part));
}

static void
test_locate (void)
{
  double x[3];
  g_autoptr (FmFormula) base = make_base ();
  g_autoptr (FmMixBlend) blend = make_blend (base);
  g_autoptr (FmFormula) scaled = fm_formula_copy (base), pinch = fm_formula_copy (base);
  g_autoptr (FmFormula) water = fm_formula_copy (base), salty = fm_formula_copy (base);
  g_autoptr (FmFormula) group = fm_formula_copy (base), bare = fm_formula_copy (base);
  g_autoptr (FmFormula) empty = fm_formula_new ();

  g_assert_true (fm_formula_scale_to (scaled, 37.0, NULL));
  g_assert_true (fm_mix_blend_locate (blend, scaled, x, NULL));
  g_assert_cmpfloat_with_epsilon (x[0], 500.0 / 980.0, 1e-12);
  add (pinch, "pepper", NAN, NAN, 15.0);
  g_assert_true (fm_mix_blend_locate (blend, pinch, x, NULL));
  add (water, "water", 0.0, 0.0, 50.0);
  assert_not_placed (blend, water, "water");
  fm_formula_set_mass (salty, 4, 60.0, NULL);
  assert_not_placed (blend, salty, "salt");
  fm_formula_set_mass (group, 1, 150.0, NULL);
  assert_not_placed (blend, group, "Belly and flank");
  for (guint i = 0; i < 4; i++)
    fm_formula_set_mass (bare, i, 0.0, NULL);
  assert_not_placed (blend, bare, "salt");
  assert_not_placed (blend, empty, "no masses");
}

/* The limit's value at x is what the analysis of the blend at x says. */
static void
test_limit (void)
{
  static const FmTargetKind kinds[] = { FM_TARGET_FAT_PCT, FM_TARGET_COST };
  const double x[] = { 0.25, 0.6, 0.15 };
  const FmBand band = { NAN, 20.0 };
  g_autoptr (FmFormula) base = make_base ();
  base->brief->patty_mass_g = 150.0;
  g_autoptr (FmMixBlend) blend = make_blend (base);
  g_autoptr (FmFormula) applied = fm_mix_blend_apply (blend, x);
  g_autoptr (FmAnalysis) analysis = fm_analysis_new (applied);
  for (guint k = 0; k < G_N_ELEMENTS (kinds); k++) {
    FmMixLimit limit;
    char *unknown = NULL;
    double value = 0.0;
    g_assert_true (fm_mix_blend_limit (blend, kinds[k], &band, &limit, &unknown));
    g_assert_null (unknown);
    g_assert_cmpfloat (limit.low, ==, -INFINITY);
    g_assert_cmpfloat (limit.high, ==, 20.0);
    for (guint i = 0; i < 3; i++)
      value += limit.a[i] * x[i];
    g_assert_cmpfloat_with_epsilon (
        value, fm_analysis_target_value (analysis, applied->brief, kinds[k]), 1e-9);
  }
}

static void
test_limit_unknown (void)
{
  const FmBand band = { 15.0, 20.0 }, open = { NAN, NAN };
  g_autoptr (FmFormula) base = make_base ();
  add (base, "herbs", NAN, NAN, 5.0);
  add (base, "not in yet", NAN, NAN, 0.0);
  g_autoptr (FmMixBlend) blend = make_blend (base);
  g_autofree char *unknown = NULL, *protein = NULL;
  FmMixLimit limit;

  g_assert_false (fm_mix_blend_limit (blend, FM_TARGET_FAT_PCT, &band, &limit, &unknown));
  g_assert_cmpstr (unknown, ==, "herbs");
  g_assert_false (fm_mix_blend_limit (blend, FM_TARGET_PROTEIN_PCT, &band, &limit, &protein));
  g_assert_nonnull (strstr (protein, "chuck, belly, flank, fat, salt, herbs"));
  g_clear_pointer (&unknown, g_free);
  g_assert_false (fm_mix_blend_limit (blend, FM_TARGET_FAT_PCT, &open, &limit, &unknown));
  g_assert_null (unknown);
}

static void
assert_refused (const FmFormula *base, GPtrArray *components, const char *part)
{
  g_autoptr (GError) error = NULL;
  g_assert_null (fm_mix_blend_new (base, components, &error));
  g_assert_nonnull (error);
  g_assert_true (error->domain == FM_CORE_ERROR);
  g_assert_nonnull (strstr (error->message, part));
}

static void
test_bad_components (void)
{
  g_autoptr (FmFormula) base = make_base (), empty = make_base ();
  g_autoptr (GPtrArray) components = make_components (base);
  g_autoptr (GPtrArray) same = make_components (empty);

  for (guint i = 0; i < 4; i++)
    fm_formula_set_mass (empty, i, 0.0, NULL);
  assert_refused (empty, same, "weigh nothing");
  add_component (components, "Twice", identity (base, 2), NULL);
  assert_refused (base, components, "An ingredient of Twice is in the mixture twice");
  g_ptr_array_set_size (components, 3);
  add_component (components, "Same", identity (base, 4), identity (base, 4));
  assert_refused (base, components, "An ingredient of Same is in the mixture twice");
  g_ptr_array_set_size (components, 3);
  add_component (components, "Stranger", "no-such-thing", NULL);
  assert_refused (base, components, "An ingredient of Stranger is not in this blend");
  g_ptr_array_set_size (components, 3);
  g_ptr_array_add (components, fm_mix_component_new ("Hollow"));
  assert_refused (base, components, "Hollow has no ingredient");
  g_ptr_array_set_size (components, 1);
  assert_refused (base, components, "Choose 2 to 6 components");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/mix-blend/apply", test_apply);
  g_test_add_func ("/core/mix-blend/base-again", test_base_again);
  g_test_add_func ("/core/mix-blend/two-lines", test_two_lines);
  g_test_add_func ("/core/mix-blend/empty-group", test_empty_group);
  g_test_add_func ("/core/mix-blend/locate", test_locate);
  g_test_add_func ("/core/mix-blend/limit", test_limit);
  g_test_add_func ("/core/mix-blend/limit-unknown", test_limit_unknown);
  g_test_add_func ("/core/mix-blend/bad-components", test_bad_components);
  return g_test_run ();
}
