/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-fat-bar.c - one horizontal bar that shows which line brings how much of the fat */
#include "app/charts/fm-fat-bar.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "app/charts/fm-chart-hatch.h"
#include "app/widgets/fm-page.h"
#include "core/base/fm-number.h"
#include "core/formula/fm-derivation.h"

#define BAR_HEIGHT 34
#define GAP 2
#define LABEL_PX 6.0
#define SMALLEST_LABELLED_PX 40.0

struct _FmFatBar {
  FmChart parent_instance;

  GArray *segments; /* FmFatSegment, only lines with fat */
  GStrv unknown;    /* names of lines whose fat is not known */
};

G_DEFINE_FINAL_TYPE (FmFatBar, fm_fat_bar, FM_TYPE_CHART)

static void
clear_segment (gpointer data)
{
  g_free (((FmFatSegment *)data)->name);
}

/* The label stands on the ground, so that hatching never runs through the letters. */
static void
draw_label (FmChartCanvas *canvas, const FmFatSegment *segment, const FmBox *box)
{
  g_autofree char *share = fm_number_format (segment->share_pct, 0);
  g_autofree char *text = g_strdup_printf ("%s\u00a0%% %s", share, segment->name);
  const double x = box->x + LABEL_PX;
  const int room = (int)(box->width - 2 * LABEL_PX);
  FmBox patch;

  if (box->width < SMALLEST_LABELLED_PX)
    return;
  patch = fm_chart_canvas_text_box (canvas, text, x, BAR_HEIGHT / 2.0, 0, room);
  patch = fm_box_grown (&patch, 2);
  cairo_new_path (canvas->cr);
  cairo_rectangle (canvas->cr, patch.x, patch.y, patch.width, patch.height);
  fm_chart_canvas_fill_ground (canvas);
  fm_chart_canvas_text (canvas, text, x, BAR_HEIGHT / 2.0, 0, room);
}

void
fm_fat_bar_draw (const FmFatSegment *segments, guint n, FmChartCanvas *canvas)
{
  double x = 0.0;

  for (guint i = 0; i < n; i++) {
    const double part = segments[i].share_pct / 100.0 * canvas->width;
    const FmBox box = { x, 0, part - GAP, BAR_HEIGHT };

    x += part;
    if (part <= GAP)
      continue;
    fm_chart_canvas_set_colour (canvas, &canvas->palette.accent, i % 2 == 0 ? 0.32 : 0.16);
    fm_chart_hatch (canvas, &box, 0);
    fm_chart_canvas_set_colour (canvas, &canvas->palette.accent, 0.45);
    fm_chart_hatch (canvas, &box, 1 + i % (FM_CHART_N_HATCHES - 1));
    draw_label (canvas, &segments[i], &box);
    fm_chart_canvas_mark (canvas, i, &box);
  }
}

static void
draw (FmChart *chart, FmChartCanvas *canvas)
{
  const GArray *segments = FM_FAT_BAR (chart)->segments;

  fm_fat_bar_draw ((const FmFatSegment *)segments->data, segments->len, canvas);
}

static void
get_size (FmChart *chart, GtkOrientation orientation, int *minimum, int *natural)
{
  *minimum = orientation == GTK_ORIENTATION_HORIZONTAL ? 100 : BAR_HEIGHT;
  *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? 400 : BAR_HEIGHT;
}

/* Of the formula of the page, which is the one drawn. */
static char *
derive (FmChart *chart, const char **figure)
{
  GtkWidget *page = gtk_widget_get_ancestor (GTK_WIDGET (chart), FM_TYPE_PAGE);
  FmSession *session = page != NULL ? fm_page_get_session (FM_PAGE (page)) : NULL;

  if (session == NULL || fm_session_get_formula (session) == NULL)
    return NULL;
  *figure = _ ("Fat");
  return fm_derivation_nutrient (fm_session_get_formula (session),
                                 fm_session_get_analysis (session), FM_NUTRIENT_FAT);
}

static FmChartTable *
make_table (FmFatBar *self)
{
  const char *headings[] = { _ ("Ingredient"), _ ("Part of the fat, %"), _ ("Fat, g"), NULL };
  FmChartTable *table = fm_chart_table_new (headings);

  for (guint i = 0; i < self->segments->len; i++) {
    const FmFatSegment *segment = &g_array_index (self->segments, FmFatSegment, i);
    g_autofree char *share = fm_number_format (segment->share_pct, 1);
    g_autofree char *fat = fm_number_format (segment->fat_g, 1);
    const char *cells[] = { segment->name, share, fat, NULL };

    fm_chart_table_add (
        table,
        /* Translators: an ingredient, its share of the blend's fat, its fat in grams. */
        g_strdup_printf (_ ("%s: %s %% of the fat, %s g"), segment->name, share, fat), cells);
  }
  return table;
}

static void
say (FmFatBar *self)
{
  FmChartTable *table = make_table (self);
  g_autoptr (GString) text = g_string_new (NULL);
  g_autofree char *known = fm_chart_table_describe (table);

  g_string_append (text, known);
  if (self->unknown != NULL && self->unknown[0] != NULL) {
    g_autofree char *names = g_strjoinv (", ", self->unknown);

    g_string_append (text, text->len > 0 ? "; " : "");
    g_string_append_printf (text, _ ("fat not known for %s"), names);
  }
  fm_chart_say (FM_CHART (self), _ ("Where the fat comes from"), text->str, table);
}

static void
fm_fat_bar_finalize (GObject *object)
{
  FmFatBar *self = FM_FAT_BAR (object);

  g_array_unref (self->segments);
  g_strfreev (self->unknown);
  G_OBJECT_CLASS (fm_fat_bar_parent_class)->finalize (object);
}

static void
fm_fat_bar_class_init (FmFatBarClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = fm_fat_bar_finalize;
  FM_CHART_CLASS (klass)->draw = draw;
  FM_CHART_CLASS (klass)->get_size = get_size;
  FM_CHART_CLASS (klass)->derive = derive;
}

static void
fm_fat_bar_init (FmFatBar *self)
{
  self->segments = g_array_new (FALSE, FALSE, sizeof (FmFatSegment));
  g_array_set_clear_func (self->segments, clear_segment);
  say (self);
}

static void
collect_segments (FmFatBar *self,
                  const FmFormula *formula,
                  const FmAnalysis *analysis,
                  GStrvBuilder *unknown)
{
  for (guint i = 0; i < fm_formula_n_lines (formula); i++) {
    const FmFormulaLine *line = fm_formula_line (formula, i);
    FmFatSegment segment = { NULL, analysis->line_fat_share_pct[i], analysis->line_fat_g[i] };

    if (isnan (analysis->line_fat_g[i])) {
      if (line->mass_g > 0.0)
        g_strv_builder_add (unknown, line->ingredient->name);
    } else if (segment.share_pct > 0.0) {
      segment.name = g_strdup (line->ingredient->name);
      g_array_append_val (self->segments, segment);
    }
  }
}

void
fm_fat_bar_update (FmFatBar *self, const FmFormula *formula, const FmAnalysis *analysis)
{
  g_autoptr (GStrvBuilder) unknown = g_strv_builder_new ();

  g_return_if_fail (FM_IS_FAT_BAR (self));
  g_array_set_size (self->segments, 0);
  if (formula != NULL && analysis != NULL)
    collect_segments (self, formula, analysis, unknown);
  g_strfreev (self->unknown);
  self->unknown = g_strv_builder_end (unknown);
  say (self);
}
