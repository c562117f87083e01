/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-comparison.h - versions and experiments side by side, as plain numbers
 *
 * A comparison is a table: one column per item, one row per quantity. An experiment whose every
 * line was weighed is compared as weighed, not as planned; salt that was strewn on counts in sodium
 * as recorded, else as the brief plans it.
 */
#pragma once

#include "core/formula/fm-analysis.h"
#include "core/experiment/fm-experiment.h"

G_BEGIN_DECLS

#define FM_COMPARE_MIN_ITEMS 2
#define FM_COMPARE_MAX_ITEMS 8

typedef enum {
  FM_COMPARE_VERSION,
  FM_COMPARE_EXPERIMENT,
  FM_COMPARE_DRAFT,
} FmCompareKind;

/** One column. */
typedef struct {
  FmCompareKind kind;
  gint64 id; /* of the version or the experiment; of a draft its blend */
  char *title;
  char *short_title; /* for a column head, e.g. "Pan patty, version 7" */
  char *subtitle;    /* (nullable) */
  FmFormula *formula;
  FmAnalysis *analysis;
  FmExperiment *experiment; /* NULL for a version or a draft */
  gboolean as_weighed;      /* the formula holds weighed masses */
  guint n_experiments;      /* that stand behind loss and rating */
  double cook_loss_pct;     /* NaN = not recorded */
  double rating;            /* 1-10, NaN = not recorded */
  double liking;            /* 1-9, in opened blind tastings; NaN = not asked */
  guint n_tasters;          /* whose liking that is */
  char *notes;              /* (nullable): of the experiments */
  char *tastings;           /* (nullable): what opened blind tastings found, in words */
  guint n_photos;           /* of the experiments */
} FmCompareItem;

/** @formula: (transfer full). @cook_loss_pct, @rating: means over @n_experiments, NaN = none. */
FmCompareItem *fm_compare_item_new_version (gint64 id,
                                            const char *title,
                                            const char *short_title,
                                            const char *subtitle,
                                            FmFormula *formula,
                                            guint n_experiments,
                                            double cook_loss_pct,
                                            double rating);
/** What is being edited: nobody has made it yet. @formula: (transfer full). */
FmCompareItem *fm_compare_item_new_draft (gint64 blend_id,
                                          const char *title,
                                          const char *short_title,
                                          const char *subtitle,
                                          FmFormula *formula);
/** @formula: (transfer full): the version's; weighed masses replace planned ones if complete. */
FmCompareItem *fm_compare_item_new_experiment (const char *title,
                                               const char *short_title,
                                               const char *subtitle,
                                               FmFormula *formula,
                                               FmExperiment *experiment);
/** What opened blind tastings found; @liking: as of fm_tasting_story_liking(), NaN = not asked. */
void fm_compare_item_set_liking (FmCompareItem *self, double liking, guint n_tasters);
/** What its makers wrote and found, as words that are shown. @notes, @tastings: (transfer full)
 * (nullable). */
void
fm_compare_item_set_findings (FmCompareItem *self, char *notes, char *tastings, guint n_photos);
void fm_compare_item_free (FmCompareItem *self);

typedef enum {
  FM_COMPARE_SECTION_FAT_LEAN,
  FM_COMPARE_SECTION_INGREDIENTS,
  FM_COMPARE_SECTION_MAKING,
  FM_COMPARE_SECTION_FINDINGS,
  FM_COMPARE_SECTION_PROCESS,
  FM_COMPARE_SECTION_COST,
  FM_COMPARE_SECTION_NUTRIENTS, /* + FmNutrientGroup */
  FM_N_COMPARE_SECTIONS = FM_COMPARE_SECTION_NUTRIENTS + FM_N_NUTRIENT_GROUPS,
} FmCompareSection;

/** Translated heading. */
const char *fm_compare_section_name (FmCompareSection section);

/** The row of photos, whose words say how many there are. */
#define FM_COMPARE_PHOTOS_KEY "photos"

/**
 * One row.
 * @key: stable ASCII name, e.g. "cook_loss" or "nutrient_iron"; "ingredient:" + identity
 * @values: one per column, NaN = not known
 * @at_least: the known part where only part of the mass has a value, else NaN
 * @texts: (nullable): of a row in words, one per column, NULL where nothing is planned or noted;
 *   such a row has no values
 */
typedef struct {
  FmCompareSection section;
  char *key;
  char *name; /* translated, without the unit */
  const char *unit;
  int decimals;
  double *values;
  double *at_least;
  char **texts;
  guint n_texts;
} FmCompareRow;

typedef struct {
  GPtrArray *items; /* FmCompareItem, owned */
  GPtrArray *rows;  /* FmCompareRow, owned, by section */
} FmComparison;

/** @items: (transfer full) (element-type FmCompareItem): with fm_compare_item_free() set. */
FmComparison *fm_comparison_new (GPtrArray *items);
void fm_comparison_free (FmComparison *self);
guint fm_comparison_n_items (const FmComparison *self);
const FmCompareItem *fm_comparison_item (const FmComparison *self, guint column);
/** The rows, or only those that differ. (transfer container) (element-type FmCompareRow) */
GPtrArray *fm_comparison_shown_rows (const FmComparison *self, gboolean only_differing);
/** What a row is called, with its unit. (transfer full) */
char *fm_compare_row_title (const FmCompareRow *row);
const FmCompareRow *fm_comparison_find_row (const FmComparison *self, const char *key);

/** Shown value: absolute where @reference is negative or @column, else the difference; NaN. */
double fm_compare_row_value (const FmCompareRow *row, guint column, int reference);
/** TRUE when what is shown in the columns, each for itself, does not read the same in all; photos
 * are never the same. */
gboolean fm_compare_row_differs (const FmCompareRow *row, guint n_columns);
/** TRUE when a row in words does not read the same in every column. */
gboolean fm_compare_row_texts_differ (const FmCompareRow *row, guint n_columns);
/** "12.3", "+0.4", "≥ 2.0" or "— not known"; of words also "the same" as @reference. */
char *fm_compare_row_text (const FmCompareRow *row, guint column, int reference);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmComparison, fm_comparison_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmCompareItem, fm_compare_item_free)

G_END_DECLS
