/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-photo-grid.c - the photos of an experiment: add, caption, view, export, remove */
#include "app/photos/fm-photo-grid.h"

#include "app/session/fm-store-task.h"

#include <glib/gi18n-lib.h>

#include "app/session/fm-removal.h"
#include "app/photos/fm-photo-caption.h"
#include "app/photos/fm-photo-export.h"
#include "app/photos/fm-photo-import.h"
#include "app/photos/fm-photo-listing.h"
#include "app/photos/fm-photo-tile.h"
#include "app/photos/fm-photo-viewer.h"
#include "app/widgets/fm-widget.h"
#include "app/widgets/fm-wrap-layout.h"

struct _FmPhotoGrid {
  GtkWidget parent_instance;

  GtkWidget *box;
  GtkWidget *buttons_box;
  GtkBox *tiles_box;
  GtkLabel *empty_label;
  GtkWidget *progress_box;
  GtkProgressBar *progress_bar;
  GtkWidget *message_box;
  GtkLabel *message_label;

  FmSession *session;
  FmNotebook *notebook;
  gint64 experiment_id;
  GPtrArray *photos;       /* FmPhotoInfo */
  GHashTable *leaving;     /* ids (gint64*) that a toast offers to bring back */
  GCancellable *listing;   /* ends when another experiment is shown */
  GCancellable *importing; /* NULL while nothing is imported */
  GtkFileChooserNative *chooser;
};

G_DEFINE_FINAL_TYPE (FmPhotoGrid, fm_photo_grid, GTK_TYPE_WIDGET)

enum {
  PHOTOS_CHANGED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static void reload (FmPhotoGrid *self);

static void
show_message (FmPhotoGrid *self, const char *message)
{
  gtk_label_set_text (self->message_label, message != NULL ? message : "");
  gtk_widget_set_visible (self->message_box, message != NULL);
}

static void
tile_open_cb (FmPhotoGrid *self, FmPhotoTile *tile)
{
  const FmPhotoInfo *wanted = fm_photo_tile_get_info (tile);
  FmPhotoViewer *viewer;
  guint index = 0;

  if (!g_ptr_array_find (self->photos, wanted, &index))
    return;
  viewer = fm_photo_viewer_new (GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self))),
                                self->notebook, self->photos, index);
  gtk_window_present (GTK_WINDOW (viewer));
}

static void
export_failed (GtkWidget *owner, const GError *error)
{
  if (FM_PHOTO_GRID (owner)->message_label != NULL)
    show_message (FM_PHOTO_GRID (owner), error->message);
}

static void
tile_export_cb (FmPhotoGrid *self, FmPhotoTile *tile)
{
  fm_photo_export (GTK_WIDGET (self), self->notebook, fm_photo_tile_get_info (tile), export_failed);
}

static void
removal_settled (GtkWidget *owner, gint64 id, gboolean removed, const GError *error)
{
  FmPhotoGrid *self = FM_PHOTO_GRID (owner);

  g_hash_table_remove (self->leaving, &id);
  if (self->notebook == NULL)
    return;
  if (error != NULL)
    show_message (self, error->message);
  if (removed) {
    fm_documents_forget (fm_session_get_documents (self->session), FM_TYPE_PHOTO_CAPTION,
                         self->notebook, id);
    g_signal_emit (self, signals[PHOTOS_CHANGED], 0);
  } else {
    reload (self);
  }
}

static void
tile_remove_cb (FmPhotoGrid *self, FmPhotoTile *tile)
{
  const gint64 id = fm_photo_tile_get_info (tile)->id;

  g_hash_table_add (self->leaving, g_memdup2 (&id, sizeof id));
  fm_removal_offer (GTK_WIDGET (self), _ ("Photo removed"), self->notebook, id, fm_photos_remove,
                    removal_settled);
  reload (self);
}

static void
add_tile (FmPhotoGrid *self, guint number, FmPhotoInfo *info, GdkTexture *texture)
{
  GtkWidget *tile = fm_photo_tile_new (self->session, self->photos, info, number);

  fm_photo_tile_set_thumbnail (FM_PHOTO_TILE (tile), texture);
  g_signal_connect_swapped (tile, "open", G_CALLBACK (tile_open_cb), self);
  g_signal_connect_swapped (tile, "export", G_CALLBACK (tile_export_cb), self);
  g_signal_connect_swapped (tile, "remove", G_CALLBACK (tile_remove_cb), self);
  gtk_box_append (self->tiles_box, tile);
}

static void
clear_tiles (FmPhotoGrid *self)
{
  fm_widget_clear_box (self->tiles_box);
}

