/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-cook-panel.c - the cook of one experiment by its numbers: measured, estimated and lost */
#include "app/cook/fm-cook-panel.h"

#include "app/cook/fm-cook-losses.h"
#include "app/cook/fm-cook-predict.h"
#include "app/cook/fm-cook-verdicts.h"
#include "app/widgets/fm-widget.h"

struct _FmCookPanel {
  GtkWidget parent_instance;

  GtkWidget *box;
  FmCookVerdicts *verdicts;
  FmCookPredict *predict;
  FmCookLosses *losses;
};

G_DEFINE_FINAL_TYPE (FmCookPanel, fm_cook_panel, GTK_TYPE_WIDGET)

static void
fm_cook_panel_dispose (GObject *object)
{
  fm_widget_drop_template (GTK_WIDGET (object), FM_TYPE_COOK_PANEL);
  G_OBJECT_CLASS (fm_cook_panel_parent_class)->dispose (object);
}

static void
fm_cook_panel_class_init (FmCookPanelClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_cook_panel_dispose;
  g_type_ensure (FM_TYPE_COOK_LOSSES);
  g_type_ensure (FM_TYPE_COOK_PREDICT);
  g_type_ensure (FM_TYPE_COOK_VERDICTS);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/cook/fm-cook-panel.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmCookPanel, box);
  gtk_widget_class_bind_template_child (widget_class, FmCookPanel, verdicts);
  gtk_widget_class_bind_template_child (widget_class, FmCookPanel, predict);
  gtk_widget_class_bind_template_child (widget_class, FmCookPanel, losses);
}

static void
fm_cook_panel_init (FmCookPanel *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
fm_cook_panel_set_document (FmCookPanel *self, FmExperimentDocument *document)
{
  g_return_if_fail (FM_IS_COOK_PANEL (self));
  fm_cook_verdicts_set_document (self->verdicts, document);
  fm_cook_predict_set_document (self->predict, document);
  fm_cook_losses_set_document (self->losses, document);
}

void
fm_cook_panel_set_food (FmCookPanel *self, const FmCookFood *food)
{
  g_return_if_fail (FM_IS_COOK_PANEL (self));
  fm_cook_verdicts_set_food (self->verdicts, food);
  fm_cook_predict_set_species (self->predict, food->species);
}
