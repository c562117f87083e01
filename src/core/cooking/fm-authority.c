/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-authority.c - core temperatures and hold times that authorities ask for */
#include "core/cooking/fm-authority.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-number.h"
#include "core/base/fm-units.h"
#include "core/cooking/fm-authority-table.h"

/* Reading and rounding noise of a computed Celsius figure. */
#define TINY 1e-6

#define BIT(kind) FM_SPECIES_BIT (FM_SPECIES_##kind)
#define BEEF (BIT (BEEF) | BIT (VEAL))
#define MEAT (BEEF | BIT (BISON) | BIT (PORK) | BIT (LAMB) | BIT (GOAT) | BIT (MIXED_MEAT))
#define GAME BIT (GAME)
#define POULTRY (BIT (CHICKEN) | BIT (TURKEY) | BIT (OTHER_POULTRY))
#define FISH BIT (FISH)
#define OPEN (BIT (UNKNOWN) | BIT (MIXED))

#define GUIDELINE                                                                                  \
  N_ ("FSIS Cooking Guideline (Revised Appendix A), FSIS-GD-2021-14, 14 December 2021; read. For " \
      "inspected establishments, with conditions of its own such as humidity and come-up time.")

/*
 * foods: kinds that the figure speaks of
 * alone: only where the blend holds no other kind
 */
typedef struct {
  const char *name;
  const char *note;
  FmSpeciesSet foods;
  gboolean alone;
  FmHoldRow rows[4]; /* short tables; ends at temp_f 0 */
} AuthorityInfo;

static const AuthorityInfo authorities[FM_N_AUTHORITIES] = {
  [FM_AUTHORITY_CONSUMER_POULTRY] = { N_ ("USDA FSIS consumer chart, ground poultry"),
                                      N_ ("Minimum Internal Temperature Chart, wording of "
                                          "2020, read in copies. For consumers. One reading "
                                          "counts; no time is asked."),
                                      POULTRY,
                                      FALSE,
                                      { { 73.9, 165, 0 } } },
  [FM_AUTHORITY_CONSUMER_GAME] = { N_ ("Health Canada consumer chart, ground game"),
                                   N_ ("Internal cooking temperatures, read in copies of 2012 and "
                                       "later. For consumers. No figure of USDA for ground game "
                                       "has been checked."),
                                   GAME,
                                   FALSE,
                                   { { 74, 165, 0 } } },
  [FM_AUTHORITY_CONSUMER] = { N_ ("USDA FSIS consumer chart, ground meat"),
                              N_ ("Minimum Internal Temperature Chart: beef, pork, veal, lamb "
                                  "and mixtures in the wording of 2020, goat and bison in that of "
                                  "2023, read in copies. For consumers. One reading counts; no "
                                  "time is asked."),
                              MEAT,
                              FALSE,
                              { { 71.1, 160, 0 } } },
  [FM_AUTHORITY_CONSUMER_FISH] = { N_ ("USDA FSIS consumer chart, fish"),
                                   N_ ("Minimum Internal Temperature Chart, fish with fins, "
                                       "read in copies. For consumers; it gives no figure for "
                                       "ground fish."),
                                   FISH,
                                   TRUE,
                                   { { 62.8, 145, 0 } } },
  [FM_AUTHORITY_FOOD_CODE_POULTRY] = { N_ ("FDA Food Code 3-401.11(A)(3), poultry"),
                                       N_ ("Model code for retail and food service, 2017 and "
                                           "later, retold in a food handler manual: 1 s. Codes up "
                                           "to 2013, read, ask for 15 s."),
                                       POULTRY,
                                       FALSE,
                                       { { 74, 165, 1 } } },
  [FM_AUTHORITY_FOOD_CODE_GAME] = { N_ ("FDA Food Code 3-401.11(A)(3), wild game"),
                                    N_ ("Model code for retail and food service. Not checked "
                                        "against the current text."),
                                    GAME,
                                    FALSE,
                                    { { 74, 165, 1 } } },
  [FM_AUTHORITY_FOOD_CODE] = { N_ ("FDA Food Code 3-401.11(A)(2), comminuted meat"),
                               N_ ("Model code for retail and food service, 2017 and later, read: "
                                   "comminuted meat, fish and game animals. Codes up to 2013 ask "
                                   "for 15 s at 68 °C (155 °F), later ones for 17 s."),
                               MEAT | GAME | FISH,
                               FALSE,
                               { { 63, 145, 180 },
                                 { 66, 150, 60 },
                                 { 68, 155, 17 },
                                 { 70, 158, 1 } } },
  [FM_AUTHORITY_FSIS_POULTRY] = { N_ ("FSIS 2021, tables 3 and 4, poultry, 7 log of Salmonella"),
                                  GUIDELINE,
                                  POULTRY,
                                  FALSE,
                                  { { 0 } } },
  [FM_AUTHORITY_FSIS_PATTIES] = { N_ ("FSIS 2021, table 6, cooked beef patties, 5 log of "
                                      "Salmonella"),
                                  GUIDELINE,
                                  BEEF,
                                  TRUE,
                                  { { 0 } } },
  [FM_AUTHORITY_FSIS_6_5] = { N_ ("FSIS 2021, table 2, meat, 6.5 log of Salmonella"),
                              GUIDELINE,
                              MEAT,
                              TRUE,
                              { { 0 } } },
  [FM_AUTHORITY_FSIS_7] = { N_ ("FSIS 2021, table 2, meat, 7 log of Salmonella"),
                            GUIDELINE,
                            MEAT,
                            TRUE,
                            { { 0 } } },
  [FM_AUTHORITY_CANADA_POULTRY] = { N_ ("Health Canada consumer chart, ground poultry"),
                                    N_ ("Internal cooking temperatures, read in copies of 2012 and "
                                        "later. For consumers."),
                                    POULTRY,
                                    FALSE,
                                    { { 74, 165, 0 } } },
  [FM_AUTHORITY_CANADA] = { N_ ("Health Canada consumer chart, ground meat"),
                            N_ ("Internal cooking temperatures: beef, veal, lamb and pork, read in "
                                "copies of 2012 and later; printed there as whole degrees. For "
                                "consumers."),
                            BEEF | BIT (LAMB) | BIT (PORK) | BIT (MIXED_MEAT),
                            TRUE,
                            { { 71.1, 160, 0 } } },
  [FM_AUTHORITY_IRELAND] = { N_ ("FSAI (Ireland), burgers"),
                             N_ ("Advice for caterers on burgers, 26 July 2018, read: 75 "
                                 "°C in the core, or an equivalent that the caterer can show."),
                             MEAT,
                             FALSE,
                             { { 75, 167, 0 } } },
  [FM_AUTHORITY_UK] = { N_ ("UK FSA burger advice, after ACMSF 2007"),
                        N_ ("For caterers in the United Kingdom, retold in guidance of Food "
                            "Standards Scotland and in kitchen texts. Its rows for 60 and 65 °C "
                            "have not been seen and are left out."),
                        MEAT,
                        FALSE,
                        { { 70, 158, 120 }, { 75, 167, 30 }, { 80, 176, 6 } } },
};

