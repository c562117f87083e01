/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-caution.c - which authority's figure rules, and what is said of a core reading */
#include <math.h>
#include <string.h>

#include "core/base/fm-units.h"
#include "core/cooking/fm-caution.h"

#define BIT(kind) FM_SPECIES_BIT (FM_SPECIES_##kind)

static const FmSpeciesSet beef = BIT (BEEF) | BIT (NONE);
static const FmSpeciesSet turkey = BIT (TURKEY) | BIT (NONE);

/* The published pairs of degrees agree to the rounding of their Celsius figure (whole degrees in
 * the Food Code and UK advice, tenths elsewhere), and tables rise in temperature. */
static void
test_rows (void)
{
  const FmCookFood food = { turkey, 8.0 };

  for (guint a = 0; a < FM_N_AUTHORITIES; a++) {
    FmHoldRow rows[FM_AUTHORITY_MAX_ROWS];
    guint n = fm_authority_rows ((FmAuthority)a, &food, rows);

    g_assert_cmpuint (n, >, 0);
    g_assert_cmpuint (n, <=, FM_AUTHORITY_MAX_ROWS);
    for (guint i = 0; i < n; i++) {
      g_assert_cmpfloat_with_epsilon (fm_fahrenheit_to_celsius (rows[i].temp_f), rows[i].temp_c,
                                      0.6);
      g_assert_cmpfloat (rows[i].hold_s, >=, 0);
      if (i > 0)
        g_assert_cmpfloat (rows[i].temp_f, >, rows[i - 1].temp_f);
    }
    g_assert_null (strstr (fm_authority_note ((FmAuthority)a), "from memory"));
  }
}

/* 71 °C is written nowhere as the figure of 160 °F. */
static void
test_160_f_is_71_1_c (void)
{
  const FmCookFood food = { beef, 20.0 };

  for (guint a = 0; a < FM_N_AUTHORITIES; a++) {
    FmHoldRow rows[FM_AUTHORITY_MAX_ROWS];
    guint n = fm_authority_rows ((FmAuthority)a, &food, rows);

    for (guint i = 0; i < n; i++)
      if (rows[i].temp_f == 160)
        g_assert_cmpfloat (rows[i].temp_c, ==, 71.1);
  }
}

/* USDA FSIS consumer chart: 165 °F for ground poultry, 160 °F for ground meat and its mixtures. */
static void
test_ruling (void)
{
  static const struct {
    FmSpeciesSet species;
    FmAuthority ruling;
  } cases[] = {
    { BIT (BEEF), FM_AUTHORITY_CONSUMER },
    { BIT (BEEF) | BIT (PORK) | BIT (VEAL) | BIT (LAMB), FM_AUTHORITY_CONSUMER },
    { BIT (BISON) | BIT (GOAT) | BIT (MIXED_MEAT), FM_AUTHORITY_CONSUMER },
    { BIT (BEEF) | BIT (FISH), FM_AUTHORITY_CONSUMER },
    { BIT (FISH) | BIT (NONE), FM_AUTHORITY_CONSUMER_FISH },
    { BIT (GAME) | BIT (PORK), FM_AUTHORITY_CONSUMER_GAME },
    { BIT (TURKEY), FM_AUTHORITY_CONSUMER_POULTRY },
    { BIT (BEEF) | BIT (CHICKEN), FM_AUTHORITY_CONSUMER_POULTRY },
    { BIT (GAME) | BIT (OTHER_POULTRY), FM_AUTHORITY_CONSUMER_POULTRY },
    { BIT (BEEF) | BIT (UNKNOWN), FM_AUTHORITY_CONSUMER_POULTRY },
    { BIT (MIXED), FM_AUTHORITY_CONSUMER_POULTRY },
    { BIT (NONE), FM_AUTHORITY_CONSUMER_POULTRY },
    { 0, FM_AUTHORITY_CONSUMER_POULTRY },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++) {
    g_assert_cmpint (fm_authority_ruling (cases[i].species), ==, cases[i].ruling);
    g_assert_true (fm_authority_applies (cases[i].ruling, cases[i].species));
  }
}

static guint
n_applying (FmSpeciesSet species)
{
  guint n = 0;

  for (guint a = 0; a < FM_N_AUTHORITIES; a++)
    n += fm_authority_applies ((FmAuthority)a, species) ? 1 : 0;
  return n;
}

