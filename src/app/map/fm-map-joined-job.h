/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-joined-job.h - looks for the blend that meets several goals at once, in a thread */
#pragma once

#include "app/map/fm-map-fit-job.h"

G_BEGIN_DECLS

typedef struct {
  guint n;
  FmMapResponse response[FM_MAP_N_RESPONSES];
  FmMixGoal goal[FM_MAP_N_RESPONSES];
} FmMapAims;

typedef struct {
  FmMapAims aims;
  FmMixRegion region;
  FmMixData *data[FM_MAP_N_RESPONSES];
  FmMixFit *fit[FM_MAP_N_RESPONSES];
  char *refusal; /* (nullable): why there is no blend */
  FmMixSpot spot;
} FmMapJoined;

/** @document: with a region, and data read for it. A refusal is part of the result. Errors:
 * cancelled. */
void fm_map_joined_async (FmMapDocument *document,
                          const FmMapAims *aims,
                          GCancellable *cancellable,
                          GAsyncReadyCallback callback,
                          gpointer user_data);
FmMapJoined *fm_map_joined_finish (GAsyncResult *result, GError **error);
void fm_map_joined_free (FmMapJoined *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmMapJoined, fm_map_joined_free)

G_END_DECLS