/* Leaves out the photos that a toast still offers to bring back. */
static void
show_photos (FmPhotoGrid *self, FmPhotoListing *listing)
{
  guint number = 0;

  clear_tiles (self);
  g_clear_pointer (&self->photos, g_ptr_array_unref);
  for (guint i = listing->photos->len; i > 0; i--) {
    const FmPhotoInfo *info = g_ptr_array_index (listing->photos, i - 1);

    if (!g_hash_table_contains (self->leaving, &info->id))
      continue;
    g_ptr_array_remove_index (listing->photos, i - 1);
    if (i - 1 < listing->thumbnails->len)
      g_ptr_array_remove_index (listing->thumbnails, i - 1);
  }
  self->photos = g_ptr_array_ref (listing->photos);
  for (guint i = 0; i < MIN (listing->photos->len, listing->thumbnails->len); i++)
    add_tile (self, ++number, g_ptr_array_index (listing->photos, i),
              g_ptr_array_index (listing->thumbnails, i));
  gtk_widget_set_visible (GTK_WIDGET (self->empty_label), number == 0);
  gtk_widget_set_visible (GTK_WIDGET (self->tiles_box), number > 0);
}

static void
list_done_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  FmPhotoGrid *self = FM_PHOTO_GRID (source);
  g_autoptr (GError) error = NULL;
  g_autoptr (FmPhotoListing) listing = fm_store_task_finish (result, &error);

  if (listing != NULL) {
    if (self->tiles_box != NULL)
      show_photos (self, listing);
  } else if (!g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED) &&
             self->message_label != NULL) {
    show_message (self, error->message);
  }
}

static void
reload (FmPhotoGrid *self)
{
  g_cancellable_cancel (self->listing);
  g_clear_object (&self->listing);
  if (self->notebook == NULL)
    return;
  self->listing = g_cancellable_new ();
  fm_store_task (&(FmStoreTask){
      .owner = self,
      .notebook = self->notebook,
      .run = fm_photo_listing_read,
      .free_result = fm_photo_listing_free,
      .data = g_memdup2 (&self->experiment_id, sizeof self->experiment_id),
      .free_data = g_free,
      .cancellable = self->listing,
      .done = list_done_cb,
  });
}

static void
import_progress (GObject *owner, guint n_done, guint n_total)
{
  FmPhotoGrid *self = FM_PHOTO_GRID (owner);
  g_autofree char *text = g_strdup_printf (_ ("Adding photo %u of %u"), n_done + 1, n_total);

  if (self->progress_bar == NULL || g_cancellable_is_cancelled (self->importing))
    return;
  gtk_progress_bar_set_text (self->progress_bar, text);
  gtk_progress_bar_set_fraction (self->progress_bar, ((double)n_done + 0.5) / n_total);
}

static void
import_done_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  FmPhotoGrid *self = FM_PHOTO_GRID (source);
  guint n_added = 0;
  gboolean cancelled = FALSE;
  g_auto (GStrv) messages = fm_photo_import_finish (result, &n_added, &cancelled);

  g_clear_object (&self->importing);
  if (self->progress_box == NULL)
    return;
  gtk_widget_set_visible (self->progress_box, FALSE);
  gtk_widget_set_sensitive (self->buttons_box, TRUE);
  if (cancelled) {
    g_autofree char *text =
        g_strdup_printf (ngettext ("Cancelled. %u photo is in the notebook.",
                                   "Cancelled. %u photos are in the notebook.", n_added),
                         n_added);

    show_message (self, text);
  } else if (messages[0] != NULL) {
    g_autofree char *text = g_strjoinv ("\n", messages);

    show_message (self, text);
  }
  if (n_added == 0)
    return;
  reload (self);
  g_signal_emit (self, signals[PHOTOS_CHANGED], 0);
}

static void
import_sources (FmPhotoGrid *self, GPtrArray *sources)
{
  if (self->notebook == NULL || sources->len == 0)
    return;
  if (fm_notebook_is_read_only (self->notebook)) {
    show_message (self, _ ("This notebook is open for reading only; photos cannot be added."));
    return;
  }
  if (self->importing != NULL) {
    show_message (self, _ ("Photos are being added. Wait until they are in, or cancel."));
    return;
  }
  show_message (self, NULL);
  self->importing = g_cancellable_new ();
  gtk_widget_set_visible (self->progress_box, TRUE);
  gtk_widget_set_sensitive (self->buttons_box, FALSE);
  fm_photo_import_async (G_OBJECT (self), self->notebook, self->experiment_id, sources,
                         self->importing, import_progress, import_done_cb, NULL);
}

