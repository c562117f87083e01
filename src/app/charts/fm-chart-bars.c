/* fm-chart-bars.c - a small bar chart, told apart by pattern and letter, not by colour */
#include "app/charts/fm-chart-bars.h"

#include <math.h>

#include "app/charts/fm-chart-text.h"
#include "core/base/fm-chart-scale.h"
#include "core/base/fm-number.h"

#define MAX_BARS 8
#define MAX_TICKS 4
#define MIN_SLOT_PX 38.0
#define PLOT_HEIGHT_PX 92
#define GAP_PX 4.0
#define HATCH_PX 5.0

struct _FmChartBars {
  GtkWidget parent_instance;

  guint n;
  int decimals;
  gboolean with_sign;
  double values[MAX_BARS];
  char *letters[MAX_BARS];
  FmChartScale scale;
};

G_DEFINE_FINAL_TYPE (FmChartBars, fm_chart_bars, GTK_TYPE_WIDGET)

/** Where things go in one frame. */
typedef struct {
  double left;
  double right;
  double top;    /* of the axis */
  double bottom; /* of the axis */
  double line_height;
} Frame;

/* @y: the top of the line; @align as of fm_chart_text_draw() */
static void
draw_text (FmChartBars *self, cairo_t *cr, const char *text, double x, double y, double align)
{
  int height;

  fm_chart_text_size (GTK_WIDGET (self), text, NULL, &height);
  fm_chart_text_draw (GTK_WIDGET (self), cr, text, x, y + height / 2.0, align, 0);
}

static char *
tick_text (FmChartBars *self, guint index)
{
  return fm_number_format (fm_chart_scale_tick (&self->scale, index), self->scale.decimals);
}

static double
tick_width (FmChartBars *self)
{
  int widest = 0;

  for (guint i = 0; i < self->scale.n_ticks; i++) {
    g_autofree char *text = tick_text (self, i);
    int width;

    fm_chart_text_size (GTK_WIDGET (self), text, &width, NULL);
    widest = MAX (widest, width);
  }
  return widest;
}

static double
line_height (FmChartBars *self)
{
  int height;

  fm_chart_text_size (GTK_WIDGET (self), "0", NULL, &height);
  return height;
}

static Frame
make_frame (FmChartBars *self)
{
  Frame frame;
  double height = gtk_widget_get_height (GTK_WIDGET (self));

  frame.line_height = line_height (self);
  frame.left = tick_width (self) + 2.0 * GAP_PX;
  frame.right = gtk_widget_get_width (GTK_WIDGET (self));
  /* Room for the number above the tallest bar, and for numbers below zero and the letters. */
  frame.top = frame.line_height + 2.0;
  frame.bottom = height - frame.line_height - 2.0 - (self->scale.min < 0.0 ? frame.line_height : 0);
  return frame;
}

static void
draw_axis (FmChartBars *self, cairo_t *cr, const Frame *frame, const GdkRGBA *ink)
{
  for (guint i = 0; i < self->scale.n_ticks; i++) {
    double tick = fm_chart_scale_tick (&self->scale, i);
    double y = fm_chart_scale_place (&self->scale, tick, frame->bottom, frame->top);
    g_autofree char *text = tick_text (self, i);
    gboolean is_zero = fabs (tick) < self->scale.step / 2.0;

    cairo_set_source_rgba (cr, ink->red, ink->green, ink->blue, is_zero ? 0.9 : 0.2);
    cairo_set_line_width (cr, 1.0);
    cairo_move_to (cr, frame->left, round (y) + 0.5);
    cairo_line_to (cr, frame->right, round (y) + 0.5);
    cairo_stroke (cr);
    gdk_cairo_set_source_rgba (cr, ink);
    draw_text (self, cr, text, frame->left - GAP_PX, y - frame->line_height / 2.0, 1.0);
  }
}

/* Eight fills that stay apart in print and for every kind of eye. */
static const struct {
  gboolean solid, rising, falling, flat, upright, dotted;
} patterns[MAX_BARS] = {
  { .solid = TRUE }, { .solid = FALSE },  { .rising = TRUE },  { .dotted = TRUE },
  { .flat = TRUE },  { .falling = TRUE }, { .upright = TRUE }, { .rising = TRUE, .falling = TRUE },
};

static void
draw_lines (cairo_t *cr, const cairo_rectangle_t *bar, double dx, double dy)
{
  double reach = bar->width + bar->height;

  for (double at = -reach; at < reach; at += HATCH_PX) {
    if (dx > 0.0)
      cairo_move_to (cr, bar->x, bar->y + at);
    else
      cairo_move_to (cr, bar->x + at, bar->y);
    cairo_rel_line_to (cr, dx * reach, dy * reach);
  }
  cairo_stroke (cr);
}

static void
draw_dots (cairo_t *cr, const cairo_rectangle_t *bar)
{
  for (double y = bar->y + 2.0; y < bar->y + bar->height; y += HATCH_PX)
    for (double x = bar->x + 2.0; x < bar->x + bar->width; x += HATCH_PX)
      cairo_rectangle (cr, x, y, 1.8, 1.8);
  cairo_fill (cr);
}

