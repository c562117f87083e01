/* fm-experiment-list.h - the log: filter, list and what is said when it is empty
 *
 * Signals:
 *   "selected" (gint64 id)   the selection moved to another experiment
 *   "activated" (gint64 id)  an experiment was clicked or Enter was pressed on it
 */
#pragma once

#include <gtk/gtk.h>

#include "app/session/fm-session.h"

G_BEGIN_DECLS

#define FM_TYPE_EXPERIMENT_LIST (fm_experiment_list_get_type ())
G_DECLARE_FINAL_TYPE (FmExperimentList, fm_experiment_list, FM, EXPERIMENT_LIST, GtkWidget)

void fm_experiment_list_set_session (FmExperimentList *self, FmSession *session);
/** Asks the notebook again; an older query is cancelled. */
void fm_experiment_list_reload (FmExperimentList *self);
/** The shown version or blend changed: asks again if the scope depends on it. */
void fm_experiment_list_shown_changed (FmExperimentList *self);
/** Selects a row now or when the running query ends; 0 selects none. Emits nothing. */
void fm_experiment_list_select (FmExperimentList *self, gint64 id);
/** Shows an edit of a listed experiment without asking the notebook. */
void fm_experiment_list_update (FmExperimentList *self, const FmExperiment *experiment);
/** Leaves out an experiment that is about to be removed. Ask to reload afterwards. */
void fm_experiment_list_set_hidden (FmExperimentList *self, gint64 id, gboolean hidden);
/** In a narrow window one click opens. */
void fm_experiment_list_set_single_click (FmExperimentList *self, gboolean single_click);

G_END_DECLS
