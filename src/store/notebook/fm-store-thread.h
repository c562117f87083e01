/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-store-thread.h - a thread that must not wait for the disk
 *
 * The thread that draws reads and writes nothing itself. It says so once, and from then on a call
 * of this layer in it that opens, reads or writes is a critical warning, which ends every test.
 * Letting go of a notebook is none: see fm_notebook_unref().
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/** For the calling thread. Tests lift it to prepare and to look. */
void fm_store_forbid_thread (gboolean forbidden);
/** Warns where the calling thread must not wait. */
void fm_store_check_thread (void);

G_END_DECLS
