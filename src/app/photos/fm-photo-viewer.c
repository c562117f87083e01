/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-photo-viewer.c - a window with a photo of an experiment, or two side by side */
#include "app/photos/fm-photo-viewer.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/photos/fm-photo-export.h"
#include "app/photos/fm-photo-pane.h"
#include "app/photos/fm-photo-text.h"
#include "app/session/fm-store-task.h"
#include "app/widgets/fm-accessible.h"
#include "app/widgets/fm-widget.h"
#include "core/base/fm-number.h"

#define ZOOM_STEP 1.25
#define MIN_ZOOM 0.05
#define MAX_ZOOM 8.0

struct _FmPhotoViewer {
  AdwWindow parent_instance;

  AdwWindowTitle *window_title;
  GtkButton *previous_button;
  GtkButton *next_button;
  GtkToggleButton *beside_button;
  GtkGrid *grid;
  GtkLabel *origin_label;
  GtkDropDown *other_drop;
  FmPhotoPane *pane;
  FmPhotoPane *other_pane;
  GtkLabel *caption_label;
  GtkLabel *other_caption_label;
  GtkLabel *zoom_label;

  FmNotebook *notebook;
  GPtrArray *photos;
  guint index;
  GPtrArray *others; /* (nullable) what can be laid beside it: FmPhotoInfo, of the blend */
  double zoom;       /* pixels of the screen for one of the photo; 0 = fit the window */
  GCancellable *listing;
};

G_DEFINE_FINAL_TYPE (FmPhotoViewer, fm_photo_viewer, ADW_TYPE_WINDOW)

static const FmPhotoInfo *
shown (FmPhotoViewer *self)
{
  return g_ptr_array_index (self->photos, self->index);
}

static gboolean
is_beside (FmPhotoViewer *self)
{
  return self->others != NULL && gtk_toggle_button_get_active (self->beside_button);
}

/* Where all of what is shown is in view; NaN while nothing is. */
static double
get_fit (FmPhotoViewer *self)
{
  const double fit = fm_photo_pane_get_fit (self->pane);

  return is_beside (self) ? fmin (fit, fm_photo_pane_get_fit (self->other_pane)) : fit;
}

/* Two photos have one scale, so that what is larger looks larger. */
static void
apply_zoom (FmPhotoViewer *self)
{
  const double fit = get_fit (self);
  const gboolean fits = self->zoom <= 0;
  double zoom = self->zoom;

  if (fits)
    zoom = is_beside (self) && !isnan (fit) ? CLAMP (fit, MIN_ZOOM, MAX_ZOOM) : 0;
  fm_photo_pane_set_zoom (self->pane, zoom);
  fm_photo_pane_set_zoom (self->other_pane, zoom);
  if (fits) {
    gtk_label_set_text (self->zoom_label, _ ("Fits the window"));
  } else {
    g_autofree char *number = fm_number_format_unit (zoom * 100.0, 0, "%");

    gtk_label_set_text (self->zoom_label, number);
  }
}

static void
zoom_by (FmPhotoViewer *self, double factor)
{
  const double fit = get_fit (self);

  if (isnan (fit))
    return;
  self->zoom = CLAMP ((self->zoom > 0 ? self->zoom : fit) * factor, MIN_ZOOM, MAX_ZOOM);
  apply_zoom (self);
}

static void
fit_cb (FmPhotoViewer *self)
{
  if (self->zoom_label != NULL)
    apply_zoom (self);
}

/* One follows the other to the same place. */
static void
panned_cb (FmPhotoViewer *self, FmPhotoPane *pane)
{
  double x, y;

  if (!is_beside (self))
    return;
  fm_photo_pane_get_centre (pane, &x, &y);
  fm_photo_pane_set_centre (pane == self->pane ? self->other_pane : self->pane, x, y);
}

static void
show_index (FmPhotoViewer *self, guint index)
{
  const FmPhotoInfo *info = g_ptr_array_index (self->photos, index);
  g_autofree char *title = g_strdup_printf (_ ("Photo %u of %u"), index + 1, self->photos->len);
  g_autofree char *size = fm_photo_text_size (info);
  g_autofree char *words = fm_photo_text_words (info);
  g_autofree char *origin = fm_photo_text_origin (info);

  self->index = index;
  if (!is_beside (self))
    self->zoom = 0;
  adw_window_title_set_title (self->window_title, title);
  adw_window_title_set_subtitle (self->window_title, size);
  gtk_window_set_title (GTK_WINDOW (self), title);
  gtk_label_set_text (self->origin_label, origin);
  gtk_label_set_text (self->caption_label, words);
  gtk_widget_set_visible (GTK_WIDGET (self->caption_label), words[0] != '\0');
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "viewer.previous", index > 0);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "viewer.next", index + 1 < self->photos->len);
  fm_photo_pane_load (self->pane, self->notebook, info->id, words[0] != '\0' ? words : title);
  apply_zoom (self);
}

