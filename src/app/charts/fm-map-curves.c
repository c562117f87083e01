/* fm-map-curves.c - predicted values along lines through a map */
#include "app/charts/fm-map-curves.h"

#include <math.h>

#include "app/charts/fm-chart-text.h"
#include "core/base/fm-chart-scale.h"
#include "core/base/fm-number.h"

#define MARGIN_END 22
#define MARGIN_TOP 12
#define MARGIN_BOTTOM 40
#define GAP 6
#define MAX_TICKS 6

struct _FmMapCurves {
  GtkWidget parent_instance;

  GPtrArray *curves; /* FmMapCurve; (nullable) */
  GArray *dots;      /* FmMapCurveDot; (nullable) */
  char *x_title;
  FmChartScale x_scale;
  FmChartScale y_scale;
};

G_DEFINE_FINAL_TYPE (FmMapCurves, fm_map_curves, GTK_TYPE_WIDGET)

typedef struct {
  FmMapCurves *self;
  cairo_t *cr;
  double left, right, top, bottom;
  GdkRGBA ink;
  GdkRGBA accent;
} Drawing;

static double
place_x (const Drawing *drawing, double x)
{
  return fm_chart_scale_place (&drawing->self->x_scale, x, drawing->left, drawing->right);
}

static double
place_y (const Drawing *drawing, double y)
{
  return fm_chart_scale_place (&drawing->self->y_scale, y, drawing->bottom, drawing->top);
}

static void
widen (double value, double *low, double *high)
{
  if (isfinite (value)) {
    *low = MIN (*low, value);
    *high = MAX (*high, value);
  }
}

static void
make_scales (FmMapCurves *self)
{
  double x_low = INFINITY, x_high = -INFINITY, y_low = INFINITY, y_high = -INFINITY;

  for (guint i = 0; i < self->curves->len; i++) {
    const FmMapCurve *curve = g_ptr_array_index (self->curves, i);

    for (guint j = 0; j < curve->points->len; j++) {
      const FmMapCurvePoint *point = &g_array_index (curve->points, FmMapCurvePoint, j);

      widen (point->x, &x_low, &x_high);
      widen (point->mean, &y_low, &y_high);
      widen (point->low, &y_low, &y_high);
      widen (point->high, &y_low, &y_high);
    }
  }
  for (guint i = 0; self->dots != NULL && i < self->dots->len; i++) {
    widen (g_array_index (self->dots, FmMapCurveDot, i).x, &x_low, &x_high);
    widen (g_array_index (self->dots, FmMapCurveDot, i).y, &y_low, &y_high);
  }
  fm_chart_scale_init_between (&self->x_scale, isfinite (x_low) ? x_low : 0,
                               isfinite (x_high) ? x_high : 1, MAX_TICKS);
  fm_chart_scale_init_between (&self->y_scale, isfinite (y_low) ? y_low : 0,
                               isfinite (y_high) ? y_high : 1, MAX_TICKS);
}

static char *
tick_text (const FmChartScale *scale, guint index)
{
  return fm_number_format (fm_chart_scale_tick (scale, index), scale->decimals);
}

static int
widest_tick (FmMapCurves *self)
{
  int widest = 0;

  for (guint i = 0; i < self->y_scale.n_ticks; i++) {
    g_autofree char *text = tick_text (&self->y_scale, i);
    int width;

    fm_chart_text_size (GTK_WIDGET (self), text, &width, NULL);
    widest = MAX (widest, width);
  }
  return widest;
}

static void
draw_axes (const Drawing *drawing)
{
  GtkWidget *widget = GTK_WIDGET (drawing->self);
  cairo_t *cr = drawing->cr;
  const FmChartScale *x_scale = &drawing->self->x_scale;
  const FmChartScale *y_scale = &drawing->self->y_scale;

  cairo_set_line_width (cr, 1);
  for (guint i = 0; i < y_scale->n_ticks; i++) {
    g_autofree char *text = tick_text (y_scale, i);
    const double y = floor (place_y (drawing, fm_chart_scale_tick (y_scale, i))) + 0.5;

    cairo_set_source_rgba (cr, drawing->ink.red, drawing->ink.green, drawing->ink.blue, 0.2);
    cairo_move_to (cr, drawing->left, y);
    cairo_line_to (cr, drawing->right, y);
    cairo_stroke (cr);
    gdk_cairo_set_source_rgba (cr, &drawing->ink);
    fm_chart_text_draw (widget, cr, text, drawing->left - GAP, y, 1, 0);
  }
  for (guint i = 0; i < x_scale->n_ticks; i++) {
    g_autofree char *text = tick_text (x_scale, i);

    fm_chart_text_draw (widget, cr, text, place_x (drawing, fm_chart_scale_tick (x_scale, i)),
                        drawing->bottom + 10, 0.5, 0);
  }
  fm_chart_text_draw (widget, cr, drawing->self->x_title, drawing->left, drawing->bottom + 29, 0,
                      (int)(drawing->right - drawing->left));
}

static void
draw_interval (const Drawing *drawing, const FmMapCurve *curve)
{
  const guint n = curve->points->len;

  if (n == 0 || isnan (g_array_index (curve->points, FmMapCurvePoint, 0).low))
    return;
  cairo_new_path (drawing->cr);
  for (guint i = 0; i < 2 * n; i++) {
    const FmMapCurvePoint *point =
        &g_array_index (curve->points, FmMapCurvePoint, i < n ? i : 2 * n - 1 - i);

    cairo_line_to (drawing->cr, place_x (drawing, point->x),
                   place_y (drawing, i < n ? point->low : point->high));
  }
  cairo_close_path (drawing->cr);
  cairo_set_source_rgba (drawing->cr, drawing->ink.red, drawing->ink.green, drawing->ink.blue,
                         0.12);
  cairo_fill (drawing->cr);
}

