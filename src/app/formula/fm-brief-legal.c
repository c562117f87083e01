/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-brief-legal.c - choice of the rule set of a brief, and its limits beside what the blend has */
#include "app/formula/fm-brief-legal.h"

#include <glib/gi18n-lib.h>

#include "app/widgets/fm-accessible.h"
#include "app/widgets/fm-widget.h"

struct _FmBriefLegal {
  GtkWidget parent_instance;

  GtkWidget *box;
  GtkDropDown *set_choice;
  GtkLabel *text_label;

  gboolean loading;
};

G_DEFINE_FINAL_TYPE (FmBriefLegal, fm_brief_legal, GTK_TYPE_WIDGET)

static guint chosen_signal;

static void
set_chosen_cb (FmBriefLegal *self)
{
  const guint chosen = gtk_drop_down_get_selected (self->set_choice);

  if (!self->loading && chosen < FM_N_RULE_SETS)
    g_signal_emit (self, chosen_signal, 0, chosen);
}

static void
fm_brief_legal_dispose (GObject *object)
{
  fm_widget_drop_template (GTK_WIDGET (object), FM_TYPE_BRIEF_LEGAL);
  G_OBJECT_CLASS (fm_brief_legal_parent_class)->dispose (object);
}

static void
fm_brief_legal_class_init (FmBriefLegalClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_brief_legal_dispose;
  chosen_signal = g_signal_new ("chosen", FM_TYPE_BRIEF_LEGAL, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                NULL, G_TYPE_NONE, 1, G_TYPE_UINT);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/formula/fm-brief-legal.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmBriefLegal, box);
  gtk_widget_class_bind_template_child (widget_class, FmBriefLegal, set_choice);
  gtk_widget_class_bind_template_child (widget_class, FmBriefLegal, text_label);
  gtk_widget_class_bind_template_callback (widget_class, set_chosen_cb);
}

static void
fm_brief_legal_init (FmBriefLegal *self)
{
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);

  self->loading = TRUE;
  gtk_widget_init_template (GTK_WIDGET (self));
  for (guint i = 0; i < FM_N_RULE_SETS; i++)
    gtk_string_list_append (names, fm_rule_set_name ((FmRuleSet)i));
  gtk_drop_down_set_model (self->set_choice, G_LIST_MODEL (names));
  fm_widget_ellipsize_drop_down (self->set_choice);
  fm_accessible_name_drop_down (self->set_choice, _ ("Legal limits"));
  self->loading = FALSE;
}

void
fm_brief_legal_update (FmBriefLegal *self,
                       const FmFormula *formula,
                       const FmAnalysis *analysis,
                       gboolean editable)
{
  g_autofree char *text = NULL;

  g_return_if_fail (FM_IS_BRIEF_LEGAL (self));
  text = fm_legal_text (formula, analysis, formula->brief->rules);
  self->loading = TRUE;
  gtk_drop_down_set_selected (self->set_choice, formula->brief->rules);
  self->loading = FALSE;
  gtk_widget_set_sensitive (GTK_WIDGET (self->set_choice), editable);
  fm_widget_set_label (self->text_label, text);
  gtk_widget_set_visible (GTK_WIDGET (self->text_label), *text != '\0');
}
