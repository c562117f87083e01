/* fm-photo-tile.c - a photo's thumbnail with its caption */
#include "app/photos/fm-photo-tile.h"

#include <glib/gi18n-lib.h>

#include "app/widgets/fm-widget.h"

#define SAVE_DELAY_MS 500

struct _FmPhotoTile {
  GtkWidget parent_instance;

  GtkWidget *box;
  GtkButton *open_button;
  GtkPicture *picture;
  GtkLabel *missing_label;
  GtkEntry *caption_entry;
  GtkButton *export_button;
  GtkButton *remove_button;

  FmNotebook *notebook;
  GPtrArray *photos;
  FmPhotoInfo *info;
  guint save_source;
  gboolean saving;
  gboolean dirty;
  gboolean loading;
};

G_DEFINE_FINAL_TYPE (FmPhotoTile, fm_photo_tile, GTK_TYPE_WIDGET)

enum {
  OPEN,
  EXPORT,
  REMOVE,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

typedef struct {
  FmNotebook *notebook;
  gint64 photo_id;
  char *caption;
} CaptionJob;

static void
caption_job_free (CaptionJob *job)
{
  fm_notebook_unref (job->notebook);
  g_free (job->caption);
  g_free (job);
}

static void
caption_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  CaptionJob *job = data;
  GError *error = NULL;

  if (fm_photos_set_caption (job->notebook, job->photo_id, job->caption, &error))
    g_task_return_boolean (task, TRUE);
  else
    g_task_return_error (task, error);
}

static void save_caption (FmPhotoTile *self);

static void
caption_done_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  FmPhotoTile *self = FM_PHOTO_TILE (source);
  g_autoptr (GError) error = NULL;

  self->saving = FALSE;
  if (g_task_propagate_boolean (G_TASK (result), &error)) {
    if (self->caption_entry != NULL)
      gtk_widget_remove_css_class (GTK_WIDGET (self->caption_entry), "error");
    if (self->dirty)
      save_caption (self);
    return;
  }
  self->dirty = TRUE;
  if (self->caption_entry != NULL) {
    gtk_widget_add_css_class (GTK_WIDGET (self->caption_entry), "error");
    gtk_widget_set_tooltip_text (GTK_WIDGET (self->caption_entry), error->message);
  }
}

/* One at a time, so that an older caption never arrives last. */
static void
save_caption (FmPhotoTile *self)
{
  g_autoptr (GTask) task = NULL;
  CaptionJob *job;

  if (self->saving || !self->dirty)
    return;
  self->saving = TRUE;
  self->dirty = FALSE;
  job = g_new0 (CaptionJob, 1);
  job->notebook = fm_notebook_ref (self->notebook);
  job->photo_id = self->info->id;
  job->caption = g_strdup (self->info->caption);
  task = g_task_new (self, NULL, caption_done_cb, NULL);
  g_task_set_source_tag (task, save_caption);
  g_task_set_task_data (task, job, (GDestroyNotify)caption_job_free);
  g_task_run_in_thread (task, caption_thread);
}

static gboolean
save_timeout_cb (gpointer data)
{
  FmPhotoTile *self = data;

  self->save_source = 0;
  save_caption (self);
  return G_SOURCE_REMOVE;
}

static void
caption_changed_cb (FmPhotoTile *self)
{
  if (self->loading)
    return;
  g_free (self->info->caption);
  self->info->caption = g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->caption_entry)));
  self->dirty = TRUE;
  if (self->save_source == 0)
    self->save_source = g_timeout_add (SAVE_DELAY_MS, save_timeout_cb, self);
}

static void
open_clicked_cb (FmPhotoTile *self)
{
  g_signal_emit (self, signals[OPEN], 0);
}

static void
export_clicked_cb (FmPhotoTile *self)
{
  g_signal_emit (self, signals[EXPORT], 0);
}

static void
remove_clicked_cb (FmPhotoTile *self)
{
  g_signal_emit (self, signals[REMOVE], 0);
}

