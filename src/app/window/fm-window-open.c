/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-window-open.c - opening, creating and copying notebooks from a window */
#include "app/window/fm-window-open.h"

#include <glib/gi18n-lib.h>

#include "app/session/fm-notebook-settings.h"
#include "app/session/fm-writer.h"
#include "app/widgets/fm-widget.h"
#include "app/window/fm-window-private.h"
#include "app/window/fm-window-work.h"

static void start_work (FmWindow *self, FmWorkKind kind, const char *path);
static void work_done_cb (GObject *source, GAsyncResult *result, gpointer user_data);

/* At the start of the program the window comes first. */
static gboolean
run_when_painted_cb (GtkWidget *widget, GdkFrameClock *clock, gpointer task)
{
  if (!fm_widget_has_painted (widget))
    return G_SOURCE_CONTINUE;
  fm_store_task_start (g_object_ref (task));
  return G_SOURCE_REMOVE;
}

static void
start_anyway (FmWindow *self, gpointer data)
{
  const FmWork *work = data;

  start_work (self, work->kind, work->path);
}

static void
start_work (FmWindow *self, FmWorkKind kind, const char *path)
{
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autofree char *text = fm_work_describe (kind, path);
  const gboolean needs_notebook = fm_work_info (kind)->needs_notebook;
  FmNotebook *notebook = fm_session_get_notebook (self->session);
  FmWork *work;

  if (self->busy != NULL) {
    fm_session_message (self->session, _ ("Wait for the work under way, or cancel it first"));
    return;
  }
  if (!needs_notebook && fm_window_would_lose (self)) {
    fm_window_ask_before_loss (self, _ ("Go On Anyway"), start_anyway, fm_work_new (kind, path),
                               (GDestroyNotify)fm_work_free);
    return;
  }
  work = fm_work_new (kind, path);
  fm_setting_values_init (&work->settings);
  if (kind == FM_WORK_COPY)
    work->unsaved = fm_documents_copy_unsaved (fm_session_get_documents (self->session), notebook);
  fm_window_begin_busy (self, text, cancellable);
  gtk_widget_add_tick_callback (GTK_WIDGET (self), run_when_painted_cb,
                                fm_store_task_new (&(FmStoreTask){
                                    .owner = self,
                                    .notebook = needs_notebook ? notebook : NULL,
                                    .run = fm_work_run,
                                    .free_result = (GDestroyNotify)fm_writer_close_notebook,
                                    .data = work,
                                    .free_data = (GDestroyNotify)fm_work_free,
                                    .cancellable = cancellable,
                                    .done = work_done_cb,
                                }),
                                g_object_unref);
}

static void
in_use_response_cb (AdwMessageDialog *dialog, const char *response, FmWindow *self)
{
  const char *path = g_object_get_data (G_OBJECT (dialog), "path");

  if (g_str_equal (response, "read"))
    start_work (self, FM_WORK_OPEN_READ_ONLY, path);
}

static void
offer_read_only (FmWindow *self, const char *path, const char *title, const char *reason)
{
  GtkWidget *dialog = adw_message_dialog_new (GTK_WINDOW (self), title, reason);

  adw_message_dialog_add_responses (ADW_MESSAGE_DIALOG (dialog), "cancel", _ ("Cancel"), "read",
                                    _ ("Open for Reading"), NULL);
  adw_message_dialog_set_default_response (ADW_MESSAGE_DIALOG (dialog), "read");
  adw_message_dialog_set_close_response (ADW_MESSAGE_DIALOG (dialog), "cancel");
  g_object_set_data_full (G_OBJECT (dialog), "path", g_strdup (path), g_free);
  g_signal_connect_object (dialog, "response", G_CALLBACK (in_use_response_cb), self, 0);
  gtk_window_present (GTK_WINDOW (dialog));
}

static void
offer_what_is_in_use (FmWindow *self, const char *path)
{
  g_autofree char *name = g_filename_display_basename (path);
  g_autofree char *reason = g_strdup_printf (
      _ ("Another window or program is writing %s. You can read it here, or close it there and "
         "open it again."),
      name);

  offer_read_only (self, path, _ ("Notebook Is in Use"), reason);
}

static void
work_failed (FmWindow *self, FmWork *work, const GError *error)
{
  const gboolean opens = fm_work_info (work->kind)->opens;

  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED)) {
    fm_session_message (self->session, _ ("Cancelled; nothing was changed"));
  } else if (g_error_matches (error, FM_STORE_ERROR, FM_STORE_ERROR_IN_USE) && opens) {
    offer_what_is_in_use (self, work->path);
  } else if (g_error_matches (error, FM_STORE_ERROR, FM_STORE_ERROR_NO_PERMISSION) && opens &&
             work->may_be_read) {
    offer_read_only (self, work->path, _ ("Notebook May Not Be Written"), error->message);
  } else if (g_error_matches (error, FM_STORE_ERROR, FM_STORE_ERROR_DAMAGED) && opens) {
    fm_window_offer_recovery (self, work->path, error->message);
  } else {
    if (g_error_matches (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND))
      fm_window_forget (work->path);
    fm_session_failure (self->session, error);
  }
}

