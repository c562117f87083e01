/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-writer.c - writes to a notebook, one after the other, off the main thread */
#include "app/session/fm-writer.h"

struct _FmWriter {
  gatomicrefcount ref_count;
  GThreadPool *pool; /* one thread: order is kept */
  GMutex mutex;
  GCond idle;
  guint n_pending;
};

static GMutex closing_mutex;
static GCond closed;
static guint n_closing;

static void
run_job (gpointer task, gpointer user_data)
{
  FmWriter *self = user_data;

  fm_store_task_run (task);

  g_mutex_lock (&self->mutex);
  self->n_pending--;
  if (self->n_pending == 0)
    g_cond_broadcast (&self->idle);
  g_mutex_unlock (&self->mutex);
}

static gpointer
close_notebook (FmNotebook *none, gpointer notebook, GCancellable *cancellable, GError **error)
{
  fm_writer_release_notebook (notebook);
  return NULL;
}

FmWriter *
fm_writer_new (void)
{
  FmWriter *self = g_new0 (FmWriter, 1);

  g_atomic_ref_count_init (&self->ref_count);
  g_mutex_init (&self->mutex);
  g_cond_init (&self->idle);
  self->pool = g_thread_pool_new (run_job, self, 1, FALSE, NULL);
  return self;
}

FmWriter *
fm_writer_ref (FmWriter *self)
{
  g_atomic_ref_count_inc (&self->ref_count);
  return self;
}

void
fm_writer_unref (FmWriter *self)
{
  if (!g_atomic_ref_count_dec (&self->ref_count))
    return;
  g_thread_pool_free (self->pool, FALSE, TRUE);
  g_mutex_clear (&self->mutex);
  g_cond_clear (&self->idle);
  g_free (self);
}

void
fm_writer_push (FmWriter *self, const FmStoreTask *order)
{
  g_mutex_lock (&self->mutex);
  self->n_pending++;
  g_mutex_unlock (&self->mutex);
  g_thread_pool_push (self->pool, fm_store_task_new (order), NULL);
}

void
fm_writer_wait (FmWriter *self)
{
  g_mutex_lock (&self->mutex);
  while (self->n_pending > 0)
    g_cond_wait (&self->idle, &self->mutex);
  g_mutex_unlock (&self->mutex);
}

FmNotebook *
fm_writer_hold_notebook (FmNotebook *notebook)
{
  g_mutex_lock (&closing_mutex);
  n_closing++;
  g_mutex_unlock (&closing_mutex);
  return fm_notebook_ref (notebook);
}

void
fm_writer_release_notebook (FmNotebook *notebook)
{
  fm_notebook_unref (notebook);
  g_mutex_lock (&closing_mutex);
  n_closing--;
  g_cond_broadcast (&closed);
  g_mutex_unlock (&closing_mutex);
}

void
fm_writer_close_notebook (FmNotebook *notebook)
{
  if (notebook == NULL)
    return;
  g_mutex_lock (&closing_mutex);
  n_closing++;
  g_mutex_unlock (&closing_mutex);
  fm_store_task (&(FmStoreTask){ .run = close_notebook, .data = notebook });
}

void
fm_writer_wait_closed (void)
{
  g_mutex_lock (&closing_mutex);
  while (n_closing > 0)
    g_cond_wait (&closed, &closing_mutex);
  g_mutex_unlock (&closing_mutex);
}
