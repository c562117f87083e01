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
  gint64 blend_id;    /* 0 when the version cannot be read */
  char *made_of;      /* (nullable) "Pan patty, version 3" */
  FmFormula *formula; /* (nullable) of the version */
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
/** @data: an FmExperiment. Returns: FmExperiment: the latest other one of the same blend; NULL and
 * an error when there is none. */
gpointer fm_experiment_query_last (FmNotebook *notebook,
                                   gpointer data,
                                   GCancellable *cancellable,
                                   GError **error);

/** What a new experiment is made from. */
typedef struct {
  gint64 version_id; /* planned from a saved version, or */
  gint64 again_id;   /* another experiment that is made again; 0 = none */
} FmExperimentOrder;

/** @data: an FmExperimentOrder. Stores the new experiment. */
gpointer fm_experiment_query_create (FmNotebook *notebook,
                                     gpointer data,
                                     GCancellable *cancellable,
                                     GError **error);

G_END_DECLS
