/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-label-panel.h - the figures of a nutrition panel by one set of rules
 *
 * A panel with an unknown figure that must stand there is refused and says who lacks it. A panel is
 * a calculation: a licensed professional or the authority must check it before it goes on a food.
 */
#pragma once

#include "core/label/fm-label-amount.h"
#include "core/label/fm-label-round.h"

G_BEGIN_DECLS

/* 9 CFR 317.312(b), from memory: raw and cooked meat without sauce. */
#define FM_LABEL_REFERENCE_RAW_G 114.0

/**
 * FmLabelLine: one row of a panel.
 *
 * @amount: unrounded, per serving (European Union: per 100 g)
 * @portion, @portion_amount: the same per portion; used by the European Union only
 * @share_pct: of the Daily Value, unrounded; NaN = none
 * @share: as shown
 * @u: standard uncertainty of @amount by the formula; NaN = not known
 * @span: where an analysis of the same mass may lie
 * @is_stated: the amount was stated, not calculated
 */
typedef struct {
  const FmLabelRow *row;
  double amount;
  FmLabelFigure figure;
  double portion_amount;
  FmLabelFigure portion;
  double share_pct;
  FmLabelFigure share;
  double u;
  FmLabelSpan span;
  gboolean is_stated;
} FmLabelLine;

typedef struct {
  FmLabelSetId set;
  double serving_g;   /* of the panel's serving or portion */
  double pack_g;      /* NaN = not stated */
  gboolean with_more; /* rows that may stand there as well, where they are known */
} FmLabelInput;

typedef struct {
  FmLabelInput input;
  GArray *lines; /* FmLabelLine, in the order of the rules */
} FmLabelPanel;

/**
 * NULL + FM_CORE_ERROR: _EMPTY without mass, _OUT_OF_RANGE for a serving, _UNKNOWN_VALUE with every
 * figure that is missing and the ingredients that lack it, a line each.
 */
FmLabelPanel *fm_label_panel_new (const FmFormula *formula,
                                  const FmAnalysis *analysis,
                                  const FmLabelInput *input,
                                  const FmLabelStated *stated,
                                  GError **error);
void fm_label_panel_free (FmLabelPanel *self);
/** (nullable) (transfer none) */
const FmLabelLine *fm_label_panel_line (const FmLabelPanel *self, FmLabelItem item);
/** The amount of 100 g, else of a serving: what the rows are worked out of, in g. */
double fm_label_basis_g (const FmLabelInput *input);
/** "22 g", "less than 5 mg", "280" as printed. Returns: (transfer full). */
char *fm_label_figure_text (const FmLabelFigure *figure, const char *unit);
/** How the row is called where it stands alone. Untranslated words of the label. */
const char *fm_label_row_name (const FmLabelRow *row);
/** How near a line stands to another figure and to the tolerance, a sentence. (transfer full) */
char *fm_label_edge_text (const FmLabelLine *line);
/** Why each line shows what it shows: the unrounded amount and what it is of, the band of the rule
 * with its step and source, and the edges. Returns: (transfer full). */
char *fm_label_panel_derivation (const FmLabelPanel *self);
/** What is to be thought of: servings, further columns of the panel, the unit as a serving, a line
 * each; "" for none. Returns: (transfer full). */
char *fm_label_panel_notes (const FmLabelPanel *self);
/** Which set, its sources, date, what of it was read. Returns: (transfer full). */
char *fm_label_set_text (FmLabelSetId set);
/** That somebody must check it: stands on whatever is made of a panel. Translated. */
const char *fm_label_caution (void);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmLabelPanel, fm_label_panel_free)

G_END_DECLS
