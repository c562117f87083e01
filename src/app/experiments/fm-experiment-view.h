/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-experiment-view.h - one experiment as a page, every change saved as it is made
 *
 * Signals, besides those of a stored view:
 *   "photos-changed" ()  photos were added or removed
 *   "show-version" ()    the user asks to see the version
 *   "duplicate" ()       the user asks for a new experiment like this one
 */
#pragma once

#include "app/log/fm-stored-view.h"
#include "app/session/fm-experiment-document.h"

G_BEGIN_DECLS

#define FM_TYPE_EXPERIMENT_VIEW (fm_experiment_view_get_type ())
G_DECLARE_FINAL_TYPE (FmExperimentView, fm_experiment_view, FM, EXPERIMENT_VIEW, FmStoredView)

/** Before its document is shown. @origin: (nullable): translated sentence that names the version.
 * @plan: (nullable): the version's process. */
void fm_experiment_view_set_origin (FmExperimentView *self,
                                    FmSession *session,
                                    const char *origin,
                                    const FmProcess *plan);
/** Tells the view that a tasting was opened or removed: reads again what they found. */
void fm_experiment_view_read_tastings (FmExperimentView *self);

G_END_DECLS
