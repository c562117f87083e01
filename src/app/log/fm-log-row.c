/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-log-row.c - one record of a log as an object, for list models */
#include "app/log/fm-log-row.h"

struct _FmLogRow {
  GObject parent_instance;

  gconstpointer info;
  char *failure; /* (nullable) */
};

G_DEFINE_FINAL_TYPE (FmLogRow, fm_log_row, G_TYPE_OBJECT)

enum {
  CHANGED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static void
fm_log_row_finalize (GObject *object)
{
  g_free (FM_LOG_ROW (object)->failure);
  G_OBJECT_CLASS (fm_log_row_parent_class)->finalize (object);
}

static void
fm_log_row_class_init (FmLogRowClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = fm_log_row_finalize;
  signals[CHANGED] = g_signal_new ("changed", FM_TYPE_LOG_ROW, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                   NULL, G_TYPE_NONE, 0);
}

static void
fm_log_row_init (FmLogRow *self)
{
}

FmLogRow *
fm_log_row_new (gconstpointer info)
{
  FmLogRow *self = g_object_new (FM_TYPE_LOG_ROW, NULL);

  self->info = info;
  return self;
}

void
fm_log_row_set_info (FmLogRow *self, gconstpointer info)
{
  self->info = info;
  g_clear_pointer (&self->failure, g_free);
  if (info != NULL)
    g_signal_emit (self, signals[CHANGED], 0);
}

void
fm_log_row_set_failure (FmLogRow *self, const char *message)
{
  g_free (self->failure);
  self->failure = g_strdup (message);
  g_signal_emit (self, signals[CHANGED], 0);
}

const char *
fm_log_row_get_failure (FmLogRow *self)
{
  g_return_val_if_fail (FM_IS_LOG_ROW (self), NULL);
  return self->failure;
}

gconstpointer
fm_log_row_get_info (FmLogRow *self)
{
  g_return_val_if_fail (FM_IS_LOG_ROW (self), NULL);
  return self->info;
}

gint64
fm_log_info_id (gconstpointer info)
{
  const gint64 *id = info;

  return *id;
}
