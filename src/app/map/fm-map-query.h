/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-query.h - reads and makes maps of a blend, off the main thread */
#pragma once

#include "store/fm-maps.h"

#include <gio/gio.h>

G_BEGIN_DECLS

/** What the page needs to know of a blend. */
typedef struct {
  GPtrArray *maps;     /* FmMapInfo, newest first */
  GPtrArray *versions; /* FmVersionInfo, by number */
} FmMapList;

void fm_map_list_free (FmMapList *self);
void fm_map_list_async (FmNotebook *notebook,
                        gint64 blend_id,
                        GCancellable *cancellable,
                        GAsyncReadyCallback callback,
                        gpointer user_data);
FmMapList *fm_map_list_finish (GAsyncResult *result, GError **error);

/** Stores a new map. @map: (transfer full) */
void fm_map_add_async (FmNotebook *notebook,
                       FmMap *map,
                       GCancellable *cancellable,
                       GAsyncReadyCallback callback,
                       gpointer user_data);
/** Its id, 0 on error. */
gint64 fm_map_add_finish (GAsyncResult *result, GError **error);

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

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmMapList, fm_map_list_free)

G_END_DECLS
