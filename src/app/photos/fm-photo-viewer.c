/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-photo-viewer.c - a window with one photo of an experiment, as large as wanted */
#include "app/photos/fm-photo-viewer.h"

#include "app/session/fm-store-task.h"

#include <glib/gi18n-lib.h>

#include "app/photos/fm-photo-export.h"
#include "core/base/fm-number.h"
#include "store/fm-image.h"

#define ZOOM_STEP 1.25
#define MIN_ZOOM 0.05
#define MAX_ZOOM 8.0

struct _FmPhotoViewer {
  AdwWindow parent_instance;

  AdwWindowTitle *window_title;
  GtkButton *previous_button;
  GtkButton *next_button;
  GtkScrolledWindow *scroller;
  GtkPicture *picture;
  GtkSpinner *spinner;
  GtkLabel *message_label;
  GtkLabel *caption_label;
  GtkLabel *zoom_label;

  FmNotebook *notebook;
  GPtrArray *photos;
  guint index;
  double zoom; /* picture pixels to screen pixels; 0 = fit the window */
  GCancellable *loading;
};

G_DEFINE_FINAL_TYPE (FmPhotoViewer, fm_photo_viewer, ADW_TYPE_WINDOW)

static gpointer
load_texture (FmNotebook *notebook, gpointer photo_id, GCancellable *cancellable, GError **error)
{
  g_autoptr (GBytes) bytes = fm_photos_original (notebook, *(gint64 *)photo_id, error);
  g_autoptr (GdkPixbuf) pixbuf =
      bytes != NULL ? fm_image_decode (bytes, &fm_image_photo_limits, cancellable, error) : NULL;

  return pixbuf != NULL ? gdk_texture_new_for_pixbuf (pixbuf) : NULL;
}

static double
fit_zoom (FmPhotoViewer *self, GdkPaintable *paintable)
{
  const double x = (double)gtk_widget_get_width (GTK_WIDGET (self->scroller)) /
                   MAX (1, gdk_paintable_get_intrinsic_width (paintable));
  const double y = (double)gtk_widget_get_height (GTK_WIDGET (self->scroller)) /
                   MAX (1, gdk_paintable_get_intrinsic_height (paintable));

  return CLAMP (MIN (x, y), MIN_ZOOM, MAX_ZOOM);
}

static void
apply_zoom (FmPhotoViewer *self)
{
  GdkPaintable *paintable = gtk_picture_get_paintable (self->picture);
  g_autofree char *number = fm_number_format_unit (self->zoom * 100.0, 0, "%");

  if (paintable == NULL || self->zoom <= 0) {
    gtk_widget_set_size_request (GTK_WIDGET (self->picture), -1, -1);
    gtk_label_set_text (self->zoom_label, _ ("Fits the window"));
    return;
  }
  gtk_widget_set_size_request (GTK_WIDGET (self->picture),
                               (int)(gdk_paintable_get_intrinsic_width (paintable) * self->zoom),
                               (int)(gdk_paintable_get_intrinsic_height (paintable) * self->zoom));
  gtk_label_set_text (self->zoom_label, number);
}

static void
zoom_by (FmPhotoViewer *self, double factor)
{
  GdkPaintable *paintable = gtk_picture_get_paintable (self->picture);

  if (paintable == NULL)
    return;
  if (self->zoom <= 0)
    self->zoom = fit_zoom (self, paintable);
  self->zoom = CLAMP (self->zoom * factor, MIN_ZOOM, MAX_ZOOM);
  apply_zoom (self);
}

static void
show_message (FmPhotoViewer *self, const char *message)
{
  gtk_label_set_text (self->message_label, message != NULL ? message : "");
  gtk_widget_set_visible (GTK_WIDGET (self->message_label), message != NULL);
}

static void
load_done_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  FmPhotoViewer *self = FM_PHOTO_VIEWER (source);
  g_autoptr (GError) error = NULL;
  g_autoptr (GdkTexture) texture = fm_store_task_finish (result, &error);

  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED) || self->picture == NULL)
    return;
  gtk_spinner_stop (self->spinner);
  gtk_picture_set_paintable (self->picture, GDK_PAINTABLE (texture));
  if (texture == NULL) {
    g_autofree char *message = g_strdup_printf (
        _ ("This photo cannot be shown: %s The original can still be saved as a file."),
        error->message);

    show_message (self, message);
  }
  apply_zoom (self);
}

