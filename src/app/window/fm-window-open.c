/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-window-open.c - opening, creating and copying notebooks from a window */
#include "app/window/fm-window-open.h"

#include <glib/gi18n-lib.h>

#include "app/session/fm-notebook-settings.h"
#include "app/session/fm-preferences.h"
#include "app/session/fm-writer.h"
#include "app/widgets/fm-widget.h"
#include "app/window/fm-window-private.h"
#include "store/demo/fm-demo.h"

#define FOLDER "forcemeat"

typedef enum {
  WORK_OPEN,
  WORK_OPEN_READ_ONLY,
  WORK_OPEN_OR_CREATE, /* the first notebook of all */
  WORK_CREATE,
  WORK_DEMO,
  WORK_COPY,
} WorkKind;

typedef struct {
  WorkKind kind;
  char *path;
  GPtrArray *unsaved; /* FmStoredCopy, for WORK_COPY */
  FmSettingValues settings;
} Work;

static void start_work (FmWindow *self, WorkKind kind, const char *path);

static Work *
work_new (WorkKind kind, const char *path)
{
  Work *work = g_new0 (Work, 1);

  work->kind = kind;
  work->path = g_strdup (path);
  return work;
}

static void
work_free (Work *work)
{
  g_free (work->path);
  g_clear_pointer (&work->unsaved, g_ptr_array_unref);
  g_free (work);
}

static char *
own_path (const char *name)
{
  return g_build_filename (g_get_user_data_dir (), FOLDER, name, NULL);
}

static gboolean
make_folder_of (const char *path, GError **error)
{
  g_autofree char *folder = g_path_get_dirname (path);

  if (g_mkdir_with_parents (folder, 0700) == 0)
    return TRUE;
  g_set_error (error, FM_STORE_ERROR, FM_STORE_ERROR_NO_PERMISSION,
               _ ("The folder %s could not be made: %s. Open or create a notebook elsewhere."),
               folder, g_strerror (errno));
  return FALSE;
}

static FmNotebook *
open_or (FmNotebook *(*create) (Work *, GCancellable *, GError **),
         Work *work,
         GCancellable *cancellable,
         GError **error)
{
  if (g_file_test (work->path, G_FILE_TEST_EXISTS))
    return fm_notebook_open (work->path, cancellable, error);
  if (!make_folder_of (work->path, error))
    return NULL;
  return create (work, cancellable, error);
}

static FmNotebook *
create_empty (Work *work, GCancellable *cancellable, GError **error)
{
  return fm_notebook_create (work->path, error);
}

static FmNotebook *
create_demo (Work *work, GCancellable *cancellable, GError **error)
{
  g_autoptr (FmFoodStore) foods = fm_food_store_default (error);

  return foods != NULL ? fm_demo_create (work->path, foods, cancellable, error) : NULL;
}

/* What could not be saved where it belongs is saved in the copy. */
static gboolean
add_unsaved (Work *work, GCancellable *cancellable, GError **error)
{
  g_autoptr (FmNotebook) copy = NULL;

  if (work->unsaved->len == 0)
    return TRUE;
  copy = fm_notebook_open (work->path, cancellable, error);
  for (guint i = 0; copy != NULL && i < work->unsaved->len; i++) {
    if (!fm_stored_copy_save (g_ptr_array_index (work->unsaved, i), copy, error))
      return FALSE;
  }
  return copy != NULL;
}

/* Returns the notebook to show; of a copy the one that was copied. */
static gpointer
do_work (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  Work *work = data;

  switch (work->kind) {
  case WORK_OPEN:
    return fm_notebook_open (work->path, cancellable, error);
  case WORK_OPEN_READ_ONLY:
    return fm_notebook_open_read_only (work->path, cancellable, error);
  case WORK_OPEN_OR_CREATE:
    return open_or (create_empty, work, cancellable, error);
  case WORK_CREATE:
    return fm_notebook_create (work->path, error);
  case WORK_DEMO:
    return open_or (create_demo, work, cancellable, error);
  case WORK_COPY:
    if (fm_notebook_save_copy (notebook, work->path, cancellable, error) &&
        add_unsaved (work, cancellable, error))
      return fm_notebook_ref (notebook);
    return NULL;
  }
  g_return_val_if_reached (NULL);
}

static gpointer
do_work_and_read_settings (FmNotebook *notebook,
                           gpointer data,
                           GCancellable *cancellable,
                           GError **error)
{
  FmNotebook *opened = do_work (notebook, data, cancellable, error);

  if (opened != NULL)
    fm_setting_values_read (&((Work *)data)->settings, opened);
  return opened;
}

static void work_done_cb (GObject *source, GAsyncResult *result, gpointer user_data);

