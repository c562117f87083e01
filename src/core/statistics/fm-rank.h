/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-rank.h - reading rank orders of a small panel, exactly
 *
 * Tests are conditional on each taster's own ties: under "no difference" every taster's ranks
 * could have fallen on the samples in any order. p is counted over all these orders where that is
 * feasible, else over seeded random ones; no large-sample distribution is used.
 * Sources: Friedman (1937, JASA 32); Durbin (1951, Brit. J. Psych. Stat. 4); Page (1963, JASA 58);
 * Kendall and Babington Smith (1939); Hollander and Wolfe, Nonparametric Statistical Methods;
 * Conover, Practical Nonparametric Statistics (1999); ISO 8587 (rank-sum LSD).
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define FM_RANK_MAX_SAMPLES 26
#define FM_RANK_MAX_TASTERS 500
#define FM_RANK_PERMUTATIONS 50000

/** Rows = tasters, columns = samples. A cell is the place the taster gave (1 = best) or any number
 * that is smaller for better; ties allowed; NaN = not tasted or sheet missing. */
typedef struct {
  guint n_tasters;
  guint n_samples;
  double *value; /* by rows */
} FmRankTable;

typedef enum {
  FM_RANK_EXACT,    /* all orders counted */
  FM_RANK_PERMUTED, /* FM_RANK_PERMUTATIONS seeded random orders, p = (1 + hits) / (1 + draws) */
} FmRankMethod;

typedef enum {
  FM_RANK_FRIEDMAN,   /* every counted taster ranked all samples */
  FM_RANK_INCOMPLETE, /* Durbin: tasters ranked different subsets */
} FmRankDesign;

typedef struct {
  FmRankDesign design;
  FmRankMethod method;
  guint n_tasters;  /* sheets counted: those with two samples ranked or more */
  guint n_left_out; /* sheets that could not be counted */
  guint n_samples;
  double *rank_sum;     /* [n_samples]; low = liked */
  double *expected_sum; /* [n_samples] under no difference; differ when designs are uneven */
  double *lowest_sum;   /* [n_samples] put first on every sheet it is on */
  double *highest_sum;  /* [n_samples] put last on every sheet it is on */
  guint *n_ranked;      /* [n_samples] tasters who ranked it */
  double *worth;        /* (nullable) [n_samples] log worths, see fm-rank-worth.h: where pairs were
                           not all compared equally often. NULL where rank sums are fair, and where
                           some samples were never compared with the others. */
  guint leader;         /* index of the sample in the first place (first if shared) */
  guint n_leaders;      /* how many samples share that; 0 = the sheets cannot say */
  gboolean has_ties;
  double statistic;      /* Friedman's or Durbin's, tie-corrected; NaN when all is tied or the
                            incomplete design is not balanced. For reports only: p is exact. */
  double p;              /* 0 .. 1 */
  double p_error;        /* standard error of a permuted p; 0 when exact */
  double clear_distance; /* of two rank sums: equal samples anywhere among all pairs come that far
                            apart in at most 5 % of sessions, by the null distribution of the range
                            of rank sums (a distance that holds over all pairs). NaN where pairs
                            were not all compared equally often, or no distance is that rare. */
  double half_width;     /* for drawing: two rank sums whose bars (sum +- half_width) do not overlap
                            are clearly apart; else NaN */
  double lsd;           /* of two rank sums at 5 %, for one pair chosen before; NaN unless p <= 0.05
                         */
  double kendall_w;     /* 0 no agreement .. 1 full; NaN for incomplete designs */
  double mean_spearman; /* mean over pairs of tasters; NaN for incomplete or n < 2 */
} FmRankResult;

FmRankTable *fm_rank_table_new (guint n_tasters, guint n_samples); /* all NaN */
void fm_rank_table_free (FmRankTable *self);
double fm_rank_table_get (const FmRankTable *self, guint taster, guint sample);
void fm_rank_table_set (FmRankTable *self, guint taster, guint sample, double value);

/**
 * fm_rank_test:
 * @table: the sheets
 * @seed: of the session; only used where all orders are too many to count
 *
 * Friedman's test when all sheets with a rank are complete. With gaps it is Durbin's on all
 * sheets with two ranks or more (in a design not balanced, the squared deviations of the rank
 * sums from what each sample's own sheets would give by chance are permuted just the same; who came
 * first is told by worths, since such deviations grow with every sheet a sample is on).
 * Takes up to about a second: call it in a task.
 *
 * Returns: (transfer full): %NULL with @error when fewer than two samples or no sheet counts
 */
FmRankResult *fm_rank_test (const FmRankTable *table, guint64 seed, GError **error);
void fm_rank_result_free (FmRankResult *self);

/** Place of a sample among all, 1 = best: by worth where there is one, else by the distance of the
 * rank sum from its expectation. Equal ones share a place. 0 = the sheets cannot say. */
guint fm_rank_place (const FmRankResult *result, guint sample, gboolean *is_shared);

/** Pairwise agreement: Spearman of two tasters on the samples both ranked; NaN when under 2. */
double fm_rank_agreement (const FmRankTable *table, guint taster_a, guint taster_b);

typedef struct {
  FmRankMethod method;
  guint n_tasters;
  double l; /* Page's L */
  double p; /* one-sided: the written order, or more so */
  double p_error;
} FmPageResult;

/**
 * fm_rank_page:
 * @place: (array length=n_samples): the order written down BEFORE tasting, as the place of each
 *   sample, 1 = best; a permutation. The caller may only pass an order stored with the plan;
 *   %NULL is refused.
 *
 * Page's L on complete sheets only (others are left out).
 */
gboolean fm_rank_page (const FmRankTable *table,
                       const guint *place,
                       guint64 seed,
                       FmPageResult *result,
                       GError **error);
/** P(L >= l) without ties for k samples (2 .. 8) and n tasters. */
double fm_rank_page_upper (guint k, guint n, double l);

/** Smallest p Friedman's test can give (all agree, no ties): (k!)^-(n-1). */
double fm_rank_smallest_p (guint k, guint n);
/** P(sum of squared deviations of rank sums >= @s) without ties, complete; NaN when too large to
 * count. Friedman's statistic = 12 s / (n k (k + 1)). */
double fm_rank_friedman_upper (guint k, guint n, double s);

/** 5 % style LSD of two rank sums, large sample (ISO 8587): z sqrt(n k (k+1) / 6). */
double fm_rank_lsd (guint k, guint n, double alpha);
/** Conover's LSD: t sqrt(2 (n A - sum R^2) / ((n-1)(k-1))), complete tables only, else NaN. */
double fm_rank_lsd_conover (const FmRankTable *table, double alpha);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmRankTable, fm_rank_table_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmRankResult, fm_rank_result_free)

G_END_DECLS