static void
import_model (FmPhotoGrid *self, GListModel *files)
{
  g_autoptr (GPtrArray) sources = g_ptr_array_new_with_free_func (g_object_unref);

  for (guint i = 0; i < g_list_model_get_n_items (files); i++)
    g_ptr_array_add (sources, g_list_model_get_item (files, i));
  import_sources (self, sources);
}

static gboolean
import_value (FmPhotoGrid *self, const GValue *value)
{
  g_autoptr (GPtrArray) sources = g_ptr_array_new_with_free_func (g_object_unref);

  if (G_VALUE_HOLDS (value, GDK_TYPE_FILE_LIST)) {
    const GSList *files = g_value_get_boxed (value);

    for (const GSList *l = files; l != NULL; l = l->next)
      g_ptr_array_add (sources, g_object_ref (l->data));
  } else if (G_VALUE_HOLDS (value, GDK_TYPE_TEXTURE)) {
    g_ptr_array_add (sources, g_value_dup_object (value));
  } else {
    return FALSE;
  }
  import_sources (self, sources);
  return TRUE;
}

/* What is dragged out of here is no new photo. */
static gboolean
accept_cb (GtkDropTarget *target, GdkDrop *drop)
{
  return gdk_drop_get_drag (drop) == NULL && (gdk_drop_get_actions (drop) & GDK_ACTION_COPY) != 0 &&
         gdk_content_formats_match (gtk_drop_target_get_formats (target),
                                    gdk_drop_get_formats (drop));
}

static gboolean
drop_cb (FmPhotoGrid *self, const GValue *value)
{
  return import_value (self, value);
}

static void
chooser_response_cb (FmPhotoGrid *self, int response)
{
  g_autoptr (GListModel) files = NULL;

  if (response == GTK_RESPONSE_ACCEPT) {
    files = gtk_file_chooser_get_files (GTK_FILE_CHOOSER (self->chooser));
    import_model (self, files);
  }
  g_clear_object (&self->chooser);
}

static void
paste_texture_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (FmPhotoGrid) self = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (GdkTexture) texture =
      gdk_clipboard_read_texture_finish (GDK_CLIPBOARD (source), result, &error);
  g_autoptr (GPtrArray) sources = g_ptr_array_new_with_free_func (g_object_unref);

  if (self->message_label == NULL)
    return;
  if (texture == NULL) {
    show_message (self, _ ("The clipboard holds no photo. Copy a picture or photo files first."));
    return;
  }
  g_ptr_array_add (sources, g_steal_pointer (&texture));
  import_sources (self, sources);
}

static void
paste_files_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (FmPhotoGrid) self = data;
  g_autoptr (GError) error = NULL;
  const GValue *value = gdk_clipboard_read_value_finish (GDK_CLIPBOARD (source), result, &error);

  if (self->message_label == NULL)
    return;
  if (value == NULL || !import_value (self, value))
    show_message (self, _ ("The clipboard holds no photo. Copy a picture or photo files first."));
}

static void
paste_clicked_cb (FmPhotoGrid *self)
{
  fm_photo_grid_paste (self);
}

static void
cancel_clicked_cb (FmPhotoGrid *self)
{
  g_cancellable_cancel (self->importing);
  gtk_progress_bar_set_text (self->progress_bar, _ ("Stopping after the photo under way"));
}

static void
dismiss_clicked_cb (FmPhotoGrid *self)
{
  show_message (self, NULL);
}

static void
fm_photo_grid_dispose (GObject *object)
{
  FmPhotoGrid *self = FM_PHOTO_GRID (object);

  g_cancellable_cancel (self->listing);
  g_cancellable_cancel (self->importing);
  g_clear_object (&self->listing);
  g_clear_object (&self->chooser);
  fm_widget_drop_template (GTK_WIDGET (self), FM_TYPE_PHOTO_GRID);
  g_clear_pointer (&self->photos, g_ptr_array_unref);
  g_clear_pointer (&self->notebook, fm_notebook_unref);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (fm_photo_grid_parent_class)->dispose (object);
}

