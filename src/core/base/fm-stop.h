/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-stop.h - how long work in the core is told to stop
 *
 * The core knows no GCancellable; the caller wraps its own. Work that was stopped returns an
 * FM_CORE_ERROR_STOPPED.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/** @asked is called from the thread that works, often: it must be quick. */
typedef struct {
  gboolean (*asked) (gpointer data);
  gpointer data;
} FmStop;

/** FALSE for NULL. */
static inline gboolean
fm_stop_asked (const FmStop *self)
{
  return self != NULL && self->asked (self->data);
}

G_END_DECLS
