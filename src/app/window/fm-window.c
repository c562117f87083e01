/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-window.c - the one window: blends at the left, pages in the centre, nutrition at the right */
#include "app/window/fm-window-private.h"

#include <glib/gi18n-lib.h>

#include "app/session/fm-notebook-settings.h"
#include "app/session/fm-preferences.h"
#include "app/widgets/fm-widget.h"

#define TOAST_S 4

G_DEFINE_FINAL_TYPE (FmWindow, fm_window, ADW_TYPE_APPLICATION_WINDOW)

static const char *const page_names[] = { "formula",  "versions", "experiments",
                                          "tastings", "compare",  "map" };

static gboolean
can_experiment (FmWindow *self)
{
  FmNotebook *notebook = fm_session_get_notebook (self->session);

  return notebook != NULL && !fm_notebook_is_read_only (notebook) &&
         fm_session_get_blend_id (self->session) != 0;
}

static void
update_actions (FmWindow *self)
{
  const FmFormula *formula = fm_session_get_formula (self->session);

  fm_window_set_enabled (self, "win.find-food", fm_session_is_editable (self->session));
  fm_window_set_enabled (self, "win.new-experiment", can_experiment (self));
  fm_window_set_enabled (self, "win.print", formula != NULL && fm_formula_n_lines (formula) > 0);
  fm_window_set_enabled (self, "win.save-version",
                         fm_session_is_editable (self->session) &&
                             fm_formula_n_lines (formula) > 0);
  fm_window_watch_page (self);
}

static void
update_frozen (FmWindow *self)
{
  const FmVersionInfo *version = fm_session_get_version_info (self->session);
  FmNotebook *notebook = fm_session_get_notebook (self->session);
  gboolean read_only = notebook != NULL && fm_notebook_is_read_only (notebook);
  g_autofree char *text = NULL;

  if (read_only)
    text = g_strdup (_ ("This notebook is open for reading only. Nothing can be changed here."));
  else if (version != NULL)
    text =
        g_strdup_printf (_ ("Version %d is frozen. Branch from it to change it."), version->number);
  if (text != NULL)
    gtk_label_set_text (self->frozen_label, text);
  gtk_widget_set_visible (GTK_WIDGET (self->frozen_draft_button), version != NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->frozen_branch_button), version != NULL && !read_only);
  gtk_revealer_set_reveal_child (self->frozen_revealer, text != NULL);
  fm_window_set_enabled (self, "win.show-draft", version != NULL);
  fm_window_set_enabled (self, "win.branch-shown", version != NULL && !read_only);
}

static void
update_title (FmWindow *self)
{
  FmNotebook *notebook = fm_session_get_notebook (self->session);
  g_autofree char *file =
      notebook != NULL ? g_filename_display_basename (fm_notebook_path (notebook)) : NULL;
  const FmCompareItem *made = fm_session_get_made (self->session);
  g_autofree char *shown = made != NULL ? g_strdup_printf ("%s, %s", made->short_title, made->title)
                                        : fm_session_dup_shown (self->session);
  const char *notice = notebook != NULL ? fm_notebook_notice () : NULL;
  g_autofree char *title = NULL;

  title = shown != NULL ? g_strdup_printf ("%s – %s", shown, file)
                        : g_strdup (file != NULL ? file : "Forcemeat");
  gtk_window_set_title (GTK_WINDOW (self), title);
  /* The header has no room for it beside the pages. */
  fm_widget_set_label (self->shown_label, title);
  gtk_widget_set_visible (GTK_WIDGET (self->shown_label), notebook != NULL);
  fm_widget_set_label (self->notice_label, notice != NULL ? notice : "");
  gtk_widget_set_visible (GTK_WIDGET (self->notice_label), notice != NULL);
}

/* What is not watched, as a folder of another computer, is looked for when one comes back. */
static void
active_cb (FmWindow *self)
{
  if (self->session != NULL && gtk_window_is_active (GTK_WINDOW (self)))
    fm_session_look_for_file (self->session);
}

static void
shown_changed_cb (FmWindow *self)
{
  fm_window_update_content (self);
  update_title (self);
  update_frozen (self);
  update_actions (self);
  fm_window_begin_blend (self);
}

static void
message_cb (FmWindow *self, const char *text)
{
  AdwToast *toast = adw_toast_new (text);

  adw_toast_set_timeout (toast, TOAST_S);
  adw_toast_overlay_add_toast (self->toast_overlay, toast);
}

static void
failure_cb (FmWindow *self, const char *text)
{
  self->failure_is_of_saving = FALSE;
  gtk_label_set_text (self->failure_label, text);
  gtk_revealer_set_reveal_child (self->failure_revealer, TRUE);
}

