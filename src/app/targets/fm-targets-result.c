/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-targets-result.c - the new blend beside the old, or why there is none */
#include "app/targets/fm-targets-result.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/session/fm-notebook-settings.h"
#include "app/targets/fm-targets-square.h"
#include "core/targets/fm-targets-chance.h"
#include "app/targets/fm-targets-text.h"
#include "app/widgets/fm-widget.h"
#include "core/formula/fm-analysis.h"
#include "core/base/fm-number.h"

struct _FmTargetsResultView {
  GtkWidget parent_instance;

  GtkBox *box;
};

G_DEFINE_FINAL_TYPE (FmTargetsResultView, fm_targets_result_view, GTK_TYPE_WIDGET)

/* What is shown; lives for one call. */
typedef struct {
  const FmTargets *targets;
  const FmTargetsResult *result;
  const FmFormula *before;
  FmFormula *after;
  double limit_pct;
} Shown;

static GtkWidget *
make_label (const char *text)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0F);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  return label;
}

static void
append_text (FmTargetsResultView *self, const char *text)
{
  if (text != NULL && *text != '\0')
    gtk_box_append (self->box, make_label (text));
}

static void
append_heading (FmTargetsResultView *self, const char *text)
{
  GtkWidget *label = make_label (text);

  gtk_widget_add_css_class (label, "heading");
  gtk_widget_set_margin_top (label, 6);
  gtk_box_append (self->box, label);
}

static char *
share_and_mass (double mass_g, double total_g, double scale_step_g)
{
  g_autofree char *share = fm_number_format_unit (100.0 * mass_g / total_g, 1, "%");
  g_autofree char *mass = fm_notebook_text (FM_MEASURE_MASS, mass_g, scale_step_g >= 1.0 ? 0 : 1);

  return g_strdup_printf ("%s\n%s", share, mass);
}

static void
attach (GtkGrid *grid, int column, int row, const char *text, const char *css_class)
{
  GtkWidget *label = make_label (text);

  if (column > 0) {
    gtk_label_set_xalign (GTK_LABEL (label), 1.0F);
    gtk_label_set_justify (GTK_LABEL (label), GTK_JUSTIFY_RIGHT);
    gtk_label_set_wrap (GTK_LABEL (label), FALSE);
    gtk_widget_add_css_class (label, "numeric");
  } else {
    gtk_widget_set_hexpand (label, TRUE);
  }
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);
  gtk_grid_attach (grid, label, column, row, 1, 1);
}

static void
attach_candidate (GtkGrid *grid, const Shown *shown, guint i)
{
  const FmCandidate *candidate = g_ptr_array_index (shown->targets->candidates, i);
  const double before_g = fm_formula_total_g (shown->before);
  const double step_g = shown->targets->scale_step_g;
  const gboolean was_in = before_g > 0.0 && candidate->current_g > 0.0;
  g_autofree char *old =
      was_in ? share_and_mass (candidate->current_g, before_g, 0.0) : g_strdup ("—");
  g_autofree char *new = share_and_mass (shown->result->mass_g[i], shown->result->total_g, step_g);

  attach (grid, 0, (int)i + 1, candidate->ingredient->name, NULL);
  attach (grid, 1, (int)i + 1, old, "dim-label");
  attach (grid, 2, (int)i + 1, new, NULL);
}

static void
append_table (FmTargetsResultView *self, const Shown *shown)
{
  GtkWidget *grid = gtk_grid_new ();

  gtk_grid_set_row_spacing (GTK_GRID (grid), 6);
  gtk_grid_set_column_spacing (GTK_GRID (grid), 18);
  attach (GTK_GRID (grid), 0, 0, _ ("Ingredient"), "caption-heading");
  attach (GTK_GRID (grid), 1, 0, _ ("Now"), "caption-heading");
  attach (GTK_GRID (grid), 2, 0, _ ("New"), "caption-heading");
  for (guint i = 0; i < shown->result->n_candidates; i++)
    attach_candidate (GTK_GRID (grid), shown, i);
  gtk_box_append (self->box, grid);
}

static void
append_summary (FmTargetsResultView *self, const Shown *shown)
{
  g_autoptr (FmAnalysis) before = fm_analysis_new (shown->before);
  g_autoptr (FmAnalysis) after = fm_analysis_new (shown->after);
  g_autofree char *old_point = fm_lean_point_format (before->fat_pct);
  g_autofree char *new_point = fm_lean_point_format (after->fat_pct);
  g_autofree char *mass = fm_notebook_text (FM_MEASURE_MASS, shown->result->total_g, 1);
  g_autofree char *text =
      g_strdup_printf (_ ("New lean point %s (now %s), %s in all."), new_point, old_point, mass);

  append_text (self, text);
  append_text (self, shown->result->sentence);
  append_text (self, shown->result->scale_note);
  append_text (self, shown->result->rounding_note);
}

