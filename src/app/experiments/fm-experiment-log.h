/* fm-experiment-log.h - the log as a list model over one array of rows
 *
 * The rows of a query arrive as one array and are swapped in at once; the objects for them are
 * made only when a view asks, so that 100,000 rows cost one "items-changed".
 */
#pragma once

#include <gio/gio.h>

#include "app/experiments/fm-experiment-item.h"

G_BEGIN_DECLS

#define FM_TYPE_EXPERIMENT_LOG (fm_experiment_log_get_type ())
G_DECLARE_FINAL_TYPE (FmExperimentLog, fm_experiment_log, FM, EXPERIMENT_LOG, GObject)

FmExperimentLog *fm_experiment_log_new (void);
/** @rows: (transfer full) (nullable): FmExperimentInfo with a free func. */
void fm_experiment_log_set_rows (FmExperimentLog *self, GPtrArray *rows);
/** Position of an experiment, G_MAXUINT when it is not listed. */
guint fm_experiment_log_find (FmExperimentLog *self, gint64 experiment_id);

G_END_DECLS