static void
fm_photo_tile_dispose (GObject *object)
{
  FmPhotoTile *self = FM_PHOTO_TILE (object);

  /* The window may be closing: what was typed last is stored before the tile goes. */
  if (self->save_source != 0 && self->dirty) {
    self->dirty = FALSE;
    fm_photos_set_caption (self->notebook, self->info->id, self->info->caption, NULL);
  }
  g_clear_handle_id (&self->save_source, g_source_remove);
  fm_widget_drop_template (GTK_WIDGET (self), FM_TYPE_PHOTO_TILE);
  G_OBJECT_CLASS (fm_photo_tile_parent_class)->dispose (object);
}

static void
fm_photo_tile_finalize (GObject *object)
{
  FmPhotoTile *self = FM_PHOTO_TILE (object);

  g_clear_pointer (&self->photos, g_ptr_array_unref);
  g_clear_pointer (&self->notebook, fm_notebook_unref);
  G_OBJECT_CLASS (fm_photo_tile_parent_class)->finalize (object);
}

static void
install_signals (void)
{
  const GType type = FM_TYPE_PHOTO_TILE;

  signals[OPEN] =
      g_signal_new ("open", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[EXPORT] =
      g_signal_new ("export", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[REMOVE] =
      g_signal_new ("remove", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
fm_photo_tile_class_init (FmPhotoTileClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = fm_photo_tile_dispose;
  object_class->finalize = fm_photo_tile_finalize;
  install_signals ();
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/photos/fm-photo-tile.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmPhotoTile, box);
  gtk_widget_class_bind_template_child (widget_class, FmPhotoTile, open_button);
  gtk_widget_class_bind_template_child (widget_class, FmPhotoTile, picture);
  gtk_widget_class_bind_template_child (widget_class, FmPhotoTile, missing_label);
  gtk_widget_class_bind_template_child (widget_class, FmPhotoTile, caption_entry);
  gtk_widget_class_bind_template_child (widget_class, FmPhotoTile, export_button);
  gtk_widget_class_bind_template_child (widget_class, FmPhotoTile, remove_button);
  gtk_widget_class_bind_template_callback (widget_class, caption_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, open_clicked_cb);
  gtk_widget_class_bind_template_callback (widget_class, export_clicked_cb);
  gtk_widget_class_bind_template_callback (widget_class, remove_clicked_cb);
}

static void
fm_photo_tile_init (FmPhotoTile *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

static void
set_label (gpointer widget, char *text)
{
  gtk_accessible_update_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL, text, -1);
  g_free (text);
}

GtkWidget *
fm_photo_tile_new (FmNotebook *notebook, GPtrArray *photos, FmPhotoInfo *info, guint number)
{
  FmPhotoTile *self = g_object_new (FM_TYPE_PHOTO_TILE, NULL);
  const gboolean editable = !fm_notebook_is_read_only (notebook);

  self->notebook = fm_notebook_ref (notebook);
  self->photos = g_ptr_array_ref (photos);
  self->info = info;
  self->loading = TRUE;
  gtk_editable_set_text (GTK_EDITABLE (self->caption_entry),
                         info->caption != NULL ? info->caption : "");
  self->loading = FALSE;
  gtk_editable_set_editable (GTK_EDITABLE (self->caption_entry), editable);
  gtk_widget_set_sensitive (GTK_WIDGET (self->remove_button), editable);
  set_label (self->open_button, g_strdup_printf (_ ("View photo %u"), number));
  set_label (self->caption_entry, g_strdup_printf (_ ("Caption of photo %u"), number));
  set_label (self->export_button, g_strdup_printf (_ ("Export photo %u"), number));
  set_label (self->remove_button, g_strdup_printf (_ ("Remove photo %u"), number));
  set_label (self->picture, g_strdup_printf (_ ("Thumbnail of photo %u"), number));
  return GTK_WIDGET (self);
}

FmPhotoInfo *
fm_photo_tile_get_info (FmPhotoTile *self)
{
  g_return_val_if_fail (FM_IS_PHOTO_TILE (self), NULL);
  return self->info;
}

void
fm_photo_tile_set_thumbnail (FmPhotoTile *self, GdkTexture *texture)
{
  g_return_if_fail (FM_IS_PHOTO_TILE (self));
  gtk_picture_set_paintable (self->picture, GDK_PAINTABLE (texture));
  gtk_widget_set_visible (GTK_WIDGET (self->missing_label), texture == NULL);
}
