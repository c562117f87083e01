/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-authority.h - core temperatures and hold times that authorities ask for, by kind of animal
 *
 * Each authority names what it speaks of, its edition, and how its figure was read; figures that
 * nobody here has seen in print are left out or say so. With any poultry in a blend only figures
 * for poultry apply. What is not stated may be poultry: then every figure applies, those for
 * poultry first. None of this says that a food is safe; local rules and a licensed professional
 * decide.
 */
#pragma once

#include "core/composition/fm-species.h"

G_BEGIN_DECLS

/** In the order in which they are shown: consumer figures, the strictest first, then the rest. */
typedef enum {
  FM_AUTHORITY_CONSUMER_POULTRY,  /* USDA FSIS, ground poultry, 73.9 °C (165 °F) */
  FM_AUTHORITY_CONSUMER_GAME,     /* Health Canada, ground game, 74 °C (165 °F) */
  FM_AUTHORITY_CONSUMER,          /* USDA FSIS, ground meat, 71.1 °C (160 °F) */
  FM_AUTHORITY_CONSUMER_FISH,     /* USDA FSIS, fish, 62.8 °C (145 °F) */
  FM_AUTHORITY_FOOD_CODE_POULTRY, /* FDA Food Code 3-401.11(A)(3) */
  FM_AUTHORITY_FOOD_CODE_GAME,    /* the same, wild game; not checked */
  FM_AUTHORITY_FOOD_CODE,         /* FDA Food Code 3-401.11(A)(2), comminuted meat, fish, game */
  FM_AUTHORITY_FSIS_POULTRY,      /* FSIS 2021, tables 3 and 4: 7 log of Salmonella in poultry */
  FM_AUTHORITY_FSIS_PATTIES,      /* FSIS 2021, table 6: 5 log, for fully cooked beef patties */
  FM_AUTHORITY_FSIS_6_5,          /* FSIS 2021, table 2: 6.5 log of Salmonella in meat */
  FM_AUTHORITY_FSIS_7,            /* FSIS 2021, table 2: 7 log of Salmonella in meat */
  FM_AUTHORITY_CANADA_POULTRY,    /* Health Canada, ground poultry */
  FM_AUTHORITY_CANADA,            /* Health Canada, ground meat */
  FM_AUTHORITY_IRELAND,           /* FSAI, burgers */
  FM_AUTHORITY_UK,                /* UK FSA after ACMSF, burgers */
  FM_N_AUTHORITIES,
} FmAuthority;

typedef struct {
  double temp_c; /* as printed */
  double temp_f; /* as printed, or converted where only Celsius is printed */
  double hold_s; /* 0 = at once */
} FmHoldRow;

/** What is cooked, as far as figures depend on it. */
typedef struct {
  FmSpeciesSet species;
  double fat_pct; /* raw; NaN = not known */
} FmCookFood;

#define FM_AUTHORITY_MAX_ROWS 31

/** "FDA Food Code 3-401.11(A)(2), comminuted meat". Translated. Never NULL. */
const char *fm_authority_name (FmAuthority authority);
/** Section, edition, how it was read, and whom it addresses. Translated. */
const char *fm_authority_note (FmAuthority authority);
/** Whether its figures are shown beside a blend of @species. */
gboolean fm_authority_applies (FmAuthority authority, FmSpeciesSet species);
/** The consumer figure that rules for @species: it applies, and none that applies is stricter. */
FmAuthority fm_authority_ruling (FmSpeciesSet species);
/**
 * fm_authority_rows:
 * @rows: (out): at most FM_AUTHORITY_MAX_ROWS, by rising temperature
 *
 * The table for poultry depends on fat: the column of the fat at or above, 12 % for more or
 * unknown fat; of several kinds of poultry or a mixture the longer time of both tables, as the
 * guideline says (pp. 36 and 39). Returns: number of rows.
 */
guint fm_authority_rows (FmAuthority authority, const FmCookFood *food, FmHoldRow *rows);
/** TRUE from the lower of the row's two printed figures. */
gboolean fm_hold_row_is_met (const FmHoldRow *row, double temp_c);
/** "71.1 °C (160 °F)". Returns: (transfer full). */
char *fm_hold_row_temp_format (const FmHoldRow *row);
/** A reading beside @row, "71.0 °C (159 °F)": one that misses the row never prints as the row.
 * Returns: (transfer full). */
char *fm_hold_row_reading_format (const FmHoldRow *row, double temp_c);
/** Which figures are shown beside @species, and why; one sentence. Translated.
 * Returns: (transfer full). */
char *fm_authority_choice_text (FmSpeciesSet species);

G_END_DECLS
