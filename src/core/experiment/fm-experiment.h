/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-experiment.h - one real making of a version */
#pragma once

#include "core/cooking/fm-cooking.h"

G_BEGIN_DECLS

/* What a core reading can be: a thermometer in meat, over a day. */
#define FM_MIN_CORE_C -40.0
#define FM_MAX_CORE_C 120.0
#define FM_MAX_READING_S 86400.0
#define FM_MAX_READINGS 10000 /* of one experiment: almost three hours of one a second */

typedef struct {
  char *line_id; /* formula line of the version, or NULL for an extra */
  char *name;
  double planned_g; /* NaN = none */
  double weighed_g; /* NaN = not weighed */
} FmWeighing;

typedef struct {
  double raw_g;    /* NaN = not weighed */
  double cooked_g; /* NaN = not weighed */
} FmPattyMass;

typedef struct {
  double time_s; /* since the patty met the heat */
  double temp_c; /* core */
} FmCoreReading;

/** All numbers NaN when not recorded; strings NULL when not recorded. */
typedef struct {
  gint64 id;         /* 0 = not stored yet */
  gint64 version_id; /* the version it was made from */
  char *title;
  gint64 made_at;    /* unix seconds, UTC */
  GArray *weighings; /* FmWeighing (strings owned; cleared by clear func) */
  double meat_temp_c;
  double plate_mm;
  double patty_diameter_mm;   /* raw */
  double patty_thickness_mm;  /* raw */
  int grind_passes;           /* 0 = not recorded */
  GArray *patties;            /* FmPattyMass */
  double patty_tolerance_pct; /* of the planned patty mass; default 3: common practice, no source */
  double patty_target_g;
  double salt_pct;            /* mixed in, of the raw mass */
  double surface_salt_pct;    /* on top of the formula: strewn on the patties, % of their mass */
  double salt_minutes_before; /* time from salting to cooking */
  FmCookMethod method;
  char *surface;
  double surface_temp_c;
  double minutes_side_1;
  double minutes_side_2;
  GArray *core_readings; /* FmCoreReading, by time */
  double rest_minutes;
  double target_core_c; /* chosen core temperature to take the patty off at */
  char *notes;
  int rating; /* 0 = none, 1-10 */
} FmExperiment;

typedef struct {
  guint n;       /* patties with a raw mass */
  double mean_g; /* NaN when n = 0 */
  double sd_g;   /* sample standard deviation; NaN when n < 2 */
  double min_g;
  double max_g;
  guint n_outside;         /* outside tolerance of the target */
  guint n_cooked;          /* patties with raw and cooked mass */
  double cook_loss_pct;    /* 100 x (1 - sum cooked / sum raw) over those; NaN */
  double cook_loss_sd_pct; /* spread of single patties' losses; NaN when n_cooked < 2 */
} FmPattyStats;

FmExperiment *fm_experiment_new (void);
FmExperiment *fm_experiment_copy (const FmExperiment *self);
void fm_experiment_free (FmExperiment *self);
gboolean fm_experiment_equal (const FmExperiment *a, const FmExperiment *b);
/** Plans weighings (per batch of n patties) and patties from a version's formula, and takes over
 * what its process sets. */
void fm_experiment_plan (FmExperiment *self, const FmFormula *formula);
gboolean fm_experiment_check (const FmExperiment *self, GError **error);
void fm_experiment_patty_stats (const FmExperiment *self, FmPattyStats *stats);
/** All salt that was recorded, mixed in and on the surface; NaN when neither was. */
double fm_experiment_salt_pct (const FmExperiment *self);
/** Highest core reading, NaN when there is none. */
double fm_experiment_peak_core_c (const FmExperiment *self);
/** GCompareFunc over FmCoreReading, by time. */
int fm_core_reading_compare (gconstpointer a, gconstpointer b);
/** Whether an experiment may have so many core readings (FM_MAX_READINGS). */
gboolean fm_experiment_check_n_readings (guint n_readings, GError **error);
/** Reads lines of "time temperature" (min:s or minutes; C, or F when @fahrenheit). Adds nothing on
 * error. */
gboolean fm_experiment_parse_readings (FmExperiment *self,
                                       const char *text,
                                       gboolean fahrenheit,
                                       GError **error);
void fm_experiment_add_weighing (
    FmExperiment *self, const char *line_id, const char *name, double planned_g, double weighed_g);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmExperiment, fm_experiment_free)

G_END_DECLS
