/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-window-search.c - Ctrl+F: finds a place in the notebook and goes there */
#include "app/formula/fm-formula-page.h"
#include "app/log/fm-records-page.h"
#include "app/photos/fm-photo-viewer.h"
#include "app/session/fm-store-task.h"
#include "app/window/fm-page-slot.h"
#include "app/window/fm-search-window.h"
#include "app/window/fm-window-private.h"

/* Shown first, it is built. NULL while no blend is shown. */
static GtkWidget *
go_to_page (FmWindow *self, const char *name)
{
  adw_leaflet_set_visible_child_name (self->leaflet, "work");
  adw_view_stack_set_visible_child_name (self->stack, name);
  return fm_page_slot_get_page (
      FM_PAGE_SLOT (adw_view_stack_get_child_by_name (self->stack, name)));
}

static void
go_to_record (FmWindow *self, const char *page_name, gint64 id)
{
  GtkWidget *page = go_to_page (self, page_name);

  if (page != NULL)
    fm_records_page_go_to (FM_RECORDS_PAGE (page), id);
}

static void
show_blend (FmWindow *self, gint64 blend_id)
{
  if (fm_session_get_blend_id (self->session) != blend_id)
    fm_session_show_blend (self->session, blend_id);
}

/* A photo that was found, among those of its experiment. */
typedef struct {
  FmWindow *window;
  FmNotebook *notebook;
  gint64 experiment_id;
  gint64 photo_id;
} FoundPhoto;

static void
found_photo_free (gpointer data)
{
  FoundPhoto *self = data;

  g_object_unref (self->window);
  fm_notebook_unref (self->notebook);
  g_free (self);
}

static gpointer
list_photos (FmNotebook *notebook,
             gpointer experiment_id,
             GCancellable *cancellable,
             GError **error)
{
  return fm_photos_list (notebook, *(const gint64 *)experiment_id, error);
}

static void
present_photo (const FoundPhoto *found, GPtrArray *photos)
{
  for (guint i = 0; i < photos->len; i++) {
    const FmPhotoInfo *info = g_ptr_array_index (photos, i);

    if (info->id == found->photo_id)
      gtk_window_present (GTK_WINDOW (
          fm_photo_viewer_new (GTK_WINDOW (found->window), found->notebook, photos, i)));
  }
}

static void
photos_listed_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  FoundPhoto *found = user_data;
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) photos = fm_store_task_finish (result, &error);

  /* The window may show another notebook by now, or be closed. */
  if (found->window->session != NULL &&
      fm_session_get_notebook (found->window->session) == found->notebook) {
    if (photos != NULL)
      present_photo (found, photos);
    else
      fm_session_failure (found->window->session, error);
  }
  found_photo_free (found);
}

/* Over its experiment, which the window shows meanwhile. */
static void
show_photo (FmWindow *self, const FmFound *found)
{
  FoundPhoto *photo = g_new0 (FoundPhoto, 1);

  photo->window = g_object_ref (self);
  photo->notebook = fm_notebook_ref (fm_session_get_notebook (self->session));
  photo->experiment_id = found->experiment_id;
  photo->photo_id = found->id;
  fm_store_task (&(FmStoreTask){
      .notebook = photo->notebook,
      .run = list_photos,
      .free_result = (GDestroyNotify)g_ptr_array_unref,
      .data = g_memdup2 (&photo->experiment_id, sizeof photo->experiment_id),
      .free_data = g_free,
      .done = photos_listed_cb,
      .user_data = photo,
  });
}

static void
found_chosen_cb (FmWindow *self, const FmFound *found)
{
  GtkWidget *page;

  switch (found->kind) {
  case FM_FOUND_BLEND:
  case FM_FOUND_DRAFT:
    go_to_page (self, "formula");
    fm_session_show_blend (self->session, found->blend_id);
    break;
  case FM_FOUND_VERSION:
    go_to_page (self, "versions");
    fm_session_show_version (self->session, found->version_id);
    break;
  case FM_FOUND_EXPERIMENT:
  case FM_FOUND_PHOTO:
    show_blend (self, found->blend_id);
    go_to_record (self, "experiments", found->experiment_id);
    if (found->kind == FM_FOUND_PHOTO)
      show_photo (self, found);
    break;
  case FM_FOUND_TASTING:
    go_to_record (self, "tastings", found->id);
    break;
  case FM_FOUND_OWN_ENTRY:
    page = go_to_page (self, "formula");
    if (page != NULL)
      fm_formula_page_find_food (FM_FORMULA_PAGE (page), found->title);
    break;
  case FM_N_FOUND:
    break;
  }
}

static void
find_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmWindow *self = FM_WINDOW (widget);
  FmSearchWindow *window = fm_search_window_new (GTK_WINDOW (self), self->session);

  g_signal_connect_object (window, "chosen", G_CALLBACK (found_chosen_cb), self, G_CONNECT_SWAPPED);
  gtk_window_present (GTK_WINDOW (window));
}

void
fm_window_install_search_action (GtkWidgetClass *klass)
{
  gtk_widget_class_install_action (klass, "win.find", NULL, find_action);
}
