/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-number-spec.h - what an entry for a number takes and how it writes it
 *
 * In the units of the notebook; values and limits are in the base unit of the measure
 * (core/base/fm-measure.h).
 */
#pragma once

#include "core/base/fm-measure.h"

G_BEGIN_DECLS

typedef struct {
  char *what;     /* (nullable) translated name of the quantity */
  char *own_unit; /* (nullable): the unit of a plain number */
  FmMeasure measure;
  double minimum;
  double maximum;
  int decimals;      /* 0 of a plain number: only whole numbers are good */
  gboolean optional; /* blank text is the unknown value, NaN */
} FmNumberSpec;

void fm_number_spec_clear (FmNumberSpec *self);
/** @text may have spaces around it. FM_CORE_ERROR says to the cook what is wrong with it. */
gboolean
fm_number_spec_read (const FmNumberSpec *self, const char *text, double *value, GError **error);
/** As it stands in the entry; NaN is blank. (transfer full) */
char *fm_number_spec_text (const FmNumberSpec *self, double value);
/** With its unit, as in a sentence. (transfer full) */
char *fm_number_spec_text_with_unit (const FmNumberSpec *self, double value);
/** (transfer full) (nullable): a plain number may have none */
char *fm_number_spec_unit (const FmNumberSpec *self);

G_END_DECLS
