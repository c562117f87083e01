/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-cancel-stop.c - how the core, which knows no GCancellable, is told to stop by one */
#include "app/session/fm-cancel-stop.h"

static gboolean
is_cancelled (gpointer data)
{
  return g_cancellable_is_cancelled (data);
}

FmStop
fm_cancel_stop (GCancellable *cancellable)
{
  return (FmStop){ is_cancelled, cancellable };
}
