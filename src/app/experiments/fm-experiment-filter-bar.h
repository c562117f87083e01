/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-experiment-filter-bar.h - search, scope, order and conditions of the log
 *
 * Signal: "filter-changed" ()
 */
#pragma once

#include <gtk/gtk.h>

#include "app/session/fm-session.h"

G_BEGIN_DECLS

#define FM_TYPE_EXPERIMENT_FILTER_BAR (fm_experiment_filter_bar_get_type ())
G_DECLARE_FINAL_TYPE (
    FmExperimentFilterBar, fm_experiment_filter_bar, FM, EXPERIMENT_FILTER_BAR, GtkWidget)

/** @filter: (out): its text belongs to the bar and is good until the next change. */
void fm_experiment_filter_bar_get_filter (FmExperimentFilterBar *self,
                                          FmSession *session,
                                          FmExperimentFilter *filter);
/** TRUE when text, rating or photos narrow the list. */
gboolean fm_experiment_filter_bar_is_filtering (FmExperimentFilterBar *self);
/** Takes back text and conditions, keeps scope and order. */
void fm_experiment_filter_bar_reset (FmExperimentFilterBar *self);

G_END_DECLS