const char *
fm_authority_name (FmAuthority authority)
{
  return _ (authorities[authority].name);
}

const char *
fm_authority_note (FmAuthority authority)
{
  return _ (authorities[authority].note);
}

gboolean
fm_authority_applies (FmAuthority authority, FmSpeciesSet species)
{
  const AuthorityInfo *info = &authorities[authority];
  FmSpeciesSet kinds = species & ~BIT (NONE);

  if (fm_species_set_has_poultry (species))
    return (info->foods & POULTRY) != 0;
  if (fm_species_set_is_meatless (species) || (kinds & OPEN) != 0)
    return TRUE;
  return (info->foods & kinds) != 0 && (!info->alone || (kinds & ~info->foods) == 0);
}

/* Consumer figures stand first and strictest first; fish beside other kinds leaves the others'. */
FmAuthority
fm_authority_ruling (FmSpeciesSet species)
{
  FmAuthority authority = FM_AUTHORITY_CONSUMER_POULTRY;

  while (authority < FM_AUTHORITY_CONSUMER_FISH && !fm_authority_applies (authority, species))
    authority++;
  return authority;
}

static guint
meat_rows (FmAuthority authority, FmHoldRow *rows)
{
  for (guint i = 0; i < FM_FSIS_N_MEAT_ROWS; i++) {
    const FmFsisMeatRow *row = &fm_fsis_meat_rows[i];
    double hold_s = authority == FM_AUTHORITY_FSIS_PATTIES ? row->hold_5_s
                    : authority == FM_AUTHORITY_FSIS_6_5   ? row->hold_6_5_s
                                                           : row->hold_7_s;
    rows[i] = (FmHoldRow){ row->temp_c, row->temp_f, hold_s };
  }
  return FM_FSIS_N_MEAT_ROWS;
}

