/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-photo-pane.c - one photo as large as wanted, which scrolls */
#include "app/photos/fm-photo-pane.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/session/fm-store-task.h"
#include "app/widgets/fm-widget.h"
#include "store/fm-image.h"

struct _FmPhotoPane {
  GtkWidget parent_instance;

  GtkWidget *box;
  GtkScrolledWindow *scroller;
  GtkPicture *picture;
  GtkSpinner *spinner;
  GtkLabel *message_label;

  GdkTexture *texture; /* (nullable) */
  GCancellable *loading;
  double zoom;
  double centre_x;
  double centre_y;
  gboolean placing;    /* the adjustments are being set here */
  guint settling;      /* source that follows a new layout */
  double drag_value_x; /* of the adjustments, when the pointer took hold */
  double drag_value_y;
};

G_DEFINE_FINAL_TYPE (FmPhotoPane, fm_photo_pane, GTK_TYPE_WIDGET)

enum {
  LOADED,
  RESIZED,
  PANNED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static GtkAdjustment *
across (FmPhotoPane *self)
{
  return gtk_scrolled_window_get_hadjustment (self->scroller);
}

static GtkAdjustment *
down (FmPhotoPane *self)
{
  return gtk_scrolled_window_get_vadjustment (self->scroller);
}

static gpointer
load_texture (FmNotebook *notebook, gpointer photo_id, GCancellable *cancellable, GError **error)
{
  g_autoptr (GBytes) bytes = fm_photos_original (notebook, *(gint64 *)photo_id, error);
  g_autoptr (GdkPixbuf) pixbuf =
      bytes != NULL ? fm_image_decode (bytes, &fm_image_photo_limits, cancellable, error) : NULL;

  return pixbuf != NULL ? gdk_texture_new_for_pixbuf (pixbuf) : NULL;
}

/* A picture is never smaller than it says, so a scaled one says its scaled size. */
static GdkPaintable *
scaled (FmPhotoPane *self)
{
  g_autoptr (GtkSnapshot) snapshot = gtk_snapshot_new ();
  const float width = (float)fmax (1.0, floor (gdk_texture_get_width (self->texture) * self->zoom));
  const float height =
      (float)fmax (1.0, floor (gdk_texture_get_height (self->texture) * self->zoom));

  gtk_snapshot_append_texture (snapshot, self->texture, &GRAPHENE_RECT_INIT (0, 0, width, height));
  return gtk_snapshot_to_paintable (snapshot, &GRAPHENE_SIZE_INIT (width, height));
}

static void
show_picture (FmPhotoPane *self)
{
  const gboolean fits = self->zoom <= 0 || self->texture == NULL;
  const GtkAlign align = fits ? GTK_ALIGN_FILL : GTK_ALIGN_CENTER;
  g_autoptr (GdkPaintable) paintable = NULL;

  if (self->texture != NULL)
    paintable = fits ? g_object_ref (GDK_PAINTABLE (self->texture)) : scaled (self);
  gtk_picture_set_can_shrink (self->picture, fits);
  gtk_widget_set_halign (GTK_WIDGET (self->picture), align);
  gtk_widget_set_valign (GTK_WIDGET (self->picture), align);
  gtk_picture_set_paintable (self->picture, paintable);
}

static void
load_done_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  FmPhotoPane *self = FM_PHOTO_PANE (source);
  g_autoptr (GError) error = NULL;
  g_autoptr (GdkTexture) texture = fm_store_task_finish (result, &error);

  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED) || self->picture == NULL)
    return;
  gtk_spinner_stop (self->spinner);
  g_set_object (&self->texture, texture);
  show_picture (self);
  if (texture == NULL) {
    g_autofree char *message = g_strdup_printf (
        _ ("This photo cannot be shown: %s The original can still be saved as a file."),
        error->message);

    fm_photo_pane_show_message (self, message);
  }
  g_signal_emit (self, signals[LOADED], 0);
}

