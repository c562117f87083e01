/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-page.c - maps of the shown blend: what changes, the trials, and what they show */
#include <glib/gi18n-lib.h>

#include "app/widgets/fm-accessible.h"
#include "app/map/fm-map-page-private.h"
#include "app/widgets/fm-widget.h"

G_DEFINE_FINAL_TYPE (FmMapPage, fm_map_page, FM_TYPE_PAGE)

static void
update_actions (FmMapPage *self)
{
  const gboolean editable = self->document != NULL && fm_map_document_is_editable (self->document);
  const gboolean has_trials = editable && fm_map_document_get_map (self->document)->points->len > 0;

  gtk_widget_action_set_enabled (GTK_WIDGET (self), "map.new", fm_map_page_can_add (self));
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "map.remove", editable);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "map.clear-trials",
                                 has_trials && !fm_map_document_is_making (self->document));
  gtk_editable_set_editable (GTK_EDITABLE (self->name_entry), editable);
}

/* What was typed last is stored before the document is let go. */
void
fm_map_page_close_map (FmMapPage *self)
{
  g_cancellable_cancel (self->opening);
  g_clear_object (&self->opening);
  if (self->document == NULL)
    return;
  fm_stored_document_flush (FM_STORED_DOCUMENT (self->document));
  g_signal_handlers_disconnect_by_data (self->document, self);
  fm_map_components_set_document (self->components, NULL);
  fm_map_trials_set_document (self->trials, NULL);
  fm_map_reading_set_document (self->reading, NULL);
  g_clear_object (&self->document);
}

static void
show_map (FmMapPage *self, FmMapDocument *document)
{
  self->document = document;
  self->loading = TRUE;
  gtk_editable_set_text (GTK_EDITABLE (self->name_entry), fm_map_document_get_map (document)->name);
  self->loading = FALSE;
  g_signal_connect_swapped (document, "changed", G_CALLBACK (update_actions), self);
  fm_map_components_set_versions (self->components, self->list->versions);
  fm_map_components_set_document (self->components, document);
  fm_map_trials_set_document (self->trials, document);
  fm_map_reading_set_document (self->reading, document);
  fm_map_document_reload_data (document);
  gtk_stack_set_visible_child_name (self->stack, "content");
  update_actions (self);
}

static void
opened_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (FmMapPage) self = FM_MAP_PAGE (user_data);
  g_autoptr (GError) error = NULL;
  FmMapDocument *document = NULL;

  if (fm_page_get_session (FM_PAGE (self)) == NULL ||
      g_task_get_cancellable (G_TASK (result)) != self->opening)
    return;
  g_clear_object (&self->opening);
  document = fm_map_document_load_finish (result, &error);
  if (document != NULL)
    show_map (self, document);
  else
    fm_session_failure (fm_page_get_session (FM_PAGE (self)), error);
}

static void
open_map (FmMapPage *self, gint64 id)
{
  if (self->document != NULL && fm_map_document_get_map (self->document)->id == id)
    return;
  fm_map_page_close_map (self);
  self->opening = g_cancellable_new ();
  fm_map_document_load_async (fm_page_get_session (FM_PAGE (self)), id, self->opening, opened_cb,
                              g_object_ref (self));
}

static void
show_empty (FmMapPage *self)
{
  const gboolean no_versions = self->list != NULL && self->list->versions->len == 0;

  fm_map_page_close_map (self);
  adw_status_page_set_description (
      self->empty_page,
      no_versions ? _ ("A map starts from a saved version. Save one first.")
                  : _ ("Choose a few ingredients, let the program draw up trials between them, "
                       "taste, and see where the best blend lies."));
  gtk_stack_set_visible_child_name (self->stack, "empty");
  update_actions (self);
}

