/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-report-drawings.h - pictures in a report: photos side by side, a map of three components */
#pragma once

#include <gdk-pixbuf/gdk-pixbuf.h>

#include "core/mixture/fm-map.h"
#include "report/fm-batch-sheet.h"

G_BEGIN_DECLS

/** How many photos stand side by side. */
#define FM_REPORT_PHOTOS_IN_ROW 3

/** @data: a photo as it was imported. Upright, small enough for paper; NULL when it cannot be
 * read. Returns: (transfer full). */
GdkPixbuf *fm_report_photo (GBytes *data);
/** A row of photos (GdkPixbuf), at most FM_REPORT_PHOTOS_IN_ROW. @words: (transfer full) */
void fm_report_add_photos (FmBatchSheet *sheet, GPtrArray *photos, char *words);

/** A spot of a map and what stands beside it. */
typedef struct {
  double x[FM_MIX_BLEND_MAX_COMPONENTS]; /* shares of the components */
  char *name;
} FmReportSpot;

/** The triangle of a map of three components. @corners: their names; @spots: (transfer full)
 * FmReportSpot; @words: (transfer full). */
void fm_report_add_triangle (FmBatchSheet *sheet,
                             const char *const *corners,
                             GPtrArray *spots,
                             char *words);
void fm_report_spot_free (FmReportSpot *spot);

G_END_DECLS
