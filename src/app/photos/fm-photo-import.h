/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-photo-import.h - photos into the notebook, two at a time in threads */
#pragma once

#include <gdk/gdk.h>

#include "store/fm-experiments.h"

G_BEGIN_DECLS

/** Called in the main thread before each photo; @n_done of @n_total are finished. */
typedef void (*FmPhotoImportProgress) (GObject *owner, guint n_done, guint n_total);

/**
 * fm_photo_import_async:
 * @owner: (transfer none): kept alive until the import has ended
 * @sources: (element-type GObject): GFile or GdkTexture
 *
 * A source that cannot be read or is no good photo does not stop the others.
 */
void fm_photo_import_async (GObject *owner,
                            FmNotebook *notebook,
                            gint64 experiment_id,
                            GPtrArray *sources,
                            GCancellable *cancellable,
                            FmPhotoImportProgress progress,
                            GAsyncReadyCallback callback,
                            gpointer data);
/**
 * fm_photo_import_finish:
 * @n_added: (out): photos that are in the notebook now, also after a cancel
 * @cancelled: (out)
 *
 * Returns: (transfer full): one sentence for each source that failed, NULL-terminated.
 */
GStrv fm_photo_import_finish (GAsyncResult *result, guint *n_added, gboolean *cancelled);
/** Whether photos are being added now, by any page; @n_added of @n_total are in. */
gboolean fm_photo_import_is_running (guint *n_added, guint *n_total);

G_END_DECLS
