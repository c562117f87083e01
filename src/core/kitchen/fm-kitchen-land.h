/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-kitchen-land.h - what was recorded at the pan, in the experiment */
#pragma once

#include "core/experiment/fm-experiment.h"
#include "core/kitchen/fm-kitchen-state.h"

G_BEGIN_DECLS

/* A probe tells every second; the experiment keeps one of its readings in so many seconds, the log
 * keeps all. Our choice, no source. */
#define FM_KITCHEN_PROBE_EVERY_S 10.0

/**
 * Puts weights, times, core readings and remarks of @events into @experiment. Doing it twice
 * changes nothing the second time. Of several portions a time is the mean; core readings count from
 * the moment the portion met the heat. What the log does not know stays as it is, and a reading
 * that was taken back goes. Returns: TRUE when something changed.
 */
gboolean fm_kitchen_land (const GPtrArray *events, FmExperiment *experiment);
/** How many portions @experiment has, at most FM_KITCHEN_MAX_PORTIONS; at least one. */
guint fm_kitchen_n_portions (const FmExperiment *experiment);

G_END_DECLS