static void
other_selected_cb (FmPhotoViewer *self)
{
  const guint index = gtk_drop_down_get_selected (self->other_drop);
  const FmPhotoInfo *info;
  g_autofree char *words = NULL;
  g_autofree char *origin = NULL;

  if (!is_beside (self) || index >= self->others->len)
    return;
  info = g_ptr_array_index (self->others, index);
  words = fm_photo_text_words (info);
  origin = fm_photo_text_origin (info);
  gtk_label_set_text (self->other_caption_label, words);
  fm_photo_pane_load (self->other_pane, self->notebook, info->id, origin);
}

static void
show_beside (FmPhotoViewer *self)
{
  const gboolean beside = is_beside (self);

  gtk_widget_set_visible (GTK_WIDGET (self->origin_label), beside);
  gtk_widget_set_visible (GTK_WIDGET (self->other_drop), beside);
  gtk_widget_set_visible (GTK_WIDGET (self->other_pane), beside);
  gtk_widget_set_visible (GTK_WIDGET (self->other_caption_label), beside);
  self->zoom = 0;
  other_selected_cb (self);
  apply_zoom (self);
}

static void
list_others (FmPhotoViewer *self)
{
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);
  const guint best = fm_photo_text_find_beside (self->others, shown (self));

  for (guint i = 0; i < self->others->len; i++) {
    g_autofree char *origin = fm_photo_text_origin (g_ptr_array_index (self->others, i));

    gtk_string_list_append (names, origin);
  }
  gtk_drop_down_set_model (self->other_drop, G_LIST_MODEL (names));
  gtk_drop_down_set_selected (self->other_drop, best);
}

static gpointer
read_others (FmNotebook *notebook, gpointer experiment_id, GCancellable *cancel, GError **error)
{
  return fm_photos_list_beside (notebook, *(gint64 *)experiment_id, error);
}

static void
others_read_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  FmPhotoViewer *self = FM_PHOTO_VIEWER (source);
  g_autoptr (GError) error = NULL;
  GPtrArray *others = fm_store_task_finish (result, &error);

  if (others != NULL && self->pane != NULL) {
    self->others = others;
    list_others (self);
    show_beside (self);
  } else if (others != NULL) {
    g_ptr_array_unref (others);
  } else if (self->pane != NULL) {
    fm_photo_pane_show_message (self->pane, error->message);
  }
}

static void
beside_toggled_cb (FmPhotoViewer *self)
{
  if (self->others != NULL) {
    show_beside (self);
    return;
  }
  if (self->listing != NULL)
    return;
  self->listing = g_cancellable_new ();
  fm_store_task (&(FmStoreTask){
      .owner = self,
      .notebook = self->notebook,
      .run = read_others,
      .free_result = (GDestroyNotify)g_ptr_array_unref,
      .data = g_memdup2 (&shown (self)->experiment_id, sizeof (gint64)),
      .free_data = g_free,
      .cancellable = self->listing,
      .done = others_read_cb,
  });
}

static void
step_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmPhotoViewer *self = FM_PHOTO_VIEWER (widget);

  if (g_str_equal (name, "viewer.next") && self->index + 1 < self->photos->len)
    show_index (self, self->index + 1);
  else if (g_str_equal (name, "viewer.previous") && self->index > 0)
    show_index (self, self->index - 1);
}

static void
step_other (FmPhotoViewer *self, int step)
{
  const int index = (int)gtk_drop_down_get_selected (self->other_drop) + step;

  if (is_beside (self) && index >= 0 && index < (int)self->others->len)
    gtk_drop_down_set_selected (self->other_drop, (guint)index);
}

static void
beside_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmPhotoViewer *self = FM_PHOTO_VIEWER (widget);

  gtk_toggle_button_set_active (self->beside_button,
                                !gtk_toggle_button_get_active (self->beside_button));
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
  if (FM_PHOTO_VIEWER (owner)->pane != NULL)
    fm_photo_pane_show_message (FM_PHOTO_VIEWER (owner)->pane, error->message);
}

static void
export_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmPhotoViewer *self = FM_PHOTO_VIEWER (widget);

  fm_photo_export (widget, self->notebook, shown (self), export_failed);
}