/* The longer time of the columns on both sides of a fat between them, as some cells fall. */
static double
poultry_hold_s (const double *column_s, double fat_pct)
{
  double known_pct = isnan (fat_pct) ? (double)FM_FSIS_N_FAT_COLUMNS : fat_pct;
  int high = (int)CLAMP (ceil (known_pct - TINY), 1.0, (double)FM_FSIS_N_FAT_COLUMNS);
  int low = (int)CLAMP (floor (known_pct + TINY), 1.0, (double)high);

  return fmax (column_s[low - 1], column_s[high - 1]);
}

static guint
poultry_rows (const FmCookFood *food, FmHoldRow *rows)
{
  FmSpeciesSet kinds = food->species & ~BIT (NONE);

  for (guint i = 0; i < FM_FSIS_N_POULTRY_ROWS; i++) {
    const FmFsisPoultryRow *row = &fm_fsis_poultry_rows[i];
    double chicken_s = poultry_hold_s (row->chicken_s, food->fat_pct);
    double turkey_s = poultry_hold_s (row->turkey_s, food->fat_pct);
    double hold_s = kinds == BIT (CHICKEN)  ? chicken_s
                    : kinds == BIT (TURKEY) ? turkey_s
                                            : fmax (chicken_s, turkey_s);
    rows[i] = (FmHoldRow){ row->temp_c, row->temp_f, hold_s };
  }
  return FM_FSIS_N_POULTRY_ROWS;
}

guint
fm_authority_rows (FmAuthority authority, const FmCookFood *food, FmHoldRow *rows)
{
  const AuthorityInfo *info = &authorities[authority];
  guint n = 0;

  if (authority == FM_AUTHORITY_FSIS_POULTRY)
    return poultry_rows (food, rows);
  if (authority == FM_AUTHORITY_FSIS_PATTIES || authority == FM_AUTHORITY_FSIS_6_5 ||
      authority == FM_AUTHORITY_FSIS_7)
    return meat_rows (authority, rows);
  for (; n < G_N_ELEMENTS (info->rows) && info->rows[n].temp_f > 0; n++)
    rows[n] = info->rows[n];
  return n;
}

gboolean
fm_hold_row_is_met (const FmHoldRow *row, double temp_c)
{
  return temp_c >= fmin (row->temp_c, fm_fahrenheit_to_celsius (row->temp_f)) - TINY;
}

char *
fm_hold_row_temp_format (const FmHoldRow *row)
{
  gboolean whole = row->temp_c == floor (row->temp_c);
  g_autofree char *c = fm_number_format_unit (row->temp_c, whole ? 0 : 1, "°C");
  g_autofree char *f = fm_number_format_unit (row->temp_f, 0, "°F");

  return g_strdup_printf ("%s (%s)", c, f);
}

char *
fm_hold_row_reading_format (const FmHoldRow *row, double temp_c)
{
  double shown_c = round (temp_c * 10.0) / 10.0;
  double shown_f = round (fm_celsius_to_fahrenheit (temp_c));

  if (!fm_hold_row_is_met (row, temp_c)) {
    shown_c = fmin (shown_c, row->temp_c - 0.1);
    shown_f = fmin (shown_f, row->temp_f - 1.0);
  }
  g_autofree char *c = fm_number_format_unit (shown_c, 1, "°C");
  g_autofree char *f = fm_number_format_unit (shown_f, 0, "°F");
  return g_strdup_printf ("%s (%s)", c, f);
}

char *
fm_authority_choice_text (FmSpeciesSet species)
{
  g_autofree char *kinds = fm_species_set_join (species);

  if (fm_species_set_has_poultry (species))
    return g_strdup_printf (_ ("This blend holds poultry (%s): the figures for poultry rule, those "
                               "for other meats alone are left out."),
                            kinds);
  if (fm_species_set_is_meatless (species))
    return g_strdup (_ ("No ingredient of this blend is known to be of an animal: every figure is "
                        "shown, those for poultry first."));
  if ((species & OPEN) != 0)
    return g_strdup_printf (_ ("It is not known which animals this blend is from (%s), so it may "
                               "hold poultry: every figure is shown, those for poultry first. "
                               "State the kind of animal of each ingredient."),
                            kinds);
  return g_strdup_printf (_ ("Figures for a blend of: %s."), kinds);
}
