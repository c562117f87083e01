/* fm-experiment-document.h - one experiment being edited, saved as it changes
 *
 * Widgets change the experiment in place and call fm_experiment_document_touch(). A copy is
 * saved shortly after the last change in a GTask thread; saves carry a serial number, so that a
 * late older copy can never overwrite a newer one. A save that fails is tried again, and the
 * document stays alive until its changes are stored.
 *
 * Signals:
 *   "changed" ()             some value changed; derived numbers follow
 *   "saved" ()               all changes are in the notebook
 *   "save-failed" (message)  the last save failed; another attempt follows
 */
#pragma once

#include <gio/gio.h>

#include "store/fm-experiments.h"

G_BEGIN_DECLS

#define FM_TYPE_EXPERIMENT_DOCUMENT (fm_experiment_document_get_type ())
G_DECLARE_FINAL_TYPE (
    FmExperimentDocument, fm_experiment_document, FM, EXPERIMENT_DOCUMENT, GObject)

/** @experiment: (transfer full) stored already. */
FmExperimentDocument *fm_experiment_document_new (FmNotebook *notebook, FmExperiment *experiment);
FmNotebook *fm_experiment_document_get_notebook (FmExperimentDocument *self);
/** To read and to change; call touch after a change. (transfer none) */
FmExperiment *fm_experiment_document_get_experiment (FmExperimentDocument *self);
/** FALSE when the notebook is open for reading only. */
gboolean fm_experiment_document_is_editable (FmExperimentDocument *self);
void fm_experiment_document_touch (FmExperimentDocument *self);
gboolean fm_experiment_document_is_saved (FmExperimentDocument *self);
/** Starts saving pending changes now, in a thread. */
void fm_experiment_document_flush (FmExperimentDocument *self);
/** Saves pending changes before it returns: only when the program is about to end. */
gboolean fm_experiment_document_flush_now (FmExperimentDocument *self, GError **error);
/** Forgets pending changes: the experiment was removed. */
void fm_experiment_document_abandon (FmExperimentDocument *self);

G_END_DECLS
