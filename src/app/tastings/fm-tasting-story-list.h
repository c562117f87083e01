/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-story-list.h - what opened tastings found of a version or an experiment, a line each
 *
 * Hidden while there is nothing to tell. A sealed tasting tells nothing.
 */
#pragma once

#include <gtk/gtk.h>

#include "store/fm-tastings.h"

G_BEGIN_DECLS

#define FM_TYPE_TASTING_STORY_LIST (fm_tasting_story_list_get_type ())
G_DECLARE_FINAL_TYPE (FmTastingStoryList, fm_tasting_story_list, FM, TASTING_STORY_LIST, GtkWidget)

/** @outcomes: (nullable) (element-type FmTastingOutcome): in the order to be shown */
void fm_tasting_story_list_set_outcomes (FmTastingStoryList *self, const GPtrArray *outcomes);
/** Reads the outcomes of an experiment in the background; 0 clears the list. */
void
fm_tasting_story_list_read (FmTastingStoryList *self, FmNotebook *notebook, gint64 experiment_id);

G_END_DECLS
