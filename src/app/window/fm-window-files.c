/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-window-files.c - which notebooks: the first, those opened lately, and those that come as files
 */
#include <glib/gi18n-lib.h>

#include "app/session/fm-preferences.h"
#include "app/window/fm-window-open.h"
#include "app/window/fm-window-private.h"

#define FOLDER "forcemeat"
#define FIRST_NAME "notebook" FM_NOTEBOOK_SUFFIX
#define MAX_RECENT 10

char *
fm_window_own_path (const char *name)
{
  return g_build_filename (g_get_user_data_dir (), FOLDER, name, NULL);
}

char *
fm_window_first_path (void)
{
  const char *documents = g_get_user_special_dir (G_USER_DIRECTORY_DOCUMENTS);
  g_autofree char *own = fm_window_own_path (FIRST_NAME);

  if (documents == NULL || g_file_test (own, G_FILE_TEST_EXISTS))
    return g_steal_pointer (&own);
  return g_build_filename (documents, FIRST_NAME, NULL);
}

void
fm_window_remember (const char *path)
{
  g_autofree char *uri = g_filename_to_uri (path, NULL, NULL);
  char mime_type[] = "application/x-forcemeat-notebook";
  char exec[] = "forcemeat %f";
  GtkRecentData data = {
    .mime_type = mime_type,
    .app_name = (char *)g_get_application_name (),
    .app_exec = exec,
  };

  gtk_recent_manager_add_full (gtk_recent_manager_get_default (), uri, &data);
  g_settings_set_string (fm_preferences_get (), "last-notebook", path);
}

void
fm_window_forget (const char *path)
{
  g_autofree char *uri = g_filename_to_uri (path, NULL, NULL);

  gtk_recent_manager_remove_item (gtk_recent_manager_get_default (), uri, NULL);
}

static int
compare_times (gconstpointer a, gconstpointer b)
{
  return g_date_time_compare (gtk_recent_info_get_modified ((GtkRecentInfo *)b),
                              gtk_recent_info_get_modified ((GtkRecentInfo *)a));
}

static void
append_recent (FmWindow *self, GtkRecentInfo *info)
{
  g_autoptr (GFile) file = g_file_new_for_uri (gtk_recent_info_get_uri (info));
  const char *path = g_file_peek_path (file);
  g_autofree char *name = g_filename_display_basename (path);
  g_auto (GStrv) parts = g_strsplit (name, "_", -1);
  g_autofree char *label = g_strjoinv ("__", parts); /* a file name has no mnemonics */
  g_autoptr (GMenuItem) item = g_menu_item_new (label, NULL);

  g_menu_item_set_action_and_target (item, "win.open-recent", "s", path);
  g_menu_append_item (self->recent_menu, item);
}

void
fm_window_update_recent (FmWindow *self)
{
  GtkRecentManager *manager = gtk_recent_manager_get_default ();
  GList *all = g_list_sort (gtk_recent_manager_get_items (manager), compare_times);

  g_menu_remove_all (self->recent_menu);
  for (GList *item = all; item != NULL; item = item->next) {
    if (g_menu_model_get_n_items (G_MENU_MODEL (self->recent_menu)) < MAX_RECENT &&
        gtk_recent_info_is_local (item->data) &&
        gtk_recent_info_has_application (item->data, g_get_application_name ()))
      append_recent (self, item->data);
  }
  g_list_free_full (all, (GDestroyNotify)gtk_recent_info_unref);
}

char *
fm_window_find_path (FmWindow *self, GFile *file)
{
  char *path = g_file_get_path (file);
  g_autofree char *name = g_file_get_parse_name (file);
  g_autoptr (GError) error = NULL;

  if (path != NULL)
    return path;
  g_set_error (&error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND,
               _ ("%s is not on this computer's disks. Copy the notebook here first."), name);
  fm_session_failure (self->session, error);
  return NULL;
}

static gboolean
open_here (FmWindow *self, GFile *file)
{
  g_autofree char *path = fm_window_find_path (self, file);

  if (path != NULL)
    fm_window_open_path (self, path);
  return path != NULL;
}

/* A program has one notebook: its units and its currency are those of every text. */
static void
open_apart (FmWindow *self, GFile *file)
{
  g_autofree char *path = fm_window_find_path (self, file);
  g_autofree char *program = NULL;
  g_autoptr (GSubprocess) other = NULL;
  g_autoptr (GError) error = NULL;

  if (path == NULL)
    return;
  program = g_file_read_link ("/proc/self/exe", &error);
  if (program != NULL)
    other = g_subprocess_new (G_SUBPROCESS_FLAGS_NONE, &error, program, "--separate", path, NULL);
  if (other == NULL)
    fm_session_failure (self->session, error);
}

gboolean
fm_window_open_files (FmWindow *self, GFile **files, guint n_files)
{
  const gboolean opens = n_files > 0 && open_here (self, files[0]);

  for (guint i = 1; i < n_files; i++)
    open_apart (self, files[i]);
  return opens;
}

static gboolean
drop_cb (FmWindow *self, const GValue *value)
{
  GSList *dropped = gdk_file_list_get_files (g_value_get_boxed (value));
  g_autoptr (GPtrArray) files = g_ptr_array_new ();

  for (GSList *item = dropped; item != NULL; item = item->next)
    g_ptr_array_add (files, item->data);
  g_slist_free (dropped);
  fm_window_open_files (self, (GFile **)files->pdata, files->len);
  return files->len > 0;
}

void
fm_window_accept_files (FmWindow *self)
{
  GtkDropTarget *target = gtk_drop_target_new (GDK_TYPE_FILE_LIST, GDK_ACTION_COPY);

  g_signal_connect_swapped (target, "drop", G_CALLBACK (drop_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (target));
}
