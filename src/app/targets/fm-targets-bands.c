/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-targets-bands.c - the targets: the bands of the brief, and further ones of any nutrient */
#include "app/targets/fm-targets-bands.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/widgets/fm-accessible.h"
#include "app/widgets/fm-brief-target-row.h"
#include "app/targets/fm-targets-band.h"
#include "app/widgets/fm-widget.h"
#include "core/formula/fm-analysis.h"
#include "core/base/fm-error.h"

struct _FmTargetsBands {
  GtkWidget parent_instance;

  GtkListBox *brief_list;
  GtkListBox *further_list;
  GtkDropDown *kind_drop;

  FmFormula *formula; /* the owner's */
  gboolean loading;
};

G_DEFINE_FINAL_TYPE (FmTargetsBands, fm_targets_bands, GTK_TYPE_WIDGET)

enum {
  CHANGED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

/* What can be added: collagen and cost per kg, then every nutrient of the dataset. */
static const FmQuantity first_kinds[] = { FM_QUANTITY_COLLAGEN, FM_QUANTITY_COST };

static FmQuantity
kind_at (guint index, FmNutrient *nutrient)
{
  *nutrient = FM_NUTRIENT_NONE;
  if (index < G_N_ELEMENTS (first_kinds))
    return first_kinds[index];
  *nutrient = (FmNutrient)(index - G_N_ELEMENTS (first_kinds));
  return FM_QUANTITY_NUTRIENT;
}

static void
fill_kinds (FmTargetsBands *self)
{
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);
  GtkExpression *text = gtk_property_expression_new (GTK_TYPE_STRING_OBJECT, NULL, "string");

  for (guint i = 0; i < G_N_ELEMENTS (first_kinds) + FM_N_NUTRIENTS; i++) {
    FmNutrient nutrient;
    const FmQuantity quantity = kind_at (i, &nutrient);

    gtk_string_list_take (names, fm_targets_band_title (quantity, nutrient));
  }
  gtk_drop_down_set_expression (self->kind_drop, text);
  gtk_drop_down_set_enable_search (self->kind_drop, TRUE);
  gtk_drop_down_set_model (self->kind_drop, G_LIST_MODEL (names));
  gtk_expression_unref (text);
  fm_widget_ellipsize_drop_down (self->kind_drop);
  fm_accessible_name_drop_down (self->kind_drop, _ ("Further target"));
}

static FmTargetsBand *
further_at (FmTargetsBands *self, int index)
{
  return (FmTargetsBand *)gtk_list_box_get_row_at_index (self->further_list, index);
}

static void
show_further (FmTargetsBands *self)
{
  gtk_widget_set_visible (GTK_WIDGET (self->further_list), further_at (self, 0) != NULL);
}

static void
further_changed_cb (FmTargetsBands *self, FmTargetsBand *row)
{
  g_signal_emit (self, signals[CHANGED], 0);
}

static void
further_removed_cb (FmTargetsBands *self, FmTargetsBand *row)
{
  gtk_list_box_remove (self->further_list, GTK_WIDGET (row));
  show_further (self);
  gtk_widget_grab_focus (GTK_WIDGET (self->kind_drop));
  g_signal_emit (self, signals[CHANGED], 0);
}

static FmTargetsBand *
find_further (FmTargetsBands *self, FmQuantity quantity, FmNutrient nutrient)
{
  for (int i = 0; further_at (self, i) != NULL; i++)
    if (fm_targets_band_is (further_at (self, i), quantity, nutrient))
      return further_at (self, i);
  return NULL;
}

/* A second band of the same kind would say nothing that the first cannot. */
static void
add_clicked_cb (FmTargetsBands *self)
{
  FmNutrient nutrient;
  const FmQuantity quantity = kind_at (gtk_drop_down_get_selected (self->kind_drop), &nutrient);
  FmTargetsBand *row = find_further (self, quantity, nutrient);

  if (row == NULL) {
    row = FM_TARGETS_BAND (fm_targets_band_new (quantity, nutrient));
    g_signal_connect_swapped (row, "band-changed", G_CALLBACK (further_changed_cb), self);
    g_signal_connect_swapped (row, "removal-wanted", G_CALLBACK (further_removed_cb), self);
    gtk_list_box_append (self->further_list, GTK_WIDGET (row));
    fm_targets_band_update (row, self->formula);
    show_further (self);
  }
  gtk_widget_child_focus (GTK_WIDGET (row), GTK_DIR_TAB_FORWARD);
}