/* Ahead of the window and of what scrolls, which would take these keys for themselves; a list that
 * is open keeps them. */
static gboolean
key_cb (FmPhotoViewer *self, guint key, guint code, GdkModifierType state)
{
  const GdkModifierType held = state & gtk_accelerator_get_default_mod_mask ();
  const int right = (key == GDK_KEY_Right) - (key == GDK_KEY_Left);
  const int downwards = (key == GDK_KEY_Down) - (key == GDK_KEY_Up);
  const int step = right + (key == GDK_KEY_Page_Down) - (key == GDK_KEY_Page_Up);
  GtkWidget *focus = gtk_root_get_focus (GTK_ROOT (self));

  if (focus != NULL && gtk_widget_get_native (focus) != GTK_NATIVE (self))
    return GDK_EVENT_PROPAGATE;
  if (held == GDK_CONTROL_MASK && (right != 0 || downwards != 0))
    fm_photo_pane_pan (self->pane, right, downwards);
  else if (held == GDK_SHIFT_MASK && right != 0)
    step_other (self, right);
  else if (held == 0 && step != 0)
    gtk_widget_activate_action (GTK_WIDGET (self), step > 0 ? "viewer.next" : "viewer.previous",
                                NULL);
  else
    return GDK_EVENT_PROPAGATE;
  return GDK_EVENT_STOP;
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

  g_cancellable_cancel (self->listing);
  g_clear_object (&self->listing);
  gtk_widget_dispose_template (GTK_WIDGET (self), FM_TYPE_PHOTO_VIEWER);
  g_clear_pointer (&self->photos, g_ptr_array_unref);
  g_clear_pointer (&self->others, g_ptr_array_unref);
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
    { GDK_KEY_b, 0, "viewer.beside" },
    { GDK_KEY_s, GDK_CONTROL_MASK, "viewer.export" },
    { GDK_KEY_Escape, 0, "window.close" },
  };

  gtk_widget_class_install_action (widget_class, "viewer.next", NULL, step_action);
  gtk_widget_class_install_action (widget_class, "viewer.previous", NULL, step_action);
  gtk_widget_class_install_action (widget_class, "viewer.zoom-in", NULL, zoom_action);
  gtk_widget_class_install_action (widget_class, "viewer.zoom-out", NULL, zoom_action);
  gtk_widget_class_install_action (widget_class, "viewer.zoom-fit", NULL, zoom_action);
  gtk_widget_class_install_action (widget_class, "viewer.zoom-full", NULL, zoom_action);
  gtk_widget_class_install_action (widget_class, "viewer.beside", NULL, beside_action);
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
  g_type_ensure (FM_TYPE_PHOTO_PANE);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/photos/fm-photo-viewer.ui");
  gtk_widget_class_bind_template_child (widget_class, FmPhotoViewer, window_title);
  gtk_widget_class_bind_template_child (widget_class, FmPhotoViewer, previous_button);
  gtk_widget_class_bind_template_child (widget_class, FmPhotoViewer, next_button);
  gtk_widget_class_bind_template_child (widget_class, FmPhotoViewer, beside_button);
  gtk_widget_class_bind_template_child (widget_class, FmPhotoViewer, grid);
  gtk_widget_class_bind_template_child (widget_class, FmPhotoViewer, origin_label);
  gtk_widget_class_bind_template_child (widget_class, FmPhotoViewer, other_drop);
  gtk_widget_class_bind_template_child (widget_class, FmPhotoViewer, pane);
  gtk_widget_class_bind_template_child (widget_class, FmPhotoViewer, other_pane);
  gtk_widget_class_bind_template_child (widget_class, FmPhotoViewer, caption_label);
  gtk_widget_class_bind_template_child (widget_class, FmPhotoViewer, other_caption_label);
  gtk_widget_class_bind_template_child (widget_class, FmPhotoViewer, zoom_label);
  gtk_widget_class_bind_template_callback (widget_class, fit_cb);
  gtk_widget_class_bind_template_callback (widget_class, panned_cb);
  gtk_widget_class_bind_template_callback (widget_class, other_selected_cb);
  gtk_widget_class_bind_template_callback (widget_class, beside_toggled_cb);
  gtk_widget_class_bind_template_callback (widget_class, key_cb);
  gtk_widget_class_bind_template_callback (widget_class, scroll_cb);
}

static void
fm_photo_viewer_init (FmPhotoViewer *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  fm_widget_ellipsize_drop_down (self->other_drop);
  fm_accessible_name_drop_down (self->other_drop, _ ("Photo at the right"));
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
