/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-cook-job.h - what the estimate of a cook asks of the notebook and the heat model, in threads
 */
#pragma once

#include <gio/gio.h>

#include "core/heat/fm-heat.h"
#include "store/fm-experiments.h"

G_BEGIN_DECLS

/** Where an estimate begins. */
typedef struct {
  FmHeatSetup setup;           /* from the version and what the experiment records */
  gboolean contact_remembered; /* the coefficient comes from an earlier fit on this surface */
  char *mix_text;              /* translated: where the composition comes from, or why not known */
} FmCookStart;

void fm_cook_start_free (FmCookStart *self);

/** @experiment: copied */
void fm_cook_job_start_async (FmNotebook *notebook,
                              const FmExperiment *experiment,
                              GCancellable *cancellable,
                              GAsyncReadyCallback callback,
                              gpointer data);
FmCookStart *fm_cook_job_start_finish (GAsyncResult *result, GError **error);

/** @setup: copied */
void fm_cook_job_predict_async (const FmHeatSetup *setup,
                                GCancellable *cancellable,
                                GAsyncReadyCallback callback,
                                gpointer data);
FmHeatResult *fm_cook_job_predict_finish (GAsyncResult *result, GError **error);

/** Fits the contact coefficient and, unless the fit ended at its bound, remembers it for
 * @experiment's surface. */
void fm_cook_job_fit_async (FmNotebook *notebook,
                            const FmExperiment *experiment,
                            const FmHeatSetup *setup,
                            GCancellable *cancellable,
                            GAsyncReadyCallback callback,
                            gpointer data);
/** @not_remembered: (out) (transfer full): why the good fit could not be stored, else NULL */
gboolean fm_cook_job_fit_finish (GAsyncResult *result,
                                 FmHeatFit *fit,
                                 char **not_remembered,
                                 GError **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmCookStart, fm_cook_start_free)

G_END_DECLS