static void
draw_fill (cairo_t *cr, const cairo_rectangle_t *bar, guint index)
{
  cairo_save (cr);
  cairo_rectangle (cr, bar->x, bar->y, bar->width, bar->height);
  cairo_clip (cr);
  cairo_set_line_width (cr, 1.2);
  if (patterns[index].solid)
    cairo_paint (cr);
  if (patterns[index].rising)
    draw_lines (cr, bar, 1.0, -1.0);
  if (patterns[index].falling)
    draw_lines (cr, bar, 1.0, 1.0);
  if (patterns[index].flat)
    draw_lines (cr, bar, 1.0, 0.0);
  if (patterns[index].upright)
    draw_lines (cr, bar, 0.0, 1.0);
  if (patterns[index].dotted)
    draw_dots (cr, bar);
  cairo_restore (cr);
  cairo_set_line_width (cr, 1.5);
  cairo_rectangle (cr, bar->x, bar->y, bar->width, bar->height);
  cairo_stroke (cr);
}

static char *
value_text (FmChartBars *self, guint index)
{
  double value = self->values[index];
  g_autofree char *number = NULL;

  if (!isfinite (value))
    return g_strdup ("?");
  number = fm_number_format (value, self->decimals);
  return self->with_sign && value > 0.0 ? g_strconcat ("+", number, NULL)
                                        : g_steal_pointer (&number);
}

static void
draw_bar (FmChartBars *self, cairo_t *cr, const Frame *frame, guint index)
{
  double value = isfinite (self->values[index]) ? self->values[index] : 0.0;
  double zero_y = fm_chart_scale_place (&self->scale, 0.0, frame->bottom, frame->top);
  double value_y = fm_chart_scale_place (&self->scale, value, frame->bottom, frame->top);
  cairo_rectangle_t bar = { .y = MIN (zero_y, value_y), .height = fabs (value_y - zero_y) };
  g_autofree char *text = value_text (self, index);
  double middle;

  fm_chart_bar_slot (index, self->n, frame->right - frame->left, &bar.x, &bar.width);
  bar.x += frame->left;
  middle = bar.x + bar.width / 2.0;
  if (bar.height > 0.0)
    draw_fill (cr, &bar, index);
  draw_text (self, cr, text, middle, value < 0.0 ? value_y : value_y - frame->line_height, 0.5);
  draw_text (self, cr, self->letters[index], middle,
             gtk_widget_get_height (GTK_WIDGET (self)) - frame->line_height, 0.5);
}

static void
fm_chart_bars_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  FmChartBars *self = FM_CHART_BARS (widget);
  graphene_rect_t bounds = GRAPHENE_RECT_INIT (0.0f, 0.0f, (float)gtk_widget_get_width (widget),
                                               (float)gtk_widget_get_height (widget));
  Frame frame = make_frame (self);
  GdkRGBA ink;
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &bounds);

  gtk_style_context_get_color (gtk_widget_get_style_context (widget), &ink);
  draw_axis (self, cr, &frame, &ink);
  for (guint i = 0; i < self->n; i++)
    draw_bar (self, cr, &frame, i);
  cairo_destroy (cr);
}

static void
fm_chart_bars_measure (GtkWidget *widget,
                       GtkOrientation orientation,
                       int for_size,
                       int *minimum,
                       int *natural,
                       int *minimum_baseline,
                       int *natural_baseline)
{
  FmChartBars *self = FM_CHART_BARS (widget);

  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    *minimum = (int)ceil (tick_width (self) + 2.0 * GAP_PX + MIN_SLOT_PX * MAX (self->n, 2));
  else
    *minimum = (int)ceil (PLOT_HEIGHT_PX + 2.0 * line_height (self));
  *natural = *minimum;
}

static void
fm_chart_bars_finalize (GObject *object)
{
  FmChartBars *self = FM_CHART_BARS (object);

  for (guint i = 0; i < MAX_BARS; i++)
    g_free (self->letters[i]);
  G_OBJECT_CLASS (fm_chart_bars_parent_class)->finalize (object);
}

static void
fm_chart_bars_class_init (FmChartBarsClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->finalize = fm_chart_bars_finalize;
  widget_class->snapshot = fm_chart_bars_snapshot;
  widget_class->measure = fm_chart_bars_measure;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
fm_chart_bars_init (FmChartBars *self)
{
  fm_chart_scale_init (&self->scale, self->values, 0, MAX_TICKS);
}

GtkWidget *
fm_chart_bars_new (void)
{
  return g_object_new (FM_TYPE_CHART_BARS, NULL);
}

void
fm_chart_bars_set (FmChartBars *self,
                   const char *title,
                   const char *unit,
                   int decimals,
                   const char *const *letters,
                   const char *const *names,
                   const double *values,
                   guint n,
                   gboolean with_sign)
{
  g_autofree char *description = fm_chart_describe (names, values, n, decimals, unit);

  g_return_if_fail (n <= MAX_BARS);
  self->n = n;
  self->decimals = decimals;
  self->with_sign = with_sign;
  for (guint i = 0; i < n; i++) {
    self->values[i] = values[i];
    g_free (self->letters[i]);
    self->letters[i] = g_strdup (letters[i]);
  }
  fm_chart_scale_init (&self->scale, values, n, MAX_TICKS);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, title,
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, description, -1);
  gtk_widget_queue_resize (GTK_WIDGET (self));
}
