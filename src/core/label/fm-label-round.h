/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-label-round.h - figures as a label may show them, and how near they stand to another one
 *
 * Bands and steps: data/label/rounding.tsv. An exact middle goes up, which no rule text fixes.
 */
#pragma once

#include "core/label/fm-label-rules.h"

G_BEGIN_DECLS

#define FM_LABEL_TEXT_LENGTH 24

/**
 * FmLabelFigure: what a label shows of an amount.
 *
 * @text: "22", "less than 5", "<0.5"; the point of an American label does not follow the locale
 * @value: the number that stands there; NaN when words do
 * @edge_below, @edge_above: between these amounts the label shows the same; NaN = no such edge
 */
typedef struct {
  char text[FM_LABEL_TEXT_LENGTH];
  double value;
  double edge_below;
  double edge_above;
} FmLabelFigure;

/** The band of the rule that @amount lies in. (transfer none) */
const FmLabelBand *fm_label_band (FmRounding rounding, double amount);
/** @amount: >= 0, in the unit of the rounding. */
FmLabelFigure fm_label_round (FmRounding rounding, double amount);
/** Distance from @amount to the nearer edge, in its unit; NaN when there is none. */
double fm_label_edge_distance (const FmLabelFigure *figure, double amount);

/** Between which analysed amounts a declared one stands; NaN = open on that side. */
typedef struct {
  double lowest;
  double highest;
} FmLabelSpan;

/** Both open for words, and for a zero where the tolerance is a share of it. */
FmLabelSpan fm_label_tolerance_span (FmTolerance tolerance, double declared);

/**
 * Servings in a pack: to the nearest half between 2 and 5, else to the nearest whole number.
 * Source: FDA, Guide to Nutrition Labeling and Education Act Requirements, attachment 6 (1993).
 * @is_about: (out): the number was rounded
 */
double fm_label_servings (double pack_g, double serving_g, gboolean *is_about);

/** Source: the same, attachment 6, for food in single units such as patties. */
typedef enum {
  FM_SERVING_SEVERAL,    /* half of the reference amount or less: as many as come closest */
  FM_SERVING_ONE_OR_TWO, /* more than half, below 67 % */
  FM_SERVING_ONE,        /* from 67 % to below 200 % */
  FM_SERVING_ONE_IF_EATEN_AT_ONCE, /* from 200 % on */
} FmServingUnits;

FmServingUnits fm_label_serving_units (double unit_g, double reference_g);

/**
 * % of the Daily Value of protein: protein x score / 50 g, a score above 1 counting as 1.
 * Source: 21 CFR 101.9(c)(7)(ii), from memory.
 */
double fm_label_protein_share_pct (double protein_g, double quality_score);

G_END_DECLS
