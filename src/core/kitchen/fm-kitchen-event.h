/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-kitchen-event.h - what happened at the pan, one event after another
 *
 * An event bears three clocks. Time since the machine was started, sleep included, measures what
 * lies between two events of one start: setting the system's clock does not bend it. Where the
 * machine was started anew between them only the wall clock is left, and whoever shows the time
 * says so. Nothing is ever changed or removed: what was a mistake is taken back by another event.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define FM_BOOT_ID_LENGTH 40
/* The parts of a pan or griddle that one cook watches at once: our limit, no source. */
#define FM_KITCHEN_MAX_POSITIONS 4

/** A moment by every clock, in microseconds. */
typedef struct {
  gint64 wall_us;                  /* since 1970, UTC; may be set */
  gint64 monotonic_us;             /* stands still while the machine sleeps */
  gint64 boot_us;                  /* goes on while it sleeps */
  char boot_id[FM_BOOT_ID_LENGTH]; /* of the start of the machine that the two are counted from */
} FmKitchenMoment;

/** What lies between two moments. */
typedef struct {
  double s;              /* never negative */
  gboolean by_wall;      /* the machine was started anew between: only the wall clock tells */
  double asleep_s;       /* of it the machine slept; NaN where not known */
  double clock_change_s; /* the wall clock was set forward by; NaN where not known */
} FmKitchenSpan;

/** Numbers are stored: never renumbered. */
typedef enum {
  FM_KITCHEN_OPENED = 0,    /* the screen was opened */
  FM_KITCHEN_POSITIONS = 1, /* value: how many portions are on the heat at once */
  FM_KITCHEN_WEIGHED = 2,   /* words: line id or name; value: g */
  FM_KITCHEN_SALTED = 3,
  FM_KITCHEN_ON = 4, /* met the heat; value: position, from 0 */
  FM_KITCHEN_TURNED = 5,
  FM_KITCHEN_OFF = 6,
  FM_KITCHEN_REST_OVER = 7,
  FM_KITCHEN_CORE = 8,    /* value: °C, read by the cook */
  FM_KITCHEN_PROBE = 9,   /* value: °C, read by a probe */
  FM_KITCHEN_RAW = 10,    /* value: g */
  FM_KITCHEN_COOKED = 11, /* value: g */
  FM_KITCHEN_REMARK = 12, /* words */
  FM_KITCHEN_PHOTO = 13,
  FM_KITCHEN_TAKEN_BACK = 14,   /* value: number of the event that does not count */
  FM_KITCHEN_SLEPT = 15,        /* value: s that the machine slept */
  FM_KITCHEN_CLOCK_SET = 16,    /* value: s that the wall clock was set forward */
  FM_KITCHEN_STARTED_ANEW = 17, /* the machine was started since the event before */
  FM_N_KITCHEN_KINDS,
} FmKitchenKind;

typedef struct {
  guint number; /* within the experiment, from 0, without a gap */
  FmKitchenMoment at;
  FmKitchenKind kind;
  int portion;  /* from 0; -1 = none, or all */
  double value; /* NaN = none */
  char *words;  /* (nullable) */
} FmKitchenEvent;

FmKitchenEvent *fm_kitchen_event_new (guint number,
                                      const FmKitchenMoment *at,
                                      FmKitchenKind kind,
                                      int portion,
                                      double value,
                                      const char *words);
FmKitchenEvent *fm_kitchen_event_copy (const FmKitchenEvent *self);
void fm_kitchen_event_free (FmKitchenEvent *self);
/** A list that owns its events. (transfer full) (element-type FmKitchenEvent) */
GPtrArray *fm_kitchen_events_new (void);

FmKitchenSpan fm_kitchen_span (const FmKitchenMoment *from, const FmKitchenMoment *to);
/**
 * fm_kitchen_gap:
 * @kind: (out): FM_KITCHEN_SLEPT, CLOCK_SET or STARTED_ANEW
 * @value: (out): of the event to be noted
 *
 * Whether something happened between two moments that is to be noted; the greater one first.
 */
gboolean fm_kitchen_gap (const FmKitchenMoment *from,
                         const FmKitchenMoment *to,
                         FmKitchenKind *kind,
                         double *value);
/** "Portion 2 turned". Translated. (transfer full) */
char *fm_kitchen_event_text (const FmKitchenEvent *event);
/** The last event that a cook may take back; NULL when there is none. (transfer none) */
const FmKitchenEvent *fm_kitchen_last_act (const GPtrArray *events);
/** For each of @events whether a later one takes it back. (transfer full) */
gboolean *fm_kitchen_taken_back (const GPtrArray *events);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmKitchenEvent, fm_kitchen_event_free)

G_END_DECLS
