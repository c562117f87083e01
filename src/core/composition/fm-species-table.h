/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-species-table.h - kinds of animal by number of the dataset
 *
 * Private to fm-species.c. The build writes the table (tools/make-species-table).
 */
#pragma once

#include "core/composition/fm-species.h"

G_BEGIN_DECLS

/** The rows from @first_ndb to @last_ndb, both counted. */
typedef struct {
  guint32 first_ndb;
  guint32 last_ndb;
  FmSpecies species;
} FmSpeciesRun;

/** By rising number. */
extern const FmSpeciesRun fm_species_runs[];
extern const guint fm_n_species_runs;

G_END_DECLS
