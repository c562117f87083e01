/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-targets-square.c - the Pearson square of two ingredients, as the trade lays it out
 *
 *   fat of A              parts of A = |fat of B - target|
 *             \        /
 *               target
 *             /        \
 *   fat of B              parts of B = |fat of A - target|
 */
#include "app/targets/fm-targets-square.h"

#include <glib/gi18n-lib.h>

#include "app/widgets/fm-newer.h"
#include "app/widgets/fm-widget.h"
#include "core/base/fm-number.h"

struct _FmTargetsSquare {
  GtkWidget parent_instance;

  GtkOverlay *overlay;
  GtkDrawingArea *area;
  GtkLabel *words_label;
};

G_DEFINE_FINAL_TYPE (FmTargetsSquare, fm_targets_square, GTK_TYPE_WIDGET)

/* The diagonals stop short of the numbers: these parts of the way are drawn. */
static const double stretches[][2] = { { 0.28, 0.42 }, { 0.58, 0.72 } };

static void
draw_cb (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer data)
{
  GdkRGBA colour;

  fm_newer_get_colour (GTK_WIDGET (area), &colour);
  colour.alpha *= 0.5F;
  gdk_cairo_set_source_rgba (cr, &colour);
  cairo_set_line_width (cr, 1.0);
  cairo_rectangle (cr, 0.5, 0.5, width - 1.0, height - 1.0);
  for (guint i = 0; i < G_N_ELEMENTS (stretches); i++) {
    const double from = stretches[i][0];
    const double to = stretches[i][1];

    cairo_move_to (cr, from * width, from * height);
    cairo_line_to (cr, to * width, to * height);
    cairo_move_to (cr, from * width, (1.0 - from) * height);
    cairo_line_to (cr, to * width, (1.0 - to) * height);
  }
  cairo_stroke (cr);
}

static void
attach (GtkGrid *grid, int column, int row, const char *text)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_justify (GTK_LABEL (label), GTK_JUSTIFY_CENTER);
  gtk_label_set_width_chars (GTK_LABEL (label), 8);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_grid_attach (grid, label, column, row, 1, 1);
}

static void
attach_side (GtkGrid *grid, int row, const char *name, double fat_pct, double parts)
{
  g_autofree char *fat = fm_number_format_unit (fat_pct, 1, "%");
  g_autofree char *part = fm_number_format (parts, 1);
  g_autofree char *left = g_strdup_printf (_ ("%s\n%s fat"), name, fat);
  g_autofree char *right = g_strdup_printf (_ ("%s parts"), part);

  attach (grid, 0, row, left);
  attach (grid, 2, row, right);
}

static GtkWidget *
make_grid (const char *a_name, const char *b_name, const FmPearson *square)
{
  GtkWidget *grid = gtk_grid_new ();
  g_autofree char *target = fm_number_format_unit (square->target_pct, 1, "%");
  g_autofree char *middle = g_strdup_printf (_ ("target\n%s"), target);

  gtk_grid_set_column_homogeneous (GTK_GRID (grid), TRUE);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 12);
  gtk_widget_set_margin_top (grid, 12);
  gtk_widget_set_margin_bottom (grid, 12);
  attach_side (GTK_GRID (grid), 0, a_name, square->a_pct, square->a_parts);
  attach (GTK_GRID (grid), 1, 1, middle);
  attach_side (GTK_GRID (grid), 2, b_name, square->b_pct, square->b_parts);
  return grid;
}

/* The same in words, for who cannot see the square. */
static char *
describe (const char *a_name, const char *b_name, const FmPearson *square)
{
  g_autofree char *a_parts = fm_number_format (square->a_parts, 1);
  g_autofree char *b_parts = fm_number_format (square->b_parts, 1);
  g_autofree char *a_share = fm_number_format_unit (square->a_share_pct, 1, "%");
  g_autofree char *b_share = fm_number_format_unit (square->b_share_pct, 1, "%");
  g_autofree char *target = fm_number_format_unit (square->target_pct, 1, "%");

  return g_strdup_printf (_ ("%s parts of %s and %s parts of %s make %s fat: %s and %s."), a_parts,
                          a_name, b_parts, b_name, target, a_share, b_share);
}

static void
fm_targets_square_dispose (GObject *object)
{
  fm_widget_drop_template (GTK_WIDGET (object), FM_TYPE_TARGETS_SQUARE);
  G_OBJECT_CLASS (fm_targets_square_parent_class)->dispose (object);
}

static void
fm_targets_square_class_init (FmTargetsSquareClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_targets_square_dispose;
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/targets/fm-targets-square.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmTargetsSquare, overlay);
  gtk_widget_class_bind_template_child (widget_class, FmTargetsSquare, area);
  gtk_widget_class_bind_template_child (widget_class, FmTargetsSquare, words_label);
}

static void
fm_targets_square_init (FmTargetsSquare *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_drawing_area_set_draw_func (self->area, draw_cb, NULL, NULL);
}

GtkWidget *
fm_targets_square_new (const char *a_name, const char *b_name, const FmPearson *square)
{
  FmTargetsSquare *self = g_object_new (FM_TYPE_TARGETS_SQUARE, NULL);
  GtkWidget *grid = make_grid (a_name, b_name, square);
  g_autofree char *words = describe (a_name, b_name, square);

  gtk_overlay_add_overlay (self->overlay, grid);
  gtk_overlay_set_measure_overlay (self->overlay, grid, TRUE);
  gtk_label_set_text (self->words_label, words);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->area), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  words, -1);
  return GTK_WIDGET (self);
}
