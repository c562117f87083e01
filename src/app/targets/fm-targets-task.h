/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-targets-task.h - the slow parts of meeting the targets, off the main thread */
#pragma once

#include <gio/gio.h>

#include "core/targets/fm-targets.h"
#include "store/fm-versions.h"

G_BEGIN_DECLS

/** What was asked and what came out of it. */
typedef struct {
  FmTargets *targets;
  FmTargetsResult *result;
} FmTargetsSolution;

/**
 * Solves @targets (transfer full). @reference_id: the version to stay near to with
 * FM_OBJECTIVE_NEAREST_REFERENCE, else 0. Finish: (transfer full).
 */
void fm_targets_solve_in_thread (FmTargets *targets,
                                 FmNotebook *notebook,
                                 gint64 reference_id,
                                 GCancellable *cancellable,
                                 GAsyncReadyCallback callback,
                                 gpointer user_data);
FmTargetsSolution *fm_targets_solve_in_thread_finish (GAsyncResult *result, GError **error);
void fm_targets_solution_free (FmTargetsSolution *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmTargetsSolution, fm_targets_solution_free)

G_END_DECLS
