/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-store-thread.c - a thread that must not wait for the disk */
#include "store/notebook/fm-store-thread.h"

static GPrivate is_forbidden;

void
fm_store_forbid_thread (gboolean forbidden)
{
  g_private_set (&is_forbidden, GINT_TO_POINTER (forbidden));
}

void
fm_store_check_thread (void)
{
  if (g_private_get (&is_forbidden) != NULL)
    g_critical ("The store was called in the thread that draws.");
}
