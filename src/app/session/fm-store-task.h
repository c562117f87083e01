/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-store-task.h - work on a notebook in a thread, its outcome on the main thread
 *
 * Every read, write and long computation of the window goes this way: a function that runs in a
 * thread, what it works on, and who hears of the outcome.
 */
#pragma once

#include <gio/gio.h>

#include "store/notebook/fm-notebook.h"

G_BEGIN_DECLS

/**
 * FmStoreFunc:
 * @notebook: (nullable) of the task
 * @data: of the task
 *
 * Runs in a thread. Returns what the task is for; a job with nothing to show returns whether it
 * was done, as GINT_TO_POINTER. NULL with @error set when it failed.
 */
typedef gpointer (*FmStoreFunc) (FmNotebook *notebook,
                                 gpointer data,
                                 GCancellable *cancellable,
                                 GError **error);

typedef struct {
  gpointer owner;             /* (nullable) GObject: lives until the outcome, and is its source */
  FmNotebook *notebook;       /* (nullable) the task holds a reference as long as it works */
  FmStoreFunc run;            /* in the thread */
  GDestroyNotify free_result; /* NULL for a job with nothing to show */
  gpointer data;              /* (transfer full) */
  GDestroyNotify free_data;
  GCancellable *cancellable; /* (nullable) a cancelled task ends with G_IO_ERROR_CANCELLED */
  gboolean finishes;         /* cancelled, it still hands over what it has done so far */
  GAsyncReadyCallback done;  /* (nullable) on the thread that started it */
  gpointer user_data;
} FmStoreTask;

/** Starts @order, which is copied. */
void fm_store_task (const FmStoreTask *order);
/** A task that is to be started later, by fm_store_task_start() or by a queue of one's own. */
GTask *fm_store_task_new (const FmStoreTask *order);
/** (transfer full task) */
void fm_store_task_start (GTask *task);
/** Works in the calling thread; the outcome is told where the task was made. (transfer full task)
 */
void fm_store_task_run (GTask *task);
/** The result (transfer full); NULL with @error set when it failed or was cancelled. */
gpointer fm_store_task_finish (GAsyncResult *result, GError **error);
/** The data of the task, while the outcome is told. (transfer none) */
gpointer fm_store_task_data (GAsyncResult *result);

G_END_DECLS
