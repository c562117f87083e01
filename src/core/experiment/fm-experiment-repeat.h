/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-experiment-repeat.h - an experiment that is made as it was planned, or as another was made */
#pragma once

#include "core/experiment/fm-experiment.h"

G_BEGIN_DECLS

/** Fills what is not recorded yet of plate, passes, salt, surface and times from @last. Returns:
 * TRUE when that changed something. */
gboolean fm_experiment_take_last (FmExperiment *self, const FmExperiment *last);
/** What is not weighed yet was weighed as planned. Returns: TRUE when that changed something. */
gboolean fm_experiment_weigh_as_planned (FmExperiment *self);
/**
 * The same once more: what is planned and set is as in @self, what was weighed, measured, written
 * and rated is not recorded.
 * @made_at: unix seconds, UTC; @title: of the new one
 */
FmExperiment *
fm_experiment_make_again (const FmExperiment *self, gint64 made_at, const char *title);

G_END_DECLS