static void
load (FmPhotoViewer *self)
{
  const FmPhotoInfo *info = g_ptr_array_index (self->photos, self->index);

  g_cancellable_cancel (self->loading);
  g_clear_object (&self->loading);
  self->loading = g_cancellable_new ();
  gtk_spinner_start (self->spinner);
  fm_store_task (&(FmStoreTask){
      .owner = self,
      .notebook = self->notebook,
      .run = load_texture,
      .free_result = g_object_unref,
      .data = g_memdup2 (&info->id, sizeof info->id),
      .free_data = g_free,
      .cancellable = self->loading,
      .done = load_done_cb,
  });
}

static void
show_index (FmPhotoViewer *self, guint index)
{
  const FmPhotoInfo *info = g_ptr_array_index (self->photos, index);
  g_autofree char *title = g_strdup_printf (_ ("Photo %u of %u"), index + 1, self->photos->len);
  g_autofree char *size = g_format_size ((guint64)info->size_bytes);
  g_autofree char *facts =
      g_strdup_printf (_ ("%d × %d pixels, %s"), info->width_px, info->height_px, size);
  const gboolean has_caption = info->caption != NULL && info->caption[0] != '\0';

  self->index = index;
  self->zoom = 0;
  adw_window_title_set_title (self->window_title, title);
  adw_window_title_set_subtitle (self->window_title, facts);
  gtk_window_set_title (GTK_WINDOW (self), title);
  gtk_label_set_text (self->caption_label, has_caption ? info->caption : "");
  gtk_widget_set_visible (GTK_WIDGET (self->caption_label), has_caption);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->picture), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  has_caption ? info->caption : title, -1);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "viewer.previous", index > 0);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "viewer.next", index + 1 < self->photos->len);
  show_message (self, NULL);
  gtk_picture_set_paintable (self->picture, NULL);
  load (self);
}

static void
next_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmPhotoViewer *self = FM_PHOTO_VIEWER (widget);

  if (self->index + 1 < self->photos->len)
    show_index (self, self->index + 1);
}

static void
previous_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmPhotoViewer *self = FM_PHOTO_VIEWER (widget);

  if (self->index > 0)
    show_index (self, self->index - 1);
}

static void
zoom_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmPhotoViewer *self = FM_PHOTO_VIEWER (widget);

  if (g_str_equal (name, "viewer.zoom-in")) {
    zoom_by (self, ZOOM_STEP);
  } else if (g_str_equal (name, "viewer.zoom-out")) {
    zoom_by (self, 1.0 / ZOOM_STEP);
  } else {
    self->zoom = g_str_equal (name, "viewer.zoom-full") ? 1.0 : 0;
    apply_zoom (self);
  }
}

static void
export_failed (GtkWidget *owner, const GError *error)
{
  if (FM_PHOTO_VIEWER (owner)->message_label != NULL)
    show_message (FM_PHOTO_VIEWER (owner), error->message);
}

static void
export_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmPhotoViewer *self = FM_PHOTO_VIEWER (widget);

  fm_photo_export (widget, self->notebook, g_ptr_array_index (self->photos, self->index),
                   export_failed);
}

/* Ahead of the window itself, which would move the focus by arrows. */
static gboolean
key_cb (FmPhotoViewer *self, guint key, guint code, GdkModifierType state)
{
  if ((state & gtk_accelerator_get_default_mod_mask ()) != 0)
    return GDK_EVENT_PROPAGATE;
  if (key == GDK_KEY_Right)
    return gtk_widget_activate_action (GTK_WIDGET (self), "viewer.next", NULL);
  if (key == GDK_KEY_Left)
    return gtk_widget_activate_action (GTK_WIDGET (self), "viewer.previous", NULL);
  return GDK_EVENT_PROPAGATE;
}

static gboolean
scroll_cb (FmPhotoViewer *self, double dx, double dy, GtkEventController *controller)
{
  const GdkModifierType state = gtk_event_controller_get_current_event_state (controller);

  if ((state & GDK_CONTROL_MASK) == 0 || dy == 0)
    return GDK_EVENT_PROPAGATE;
  zoom_by (self, dy < 0 ? ZOOM_STEP : 1.0 / ZOOM_STEP);
  return GDK_EVENT_STOP;
}

