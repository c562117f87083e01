/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-backup.h - copies of a notebook that are kept by their age, beside it, without asking
 *
 * One is made of each day on which the notebook is opened. Kept is the newest of each of the last
 * seven days, of each of the last four weeks (from Monday on) and of each of the last twelve
 * months, 23 at most; how long backups are worth keeping is common practice, no source. What is in
 * their folder under another name is left alone.
 */
#pragma once

#include "store/notebook/fm-notebook.h"

G_BEGIN_DECLS

/** The folder of the backups of the notebook @path, which need not be there. (transfer full) */
char *fm_backup_folder (const char *path);
/**
 * Keeps a backup of @today, if there is none, and removes those that have grown too old. None is
 * made of a notebook without versions, of one in which all is invented, of a read-only one, and
 * where the disk has no room for two more.
 *
 * Errors: those of writing a copy, and G_IO_ERROR_CANCELLED.
 */
gboolean
fm_backup_keep (FmNotebook *self, const GDate *today, GCancellable *cancellable, GError **error);
/**
 * Of @days (element-type GDate), the newest first, those to be kept on @today, as booleans. The
 * newest is kept whatever its age, and so is what is of a day to come.
 */
void fm_backup_choose (const GPtrArray *days, const GDate *today, gboolean *keeps);

G_END_DECLS
