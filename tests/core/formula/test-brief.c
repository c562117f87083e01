/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-brief.c - briefs, target bands and units */
#include "core/formula/fm-brief.h"
#include "core/base/fm-error.h"
#include "core/base/fm-units.h"

#include "blends.h"

static void
test_defaults_are_valid (void)
{
  g_autoptr (FmBrief) brief = fm_brief_new ();
  g_assert_true (fm_brief_check (brief, NULL));
  for (int i = 0; i < FM_N_TARGETS; i++)
    g_assert_cmpint (fm_band_state (&brief->bands[i], 20.0), ==, FM_BAND_NONE);
}

static void
test_copy_and_equal (void)
{
  g_autoptr (FmBrief) a = fm_brief_new ();
  a->doneness = g_strdup ("71 °C in the centre");
  a->bands[FM_TARGET_FAT_PCT] = (FmBand){ 18.0, NAN };
  g_autoptr (FmBrief) b = fm_brief_copy (a);
  g_assert_true (fm_brief_equal (a, b));
  b->bands[FM_TARGET_FAT_PCT].max = 22.0;
  g_assert_false (fm_brief_equal (a, b));
  a->bands[FM_TARGET_FAT_PCT].max = 22.0;
  g_assert_true (fm_brief_equal (a, b));
  b->surface_salt_pct = 1.5;
  g_assert_false (fm_brief_equal (a, b));
  a->surface_salt_pct = 1.5;
  g_assert_true (fm_brief_equal (a, b));
  b->n_patties++;
  g_assert_false (fm_brief_equal (a, b));
}

static void
assert_check_fails (const FmBrief *brief)
{
  g_autoptr (GError) error = NULL;
  g_assert_false (fm_brief_check (brief, &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE);
}

static void
test_check (void)
{
  const double bad_masses[] = { 0.0, -1.0, NAN, INFINITY, 5000.1 };
  for (gsize i = 0; i < G_N_ELEMENTS (bad_masses); i++) {
    g_autoptr (FmBrief) brief = fm_brief_new ();
    brief->patty_mass_g = bad_masses[i];
    assert_check_fails (brief);
  }
  const FmBand bad_bands[] = { { -1.0, NAN }, { NAN, 101.0 }, { 22.0, 18.0 }, { INFINITY, NAN } };
  for (gsize i = 0; i < G_N_ELEMENTS (bad_bands); i++) {
    g_autoptr (FmBrief) brief = fm_brief_new ();
    brief->bands[FM_TARGET_FAT_PCT] = bad_bands[i];
    assert_check_fails (brief);
  }
  g_autoptr (FmBrief) none = fm_brief_new ();
  none->n_patties = 0;
  assert_check_fails (none);
}

static void
test_band_state (void)
{
  const FmBand both = { 18.0, 22.0 };
  const FmBand floor_only = { 18.0, NAN };
  const FmBand ceiling_only = { NAN, 22.0 };
  g_assert_cmpint (fm_band_state (&both, 17.9), ==, FM_BAND_BELOW);
  g_assert_cmpint (fm_band_state (&both, 18.0), ==, FM_BAND_WITHIN);
  g_assert_cmpint (fm_band_state (&both, 22.0 + 1e-12), ==, FM_BAND_WITHIN);
  g_assert_cmpint (fm_band_state (&both, 22.1), ==, FM_BAND_ABOVE);
  g_assert_cmpint (fm_band_state (&both, NAN), ==, FM_BAND_UNKNOWN);
  g_assert_cmpint (fm_band_state (&floor_only, 1e6), ==, FM_BAND_WITHIN);
  g_assert_cmpint (fm_band_state (&floor_only, 1.0), ==, FM_BAND_BELOW);
  g_assert_cmpint (fm_band_state (&ceiling_only, 0.0), ==, FM_BAND_WITHIN);
  g_assert_cmpint (fm_band_state (&ceiling_only, 30.0), ==, FM_BAND_ABOVE);
}

static void
assert_describes (FmBand band, double value, const char *expected)
{
  g_autofree char *text = fm_band_describe (&band, value, 1, "%");
  g_assert_cmpstr (text, ==, expected);
}

static void
test_band_in_words (void)
{
  const FmBand band = { 18.0, 22.0 };
  assert_describes (band, 25.1, "3.1 above the band 18.0–22.0\xc2\xa0%");
  assert_describes (band, 17.0, "1.0 below the band 18.0–22.0\xc2\xa0%");
  assert_describes (band, 22.01, "less than 0.1 above the band 18.0–22.0\xc2\xa0%");
  assert_describes (band, 20.0, "within the target: 18.0–22.0\xc2\xa0%");
  assert_describes (band, NAN, "not known; the target is 18.0–22.0\xc2\xa0%");
  assert_describes ((FmBand){ NAN, NAN }, 20.0, "no target");
  assert_describes ((FmBand){ 18.0, NAN }, 17.0, "1.0 below the lower limit 18.0\xc2\xa0%");
  assert_describes ((FmBand){ 18.0, NAN }, 19.0, "within the target: at least 18.0\xc2\xa0%");
}

static void
test_temperatures (void)
{
  assert_near (fm_fahrenheit_to_celsius (32.0), 0.0, 1e-12);
  assert_near (fm_fahrenheit_to_celsius (212.0), 100.0, 1e-12);
  assert_near (fm_celsius_to_fahrenheit (-40.0), -40.0, 1e-12);
  for (int f = -100; f <= 600; f++)
    assert_near (fm_celsius_to_fahrenheit (fm_fahrenheit_to_celsius (f)), f, 1e-9);
}

/* A kind that the table forgot would be a row of zeros. */
static void
test_target_kinds (void)
{
  for (int i = 0; i < FM_N_TARGETS; i++) {
    const FmTargetInfo *info = fm_target_info ((FmTargetKind)i);

    g_assert_nonnull (info->key);
    g_assert_cmpint (*fm_target_name ((FmTargetKind)i), !=, '\0');
    g_assert_cmpfloat (info->max, >, 0.0);
    g_assert_true (info->is_per_patty == (g_strcmp0 (info->unit, "%") != 0));
    for (int j = 0; j < i; j++)
      g_assert_cmpstr (info->key, !=, fm_target_info ((FmTargetKind)j)->key);
  }
  g_assert_cmpfloat (fm_target_factor (FM_TARGET_FAT_PCT, 180.0), ==, 1.0);
  g_assert_cmpfloat (fm_target_factor (FM_TARGET_SODIUM_MG, 180.0), ==, 1.8);
  g_assert_cmpfloat (fm_target_factor (FM_TARGET_COST, 180.0), ==, 0.18);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/brief/defaults-are-valid", test_defaults_are_valid);
  g_test_add_func ("/brief/target-kinds", test_target_kinds);
  g_test_add_func ("/brief/copy-and-equal", test_copy_and_equal);
  g_test_add_func ("/brief/check", test_check);
  g_test_add_func ("/brief/band-state", test_band_state);
  g_test_add_func ("/brief/band-in-words", test_band_in_words);
  g_test_add_func ("/units/temperatures", test_temperatures);
  return g_test_run ();
}
