/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-formula-page-totals.c - the numbers of the whole blend, as captions with values */
#include "app/formula/fm-formula-page-totals.h"

#include <glib/gi18n-lib.h>

#include "app/formula/fm-head-figures.h"
#include "app/formula/fm-totals-cell.h"
#include "app/session/fm-notebook-settings.h"
#include "app/widgets/fm-brief-target-row.h"
#include "app/widgets/fm-derivation-window.h"
#include "app/widgets/fm-widget.h"
#include "app/widgets/fm-wrap-layout.h"
#include "core/base/fm-number.h"

struct _FmFormulaPageTotals {
  GtkWidget parent_instance;

  GtkWidget *box;
  GtkBox *cells;
  FmTotalsCell **parts; /* one a figure of the table */
  FmTotalsCell *targets[FM_N_TARGETS];
  FmFormula *formula; /* (nullable): shown last */
};

G_DEFINE_FINAL_TYPE (FmFormulaPageTotals, fm_formula_page_totals, GTK_TYPE_WIDGET)

enum {
  TARGET_CHOSEN,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static void
figure_clicked_cb (FmFormulaPageTotals *self, GtkWidget *cell)
{
  guint n;
  const FmHeadFigure *figures = fm_head_figures (&n);

  for (guint i = 0; i < n; i++) {
    g_autofree char *text = NULL;

    if (GTK_WIDGET (self->parts[i]) != cell || self->formula == NULL)
      continue;
    text = fm_head_figure_derivation (&figures[i], self->formula);
    fm_derivation_window_show (GTK_WIDGET (self), fm_totals_cell_get_caption (self->parts[i]),
                               text);
  }
}

/* The number of targets leads to the first of them, set or not. */
static void
target_clicked_cb (FmFormulaPageTotals *self, GtkWidget *cell)
{
  guint kind = 0;

  for (guint i = 0; i < FM_N_TARGETS; i++) {
    if (GTK_WIDGET (self->targets[i]) == cell)
      kind = i;
  }
  g_signal_emit (self, signals[TARGET_CHOSEN], 0, kind);
}

static FmTotalsCell *
add_cell (FmFormulaPageTotals *self, gboolean is_target)
{
  GtkWidget *cell = fm_totals_cell_new (is_target ? 2 : 1);

  if (is_target)
    gtk_widget_set_tooltip_text (cell, _ ("Goes to its band"));
  g_signal_connect_object (
      cell, "clicked", is_target ? G_CALLBACK (target_clicked_cb) : G_CALLBACK (figure_clicked_cb),
      self, G_CONNECT_SWAPPED);
  gtk_box_append (self->cells, cell);
  return FM_TOTALS_CELL (cell);
}

static void
show_figures (FmFormulaPageTotals *self, const FmFormula *formula, const FmAnalysis *analysis)
{
  guint n;
  const FmHeadFigure *figures = fm_head_figures (&n);

  for (guint i = 0; i < n; i++) {
    g_auto (FmHeadText) text = { NULL, NULL, NULL };
    const gboolean is_shown = fm_head_figure_say (&figures[i], formula, analysis, &text);

    gtk_widget_set_visible (GTK_WIDGET (self->parts[i]), is_shown);
    if (is_shown)
      fm_totals_cell_show (self->parts[i], text.caption, text.value, text.note);
  }
}

static void
show_target (FmTotalsCell *cell, FmTargetKind kind, const FmBand *band, double value)
{
  const FmBandState state = fm_band_state (band, value);
  const int decimals = fm_target_info (kind)->limit_decimals;
  const char *unit = fm_notebook_target_unit (kind);
  g_autofree char *now = fm_number_format_unit (value, decimals, unit);
  g_autofree char *words = fm_band_describe (band, value, decimals, unit);
  /* Translators: a target such as "Fat". */
  g_autofree char *caption = g_strdup_printf (_ ("Target: %s"), fm_target_name (kind));
  g_autofree char *tooltip = g_strdup_printf (_ ("%s. Goes to its band."), words);

  gtk_widget_set_visible (GTK_WIDGET (cell), state != FM_BAND_NONE);
  if (state == FM_BAND_NONE)
    return;
  fm_totals_cell_show (cell, caption, now, words);
  fm_totals_cell_set_note_class (cell, fm_band_state_css_class (state));
  gtk_widget_set_tooltip_text (GTK_WIDGET (cell), tooltip);
}

static void
show_targets (FmFormulaPageTotals *self, const FmFormula *formula, const FmAnalysis *analysis)
{
  for (guint i = 0; i < FM_N_TARGETS; i++)
    show_target (self->targets[i], (FmTargetKind)i, &formula->brief->bands[i],
                 fm_analysis_target_value (analysis, formula->brief, (FmTargetKind)i));
}

static void
fm_formula_page_totals_dispose (GObject *object)
{
  g_clear_pointer (&FM_FORMULA_PAGE_TOTALS (object)->formula, fm_formula_free);
  fm_widget_drop_template (GTK_WIDGET (object), FM_TYPE_FORMULA_PAGE_TOTALS);
  g_clear_pointer (&FM_FORMULA_PAGE_TOTALS (object)->parts, g_free);
  G_OBJECT_CLASS (fm_formula_page_totals_parent_class)->dispose (object);
}

static void
fm_formula_page_totals_class_init (FmFormulaPageTotalsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_formula_page_totals_dispose;
  signals[TARGET_CHOSEN] =
      g_signal_new ("target-chosen", FM_TYPE_FORMULA_PAGE_TOTALS, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                    NULL, G_TYPE_NONE, 1, G_TYPE_UINT);
  g_type_ensure (FM_TYPE_WRAP_LAYOUT);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/formula/fm-formula-page-totals.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmFormulaPageTotals, box);
  gtk_widget_class_bind_template_child (widget_class, FmFormulaPageTotals, cells);
}

static void
fm_formula_page_totals_init (FmFormulaPageTotals *self)
{
  guint n;
  const FmHeadFigure *figures = fm_head_figures (&n);

  self->parts = g_new0 (FmTotalsCell *, n);
  gtk_widget_init_template (GTK_WIDGET (self));
  for (guint i = 0; i < n; i++)
    self->parts[i] = add_cell (self, figures[i].leads_to_targets);
  for (guint i = 0; i < FM_N_TARGETS; i++)
    self->targets[i] = add_cell (self, TRUE);
}

void
fm_formula_page_totals_update (FmFormulaPageTotals *self,
                               const FmFormula *formula,
                               const FmAnalysis *analysis)
{
  g_return_if_fail (FM_IS_FORMULA_PAGE_TOTALS (self));
  g_clear_pointer (&self->formula, fm_formula_free);
  self->formula = fm_formula_copy (formula);
  show_figures (self, formula, analysis);
  show_targets (self, formula, analysis);
}
