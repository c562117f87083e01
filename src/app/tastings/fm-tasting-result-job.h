/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-result-job.h - reads a tasting, and keeps what an opened one found, in threads */
#pragma once

#include <gio/gio.h>

#include "core/tasting/fm-tasting-reading.h"
#include "store/fm-tastings.h"

G_BEGIN_DECLS

/** @tasting: copied. */
void fm_tasting_result_job_read_async (const FmTasting *tasting,
                                       GCancellable *cancellable,
                                       GAsyncReadyCallback callback,
                                       gpointer data);
FmTastingReading *fm_tasting_result_job_read_finish (GAsyncResult *result, GError **error);

/** Stores headline and outcomes of a reading of an opened @tasting; both are used up at once. */
void fm_tasting_result_job_keep_async (FmNotebook *notebook,
                                       const FmTasting *tasting,
                                       const FmTastingReading *reading,
                                       GAsyncReadyCallback callback,
                                       gpointer data);
/** @is_new: (out): FALSE when the same was kept before, so that nothing was written. */
gboolean fm_tasting_result_job_keep_finish (GAsyncResult *result, gboolean *is_new, GError **error);

G_END_DECLS
