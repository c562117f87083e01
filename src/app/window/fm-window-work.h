/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-window-work.h - the opening, making and copying of a notebook, as it runs in a thread */
#pragma once

#include <gtk/gtk.h>

#include "app/session/fm-notebook-settings.h"

G_BEGIN_DECLS

typedef enum {
  FM_WORK_OPEN,
  FM_WORK_OPEN_READ_ONLY,
  FM_WORK_OPEN_OR_CREATE, /* the first notebook of all */
  FM_WORK_CREATE,
  FM_WORK_DEMO,
  FM_WORK_COPY,
  FM_WORK_EXPORT,       /* writes it as open data */
  FM_WORK_TABLES,       /* writes tables for a spreadsheet into a folder */
  FM_WORK_IMPORT,       /* makes a notebook of open data, beside it, and opens it */
  FM_WORK_READ_DAMAGED, /* opens what can be read, for reading only */
  FM_WORK_RECOVER,      /* makes a notebook of what can be read, beside it, and opens it */
  FM_WORK_ELSEWHERE,    /* copies a notebook that was lost, and opens the copy */
  FM_WORK_FOLLOW,       /* opens a notebook that was lost under the name that it has now */
  FM_N_WORK_KINDS,
} FmWorkKind;

/** What a file chooser takes. */
typedef enum {
  FM_WORK_FILE_NOTEBOOK,
  FM_WORK_FILE_OPEN_DATA,
  FM_WORK_FILE_FOLDER,
} FmWorkFile;

typedef struct {
  gboolean needs_notebook; /* works on the notebook that is open, of which nothing is lost */
  gboolean hands_out;      /* writes something of it that is not a notebook */
  gboolean moves;          /* what is being edited goes on in the notebook that is opened */
  gboolean opens;          /* a file that may be in use elsewhere, and can be read then */
  const char *doing;       /* untranslated; may name the file once by %s */

  /* Of those that ask for a file first. */
  const char *title;  /* NULL: it asks for none; untranslated, as the next ones */
  const char *accept; /* the button */
  const char *name;   /* (nullable) to start with; then a new file is made */
  const char *ending; /* what a name must end in; NULL where it may be any */
  FmWorkFile file;
} FmWorkInfo;

const FmWorkInfo *fm_work_info (FmWorkKind kind);
typedef struct {
  FmWorkKind kind;
  char *path;
  GPtrArray *unsaved; /* FmStoredCopy, of a copy */
  FmSettingValues settings;
  char *report;         /* of one that was recovered: what was lost */
  gboolean may_be_read; /* of one that could not be opened */
} FmWork;

FmWork *fm_work_new (FmWorkKind kind, const char *path);
void fm_work_free (FmWork *self);
/** What is under way, for the one who waits. (transfer full) */
char *fm_work_describe (FmWorkKind kind, const char *path);
/** An FmStoreFunc whose data is an FmWork. Returns the notebook to show; of a copy the one that was
 * copied. */
gpointer
fm_work_run (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error);

G_END_DECLS
