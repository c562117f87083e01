/* fm-experiment-view.h - one experiment as a page, every change saved as it is made
 *
 * Signals:
 *   "stored" ()          the last changes are in the notebook
 *   "photos-changed" ()  photos were added or removed
 *   "show-version" ()    the user asks to see the version
 *   "remove" ()          the user asks to remove the experiment
 */
#pragma once

#include <gtk/gtk.h>

#include "app/session/fm-experiment-document.h"

G_BEGIN_DECLS

#define FM_TYPE_EXPERIMENT_VIEW (fm_experiment_view_get_type ())
G_DECLARE_FINAL_TYPE (FmExperimentView, fm_experiment_view, FM, EXPERIMENT_VIEW, GtkWidget)

/**
 * fm_experiment_view_set_document:
 * @document: (nullable): the one before is flushed
 * @origin: (nullable): translated sentence that names the version
 */
void fm_experiment_view_set_document (FmExperimentView *self,
                                      FmSession *session,
                                      FmExperimentDocument *document,
                                      const char *origin);
/** (transfer none) (nullable) */
FmExperimentDocument *fm_experiment_view_get_document (FmExperimentView *self);
/** Tells the view that a tasting was opened or removed: reads again what they found. */
void fm_experiment_view_read_tastings (FmExperimentView *self);

G_END_DECLS