static void
draw_curve (const Drawing *drawing, const FmMapCurve *curve, guint index)
{
  static const double dashes[][4] = {
    { 1, 0, 1, 0 },  { 8, 4, 8, 4 },   { 2, 3, 2, 3 },
    { 10, 3, 2, 3 }, { 14, 4, 14, 4 }, { 5, 2, 1, 2 },
  };
  const FmMapCurvePoint *last;

  if (curve->points->len == 0)
    return;
  cairo_save (drawing->cr);
  gdk_cairo_set_source_rgba (drawing->cr, &drawing->accent);
  cairo_set_line_width (drawing->cr, 2);
  cairo_set_dash (drawing->cr, dashes[index % G_N_ELEMENTS (dashes)], index == 0 ? 0 : 4, 0);
  cairo_new_path (drawing->cr);
  for (guint i = 0; i < curve->points->len; i++) {
    const FmMapCurvePoint *point = &g_array_index (curve->points, FmMapCurvePoint, i);

    cairo_line_to (drawing->cr, place_x (drawing, point->x), place_y (drawing, point->mean));
  }
  cairo_stroke (drawing->cr);
  cairo_restore (drawing->cr);
  last = &g_array_index (curve->points, FmMapCurvePoint, curve->points->len - 1);
  gdk_cairo_set_source_rgba (drawing->cr, &drawing->ink);
  fm_chart_text_draw (GTK_WIDGET (drawing->self), drawing->cr, curve->letter,
                      place_x (drawing, last->x) + 4, place_y (drawing, last->mean), 0, 0);
}

static void
draw_dots (const Drawing *drawing)
{
  const GArray *dots = drawing->self->dots;

  gdk_cairo_set_source_rgba (drawing->cr, &drawing->ink);
  for (guint i = 0; dots != NULL && i < dots->len; i++) {
    const FmMapCurveDot *dot = &g_array_index (dots, FmMapCurveDot, i);
    g_autofree char *number = g_strdup_printf ("%d", dot->number);
    const double x = place_x (drawing, dot->x);
    const double y = place_y (drawing, dot->y);

    cairo_new_path (drawing->cr);
    cairo_arc (drawing->cr, x, y, 4, 0, 2 * G_PI);
    cairo_fill (drawing->cr);
    fm_chart_text_draw (GTK_WIDGET (drawing->self), drawing->cr, number, x + 6, y - 8, 0, 0);
  }
}

static void
fm_map_curves_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  FmMapCurves *self = FM_MAP_CURVES (widget);
  GtkStyleContext *style = gtk_widget_get_style_context (widget);
  const int width = gtk_widget_get_width (widget);
  const int height = gtk_widget_get_height (widget);
  Drawing drawing = { .self = self };

  if (self->curves == NULL || self->curves->len == 0)
    return;
  drawing.left = widest_tick (self) + 2 * GAP;
  drawing.right = width - MARGIN_END;
  drawing.top = MARGIN_TOP;
  drawing.bottom = height - MARGIN_BOTTOM;
  gtk_style_context_get_color (style, &drawing.ink);
  if (!gtk_style_context_lookup_color (style, "accent_color", &drawing.accent))
    drawing.accent = drawing.ink;
  drawing.cr =
      gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, (float)width, (float)height));
  draw_axes (&drawing);
  for (guint i = 0; i < self->curves->len; i++)
    draw_interval (&drawing, g_ptr_array_index (self->curves, i));
  for (guint i = 0; i < self->curves->len; i++)
    draw_curve (&drawing, g_ptr_array_index (self->curves, i), i);
  draw_dots (&drawing);
  cairo_destroy (drawing.cr);
}

static void
fm_map_curves_measure (GtkWidget *widget,
                       GtkOrientation orientation,
                       int for_size,
                       int *minimum,
                       int *natural,
                       int *minimum_baseline,
                       int *natural_baseline)
{
  *minimum = orientation == GTK_ORIENTATION_HORIZONTAL ? 220 : 200;
  *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? 560 : 240;
}

static void
fm_map_curves_finalize (GObject *object)
{
  FmMapCurves *self = FM_MAP_CURVES (object);

  g_clear_pointer (&self->curves, g_ptr_array_unref);
  g_clear_pointer (&self->dots, g_array_unref);
  g_free (self->x_title);
  G_OBJECT_CLASS (fm_map_curves_parent_class)->finalize (object);
}

static void
fm_map_curves_class_init (FmMapCurvesClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = fm_map_curves_finalize;
  widget_class->snapshot = fm_map_curves_snapshot;
  widget_class->measure = fm_map_curves_measure;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
fm_map_curves_init (FmMapCurves *self)
{
}

FmMapCurve *
fm_map_curve_new (const char *letter)
{
  FmMapCurve *self = g_new0 (FmMapCurve, 1);

  self->letter = g_strdup (letter);
  self->points = g_array_new (FALSE, FALSE, sizeof (FmMapCurvePoint));
  return self;
}

void
fm_map_curve_free (FmMapCurve *self)
{
  g_free (self->letter);
  g_array_unref (self->points);
  g_free (self);
}

void
fm_map_curves_take (FmMapCurves *self,
                    GPtrArray *curves,
                    GArray *dots,
                    const char *x_title,
                    const char *label,
                    const char *description)
{
  g_return_if_fail (FM_IS_MAP_CURVES (self));
  g_clear_pointer (&self->curves, g_ptr_array_unref);
  g_clear_pointer (&self->dots, g_array_unref);
  g_free (self->x_title);
  self->curves = curves;
  self->dots = dots;
  self->x_title = g_strdup (x_title);
  make_scales (self);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, label,
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, description, -1);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self), description);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