static char *
describe (WorkKind kind, const char *path)
{
  g_autofree char *name = g_filename_display_basename (path);

  switch (kind) {
  case WORK_CREATE:
    return g_strdup_printf (_ ("Creating %s"), name);
  case WORK_DEMO:
    return g_strdup (_ ("Preparing the demo notebook"));
  case WORK_COPY:
    return g_strdup_printf (_ ("Saving a copy as %s"), name);
  case WORK_OPEN:
  case WORK_OPEN_READ_ONLY:
  case WORK_OPEN_OR_CREATE:
    return g_strdup_printf (_ ("Opening %s"), name);
  }
  g_return_val_if_reached (NULL);
}

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
  const Work *work = data;

  start_work (self, work->kind, work->path);
}

static void
start_work (FmWindow *self, WorkKind kind, const char *path)
{
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autofree char *text = describe (kind, path);
  FmNotebook *notebook = fm_session_get_notebook (self->session);
  Work *work;

  if (self->busy != NULL) {
    fm_session_message (self->session, _ ("Wait for the work under way, or cancel it first"));
    return;
  }
  if (kind != WORK_COPY && fm_window_would_lose (self)) {
    fm_window_ask_before_loss (self, _ ("Go On Anyway"), start_anyway, work_new (kind, path),
                               (GDestroyNotify)work_free);
    return;
  }
  work = work_new (kind, path);
  fm_setting_values_init (&work->settings);
  if (kind == WORK_COPY)
    work->unsaved = fm_documents_copy_unsaved (fm_session_get_documents (self->session), notebook);
  fm_window_begin_busy (self, text, cancellable);
  gtk_widget_add_tick_callback (GTK_WIDGET (self), run_when_painted_cb,
                                fm_store_task_new (&(FmStoreTask){
                                    .owner = self,
                                    .notebook = kind == WORK_COPY ? notebook : NULL,
                                    .run = do_work_and_read_settings,
                                    .free_result = (GDestroyNotify)fm_writer_close_notebook,
                                    .data = work,
                                    .free_data = (GDestroyNotify)work_free,
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
    start_work (self, WORK_OPEN_READ_ONLY, path);
}

static void
offer_read_only (FmWindow *self, const char *path)
{
  g_autofree char *name = g_filename_display_basename (path);
  GtkWidget *dialog = adw_message_dialog_new (GTK_WINDOW (self), _ ("Notebook Is in Use"), NULL);

  adw_message_dialog_format_body (
      ADW_MESSAGE_DIALOG (dialog),
      _ ("Another window or program is writing %s. You can read it here, or close it there and "
         "open it again."),
      name);
  adw_message_dialog_add_responses (ADW_MESSAGE_DIALOG (dialog), "cancel", _ ("Cancel"), "read",
                                    _ ("Open for Reading"), NULL);
  adw_message_dialog_set_default_response (ADW_MESSAGE_DIALOG (dialog), "read");
  adw_message_dialog_set_close_response (ADW_MESSAGE_DIALOG (dialog), "cancel");
  g_object_set_data_full (G_OBJECT (dialog), "path", g_strdup (path), g_free);
  g_signal_connect_object (dialog, "response", G_CALLBACK (in_use_response_cb), self, 0);
  gtk_window_present (GTK_WINDOW (dialog));
}

static void
work_failed (FmWindow *self, Work *work, const GError *error)
{
  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED)) {
    fm_session_message (self->session, _ ("Cancelled; nothing was changed"));
  } else if (g_error_matches (error, FM_STORE_ERROR, FM_STORE_ERROR_IN_USE) &&
             work->kind != WORK_COPY) {
    offer_read_only (self, work->path);
  } else {
    if (g_error_matches (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND)) {
      fm_preferences_remove_recent (work->path);
      fm_window_update_recent (self);
    }
    fm_session_failure (self->session, error);
  }
}

static void
copied (FmWindow *self, const Work *work, GPtrArray *unsaved)
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
work_done_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  FmWindow *self = FM_WINDOW (source);
  Work *work = fm_store_task_data (result);
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
  } else if (work->kind == WORK_COPY) {
    copied (self, work, unsaved);
    fm_notebook_unref (notebook); /* the session keeps its own */
  } else {
    fm_notebook_settings_adopt (fm_notebook_settings_get_default (), &work->settings);
    fm_session_set_notebook (self->session, notebook);
    fm_preferences_add_recent (fm_notebook_path (notebook));
    fm_window_update_recent (self);
    gtk_revealer_set_reveal_child (self->failure_revealer, FALSE);
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
  return g_file_equal (wanted, here) && !fm_notebook_is_read_only (notebook);
}

void
fm_window_open_path (FmWindow *self, const char *path)
{
  if (is_open (self, path))
    fm_session_message (self->session, _ ("This notebook is open already"));
  else
    start_work (self, WORK_OPEN, path);
}

