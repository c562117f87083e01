/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-data.h - what is known of the blends that lie on a map
 *
 * Every version of the blend is looked for among the map's components. For those found, what was
 * measured is collected by response, ready for fm_mix_fit().
 */
#pragma once

#include "core/experiment/fm-experiment.h"
#include "core/mixture/fm-mix-blend.h"
#include "core/mixture/fm-mix-fit.h"
#include "store/fm-maps.h"

G_BEGIN_DECLS

typedef enum {
  FM_MAP_LIKING,       /* 1 .. 9, of opened tastings; session and taster as blocks */
  FM_MAP_RATING,       /* 1 .. 10, of experiments */
  FM_MAP_COOK_LOSS,    /* % of the raw mass, of experiments */
  FM_MAP_COST,         /* per kg edible, of versions; from prices, not measured */
  FM_MAP_PEAK_CORE,    /* C, of experiments */
  FM_MAP_RAW_MASS,     /* mean raw patty, g */
  FM_MAP_SALT,         /* % */
  FM_MAP_SALT_MINUTES, /* before cooking */
  FM_MAP_REST_MINUTES,
  FM_MAP_MEAT_TEMP,    /* C */
  FM_MAP_SURFACE_TEMP, /* C */
  FM_MAP_MINUTES,      /* on the heat, both sides */
  FM_MAP_N_RESPONSES,
} FmMapResponse;

/** A version of the blend. */
typedef struct {
  gint64 version_id;
  int number;
  char *reason; /* why it was saved */
  gboolean is_placed;
  double x[FM_MIX_BLEND_MAX_COMPONENTS]; /* where it lies; only when placed */
  char *unplaced;                        /* (nullable): why it could not be placed, a sentence */
  guint n_experiments;
  guint n_tastings; /* opened ones with this version */
} FmMapPlace;

/** One response. The rows of @data and @version_id go side by side. */
typedef struct {
  FmMixData *data;    /* two blocks (session, taster) for liking, none for the others */
  GArray *version_id; /* gint64 */
} FmMapSeries;

typedef struct {
  guint q;
  GPtrArray *places;                      /* FmMapPlace, all versions in order of number */
  FmMapSeries series[FM_MAP_N_RESPONSES]; /* data of no rows where nothing was measured */
} FmMapData;

/**
 * fm_map_data_load:
 * @map: its base version is read anew
 *
 * Errors: what fm_mix_blend_new() says about the components, or what the notebook says.
 */
FmMapData *fm_map_data_load (FmNotebook *notebook,
                             const FmMap *map,
                             GCancellable *cancellable,
                             GError **error);
void fm_map_data_free (FmMapData *self);
/** NULL when the notebook has no such version of the blend. (transfer none) */
const FmMapPlace *fm_map_data_place (const FmMapData *self, gint64 version_id);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmMapData, fm_map_data_free)

G_END_DECLS