/* Beside what failed while the notebook was opened. */
static void
altered_cb (FmWindow *self, const char *text)
{
  const gboolean is_shown = gtk_revealer_get_reveal_child (self->failure_revealer);
  g_autofree char *whole =
      g_strjoin ("\n", is_shown ? gtk_label_get_text (self->failure_label) : text,
                 is_shown ? text : NULL, NULL);

  gtk_label_set_text (self->failure_label, whole);
  gtk_revealer_set_reveal_child (self->failure_revealer, TRUE);
}

/* Comes after the session has said the same as a failure. */
static void
save_failed_cb (FmWindow *self)
{
  self->failure_is_of_saving = TRUE;
}

static void
saved_again_cb (FmWindow *self)
{
  if (!self->failure_is_of_saving)
    return;
  /* A screen reader reads a label on after its bar has closed. */
  gtk_label_set_text (self->failure_label, "");
  gtk_revealer_set_reveal_child (self->failure_revealer, FALSE);
}

static void
failure_dismiss_cb (FmWindow *self)
{
  gtk_revealer_set_reveal_child (self->failure_revealer, FALSE);
}

/* A narrow window keeps its width for the work: of the window buttons only close stays. */
static char *
close_only_layout (GtkWidget *widget)
{
  g_autofree char *layout = NULL;
  g_auto (GStrv) parts = NULL;
  GString *kept = g_string_new (NULL);

  g_object_get (gtk_widget_get_settings (widget), "gtk-decoration-layout", &layout, NULL);
  parts = g_strsplit (layout != NULL ? layout : ":close", ":", 2);
  for (guint i = 0; parts[i] != NULL; i++) {
    if (i > 0)
      g_string_append_c (kept, ':');
    if (strstr (parts[i], "close") != NULL)
      g_string_append (kept, "close");
  }
  return g_string_free (kept, FALSE);
}

static void
folded_cb (FmWindow *self)
{
  g_autofree char *layout =
      adw_leaflet_get_folded (self->leaflet) ? close_only_layout (GTK_WIDGET (self)) : NULL;

  adw_header_bar_set_decoration_layout (self->header, layout);
  fm_sidebar_set_folded (self->sidebar, adw_leaflet_get_folded (self->leaflet));
  /* The pages are what the work is about; the blends are one step back. */
  if (adw_leaflet_get_folded (self->leaflet))
    adw_leaflet_set_visible_child_name (self->leaflet, "work");
}

static void
picked_cb (FmWindow *self)
{
  adw_leaflet_set_visible_child_name (self->leaflet, "work");
}

/* Compare and Map show several blends, of which the panel could tell of one only; without a
 * notebook there is nothing to tell of. */
static gboolean
page_has_panel (FmWindow *self)
{
  const char *content = gtk_stack_get_visible_child_name (self->content_stack);
  const char *name = adw_view_stack_get_visible_child_name (self->stack);

  return g_strcmp0 (content, "no-notebook") != 0 && g_strcmp0 (name, "compare") != 0 &&
         g_strcmp0 (name, "map") != 0;
}

static void
flap_folded_cb (FmWindow *self)
{
  /* An unfolded panel that starts to overlay the page would hide it, so it steps aside. */
  if (adw_flap_get_folded (self->flap) || !page_has_panel (self))
    adw_flap_set_reveal_flap (self->flap, FALSE);
  else
    adw_flap_set_reveal_flap (self->flap,
                              g_settings_get_boolean (fm_preferences_get (), "show-nutrition"));
}

static void
flap_revealed_cb (FmWindow *self)
{
  if (!adw_flap_get_folded (self->flap) && page_has_panel (self))
    g_settings_set_boolean (fm_preferences_get (), "show-nutrition",
                            adw_flap_get_reveal_flap (self->flap));
}

static void
update_panel (FmWindow *self)
{
  fm_window_set_enabled (self, "win.nutrition", page_has_panel (self));
  gtk_widget_set_sensitive (GTK_WIDGET (self->nutrition_button), page_has_panel (self));
  flap_folded_cb (self);
}

/* The ways in are shown once at most: a panel that the user opened is not put away by reading. */
static void
content_changed_cb (FmWindow *self)
{
  if (gtk_widget_get_sensitive (GTK_WIDGET (self->nutrition_button)) != page_has_panel (self))
    update_panel (self);
}

static void
page_changed_cb (FmWindow *self)
{
  const char *name = adw_view_stack_get_visible_child_name (self->stack);

  if (name != NULL)
    g_settings_set_string (fm_preferences_get (), "page", name);
  update_panel (self);
  fm_window_watch_page (self);
}

static void
show_blends_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  adw_leaflet_set_visible_child_name (FM_WINDOW (widget)->leaflet, "blends");
}