/* Fills the choice of maps and answers which is to be shown; 0 = none. */
static gint64
fill_maps (FmMapPage *self)
{
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);
  guint selected = 0;

  g_array_set_size (self->shown_ids, 0);
  for (guint i = 0; i < self->list->maps->len; i++) {
    const FmMapInfo *info = g_ptr_array_index (self->list->maps, i);

    if (g_hash_table_contains (self->hidden, &info->id))
      continue;
    if (info->id == self->wanted_id)
      selected = self->shown_ids->len;
    g_array_append_val (self->shown_ids, info->id);
    gtk_string_list_append (names, info->name);
  }
  self->loading = TRUE;
  gtk_drop_down_set_model (self->map_drop_down, G_LIST_MODEL (names));
  if (self->shown_ids->len > 0)
    gtk_drop_down_set_selected (self->map_drop_down, selected);
  self->loading = FALSE;
  return self->shown_ids->len > 0 ? g_array_index (self->shown_ids, gint64, selected) : 0;
}

void
fm_map_page_show_list (FmMapPage *self)
{
  const gint64 id = fill_maps (self);

  if (id == 0) {
    show_empty (self);
    return;
  }
  self->wanted_id = id;
  fm_map_components_set_versions (self->components, self->list->versions);
  open_map (self, id);
  update_actions (self);
}

static void
listed_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (FmMapPage) self = FM_MAP_PAGE (user_data);
  g_autoptr (GError) error = NULL;
  FmMapList *list;

  if (fm_page_get_session (FM_PAGE (self)) == NULL ||
      g_task_get_cancellable (G_TASK (result)) != self->listing)
    return;
  g_clear_object (&self->listing);
  list = fm_map_list_finish (result, &error);
  if (list == NULL) {
    fm_session_failure (fm_page_get_session (FM_PAGE (self)), error);
    return;
  }
  g_clear_pointer (&self->list, fm_map_list_free);
  self->list = list;
  fm_map_page_show_list (self);
}

static void
stop_listing (FmMapPage *self)
{
  g_cancellable_cancel (self->listing);
  g_clear_object (&self->listing);
}

static void
reload (FmMapPage *self)
{
  FmSession *session = fm_page_get_session (FM_PAGE (self));
  const gint64 blend_id = session != NULL ? fm_session_get_blend_id (session) : 0;

  self->stale = FALSE;
  stop_listing (self);
  if (blend_id != self->blend_id) {
    fm_map_page_close_map (self);
    g_clear_pointer (&self->list, fm_map_list_free);
    self->wanted_id = 0;
    gtk_stack_set_visible_child_name (self->stack, "loading");
  }
  self->blend_id = blend_id;
  if (blend_id == 0) {
    show_empty (self);
    return;
  }
  self->listing = g_cancellable_new ();
  fm_map_list_async (fm_page_get_notebook (FM_PAGE (self)), blend_id, self->listing, listed_cb,
                     g_object_ref (self));
}

static void
stale_cb (FmMapPage *self)
{
  self->stale = TRUE;
  if (gtk_widget_get_mapped (GTK_WIDGET (self)))
    reload (self);
}

/* Something was made, tasted or measured. */
static void
measured_cb (FmMapPage *self)
{
  stale_cb (self);
  if (self->document != NULL &&
      fm_session_get_blend_id (fm_page_get_session (FM_PAGE (self))) == self->blend_id)
    fm_map_document_reload_data (self->document);
}

static void
shown_changed_cb (FmMapPage *self)
{
  if (fm_session_get_blend_id (fm_page_get_session (FM_PAGE (self))) != self->blend_id)
    stale_cb (self);
}

static void
notebook_changed_cb (FmMapPage *self)
{
  fm_map_page_close_map (self);
  stop_listing (self);
  g_clear_pointer (&self->list, fm_map_list_free);
  g_hash_table_remove_all (self->hidden);
  self->blend_id = 0;
  self->wanted_id = 0;
  stale_cb (self);
}

static void
map_selected_cb (FmMapPage *self)
{
  const guint selected = gtk_drop_down_get_selected (self->map_drop_down);

  if (self->loading || selected >= self->shown_ids->len)
    return;
  self->wanted_id = g_array_index (self->shown_ids, gint64, selected);
  open_map (self, self->wanted_id);
}