/* A refused end is told of once more, as it was before. */
static void
band_end_changed_cb (FmTargetsBands *self, gboolean maximum, double value, FmBriefTargetRow *row)
{
  g_autoptr (GError) error = NULL;
  FmBand *band = NULL;

  if (self->loading)
    return;
  band = &self->formula->brief->bands[fm_brief_target_row_get_kind (row)];
  *(maximum ? &band->max : &band->min) = value;
  if (!fm_brief_check (self->formula->brief, &error)) {
    fm_brief_target_row_refuse (row, maximum, error->message);
    return;
  }
  fm_targets_bands_update (self);
  g_signal_emit (self, signals[CHANGED], 0);
}

static void
fm_targets_bands_dispose (GObject *object)
{
  fm_widget_drop_template (GTK_WIDGET (object), FM_TYPE_TARGETS_BANDS);
  G_OBJECT_CLASS (fm_targets_bands_parent_class)->dispose (object);
}

static void
fm_targets_bands_class_init (FmTargetsBandsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_targets_bands_dispose;
  signals[CHANGED] = g_signal_new ("changed", FM_TYPE_TARGETS_BANDS, G_SIGNAL_RUN_LAST, 0, NULL,
                                   NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/targets/fm-targets-bands.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmTargetsBands, brief_list);
  gtk_widget_class_bind_template_child (widget_class, FmTargetsBands, further_list);
  gtk_widget_class_bind_template_child (widget_class, FmTargetsBands, kind_drop);
  gtk_widget_class_bind_template_callback (widget_class, add_clicked_cb);
}

static void
fm_targets_bands_init (FmTargetsBands *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  fill_kinds (self);
  for (int i = 0; i < FM_N_TARGETS; i++) {
    GtkWidget *row = fm_brief_target_row_new ((FmTargetKind)i);

    g_signal_connect_swapped (row, "band-end-changed", G_CALLBACK (band_end_changed_cb), self);
    gtk_list_box_append (self->brief_list, row);
  }
}

void
fm_targets_bands_set_formula (FmTargetsBands *self, FmFormula *formula)
{
  g_return_if_fail (FM_IS_TARGETS_BANDS (self));
  self->formula = formula;
  fm_targets_bands_update (self);
}

void
fm_targets_bands_update (FmTargetsBands *self)
{
  g_autoptr (FmAnalysis) analysis = fm_analysis_new (self->formula);
  const FmBrief *brief = self->formula->brief;

  self->loading = TRUE;
  for (int i = 0; i < FM_N_TARGETS; i++) {
    GtkListBoxRow *row = gtk_list_box_get_row_at_index (self->brief_list, i);
    const double value = fm_analysis_target_value (analysis, brief, (FmTargetKind)i);

    fm_brief_target_row_update (FM_BRIEF_TARGET_ROW (row), brief->bands[i], value, TRUE);
  }
  self->loading = FALSE;
  for (int i = 0; further_at (self, i) != NULL; i++)
    fm_targets_band_update (further_at (self, i), self->formula);
}

gboolean
fm_targets_bands_check (FmTargetsBands *self, GError **error)
{
  if (!fm_brief_check (self->formula->brief, error))
    return FALSE;
  for (int i = 0; further_at (self, i) != NULL; i++) {
    if (fm_targets_band_is_good (further_at (self, i)))
      continue;
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE, "%s",
                 _ ("Correct the marked target first."));
    return FALSE;
  }
  return TRUE;
}

void
fm_targets_bands_add_to (FmTargetsBands *self, FmTargets *targets)
{
  for (int i = 0; further_at (self, i) != NULL; i++)
    fm_targets_band_add_to (further_at (self, i), targets);
}
