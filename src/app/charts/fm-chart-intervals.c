/* fm-chart-intervals.c - values with their intervals, one a line */
#include "app/charts/fm-chart-intervals.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/charts/fm-chart-text.h"
#include "core/base/fm-chart-scale.h"
#include "core/base/fm-number.h"

#define ROW_PX 28
#define AXIS_PX 24
#define GAP_PX 8
#define MAX_TICKS 6
#define VALUES_PER_ROW 4
/* The labels never take more than this part of the width. */
#define LABEL_PART 0.4

struct _FmChartIntervals {
  GtkWidget parent_instance;

  GArray *rows; /* FmChartInterval */
  FmChartScale scale;
};

G_DEFINE_FINAL_TYPE (FmChartIntervals, fm_chart_intervals, GTK_TYPE_WIDGET)

/** Where values lie in the widget. */
typedef struct {
  double left;
  double right;
  double bottom;
} Frame;

static void
clear_row (gpointer data)
{
  g_free (((FmChartInterval *)data)->label);
}

static const FmChartInterval *
get_row (FmChartIntervals *self, guint index)
{
  return &g_array_index (self->rows, FmChartInterval, index);
}

static Frame
make_frame (FmChartIntervals *self)
{
  GtkWidget *widget = GTK_WIDGET (self);
  const double width = gtk_widget_get_width (widget);
  int widest = 0;

  for (guint i = 0; i < self->rows->len; i++) {
    int label_width;

    fm_chart_text_size (widget, get_row (self, i)->label, &label_width, NULL);
    widest = MAX (widest, label_width);
  }
  return (Frame){ .left = MIN (widest, floor (LABEL_PART * width)) + 2 * GAP_PX,
                  .right = width - 2 * GAP_PX,
                  .bottom = (double)ROW_PX * self->rows->len };
}

static double
to_x (FmChartIntervals *self, const Frame *frame, double value)
{
  return fm_chart_scale_place (&self->scale, value, frame->left, frame->right);
}

static void
draw_axis (FmChartIntervals *self, cairo_t *cr, const Frame *frame, const GdkRGBA *ink)
{
  for (guint i = 0; i < self->scale.n_ticks; i++) {
    const double tick = fm_chart_scale_tick (&self->scale, i);
    const double x = round (to_x (self, frame, tick)) + 0.5;
    g_autofree char *text = fm_number_format (tick, self->scale.decimals);

    cairo_set_source_rgba (cr, ink->red, ink->green, ink->blue, 0.2);
    cairo_set_line_width (cr, 1);
    cairo_move_to (cr, x, 0);
    cairo_line_to (cr, x, frame->bottom);
    cairo_stroke (cr);
    gdk_cairo_set_source_rgba (cr, ink);
    fm_chart_text_draw (GTK_WIDGET (self), cr, text, x, frame->bottom + AXIS_PX / 2.0, 0.5, 0);
  }
}

static void
draw_interval (cairo_t *cr, double low, double high, double y)
{
  cairo_set_line_width (cr, 2);
  cairo_move_to (cr, low, y);
  cairo_line_to (cr, high, y);
  cairo_move_to (cr, low, y - 5);
  cairo_line_to (cr, low, y + 5);
  cairo_move_to (cr, high, y - 5);
  cairo_line_to (cr, high, y + 5);
  cairo_stroke (cr);
}

static void
draw_expected (cairo_t *cr, double x, double y)
{
  cairo_set_line_width (cr, 1.5);
  cairo_move_to (cr, x, y - 6);
  cairo_line_to (cr, x + 6, y);
  cairo_line_to (cr, x, y + 6);
  cairo_line_to (cr, x - 6, y);
  cairo_close_path (cr);
  cairo_stroke (cr);
}

static void
draw_row (FmChartIntervals *self,
          cairo_t *cr,
          const Frame *frame,
          guint index,
          const GdkRGBA *ink,
          const GdkRGBA *accent)
{
  const FmChartInterval *row = get_row (self, index);
  const double y = (index + 0.5) * ROW_PX;

  gdk_cairo_set_source_rgba (cr, ink);
  fm_chart_text_draw (GTK_WIDGET (self), cr, row->label, 0, y, 0, (int)(frame->left - GAP_PX));
  if (!isnan (row->expected))
    draw_expected (cr, to_x (self, frame, row->expected), y);
  gdk_cairo_set_source_rgba (cr, accent);
  if (!isnan (row->low) && !isnan (row->high))
    draw_interval (cr, to_x (self, frame, row->low), to_x (self, frame, row->high), y);
  if (isnan (row->value)) {
    fm_chart_text_draw (GTK_WIDGET (self), cr, "?", frame->left, y, 0, 0);
    return;
  }
  cairo_arc (cr, to_x (self, frame, row->value), y, 4.5, 0, 2 * G_PI);
  cairo_fill (cr);
}

