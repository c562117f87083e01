/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-process.h - how a blend is to be ground, seasoned, formed and cooked
 *
 * A plan, part of the formula and frozen with it. What was done stands in the experiment. The mass
 * that a patty is formed at is the brief's. Most fields are one number or words of the cook's own;
 * the table behind fm_process_field() names them once for files, windows, sheets and comparisons.
 */
#pragma once

#include "core/base/fm-measure.h"

G_BEGIN_DECLS

/* More passes or seasonings than these no kitchen plans: our limits, no source. */
#define FM_PROCESS_MAX_PASSES 4
#define FM_PROCESS_MAX_SEASONINGS 12

/** In the order of the work. */
typedef enum {
  FM_PROCESS_ORDER,      /* words: which cut first */
  FM_PROCESS_MEAT_TEMP,  /* °C, when it is ground */
  FM_PROCESS_PLATES,     /* one a pass, in order */
  FM_PROCESS_MINCE_TEMP, /* °C, after the last pass */
  FM_PROCESS_SEASONINGS,
  FM_PROCESS_SALT_MINUTES, /* from salting to the heat */
  FM_PROCESS_DIAMETER,     /* mm, raw */
  FM_PROCESS_THICKNESS,    /* mm, raw */
  FM_PROCESS_CHILL,        /* min of rest between forming and the heat */
  FM_PROCESS_SURFACE,      /* words: pan, griddle, grill */
  FM_PROCESS_HEAT,         /* words: high, then medium */
  FM_PROCESS_SURFACE_TEMP, /* °C, when the patty meets the heat */
  FM_PROCESS_SIDE_1,       /* min */
  FM_PROCESS_SIDE_2,       /* min */
  FM_PROCESS_TARGET_CORE,  /* °C */
  FM_PROCESS_REST,         /* min, after the heat */
  FM_PROCESS_STEPS,        /* words, one step a line */
  FM_N_PROCESS_FIELDS,
} FmProcessField;

typedef enum {
  FM_PROCESS_IS_NUMBER,
  FM_PROCESS_IS_WORDS,
  FM_PROCESS_IS_PLATES,
  FM_PROCESS_IS_SEASONINGS,
} FmProcessShape;

/** Moments of seasoning, in the order of the work. */
typedef enum {
  FM_SEASON_BEFORE_GRINDING,
  FM_SEASON_BETWEEN_PASSES,
  FM_SEASON_AFTER_GRINDING,
  FM_SEASON_AFTER_FORMING,
  FM_SEASON_AT_THE_HEAT, /* just before the patty meets it */
  FM_SEASON_AT_THE_TURN,
  FM_SEASON_AFTER_COOKING,
  FM_N_SEASON_MOMENTS,
} FmSeasonMoment;

typedef struct {
  char *what; /* in the cook's words, e.g. "Salt" */
  FmSeasonMoment moment;
  gboolean on_surface; /* else mixed in */
} FmSeasoning;

/** Numbers NaN and words NULL when not planned. */
typedef struct {
  double numbers[FM_N_PROCESS_FIELDS]; /* of the fields that are one number */
  char *words[FM_N_PROCESS_FIELDS];    /* of the fields that are words */
  GArray *plates_mm;                   /* double: hole diameters in the order of the passes */
  GPtrArray *seasonings;               /* FmSeasoning, owned, as the cook ordered them */
} FmProcess;

typedef struct {
  FmProcessShape shape;
  const char *key;  /* word for files: stable, not translated */
  const char *name; /* for gettext */
  FmMeasure measure;
  double min;
  double max;
  int decimals;
} FmProcessFieldInfo;

const FmProcessFieldInfo *fm_process_field (FmProcessField field);
const char *fm_process_field_name (FmProcessField field);  /* translated */
const char *fm_season_moment_name (FmSeasonMoment moment); /* translated */
/** Word for files. */
const char *fm_season_moment_key (FmSeasonMoment moment);
/** FM_N_SEASON_MOMENTS for NULL and unknown words. */
FmSeasonMoment fm_season_moment_from_key (const char *key);

FmProcess *fm_process_new (void);
FmProcess *fm_process_copy (const FmProcess *self);
void fm_process_free (FmProcess *self);
gboolean fm_process_equal (const FmProcess *a, const FmProcess *b);
gboolean fm_process_field_equal (const FmProcess *a, const FmProcess *b, FmProcessField field);
/** TRUE while nothing is planned. */
gboolean fm_process_is_empty (const FmProcess *self);

/** Blank words count as none. */
void fm_process_set_words (FmProcess *self, FmProcessField field, const char *words);
/** NaN in @plates_mm is no pass; more than the limit are left out. */
void fm_process_set_plates (FmProcess *self, const double *plates_mm, guint n);
/** A seasoning without a name is not added. */
void fm_process_add_seasoning (FmProcess *self,
                               const char *what,
                               FmSeasonMoment moment,
                               gboolean on_surface);
const FmSeasoning *fm_process_seasoning (const FmProcess *self, guint index);

/** What is planned, as words: "10 mm, then 4.5 mm". (transfer full) (nullable): not planned. */
char *fm_process_field_text (const FmProcess *self, FmProcessField field, const FmUnits *units);
/** "Salt: after forming, on the surface". (transfer full) */
char *fm_seasoning_text (const FmSeasoning *seasoning);
/** The steps one by one, without empty lines. (transfer full) */
char **fm_process_steps (const FmProcess *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmProcess, fm_process_free)

G_END_DECLS