static void
name_changed_cb (FmMapPage *self)
{
  g_autofree char *name = g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->name_entry)));
  FmMap *map;

  if (self->loading || self->document == NULL || *g_strstrip (name) == '\0')
    return;
  map = fm_map_document_get_map (self->document);
  g_free (map->name);
  map->name = g_steal_pointer (&name);
  fm_map_document_touch (self->document);
}

static void
fm_map_page_show_session (FmPage *page)
{
  stale_cb (FM_MAP_PAGE (page));
}

static void
fm_map_page_map (GtkWidget *widget)
{
  FmMapPage *self = FM_MAP_PAGE (widget);

  GTK_WIDGET_CLASS (fm_map_page_parent_class)->map (widget);
  if (self->stale)
    reload (self);
}

static void
fm_map_page_dispose (GObject *object)
{
  FmMapPage *self = FM_MAP_PAGE (object);

  stop_listing (self);
  if (self->components != NULL)
    fm_map_page_close_map (self);
  self->loading = TRUE;
  fm_widget_drop_template (GTK_WIDGET (self), FM_TYPE_MAP_PAGE);
  G_OBJECT_CLASS (fm_map_page_parent_class)->dispose (object);
}

static void
fm_map_page_finalize (GObject *object)
{
  FmMapPage *self = FM_MAP_PAGE (object);

  g_clear_pointer (&self->list, fm_map_list_free);
  g_array_unref (self->shown_ids);
  g_hash_table_unref (self->hidden);
  G_OBJECT_CLASS (fm_map_page_parent_class)->finalize (object);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, FmMapPage, toast_overlay);
  gtk_widget_class_bind_template_child (widget_class, FmMapPage, stack);
  gtk_widget_class_bind_template_child (widget_class, FmMapPage, empty_page);
  gtk_widget_class_bind_template_child (widget_class, FmMapPage, map_drop_down);
  gtk_widget_class_bind_template_child (widget_class, FmMapPage, name_entry);
  gtk_widget_class_bind_template_child (widget_class, FmMapPage, components);
  gtk_widget_class_bind_template_child (widget_class, FmMapPage, trials);
  gtk_widget_class_bind_template_child (widget_class, FmMapPage, reading);
  gtk_widget_class_bind_template_callback (widget_class, map_selected_cb);
  gtk_widget_class_bind_template_callback (widget_class, name_changed_cb);
}

static void
fm_map_page_class_init (FmMapPageClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (FM_TYPE_MAP_COMPONENTS);
  g_type_ensure (FM_TYPE_MAP_TRIALS);
  g_type_ensure (FM_TYPE_MAP_READING);
  object_class->dispose = fm_map_page_dispose;
  object_class->finalize = fm_map_page_finalize;
  widget_class->map = fm_map_page_map;
  FM_PAGE_CLASS (klass)->show_session = fm_map_page_show_session;
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/map/fm-map-page.ui");
  fm_map_page_install_acts (widget_class);
  bind_template (widget_class);
}

static void
listen (FmPage *page)
{
  fm_page_listen (page, "changed::notebook", G_CALLBACK (notebook_changed_cb));
  fm_page_listen (page, "changed::shown", G_CALLBACK (shown_changed_cb));
  fm_page_listen (page, "changed::map", G_CALLBACK (stale_cb));
  fm_page_listen (page, "changed::version", G_CALLBACK (measured_cb));
  fm_page_listen (page, "changed::experiment", G_CALLBACK (measured_cb));
  fm_page_listen (page, "changed::tasting", G_CALLBACK (measured_cb));
}

static void
fm_map_page_init (FmMapPage *self)
{
  self->shown_ids = g_array_new (FALSE, FALSE, sizeof (gint64));
  self->hidden = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, NULL);
  self->loading = TRUE;
  gtk_widget_init_template (GTK_WIDGET (self));
  self->loading = FALSE;
  fm_widget_ellipsize_drop_down (self->map_drop_down);
  fm_accessible_name_drop_down (self->map_drop_down, _ ("Map"));
  listen (FM_PAGE (self));
  update_actions (self);
}
