/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-nutrition-row.c - one nutrient in the nutrition panel */
#include "app/nutrition/fm-nutrition-row.h"

#include "app/widgets/fm-widget.h"

/* What a label sets in, in px. */
#define INDENT_PX 12

struct _FmNutritionRow {
  GtkListBoxRow parent_instance;

  GtkLabel *name_label;
  GtkLabel *amount_label;
  GtkLabel *daily_value_label;
  char *spoken;
};

G_DEFINE_FINAL_TYPE (FmNutritionRow, fm_nutrition_row, GTK_TYPE_LIST_BOX_ROW)

static void
fm_nutrition_row_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), FM_TYPE_NUTRITION_ROW);
  G_OBJECT_CLASS (fm_nutrition_row_parent_class)->dispose (object);
}

static void
fm_nutrition_row_finalize (GObject *object)
{
  g_free (FM_NUTRITION_ROW (object)->spoken);
  G_OBJECT_CLASS (fm_nutrition_row_parent_class)->finalize (object);
}

static void
fm_nutrition_row_class_init (FmNutritionRowClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = fm_nutrition_row_dispose;
  object_class->finalize = fm_nutrition_row_finalize;
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/nutrition/fm-nutrition-row.ui");
  gtk_widget_class_bind_template_child (widget_class, FmNutritionRow, name_label);
  gtk_widget_class_bind_template_child (widget_class, FmNutritionRow, amount_label);
  gtk_widget_class_bind_template_child (widget_class, FmNutritionRow, daily_value_label);
}

static void
fm_nutrition_row_init (FmNutritionRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

GtkWidget *
fm_nutrition_row_new (FmNutrient nutrient, gboolean is_part)
{
  FmNutritionRow *self = g_object_new (FM_TYPE_NUTRITION_ROW, NULL);

  gtk_label_set_text (self->name_label, fm_nutrient_name (nutrient));
  gtk_widget_set_margin_start (GTK_WIDGET (self->name_label), is_part ? INDENT_PX : 0);
  return GTK_WIDGET (self);
}

void
fm_nutrition_row_set_text (FmNutritionRow *self, const FmNutritionText *text, gboolean is_known)
{
  if (g_strcmp0 (self->spoken, text->spoken) == 0)
    return;
  g_free (self->spoken);
  self->spoken = g_strdup (text->spoken);
  fm_widget_set_label (self->amount_label, is_known ? text->amount : "—");
  fm_widget_set_label (self->daily_value_label, text->daily_value);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->amount_label), text->gap);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  text->spoken, -1);
}

void
fm_nutrition_row_show_daily_value (FmNutritionRow *self, gboolean shown)
{
  gtk_widget_set_visible (GTK_WIDGET (self->daily_value_label), shown);
}