static void
copied (FmWindow *self, const FmWork *work, GPtrArray *unsaved)
{
  g_autofree char *name = g_filename_display_basename (work->path);
  g_autofree char *text = NULL;

  for (guint i = 0; i < unsaved->len; i++)
    fm_stored_copy_tell_kept (g_ptr_array_index (unsaved, i));
  if (unsaved->len > 0)
    text = g_strdup_printf (_ ("Saved a copy as %s, with the changes that could not be saved here"),
                            name);
  else
    text = g_strdup_printf (_ ("Saved a copy as %s"), name);
  fm_session_message (self->session, text);
}

static void
handed_out (FmWindow *self, const FmWork *work)
{
  g_autofree char *name = g_filename_display_basename (work->path);
  g_autofree char *text = NULL;

  if (fm_session_is_saved (self->session))
    text = g_strdup_printf (_ ("Written as %s"), name);
  else
    text = g_strdup_printf (_ ("Written as %s, without the changes that could not be saved"), name);
  fm_session_message (self->session, text);
}

static void
tell_notice (FmWindow *self, FmNotebook *notebook)
{
  const char *notice = fm_notebook_get_notice (notebook);
  g_autoptr (GError) error = NULL;

  if (notice == NULL)
    return;
  error = g_error_new_literal (FM_STORE_ERROR, FM_STORE_ERROR_FAILED, notice);
  fm_session_failure (self->session, error);
}

static void
opened (FmWindow *self, const FmWork *work, FmNotebook *notebook)
{
  fm_notebook_settings_adopt (fm_notebook_settings_get_default (), &work->settings);
  if (fm_work_info (work->kind)->moves)
    fm_session_move (self->session, notebook);
  else
    fm_session_set_notebook (self->session, notebook);
  fm_window_remember (fm_notebook_path (notebook));
  gtk_revealer_set_reveal_child (self->failure_revealer, FALSE);
  tell_notice (self, notebook);
  fm_window_begin_backup (self, notebook);
  if (work->report != NULL)
    fm_window_tell_recovered (self, fm_notebook_path (notebook), work->report);
}

static void
work_done_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  FmWindow *self = FM_WINDOW (source);
  FmWork *work = fm_store_task_data (result);
  g_autoptr (GError) error = NULL;
  FmNotebook *notebook = fm_store_task_finish (result, &error);
  g_autoptr (GPtrArray) unsaved = g_steal_pointer (&work->unsaved);

  if (self->session == NULL) { /* the window was closed meanwhile */
    fm_writer_close_notebook (notebook);
    return;
  }
  fm_window_end_busy (self);
  self->loading = FALSE;
  if (notebook == NULL) {
    work_failed (self, work, error);
  } else if (fm_work_info (work->kind)->hands_out) {
    handed_out (self, work);
    fm_notebook_unref (notebook); /* the session keeps its own */
  } else if (work->kind == FM_WORK_COPY) {
    copied (self, work, unsaved);
    fm_notebook_unref (notebook); /* the session keeps its own */
  } else {
    opened (self, work, notebook);
  }
  fm_window_update_content (self);
}

static gboolean
is_open (FmWindow *self, const char *path)
{
  FmNotebook *notebook = fm_session_get_notebook (self->session);
  g_autoptr (GFile) wanted = g_file_new_for_path (path);
  g_autoptr (GFile) here = NULL;

  if (notebook == NULL)
    return FALSE;
  here = g_file_new_for_path (fm_notebook_path (notebook));
  return g_file_equal (wanted, here) && !fm_notebook_is_read_only (notebook) &&
         fm_session_get_place (self->session) == NULL;
}

void
fm_window_open_path (FmWindow *self, const char *path)
{
  if (is_open (self, path))
    fm_session_message (self->session, _ ("This notebook is open already"));
  else
    start_work (self, FM_WORK_OPEN, path);
}

void
fm_window_read_damaged (FmWindow *self, const char *path)
{
  start_work (self, FM_WORK_READ_DAMAGED, path);
}

void
fm_window_recover (FmWindow *self, const char *path)
{
  start_work (self, FM_WORK_RECOVER, path);
}

void
fm_window_open_demo (FmWindow *self)
{
  g_autofree char *path = fm_window_own_path ("demo" FM_NOTEBOOK_SUFFIX);

  if (is_open (self, path))
    fm_session_message (self->session, _ ("The demo notebook is open already"));
  else
    start_work (self, FM_WORK_DEMO, path);
}

static void
follow_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmWindow *self = FM_WINDOW (widget);
  const FmNotebookPlace *place = fm_session_get_place (self->session);

  if (place != NULL && place->path != NULL)
    start_work (self, FM_WORK_FOLLOW, place->path);
}

static void
demo_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  fm_window_open_demo (FM_WINDOW (widget));
}