static double
centre_of (GtkAdjustment *adjustment)
{
  const double length = gtk_adjustment_get_upper (adjustment);

  return length > 0 ? (gtk_adjustment_get_value (adjustment) +
                       gtk_adjustment_get_page_size (adjustment) / 2.0) /
                          length
                    : 0.5;
}

static void
put_centre (GtkAdjustment *adjustment, double centre)
{
  gtk_adjustment_set_value (adjustment, centre * gtk_adjustment_get_upper (adjustment) -
                                            gtk_adjustment_get_page_size (adjustment) / 2.0);
}

static void
place (FmPhotoPane *self)
{
  self->placing = TRUE;
  put_centre (across (self), self->centre_x);
  put_centre (down (self), self->centre_y);
  self->placing = FALSE;
}

/* What was in the middle stays there when the photo grows. */
static gboolean
settle_cb (gpointer data)
{
  FmPhotoPane *self = data;

  self->settling = 0;
  place (self);
  g_signal_emit (self, signals[RESIZED], 0);
  return G_SOURCE_REMOVE;
}

/* Told while the layout is made, when nothing can be moved. */
static void
range_changed_cb (FmPhotoPane *self)
{
  if (self->settling == 0)
    self->settling = g_idle_add_full (G_PRIORITY_HIGH_IDLE, settle_cb, self, NULL);
}

static void
value_changed_cb (FmPhotoPane *self)
{
  if (self->placing || self->settling != 0)
    return;
  self->centre_x = centre_of (across (self));
  self->centre_y = centre_of (down (self));
  g_signal_emit (self, signals[PANNED], 0);
}

/* A finger scrolls already. */
static void
drag_begin_cb (FmPhotoPane *self, double x, double y, GtkGesture *gesture)
{
  GdkEvent *event = gtk_gesture_get_last_event (gesture, NULL);

  if (event != NULL && gdk_event_get_event_type (event) == GDK_TOUCH_BEGIN)
    gtk_gesture_set_state (gesture, GTK_EVENT_SEQUENCE_DENIED);
  self->drag_value_x = gtk_adjustment_get_value (across (self));
  self->drag_value_y = gtk_adjustment_get_value (down (self));
}

static void
drag_update_cb (FmPhotoPane *self, double x, double y)
{
  gtk_adjustment_set_value (across (self), self->drag_value_x - x);
  gtk_adjustment_set_value (down (self), self->drag_value_y - y);
}

/* One stop of Tab: what scrolls is entered, and left again. */
static gboolean
fm_photo_pane_focus (GtkWidget *widget, GtkDirectionType direction)
{
  GtkWidget *scroller = GTK_WIDGET (FM_PHOTO_PANE (widget)->scroller);

  return !gtk_widget_is_focus (scroller) && gtk_widget_grab_focus (scroller);
}

static void
fm_photo_pane_dispose (GObject *object)
{
  FmPhotoPane *self = FM_PHOTO_PANE (object);

  g_cancellable_cancel (self->loading);
  g_clear_object (&self->loading);
  g_clear_handle_id (&self->settling, g_source_remove);
  g_clear_object (&self->texture);
  if (self->scroller != NULL) {
    g_signal_handlers_disconnect_by_data (across (self), self);
    g_signal_handlers_disconnect_by_data (down (self), self);
  }
  fm_widget_drop_template (GTK_WIDGET (self), FM_TYPE_PHOTO_PANE);
  G_OBJECT_CLASS (fm_photo_pane_parent_class)->dispose (object);
}

static guint
install_signal (const char *name)
{
  return g_signal_new (name, FM_TYPE_PHOTO_PANE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                       G_TYPE_NONE, 0);
}

static void
fm_photo_pane_class_init (FmPhotoPaneClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_photo_pane_dispose;
  widget_class->focus = fm_photo_pane_focus;
  signals[LOADED] = install_signal ("loaded");
  signals[RESIZED] = install_signal ("resized");
  signals[PANNED] = install_signal ("panned");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/photos/fm-photo-pane.ui");
  gtk_widget_class_bind_template_child (widget_class, FmPhotoPane, box);
  gtk_widget_class_bind_template_child (widget_class, FmPhotoPane, scroller);
  gtk_widget_class_bind_template_child (widget_class, FmPhotoPane, picture);
  gtk_widget_class_bind_template_child (widget_class, FmPhotoPane, spinner);
  gtk_widget_class_bind_template_child (widget_class, FmPhotoPane, message_label);
  gtk_widget_class_bind_template_callback (widget_class, drag_begin_cb);
  gtk_widget_class_bind_template_callback (widget_class, drag_update_cb);
}

