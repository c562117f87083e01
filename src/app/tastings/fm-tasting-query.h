/* fm-tasting-query.h - what the tastings page asks of the notebook, in threads */
#pragma once

#include <gio/gio.h>

#include "store/fm-tastings.h"

G_BEGIN_DECLS

/** Lists rows, newest first; @blend_id: those of a blend and those of no blend at all;
 * 0 = all. */
void fm_tasting_query_list_async (FmNotebook *notebook,
                                  gint64 blend_id,
                                  GCancellable *cancellable,
                                  GAsyncReadyCallback callback,
                                  gpointer data);
/** (transfer full) of FmTastingInfo */
GPtrArray *fm_tasting_query_list_finish (GAsyncResult *result, GError **error);

void fm_tasting_query_open_async (FmNotebook *notebook,
                                  gint64 id,
                                  GCancellable *cancellable,
                                  GAsyncReadyCallback callback,
                                  gpointer data);
FmTasting *fm_tasting_query_open_finish (GAsyncResult *result, GError **error);

/** Stores a new, empty plan. */
void
fm_tasting_query_create_async (FmNotebook *notebook, GAsyncReadyCallback callback, gpointer data);
/** The id of the new tasting, 0 on error. */
gint64 fm_tasting_query_create_finish (GAsyncResult *result, GError **error);

/** Names of tasters in all tastings, each once, those of the newest tasting first. */
void fm_tasting_query_tasters_async (FmNotebook *notebook,
                                     GCancellable *cancellable,
                                     GAsyncReadyCallback callback,
                                     gpointer data);
/** (transfer full) of char* */
GPtrArray *fm_tasting_query_tasters_finish (GAsyncResult *result, GError **error);

G_END_DECLS
