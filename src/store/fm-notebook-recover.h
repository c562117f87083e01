/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-notebook-recover.h - what can still be read of a damaged notebook, in a new one */
#pragma once

#include "store/notebook/fm-notebook.h"

G_BEGIN_DECLS

/**
 * Makes the notebook @path, which must not be there, of what can be read in the notebook @damaged,
 * record by record. @damaged is only read. An experiment whose version is lost keeps a version that
 * says so; what belongs to a lost record is lost with it.
 *
 * @report: (out) (transfer full): what was taken and what was lost, translated, a few lines
 *
 * Errors: NOT_A_NOTEBOOK when not even the list of its tables can be read, those of writing, and
 * G_IO_ERROR_CANCELLED; there is no new notebook then.
 */
FmNotebook *fm_notebook_recover (const char *damaged,
                                 const char *path,
                                 char **report,
                                 GCancellable *cancellable,
                                 GError **error);
/** A name beside @damaged that is free. (transfer full) */
char *fm_notebook_recover_path (const char *damaged);

G_END_DECLS
