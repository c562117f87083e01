/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting.h - one blind tasting: plan, cups with codes, sheets
 *
 * A sample is an experiment (so one version) or something from outside. Cups carry three-digit
 * codes; marks are kept under the code on the cup, never under the sample, so that whoever types
 * a sheet needs no identity. From the moment the cups are arranged until the tasting is opened it
 * is sealed: which code is which sample is told by no screen and no export. It is an honour seal,
 * against looking by accident: the file tells its owner.
 *
 * Sources: three-digit codes ISO 4120:2021, ISO 8587; serving orders Williams (1949); 9-point
 * scale Peryam and Pilgrim (1957); triangle ISO 4120; paired ISO 5495.
 */
#pragma once

#include "core/base/fm-stop.h"

G_BEGIN_DECLS

#define FM_TASTING_MAX_SAMPLES 12
#define FM_TASTING_MAX_TASTERS 200
#define FM_TASTING_MAX_ATTRIBUTES 8

/** What tasters are asked; any mix in one session (bits). */
typedef enum {
  FM_TASTING_RANK = 1 << 0,       /* all cups of the main round, best first; ties allowed */
  FM_TASTING_LIKING = 1 << 1,     /* 9-point liking of each cup of the main round */
  FM_TASTING_JAR = 1 << 2,        /* just about right, 1 .. 5, on each attribute of each cup */
  FM_TASTING_PREFERENCE = 1 << 3, /* which of two */
  FM_TASTING_TRIANGLE = 1 << 4,   /* which of three is the odd one */
  FM_TASTING_REMARKS = 1 << 5,    /* free words on each cup of the main round */
} FmTastingTask;

/** Cups are served in rounds: the main round for rank, liking, just about right and remarks. */
typedef enum {
  FM_TASTING_ROUND_MAIN,
  FM_TASTING_ROUND_PAIR,
  FM_TASTING_ROUND_TRIANGLE,
} FmTastingRound;

typedef enum {
  FM_TASTING_PLANNED, /* may still be changed freely */
  FM_TASTING_SEALED,  /* cups are arranged; only sheets change */
  FM_TASTING_OPENED,
} FmTastingState;

typedef enum {
  FM_SHEET_WAITED_FOR, /* not typed, or not whole */
  FM_SHEET_IN,         /* whole, or handed in with gaps on purpose */
  FM_SHEET_MISSING,    /* will not come; its marks, if any, are not counted */
  FM_SHEET_DROPPED_OUT /* taster left; the marks made until then count */
} FmSheetState;

typedef struct {
  gint64 experiment_id; /* 0 = from outside */
  gint64 version_id;    /* of that experiment; 0 = from outside */
  char *name;           /* told only while planned or once opened */
} FmTastingSample;

typedef struct {
  char *name;
  FmSheetState sheet;
} FmTaster;

typedef struct {
  guint taster;
  FmTastingRound round;
  guint position; /* 0 based serving position in its round */
  guint sample;   /* index: identity, never shown while sealed */
  guint code;     /* 100 .. 999 */
} FmTastingCup;

/** @value by task: rank 1 = best (ties share a number); liking 1 .. 9; just about right 1 .. 5;
 * preference and triangle: 1 at the chosen cup (no other cup of the round has a mark). */
typedef struct {
  guint taster;
  guint code;
  FmTastingTask task; /* not remarks: these are FmTastingRemark */
  guint attribute;    /* just about right only, else 0 */
  double value;       /* places of a rank order may be halves: 2.5 for two that share 2 and 3 */
} FmTastingMark;

typedef struct {
  guint taster;
  guint code;
  char *text;
} FmTastingRemark;