static void
first_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  g_autofree char *path = fm_window_first_path ();

  start_work (FM_WINDOW (widget), FM_WORK_OPEN_OR_CREATE, path);
}

static void
open_recent_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  fm_window_open_path (FM_WINDOW (widget), g_variant_get_string (parameter, NULL));
}

static void
chosen_cb (GtkNativeDialog *dialog, int response, FmWindow *self)
{
  const FmWorkKind kind = GPOINTER_TO_INT (g_object_get_data (G_OBJECT (dialog), "kind"));
  const FmWorkInfo *info = fm_work_info (kind);
  g_autoptr (GFile) file = NULL;
  g_autofree char *path = NULL;

  if (response == GTK_RESPONSE_ACCEPT)
    file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));
  path = file != NULL ? fm_window_find_path (self, file) : NULL;
  g_clear_object (&self->chooser);
  if (path == NULL)
    return;
  if (kind == FM_WORK_OPEN) {
    fm_window_open_path (self, path);
    return;
  }
  if (info->needs_notebook)
    fm_session_flush (self->session);
  if (info->ending != NULL && !g_str_has_suffix (path, info->ending)) {
    g_autofree char *bare = g_steal_pointer (&path);

    path = g_strconcat (bare, info->ending, NULL);
  }
  start_work (self, kind, path);
}

static GtkFileFilter *
own_filter (FmWorkFile file)
{
  GtkFileFilter *filter = gtk_file_filter_new ();
  const gboolean is_open_data = file == FM_WORK_FILE_OPEN_DATA;

  gtk_file_filter_set_name (filter, is_open_data ? _ ("Open data") : _ ("Notebooks"));
  gtk_file_filter_add_suffix (filter, is_open_data ? "json" : FM_NOTEBOOK_SUFFIX + 1);
  return filter;
}

static GtkFileChooserAction
chooser_action (const FmWorkInfo *info)
{
  if (info->file == FM_WORK_FILE_FOLDER)
    return GTK_FILE_CHOOSER_ACTION_SELECT_FOLDER;
  return info->name != NULL ? GTK_FILE_CHOOSER_ACTION_SAVE : GTK_FILE_CHOOSER_ACTION_OPEN;
}

static GtkFileFilter *
any_filter (void)
{
  GtkFileFilter *filter = gtk_file_filter_new ();

  gtk_file_filter_set_name (filter, _ ("All files"));
  gtk_file_filter_add_pattern (filter, "*");
  return filter;
}

static void
choose (FmWindow *self, FmWorkKind kind)
{
  const FmWorkInfo *info = fm_work_info (kind);
  g_autoptr (GtkFileFilter) own = own_filter (info->file);
  g_autoptr (GtkFileFilter) any = any_filter ();

  g_clear_object (&self->chooser);
  self->chooser = gtk_file_chooser_native_new (_ (info->title), GTK_WINDOW (self),
                                               chooser_action (info), _ (info->accept), NULL);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (self->chooser), TRUE);
  if (info->file != FM_WORK_FILE_FOLDER) {
    gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (self->chooser), own);
    gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (self->chooser), any);
  }
  if (info->name != NULL)
    gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (self->chooser), _ (info->name));
  g_object_set_data (G_OBJECT (self->chooser), "kind", GINT_TO_POINTER (kind));
  g_signal_connect_object (self->chooser, "response", G_CALLBACK (chosen_cb), self, 0);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (self->chooser));
}

/* The actions that ask for a file and nothing else. */
static const struct {
  const char *action;
  FmWorkKind kind;
} asked[] = {
  { "win.new", FM_WORK_CREATE },    { "win.open", FM_WORK_OPEN },
  { "win.export", FM_WORK_EXPORT }, { "win.tables", FM_WORK_TABLES },
  { "win.import", FM_WORK_IMPORT }, { "win.recover", FM_WORK_RECOVER },
};

static void
choose_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  for (guint i = 0; i < G_N_ELEMENTS (asked); i++)
    if (g_str_equal (asked[i].action, name))
      choose (FM_WINDOW (widget), asked[i].kind);
}

static void
save_copy_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmWindow *self = FM_WINDOW (widget);
  const gboolean is_lost = fm_session_get_place (self->session) != NULL;

  choose (self, is_lost ? FM_WORK_ELSEWHERE : FM_WORK_COPY);
}

void
fm_window_install_open_actions (GtkWidgetClass *klass)
{
  for (guint i = 0; i < G_N_ELEMENTS (asked); i++)
    gtk_widget_class_install_action (klass, asked[i].action, NULL, choose_action);
  gtk_widget_class_install_action (klass, "win.open-recent", "s", open_recent_action);
  gtk_widget_class_install_action (klass, "win.save-copy", NULL, save_copy_action);
  gtk_widget_class_install_action (klass, "win.follow", NULL, follow_action);
  gtk_widget_class_install_action (klass, "win.demo", NULL, demo_action);
  gtk_widget_class_install_action (klass, "win.first", NULL, first_action);
}
