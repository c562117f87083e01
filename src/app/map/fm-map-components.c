/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-components.c - what a map changes, how far, and what keeps it in bounds */
#include "app/map/fm-map-components.h"

#include <glib/gi18n-lib.h>

#include "app/widgets/fm-accessible.h"
#include "app/map/fm-map-bounds-row.h"
#include "app/map/fm-map-ingredient-row.h"
#include "app/map/fm-map-text.h"
#include "app/widgets/fm-widget.h"
#include "core/formula/fm-analysis.h"

struct _FmMapComponents {
  GtkWidget parent_instance;

  GtkDropDown *base_drop_down;
  GtkBox *locked_box;
  GtkListBox *ingredient_list;
  GtkListBox *bounds_list;
  GtkWidget *bounds_box;
  GtkWidget *fixed_box;
  GtkLabel *fixed_label;
  GtkLabel *problem_label;
  GtkWidget *limits_box;
  GtkLabel *limits_label;

  FmMapDocument *document;
  GPtrArray *versions;     /* (nullable) FmVersionInfo */
  GPtrArray *ingredients;  /* (nullable) FmMapIngredient, in the order of the rows */
  const FmFormula *listed; /* the base that the ingredient rows show; only compared */
  GPtrArray *components;   /* (nullable) the components that the bounds rows show; only compared */
  gboolean loading;
};

G_DEFINE_FINAL_TYPE (FmMapComponents, fm_map_components, GTK_TYPE_WIDGET)

static void
clear_list (GtkListBox *list)
{
  GtkListBoxRow *row;

  while ((row = gtk_list_box_get_row_at_index (list, 0)) != NULL)
    gtk_list_box_remove (list, GTK_WIDGET (row));
}

/* Trials belong to their components, so that these stay while there are any. */
static gboolean
is_locked (FmMapComponents *self)
{
  return fm_map_document_get_map (self->document)->points->len > 0;
}

static void
show_base (FmMapComponents *self)
{
  const gint64 base_id = fm_map_document_get_map (self->document)->base_version_id;

  self->loading = TRUE;
  for (guint i = 0; self->versions != NULL && i < self->versions->len; i++)
    if (((FmVersionInfo *)g_ptr_array_index (self->versions, i))->id == base_id)
      gtk_drop_down_set_selected (self->base_drop_down, i);
  self->loading = FALSE;
}

static void
role_changed_cb (FmMapComponents *self)
{
  for (guint i = 0; i < self->ingredients->len; i++) {
    GtkListBoxRow *row = gtk_list_box_get_row_at_index (self->ingredient_list, (int)i);
    FmMapIngredient *ingredient = g_ptr_array_index (self->ingredients, i);

    ingredient->role = fm_map_ingredient_row_get_role (FM_MAP_INGREDIENT_ROW (row));
  }
  fm_map_ingredients_apply (self->ingredients, fm_map_document_get_map (self->document));
  fm_map_document_touch (self->document);
  fm_map_document_reload_data (self->document);
}

static void
list_ingredients (FmMapComponents *self)
{
  const FmFormula *base = fm_map_document_get_base (self->document);

  if (self->listed == base)
    return;
  self->listed = base;
  clear_list (self->ingredient_list);
  g_clear_pointer (&self->ingredients, g_ptr_array_unref);
  self->ingredients =
      fm_map_ingredients_new (base, fm_map_document_get_map (self->document)->components);
  for (guint i = 0; i < self->ingredients->len; i++) {
    GtkWidget *row = fm_map_ingredient_row_new (g_ptr_array_index (self->ingredients, i));

    g_signal_connect_swapped (row, "role-changed", G_CALLBACK (role_changed_cb), self);
    gtk_list_box_append (self->ingredient_list, row);
  }
}

static void
bounds_changed_cb (FmMapComponents *self, double lower, double upper, GtkListBoxRow *row)
{
  FmMap *map = fm_map_document_get_map (self->document);
  const int index = gtk_list_box_row_get_index (row);

  map->lower[index] = lower;
  map->upper[index] = upper;
  fm_map_document_touch (self->document);
}

static void
list_bounds (FmMapComponents *self)
{
  GPtrArray *components = fm_map_document_get_map (self->document)->components;

  if (self->components == components)
    return;
  g_clear_pointer (&self->components, g_ptr_array_unref);
  self->components = g_ptr_array_ref (components);
  clear_list (self->bounds_list);
  for (guint i = 0; i < components->len && i < FM_MIX_BLEND_MAX_COMPONENTS; i++) {
    const FmMixComponent *component = g_ptr_array_index (components, i);
    GtkWidget *row = fm_map_bounds_row_new (component->name);

    g_signal_connect_swapped (row, "bounds-changed", G_CALLBACK (bounds_changed_cb), self);
    gtk_list_box_append (self->bounds_list, row);
  }
}

static void
show_bounds (FmMapComponents *self)
{
  const FmMap *map = fm_map_document_get_map (self->document);
  const FmMixBlend *blend = fm_map_document_get_blend (self->document);
  double now[FM_MIX_MAX_COMPONENTS] = { 0.0 };

  list_bounds (self);
  gtk_widget_set_visible (self->bounds_box, blend != NULL);
  gtk_widget_set_visible (self->fixed_box, blend != NULL);
  gtk_widget_set_visible (self->limits_box, blend != NULL);
  if (blend == NULL)
    return;
  fm_mix_blend_base_x (blend, now);
  for (guint i = 0; i < map->components->len; i++) {
    GtkListBoxRow *row = gtk_list_box_get_row_at_index (self->bounds_list, (int)i);

    fm_map_bounds_row_update (FM_MAP_BOUNDS_ROW (row), map->lower[i], map->upper[i], now[i],
                              fm_map_document_is_editable (self->document));
  }
}

