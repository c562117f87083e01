/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-marks.h - the blends marked on a map's pictures: versions measured, and those proposed */
#pragma once

#include "app/charts/fm-chart-table.h"
#include "app/map/fm-map-fit-job.h"

G_BEGIN_DECLS

typedef enum {
  FM_MAP_MARK_VERSION,
  FM_MAP_MARK_BEST,
  FM_MAP_MARK_NEXT,
  FM_MAP_MARK_UNKNOWN,
} FmMapMarkKind;

typedef struct {
  FmMapMarkKind kind;
  int number;        /* of the version; 0 for the others */
  gint64 version_id; /* 0 for the others */
  double x[FM_MIX_MAX_COMPONENTS];
  guint n_values;             /* measured of that version */
  double measured;            /* plain mean of those; NaN for the others */
  FmMixPrediction prediction; /* NaN where the map does not predict */
} FmMapMark;

/** FmMapMark: versions by number, then the proposed ones. @fit: has a model. (transfer full) */
GArray *fm_map_marks_new (FmMapDocument *document, const FmMapFit *fit);
/** "Version 3", "Predicted best" ... Returns: (transfer full). */
char *fm_map_mark_name (const FmMapMark *self);
/** A sentence about it. Returns: (transfer full). */
char *fm_map_mark_text (const FmMapMark *self, FmMapDocument *document, FmMapResponse response);
/** A table for marks, and a row of it. (transfer full) */
FmChartTable *fm_map_marks_table_new (void);
void fm_map_mark_add_row (const FmMapMark *self,
                          FmMapDocument *document,
                          FmMapResponse response,
                          FmChartTable *table);

G_END_DECLS
