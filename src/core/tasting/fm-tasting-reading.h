/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-reading.h - everything that one tasting says, worked out once
 *
 * Labels are codes while the tasting is sealed and names after, so a reading of a sealed tasting
 * tells no identity. Sheets waited for or missing are left out; drop-outs count with what they
 * did.
 */
#pragma once

#include "core/statistics/fm-panel-text.h"
#include "core/tasting/fm-tasting.h"

G_BEGIN_DECLS

typedef struct {
  guint sample;    /* column of @labels */
  guint attribute; /* of the tasting */
  FmJarResult result;
  char *sentence;
} FmTastingJar;

/** Columns are the samples somebody got in the main round (or in the pair, where there is no main
 * round; none for a triangle alone). They stand in the order of their codes while sealed, in the
 * plan's order after. */
typedef struct {
  guint n_samples;
  char **labels;   /* [n_samples] + NULL */
  guint *sample;   /* [n_samples] index in the tasting; while sealed do not show anything by it */
  guint *code;     /* [n_samples] on the cups */
  guint n_tasters; /* counted sheets */
  char **tasters;  /* [n_tasters] + NULL: names of those */
  FmRankTable *ranks; /* (nullable) counted sheets x samples */
  FmRankResult *rank; /* (nullable) not asked, or not readable: see @rank_problem */
  char *rank_problem; /* (nullable) a sentence */
  /* Only for an order written down before, and only once opened: beside the rank sums it would
   * tell which code was expected where. */
  gboolean has_page;
  FmPageResult page;
  char *page_problem;   /* (nullable) a sentence */
  double lsd_conover;   /* NaN where it does not apply; only after a significant test */
  double *liking;       /* (nullable) [n_tasters x n_samples], NaN = none */
  FmAnovaResult *anova; /* (nullable) */
  char *anova_problem;  /* (nullable) */
  GPtrArray *jar;       /* FmTastingJar */
  gboolean has_preference;
  FmChoiceResult preference;
  char *preference_names[2]; /* n_right counts choices of the first; by code while sealed */
  gboolean has_triangle;
  FmChoiceResult triangle;
  char *triangle_names[2];        /* told once opened */
  FmRankResult *position_rank;    /* (nullable) of serving positions */
  FmAnovaResult *position_liking; /* (nullable) */
  gboolean positions_balanced;    /* every sample was served equally often in each position */
  guint n_positions;
  double *position_mean_liking; /* (nullable) [n_positions] */
  char *agreement_sentence;     /* (nullable) also among @lines */
  char *position_sentence;      /* (nullable) also among @lines */
  char *headline;               /* the one plain sentence, of the first thing asked */
  GPtrArray *lines;             /* char*: further sentences, one a task, most telling first */
} FmTastingReading;

/** Takes up to seconds: call it in a task on a copy. Errors: no sheet counts, cancelled. */
FmTastingReading *fm_tasting_read (const FmTasting *tasting, const FmStop *stop, GError **error);
void fm_tasting_reading_free (FmTastingReading *self);
/** What this panel can and cannot show, for every task asked; before it starts. (transfer full) */
char *fm_tasting_outlook (const FmTasting *tasting);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmTastingReading, fm_tasting_reading_free)

G_END_DECLS