typedef enum {
  FM_TASTING_EVENT_ARRANGED,
  FM_TASTING_EVENT_KEY_SHEET,     /* the kitchen's key was printed or saved, or with a text shown
                                     on the screen to the helper named there */
  FM_TASTING_EVENT_OPENED,        /* all sheets were in */
  FM_TASTING_EVENT_OPENED_EARLY,  /* on purpose, with sheets waited for, missing or dropped */
  FM_TASTING_EVENT_SHEET_CHANGED, /* a sheet was changed after opening */
  FM_TASTING_EVENT_UNCHECKED,     /* went on although not all was on record of the samples */
  FM_TASTING_EVENT_COPIED         /* this is the sealed tasting in a copy of its notebook */
} FmTastingEventKind;

/** How who is who is kept from a cook who tastes as well. */
typedef enum {
  FM_TASTING_BLINDING_NOT_SAID,
  FM_TASTING_BLINDING_HELPER_SERVES, /* one who does not taste puts the codes on and serves */
  FM_TASTING_BLINDING_RELABELLED,    /* cook writes names, another changes them for codes */
  FM_TASTING_BLINDING_UNDER_PLATE,   /* name under the plate, code on top, then shuffled */
  FM_TASTING_BLINDING_HELPER_KEY     /* a helper alone gets the key sheet and calls out codes */
} FmTastingBlinding;
#define FM_TASTING_N_BLINDINGS 5

typedef struct {
  gint64 at; /* unix seconds */
  FmTastingEventKind kind;
  char *text; /* (nullable) e.g. the reason given for opening early */
} FmTastingEvent;

typedef struct {
  gint64 id;      /* 0 = not stored yet */
  gint64 held_at; /* planned or real day; unix seconds */
  char *title;
  guint tasks;    /* FmTastingTask bits */
  guint64 seed;   /* below 2^53, so that it can be written down in decimal */
  guint64 hidden; /* made at sealing and never shown: with it the seed in the plan tells
                     no code; 0 = planned, or sealed before there was such a part */
  FmTastingBlinding blinding;
  guint max_per_taster;   /* cups of the main round one person can taste; >= 2 */
  GPtrArray *samples;     /* FmTastingSample */
  GPtrArray *tasters;     /* FmTaster */
  GPtrArray *attributes;  /* char*: "salt", "juiciness" ... for just about right */
  GArray *expected_place; /* (nullable) guint by sample, 1 = best: order written down beforehand */
  int pair[2];            /* samples of the preference, -1 = none */
  int triangle[2];        /* samples of the triangle, -1 = none */
  FmTastingState state;
  GArray *cups;       /* FmTastingCup, by taster, round, position; empty while planned */
  GArray *marks;      /* FmTastingMark */
  GPtrArray *remarks; /* FmTastingRemark */
  GPtrArray *events;  /* FmTastingEvent, oldest first */
  char *notes;        /* (nullable) */
} FmTasting;

FmTasting *fm_tasting_new (void); /* rank and remarks asked; random seed; no day yet */
FmTasting *fm_tasting_copy (const FmTasting *self);
/** A new plan with the samples, tasters and questions of @self, a seed of its own and no order
 * written down: that one has to be written before the codes of this tasting are known. */
FmTasting *fm_tasting_again (const FmTasting *self, gint64 held_at);
void fm_tasting_free (FmTasting *self);
gboolean fm_tasting_equal (const FmTasting *a, const FmTasting *b);

/** Samples and tasters are added in planned tastings only. Forgets an order written down before. */
void
fm_tasting_add_sample (FmTasting *self, gint64 experiment_id, gint64 version_id, const char *name);
/** Also forgets what refers to it (pair, triangle, expected places). Planned tastings only. */
void fm_tasting_remove_sample (FmTasting *self, guint index);
void fm_tasting_add_taster (FmTasting *self, const char *name);
/** Index of the taster called @name, whatever the case of its letters; -1 = none. */
int fm_tasting_find_taster (const FmTasting *self, const char *name);
void fm_tasting_remove_taster (FmTasting *self, guint index); /* planned tastings only */

/** What is missing in the plan, as a sentence (no task, fewer than two samples, a name twice ...)
 */
