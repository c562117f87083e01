/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-search-window.c - one search over the notebook: results while one types, by kind */
#include "app/window/fm-search-window.h"

#include <glib/gi18n-lib.h>

#include "app/session/fm-store-task.h"
#include "app/widgets/fm-widget.h"
#include "app/window/fm-search-text.h"

/* Results of each kind that are listed. */
#define N_MAX_OF_KIND 20

struct _FmSearchWindow {
  AdwWindow parent_instance;

  GtkSearchEntry *entry;
  GtkLabel *status_label;
  GtkScrolledWindow *scroller;
  GtkListBox *list;

  FmSession *session;
  GCancellable *searching;
  FmSearchResult *result; /* (nullable): shown */
};

G_DEFINE_FINAL_TYPE (FmSearchWindow, fm_search_window, ADW_TYPE_WINDOW)

enum {
  CHOSEN,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static const FmFound *
found_of_row (FmSearchWindow *self, GtkListBoxRow *row)
{
  return g_ptr_array_index (self->result->found, gtk_list_box_row_get_index (row));
}

static void
choose (FmSearchWindow *self, GtkListBoxRow *row)
{
  if (row == NULL || self->result == NULL)
    return;
  g_signal_emit (self, signals[CHOSEN], 0, found_of_row (self, row));
  gtk_window_close (GTK_WINDOW (self));
}

/* The field keeps the focus, so it says what is highlighted. */
static void
row_selected_cb (FmSearchWindow *self)
{
  GtkListBoxRow *row = gtk_list_box_get_selected_row (self->list);
  GtkAdjustment *adjustment = gtk_scrolled_window_get_vadjustment (self->scroller);
  double y = 0.0;

  if (row == NULL) {
    gtk_accessible_reset_property (GTK_ACCESSIBLE (self->entry),
                                   GTK_ACCESSIBLE_PROPERTY_DESCRIPTION);
    return;
  }
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  g_object_get_data (G_OBJECT (row), "said"), -1);
  if (fm_widget_height_in (GTK_WIDGET (row), GTK_WIDGET (self->list), 0.0, &y))
    gtk_adjustment_clamp_page (adjustment, y, y + gtk_widget_get_height (GTK_WIDGET (row)));
}

static GtkWidget *
add_label (GtkWidget *box, const char *text, const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0F);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);
  gtk_box_append (GTK_BOX (box), label);
  return label;
}

static GtkWidget *
new_row (const FmFound *found, const char *words)
{
  GtkWidget *row = gtk_list_box_row_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  g_autofree char *title = fm_search_text_title (found);
  g_autofree char *place = fm_search_text_place (found, words);
  char *said = g_strdup_printf ("%s %s", title, place);

  gtk_widget_set_margin_top (box, 6);
  gtk_widget_set_margin_bottom (box, 6);
  gtk_widget_set_margin_start (box, 12);
  gtk_widget_set_margin_end (box, 12);
  add_label (box, title, NULL);
  if (place[0] != '\0')
    gtk_widget_add_css_class (add_label (box, place, "caption"), "dim-label");
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), box);
  gtk_widget_set_focusable (row, FALSE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL, said, -1);
  g_object_set_data_full (G_OBJECT (row), "said", said, g_free);
  return row;
}

static void
head_row_cb (GtkListBoxRow *row, GtkListBoxRow *before, gpointer data)
{
  FmSearchWindow *self = data;
  const FmFound *found = found_of_row (self, row);
  g_autofree char *text = NULL;
  GtkWidget *label;

  if (before != NULL && found_of_row (self, before)->kind == found->kind) {
    gtk_list_box_row_set_header (row, NULL);
    return;
  }
  text = fm_search_text_heading (found->kind, self->result->is_cut[found->kind]);
  label = gtk_label_new (text);
  gtk_label_set_xalign (GTK_LABEL (label), 0.0F);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_set_margin_top (label, 12);
  gtk_widget_set_margin_start (label, 12);
  gtk_widget_add_css_class (label, "heading");
  gtk_list_box_row_set_header (row, label);
}

static void
say (FmSearchWindow *self, const char *text)
{
  fm_widget_set_label (self->status_label, text);
  gtk_widget_set_visible (GTK_WIDGET (self->status_label), text[0] != '\0');
}

static void
say_count (FmSearchWindow *self, const char *words)
{
  const guint n = self->result->found->len;
  g_autofree char *text = NULL;

  if (n > 0)
    text = g_strdup_printf (ngettext ("%u place", "%u places", n), n);
  else
    text = g_strdup_printf (
        _ ("Nothing says “%s”. Looked at: names, reasons, notes and ingredients of blends, drafts "
           "and "
           "versions; titles, notes and surfaces of experiments; captions of photos; titles, notes "
           "and remarks of tastings; own entries. Each word is looked for by its beginning."),
        words);
  say (self, text);
}

static void
clear_list (FmSearchWindow *self)
{
  GtkWidget *row;

  while ((row = gtk_widget_get_first_child (GTK_WIDGET (self->list))) != NULL)
    gtk_list_box_remove (self->list, row);
}

