/* fm-experiment-query.h - what the log asks of the notebook, in threads */
#pragma once

#include <gio/gio.h>

#include "store/fm-experiments.h"

G_BEGIN_DECLS

/** Lists rows; the strings of @filter are copied. */
void fm_experiment_query_list_async (FmNotebook *notebook,
                                     const FmExperimentFilter *filter,
                                     GCancellable *cancellable,
                                     GAsyncReadyCallback callback,
                                     gpointer data);
GPtrArray *fm_experiment_query_list_finish (GAsyncResult *result, GError **error);

/** Loads one experiment and what is to be said about its version. */
void fm_experiment_query_open_async (FmNotebook *notebook,
                                     gint64 id,
                                     GCancellable *cancellable,
                                     GAsyncReadyCallback callback,
                                     gpointer data);
/**
 * @blend_id: (out): blend of the version, 0 when it cannot be told
 * @origin: (out) (transfer full): sentence that names the version
 */
FmExperiment *fm_experiment_query_open_finish (GAsyncResult *result,
                                               gint64 *blend_id,
                                               char **origin,
                                               GError **error);

/** Plans an experiment of a saved version and stores it. */
void fm_experiment_query_create_async (FmNotebook *notebook,
                                       gint64 version_id,
                                       GAsyncReadyCallback callback,
                                       gpointer data);
/** The id of the new experiment, 0 on error. */
gint64 fm_experiment_query_create_finish (GAsyncResult *result, GError **error);

G_END_DECLS