static void
fm_chart_intervals_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  FmChartIntervals *self = FM_CHART_INTERVALS (widget);
  GtkStyleContext *style = gtk_widget_get_style_context (widget);
  const Frame frame = make_frame (self);
  GdkRGBA ink;
  GdkRGBA accent;
  cairo_t *cr;

  if (frame.right <= frame.left)
    return;
  gtk_style_context_get_color (style, &ink);
  if (!gtk_style_context_lookup_color (style, "accent_color", &accent))
    accent = ink;
  cr = gtk_snapshot_append_cairo (snapshot,
                                  &GRAPHENE_RECT_INIT (0, 0, (float)gtk_widget_get_width (widget),
                                                       (float)gtk_widget_get_height (widget)));
  draw_axis (self, cr, &frame, &ink);
  for (guint i = 0; i < self->rows->len; i++)
    draw_row (self, cr, &frame, i, &ink, &accent);
  cairo_destroy (cr);
}

static void
fm_chart_intervals_measure (GtkWidget *widget,
                            GtkOrientation orientation,
                            int for_size,
                            int *minimum,
                            int *natural,
                            int *minimum_baseline,
                            int *natural_baseline)
{
  const int height = ROW_PX * (int)FM_CHART_INTERVALS (widget)->rows->len + AXIS_PX;

  *minimum = orientation == GTK_ORIENTATION_HORIZONTAL ? 200 : height;
  *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? 480 : height;
}

static void
fm_chart_intervals_finalize (GObject *object)
{
  g_array_unref (FM_CHART_INTERVALS (object)->rows);
  G_OBJECT_CLASS (fm_chart_intervals_parent_class)->finalize (object);
}

static void
fm_chart_intervals_class_init (FmChartIntervalsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = fm_chart_intervals_finalize;
  widget_class->snapshot = fm_chart_intervals_snapshot;
  widget_class->measure = fm_chart_intervals_measure;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
fm_chart_intervals_init (FmChartIntervals *self)
{
  self->rows = g_array_new (FALSE, FALSE, sizeof (FmChartInterval));
  g_array_set_clear_func (self->rows, clear_row);
}

GtkWidget *
fm_chart_intervals_new (void)
{
  return g_object_new (FM_TYPE_CHART_INTERVALS, NULL);
}

static char *
describe_row (const FmChartInterval *row, int decimals)
{
  g_autofree char *value = fm_number_format (row->value, decimals);
  g_autofree char *low = fm_number_format (row->low, decimals);
  g_autofree char *high = fm_number_format (row->high, decimals);

  if (isnan (row->low) || isnan (row->high))
    /* Translators: what, then its value */
    return g_strdup_printf (_ ("%s: %s"), row->label, value);
  return g_strdup_printf (_ ("%s: %s, from %s to %s"), row->label, value, low, high);
}

static char *
describe (FmChartIntervals *self, int decimals)
{
  g_autoptr (GPtrArray) parts = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < self->rows->len; i++)
    g_ptr_array_add (parts, describe_row (get_row (self, i), decimals));
  g_ptr_array_add (parts, NULL);
  return g_strjoinv ("; ", (char **)parts->pdata);
}

static void
rescale (FmChartIntervals *self)
{
  const guint n = self->rows->len * VALUES_PER_ROW;
  g_autofree double *values = g_new (double, MAX (n, 1));

  for (guint i = 0; i < self->rows->len; i++) {
    const FmChartInterval *row = get_row (self, i);

    values[VALUES_PER_ROW * i] = row->value;
    values[VALUES_PER_ROW * i + 1] = row->low;
    values[VALUES_PER_ROW * i + 2] = row->high;
    values[VALUES_PER_ROW * i + 3] = row->expected;
  }
  fm_chart_scale_init (&self->scale, values, n, MAX_TICKS);
}

void
fm_chart_intervals_set (FmChartIntervals *self,
                        const char *title,
                        int decimals,
                        const FmChartInterval *rows,
                        guint n_rows)
{
  g_autofree char *description = NULL;

  g_return_if_fail (FM_IS_CHART_INTERVALS (self));
  g_array_set_size (self->rows, 0);
  for (guint i = 0; i < n_rows; i++) {
    FmChartInterval row = rows[i];

    row.label = g_strdup (rows[i].label);
    g_array_append_val (self->rows, row);
  }
  rescale (self);
  description = describe (self, decimals);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, title,
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, description, -1);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self), description);
  gtk_widget_queue_resize (GTK_WIDGET (self));
}
