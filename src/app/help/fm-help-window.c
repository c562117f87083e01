/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-help-window.c - reads the manual where the desktop has no reader of its own */
#include "app/help/fm-help-window.h"

#include <glib/gi18n-lib.h>

#include "app/help/fm-help-text.h"
#include "app/widgets/fm-widget.h"

#define CONTENTS "index"

struct _FmHelpWindow {
  AdwWindow parent_instance;

  GtkScrolledWindow *scrolled;
  GtkBox *content;
  GPtrArray *history; /* pages shown, the latest last */
  GCancellable *reading;
};

typedef struct {
  GPtrArray *blocks;
  GPtrArray *pictures; /* a texture for each block; NULL = none */
} Page;

G_DEFINE_FINAL_TYPE (FmHelpWindow, fm_help_window, ADW_TYPE_WINDOW)

static gboolean link_cb (FmHelpWindow *self, const char *uri);

static void
page_free (gpointer data)
{
  Page *page = data;

  g_clear_pointer (&page->blocks, g_ptr_array_unref);
  g_clear_pointer (&page->pictures, g_ptr_array_unref);
  g_free (page);
}

static void
texture_free (gpointer data)
{
  g_clear_object ((GdkTexture **)&data);
}

static void
read_pictures (Page *page, const char *folder)
{
  page->pictures = g_ptr_array_new_with_free_func (texture_free);
  for (guint i = 0; i < page->blocks->len; i++) {
    const FmHelpBlock *block = g_ptr_array_index (page->blocks, i);
    g_autofree char *path =
        block->picture != NULL ? g_build_filename (folder, block->picture, NULL) : NULL;

    g_ptr_array_add (page->pictures,
                     path != NULL ? gdk_texture_new_from_filename (path, NULL) : NULL);
  }
}

/* In a thread: a picture takes longer to read than a frame. */
static void
read_page (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  g_autofree char *path = fm_help_text_find (data);
  g_autofree char *folder = path != NULL ? g_path_get_dirname (path) : NULL;
  g_autofree char *xml = NULL;
  g_autoptr (GError) error = NULL;
  GPtrArray *blocks = NULL;
  gsize length = 0;
  Page *page;

  if (path != NULL && g_file_get_contents (path, &xml, &length, &error))
    blocks = fm_help_text_parse (xml, length, &error);
  if (blocks == NULL) {
    g_task_return_new_error (task, G_IO_ERROR, G_IO_ERROR_NOT_FOUND, "%s",
                             error != NULL ? error->message : _ ("It is not installed."));
    return;
  }
  page = g_new0 (Page, 1);
  page->blocks = blocks;
  read_pictures (page, folder);
  g_task_return_pointer (task, page, page_free);
}

static GtkWidget *
make_label (FmHelpWindow *self, const char *markup, const char *css_class, gboolean is_heading)
{
  GtkWidget *label =
      g_object_new (GTK_TYPE_LABEL, "label", markup, "use-markup", TRUE, "wrap", TRUE, "wrap-mode",
                    PANGO_WRAP_WORD_CHAR, "xalign", 0.0, "hexpand", TRUE, "accessible-role",
                    is_heading ? GTK_ACCESSIBLE_ROLE_HEADING : GTK_ACCESSIBLE_ROLE_LABEL, NULL);

  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);
  g_signal_connect_object (label, "activate-link", G_CALLBACK (link_cb), self, G_CONNECT_SWAPPED);
  return label;
}

static GtkWidget *
make_item (FmHelpWindow *self, const FmHelpBlock *block)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 9);
  g_autofree char *mark =
      block->kind == FM_HELP_STEP ? g_strdup_printf ("%u.", block->number) : g_strdup ("•");
  GtkWidget *label = gtk_label_new (mark);

  gtk_widget_set_valign (label, GTK_ALIGN_START);
  gtk_widget_set_margin_start (box, 12);
  gtk_box_append (GTK_BOX (box), label);
  gtk_box_append (GTK_BOX (box), make_label (self, block->markup, NULL, FALSE));
  return box;
}

/* A picture that is not there is told of by what it would show. */
static GtkWidget *
make_picture (FmHelpWindow *self, const FmHelpBlock *block, GdkTexture *texture)
{
  GtkWidget *picture;

  if (texture == NULL) {
    g_autofree char *text = g_markup_escape_text (block->markup, -1);

    return make_label (self, text, "caption", FALSE);
  }
  picture = gtk_picture_new_for_paintable (GDK_PAINTABLE (texture));
  gtk_accessible_update_property (GTK_ACCESSIBLE (picture), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  block->markup, -1);
  gtk_widget_add_css_class (picture, "card");
  return picture;
}

static GtkWidget *
make_block (FmHelpWindow *self, const FmHelpBlock *block, GdkTexture *texture)
{
  switch (block->kind) {
  case FM_HELP_TITLE:
    return make_label (self, block->markup, "title-1", TRUE);
  case FM_HELP_HEADING:
    return make_label (self, block->markup, "title-4", TRUE);
  case FM_HELP_ITEM:
  case FM_HELP_STEP:
    return make_item (self, block);
  case FM_HELP_NOTE:
    return make_label (self, block->markup, "fm-note", FALSE);
  case FM_HELP_PICTURE:
    return make_picture (self, block, texture);
  case FM_HELP_PARAGRAPH:
    break;
  }
  return make_label (self, block->markup, NULL, FALSE);
}

static void
show_page (FmHelpWindow *self, const Page *page)
{
  for (guint i = 0; i < page->blocks->len; i++)
    gtk_box_append (self->content, make_block (self, g_ptr_array_index (page->blocks, i),
                                               g_ptr_array_index (page->pictures, i)));
}

