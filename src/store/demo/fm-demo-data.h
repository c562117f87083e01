/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-demo-data.h - the invented story that the demo notebook tells (inside the store only)
 *
 * Kitchen, blends, prices, weighings, temperatures and opinions are all made up; only the
 * compositions are real rows of the food dataset. The notebook carries FM_SETTING_INVENTED, so no
 * name and no note has to say so. Strings are untranslated; pass them to _().
 */
#pragma once

#include "core/composition/fm-ingredient.h"
#include "core/formula/fm-process.h"

G_BEGIN_DECLS

#define FM_DEMO_MAX_LINES 8
/* Blends (rows of fm_demo_blends()) that carry the map and the tasting under way. The first of
 * them has something on every page, so the demo opens on it. */
#define FM_DEMO_MAP_BLEND 3
#define FM_DEMO_SEALED_BLEND 1

typedef enum {
  FM_DEMO_CHUCK,
  FM_DEMO_SHORT_RIB,
  FM_DEMO_BRISKET,
  FM_DEMO_SHANK,
  FM_DEMO_HEART,
  FM_DEMO_SUET,
  FM_DEMO_GROUND_70,
  FM_DEMO_GROUND_80,
  FM_DEMO_LAMB,
  FM_DEMO_BACKFAT,
  FM_DEMO_SALT,
  FM_DEMO_PEPPER,
  FM_DEMO_TRIM_50,  /* own: supplier's lean point only */
  FM_DEMO_LAB_TRIM, /* own: laboratory analysis */
  FM_DEMO_N_FOODS,
} FmDemoFood;

/** @ndb_no: NULL for the developer's own entries, which fm-demo.c describes. */
typedef struct {
  const char *ndb_no;
  double price_per_kg;     /* as purchased; NaN = not known */
  FmAllergenSet allergens; /* stated by the supplier, who is as invented */
} FmDemoStock;

#define FM_DEMO_MAX_SEASONINGS 2

typedef struct {
  const char *what;
  FmSeasonMoment moment;
  gboolean on_surface;
} FmDemoSeasoning;

/** 0 and NULL are not planned. */
typedef struct {
  double numbers[FM_N_PROCESS_FIELDS];
  const char *words[FM_N_PROCESS_FIELDS];
  double plates_mm[FM_PROCESS_MAX_PASSES];
  FmDemoSeasoning seasonings[FM_DEMO_MAX_SEASONINGS];
} FmDemoProcess;

typedef struct {
  const char *name;
  double patty_mass_g;
  int n_patties;
  double fat_min_pct;
  double fat_max_pct;
  double cost_max; /* per raw patty */
  const char *notes;
  FmDemoProcess process;
} FmDemoBlend;

typedef struct {
  guint blend;
  int number;
  int parent; /* number within the blend; 0 = root */
  int day;
  const char *reason;
  struct {
    FmDemoFood food;
    double mass_g; /* 0 = end of the lines */
  } lines[FM_DEMO_MAX_LINES];
} FmDemoVersion;

typedef enum {
  FM_DEMO_PICTURE_RAW = 1 << 0,
  FM_DEMO_PICTURE_SEARED = 1 << 1,
  FM_DEMO_PICTURE_CUT = 1 << 2,
  FM_DEMO_PICTURE_CUT_UPRIGHT = 1 << 3,
} FmDemoPictures;

/** Zero numbers are "not recorded" (no cooking when the loss is 0). */
typedef struct {
  guint blend;
  int version;
  int day;
  const char *title;
  const char *notes;
  double meat_temp_c;
  double plate_mm;
  int passes;
  double patty_sd_g;
  double salt_pct; /* on the surface; salt in the formula is planned from it */
  double salt_minutes_before;
  const char *surface;
  double surface_temp_c;
  double minutes_side_1;
  double minutes_side_2;
  double peak_core_c;
  double rest_minutes;
  double loss_pct;
  int rating;
  FmDemoPictures pictures;
} FmDemoExperiment;

extern const FmDemoStock fm_demo_stock[FM_DEMO_N_FOODS];

const FmDemoBlend *fm_demo_blends (guint *n_blends);
/** A parent always stands before its children. */
const FmDemoVersion *fm_demo_versions (guint *n_versions);
const FmDemoExperiment *fm_demo_experiments (guint *n_experiments);

G_END_DECLS
