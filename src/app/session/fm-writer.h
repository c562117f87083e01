/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-writer.h - writes to a notebook, one after the other, off the main thread
 *
 * All writes of a session go through one writer, so that an older draft can never land after a
 * newer one and a version is saved after the edits that led to it.
 */
#pragma once

#include "app/session/fm-store-task.h"

G_BEGIN_DECLS

typedef struct _FmWriter FmWriter; /* ref counted */

FmWriter *fm_writer_new (void);
FmWriter *fm_writer_ref (FmWriter *self);
/** The last one finishes what is queued. */
void fm_writer_unref (FmWriter *self);
/** As of fm_store_task(), in the writer's thread after all earlier jobs. */
void fm_writer_push (FmWriter *self, const FmStoreTask *order);
/** Blocks until every queued job has run; their callbacks come later from the main context. */
void fm_writer_wait (FmWriter *self);

/** Drops a reference in a thread, because the last one checkpoints the file. (transfer full)
 * (nullable) */
void fm_writer_close_notebook (FmNotebook *notebook);
/** For a thread of its own that may be at work when the program ends, which waits for it to release
 * the notebook. (transfer full) */
FmNotebook *fm_writer_hold_notebook (FmNotebook *notebook);
void fm_writer_release_notebook (FmNotebook *notebook);
/** Blocks until all those threads are done; before the program ends. */
void fm_writer_wait_closed (void);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmWriter, fm_writer_unref)

G_END_DECLS
