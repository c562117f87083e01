/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-experiment-process.h - what was done beside what the version plans
 *
 * An experiment records some of the fields of a process: numbers that were measured, the surface,
 * the last plate and the number of passes. The others are words that only the plan has.
 */
#pragma once

#include "core/experiment/fm-experiment.h"

G_BEGIN_DECLS

typedef enum {
  FM_TAKE_SETTINGS, /* what one sets: plates, form, surface and core aim */
  FM_TAKE_ALL,      /* what is else measured, too: it was done as planned */
} FmTakeExtent;

/** TRUE when an experiment has a place for what was done. */
gboolean fm_experiment_has_field (FmProcessField field);
/** What was recorded, as words. (transfer full) (nullable): not recorded. */
char *
fm_experiment_field_text (const FmExperiment *self, FmProcessField field, const FmUnits *units);
/** TRUE when plan and record both know @field and are not the same. */
gboolean
fm_experiment_differs (const FmExperiment *self, const FmProcess *plan, FmProcessField field);
/** Fills what is not recorded yet from @plan. Returns: TRUE when that changed something. */
gboolean
fm_experiment_take_process (FmExperiment *self, const FmProcess *plan, FmTakeExtent extent);

G_END_DECLS
