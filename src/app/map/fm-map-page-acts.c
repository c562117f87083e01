/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-page-acts.c - making and removing maps, clearing their trials */
#include <glib/gi18n-lib.h>

#include "app/session/fm-removal.h"
#include "app/map/fm-map-page-private.h"

gboolean
fm_map_page_can_add (FmMapPage *self)
{
  return fm_page_is_writable (FM_PAGE (self)) && self->list != NULL &&
         self->list->versions->len > 0;
}

static void
added_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (FmMapPage) self = FM_MAP_PAGE (user_data);
  g_autoptr (GError) error = NULL;
  gint64 id;

  if (fm_page_get_session (FM_PAGE (self)) == NULL)
    return;
  id = fm_map_add_finish (result, &error);
  if (id == 0) {
    fm_session_failure (fm_page_get_session (FM_PAGE (self)), error);
    return;
  }
  self->wanted_id = id;
  fm_session_emit_changed (fm_page_get_session (FM_PAGE (self)), FM_CHANGE_MAP, id);
}

/* The version that is shown, else the latest. */
static gint64
first_base (FmMapPage *self)
{
  const FmVersionInfo *last =
      g_ptr_array_index (self->list->versions, self->list->versions->len - 1);
  const gint64 shown_id = fm_session_get_version_id (fm_page_get_session (FM_PAGE (self)));

  return shown_id != 0 ? shown_id : last->id;
}

static void
new_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmMapPage *self = FM_MAP_PAGE (widget);
  FmMap *map;

  if (!fm_map_page_can_add (self))
    return;
  map = fm_map_new ();
  map->blend_id = self->blend_id;
  map->base_version_id = first_base (self);
  map->name = g_strdup_printf (_ ("Map %u"), self->list->maps->len + 1);
  fm_map_add_async (fm_page_get_notebook (FM_PAGE (self)), map, NULL, added_cb,
                    g_object_ref (self));
}

static void
removal_settled (GtkWidget *owner, gint64 id, gboolean removed, const GError *error)
{
  FmMapPage *self = FM_MAP_PAGE (owner);

  g_hash_table_remove (self->hidden, &id);
  if (error != NULL)
    fm_session_failure (fm_page_get_session (FM_PAGE (self)), error);
  if (removed)
    fm_documents_forget (fm_session_get_documents (fm_page_get_session (FM_PAGE (self))),
                         FM_TYPE_MAP_DOCUMENT, fm_page_get_notebook (FM_PAGE (self)), id);
  else
    self->wanted_id = id;
  fm_session_emit_changed (fm_page_get_session (FM_PAGE (self)), FM_CHANGE_MAP, id);
}

static void
remove_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmMapPage *self = FM_MAP_PAGE (widget);
  g_autofree char *title = NULL;
  gint64 id;

  if (self->document == NULL || self->list == NULL)
    return;
  id = fm_map_document_get_map (self->document)->id;
  title = g_strdup_printf (_ ("Map “%s” removed; its versions stay"),
                           fm_map_document_get_map (self->document)->name);
  g_hash_table_add (self->hidden, g_memdup2 (&id, sizeof id));
  fm_map_page_close_map (self);
  self->wanted_id = 0;
  fm_removal_offer (widget, title, fm_page_get_notebook (FM_PAGE (self)), id, fm_maps_remove,
                    removal_settled);
  fm_map_page_show_list (self);
}

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
  FmMapPage *self = FM_MAP_PAGE (widget);
  AdwToast *toast = adw_toast_new (_ ("Trials cleared"));
  Cleared *cleared = g_new0 (Cleared, 1);
  FmMap *map = fm_map_document_get_map (self->document);

  cleared->document = g_object_ref (self->document);
  cleared->points = map->points;
  cleared->components = g_ptr_array_ref (map->components);
  map->points = g_array_new (FALSE, TRUE, sizeof (FmMapPoint));
  adw_toast_set_button_label (toast, _ ("_Undo"));
  g_signal_connect_data (toast, "button-clicked", G_CALLBACK (undo_clear_cb), cleared, cleared_free,
                         0);
  adw_toast_overlay_add_toast (self->toast_overlay, toast);
  fm_map_document_touch (self->document);
}

void
fm_map_page_install_acts (GtkWidgetClass *widget_class)
{
  gtk_widget_class_install_action (widget_class, "map.new", NULL, new_action);
  gtk_widget_class_install_action (widget_class, "map.remove", NULL, remove_action);
  gtk_widget_class_install_action (widget_class, "map.clear-trials", NULL, clear_action);
}