gboolean fm_tasting_check (const FmTasting *self, GError **error);
/** A random @hidden part for fm_tasting_arrange(), from 1 to below 2^53. */
guint64 fm_tasting_hidden_part (void);
/** Gives codes and serving orders from the seed and @hidden, seals, records the event. The same
 * plan, seed and hidden part always give the same cups. Every round has codes of its own: a sample
 * has one code in the main round and another in the pair, each cup of each taster's triangle one
 * more. So nothing that is told of one round, such as which two samples are the pair, narrows down
 * another, and tasters who talk learn nothing. */
gboolean fm_tasting_arrange (FmTasting *self, guint64 hidden, gint64 now, GError **error);
gboolean fm_tasting_is_sealed (const FmTasting *self);
/** Every sheet is in: none waited for, missing or dropped. */
gboolean fm_tasting_all_in (const FmTasting *self);
guint fm_tasting_n_in (const FmTasting *self);
guint fm_tasting_n_sheets (const FmTasting *self, FmSheetState state);
/** Opens; @reason: why, needed unless all sheets are in (else ignored). Records the event. */
gboolean fm_tasting_open (FmTasting *self, gint64 now, const char *reason, GError **error);
void fm_tasting_record (FmTasting *self, gint64 now, FmTastingEventKind kind, const char *text);

/** Cups of one taster in a round, in serving order; (transfer container) of FmTastingCup*. */
GPtrArray *fm_tasting_cups (const FmTasting *self, guint taster, FmTastingRound round);
/** All codes of the main round, ascending (so their order tells nothing). GArray of guint. */
GArray *fm_tasting_codes (const FmTasting *self);
/** Of a sample in the main round or the pair; 0 = none (or one for each cup: the triangle). */
guint fm_tasting_round_code (const FmTasting *self, guint sample, FmTastingRound round);
/** In the main round, or in the pair where there is no main round; 0 = none. */
guint fm_tasting_sample_code (const FmTasting *self, guint sample);
/** The code while sealed ("sealed" when it has none), the name otherwise; (transfer full). */
char *fm_tasting_sample_label (const FmTasting *self, guint sample);
/** "731 - Draft 3, fattier" once opened, "731" while sealed; (transfer full). */
char *fm_tasting_cup_label (const FmTasting *self, guint code);

/** NaN when there is no such mark. */
double fm_tasting_mark (
    const FmTasting *self, guint taster, guint code, FmTastingTask task, guint attribute);
/**
 * Sets or, with NaN, clears a mark. Choosing a cup of a pair or triangle clears the choice of the
 * others. After opening the change is recorded as an event at @now (unix seconds), as that of a
 * remark or a sheet is. Errors: value out of its scale, a cup
 * that this taster did not get, a task that is not asked.
 */
gboolean fm_tasting_set_mark (FmTasting *self,
                              gint64 now,
                              guint taster,
                              guint code,
                              FmTastingTask task,
                              guint attribute,
                              double value,
                              GError **error);
const char *fm_tasting_remark (const FmTasting *self, guint taster, guint code); /* (nullable) */
void fm_tasting_set_remark (
    FmTasting *self, gint64 now, guint taster, guint code, const char *text); /* nullable */
/** What is not filled in yet on a sheet, as short phrases; NULL when it is whole. (transfer full)
 */
char *fm_tasting_sheet_gaps (const FmTasting *self, guint taster);
void fm_tasting_set_sheet (FmTasting *self, gint64 now, guint taster, FmSheetState state);

/** Words of the 9-point scale, 1 "dislike extremely" .. 9 "like extremely"; of just about right. */
const char *fm_tasting_liking_word (guint score);
const char *fm_tasting_jar_word (guint mark);
/** "rank order", "9-point liking" ... */
const char *fm_tasting_task_name (FmTastingTask task);
/** "Somebody relabels", and what that way is worth, a sentence or two. */
const char *fm_tasting_blinding_name (FmTastingBlinding blinding);
const char *fm_tasting_blinding_worth (FmTastingBlinding blinding);
/** "waited for", "in", "missing", "dropped out" */
const char *fm_tasting_sheet_word (FmSheetState state);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmTasting, fm_tasting_free)

G_END_DECLS