static void
show_words (FmMapComponents *self)
{
  const char *problem = fm_map_document_get_problem (self->document);
  g_autofree char *limits = fm_map_text_limits (fm_map_document_get_limits (self->document));
  g_autofree char *fixed = fm_map_text_fixed (fm_map_document_get_blend (self->document),
                                              fm_map_document_get_base (self->document),
                                              fm_map_document_get_map (self->document)->components);

  fm_widget_set_label (self->problem_label, problem != NULL ? problem : "");
  gtk_widget_set_visible (GTK_WIDGET (self->problem_label), problem != NULL);
  fm_widget_set_label (self->limits_label, limits);
  fm_widget_set_label (self->fixed_label, fixed);
}

static void
changed_cb (FmMapComponents *self)
{
  const gboolean locked = is_locked (self);
  const gboolean editable = fm_map_document_is_editable (self->document);

  list_ingredients (self);
  gtk_widget_set_visible (GTK_WIDGET (self->locked_box), locked);
  gtk_widget_set_sensitive (GTK_WIDGET (self->base_drop_down), editable && !locked);
  for (guint i = 0; i < self->ingredients->len; i++) {
    GtkListBoxRow *row = gtk_list_box_get_row_at_index (self->ingredient_list, (int)i);

    fm_map_ingredient_row_set_editable (FM_MAP_INGREDIENT_ROW (row), editable && !locked);
  }
  show_base (self);
  show_bounds (self);
  show_words (self);
}

static void
base_selected_cb (FmMapComponents *self)
{
  const guint selected = gtk_drop_down_get_selected (self->base_drop_down);
  const FmVersionInfo *info;

  if (self->loading || self->document == NULL || self->versions == NULL ||
      selected >= self->versions->len)
    return;
  info = g_ptr_array_index (self->versions, selected);
  if (info->id != fm_map_document_get_map (self->document)->base_version_id)
    fm_map_document_choose_base (self->document, info->id);
}

static void
fm_map_components_dispose (GObject *object)
{
  FmMapComponents *self = FM_MAP_COMPONENTS (object);

  fm_map_components_set_document (self, NULL);
  self->loading = TRUE;
  g_clear_pointer (&self->versions, g_ptr_array_unref);
  fm_widget_drop_template (GTK_WIDGET (self), FM_TYPE_MAP_COMPONENTS);
  G_OBJECT_CLASS (fm_map_components_parent_class)->dispose (object);
}

static void
fm_map_components_class_init (FmMapComponentsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_map_components_dispose;
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/map/fm-map-components.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmMapComponents, base_drop_down);
  gtk_widget_class_bind_template_child (widget_class, FmMapComponents, locked_box);
  gtk_widget_class_bind_template_child (widget_class, FmMapComponents, ingredient_list);
  gtk_widget_class_bind_template_child (widget_class, FmMapComponents, bounds_list);
  gtk_widget_class_bind_template_child (widget_class, FmMapComponents, bounds_box);
  gtk_widget_class_bind_template_child (widget_class, FmMapComponents, fixed_box);
  gtk_widget_class_bind_template_child (widget_class, FmMapComponents, fixed_label);
  gtk_widget_class_bind_template_child (widget_class, FmMapComponents, problem_label);
  gtk_widget_class_bind_template_child (widget_class, FmMapComponents, limits_box);
  gtk_widget_class_bind_template_child (widget_class, FmMapComponents, limits_label);
  gtk_widget_class_bind_template_callback (widget_class, base_selected_cb);
}

static void
fm_map_components_init (FmMapComponents *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  fm_widget_ellipsize_drop_down (self->base_drop_down);
  fm_accessible_name_drop_down (self->base_drop_down, _ ("Base version"));
}

void
fm_map_components_set_document (FmMapComponents *self, FmMapDocument *document)
{
  if (self->document == document)
    return;
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_set_object (&self->document, document);
  self->listed = NULL;
  g_clear_pointer (&self->ingredients, g_ptr_array_unref);
  g_clear_pointer (&self->components, g_ptr_array_unref);
  if (document == NULL)
    return;
  g_signal_connect_swapped (document, "changed", G_CALLBACK (changed_cb), self);
  changed_cb (self);
}

void
fm_map_components_set_versions (FmMapComponents *self, GPtrArray *versions)
{
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);

  for (guint i = 0; i < versions->len; i++) {
    const FmVersionInfo *info = g_ptr_array_index (versions, i);
    g_autofree char *point = fm_lean_point_format (info->fat_pct);

    gtk_string_list_take (names, g_strdup_printf (_ ("Version %d, %s"), info->number, point));
  }
  self->loading = TRUE;
  g_ptr_array_ref (versions);
  g_clear_pointer (&self->versions, g_ptr_array_unref);
  self->versions = versions;
  gtk_drop_down_set_model (self->base_drop_down, G_LIST_MODEL (names));
  self->loading = FALSE;
  if (self->document != NULL)
    show_base (self);
}
