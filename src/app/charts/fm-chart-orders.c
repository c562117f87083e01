/* fm-chart-orders.c - each taster's order of the samples, side by side */
#include "app/charts/fm-chart-orders.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/charts/fm-chart-text.h"
#include "core/base/fm-chart-scale.h"

#define TASTER_PX 64
#define PLACE_PX 34
#define HEAD_PX 28
#define MARGIN_PX 32
#define MARK_PX 10

struct _FmChartOrders {
  GtkWidget parent_instance;

  FmRankTable *ranks; /* NULL = nothing yet */
  GStrv tasters;
};

G_DEFINE_FINAL_TYPE (FmChartOrders, fm_chart_orders, GTK_TYPE_WIDGET)

/* Every sample has a letter. */
G_STATIC_ASSERT (FM_RANK_MAX_SAMPLES <= 26);

/* The middle of the places that a sample shares with those tied with it, 0 based. */
static double
mid_place (const FmRankTable *ranks, guint taster, guint sample)
{
  const double own = fm_rank_table_get (ranks, taster, sample);
  guint before = 0;
  guint tied = 0;

  for (guint i = 0; i < ranks->n_samples; i++) {
    const double other = fm_rank_table_get (ranks, taster, i);

    before += other < own;
    tied += other == own;
  }
  return before + (tied - 1) / 2.0;
}

/* Tied samples stand side by side. */
static int
side_shift (const FmRankTable *ranks, guint taster, guint sample)
{
  const double own = fm_rank_table_get (ranks, taster, sample);
  int before = 0;
  int tied = 0;

  for (guint i = 0; i < ranks->n_samples; i++) {
    const gboolean same = fm_rank_table_get (ranks, taster, i) == own;

    tied += same;
    before += same && i < sample;
  }
  return (2 * before - (tied - 1)) * MARK_PX;
}

static gboolean
find_mark (FmChartOrders *self, guint taster, guint sample, double *x, double *y)
{
  const double width = gtk_widget_get_width (GTK_WIDGET (self));
  const guint n = self->ranks->n_tasters;
  const double step = n > 1 ? (width - 2 * MARGIN_PX) / (n - 1) : 0;

  if (isnan (fm_rank_table_get (self->ranks, taster, sample)))
    return FALSE;
  *x = MARGIN_PX + taster * step + side_shift (self->ranks, taster, sample);
  *y = HEAD_PX + (mid_place (self->ranks, taster, sample) + 0.5) * PLACE_PX;
  return TRUE;
}

static void
draw_lines (FmChartOrders *self, cairo_t *cr, guint sample, const GdkRGBA *ink)
{
  double x, y;
  gboolean started = FALSE;

  cairo_set_source_rgba (cr, ink->red, ink->green, ink->blue, 0.5);
  cairo_set_line_width (cr, 1.5);
  cairo_new_path (cr);
  for (guint taster = 0; taster < self->ranks->n_tasters; taster++) {
    if (!find_mark (self, taster, sample, &x, &y))
      continue;
    if (started)
      cairo_line_to (cr, x, y);
    else
      cairo_move_to (cr, x, y);
    started = TRUE;
  }
  cairo_stroke (cr);
}

static void
draw_marks (
    FmChartOrders *self, cairo_t *cr, guint sample, const GdkRGBA *ink, const GdkRGBA *ground)
{
  double x, y;

  for (guint taster = 0; taster < self->ranks->n_tasters; taster++) {
    if (!find_mark (self, taster, sample, &x, &y))
      continue;
    gdk_cairo_set_source_rgba (cr, ground);
    cairo_arc (cr, x, y, MARK_PX, 0, 2 * G_PI);
    cairo_fill_preserve (cr);
    gdk_cairo_set_source_rgba (cr, ink);
    cairo_set_line_width (cr, 1);
    cairo_stroke (cr);
    fm_chart_text_draw (GTK_WIDGET (self), cr, fm_chart_letter (sample), x, y, 0.5, 0);
  }
}

static void
draw_heads (FmChartOrders *self, cairo_t *cr, const GdkRGBA *ink)
{
  const guint n = self->ranks->n_tasters;
  const double width = gtk_widget_get_width (GTK_WIDGET (self));
  const double step = n > 1 ? (width - 2 * MARGIN_PX) / (n - 1) : 0;

  gdk_cairo_set_source_rgba (cr, ink);
  for (guint taster = 0; taster < n; taster++)
    fm_chart_text_draw (GTK_WIDGET (self), cr, self->tasters[taster], MARGIN_PX + taster * step,
                        HEAD_PX / 2.0, 0.5, n > 1 ? MIN ((int)step - 4, 2 * MARGIN_PX) : 0);
}