static void
fm_photo_viewer_dispose (GObject *object)
{
  FmPhotoViewer *self = FM_PHOTO_VIEWER (object);

  g_cancellable_cancel (self->loading);
  g_clear_object (&self->loading);
  gtk_widget_dispose_template (GTK_WIDGET (self), FM_TYPE_PHOTO_VIEWER);
  g_clear_pointer (&self->photos, g_ptr_array_unref);
  g_clear_pointer (&self->notebook, fm_notebook_unref);
  G_OBJECT_CLASS (fm_photo_viewer_parent_class)->dispose (object);
}

static void
install_actions (GtkWidgetClass *widget_class)
{
  const struct {
    guint key;
    GdkModifierType modifiers;
    const char *action;
  } keys[] = {
    { GDK_KEY_Page_Down, 0, "viewer.next" },
    { GDK_KEY_Page_Up, 0, "viewer.previous" },
    { GDK_KEY_plus, GDK_CONTROL_MASK, "viewer.zoom-in" },
    { GDK_KEY_plus, 0, "viewer.zoom-in" },
    { GDK_KEY_KP_Add, 0, "viewer.zoom-in" },
    { GDK_KEY_minus, GDK_CONTROL_MASK, "viewer.zoom-out" },
    { GDK_KEY_minus, 0, "viewer.zoom-out" },
    { GDK_KEY_KP_Subtract, 0, "viewer.zoom-out" },
    { GDK_KEY_0, GDK_CONTROL_MASK, "viewer.zoom-fit" },
    { GDK_KEY_0, 0, "viewer.zoom-fit" },
    { GDK_KEY_1, GDK_CONTROL_MASK, "viewer.zoom-full" },
    { GDK_KEY_1, 0, "viewer.zoom-full" },
    { GDK_KEY_s, GDK_CONTROL_MASK, "viewer.export" },
    { GDK_KEY_Escape, 0, "window.close" },
  };

  gtk_widget_class_install_action (widget_class, "viewer.next", NULL, next_action);
  gtk_widget_class_install_action (widget_class, "viewer.previous", NULL, previous_action);
  gtk_widget_class_install_action (widget_class, "viewer.zoom-in", NULL, zoom_action);
  gtk_widget_class_install_action (widget_class, "viewer.zoom-out", NULL, zoom_action);
  gtk_widget_class_install_action (widget_class, "viewer.zoom-fit", NULL, zoom_action);
  gtk_widget_class_install_action (widget_class, "viewer.zoom-full", NULL, zoom_action);
  gtk_widget_class_install_action (widget_class, "viewer.export", NULL, export_action);
  for (guint i = 0; i < G_N_ELEMENTS (keys); i++)
    gtk_widget_class_add_binding_action (widget_class, keys[i].key, keys[i].modifiers,
                                         keys[i].action, NULL);
}

static void
fm_photo_viewer_class_init (FmPhotoViewerClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_photo_viewer_dispose;
  install_actions (widget_class);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/photos/fm-photo-viewer.ui");
  gtk_widget_class_bind_template_child (widget_class, FmPhotoViewer, window_title);
  gtk_widget_class_bind_template_child (widget_class, FmPhotoViewer, previous_button);
  gtk_widget_class_bind_template_child (widget_class, FmPhotoViewer, next_button);
  gtk_widget_class_bind_template_child (widget_class, FmPhotoViewer, scroller);
  gtk_widget_class_bind_template_child (widget_class, FmPhotoViewer, picture);
  gtk_widget_class_bind_template_child (widget_class, FmPhotoViewer, spinner);
  gtk_widget_class_bind_template_child (widget_class, FmPhotoViewer, message_label);
  gtk_widget_class_bind_template_child (widget_class, FmPhotoViewer, caption_label);
  gtk_widget_class_bind_template_child (widget_class, FmPhotoViewer, zoom_label);
  gtk_widget_class_bind_template_callback (widget_class, key_cb);
  gtk_widget_class_bind_template_callback (widget_class, scroll_cb);
}

static void
fm_photo_viewer_init (FmPhotoViewer *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

FmPhotoViewer *
fm_photo_viewer_new (GtkWindow *parent, FmNotebook *notebook, GPtrArray *photos, guint index)
{
  FmPhotoViewer *self = g_object_new (FM_TYPE_PHOTO_VIEWER, "transient-for", parent, "modal", TRUE,
                                      "destroy-with-parent", TRUE, NULL);

  self->notebook = fm_notebook_ref (notebook);
  self->photos = g_ptr_array_ref (photos);
  show_index (self, index);
  return self;
}