static void
page_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmWindow *self = FM_WINDOW (widget);
  int page = g_variant_get_int32 (parameter);

  if (page < 1 || page > (int)G_N_ELEMENTS (page_names))
    return;
  adw_leaflet_set_visible_child_name (self->leaflet, "work");
  adw_view_stack_set_visible_child_name (self->stack, page_names[page - 1]);
}

static void
fullscreen_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  if (gtk_window_is_fullscreen (GTK_WINDOW (widget)))
    gtk_window_unfullscreen (GTK_WINDOW (widget));
  else
    gtk_window_fullscreen (GTK_WINDOW (widget));
}

static void
nutrition_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmWindow *self = FM_WINDOW (widget);

  adw_flap_set_reveal_flap (self->flap, !adw_flap_get_reveal_flap (self->flap));
}

static void
close_window (FmWindow *self, gpointer data)
{
  gtk_window_close (GTK_WINDOW (self));
}

static gboolean
fm_window_close_request (GtkWindow *window)
{
  FmWindow *self = FM_WINDOW (window);

  if (fm_window_would_lose (self)) {
    fm_window_ask_before_loss (self, _ ("Close Anyway"), close_window, NULL, NULL);
    return GDK_EVENT_STOP;
  }
  return GTK_WINDOW_CLASS (fm_window_parent_class)->close_request (window);
}

static void
fm_window_hide (GtkWidget *widget)
{
  fm_session_flush (FM_WINDOW (widget)->session);
  GTK_WIDGET_CLASS (fm_window_parent_class)->hide (widget);
}

static void
fm_window_dispose (GObject *object)
{
  FmWindow *self = FM_WINDOW (object);

  fm_window_cancel_busy (self);
  fm_window_end_backup (self);
  g_clear_object (&self->busy);
  g_clear_handle_id (&self->busy_delay_id, g_source_remove);
  g_clear_object (&self->chooser);
  g_clear_object (&self->page_signals);
  g_clear_object (&self->document_signals);
  gtk_widget_dispose_template (GTK_WIDGET (self), FM_TYPE_WINDOW);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (fm_window_parent_class)->dispose (object);
}

static void
bind_template (GtkWidgetClass *klass)
{
  gtk_widget_class_bind_template_child (klass, FmWindow, toast_overlay);
  gtk_widget_class_bind_template_child (klass, FmWindow, leaflet);
  gtk_widget_class_bind_template_child (klass, FmWindow, sidebar);
  gtk_widget_class_bind_template_child (klass, FmWindow, switcher_title);
  gtk_widget_class_bind_template_child (klass, FmWindow, shown_label);
  gtk_widget_class_bind_template_child (klass, FmWindow, notice_label);
  gtk_widget_class_bind_template_child (klass, FmWindow, header);
  gtk_widget_class_bind_template_child (klass, FmWindow, switcher_bar);
  gtk_widget_class_bind_template_child (klass, FmWindow, undo_button);
  gtk_widget_class_bind_template_child (klass, FmWindow, redo_button);
  gtk_widget_class_bind_template_child (klass, FmWindow, menu_button);
  gtk_widget_class_bind_template_child (klass, FmWindow, primary_menu);
  gtk_widget_class_bind_template_child (klass, FmWindow, recent_menu);
  gtk_widget_class_bind_template_child (klass, FmWindow, busy_revealer);
  gtk_widget_class_bind_template_child (klass, FmWindow, busy_spinner);
  gtk_widget_class_bind_template_child (klass, FmWindow, busy_label);
  gtk_widget_class_bind_template_child (klass, FmWindow, failure_revealer);
  gtk_widget_class_bind_template_child (klass, FmWindow, failure_label);
  gtk_widget_class_bind_template_child (klass, FmWindow, place_revealer);
  gtk_widget_class_bind_template_child (klass, FmWindow, place_label);
  gtk_widget_class_bind_template_child (klass, FmWindow, place_follow_button);
  gtk_widget_class_bind_template_child (klass, FmWindow, frozen_revealer);
  gtk_widget_class_bind_template_child (klass, FmWindow, frozen_label);
  gtk_widget_class_bind_template_child (klass, FmWindow, frozen_draft_button);
  gtk_widget_class_bind_template_child (klass, FmWindow, frozen_branch_button);
  gtk_widget_class_bind_template_child (klass, FmWindow, flap);
  gtk_widget_class_bind_template_child (klass, FmWindow, nutrition_button);
  gtk_widget_class_bind_template_child (klass, FmWindow, content_stack);
  gtk_widget_class_bind_template_child (klass, FmWindow, stack);
  fm_window_bind_pages (klass);
  gtk_widget_class_bind_template_callback (klass, folded_cb);
  gtk_widget_class_bind_template_callback (klass, active_cb);
  gtk_widget_class_bind_template_callback (klass, fm_window_update_switcher);
  gtk_widget_class_bind_template_callback (klass, picked_cb);
  gtk_widget_class_bind_template_callback (klass, flap_folded_cb);
  gtk_widget_class_bind_template_callback (klass, flap_revealed_cb);
  gtk_widget_class_bind_template_callback (klass, page_changed_cb);
  gtk_widget_class_bind_template_callback (klass, content_changed_cb);
  gtk_widget_class_bind_template_callback (klass, fm_window_cancel_busy);
  gtk_widget_class_bind_template_callback (klass, failure_dismiss_cb);
}