/* With any poultry no figure for beef shows; what is not known shows all, and says so. */
static void
test_applies (void)
{
  FmSpeciesSet mixture = beef | turkey;
  g_autofree char *open = fm_authority_choice_text (BIT (UNKNOWN) | beef);
  g_autofree char *poultry = fm_authority_choice_text (mixture);
  g_autofree char *meat = fm_authority_choice_text (beef);

  for (guint a = 0; a < FM_N_AUTHORITIES; a++)
    if (fm_authority_applies ((FmAuthority)a, mixture))
      g_assert_nonnull (strstr (fm_authority_name ((FmAuthority)a), "poultry"));
  g_assert_true (fm_authority_applies (FM_AUTHORITY_FSIS_PATTIES, beef));
  g_assert_false (fm_authority_applies (FM_AUTHORITY_FSIS_PATTIES, beef | BIT (PORK)));
  g_assert_true (fm_authority_applies (FM_AUTHORITY_FSIS_6_5, beef | BIT (PORK)));
  g_assert_false (fm_authority_applies (FM_AUTHORITY_CONSUMER_POULTRY, beef));
  g_assert_cmpuint (n_applying (BIT (UNKNOWN) | beef), ==, FM_N_AUTHORITIES);
  g_assert_cmpuint (n_applying (BIT (NONE)), ==, FM_N_AUTHORITIES);
  g_assert_nonnull (strstr (open, "every figure"));
  g_assert_nonnull (strstr (open, "may hold poultry"));
  g_assert_nonnull (strstr (poultry, "Turkey"));
  g_assert_nonnull (strstr (poultry, "poultry rule"));
  g_assert_nonnull (strstr (meat, "Beef"));
}

static void
assert_no_verdict (const char *text)
{
  g_autofree char *lower = g_utf8_strdown (text, -1);

  g_assert_null (strstr (lower, "safe"));
  g_assert_nonnull (strstr (lower, "local rules"));
  g_assert_nonnull (strstr (lower, "usda fsis"));
}

static void
test_peak (void)
{
  const struct {
    FmSpeciesSet species;
    double peak_c;
    gboolean meets;
    const char *part;
  } cases[] = {
    { beef, NAN, FALSE, "No core temperature" },
    { beef, 71.1, TRUE, "meets the figure that rules for this blend: 71.1 °C (160 °F)" },
    { beef, 71.111111, TRUE, "meets" },
    { beef, 71.06, FALSE, "71.0 °C (159 °F): below" },
    { beef, 60, FALSE, "60.0 °C (140 °F): below" },
    { beef, 68.33333, FALSE, "68.3 °C (155 °F): below" },
    { turkey, 72, FALSE, "72.0 °C (162 °F): below the figure that rules for this blend: 73.9" },
    { turkey, 73.86, FALSE, "73.8 °C (164 °F): below" },
    { turkey, 73.9, TRUE, "meets the figure that rules for this blend: 73.9 °C (165 °F)" },
    { turkey | beef, 72, FALSE, "ground poultry" },
    { BIT (UNKNOWN), 72, FALSE, "73.9" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++) {
    g_autofree char *text = fm_caution_for_peak (cases[i].species, cases[i].peak_c);
    g_autofree char *plain = g_strdup (text);
    for (char *space = plain; (space = strstr (space, "\u00a0")) != NULL;) {
      *space = ' ';
      memmove (space + 1, space + 2, strlen (space + 2) + 1);
    }
    g_test_message ("%s", plain);
    g_assert_nonnull (strstr (plain, cases[i].part));
    g_assert_true (fm_caution_peak_meets (cases[i].species, cases[i].peak_c) == cases[i].meets);
    assert_no_verdict (plain);
  }
}

static void
test_text (void)
{
  g_assert_nonnull (strstr (fm_caution_text (), "licensed"));
  assert_no_verdict (fm_caution_text ());
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/caution/rows", test_rows);
  g_test_add_func ("/caution/160-f-is-71.1-c", test_160_f_is_71_1_c);
  g_test_add_func ("/caution/ruling", test_ruling);
  g_test_add_func ("/caution/applies", test_applies);
  g_test_add_func ("/caution/peak", test_peak);
  g_test_add_func ("/caution/text", test_text);
  return g_test_run ();
}
