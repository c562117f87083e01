/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-curves.h - predicted values along lines through a map
 *
 * Curves are told apart by their dashes and the letter at their ends, not by colour.
 */
#pragma once

#include "app/charts/fm-chart.h"

G_BEGIN_DECLS

typedef struct {
  double x;
  double mean;
  double low; /* NaN: no interval drawn */
  double high;
} FmMapCurvePoint;

typedef struct {
  char *letter;
  char *name;
  GArray *points; /* FmMapCurvePoint, by x */
} FmMapCurve;

/** A mark beside the curves. */
typedef struct {
  double x;
  double y;
  int number;
} FmMapCurveDot;

typedef struct {
  GPtrArray *curves; /* FmMapCurve */
  GArray *dots;      /* FmMapCurveDot; (nullable) */
  char *x_title;     /* below the axis */
  int decimals;      /* of the values in words */
} FmMapCurvesData;

#define FM_TYPE_MAP_CURVES (fm_map_curves_get_type ())
G_DECLARE_FINAL_TYPE (FmMapCurves, fm_map_curves, FM, MAP_CURVES, FmChart)

/** @letter: at its end, may be empty; @name: in words. */
FmMapCurve *fm_map_curve_new (const char *letter, const char *name);
void fm_map_curve_free (FmMapCurve *self);
/** @curves, @dots: (transfer full). Returns: (transfer full). */
FmMapCurvesData *
fm_map_curves_data_new (GPtrArray *curves, GArray *dots, const char *x_title, int decimals);
void fm_map_curves_data_free (FmMapCurvesData *self);
/** @data: (transfer full); @label, @description: the chart in words. */
void fm_map_curves_take (FmMapCurves *self,
                         FmMapCurvesData *data,
                         const char *label,
                         const char *description);
/** Where along the axis the picked point or dot lies; NaN when none is picked. */
double fm_map_curves_get_picked_x (FmMapCurves *self);
/** Without a window. */
void fm_map_curves_draw (const FmMapCurvesData *data, FmChartCanvas *canvas);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmMapCurvesData, fm_map_curves_data_free)

G_END_DECLS
