/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-ingredient-row.c - whether a map changes one ingredient, alone or in a group */
#include "app/map/fm-map-ingredient-row.h"

#include <glib/gi18n-lib.h>

#include "app/widgets/fm-accessible.h"
#include "app/widgets/fm-widget.h"
#include "core/base/fm-number.h"

struct _FmMapIngredientRow {
  GtkListBoxRow parent_instance;

  GtkLabel *name_label;
  GtkLabel *share_label;
  GtkDropDown *role_drop_down;

  gboolean loading;
};

G_DEFINE_FINAL_TYPE (FmMapIngredientRow, fm_map_ingredient_row, GTK_TYPE_LIST_BOX_ROW)

enum {
  ROLE_CHANGED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static void
selected_cb (FmMapIngredientRow *self)
{
  if (!self->loading)
    g_signal_emit (self, signals[ROLE_CHANGED], 0);
}

static void
fm_map_ingredient_row_dispose (GObject *object)
{
  FM_MAP_INGREDIENT_ROW (object)->loading = TRUE;
  gtk_widget_dispose_template (GTK_WIDGET (object), FM_TYPE_MAP_INGREDIENT_ROW);
  G_OBJECT_CLASS (fm_map_ingredient_row_parent_class)->dispose (object);
}

static void
fm_map_ingredient_row_class_init (FmMapIngredientRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_map_ingredient_row_dispose;
  signals[ROLE_CHANGED] = g_signal_new ("role-changed", FM_TYPE_MAP_INGREDIENT_ROW,
                                        G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/map/fm-map-ingredient-row.ui");
  gtk_widget_class_bind_template_child (widget_class, FmMapIngredientRow, name_label);
  gtk_widget_class_bind_template_child (widget_class, FmMapIngredientRow, share_label);
  gtk_widget_class_bind_template_child (widget_class, FmMapIngredientRow, role_drop_down);
  gtk_widget_class_bind_template_callback (widget_class, selected_cb);
}

/* In the order of FmMapRole. */
static GtkStringList *
role_names (void)
{
  const char *names[] = { _ ("Stays as it is"),     _ ("Changes alone"),
                          _ ("Changes in group A"), _ ("Changes in group B"),
                          _ ("Changes in group C"), NULL };

  G_STATIC_ASSERT (G_N_ELEMENTS (names) == FM_MAP_GROUP + FM_MAP_N_GROUPS + 1);
  return gtk_string_list_new (names);
}

static void
fm_map_ingredient_row_init (FmMapIngredientRow *self)
{
  g_autoptr (GtkStringList) names = role_names ();

  self->loading = TRUE;
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_drop_down_set_model (self->role_drop_down, G_LIST_MODEL (names));
  self->loading = FALSE;
}

GtkWidget *
fm_map_ingredient_row_new (const FmMapIngredient *ingredient)
{
  FmMapIngredientRow *self = g_object_new (FM_TYPE_MAP_INGREDIENT_ROW, NULL);
  g_autofree char *share = fm_number_format_unit (ingredient->share_pct, 1, "%");
  g_autofree char *text = g_strdup_printf (_ ("%s of the blend"), share);

  gtk_label_set_text (self->name_label, ingredient->name);
  gtk_label_set_text (self->share_label, text);
  fm_accessible_name_drop_down (self->role_drop_down, ingredient->name);
  self->loading = TRUE;
  gtk_drop_down_set_selected (self->role_drop_down, ingredient->role);
  self->loading = FALSE;
  return GTK_WIDGET (self);
}

guint
fm_map_ingredient_row_get_role (FmMapIngredientRow *self)
{
  return gtk_drop_down_get_selected (self->role_drop_down);
}

void
fm_map_ingredient_row_set_editable (FmMapIngredientRow *self, gboolean editable)
{
  gtk_widget_set_sensitive (GTK_WIDGET (self->role_drop_down), editable);
}
