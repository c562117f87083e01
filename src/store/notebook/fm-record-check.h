/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-record-check.h - was a record changed by anything but this program?
 *
 * Each record, with all rows that belong to it, has a sum in the notebook. Whatever writes through
 * fm_notebook_begin() leaves right sums behind, in the same transaction: triggers of the writing
 * connection, which are not in the file, note what was touched. Versions and photos have sums of
 * their own (fm-versions.h, fm-photos.h).
 */
#pragma once

#include "store/notebook/fm-notebook.h"

G_BEGIN_DECLS

/** A record that does not match its sum. */
typedef struct {
  const char *table; /* that the record is a row of: "experiments" */
  gint64 id;         /* 0 where the record has none: "settings", and own entries */
  char *name;        /* (nullable) what the cook calls it; of a draft that of its blend */
  gboolean is_gone;  /* there is a sum, but no record any more */
} FmAlteredRecord;

void fm_altered_record_free (FmAlteredRecord *record);

/**
 * Compares all records with their sums, a few at a time, so that nobody waits for it.
 *
 * Returns: (transfer full) (element-type FmAlteredRecord): those that do not match. NULL when it
 * was cancelled or the notebook cannot be read.
 */
GPtrArray *fm_record_check_run (FmNotebook *self, GCancellable *cancellable, GError **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmAlteredRecord, fm_altered_record_free)

G_END_DECLS
