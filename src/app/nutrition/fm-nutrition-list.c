/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-nutrition-list.c - nutrients in the order of a label, those without a value folded away */
#include "app/nutrition/fm-nutrition-list.h"

#include <glib/gi18n-lib.h>

#include "app/nutrition/fm-nutrition-row.h"
#include "app/widgets/fm-one-stop.h"
#include "app/widgets/fm-widget.h"
#include "core/formula/fm-nutrition-order.h"

struct _FmNutritionList {
  GtkWidget parent_instance;

  GtkWidget *box;
  GtkBox *groups_box;
  GtkCheckButton *empty_button;

  GtkWidget *headings[FM_N_NUTRITION_GROUPS];
  GtkWidget *lists[FM_N_NUTRITION_GROUPS];
  FmNutritionRow *rows[FM_N_NUTRIENTS];
  gboolean known[FM_N_NUTRIENTS];
};

G_DEFINE_FINAL_TYPE (FmNutritionList, fm_nutrition_list, GTK_TYPE_WIDGET)

enum {
  ACTIVATED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

/* A group whose rows are all folded away has no heading. */
static void
fold (FmNutritionList *self)
{
  const gboolean all = gtk_check_button_get_active (self->empty_button);

  for (guint group = 0; group < FM_N_NUTRITION_GROUPS; group++) {
    guint n = 0;
    const FmNutrient *nutrients = fm_nutrition_group_nutrients ((FmNutritionGroup)group, &n);
    gboolean any = FALSE;

    for (guint i = 0; i < n; i++) {
      const gboolean shown = all || self->known[nutrients[i]];

      gtk_widget_set_visible (GTK_WIDGET (self->rows[nutrients[i]]), shown);
      any = any || shown;
    }
    gtk_widget_set_visible (self->headings[group], any);
    gtk_widget_set_visible (self->lists[group], any);
  }
}

static void
row_activated_cb (FmNutritionList *self, GtkListBoxRow *row)
{
  for (guint i = 0; i < FM_N_NUTRIENTS; i++)
    if (GTK_LIST_BOX_ROW (self->rows[i]) == row)
      g_signal_emit (self, signals[ACTIVATED], 0, i);
}

/* The groups are one stop of Tab, so the arrows go from one to the next, over its heading. */
static gboolean
keynav_failed_cb (GtkWidget *list, GtkDirectionType direction, gpointer data)
{
  GtkWidget *(*step) (GtkWidget *) =
      direction == GTK_DIR_UP ? gtk_widget_get_prev_sibling : gtk_widget_get_next_sibling;
  GtkWidget *other = step (list);

  while (other != NULL && !(GTK_IS_LIST_BOX (other) && gtk_widget_get_visible (other)))
    other = step (other);
  return other != NULL &&
         gtk_widget_child_focus (other, direction == GTK_DIR_UP ? GTK_DIR_TAB_BACKWARD
                                                                : GTK_DIR_TAB_FORWARD);
}

static void
add_group (FmNutritionList *self, FmNutritionGroup group)
{
  const char *name = fm_nutrition_group_name (group);
  GtkWidget *heading = gtk_label_new (name);
  GtkWidget *list = gtk_list_box_new ();

  gtk_label_set_xalign (GTK_LABEL (heading), 0.0f);
  gtk_widget_add_css_class (heading, "heading");
  gtk_widget_set_margin_top (heading, 6);
  gtk_list_box_set_selection_mode (GTK_LIST_BOX (list), GTK_SELECTION_NONE);
  gtk_widget_add_css_class (list, "boxed-list");
  g_signal_connect_object (list, "row-activated", G_CALLBACK (row_activated_cb), self,
                           G_CONNECT_SWAPPED);
  gtk_accessible_update_property (GTK_ACCESSIBLE (list), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  g_signal_connect (list, "keynav-failed", G_CALLBACK (keynav_failed_cb), NULL);
  gtk_box_append (self->groups_box, heading);
  gtk_box_append (self->groups_box, list);
  self->headings[group] = heading;
  self->lists[group] = list;
}

static void
add_rows (FmNutritionList *self, FmNutritionGroup group)
{
  guint n = 0;
  const FmNutrient *nutrients = fm_nutrition_group_nutrients (group, &n);

  for (guint i = 0; i < n; i++) {
    GtkWidget *row = fm_nutrition_row_new (nutrients[i], fm_nutrition_is_part (nutrients[i]));

    self->rows[nutrients[i]] = FM_NUTRITION_ROW (row);
    self->known[nutrients[i]] = TRUE;
    gtk_list_box_append (GTK_LIST_BOX (self->lists[group]), row);
  }
}

static void
fm_nutrition_list_dispose (GObject *object)
{
  fm_widget_drop_template (GTK_WIDGET (object), FM_TYPE_NUTRITION_LIST);
  G_OBJECT_CLASS (fm_nutrition_list_parent_class)->dispose (object);
}

static void
fm_nutrition_list_class_init (FmNutritionListClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_nutrition_list_dispose;
  signals[ACTIVATED] = g_signal_new ("activated", FM_TYPE_NUTRITION_LIST, G_SIGNAL_RUN_LAST, 0,
                                     NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_UINT);
  g_type_ensure (FM_TYPE_ONE_STOP);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/nutrition/fm-nutrition-list.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmNutritionList, box);
  gtk_widget_class_bind_template_child (widget_class, FmNutritionList, groups_box);
  gtk_widget_class_bind_template_child (widget_class, FmNutritionList, empty_button);
  gtk_widget_class_bind_template_callback (widget_class, fold);
}

static void
fm_nutrition_list_init (FmNutritionList *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  for (guint group = 0; group < FM_N_NUTRITION_GROUPS; group++) {
    add_group (self, (FmNutritionGroup)group);
    add_rows (self, (FmNutritionGroup)group);
  }
}

void
fm_nutrition_list_show (FmNutritionList *self,
                        const FmNutritionText *texts,
                        const FmAmount *amounts)
{
  guint n_empty = 0;
  g_autofree char *label = NULL;

  g_return_if_fail (FM_IS_NUTRITION_LIST (self));
  for (guint i = 0; i < FM_N_NUTRIENTS; i++) {
    self->known[i] = fm_amount_knowledge (&amounts[i]) != FM_KNOWLEDGE_NONE;
    n_empty += self->known[i] ? 0 : 1;
    fm_nutrition_row_set_text (self->rows[i], &texts[i], self->known[i]);
  }
  label = g_strdup_printf (
      ngettext ("Show %u row without a value", "Show %u rows without a value", n_empty), n_empty);
  gtk_check_button_set_label (self->empty_button, label);
  gtk_widget_set_visible (GTK_WIDGET (self->empty_button), n_empty > 0);
  fold (self);
}

void
fm_nutrition_list_show_daily_value (FmNutritionList *self, gboolean shown)
{
  g_return_if_fail (FM_IS_NUTRITION_LIST (self));
  for (guint i = 0; i < FM_N_NUTRIENTS; i++)
    fm_nutrition_row_show_daily_value (self->rows[i], shown);
}
