/* fm-map-curves.h - predicted values along lines through a map
 *
 * Curves are told apart by their dashes and the letter at their ends, not by colour.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

typedef struct {
  double x;
  double mean;
  double low; /* NaN: no interval drawn */
  double high;
} FmMapCurvePoint;

typedef struct {
  char *letter;
  GArray *points; /* FmMapCurvePoint, by x */
} FmMapCurve;

/** A mark beside the curves. */
typedef struct {
  double x;
  double y;
  int number;
} FmMapCurveDot;

#define FM_TYPE_MAP_CURVES (fm_map_curves_get_type ())
G_DECLARE_FINAL_TYPE (FmMapCurves, fm_map_curves, FM, MAP_CURVES, GtkWidget)

FmMapCurve *fm_map_curve_new (const char *letter);
void fm_map_curve_free (FmMapCurve *self);
/**
 * @curves: (transfer full): FmMapCurve
 * @dots: (transfer full) (nullable): FmMapCurveDot
 * @x_title: below the axis; @label, @description: the chart in words
 */
void fm_map_curves_take (FmMapCurves *self,
                         GPtrArray *curves,
                         GArray *dots,
                         const char *x_title,
                         const char *label,
                         const char *description);

G_END_DECLS
