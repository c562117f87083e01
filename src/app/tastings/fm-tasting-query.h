/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-query.h - what the tastings page asks of the notebook, in threads */
#pragma once

#include "app/log/fm-log-model.h"
#include "store/fm-tastings.h"

G_BEGIN_DECLS

/** Rows are FmTastingInfo, newest first; a query is the id (gint64) of a blend, whose tastings and
 * those of no blend at all are listed; 0 = all. */
extern const FmLogKind fm_tasting_log_kind;

/* As of FmStoreFunc. */
/** @data: the id. Returns: FmTasting */
gpointer fm_tasting_query_load (FmNotebook *notebook,
                                gpointer data,
                                GCancellable *cancellable,
                                GError **error);
/** @data: the plan (FmTasting); NULL stores an empty one. Returns: its id (gint64*) */
gpointer fm_tasting_query_create (FmNotebook *notebook,
                                  gpointer data,
                                  GCancellable *cancellable,
                                  GError **error);

/** @data: plans (GPtrArray of FmTasting). Returns: their ids (GArray of gint64) */
gpointer fm_tasting_query_create_all (FmNotebook *notebook,
                                      gpointer data,
                                      GCancellable *cancellable,
                                      GError **error);

/** Names of tasters in all tastings, each once, those of the newest tasting first. */
void fm_tasting_query_tasters_async (FmNotebook *notebook,
                                     GCancellable *cancellable,
                                     GAsyncReadyCallback callback,
                                     gpointer data);
/** (transfer full) of char* */
GPtrArray *fm_tasting_query_tasters_finish (GAsyncResult *result, GError **error);

G_END_DECLS