static void
fm_photo_grid_finalize (GObject *object)
{
  FmPhotoGrid *self = FM_PHOTO_GRID (object);

  g_hash_table_unref (self->leaving);
  g_clear_object (&self->importing);
  G_OBJECT_CLASS (fm_photo_grid_parent_class)->finalize (object);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, FmPhotoGrid, box);
  gtk_widget_class_bind_template_child (widget_class, FmPhotoGrid, buttons_box);
  gtk_widget_class_bind_template_child (widget_class, FmPhotoGrid, tiles_box);
  gtk_widget_class_bind_template_child (widget_class, FmPhotoGrid, empty_label);
  gtk_widget_class_bind_template_child (widget_class, FmPhotoGrid, progress_box);
  gtk_widget_class_bind_template_child (widget_class, FmPhotoGrid, progress_bar);
  gtk_widget_class_bind_template_child (widget_class, FmPhotoGrid, message_box);
  gtk_widget_class_bind_template_child (widget_class, FmPhotoGrid, message_label);
  gtk_widget_class_bind_template_callback_full (widget_class, "add_clicked_cb",
                                                G_CALLBACK (fm_photo_grid_add));
  gtk_widget_class_bind_template_callback (widget_class, paste_clicked_cb);
  gtk_widget_class_bind_template_callback (widget_class, cancel_clicked_cb);
  gtk_widget_class_bind_template_callback (widget_class, dismiss_clicked_cb);
}

static void
fm_photo_grid_class_init (FmPhotoGridClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = fm_photo_grid_dispose;
  object_class->finalize = fm_photo_grid_finalize;
  signals[PHOTOS_CHANGED] = g_signal_new ("photos-changed", FM_TYPE_PHOTO_GRID, G_SIGNAL_RUN_LAST,
                                          0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  g_type_ensure (FM_TYPE_WRAP_LAYOUT);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/photos/fm-photo-grid.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  bind_template (widget_class);
}

static void
fm_photo_grid_init (FmPhotoGrid *self)
{
  GtkDropTarget *target = gtk_drop_target_new (G_TYPE_INVALID, GDK_ACTION_COPY);
  GType types[] = { GDK_TYPE_FILE_LIST, GDK_TYPE_TEXTURE };

  self->leaving = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, NULL);
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_drop_target_set_gtypes (target, types, G_N_ELEMENTS (types));
  g_signal_connect (target, "accept", G_CALLBACK (accept_cb), NULL);
  g_signal_connect_swapped (target, "drop", G_CALLBACK (drop_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (target));
}

void
fm_photo_grid_set_experiment (FmPhotoGrid *self, FmSession *session, gint64 experiment_id)
{
  FmNotebook *notebook = session != NULL ? fm_session_get_notebook (session) : NULL;

  g_return_if_fail (FM_IS_PHOTO_GRID (self));
  if (self->notebook == notebook && self->experiment_id == experiment_id)
    return;
  g_set_object (&self->session, session);
  g_clear_pointer (&self->notebook, fm_notebook_unref);
  self->notebook = notebook != NULL ? fm_notebook_ref (notebook) : NULL;
  self->experiment_id = experiment_id;
  show_message (self, NULL);
  clear_tiles (self);
  reload (self);
}

void
fm_photo_grid_add (FmPhotoGrid *self)
{
  g_autoptr (GtkFileFilter) images = gtk_file_filter_new ();
  g_autoptr (GtkFileFilter) all = gtk_file_filter_new ();

  if (self->notebook == NULL)
    return;
  gtk_file_filter_set_name (images, _ ("Photos"));
  gtk_file_filter_add_pixbuf_formats (images);
  gtk_file_filter_set_name (all, _ ("All files"));
  gtk_file_filter_add_pattern (all, "*");
  g_clear_object (&self->chooser);
  self->chooser = gtk_file_chooser_native_new (
      _ ("Add Photos"), GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self))),
      GTK_FILE_CHOOSER_ACTION_OPEN, _ ("_Add"), _ ("_Cancel"));
  gtk_file_chooser_set_select_multiple (GTK_FILE_CHOOSER (self->chooser), TRUE);
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (self->chooser), images);
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (self->chooser), all);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (self->chooser), TRUE);
  g_signal_connect_object (self->chooser, "response", G_CALLBACK (chooser_response_cb), self,
                           G_CONNECT_SWAPPED);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (self->chooser));
}

void
fm_photo_grid_paste (FmPhotoGrid *self)
{
  GdkClipboard *clipboard = gtk_widget_get_clipboard (GTK_WIDGET (self));
  GdkContentFormats *formats = gdk_clipboard_get_formats (clipboard);

  /* A file manager offers both; the files keep their own bytes. */
  if (gdk_content_formats_contain_gtype (formats, GDK_TYPE_FILE_LIST) ||
      gdk_content_formats_contain_mime_type (formats, "text/uri-list"))
    gdk_clipboard_read_value_async (clipboard, GDK_TYPE_FILE_LIST, G_PRIORITY_DEFAULT, NULL,
                                    paste_files_cb, g_object_ref (self));
  else
    gdk_clipboard_read_texture_async (clipboard, NULL, paste_texture_cb, g_object_ref (self));
}
