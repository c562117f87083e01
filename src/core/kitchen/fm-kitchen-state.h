/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-kitchen-state.h - how each portion stands and which timers run, from the events alone */
#pragma once

#include "core/formula/fm-process.h"
#include "core/kitchen/fm-kitchen-event.h"

G_BEGIN_DECLS

/* More portions than these nobody cooks off one screen: our limit, no source. */
#define FM_KITCHEN_MAX_PORTIONS 48

typedef enum {
  FM_STAGE_WAITING,
  FM_STAGE_SALTED,
  FM_STAGE_SIDE_1, /* on the heat, as laid on or turned an even number of times */
  FM_STAGE_SIDE_2,
  FM_STAGE_RESTING,
  FM_STAGE_RESTED,
} FmKitchenStage;

typedef struct {
  FmKitchenStage stage;
  int position; /* on the heat, from 0; -1 = not on it */
  gboolean was_salted;
  gboolean was_on;
  FmKitchenMoment salted; /* as the next ones only where they happened */
  FmKitchenMoment on;
  FmKitchenMoment side; /* begin of the side that lies on the heat */
  FmKitchenMoment off;
  FmKitchenMoment rested;
  double side_s[2]; /* spent on each side, closed stretches only */
  GArray *turns_s;  /* double: since it met the heat */
  double core_c;    /* last reading, by hand or probe; NaN = none */
  FmKitchenMoment core_at;
  double raw_g;    /* NaN = not weighed */
  double cooked_g; /* NaN = not weighed */
} FmKitchenPortion;

typedef struct {
  FmKitchenPortion portions[FM_KITCHEN_MAX_PORTIONS];
  guint n_portions;
  guint n_positions;
  int pan[FM_KITCHEN_MAX_POSITIONS]; /* the portion on each position, or that is next there; -1 */
} FmKitchenState;

/** @n_portions: at most FM_KITCHEN_MAX_PORTIONS count. (transfer full) */
FmKitchenState *fm_kitchen_state_new (const GPtrArray *events, guint n_portions);
void fm_kitchen_state_free (FmKitchenState *self);
gboolean fm_kitchen_is_on_heat (const FmKitchenPortion *portion);
/** The first portion that has not met the heat; -1 = none. */
int fm_kitchen_next_portion (const FmKitchenState *self);
/** Where @portion lies on the heat or will be laid; 0 for one that has no place yet. */
int fm_kitchen_position_of (const FmKitchenState *self, int portion);

typedef enum {
  FM_KITCHEN_TIMER_SALT,
  FM_KITCHEN_TIMER_SIDE_1,
  FM_KITCHEN_TIMER_SIDE_2,
  FM_KITCHEN_TIMER_REST,
  FM_N_KITCHEN_TIMERS,
} FmKitchenTimerKind;

/** How long each is to run. */
typedef struct {
  double planned_s[FM_N_KITCHEN_TIMERS];
  gboolean is_common_practice[FM_N_KITCHEN_TIMERS]; /* the version plans nothing */
} FmKitchenPlan;

typedef struct {
  FmKitchenTimerKind kind;
  int portion;
  FmKitchenSpan elapsed;
  double planned_s;
  gboolean is_common_practice;
} FmKitchenTimer;

/** @process: (nullable): what it plans comes first; else salt 30 min, sides 3 and 3 min, rest 2
 * min: common practice, no source. */
void fm_kitchen_plan_init (FmKitchenPlan *self, const FmProcess *process);
/** Translated: "Rest". */
const char *fm_kitchen_timer_name (FmKitchenTimerKind kind);
/** The timer that runs for @portion. FALSE when none does. */
gboolean fm_kitchen_timer (const FmKitchenState *self,
                           const FmKitchenPlan *plan,
                           int portion,
                           const FmKitchenMoment *now,
                           FmKitchenTimer *timer);
/**
 * What the one key does for @portion: salted only where the version plans a time of salting.
 * FALSE when nothing is left to do.
 */
gboolean fm_kitchen_next_act (const FmKitchenState *self,
                              const FmKitchenPlan *plan,
                              int portion,
                              FmKitchenKind *kind);
/** The portion that the cook has to do something about soonest; -1 = none. One that can be laid on
 * comes before whatever has more than half a minute left (our choice, no source). */
int
fm_kitchen_due (const FmKitchenState *self, const FmKitchenPlan *plan, const FmKitchenMoment *now);
/** Whether @kind can happen to @portion as it stands. */
gboolean fm_kitchen_can (const FmKitchenState *self, int portion, FmKitchenKind kind);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmKitchenState, fm_kitchen_state_free)

G_END_DECLS
