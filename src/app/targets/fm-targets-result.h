/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-targets-result.h - the new blend beside the old, or why there is none */
#pragma once

#include <gtk/gtk.h>

#include "core/targets/fm-targets.h"

G_BEGIN_DECLS

#define FM_TYPE_TARGETS_RESULT_VIEW (fm_targets_result_view_get_type ())
G_DECLARE_FINAL_TYPE (
    FmTargetsResultView, fm_targets_result_view, FM, TARGETS_RESULT_VIEW, GtkWidget)

/**
 * @formula: the blend that was solved for, the "before"
 * @limit_pct: the fat to be below, NaN = not asked
 */
void fm_targets_result_view_show (FmTargetsResultView *self,
                                  const FmTargets *targets,
                                  const FmTargetsResult *result,
                                  const FmFormula *formula,
                                  double limit_pct);
void fm_targets_result_view_show_error (FmTargetsResultView *self, const char *message);
void fm_targets_result_view_clear (FmTargetsResultView *self);

G_END_DECLS
