/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-view.c - one map: what changes, the trials, and what they show */
#include "app/map/fm-map-view.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "app/map/fm-map-components.h"
#include "app/map/fm-map-reading.h"
#include "app/map/fm-map-trials.h"

struct _FmMapView {
  FmStoredView parent_instance;

  GtkEntry *name_entry;
  FmMapComponents *components;
  FmMapTrials *trials;
  FmMapReading *reading;

  gboolean loading; /* controls change by program, not by the user */
};

G_DEFINE_FINAL_TYPE (FmMapView, fm_map_view, FM_TYPE_STORED_VIEW)

/* The trials that were cleared, while that can be undone. */
typedef struct {
  FmMapDocument *document;
  GArray *points;
  GPtrArray *components; /* that the points are shares of */
} Cleared;

static void
cleared_free (gpointer data, GClosure *closure)
{
  Cleared *cleared = data;

  g_object_unref (cleared->document);
  g_array_unref (cleared->points);
  g_ptr_array_unref (cleared->components);
  g_free (cleared);
}

static FmMapDocument *
get_document (FmMapView *self)
{
  return fm_stored_view_get_document (FM_STORED_VIEW (self));
}

static void
update_actions (FmMapView *self)
{
  FmMapDocument *document = get_document (self);

  gtk_widget_action_set_enabled (GTK_WIDGET (self), "map.clear-trials",
                                 document != NULL && fm_map_document_is_editable (document) &&
                                     !fm_map_document_is_making (document) &&
                                     fm_map_document_get_map (document)->points->len > 0);
}

static void
name_changed_cb (FmMapView *self)
{
  g_autofree char *name = g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->name_entry)));
  FmMap *map;

  if (self->loading || get_document (self) == NULL || *g_strstrip (name) == '\0')
    return;
  map = fm_map_document_get_map (get_document (self));
  g_free (map->name);
  map->name = g_steal_pointer (&name);
  fm_map_document_touch (get_document (self));
}

/* Components that were chosen since would not fit the old trials. */
static void
undo_clear_cb (AdwToast *toast, Cleared *cleared)
{
  FmMap *map = fm_map_document_get_map (cleared->document);

  if (map->points->len > 0 || map->components != cleared->components ||
      fm_map_document_is_making (cleared->document))
    return;
  g_array_unref (map->points);
  map->points = g_array_ref (cleared->points);
  fm_map_document_touch (cleared->document);
}

static void
clear_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmMapDocument *document = get_document (FM_MAP_VIEW (widget));
  GtkWidget *overlay = gtk_widget_get_ancestor (widget, ADW_TYPE_TOAST_OVERLAY);
  AdwToast *toast = adw_toast_new (_ ("Trials cleared"));
  Cleared *cleared = g_new0 (Cleared, 1);
  FmMap *map = fm_map_document_get_map (document);

  cleared->document = g_object_ref (document);
  cleared->points = map->points;
  cleared->components = g_ptr_array_ref (map->components);
  map->points = g_array_new (FALSE, TRUE, sizeof (FmMapPoint));
  adw_toast_set_button_label (toast, _ ("_Undo"));
  g_signal_connect_data (toast, "button-clicked", G_CALLBACK (undo_clear_cb), cleared, cleared_free,
                         0);
  adw_toast_overlay_add_toast (ADW_TOAST_OVERLAY (overlay), toast);
  fm_map_document_touch (document);
}

static void
show_name (FmMapView *self)
{
  FmMapDocument *document = get_document (self);
  const char *name = document != NULL ? fm_map_document_get_map (document)->name : "";

  self->loading = TRUE;
  gtk_editable_set_text (GTK_EDITABLE (self->name_entry), name);
  gtk_editable_set_editable (GTK_EDITABLE (self->name_entry),
                             document != NULL && fm_map_document_is_editable (document));
  self->loading = FALSE;
}

static void
fm_map_view_show (FmStoredView *view)
{
  FmMapView *self = FM_MAP_VIEW (view);
  FmMapDocument *document = get_document (self);

  show_name (self);
  fm_map_components_set_document (self->components, document);
  fm_map_trials_set_document (self->trials, document);
  fm_map_reading_set_document (self->reading, document);
  if (document != NULL)
    fm_map_document_reload_data (document);
  update_actions (self);
}

static void
fm_map_view_changed (FmStoredView *view)
{
  update_actions (FM_MAP_VIEW (view));
}

static void
fm_map_view_dispose (GObject *object)
{
  FM_MAP_VIEW (object)->loading = TRUE;
  gtk_widget_dispose_template (GTK_WIDGET (object), FM_TYPE_MAP_VIEW);
  G_OBJECT_CLASS (fm_map_view_parent_class)->dispose (object);
}

static void
fm_map_view_class_init (FmMapViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (FM_TYPE_MAP_COMPONENTS);
  g_type_ensure (FM_TYPE_MAP_TRIALS);
  g_type_ensure (FM_TYPE_MAP_READING);
  G_OBJECT_CLASS (klass)->dispose = fm_map_view_dispose;
  FM_STORED_VIEW_CLASS (klass)->show = fm_map_view_show;
  FM_STORED_VIEW_CLASS (klass)->changed = fm_map_view_changed;
  gtk_widget_class_install_action (widget_class, "map.clear-trials", NULL, clear_action);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/map/fm-map-view.ui");
  gtk_widget_class_bind_template_child (widget_class, FmMapView, name_entry);
  gtk_widget_class_bind_template_child (widget_class, FmMapView, components);
  gtk_widget_class_bind_template_child (widget_class, FmMapView, trials);
  gtk_widget_class_bind_template_child (widget_class, FmMapView, reading);
  gtk_widget_class_bind_template_callback (widget_class, name_changed_cb);
}

static void
fm_map_view_init (FmMapView *self)
{
  self->loading = TRUE;
  gtk_widget_init_template (GTK_WIDGET (self));
  self->loading = FALSE;
  update_actions (self);
}

void
fm_map_view_set_versions (FmMapView *self, GPtrArray *versions)
{
  fm_map_components_set_versions (self->components, versions);
}
