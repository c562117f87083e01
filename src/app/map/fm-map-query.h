/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-query.h - what the map page asks of the notebook and of the design, in threads */
#pragma once

#include "app/log/fm-log-model.h"
#include "core/formula/fm-formula.h"
#include "store/fm-maps.h"

G_BEGIN_DECLS

/** Rows are FmMapInfo, newest first; a query is the id (gint64) of a blend. */
extern const FmLogKind fm_map_log_kind;

/** A map with the version that it starts from. */
typedef struct {
  FmMap *map;
  FmFormula *base;
} FmMapRecord;

void fm_map_record_free (FmMapRecord *self);

/* As of FmStoreFunc. */
/** @data: the id. Returns: FmMapRecord */
gpointer
fm_map_query_load (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error);
/** @data: the new map (FmMap), which is given a name. Returns: its id (gint64*) */
gpointer fm_map_query_create (FmNotebook *notebook,
                              gpointer data,
                              GCancellable *cancellable,
                              GError **error);

/**
 * Draws up the design of @map in @region; may take seconds. Answers FmMapPoint, see
 * fm_map_design_points(). @map and @region are copied.
 */
void fm_map_draw_async (const FmMap *map,
                        const FmMixRegion *region,
                        GCancellable *cancellable,
                        GAsyncReadyCallback callback,
                        gpointer user_data);
GArray *fm_map_draw_finish (GAsyncResult *result, GError **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmMapRecord, fm_map_record_free)

G_END_DECLS
