/* fm-experiment-item.h - one row of the log as an object, for list models
 *
 * Signal: "changed" () what the row shows is another now.
 */
#pragma once

#include <glib-object.h>

#include "store/fm-experiments.h"

G_BEGIN_DECLS

#define FM_TYPE_EXPERIMENT_ITEM (fm_experiment_item_get_type ())
G_DECLARE_FINAL_TYPE (FmExperimentItem, fm_experiment_item, FM, EXPERIMENT_ITEM, GObject)

/** @rows keeps @info alive: the infos of a log are shared, never copied. */
FmExperimentItem *fm_experiment_item_new (GPtrArray *rows, FmExperimentInfo *info);
const FmExperimentInfo *fm_experiment_item_get_info (FmExperimentItem *self);
/** Takes over what an edit of @experiment changed; photos stay as they were counted. */
void fm_experiment_item_update (FmExperimentItem *self, const FmExperiment *experiment);
/** Three lines of Pango markup: the title, the version, then date, rating, loss and photos in
 * words. */
char *fm_experiment_item_markup (FmExperimentItem *self);

G_END_DECLS
