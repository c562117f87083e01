/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-photo-tile.c - a photo's thumbnail with its caption and view */
#include "app/photos/fm-photo-tile.h"

#include <glib/gi18n-lib.h>

#include "app/photos/fm-photo-caption.h"
#include "app/photos/fm-photo-drag.h"
#include "app/widgets/fm-accessible.h"
#include "app/widgets/fm-widget.h"
#include "core/base/fm-date.h"

struct _FmPhotoTile {
  GtkWidget parent_instance;

  GtkWidget *box;
  GtkButton *open_button;
  GtkPicture *picture;
  GtkLabel *missing_label;
  GtkLabel *taken_label;
  GtkEntry *caption_entry;
  GtkDropDown *view_drop;
  GtkButton *export_button;
  GtkButton *remove_button;

  GPtrArray *photos;
  FmPhotoInfo *info;
  FmPhotoCaption *caption;
};

G_DEFINE_FINAL_TYPE (FmPhotoTile, fm_photo_tile, GTK_TYPE_WIDGET)

enum {
  OPEN,
  EXPORT,
  REMOVE,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static void
saved_cb (FmPhotoTile *self)
{
  gtk_widget_remove_css_class (GTK_WIDGET (self->caption_entry), "error");
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->caption_entry), NULL);
}

static void
save_failed_cb (FmPhotoTile *self, const char *message)
{
  gtk_widget_add_css_class (GTK_WIDGET (self->caption_entry), "error");
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->caption_entry), message);
}

/* The list of photos has it for the viewer. */
static void
take_caption (FmPhotoTile *self)
{
  self->info->view = fm_photo_caption_get_view (self->caption);
  g_free (self->info->caption);
  self->info->caption = g_strdup (fm_photo_caption_get_text (self->caption));
}

static void
caption_changed_cb (FmPhotoTile *self)
{
  fm_photo_caption_set_text (self->caption,
                             gtk_editable_get_text (GTK_EDITABLE (self->caption_entry)));
  take_caption (self);
}

static void
view_selected_cb (FmPhotoTile *self)
{
  if (self->caption == NULL)
    return;
  self->info->view = (FmPhotoView)gtk_drop_down_get_selected (self->view_drop);
  fm_photo_caption_set_view (self->caption, self->info->view);
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

  if (self->caption != NULL)
    g_signal_handlers_disconnect_by_data (self->caption, self);
  fm_widget_drop_template (GTK_WIDGET (self), FM_TYPE_PHOTO_TILE);
  G_OBJECT_CLASS (fm_photo_tile_parent_class)->dispose (object);
}

static void
fm_photo_tile_finalize (GObject *object)
{
  FmPhotoTile *self = FM_PHOTO_TILE (object);

  g_clear_pointer (&self->photos, g_ptr_array_unref);
  g_clear_object (&self->caption);
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
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/photos/fm-photo-tile.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmPhotoTile, box);
  gtk_widget_class_bind_template_child (widget_class, FmPhotoTile, open_button);
  gtk_widget_class_bind_template_child (widget_class, FmPhotoTile, picture);
  gtk_widget_class_bind_template_child (widget_class, FmPhotoTile, missing_label);
  gtk_widget_class_bind_template_child (widget_class, FmPhotoTile, caption_entry);
  gtk_widget_class_bind_template_child (widget_class, FmPhotoTile, taken_label);
  gtk_widget_class_bind_template_child (widget_class, FmPhotoTile, view_drop);
  gtk_widget_class_bind_template_child (widget_class, FmPhotoTile, export_button);
  gtk_widget_class_bind_template_child (widget_class, FmPhotoTile, remove_button);
  gtk_widget_class_bind_template_callback (widget_class, caption_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, view_selected_cb);
  gtk_widget_class_bind_template_callback (widget_class, open_clicked_cb);
  gtk_widget_class_bind_template_callback (widget_class, export_clicked_cb);
  gtk_widget_class_bind_template_callback (widget_class, remove_clicked_cb);
}

static void
fm_photo_tile_init (FmPhotoTile *self)
{
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);

  gtk_widget_init_template (GTK_WIDGET (self));
  for (guint i = 0; i < FM_N_PHOTO_VIEWS; i++)
    gtk_string_list_append (names, fm_photo_view_name ((FmPhotoView)i));
  gtk_drop_down_set_model (self->view_drop, G_LIST_MODEL (names));
  fm_widget_ellipsize_drop_down (self->view_drop);
}

/* When the camera says that the photo was taken, else nothing. */
static void
show_taken (FmPhotoTile *self)
{
  g_autofree char *time =
      self->info->taken != NULL ? fm_date_text_of_clock (self->info->taken) : NULL;

  gtk_label_set_text (self->taken_label, time != NULL ? time : "");
  gtk_widget_set_visible (GTK_WIDGET (self->taken_label), time != NULL);
}

static void
set_label (gpointer widget, char *text)
{
  gtk_accessible_update_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL, text, -1);
  g_free (text);
}

GtkWidget *
fm_photo_tile_new (FmSession *session, GPtrArray *photos, FmPhotoInfo *info, guint number)
{
  FmPhotoTile *self = g_object_new (FM_TYPE_PHOTO_TILE, NULL);
  g_autofree char *view_name = g_strdup_printf (_ ("View that photo %u shows"), number);
  gboolean editable;

  self->photos = g_ptr_array_ref (photos);
  self->info = info;
  self->caption = fm_photo_caption_open (session, info);
  editable = fm_stored_document_is_editable (FM_STORED_DOCUMENT (self->caption));
  take_caption (self);
  gtk_editable_set_text (GTK_EDITABLE (self->caption_entry),
                         fm_photo_caption_get_text (self->caption));
  g_signal_connect_object (self->caption, "saved", G_CALLBACK (saved_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->caption, "save-failed", G_CALLBACK (save_failed_cb), self,
                           G_CONNECT_SWAPPED);
  gtk_drop_down_set_selected (self->view_drop, (guint)self->info->view);
  show_taken (self);
  gtk_editable_set_editable (GTK_EDITABLE (self->caption_entry), editable);
  gtk_widget_set_sensitive (GTK_WIDGET (self->view_drop), editable);
  fm_accessible_name_drop_down (self->view_drop, view_name);
  gtk_widget_set_sensitive (GTK_WIDGET (self->remove_button), editable);
  fm_photo_drag_install (GTK_WIDGET (self->open_button), fm_session_get_notebook (session), info,
                         self->picture);
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
