/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-caution.h - what is on record of samples before somebody eats them
 *
 * The highest core reading beside the figure of the authority that rules for the sample's kind of
 * animal (fm-caution.h), and the allergens that somebody stated. What is not on record is said to
 * be unknown. Nothing here ever says that a sample is safe. No text joins a name with a code.
 */
#pragma once

#include "core/cooking/fm-caution.h"
#include "core/composition/fm-allergen.h"

G_BEGIN_DECLS

typedef struct {
  char *name;
  gboolean is_outside;     /* no experiment of the notebook: nothing is on record */
  FmSpeciesSet species;    /* the empty set and what nobody stated count as unknown */
  double peak_core_c;      /* highest reading; NaN = none */
  FmAllergenSet allergens; /* stated of its ingredients, all together */
  guint n_parts;           /* ingredients, and extras weighed for it */
  guint n_unstated;        /* of these: nobody stated their allergens */
} FmTastingCaution;

FmTastingCaution *fm_tasting_caution_new (const char *name);
void fm_tasting_caution_free (FmTastingCaution *self);

/** A core reading meets the figure that rules, and the allergens of every part are stated. FALSE
 * asks for a reason to go on; TRUE is no verdict on the food. */
gboolean fm_tasting_caution_is_on_record (const FmTastingCaution *self);

/* @cautions: FmTastingCaution, one a sample. Translated, (transfer full). */
gboolean fm_tasting_cautions_are_on_record (const GPtrArray *cautions);
/** "Draft 3 (beef): no core reading; figure that rules: 71.1 °C ... Allergens: not stated." */
char *fm_tasting_caution_text (const FmTastingCaution *self);
/** Each figure named in those texts once, with section and edition; then who decides. */
char *fm_tasting_cautions_figures (const GPtrArray *cautions);
/** For tasters: the same of all samples together, without their names. */
char *fm_tasting_cautions_tally (const GPtrArray *cautions);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmTastingCaution, fm_tasting_caution_free)

G_END_DECLS