static void
append_targets (FmTargetsResultView *self, const Shown *shown)
{
  append_heading (self, _ ("Targets"));
  for (guint i = 0; i < shown->result->n_rows; i++) {
    g_autofree char *text = fm_targets_text_row (shown->targets, shown->result, i);

    append_text (self, text);
  }
}

static void
append_cost (FmTargetsResultView *self, const Shown *shown)
{
  g_autofree char *cost = fm_targets_text_cost (shown->result->cost_per_kg);

  append_heading (self, _ ("Cost"));
  append_text (self, cost);
  if (!isnan (shown->result->cost_per_kg))
    append_text (self, _ ("What a change does to it, the other shares following the aim:"));
  for (guint i = 0; i < shown->result->n_candidates; i++) {
    g_autofree char *text = fm_targets_text_share_cost (shown->targets, shown->result, i);

    append_text (self, text);
  }
  for (guint i = 0; i < shown->result->n_rows; i++) {
    g_autofree char *text = fm_targets_text_limit_cost (shown->targets, shown->result, i);

    append_text (self, text);
  }
}

/* The square aims at the fat of the exact shares, before the scale rounds them. */
static void
append_square (FmTargetsResultView *self, const Shown *shown)
{
  const FmCandidate *a = NULL;
  const FmCandidate *b = NULL;
  FmPearson square = { 0 };
  guint ia = 0;
  guint ib = 0;
  double target_pct = 0.0;

  if (!fm_targets_is_pearson (shown->targets, &ia, &ib))
    return;
  a = g_ptr_array_index (shown->targets->candidates, ia);
  b = g_ptr_array_index (shown->targets->candidates, ib);
  target_pct = (shown->result->share_pct[ia] * fm_ingredient_fat_g_per_100g (a->ingredient) +
                shown->result->share_pct[ib] * fm_ingredient_fat_g_per_100g (b->ingredient)) /
               100.0;
  if (fm_pearson_init (&square, fm_ingredient_fat_g_per_100g (a->ingredient),
                       fm_ingredient_fat_g_per_100g (b->ingredient), target_pct, NULL))
    gtk_box_append (self->box,
                    fm_targets_square_new (a->ingredient->name, b->ingredient->name, &square));
}

static void
append_sure (FmTargetsResultView *self, const Shown *shown)
{
  g_autofree char *text =
      fm_fat_chance_text (shown->after, shown->targets->scale_step_g, shown->limit_pct);

  append_heading (self, _ ("How sure is the new blend?"));
  append_text (self, text);
}

static void
append_unknown (FmTargetsResultView *self, const FmTargetsResult *result)
{
  for (guint i = 0; result->unknown_notes != NULL && result->unknown_notes[i] != NULL; i++)
    append_text (self, result->unknown_notes[i]);
}

static void
append_fat_reach (FmTargetsResultView *self, const FmTargetsResult *result)
{
  g_autofree char *text = fm_targets_text_fat_reach (&result->fat_reach);

  append_text (self, text);
}

static void
append_met (FmTargetsResultView *self, const Shown *shown)
{
  append_heading (self, _ ("The new blend"));
  append_summary (self, shown);
  append_table (self, shown);
  append_unknown (self, shown->result);
  append_square (self, shown);
  append_targets (self, shown);
  append_fat_reach (self, shown->result);
  append_cost (self, shown);
  append_sure (self, shown);
}

static void
append_not_met (FmTargetsResultView *self, const FmTargetsResult *result)
{
  append_heading (self, _ ("The targets cannot be met together"));
  append_text (self, result->sentence);
  append_unknown (self, result);
  append_fat_reach (self, result);
}

static void
fm_targets_result_view_dispose (GObject *object)
{
  fm_widget_drop_template (GTK_WIDGET (object), FM_TYPE_TARGETS_RESULT_VIEW);
  G_OBJECT_CLASS (fm_targets_result_view_parent_class)->dispose (object);
}

static void
fm_targets_result_view_class_init (FmTargetsResultViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_targets_result_view_dispose;
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/targets/fm-targets-result.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmTargetsResultView, box);
}

static void
fm_targets_result_view_init (FmTargetsResultView *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
fm_targets_result_view_clear (FmTargetsResultView *self)
{
  g_return_if_fail (FM_IS_TARGETS_RESULT_VIEW (self));
  fm_widget_clear_box (self->box);
}

void
fm_targets_result_view_show (FmTargetsResultView *self,
                             const FmTargets *targets,
                             const FmTargetsResult *result,
                             const FmFormula *formula,
                             double limit_pct)
{
  g_autoptr (FmFormula) after = NULL;

  fm_targets_result_view_clear (self);
  if (!result->met) {
    append_not_met (self, result);
    return;
  }
  after = fm_targets_result_apply (result, targets, formula);
  append_met (self, &(Shown){ targets, result, formula, after, limit_pct });
}

void
fm_targets_result_view_show_error (FmTargetsResultView *self, const char *message)
{
  fm_targets_result_view_clear (self);
  append_heading (self, _ ("No blend was worked out"));
  append_text (self, message);
}