static void
install_actions (GtkWidgetClass *klass)
{
  gtk_widget_class_install_action (klass, "win.show-blends", NULL, show_blends_action);
  gtk_widget_class_install_action (klass, "win.page", "i", page_action);
  gtk_widget_class_install_action (klass, "win.nutrition", NULL, nutrition_action);
  gtk_widget_class_install_action (klass, "win.fullscreen", NULL, fullscreen_action);
  fm_window_install_open_actions (klass);
  fm_window_install_blend_actions (klass);
  fm_window_install_page_actions (klass);
  fm_window_install_undo_actions (klass);
  fm_window_install_search_action (klass);
  fm_window_install_backup_action (klass);
}

static void
fm_window_class_init (FmWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_window_dispose;
  widget_class->hide = fm_window_hide;
  GTK_WINDOW_CLASS (klass)->close_request = fm_window_close_request;

  g_type_ensure (FM_TYPE_SIDEBAR);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/window/fm-window.ui");
  bind_template (widget_class);
  install_actions (widget_class);
}

/* The panel is not bound: whether it is shown depends on the page and the room as well. */
static void
restore_window_state (FmWindow *self)
{
  /* Another window keeps its size when that of one is kept. */
  const GSettingsBindFlags flags = G_SETTINGS_BIND_DEFAULT | G_SETTINGS_BIND_GET_NO_CHANGES;
  GSettings *settings = fm_preferences_get ();
  g_autofree char *page = g_settings_get_string (settings, "page");

  g_settings_bind (settings, "window-width", self, "default-width", flags);
  g_settings_bind (settings, "window-height", self, "default-height", flags);
  g_settings_bind (settings, "window-maximized", self, "maximized", flags);
  adw_view_stack_set_visible_child_name (self->stack, page);
  flap_folded_cb (self);
  adw_leaflet_set_visible_child_name (self->leaflet, "work");
}

static void
fm_window_init (FmWindow *self)
{
  self->loading = TRUE;
  fm_window_init_undo (self);
  gtk_widget_init_template (GTK_WIDGET (self));
  fm_window_defer_menu (self);
  fm_window_accept_files (self);
  restore_window_state (self);
}

static void
set_session (FmWindow *self, FmSession *session)
{
  FmDocuments *documents = fm_session_get_documents (session);

  self->session = g_object_ref (session);
  fm_sidebar_set_session (self->sidebar, session);
  g_signal_connect_object (gtk_recent_manager_get_default (), "changed",
                           G_CALLBACK (fm_window_update_recent), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (fm_notebook_settings_get_default (), "edited",
                           G_CALLBACK (fm_session_save_setting), session, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "changed::shown", G_CALLBACK (shown_changed_cb), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "changed::place", G_CALLBACK (fm_window_update_place), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "changed::notebook", G_CALLBACK (fm_window_update_place), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "changed::made", G_CALLBACK (update_title), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "changed::blend", G_CALLBACK (update_title), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "changed::history", G_CALLBACK (update_actions), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "message", G_CALLBACK (message_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "failure", G_CALLBACK (failure_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "altered", G_CALLBACK (altered_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (documents, "save-failed", G_CALLBACK (save_failed_cb), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (documents, "saved-again", G_CALLBACK (saved_again_cb), self,
                           G_CONNECT_SWAPPED);
}

FmWindow *
fm_window_new (AdwApplication *application, FmSession *session)
{
  FmWindow *self = g_object_new (FM_TYPE_WINDOW, "application", application, NULL);

  set_session (self, session);
  fm_window_update_recent (self);
  shown_changed_cb (self);
  return self;
}

FmSession *
fm_window_get_session (FmWindow *self)
{
  return self->session;
}

const char *
fm_window_get_page (FmWindow *self)
{
  const char *content = gtk_stack_get_visible_child_name (self->content_stack);

  if (g_strcmp0 (content, "pages") != 0)
    return "notebooks";
  return adw_view_stack_get_visible_child_name (self->stack);
}
