/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-food-row.c - one line under the food search: a food, the way to more of them, or to an own
 * entry
 */
#include "app/ingredients/fm-food-row.h"

#include <glib/gi18n-lib.h>

#include "core/base/fm-number.h"

struct _FmFoodRow {
  GtkListBoxRow parent_instance;

  GtkLabel *title_label;
  GtkLabel *detail_label;
  GtkWidget *remove_button;

  FmFoodRowKind kind;
  guint index;
};

G_DEFINE_FINAL_TYPE (FmFoodRow, fm_food_row, GTK_TYPE_LIST_BOX_ROW)

static FmFoodRow *
new_row (FmFoodRowKind kind, guint index, const char *title, const char *detail)
{
  FmFoodRow *self = g_object_new (FM_TYPE_FOOD_ROW, NULL);
  g_autofree char *label =
      detail != NULL ? g_strdup_printf ("%s, %s", title, detail) : g_strdup (title);

  self->kind = kind;
  self->index = index;
  gtk_label_set_text (self->title_label, title);
  gtk_label_set_text (self->detail_label, detail != NULL ? detail : "");
  gtk_widget_set_visible (GTK_WIDGET (self->detail_label), detail != NULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
  return self;
}

static char *
describe_amounts (const char *state, double fat_g, double protein_g)
{
  g_autofree char *fat = fm_number_format_unit (fat_g, 1, _ ("g"));
  g_autofree char *protein = fm_number_format_unit (protein_g, 1, _ ("g"));

  /* Translators: raw or cooked, then amounts; a dash stands for what is not known. */
  return g_strdup_printf (_ ("%s · fat %s, protein %s per 100 g"), state, fat, protein);
}

static const char *
describe_state (const FmFoodHit *hit)
{
  if (hit->is_raw)
    return _ ("raw");
  return hit->is_ready_made ? _ ("ready-made") : _ ("as sold");
}

static void
fm_food_row_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), FM_TYPE_FOOD_ROW);
  G_OBJECT_CLASS (fm_food_row_parent_class)->dispose (object);
}

static void
fm_food_row_class_init (FmFoodRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_food_row_dispose;
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/ingredients/fm-food-row.ui");
  gtk_widget_class_bind_template_child (widget_class, FmFoodRow, title_label);
  gtk_widget_class_bind_template_child (widget_class, FmFoodRow, detail_label);
  gtk_widget_class_bind_template_child (widget_class, FmFoodRow, remove_button);
}

static void
fm_food_row_init (FmFoodRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

GtkWidget *
fm_food_row_new_own (const FmIngredient *own, guint index, gboolean removable)
{
  g_autofree char *detail = NULL;
  g_autofree char *what = NULL;
  FmFoodRow *self;

  g_return_val_if_fail (own != NULL, NULL);

  detail = describe_amounts (_ ("own entry"), fm_ingredient_fat_g_per_100g (own),
                             own->composition.per_100g[FM_NUTRIENT_PROTEIN]);
  self = new_row (FM_FOOD_ROW_OWN, index, own->name, detail);
  what = g_strdup_printf (_ ("Remove the own entry %s"), own->name);
  gtk_widget_set_visible (self->remove_button, removable);
  gtk_actionable_set_action_target (GTK_ACTIONABLE (self->remove_button), "u", index);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (self->remove_button), "food.remove");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->remove_button),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, what, -1);
  return GTK_WIDGET (self);
}

GtkWidget *
fm_food_row_new_food (const FmFoodHit *hit, guint index)
{
  g_autofree char *detail = NULL;

  g_return_val_if_fail (hit != NULL, NULL);

  detail = describe_amounts (describe_state (hit), hit->fat_g_per_100g, hit->protein_g_per_100g);
  return GTK_WIDGET (new_row (FM_FOOD_ROW_FOOD, index, hit->name, detail));
}

GtkWidget *
fm_food_row_new_ready (guint n_foods)
{
  g_autofree char *title = g_strdup_printf (
      ngettext ("Also ready-made: %u food…", "Also ready-made: %u foods…", n_foods), n_foods);

  return GTK_WIDGET (new_row (FM_FOOD_ROW_READY, 0, title,
                              _ ("cooked, cured, branded, of restaurants, for babies")));
}

GtkWidget *
fm_food_row_new_write (const char *text)
{
  g_autofree char *title = NULL;

  g_return_val_if_fail (text != NULL, NULL);

  title = g_strdup_printf (_ ("Own entry for “%s”…"), text);
  return GTK_WIDGET (new_row (FM_FOOD_ROW_WRITE, 0, title, NULL));
}

FmFoodRowKind
fm_food_row_get_kind (FmFoodRow *self)
{
  g_return_val_if_fail (FM_IS_FOOD_ROW (self), FM_FOOD_ROW_WRITE);
  return self->kind;
}

guint
fm_food_row_get_index (FmFoodRow *self)
{
  g_return_val_if_fail (FM_IS_FOOD_ROW (self), 0);
  return self->index;
}

const char *
fm_food_row_get_title (FmFoodRow *self)
{
  g_return_val_if_fail (FM_IS_FOOD_ROW (self), NULL);
  return gtk_label_get_text (self->title_label);
}
