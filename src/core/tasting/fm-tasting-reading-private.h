/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-reading-private.h - the steps of a reading */
#pragma once

#include "core/tasting/fm-tasting-reading.h"

G_BEGIN_DECLS

/** Counted sheets of @tasting: row in the reading -> index of the taster. */
typedef struct {
  const FmTasting *tasting;
  guint *taster; /* [reading->n_tasters] */
} FmTastingSheets;

/** Fills what concerns serving positions; needs ranks and liking. */
void fm_tasting_reading_positions (FmTastingReading *self, const FmTastingSheets *sheets);
/** Fills the headline and the lines; comes last. */
void fm_tasting_reading_tell (FmTastingReading *self, const FmTasting *tasting);

G_END_DECLS
