/* fm-fat-bar.c - one horizontal bar that shows which line brings how much of the fat */
#include "app/charts/fm-fat-bar.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "core/base/fm-number.h"

#define BAR_HEIGHT 34
#define GAP 2
#define HATCH_STEP 7
#define N_HATCHES 5

typedef struct {
  char *name;
  double share_pct;
  double fat_g;
} Segment;

struct _FmFatBar {
  GtkWidget parent_instance;

  GArray *segments; /* Segment, only lines with fat */
  GStrv unknown;    /* names of lines whose fat is not known */
};

G_DEFINE_FINAL_TYPE (FmFatBar, fm_fat_bar, GTK_TYPE_WIDGET)

static void
clear_segment (gpointer data)
{
  g_free (((Segment *)data)->name);
}

static void
draw_hatch (cairo_t *cr, guint kind, double x, double width, double height)
{
  cairo_rectangle (cr, x, 0, width, height);
  cairo_clip (cr);
  cairo_set_line_width (cr, 1.0);
  for (double step = -height; step < width + height; step += HATCH_STEP) {
    if (kind == 1 || kind == 3) {
      cairo_move_to (cr, x + step, height);
      cairo_line_to (cr, x + step + height, 0);
    }
    if (kind == 2 || kind == 3) {
      cairo_move_to (cr, x + step, 0);
      cairo_line_to (cr, x + step + height, height);
    }
    if (kind == 4) {
      cairo_move_to (cr, x + step + 0.5, 0);
      cairo_line_to (cr, x + step + 0.5, height);
    }
  }
  cairo_stroke (cr);
}

static GdkRGBA
lookup_colour (GtkWidget *widget, const char *name)
{
  GdkRGBA colour = { 0.5F, 0.5F, 0.5F, 1.0F };

  gtk_style_context_lookup_color (gtk_widget_get_style_context (widget), name, &colour);
  return colour;
}

static void
snapshot_label (
    GtkWidget *widget, GtkSnapshot *snapshot, const Segment *segment, double x, double width)
{
  g_autofree char *share = fm_number_format (segment->share_pct, 0);
  g_autofree char *text = g_strdup_printf ("%s\u00a0%% %s", share, segment->name);
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (widget, text);
  GdkRGBA colour;
  int height = 0;

  if (width < 40.0)
    return;
  gtk_style_context_get_color (gtk_widget_get_style_context (widget), &colour);
  pango_layout_set_ellipsize (layout, PANGO_ELLIPSIZE_END);
  pango_layout_set_width (layout, (int)(width - 12.0) * PANGO_SCALE);
  pango_layout_get_pixel_size (layout, NULL, &height);
  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (
      snapshot, &GRAPHENE_POINT_INIT ((float)x + 6.0F, (float)(BAR_HEIGHT - height) / 2.0F));
  gtk_snapshot_append_layout (snapshot, layout, &colour);
  gtk_snapshot_restore (snapshot);
}

/* The label stands on the card's own colour, so that hatching never runs through the letters. */
static void
snapshot_segment (FmFatBar *self, GtkSnapshot *snapshot, guint index, double x, double width)
{
  const Segment *segment = &g_array_index (self->segments, Segment, index);
  const graphene_rect_t area = GRAPHENE_RECT_INIT ((float)x, 0, (float)width, BAR_HEIGHT);
  GdkRGBA fill = lookup_colour (GTK_WIDGET (self), "accent_bg_color");
  GdkRGBA line = lookup_colour (GTK_WIDGET (self), "accent_color");

  fill.alpha = index % 2 == 0 ? 0.32F : 0.16F;
  line.alpha = 0.38F;
  gtk_snapshot_append_color (snapshot, &fill, &area);
  if (index % N_HATCHES != 0) {
    cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &area);

    gdk_cairo_set_source_rgba (cr, &line);
    draw_hatch (cr, index % N_HATCHES, x, width, BAR_HEIGHT);
    cairo_destroy (cr);
  }
  snapshot_label (GTK_WIDGET (self), snapshot, segment, x, width);
}

static void
fm_fat_bar_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  FmFatBar *self = FM_FAT_BAR (widget);
  const double width = gtk_widget_get_width (widget);
  double x = 0.0;

  for (guint i = 0; i < self->segments->len; i++) {
    const double part = g_array_index (self->segments, Segment, i).share_pct / 100.0 * width;

    if (part > GAP)
      snapshot_segment (self, snapshot, i, x, part - GAP);
    x += part;
  }
}

static void
fm_fat_bar_measure (GtkWidget *widget,
                    GtkOrientation orientation,
                    int for_size,
                    int *minimum,
                    int *natural,
                    int *minimum_baseline,
                    int *natural_baseline)
{
  *minimum = orientation == GTK_ORIENTATION_HORIZONTAL ? 100 : BAR_HEIGHT;
  *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? 400 : BAR_HEIGHT;
}

static char *
describe_segment (const Segment *segment)
{
  g_autofree char *share = fm_number_format (segment->share_pct, 1);
  g_autofree char *fat = fm_number_format (segment->fat_g, 1);

  /* Translators: an ingredient, its share of the blend's fat, its fat in grams. */
  return g_strdup_printf (_ ("%s: %s %% of the fat, %s g"), segment->name, share, fat);
}

static gboolean
query_tooltip_cb (FmFatBar *self, int x, int y, gboolean keyboard, GtkTooltip *tooltip)
{
  const double width = gtk_widget_get_width (GTK_WIDGET (self));
  double right = 0.0;

  for (guint i = 0; i < self->segments->len; i++) {
    const Segment *segment = &g_array_index (self->segments, Segment, i);

    right += segment->share_pct / 100.0 * width;
    if (x < right) {
      g_autofree char *text = describe_segment (segment);

      gtk_tooltip_set_text (tooltip, text);
      return TRUE;
    }
  }
  return FALSE;
}

static void
describe (FmFatBar *self)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < self->segments->len; i++) {
    g_autofree char *part = describe_segment (&g_array_index (self->segments, Segment, i));

    g_string_append_printf (text, "%s%s", i > 0 ? "; " : "", part);
  }
  if (self->unknown != NULL && self->unknown[0] != NULL) {
    g_autofree char *names = g_strjoinv (", ", self->unknown);

    g_string_append_printf (text, "%s", text->len > 0 ? "; " : "");
    g_string_append_printf (text, _ ("fat not known for %s"), names);
  }
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  text->str, -1);
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
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = fm_fat_bar_finalize;
  widget_class->snapshot = fm_fat_bar_snapshot;
  widget_class->measure = fm_fat_bar_measure;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
fm_fat_bar_init (FmFatBar *self)
{
  self->segments = g_array_new (FALSE, FALSE, sizeof (Segment));
  g_array_set_clear_func (self->segments, clear_segment);
  gtk_widget_set_has_tooltip (GTK_WIDGET (self), TRUE);
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
  g_signal_connect (self, "query-tooltip", G_CALLBACK (query_tooltip_cb), NULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Where the fat comes from"), -1);
}

static void
collect_segments (FmFatBar *self,
                  const FmFormula *formula,
                  const FmAnalysis *analysis,
                  GStrvBuilder *unknown)
{
  for (guint i = 0; i < fm_formula_n_lines (formula); i++) {
    const FmFormulaLine *line = fm_formula_line (formula, i);
    Segment segment = { NULL, analysis->line_fat_share_pct[i], analysis->line_fat_g[i] };

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
  describe (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
