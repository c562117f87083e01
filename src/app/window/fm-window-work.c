/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-window-work.c - the opening, making and copying of a notebook, as it runs in a thread */
#include "app/window/fm-window-work.h"

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <string.h>
#include <unistd.h>

#include "app/session/fm-stored-document.h"
#include "report/fm-notebook-csv.h"
#include "store/demo/fm-demo.h"
#include "store/exchange/fm-exchange.h"

FmWork *
fm_work_new (FmWorkKind kind, const char *path)
{
  FmWork *self = g_new0 (FmWork, 1);

  self->kind = kind;
  self->path = g_strdup (path);
  return self;
}

void
fm_work_free (FmWork *self)
{
  g_free (self->path);
  g_clear_pointer (&self->unsaved, g_ptr_array_unref);
  g_free (self);
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
open_or (FmNotebook *(*create) (FmWork *, GCancellable *, GError **),
         FmWork *work,
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
create_empty (FmWork *work, GCancellable *cancellable, GError **error)
{
  return fm_notebook_create (work->path, error);
}

static FmNotebook *
create_demo (FmWork *work, GCancellable *cancellable, GError **error)
{
  g_autoptr (FmFoodStore) foods = fm_food_store_default (error);

  return foods != NULL ? fm_demo_create (work->path, foods, cancellable, error) : NULL;
}

/* What could not be saved where it belongs is saved in the copy. */
static gboolean
add_unsaved (FmWork *work, GCancellable *cancellable, GError **error)
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

/* NAME.json becomes NAME.forcemeat. */
static FmNotebook *
import (FmWork *work, GCancellable *cancellable, GError **error)
{
  const gsize ending = g_str_has_suffix (work->path, ".json") ? strlen (".json") : 0;
  g_autofree char *bare = g_strndup (work->path, strlen (work->path) - ending);
  g_autofree char *path = g_strconcat (bare, FM_NOTEBOOK_SUFFIX, NULL);

  return fm_exchange_import (work->path, path, cancellable, error);
}

/* Returns the notebook to show; of a copy the one that was copied. */
static gpointer
do_work (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  const FmExchangePart whole = { 0 };
  FmWork *work = data;

  switch (work->kind) {
  case FM_WORK_OPEN:
    return fm_notebook_open (work->path, cancellable, error);
  case FM_WORK_OPEN_READ_ONLY:
    return fm_notebook_open_read_only (work->path, cancellable, error);
  case FM_WORK_OPEN_OR_CREATE:
    return open_or (create_empty, work, cancellable, error);
  case FM_WORK_CREATE:
    return fm_notebook_create (work->path, error);
  case FM_WORK_DEMO:
    return open_or (create_demo, work, cancellable, error);
  case FM_WORK_COPY:
    if (fm_notebook_save_copy (notebook, work->path, cancellable, error) &&
        add_unsaved (work, cancellable, error))
      return fm_notebook_ref (notebook);
    return NULL;
  case FM_WORK_EXPORT:
    return fm_exchange_export (notebook, &whole, work->path, cancellable, error)
               ? fm_notebook_ref (notebook)
               : NULL;
  case FM_WORK_TABLES:
    return fm_notebook_csv_write (notebook, work->path, fm_csv_style_of_locale (), error)
               ? fm_notebook_ref (notebook)
               : NULL;
  case FM_WORK_IMPORT:
    return import (work, cancellable, error);
  case FM_WORK_ELSEWHERE:
    return fm_notebook_save_copy (notebook, work->path, cancellable, error)
               ? fm_notebook_open (work->path, cancellable, error)
               : NULL;
  case FM_WORK_FOLLOW:
    fm_notebook_let_go (notebook);
    return fm_notebook_open (work->path, cancellable, error);
  }
  g_return_val_if_reached (NULL);
}

gpointer
fm_work_run (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  FmWork *work = data;
  FmNotebook *opened = do_work (notebook, data, cancellable, error);

  if (opened != NULL)
    fm_setting_values_read (&work->settings, opened);
  else
    work->may_be_read = g_access (work->path, R_OK) == 0;
  return opened;
}

char *
fm_work_describe (FmWorkKind kind, const char *path)
{
  g_autofree char *name = g_filename_display_basename (path);

  switch (kind) {
  case FM_WORK_CREATE:
    return g_strdup_printf (_ ("Creating %s"), name);
  case FM_WORK_DEMO:
    return g_strdup (_ ("Preparing the demo notebook"));
  case FM_WORK_COPY:
  case FM_WORK_ELSEWHERE:
    return g_strdup_printf (_ ("Saving a copy as %s"), name);
  case FM_WORK_EXPORT:
  case FM_WORK_TABLES:
    return g_strdup_printf (_ ("Writing %s"), name);
  case FM_WORK_IMPORT:
    return g_strdup_printf (_ ("Importing %s"), name);
  case FM_WORK_OPEN:
  case FM_WORK_OPEN_READ_ONLY:
  case FM_WORK_OPEN_OR_CREATE:
  case FM_WORK_FOLLOW:
    return g_strdup_printf (_ ("Opening %s"), name);
  }
  g_return_val_if_reached (NULL);
}