static void
show_result (FmSearchWindow *self, FmSearchResult *result)
{
  const char *words = gtk_editable_get_text (GTK_EDITABLE (self->entry));

  clear_list (self);
  g_clear_pointer (&self->result, fm_search_result_free);
  self->result = result;
  for (guint i = 0; result != NULL && i < result->found->len; i++)
    gtk_list_box_append (self->list, new_row (g_ptr_array_index (result->found, i), words));
  gtk_list_box_select_row (self->list, gtk_list_box_get_row_at_index (self->list, 0));
  gtk_adjustment_set_value (gtk_scrolled_window_get_vadjustment (self->scroller), 0.0);
}

static gpointer
search (FmNotebook *notebook, gpointer text, GCancellable *cancellable, GError **error)
{
  return fm_search (notebook, text, N_MAX_OF_KIND, cancellable, error);
}

static void
searched_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  FmSearchWindow *self = FM_SEARCH_WINDOW (source);
  g_autoptr (GError) error = NULL;
  FmSearchResult *found = fm_store_task_finish (result, &error);

  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    return;
  g_clear_object (&self->searching);
  if (found == NULL) {
    show_result (self, NULL);
    say (self, error->message);
    return;
  }
  show_result (self, found);
  say_count (self, fm_store_task_data (result));
}

static void
stop_searching (FmSearchWindow *self)
{
  g_cancellable_cancel (self->searching);
  g_clear_object (&self->searching);
}

static void
search_changed_cb (FmSearchWindow *self)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (self->entry));
  FmNotebook *notebook = fm_session_get_notebook (self->session);

  stop_searching (self);
  if (text[0] == '\0' || notebook == NULL) {
    show_result (self, NULL);
    say (self, "");
    return;
  }
  self->searching = g_cancellable_new ();
  fm_store_task (&(FmStoreTask){
      .owner = self,
      .notebook = notebook,
      .run = search,
      .free_result = (GDestroyNotify)fm_search_result_free,
      .data = g_strdup (text),
      .free_data = g_free,
      .cancellable = self->searching,
      .done = searched_cb,
  });
}

static void
activate_cb (FmSearchWindow *self)
{
  choose (self, gtk_list_box_get_selected_row (self->list));
}

static void
row_activated_cb (FmSearchWindow *self, GtkListBoxRow *row)
{
  choose (self, row);
}

static gboolean
key_pressed_cb (
    FmSearchWindow *self, guint keyval, guint keycode, GdkModifierType state, gpointer controller)
{
  GtkListBoxRow *row = gtk_list_box_get_selected_row (self->list);
  GtkListBoxRow *next;

  if (row == NULL || (keyval != GDK_KEY_Down && keyval != GDK_KEY_Up))
    return GDK_EVENT_PROPAGATE;
  next = gtk_list_box_get_row_at_index (self->list, gtk_list_box_row_get_index (row) +
                                                        (keyval == GDK_KEY_Down ? 1 : -1));
  if (next != NULL)
    gtk_list_box_select_row (self->list, next);
  return GDK_EVENT_STOP;
}

static void
fm_search_window_dispose (GObject *object)
{
  FmSearchWindow *self = FM_SEARCH_WINDOW (object);

  stop_searching (self);
  if (self->list != NULL) {
    /* A list that goes away asks for the headings of what is left. */
    gtk_list_box_set_header_func (self->list, NULL, NULL, NULL);
    g_signal_handlers_disconnect_by_data (self->list, self);
  }
  gtk_widget_dispose_template (GTK_WIDGET (self), FM_TYPE_SEARCH_WINDOW);
  g_clear_object (&self->session);
  g_clear_pointer (&self->result, fm_search_result_free);
  G_OBJECT_CLASS (fm_search_window_parent_class)->dispose (object);
}

static void
fm_search_window_class_init (FmSearchWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_search_window_dispose;
  signals[CHOSEN] = g_signal_new ("chosen", FM_TYPE_SEARCH_WINDOW, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                  NULL, G_TYPE_NONE, 1, G_TYPE_POINTER);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/window/fm-search-window.ui");
  gtk_widget_class_bind_template_child (widget_class, FmSearchWindow, entry);
  gtk_widget_class_bind_template_child (widget_class, FmSearchWindow, status_label);
  gtk_widget_class_bind_template_child (widget_class, FmSearchWindow, scroller);
  gtk_widget_class_bind_template_child (widget_class, FmSearchWindow, list);
  gtk_widget_class_bind_template_callback (widget_class, search_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, activate_cb);
  gtk_widget_class_bind_template_callback (widget_class, row_activated_cb);
  gtk_widget_class_bind_template_callback (widget_class, row_selected_cb);
  gtk_widget_class_bind_template_callback (widget_class, key_pressed_cb);
}

static void
fm_search_window_init (FmSearchWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_list_box_set_header_func (self->list, head_row_cb, self, NULL);
}

FmSearchWindow *
fm_search_window_new (GtkWindow *parent, FmSession *session)
{
  FmSearchWindow *self = g_object_new (FM_TYPE_SEARCH_WINDOW, "transient-for", parent, NULL);

  self->session = g_object_ref (session);
  gtk_widget_grab_focus (GTK_WIDGET (self->entry));
  return self;
}
