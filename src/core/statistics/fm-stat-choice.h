/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-stat-choice.h - triangle, duo-trio and paired tests: counting right answers
 *
 * Sources: exact binomial tests as in ISO 4120 (triangle), ISO 10399 (duo-trio) and ISO 5495
 * (paired); d' by Thurstonian models, Ennis (1993), J. Sensory Studies 8.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum {
  FM_CHOICE_TRIANGLE,           /* odd one of three; chance 1/3, one-sided */
  FM_CHOICE_DUO_TRIO,           /* which equals the reference; chance 1/2, one-sided */
  FM_CHOICE_PAIRED_DIRECTIONAL, /* which has more of ...; chance 1/2, one-sided */
  FM_CHOICE_PAIRED_PREFERENCE,  /* which is liked more; chance 1/2, two-sided */
} FmChoiceKind;

typedef struct {
  FmChoiceKind kind;
  guint n;          /* answers */
  guint n_right;    /* right ones; for a preference: those for the first sample */
  double p;         /* exact; two-sided for a preference */
  double share;     /* n_right / n; NaN when n = 0 */
  double share_low; /* 95 % Clopper-Pearson */
  double share_high;
  double discriminators; /* (share - chance) / (1 - chance), at least 0; NaN for a preference */
  double discriminators_low;
  double discriminators_high;
  double d_prime; /* 0 at or below chance; +inf when all are right; NaN for a preference */
  double d_prime_low;
  double d_prime_high;
} FmChoiceResult;

/** Share of right answers by guessing: 1/3 or 1/2. */
double fm_choice_chance (FmChoiceKind kind);
/** Errors: no answers, more right answers than answers. */
gboolean
fm_choice_test (FmChoiceKind kind, guint n, guint n_right, FmChoiceResult *result, GError **error);
/** Fewest right answers of @n that are significant at @alpha; 0 when not even all are. */
guint fm_choice_critical (FmChoiceKind kind, guint n, double alpha);
/** Chance that the test comes out significant at @alpha when a share @discriminators (0 .. 1) of
 * answers comes from telling the samples apart and the rest from guessing. A preference counts
 * both sides; there @discriminators are tasters who all hold to the same sample. */
double fm_choice_power (FmChoiceKind kind, guint n, double discriminators, double alpha);
/** Share of right answers at sensory distance @d_prime >= 0 (2-AFC for the paired kinds). */
double fm_choice_share_from_d_prime (FmChoiceKind kind, double d_prime);
/** The reverse: 0 at or below chance, +inf at 1. */
double fm_choice_d_prime (FmChoiceKind kind, double share);

G_END_DECLS
