/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-maps.h - maps of blends in the notebook */
#pragma once

#include "core/mixture/fm-map.h"
#include "store/notebook/fm-notebook.h"

G_BEGIN_DECLS

typedef struct {
  gint64 id;
  char *name;
  gint64 created_at;
  guint n_points;
  guint n_versions; /* points made into versions */
} FmMapInfo;

void fm_map_info_free (FmMapInfo *info);
/** Newest first; (transfer full) with a free func set. @only_id: 0, or the only map to be read. */
GPtrArray *fm_maps_list (FmNotebook *self, gint64 blend_id, gint64 only_id, GError **error);
FmMap *fm_maps_load (FmNotebook *self, gint64 id, GError **error);
/** Inserts (id 0; sets the id) or updates; one transaction. */
gboolean fm_maps_save (FmNotebook *self, FmMap *map, GError **error);
gboolean fm_maps_remove (FmNotebook *self, gint64 id, GError **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmMapInfo, fm_map_info_free)

G_END_DECLS