static void
listen (FmPhotoPane *self, GtkAdjustment *adjustment)
{
  g_signal_connect_swapped (adjustment, "changed", G_CALLBACK (range_changed_cb), self);
  g_signal_connect_swapped (adjustment, "value-changed", G_CALLBACK (value_changed_cb), self);
}

static void
fm_photo_pane_init (FmPhotoPane *self)
{
  self->centre_x = self->centre_y = 0.5;
  gtk_widget_init_template (GTK_WIDGET (self));
  listen (self, across (self));
  listen (self, down (self));
}

void
fm_photo_pane_load (FmPhotoPane *self, FmNotebook *notebook, gint64 photo_id, const char *what)
{
  g_return_if_fail (FM_IS_PHOTO_PANE (self));
  g_cancellable_cancel (self->loading);
  g_clear_object (&self->loading);
  self->loading = g_cancellable_new ();
  fm_photo_pane_show_message (self, NULL);
  g_clear_object (&self->texture);
  show_picture (self);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->picture), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  what, -1);
  gtk_spinner_start (self->spinner);
  fm_store_task (&(FmStoreTask){
      .owner = self,
      .notebook = notebook,
      .run = load_texture,
      .free_result = g_object_unref,
      .data = g_memdup2 (&photo_id, sizeof photo_id),
      .free_data = g_free,
      .cancellable = self->loading,
      .done = load_done_cb,
  });
}

void
fm_photo_pane_show_message (FmPhotoPane *self, const char *message)
{
  g_return_if_fail (FM_IS_PHOTO_PANE (self));
  if (self->message_label == NULL)
    return;
  gtk_label_set_text (self->message_label, message != NULL ? message : "");
  gtk_widget_set_visible (GTK_WIDGET (self->message_label), message != NULL);
}

void
fm_photo_pane_set_zoom (FmPhotoPane *self, double zoom)
{
  g_return_if_fail (FM_IS_PHOTO_PANE (self));
  if (self->zoom == zoom)
    return;
  self->zoom = zoom;
  show_picture (self);
}

double
fm_photo_pane_get_fit (FmPhotoPane *self)
{
  g_return_val_if_fail (FM_IS_PHOTO_PANE (self), NAN);
  if (self->texture == NULL)
    return NAN;
  return fmin ((double)gtk_widget_get_width (GTK_WIDGET (self->scroller)) /
                   gdk_texture_get_width (self->texture),
               (double)gtk_widget_get_height (GTK_WIDGET (self->scroller)) /
                   gdk_texture_get_height (self->texture));
}

void
fm_photo_pane_get_centre (FmPhotoPane *self, double *x, double *y)
{
  g_return_if_fail (FM_IS_PHOTO_PANE (self));
  *x = self->centre_x;
  *y = self->centre_y;
}

void
fm_photo_pane_set_centre (FmPhotoPane *self, double x, double y)
{
  g_return_if_fail (FM_IS_PHOTO_PANE (self));
  self->centre_x = x;
  self->centre_y = y;
  place (self);
}

void
fm_photo_pane_pan (FmPhotoPane *self, int right, int downwards)
{
  g_return_if_fail (FM_IS_PHOTO_PANE (self));
  gtk_adjustment_set_value (across (self),
                            gtk_adjustment_get_value (across (self)) +
                                gtk_adjustment_get_page_size (across (self)) * right / 10.0);
  gtk_adjustment_set_value (down (self),
                            gtk_adjustment_get_value (down (self)) +
                                gtk_adjustment_get_page_size (down (self)) * downwards / 10.0);
}