static void
fm_chart_orders_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  FmChartOrders *self = FM_CHART_ORDERS (widget);
  GtkStyleContext *style = gtk_widget_get_style_context (widget);
  GdkRGBA ink;
  GdkRGBA ground;
  cairo_t *cr;

  if (self->ranks == NULL)
    return;
  gtk_style_context_get_color (style, &ink);
  if (!gtk_style_context_lookup_color (style, "window_bg_color", &ground))
    ground = (GdkRGBA){ 1 - ink.red, 1 - ink.green, 1 - ink.blue, 1 };
  cr = gtk_snapshot_append_cairo (snapshot,
                                  &GRAPHENE_RECT_INIT (0, 0, (float)gtk_widget_get_width (widget),
                                                       (float)gtk_widget_get_height (widget)));
  draw_heads (self, cr, &ink);
  for (guint sample = 0; sample < self->ranks->n_samples; sample++)
    draw_lines (self, cr, sample, &ink);
  for (guint sample = 0; sample < self->ranks->n_samples; sample++)
    draw_marks (self, cr, sample, &ink, &ground);
  cairo_destroy (cr);
}

static void
fm_chart_orders_measure (GtkWidget *widget,
                         GtkOrientation orientation,
                         int for_size,
                         int *minimum,
                         int *natural,
                         int *minimum_baseline,
                         int *natural_baseline)
{
  const FmRankTable *ranks = FM_CHART_ORDERS (widget)->ranks;
  const int width = ranks != NULL ? TASTER_PX * ((int)ranks->n_tasters - 1) + 2 * MARGIN_PX : 0;
  const int height = ranks != NULL ? HEAD_PX + PLACE_PX * (int)ranks->n_samples : 0;

  *minimum = *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? width : height;
}

static void
clear (FmChartOrders *self)
{
  g_clear_pointer (&self->ranks, fm_rank_table_free);
  g_clear_pointer (&self->tasters, g_strfreev);
}

static void
fm_chart_orders_finalize (GObject *object)
{
  clear (FM_CHART_ORDERS (object));
  G_OBJECT_CLASS (fm_chart_orders_parent_class)->finalize (object);
}

static void
fm_chart_orders_class_init (FmChartOrdersClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = fm_chart_orders_finalize;
  widget_class->snapshot = fm_chart_orders_snapshot;
  widget_class->measure = fm_chart_orders_measure;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
fm_chart_orders_init (FmChartOrders *self)
{
}

GtkWidget *
fm_chart_orders_new (void)
{
  return g_object_new (FM_TYPE_CHART_ORDERS, NULL);
}

static FmRankTable *
copy_table (const FmRankTable *ranks)
{
  FmRankTable *copy = fm_rank_table_new (ranks->n_tasters, ranks->n_samples);

  for (guint taster = 0; taster < ranks->n_tasters; taster++)
    for (guint sample = 0; sample < ranks->n_samples; sample++)
      fm_rank_table_set (copy, taster, sample, fm_rank_table_get (ranks, taster, sample));
  return copy;
}

/* Next larger place than @after; NaN when there is none. */
static double
next_place (const FmRankTable *ranks, guint taster, double after)
{
  double next = NAN;

  for (guint i = 0; i < ranks->n_samples; i++) {
    const double value = fm_rank_table_get (ranks, taster, i);

    if (!isnan (value) && value > after && (isnan (next) || value < next))
      next = value;
  }
  return next;
}

char *
fm_chart_orders_text (const FmRankTable *ranks, guint taster, const char *const *labels)
{
  GString *text = g_string_new (NULL);

  for (double place = next_place (ranks, taster, -INFINITY); !isnan (place);
       place = next_place (ranks, taster, place)) {
    gboolean is_first = TRUE;

    if (text->len > 0)
      g_string_append (text, _ (", then "));
    for (guint i = 0; i < ranks->n_samples; i++) {
      if (fm_rank_table_get (ranks, taster, i) != place)
        continue;
      if (!is_first)
        g_string_append (text, _ (" and "));
      g_string_append (text, labels[i]);
      is_first = FALSE;
    }
  }
  return g_string_free (text, FALSE);
}

static char *
describe (FmChartOrders *self, const char *const *labels)
{
  GString *text = g_string_new (NULL);

  for (guint taster = 0; taster < self->ranks->n_tasters; taster++) {
    g_autofree char *order = fm_chart_orders_text (self->ranks, taster, labels);

    g_string_append_printf (text, "%s%s: %s", taster > 0 ? "; " : "", self->tasters[taster], order);
  }
  return g_string_free (text, FALSE);
}

void
fm_chart_orders_set (FmChartOrders *self,
                     const FmRankTable *ranks,
                     const char *const *tasters,
                     const char *const *labels)
{
  g_autofree char *description = NULL;

  g_return_if_fail (FM_IS_CHART_ORDERS (self));
  clear (self);
  self->ranks = copy_table (ranks);
  self->tasters = g_strdupv ((char **)tasters);
  description = describe (self, labels);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Order of each taster"), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  description, -1);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self), description);
  gtk_widget_queue_resize (GTK_WIDGET (self));
}
