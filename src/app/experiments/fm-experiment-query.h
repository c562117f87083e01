/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-experiment-query.h - what the log asks of the notebook, in threads */
#pragma once

#include "app/log/fm-log-model.h"
#include "store/fm-experiments.h"

G_BEGIN_DECLS

/** Rows are FmExperimentInfo, queries FmExperimentFilter with a text of their own. */
extern const FmLogKind fm_experiment_log_kind;

/** Returns: (transfer full): a copy, to be freed by the kind. */
gpointer fm_experiment_query_copy_filter (gconstpointer filter);

/** One experiment and what is to be said about its version. */
typedef struct {
  FmExperiment *experiment;
  gint64 version_id;
  char *origin;       /* a sentence that names the version */
  FmProcess *process; /* (nullable) as the version plans it */
} FmExperimentRecord;

void fm_experiment_record_free (gpointer record);

/* As of FmStoreFunc. */
/** @data: the id. Returns: FmExperimentRecord */
gpointer fm_experiment_query_load (FmNotebook *notebook,
                                   gpointer data,
                                   GCancellable *cancellable,
                                   GError **error);
/** Plans an experiment of a saved version, whose id is @data, and stores it. */
gpointer fm_experiment_query_create (FmNotebook *notebook,
                                     gpointer data,
                                     GCancellable *cancellable,
                                     GError **error);

G_END_DECLS
