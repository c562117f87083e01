/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-log-model.h - the records of one kind that a notebook holds, as a list model
 *
 * The rows of a query arrive as one array and are swapped in at once; the objects for them are made
 * only when a view asks, so that 100,000 rows cost one "items-changed". A record that changed is
 * read alone, and only its row is written anew, moved, added or dropped; when that fails, the row
 * says so.
 *
 * Signals:
 *   "updated" ()               rows were read, or hidden
 *   "failed" (char *message)   the rows could not be read
 */
#pragma once

#include "app/log/fm-log-row.h"
#include "store/notebook/fm-notebook.h"

G_BEGIN_DECLS

/** What kinds of record differ in. An info is the row of a record; it begins with its id (gint64).
 */
typedef struct {
  /**
   * @query: what is asked for
   * @only_id: 0, or the only record to be read; it is left out when @query does not want it
   *
   * Called in a thread. Returns: (transfer full): infos in order, with a free func.
   */
  GPtrArray *(*read) (FmNotebook *notebook,
                      gconstpointer query,
                      gint64 only_id,
                      GCancellable *cancellable,
                      GError **error);
  /** Below 0 when @a stands before @b in the order that read() gives. */
  int (*compare) (gconstpointer a, gconstpointer b, gconstpointer query);
  gboolean (*is_same_query) (gconstpointer a, gconstpointer b);
  gpointer (*copy_query) (gconstpointer query);
  GDestroyNotify free_query;
} FmLogKind;

#define FM_TYPE_LOG_MODEL (fm_log_model_get_type ())
G_DECLARE_FINAL_TYPE (FmLogModel, fm_log_model, FM, LOG_MODEL, GObject)

/** @kind: static */
FmLogModel *fm_log_model_new (const FmLogKind *kind);
/**
 * fm_log_model_read:
 * @notebook: (nullable): without one there are no rows
 * @query: (transfer full) (nullable)
 *
 * Reads all rows; an older read is cancelled.
 */
void fm_log_model_read (FmLogModel *self, FmNotebook *notebook, gpointer query);
/** As above, unless the rows are those of the same query already. */
void fm_log_model_read_other (FmLogModel *self, FmNotebook *notebook, gpointer query);
/** A record was added, changed or removed: reads its row. @id 0 = many: reads all. */
void fm_log_model_read_row (FmLogModel *self, gint64 id);
/** Leaves out a record that is about to be removed. */
void fm_log_model_hide (FmLogModel *self, gint64 id);
/** The record is listed again once its row is read. FALSE when it was not hidden. */
gboolean fm_log_model_unhide (FmLogModel *self, gint64 id);
/** Position of a record, G_MAXUINT when it is not listed. */
guint fm_log_model_find (FmLogModel *self, gint64 id);
/** The info at a position, NULL past the end. */
gconstpointer fm_log_model_get_info (FmLogModel *self, guint position);
guint fm_log_model_get_n (FmLogModel *self);
/** FALSE until the rows of the query were read. */
gboolean fm_log_model_is_read (FmLogModel *self);
/** For a list with the newest first: below 0 when the first of two records is newer. */
int fm_log_compare_newest (gint64 at, gint64 id, gint64 other_at, gint64 other_id);
/** Of a record, or of a query that is one. Returns: (transfer full) gint64. */
gpointer fm_log_id_copy (gconstpointer id);

G_END_DECLS
