/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-backup.c - copies of a notebook that are kept by their age, beside it, without asking */
#include "store/fm-backup.h"

#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/statvfs.h>

#include "store/fm-versions.h"
#include "store/notebook/fm-db.h"

#define N_DAYS 7
#define N_WEEKS 4
#define N_MONTHS 12
#define DAY_TEXT "2026-12-31"
#define N_COPIES_FREE 3 /* the one that is made, and room to work for both notebooks */

static char *
bare_name (const char *path)
{
  g_autofree char *name = g_path_get_basename (path);

  if (g_str_has_suffix (name, FM_NOTEBOOK_SUFFIX))
    name[strlen (name) - strlen (FM_NOTEBOOK_SUFFIX)] = '\0';
  return g_steal_pointer (&name);
}

/* In every language the same, so that there is one folder. */
char *
fm_backup_folder (const char *path)
{
  g_autofree char *parent = g_path_get_dirname (path);
  g_autofree char *bare = bare_name (path);
  g_autofree char *name = g_strconcat (bare, " backups", NULL);

  return g_build_filename (parent, name, NULL);
}

static char *
backup_path (const char *path, const GDate *day)
{
  g_autofree char *folder = fm_backup_folder (path);
  g_autofree char *bare = bare_name (path);
  g_autofree char *name =
      g_strdup_printf ("%s %04d-%02d-%02d" FM_NOTEBOOK_SUFFIX, bare, g_date_get_year (day),
                       g_date_get_month (day), g_date_get_day (day));

  return g_build_filename (folder, name, NULL);
}

/* The day in the name of a backup; NULL for any other file. */
static GDate *
read_day (const char *name, const char *bare)
{
  g_auto (GStrv) parts = NULL;
  gsize length = strlen (bare);
  GDate *day;

  if (!g_str_has_prefix (name, bare) || name[length] != ' ' ||
      strlen (name) != length + 1 + strlen (DAY_TEXT FM_NOTEBOOK_SUFFIX) ||
      !g_str_has_suffix (name, FM_NOTEBOOK_SUFFIX) ||
      strspn (name + length + 1, "0123456789-") != strlen (DAY_TEXT))
    return NULL;
  parts = g_strsplit (name + length + 1, "-", 3);
  if (g_strv_length (parts) != 3)
    return NULL;
  day = g_date_new ();
  const guint64 year = g_ascii_strtoull (parts[0], NULL, 10);
  const guint64 month = g_ascii_strtoull (parts[1], NULL, 10);
  const guint64 number = g_ascii_strtoull (parts[2], NULL, 10);
  if (g_date_valid_dmy ((GDateDay)number, (GDateMonth)month, (GDateYear)year)) {
    g_date_set_dmy (day, (GDateDay)number, (GDateMonth)month, (GDateYear)year);
    return day;
  }
  g_date_free (day);
  return NULL;
}

static int
newest_first (gconstpointer a, gconstpointer b)
{
  return g_date_compare (*(GDate *const *)b, *(GDate *const *)a);
}

static GPtrArray *
list_days (const char *path)
{
  GPtrArray *days = g_ptr_array_new_with_free_func ((GDestroyNotify)g_date_free);
  g_autofree char *folder = fm_backup_folder (path);
  g_autofree char *bare = bare_name (path);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL) {
    GDate *day = read_day (name, bare);

    if (day != NULL)
      g_ptr_array_add (days, day);
  }
  g_ptr_array_sort (days, newest_first);
  return days;
}

/* Weeks begin on Monday, as day 1 of the Julian count did. */
static int
week_of (const GDate *day)
{
  return (int)((g_date_get_julian (day) - 1) / 7);
}

static int
month_of (const GDate *day)
{
  return g_date_get_year (day) * 12 + (int)g_date_get_month (day);
}

/* Spans of the calendar stay where they are, so that the newest of a week grows old with it. */
void
fm_backup_choose (const GPtrArray *days, const GDate *today, gboolean *keeps)
{
  int last_week = G_MAXINT;
  int last_month = G_MAXINT;

  for (guint i = 0; i < days->len; i++) {
    const GDate *day = g_ptr_array_index (days, i);
    const int week = week_of (day);
    const int month = month_of (day);

    keeps[i] = i == 0 || g_date_days_between (day, today) < N_DAYS ||
               (week != last_week && week > week_of (today) - N_WEEKS) ||
               (month != last_month && month > month_of (today) - N_MONTHS);
    last_week = week;
    last_month = month;
  }
}

static void
thin_out (const char *path, const GDate *today)
{
  g_autoptr (GPtrArray) days = list_days (path);
  g_autofree gboolean *keeps = g_new (gboolean, days->len + 1);

  fm_backup_choose (days, today, keeps);
  for (guint i = 0; i < days->len; i++) {
    g_autofree char *name = backup_path (path, g_ptr_array_index (days, i));

    if (!keeps[i])
      g_unlink (name);
  }
}

static gboolean
has_room (const char *path)
{
  g_autofree char *folder = g_path_get_dirname (path);
  struct statvfs disk;
  struct stat file;

  if (stat (path, &file) != 0 || statvfs (folder, &disk) != 0)
    return FALSE;
  return (guint64)disk.f_bavail * disk.f_frsize > (guint64)file.st_size * N_COPIES_FREE;
}

static gboolean
has_versions (FmNotebook *self, GCancellable *cancellable, gboolean *has, GError **error)
{
  g_autoptr (FmReader) db = fm_notebook_reader (self, cancellable, error);
  gint64 any;

  if (db == NULL || !fm_db_query_int (db, "SELECT EXISTS (SELECT 1 FROM versions)", &any, error))
    return FALSE;
  *has = any != 0;
  return TRUE;
}

static gboolean
make (FmNotebook *self, const char *backup, GCancellable *cancellable, GError **error)
{
  g_autofree char *folder = fm_backup_folder (fm_notebook_path (self));

  if (g_mkdir_with_parents (folder, 0700) == 0)
    return fm_notebook_save_copy (self, backup, cancellable, error);
  g_set_error (error, FM_STORE_ERROR, FM_STORE_ERROR_NO_PERMISSION,
               _ ("The folder “%s” cannot be made."), folder);
  return FALSE;
}

gboolean
fm_backup_keep (FmNotebook *self, const GDate *today, GCancellable *cancellable, GError **error)
{
  const char *path = fm_notebook_path (self);
  g_autofree char *backup = backup_path (path, today);
  gboolean is_worth_it = FALSE;

  if (fm_notebook_is_read_only (self) || fm_notebook_invented (self) != NULL ||
      g_file_test (backup, G_FILE_TEST_EXISTS))
    return TRUE;
  if (!has_versions (self, cancellable, &is_worth_it, error))
    return FALSE;
  if (!is_worth_it || !has_room (path))
    return TRUE;
  if (!make (self, backup, cancellable, error))
    return FALSE;
  thin_out (path, today);
  return TRUE;
}
