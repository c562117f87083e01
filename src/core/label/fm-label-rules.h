/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-label-rules.h - the dated sets of rules that labels are made by
 *
 * The tables are those of data/label, with their sources and what of them was read. Names of rows
 * are the words that stand on a label, so they are not translated.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum {
  FM_LABEL_US_RETAIL,
  FM_LABEL_US_MEAT,
  FM_LABEL_EU,
  FM_N_LABEL_SETS,
} FmLabelSetId;

/** What a row of a panel tells. Units as in FmNutrientInfo, energy in kcal or kJ, salt in g. */
typedef enum {
  FM_LABEL_ITEM_CALORIES,
  FM_LABEL_ITEM_CALORIES_FROM_FAT,
  FM_LABEL_ITEM_ENERGY_KJ,
  FM_LABEL_ITEM_ENERGY_KCAL,
  FM_LABEL_ITEM_TOTAL_FAT,
  FM_LABEL_ITEM_SATURATED_FAT,
  FM_LABEL_ITEM_TRANS_FAT,
  FM_LABEL_ITEM_MONOUNSATURATED_FAT,
  FM_LABEL_ITEM_POLYUNSATURATED_FAT,
  FM_LABEL_ITEM_CHOLESTEROL,
  FM_LABEL_ITEM_SODIUM,
  FM_LABEL_ITEM_SALT,
  FM_LABEL_ITEM_CARBOHYDRATE,           /* by difference, fibre in it */
  FM_LABEL_ITEM_AVAILABLE_CARBOHYDRATE, /* less fibre */
  FM_LABEL_ITEM_FIBRE,
  FM_LABEL_ITEM_SUGARS,
  FM_LABEL_ITEM_ADDED_SUGARS,
  FM_LABEL_ITEM_PROTEIN,
  FM_LABEL_ITEM_VITAMIN_A_IU,
  FM_LABEL_ITEM_VITAMIN_C,
  FM_LABEL_ITEM_VITAMIN_D,
  FM_LABEL_ITEM_CALCIUM,
  FM_LABEL_ITEM_IRON,
  FM_LABEL_ITEM_POTASSIUM,
  FM_N_LABEL_ITEMS,
} FmLabelItem;

typedef enum {
  FM_ROUNDING_ENERGY,
  FM_ROUNDING_FAT,
  FM_ROUNDING_CHOLESTEROL,
  FM_ROUNDING_SODIUM,
  FM_ROUNDING_GRAM,
  FM_ROUNDING_RDI_SMALL,
  FM_ROUNDING_RDI_MIDDLE,
  FM_ROUNDING_RDI_LARGE,
  FM_ROUNDING_DV_MACRO,
  FM_ROUNDING_DV_MICRO,
  FM_ROUNDING_EU_ENERGY,
  FM_ROUNDING_EU_GRAM,
  FM_ROUNDING_EU_SATURATES,
  FM_ROUNDING_EU_SALT,
} FmRounding;

typedef enum {
  FM_TOLERANCE_NONE,
  FM_TOLERANCE_US_UPPER,
  FM_TOLERANCE_US_LOWER,
  FM_TOLERANCE_EU_FAT,
  FM_TOLERANCE_EU_GRAM,
  FM_TOLERANCE_EU_SATURATES,
  FM_TOLERANCE_EU_SALT,
} FmTolerance;

typedef enum {
  FM_LABEL_SHOWS_AMOUNT,
  FM_LABEL_SHOWS_SHARE, /* of the Daily Value alone */
  FM_LABEL_SHOWS_BOTH,
} FmLabelShows;

/** @title, @about: untranslated, for _(). @how_read: what of the texts was seen. */
typedef struct {
  const char *key;
  const char *title;
  const char *about;
  const char *source;
  const char *text_date;
  const char *how_read;
} FmLabelSet;

typedef struct {
  FmLabelSetId set;
  FmLabelItem item;
  const char *name; /* "" when it goes on with the row above */
  const char *unit;
  int indent;
  gboolean must;
  FmLabelShows shows;
  double daily_value; /* in @unit; NaN = none */
  FmRounding rounding;
  FmTolerance tolerance;
} FmLabelRow;

/** Bands of one rounding stand together, from low to high. */
typedef struct {
  FmRounding rounding;
  double from;
  gboolean from_is_in;
  double step;      /* 0 where words stand */
  const char *text; /* "" where a number stands */
  const char *source;
  const char *how_read;
} FmLabelBand;

typedef struct {
  FmTolerance tolerance;
  double from; /* declared amount per 100 g from which it holds */
  double below;
  double above; /* NaN = open on that side */
  gboolean is_percent;
  const char *source;
  const char *how_read;
} FmLabelTolerance;

/** The figure that a claim is held against. */
typedef enum {
  FM_CLAIM_TOTAL_FAT,                  /* g */
  FM_CLAIM_SATURATED_FAT,              /* g */
  FM_CLAIM_CHOLESTEROL,                /* mg */
  FM_CLAIM_SODIUM,                     /* mg */
  FM_CLAIM_SUGARS,                     /* g */
  FM_CLAIM_SATURATES_AND_TRANS,        /* g */
  FM_CLAIM_SATURATES_AND_TRANS_ENERGY, /* % of the energy */
  FM_CLAIM_PROTEIN_ENERGY,             /* % of the energy */
  FM_CLAIM_PROTEIN_SHARE,              /* % of the Daily Value, corrected for quality */
  FM_CLAIM_IRON_SHARE,                 /* % of the Daily Value */
} FmClaimItem;

typedef enum { FM_CLAIM_AT_MOST, FM_CLAIM_BELOW, FM_CLAIM_AT_LEAST } FmClaimSign;

typedef enum { FM_CLAIM_PER_100G, FM_CLAIM_REFERENCE, FM_CLAIM_ENERGY } FmClaimBasis;

typedef struct {
  FmLabelSetId set;
  const char *claim; /* in the words of the rule */
  FmClaimItem item;
  FmClaimSign sign;
  double limit;
  FmClaimBasis basis;
  const char *source;
  const char *how_read;
} FmClaimCriterion;

/* Written by the build. */
extern const FmLabelSet fm_label_sets[];
extern const guint fm_n_label_sets;
/** Words for files: stable, not translated. */
extern const char *const fm_label_item_keys[FM_N_LABEL_ITEMS];
extern const FmLabelRow fm_label_rows[];
extern const guint fm_n_label_rows;
extern const FmLabelBand fm_label_bands[];
extern const guint fm_n_label_bands;
extern const FmLabelTolerance fm_label_tolerances[];
extern const guint fm_n_label_tolerances;
extern const FmClaimCriterion fm_label_criteria[];
extern const guint fm_n_label_criteria;

G_END_DECLS
