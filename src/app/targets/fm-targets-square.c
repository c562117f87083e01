/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-targets-square.c - the Pearson square of two ingredients, drawn and in words */
#include "app/targets/fm-targets-square.h"

#include <glib/gi18n-lib.h>

#include "app/charts/fm-chart-square.h"
#include "app/widgets/fm-widget.h"
#include "core/base/fm-number.h"

struct _FmTargetsSquare {
  GtkWidget parent_instance;

  FmChartSquare *chart;
  GtkLabel *words_label;
};

G_DEFINE_FINAL_TYPE (FmTargetsSquare, fm_targets_square, GTK_TYPE_WIDGET)

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
  g_type_ensure (FM_TYPE_CHART_SQUARE);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/targets/fm-targets-square.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmTargetsSquare, chart);
  gtk_widget_class_bind_template_child (widget_class, FmTargetsSquare, words_label);
}

static void
fm_targets_square_init (FmTargetsSquare *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

GtkWidget *
fm_targets_square_new (const char *a_name, const char *b_name, const FmPearson *square)
{
  FmTargetsSquare *self = g_object_new (FM_TYPE_TARGETS_SQUARE, NULL);
  g_autofree char *words = describe (a_name, b_name, square);

  fm_chart_square_set (self->chart, a_name, b_name, square, words);
  gtk_label_set_text (self->words_label, words);
  return GTK_WIDGET (self);
}