void
fm_window_open_last (FmWindow *self)
{
  g_autofree char *last = g_settings_get_string (fm_preferences_get (), "last-notebook");
  g_autofree char *first = own_path ("notebook" FM_NOTEBOOK_SUFFIX);

  if (*last != '\0' && g_file_test (last, G_FILE_TEST_EXISTS)) {
    start_work (self, WORK_OPEN, last);
    return;
  }
  if (*last != '\0') {
    g_autofree char *text = g_strdup_printf (
        _ ("The notebook %s is not there any more. Open it from where it is now, if it was moved."),
        last);
    g_autoptr (GError) error = g_error_new_literal (FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND, text);

    fm_session_failure (self->session, error);
  }
  start_work (self, WORK_OPEN_OR_CREATE, first);
}

void
fm_window_open_demo (FmWindow *self)
{
  g_autofree char *path = own_path ("demo" FM_NOTEBOOK_SUFFIX);

  if (is_open (self, path))
    fm_session_message (self->session, _ ("The demo notebook is open already"));
  else
    start_work (self, WORK_DEMO, path);
}

static void
demo_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  fm_window_open_demo (FM_WINDOW (widget));
}

static void
open_recent_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  fm_window_open_path (FM_WINDOW (widget), g_variant_get_string (parameter, NULL));
}

static void
chosen_cb (GtkNativeDialog *dialog, int response, FmWindow *self)
{
  WorkKind kind = GPOINTER_TO_INT (g_object_get_data (G_OBJECT (dialog), "kind"));
  g_autoptr (GFile) file = NULL;
  g_autofree char *path = NULL;

  if (response == GTK_RESPONSE_ACCEPT)
    file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));
  path = file != NULL ? g_file_get_path (file) : NULL;
  g_clear_object (&self->chooser);
  if (path == NULL)
    return;
  if (kind == WORK_OPEN) {
    fm_window_open_path (self, path);
    return;
  }
  if (kind == WORK_COPY)
    fm_window_flush (self);
  if (!g_str_has_suffix (path, FM_NOTEBOOK_SUFFIX)) {
    g_autofree char *bare = g_steal_pointer (&path);

    path = g_strconcat (bare, FM_NOTEBOOK_SUFFIX, NULL);
  }
  start_work (self, kind, path);
}

static GtkFileFilter *
notebook_filter (void)
{
  GtkFileFilter *filter = gtk_file_filter_new ();

  gtk_file_filter_set_name (filter, _ ("Notebooks"));
  gtk_file_filter_add_suffix (filter, FM_NOTEBOOK_SUFFIX + 1);
  return filter;
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
choose (FmWindow *self, WorkKind kind, const char *title, const char *accept, const char *name)
{
  gboolean saves = kind != WORK_OPEN;
  g_autoptr (GtkFileFilter) notebooks = notebook_filter ();
  g_autoptr (GtkFileFilter) any = any_filter ();

  g_clear_object (&self->chooser);
  self->chooser = gtk_file_chooser_native_new (
      title, GTK_WINDOW (self), saves ? GTK_FILE_CHOOSER_ACTION_SAVE : GTK_FILE_CHOOSER_ACTION_OPEN,
      accept, NULL);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (self->chooser), TRUE);
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (self->chooser), notebooks);
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (self->chooser), any);
  if (name != NULL)
    gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (self->chooser), name);
  g_object_set_data (G_OBJECT (self->chooser), "kind", GINT_TO_POINTER (kind));
  g_signal_connect_object (self->chooser, "response", G_CALLBACK (chosen_cb), self, 0);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (self->chooser));
}

static void
new_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  choose (FM_WINDOW (widget), WORK_CREATE, _ ("New Notebook"), _ ("Create"),
          _ ("new notebook.forcemeat"));
}

static void
open_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  choose (FM_WINDOW (widget), WORK_OPEN, _ ("Open Notebook"), _ ("Open"), NULL);
}

static void
save_copy_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  choose (FM_WINDOW (widget), WORK_COPY, _ ("Save a Copy of the Notebook"), _ ("Save"),
          _ ("copy of notebook.forcemeat"));
}

void
fm_window_update_recent (FmWindow *self)
{
  g_auto (GStrv) paths = fm_preferences_recent ();

  g_menu_remove_all (self->recent_menu);
  for (guint i = 0; paths[i] != NULL; i++) {
    g_autofree char *name = g_filename_display_basename (paths[i]);
    g_auto (GStrv) parts = g_strsplit (name, "_", -1);
    g_autofree char *label = g_strjoinv ("__", parts); /* a file name has no mnemonics */
    g_autoptr (GMenuItem) item = g_menu_item_new (label, NULL);

    g_menu_item_set_action_and_target (item, "win.open-recent", "s", paths[i]);
    g_menu_append_item (self->recent_menu, item);
  }
}

void
fm_window_install_open_actions (GtkWidgetClass *klass)
{
  gtk_widget_class_install_action (klass, "win.new", NULL, new_action);
  gtk_widget_class_install_action (klass, "win.open", NULL, open_action);
  gtk_widget_class_install_action (klass, "win.open-recent", "s", open_recent_action);
  gtk_widget_class_install_action (klass, "win.save-copy", NULL, save_copy_action);
  gtk_widget_class_install_action (klass, "win.demo", NULL, demo_action);
}