static void
read_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  FmHelpWindow *self = FM_HELP_WINDOW (source);
  g_autoptr (GError) error = NULL;
  Page *page = g_task_propagate_pointer (G_TASK (result), &error);

  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED) || self->content == NULL)
    return;
  fm_widget_clear_box (self->content);
  if (page != NULL) {
    show_page (self, page);
    page_free (page);
  } else {
    g_autofree char *text =
        g_markup_printf_escaped (_ ("This page of the manual cannot be read. %s"), error->message);

    gtk_box_append (self->content, make_label (self, text, NULL, FALSE));
  }
  gtk_adjustment_set_value (gtk_scrolled_window_get_vadjustment (self->scrolled), 0);
  gtk_widget_grab_focus (GTK_WIDGET (self->content));
}

/* Reads the page that is the last of those shown. */
static void
read_last (FmHelpWindow *self)
{
  const char *page = g_ptr_array_index (self->history, self->history->len - 1);
  g_autoptr (GTask) task = NULL;

  g_cancellable_cancel (self->reading);
  g_clear_object (&self->reading);
  self->reading = g_cancellable_new ();
  task = g_task_new (self, self->reading, read_cb, NULL);
  g_task_set_task_data (task, g_strdup (page), g_free);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "help.back", self->history->len > 1);
  g_task_run_in_thread (task, read_page);
}

static void
go_to (FmHelpWindow *self, const char *page)
{
  if (self->history->len == 0 ||
      !g_str_equal (g_ptr_array_index (self->history, self->history->len - 1), page))
    g_ptr_array_add (self->history, g_strdup (page));
  read_last (self);
}

static gboolean
link_cb (FmHelpWindow *self, const char *uri)
{
  if (g_uri_peek_scheme (uri) != NULL)
    return FALSE; /* the toolkit opens it */
  go_to (self, uri);
  return TRUE;
}

static void
back_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmHelpWindow *self = FM_HELP_WINDOW (widget);

  if (self->history->len < 2)
    return;
  g_ptr_array_set_size (self->history, (int)self->history->len - 1);
  read_last (self);
}

static void
contents_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  go_to (FM_HELP_WINDOW (widget), CONTENTS);
}

static gboolean
scroll_cb (GtkWidget *widget, GVariant *parameter, gpointer user_data)
{
  gboolean handled = FALSE;

  g_signal_emit_by_name (FM_HELP_WINDOW (widget)->scrolled, "scroll-child",
                         g_variant_get_int32 (parameter), FALSE, &handled);
  return handled;
}

static void
forget_cb (GtkWindow *parent)
{
  g_object_set_data (G_OBJECT (parent), "fm-help-window", NULL);
}

static void
fm_help_window_dispose (GObject *object)
{
  FmHelpWindow *self = FM_HELP_WINDOW (object);

  g_cancellable_cancel (self->reading);
  g_clear_object (&self->reading);
  g_clear_pointer (&self->history, g_ptr_array_unref);
  gtk_widget_dispose_template (GTK_WIDGET (self), FM_TYPE_HELP_WINDOW);
  G_OBJECT_CLASS (fm_help_window_parent_class)->dispose (object);
}

static void
add_keys (GtkWidgetClass *klass)
{
  static const struct {
    guint key;
    GtkScrollType scroll;
  } keys[] = {
    { GDK_KEY_Down, GTK_SCROLL_STEP_DOWN },
    { GDK_KEY_Up, GTK_SCROLL_STEP_UP },
    { GDK_KEY_Page_Down, GTK_SCROLL_PAGE_DOWN },
    { GDK_KEY_Page_Up, GTK_SCROLL_PAGE_UP },
    { GDK_KEY_space, GTK_SCROLL_PAGE_DOWN },
    { GDK_KEY_Home, GTK_SCROLL_START },
    { GDK_KEY_End, GTK_SCROLL_END },
  };

  for (guint i = 0; i < G_N_ELEMENTS (keys); i++)
    gtk_widget_class_add_binding (klass, keys[i].key, 0, scroll_cb, "i", keys[i].scroll);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_Escape, 0, "window.close", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_Left, GDK_ALT_MASK, "help.back", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_Home, GDK_ALT_MASK, "help.contents", NULL);
}

static void
fm_help_window_class_init (FmHelpWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_help_window_dispose;
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/help/fm-help-window.ui");
  gtk_widget_class_bind_template_child (widget_class, FmHelpWindow, scrolled);
  gtk_widget_class_bind_template_child (widget_class, FmHelpWindow, content);
  gtk_widget_class_install_action (widget_class, "help.back", NULL, back_action);
  gtk_widget_class_install_action (widget_class, "help.contents", NULL, contents_action);
  add_keys (widget_class);
}

static void
fm_help_window_init (FmHelpWindow *self)
{
  self->history = g_ptr_array_new_with_free_func (g_free);
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
fm_help_window_show (GtkWindow *parent, const char *page)
{
  FmHelpWindow *self = g_object_get_data (G_OBJECT (parent), "fm-help-window");

  if (self == NULL) {
    self = g_object_new (FM_TYPE_HELP_WINDOW, "transient-for", parent, "destroy-with-parent", TRUE,
                         "modal", gtk_window_get_modal (parent), NULL);
    g_object_set_data (G_OBJECT (parent), "fm-help-window", self);
    g_signal_connect_object (self, "destroy", G_CALLBACK (forget_cb), parent, G_CONNECT_SWAPPED);
  }
  go_to (self, page);
  gtk_window_present (GTK_WINDOW (self));
}
