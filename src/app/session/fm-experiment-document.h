/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-experiment-document.h - one experiment being edited, saved as it changes
 *
 * Signals: as of FmStoredDocument.
 */
#pragma once

#include "app/session/fm-session.h"
#include "store/fm-experiments.h"

G_BEGIN_DECLS

#define FM_TYPE_EXPERIMENT_DOCUMENT (fm_experiment_document_get_type ())
G_DECLARE_FINAL_TYPE (
    FmExperimentDocument, fm_experiment_document, FM, EXPERIMENT_DOCUMENT, FmStoredDocument)

/** As of fm_documents_open(). @experiment: (transfer full) of the session's notebook. */
FmExperimentDocument *fm_experiment_document_open (FmSession *session, FmExperiment *experiment);
/** To read and to change; call touch after a change. (transfer none) */
FmExperiment *fm_experiment_document_get_experiment (FmExperimentDocument *self);

/* As of FmStoredDocument. */
FmNotebook *fm_experiment_document_get_notebook (FmExperimentDocument *self);
gboolean fm_experiment_document_is_editable (FmExperimentDocument *self);
void fm_experiment_document_touch (FmExperimentDocument *self);
/** As touch, after a change that can be undone; a run of changes of the same @what, translated, is
 * one step. */
void fm_experiment_document_did (FmExperimentDocument *self, const char *what);
/** What comes is a step of its own. */
void fm_experiment_document_seal (FmExperimentDocument *self);

G_END_DECLS
