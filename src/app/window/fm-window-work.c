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
#include "store/fm-notebook-recover.h"

static const FmWorkInfo infos[FM_N_WORK_KINDS] = {
  [FM_WORK_OPEN] = { .opens = TRUE,
                     .doing = N_ ("Opening %s"),
                     .title = N_ ("Open Notebook"),
                     .accept = N_ ("Open") },
  [FM_WORK_OPEN_READ_ONLY] = { .doing = N_ ("Opening %s") },
  [FM_WORK_OPEN_OR_CREATE] = { .opens = TRUE, .doing = N_ ("Opening %s") },
  [FM_WORK_CREATE] = { .doing = N_ ("Creating %s"),
                       .title = N_ ("New Notebook"),
                       .accept = N_ ("Create"),
                       .name = N_ ("new notebook.forcemeat"),
                       .ending = FM_NOTEBOOK_SUFFIX },
  [FM_WORK_DEMO] = { .opens = TRUE, .doing = N_ ("Preparing the demo notebook") },
  [FM_WORK_COPY] = { .needs_notebook = TRUE,
                     .doing = N_ ("Saving a copy as %s"),
                     .title = N_ ("Save a Copy of the Notebook"),
                     .accept = N_ ("Save"),
                     .name = N_ ("copy of notebook.forcemeat"),
                     .ending = FM_NOTEBOOK_SUFFIX },
  [FM_WORK_EXPORT] = { .needs_notebook = TRUE,
                       .hands_out = TRUE,
                       .doing = N_ ("Writing %s"),
                       .title = N_ ("Export as Open Data"),
                       .accept = N_ ("Export"),
                       .name = N_ ("notebook.json"),
                       .ending = ".json",
                       .file = FM_WORK_FILE_OPEN_DATA },
  [FM_WORK_TABLES] = { .needs_notebook = TRUE,
                       .hands_out = TRUE,
                       .doing = N_ ("Writing %s"),
                       .title = N_ ("Tables into a Folder"),
                       .accept = N_ ("Write Here"),
                       .file = FM_WORK_FILE_FOLDER },
  [FM_WORK_IMPORT] = { .doing = N_ ("Importing %s"),
                       .title = N_ ("Import Open Data"),
                       .accept = N_ ("Import"),
                       .file = FM_WORK_FILE_OPEN_DATA },
  [FM_WORK_READ_DAMAGED] = { .doing = N_ ("Opening %s") },
  [FM_WORK_RECOVER] = { .doing = N_ ("Recovering %s"),
                        .title = N_ ("Recover a Damaged Notebook"),
                        .accept = N_ ("Recover") },
  [FM_WORK_ELSEWHERE] = { .needs_notebook = TRUE,
                          .moves = TRUE,
                          .doing = N_ ("Saving a copy as %s"),
                          .title = N_ ("Save the Notebook Elsewhere"),
                          .accept = N_ ("Save"),
                          .name = N_ ("saved notebook.forcemeat"),
                          .ending = FM_NOTEBOOK_SUFFIX },
  [FM_WORK_FOLLOW] = { .needs_notebook = TRUE, .moves = TRUE, .doing = N_ ("Opening %s") },
};

const FmWorkInfo *
fm_work_info (FmWorkKind kind)
{
  g_return_val_if_fail (kind < FM_N_WORK_KINDS, &infos[0]);
  return &infos[kind];
}

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
  g_free (self->report);
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

static FmNotebook *
recover (FmWork *work, GCancellable *cancellable, GError **error)
{
  g_autofree char *path = fm_notebook_recover_path (work->path);

  return fm_notebook_recover (work->path, path, &work->report, cancellable, error);
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
  case FM_WORK_READ_DAMAGED:
    return fm_notebook_open_damaged (work->path, cancellable, error);
  case FM_WORK_RECOVER:
    return recover (work, cancellable, error);
  case FM_WORK_ELSEWHERE:
    return fm_notebook_save_copy (notebook, work->path, cancellable, error)
               ? fm_notebook_open (work->path, cancellable, error)
               : NULL;
  case FM_WORK_FOLLOW:
    fm_notebook_let_go (notebook);
    return fm_notebook_open (work->path, cancellable, error);
  case FM_N_WORK_KINDS:
    break;
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
  g_auto (GStrv) parts = g_strsplit (_ (fm_work_info (kind)->doing), "%s", -1);

  return g_strjoinv (name, parts);
}
