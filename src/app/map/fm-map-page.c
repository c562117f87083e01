/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-page.c - the maps of the shown blend, and one map as a page */
#include "app/map/fm-map-page.h"

#include <glib/gi18n-lib.h>

#include "app/session/fm-clock.h"
#include "app/map/fm-map-document.h"
#include "app/map/fm-map-list.h"
#include "app/map/fm-map-query.h"
#include "app/map/fm-map-view.h"
#include "app/blends/fm-version-list.h"

struct _FmMapPage {
  FmLogPage parent_instance;

  FmMapList *list;
  FmMapView *view;

  gint64 blend_id;         /* whose maps are listed */
  FmVersionList *versions; /* (nullable) */
  GSignalGroup *signals;   /* of versions */
};

G_DEFINE_FINAL_TYPE (FmMapPage, fm_map_page, FM_TYPE_LOG_PAGE)

/* NULL when there is none. */
static GPtrArray *
get_versions (FmMapPage *self)
{
  GPtrArray *versions =
      self->versions != NULL ? fm_version_list_get_versions (self->versions, self->blend_id) : NULL;

  return versions != NULL && versions->len > 0 ? versions : NULL;
}

/* The version that is shown, else the latest. */
static gint64
first_base (FmMapPage *self)
{
  GPtrArray *versions = get_versions (self);
  const FmVersionInfo *last = g_ptr_array_index (versions, versions->len - 1);
  const gint64 shown_id = fm_session_get_version_id (fm_page_get_session (FM_PAGE (self)));

  return shown_id != 0 ? shown_id : last->id;
}

static void
new_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmMapPage *self = FM_MAP_PAGE (widget);
  FmMap *map = fm_map_new ();

  map->blend_id = self->blend_id;
  map->base_version_id = first_base (self);
  map->created_at = fm_clock_now_s ();
  fm_records_page_create (FM_RECORDS_PAGE (self), map);
}

static void
show_versions (FmMapPage *self)
{
  g_autoptr (GPtrArray) none = g_ptr_array_new ();
  GPtrArray *versions = get_versions (self);

  fm_map_view_set_versions (self->view, versions != NULL ? versions : none);
  g_object_set (
      self->list, "empty-text",
      versions == NULL
          ? _ ("A map starts from a saved version. Save one first.")
          : _ ("No map of this blend yet. Press New Map: choose a few ingredients, let the program "
               "draw up trials between them, taste, and see where the best blend lies."),
      NULL);
  FM_RECORDS_PAGE_GET_CLASS (self)->update_actions (FM_RECORDS_PAGE (self));
}

static void
versions_updated_cb (FmMapPage *self, gint64 blend_id)
{
  if (blend_id == 0 || blend_id == self->blend_id)
    show_versions (self);
}

/* The maps of another blend are other maps. */
static void
shown_changed_cb (FmMapPage *self)
{
  const gint64 blend_id = fm_session_get_blend_id (fm_page_get_session (FM_PAGE (self)));

  if (blend_id == self->blend_id)
    return;
  self->blend_id = blend_id;
  fm_records_page_close (FM_RECORDS_PAGE (self));
  show_versions (self);
}

/* Something was made, tasted or measured. */
static void
measured_cb (FmMapPage *self)
{
  FmMapDocument *document = fm_records_page_get_document (FM_RECORDS_PAGE (self));

  if (document != NULL)
    fm_map_document_reload_data (document);
}

static FmStoredDocument *
fm_map_page_take (FmRecordsPage *page, gpointer data)
{
  g_autoptr (FmMapRecord) record = data;

  return FM_STORED_DOCUMENT (fm_map_document_open (fm_page_get_session (FM_PAGE (page)),
                                                   g_steal_pointer (&record->map),
                                                   g_steal_pointer (&record->base)));
}

static char *
tell_removed (FmStoredDocument *document)
{
  const FmMap *map = fm_stored_document_get_content (document);

  return g_strdup_printf (_ ("Map “%s” removed; its versions stay"), map->name);
}

static void
fm_map_page_update_actions (FmRecordsPage *page)
{
  gtk_widget_action_set_enabled (GTK_WIDGET (page), "map.new",
                                 fm_page_is_writable (FM_PAGE (page)) &&
                                     get_versions (FM_MAP_PAGE (page)) != NULL);
}

static void
fm_map_page_show_session (FmPage *page)
{
  FmMapPage *self = FM_MAP_PAGE (page);

  g_clear_object (&self->versions);
  self->versions = fm_version_list_of (fm_page_get_session (page));
  g_signal_group_set_target (self->signals, self->versions);
  shown_changed_cb (self);
  FM_PAGE_CLASS (fm_map_page_parent_class)->show_session (page);
}

static void
fm_map_page_dispose (GObject *object)
{
  FmMapPage *self = FM_MAP_PAGE (object);

  g_clear_object (&self->signals);
  g_clear_object (&self->versions);
  gtk_widget_dispose_template (GTK_WIDGET (self), FM_TYPE_MAP_PAGE);
  G_OBJECT_CLASS (fm_map_page_parent_class)->dispose (object);
}

static void
define_records (FmRecordsPageClass *klass)
{
  klass->rows = &fm_map_log_kind;
  klass->kind = FM_CHANGE_MAP;
  klass->document_type = FM_TYPE_MAP_DOCUMENT;
  klass->load = fm_map_query_load;
  klass->free_record = (GDestroyNotify)fm_map_record_free;
  klass->take = fm_map_page_take;
  klass->create = fm_map_query_create;
  klass->free_plan = (GDestroyNotify)fm_map_free;
  klass->remove = fm_maps_remove;
  klass->tell_removed = tell_removed;
  klass->update_actions = fm_map_page_update_actions;
}

static void
fm_map_page_class_init (FmMapPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (FM_TYPE_MAP_LIST);
  g_type_ensure (FM_TYPE_MAP_VIEW);
  G_OBJECT_CLASS (klass)->dispose = fm_map_page_dispose;
  FM_PAGE_CLASS (klass)->show_session = fm_map_page_show_session;
  define_records (FM_RECORDS_PAGE_CLASS (klass));
  FM_LOG_PAGE_CLASS (klass)->new_action = "map.new";
  FM_LOG_PAGE_CLASS (klass)->opens_first = TRUE;
  gtk_widget_class_install_action (widget_class, "map.new", NULL, new_action);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/map/fm-map-page.ui");
  gtk_widget_class_bind_template_child (widget_class, FmMapPage, list);
  gtk_widget_class_bind_template_child (widget_class, FmMapPage, view);
}

static void
listen (FmPage *page)
{
  fm_page_listen (page, "changed::shown", G_CALLBACK (shown_changed_cb));
  fm_page_listen (page, "changed::version", G_CALLBACK (measured_cb));
  fm_page_listen (page, "changed::experiment", G_CALLBACK (measured_cb));
  fm_page_listen (page, "changed::tasting", G_CALLBACK (measured_cb));
}

static void
fm_map_page_init (FmMapPage *self)
{
  self->signals = g_signal_group_new (FM_TYPE_VERSION_LIST);
  g_signal_group_connect_swapped (self->signals, "updated", G_CALLBACK (versions_updated_cb), self);
  gtk_widget_init_template (GTK_WIDGET (self));
  listen (FM_PAGE (self));
}
