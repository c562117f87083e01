/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-chart-orders.c - each taster's order of the samples, side by side */
#include "app/charts/fm-chart-orders.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-chart-scale.h"
#include "core/base/fm-number.h"

#define TASTER_PX 64
#define PLACE_PX 34
#define HEAD_PX 28
#define MARGIN_PX 32
#define MARK_PX 10
#define GAP_PX 4

struct _FmChartOrders {
  FmChart parent_instance;

  FmRankTable *ranks; /* NULL = nothing yet */
  GStrv tasters;
};

G_DEFINE_FINAL_TYPE (FmChartOrders, fm_chart_orders, FM_TYPE_CHART)

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

static double
taster_x (const FmRankTable *ranks, const FmChartCanvas *canvas, guint taster)
{
  const double room = canvas->width - 2 * MARGIN_PX;

  return MARGIN_PX + (ranks->n_tasters > 1 ? taster * room / (ranks->n_tasters - 1) : 0);
}

static gboolean
find_mark (const FmRankTable *ranks,
           const FmChartCanvas *canvas,
           guint taster,
           guint sample,
           double *x,
           double *y)
{
  if (isnan (fm_rank_table_get (ranks, taster, sample)))
    return FALSE;
  *x = taster_x (ranks, canvas, taster) + side_shift (ranks, taster, sample);
  *y = HEAD_PX + (mid_place (ranks, taster, sample) + 0.5) * PLACE_PX;
  return TRUE;
}

static void
draw_lines (const FmRankTable *ranks, FmChartCanvas *canvas, guint sample)
{
  double x, y;

  fm_chart_canvas_set_colour (canvas, &canvas->palette.ink, 0.5);
  cairo_set_line_width (canvas->cr, 1.5);
  cairo_new_path (canvas->cr);
  for (guint taster = 0; taster < ranks->n_tasters; taster++)
    if (find_mark (ranks, canvas, taster, sample, &x, &y))
      cairo_line_to (canvas->cr, x, y);
  cairo_stroke (canvas->cr);
}

static void
draw_mark (const FmRankTable *ranks, FmChartCanvas *canvas, guint taster, guint sample)
{
  double x, y;

  if (!find_mark (ranks, canvas, taster, sample, &x, &y))
    return;
  fm_chart_canvas_circle (canvas, x, y, MARK_PX);
  fm_chart_canvas_fill_ground (canvas);
  fm_chart_canvas_set_colour (canvas, &canvas->palette.ink, 1);
  cairo_set_line_width (canvas->cr, 1);
  cairo_stroke (canvas->cr);
  fm_chart_canvas_text (canvas, fm_chart_letter (sample), x, y, 0.5, 0);
  fm_chart_canvas_mark (canvas, taster * ranks->n_samples + sample,
                        &(FmBox){ x - MARK_PX, y - MARK_PX, 2 * MARK_PX, 2 * MARK_PX });
}

void
fm_chart_orders_draw (const FmRankTable *ranks, const char *const *tasters, FmChartCanvas *canvas)
{
  const guint n = ranks->n_tasters;
  const int step = n > 1 ? (int)(taster_x (ranks, canvas, 1) - taster_x (ranks, canvas, 0)) : 0;

  for (guint taster = 0; taster < n; taster++)
    fm_chart_canvas_text (canvas, tasters[taster], taster_x (ranks, canvas, taster), HEAD_PX / 2.0,
                          0.5, n > 1 ? MAX (step - GAP_PX, 1) : 0);
  for (guint sample = 0; sample < ranks->n_samples; sample++)
    draw_lines (ranks, canvas, sample);
  for (guint taster = 0; taster < n; taster++)
    for (guint sample = 0; sample < ranks->n_samples; sample++)
      draw_mark (ranks, canvas, taster, sample);
}

static void
draw (FmChart *chart, FmChartCanvas *canvas)
{
  const FmChartOrders *self = FM_CHART_ORDERS (chart);

  fm_chart_orders_draw (self->ranks, (const char *const *)self->tasters, canvas);
}

/* The most samples that stand side by side at one place. */
static guint
most_tied (const FmRankTable *ranks)
{
  guint most = 1;

  for (guint taster = 0; taster < ranks->n_tasters; taster++) {
    for (guint sample = 0; sample < ranks->n_samples; sample++) {
      const double own = fm_rank_table_get (ranks, taster, sample);
      guint tied = 0;

      for (guint i = 0; i < ranks->n_samples; i++)
        tied += fm_rank_table_get (ranks, taster, i) == own;
      most = MAX (most, tied);
    }
  }
  return most;
}

static void
get_size (FmChart *chart, GtkOrientation orientation, int *minimum, int *natural)
{
  const FmRankTable *ranks = FM_CHART_ORDERS (chart)->ranks;
  const int taster_px =
      ranks != NULL ? MAX (TASTER_PX, 2 * MARK_PX * (int)most_tied (ranks) + GAP_PX) : 0;

  if (ranks == NULL)
    *minimum = 0;
  else if (orientation == GTK_ORIENTATION_HORIZONTAL)
    *minimum = taster_px * ((int)ranks->n_tasters - 1) + 2 * MARGIN_PX;
  else
    *minimum = HEAD_PX + PLACE_PX * (int)ranks->n_samples;
  *natural = *minimum;
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
  G_OBJECT_CLASS (klass)->finalize = fm_chart_orders_finalize;
  FM_CHART_CLASS (klass)->draw = draw;
  FM_CHART_CLASS (klass)->get_size = get_size;
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

/* One row for each taster and sample, in the order of the marks. */
static FmChartTable *
make_table (FmChartOrders *self, const char *const *labels)
{
  const char *headings[] = { _ ("Taster"), _ ("Sample"), _ ("Place"), NULL };
  FmChartTable *table = fm_chart_table_new (headings);

  for (guint taster = 0; taster < self->ranks->n_tasters; taster++) {
    for (guint sample = 0; sample < self->ranks->n_samples; sample++) {
      const gboolean is_known = !isnan (fm_rank_table_get (self->ranks, taster, sample));
      g_autofree char *place =
          is_known ? fm_number_to_edit (mid_place (self->ranks, taster, sample) + 1, 1)
                   : g_strdup (_ ("not known"));
      const char *cells[] = { self->tasters[taster], labels[sample], place, NULL };

      fm_chart_table_add (table,
                          /* Translators: a taster, a sample, the place it was given. */
                          g_strdup_printf (_ ("%s: %s, place %s"), cells[0], cells[1], cells[2]),
                          cells);
    }
  }
  return table;
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
  fm_chart_say (FM_CHART (self), _ ("Order of each taster"), description,
                make_table (self, labels));
  gtk_widget_queue_resize (GTK_WIDGET (self));
}
