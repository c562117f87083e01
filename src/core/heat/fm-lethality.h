/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-lethality.h - integrated lethality of a core temperature curve by the D/z method
 *
 * Lethal rate L = 10^((T - Tref) / z); F = integral of L dt, minutes at Tref; log10 reductions =
 * F / D(Tref). Bigelow 1921, Ball 1923 (from memory); the arithmetic follows a published one-page
 * example for Salmonella in ground beef, see fm-lethality.c.
 *
 * These are figures for one organism in one matrix, never a verdict on a food.
 */
#pragma once

#include "core/cooking/fm-authority.h"
#include "core/experiment/fm-experiment.h"

G_BEGIN_DECLS

typedef struct {
  const char *organism; /* scientific name, not translated */
  const char *matrix;   /* translatable */
  const char *method;   /* how survivors were counted; translatable */
  double fat_pct;       /* of the matrix; NaN = not stated */
  double d_min;         /* decimal reduction time at @ref_c, minutes */
  double ref_c;
  double z_c;          /* kelvins per tenfold change of D */
  double tested_min_c; /* temperatures at which D was measured; NaN = not stated */
  double tested_max_c;
  const char *source;
  const char *mark;     /* "read", "read (second hand)", "own" */
  FmSpeciesSet species; /* animals of the matrix; 0 = own */
  gboolean is_blend;    /* the matrix is a mixture of all of them */
  const char *note;     /* (nullable) how D or z was taken from the source; translatable */
} FmLethalityParams;

/** All published sets with an author that state both D and z, or D from which z follows. */
const FmLethalityParams *fm_lethality_params (guint *n_params);
/**
 * fm_lethality_params_for:
 * @fits: (out): FALSE when no set is of an animal in the blend, so that all sets are listed
 *
 * The sets for a blend by organism, E. coli first. Within one the sets of a matrix as fat as the
 * blend or fatter, or of unstated fat, stand first, the highest D at FM_LETHALITY_COMPARED_C first:
 * heat kills more slowly in fat, so the first set is the most careful one that speaks of this
 * blend. While the animal or fat is not known, every set counts as fitting or the fattest as
 * needed. Elements are static. Returns: (transfer container).
 */
GPtrArray *fm_lethality_params_for (const FmCookFood *food, gboolean *fits);
/** How the first set for @food was chosen: a sentence. Translated. Returns: (transfer full). */
char *fm_lethality_choice_text (const FmCookFood *food);
/** D by z at @temp_c, minutes. */
double fm_lethality_d_min (const FmLethalityParams *params, double temp_c);
/* Where D of several sets is compared: between their tested temperatures, and where a patty
 * spends its time. */
#define FM_LETHALITY_COMPARED_C 65.0

/** A set of the developer's own, marked as such; NaN = not given. */
void fm_lethality_params_init_own (FmLethalityParams *self, double d_min, double ref_c, double z_c);
/** "E. coli O157:H7, ground beef, 30.5 % fat". Translated. Returns: (transfer full). */
char *fm_lethality_params_name (const FmLethalityParams *params);

/** Copy of @readings (FmCoreReading, or NULL) by rising time. Returns: (transfer full). */
GArray *fm_core_readings_sorted (const GArray *readings);
/** L at @temp_c, 1 at @ref_c. */
double fm_lethal_rate (double temp_c, double ref_c, double z_c);

typedef struct {
  guint n_readings;
  double *time_s;        /* n_readings, ascending */
  double *lethal_rate;   /* n_readings */
  double *f_min;         /* n_readings: F so far, trapezoid of the lethal rate */
  double total_f_min;    /* the last of them */
  double log_reductions; /* total_f_min / D */
  double linear_f_min;   /* F if the temperature ran straight between readings; never above the
                            trapezoid, which reads high where readings are far apart */
  double linear_log_reductions;
  double longest_gap_s;  /* between two neighbouring readings */
  gboolean extrapolated; /* a reading counts that lies outside the tested temperatures */
} FmLethality;

/**
 * fm_lethality_new:
 * @readings: FmCoreReading, any order
 *
 * NULL + error: fewer than two readings (EMPTY), a time or temperature that is no finite number, a
 * D or z that is not above zero (OUT_OF_RANGE).
 */
FmLethality *
fm_lethality_new (const GArray *readings, const FmLethalityParams *params, GError **error);
void fm_lethality_free (FmLethality *self);
/** F to the two digits that readings and a published D support, "2.4 min": the trapezoid, or the
 * straight line where the readings stand so far apart that both differ by a tenth. (transfer full)
 */
char *fm_lethality_f_format (const FmLethality *self);
/** Figure, organism, D, z, Tref, source, and what limits it, in sentences. Translated.
 * Returns: (transfer full). */
char *fm_lethality_text (const FmLethality *self, const FmLethalityParams *params);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmLethality, fm_lethality_free)

G_END_DECLS
