/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-log-row.h - one record of a log as an object, for list models
 *
 * Signal: "changed" () what the row shows is another now.
 */
#pragma once

#include <glib-object.h>

G_BEGIN_DECLS

#define FM_TYPE_LOG_ROW (fm_log_row_get_type ())
G_DECLARE_FINAL_TYPE (FmLogRow, fm_log_row, FM, LOG_ROW, GObject)

/** @info begins with the id of its record (gint64), and lives as long as it is in the log. */
FmLogRow *fm_log_row_new (gconstpointer info);
/** Shows another @info of the same record; NULL when it left the log. */
void fm_log_row_set_info (FmLogRow *self, gconstpointer info);
/** The record changed and could not be read: the info may be older than it. */
void fm_log_row_set_failure (FmLogRow *self, const char *message);
/** Why the record could not be read; NULL when it was. */
const char *fm_log_row_get_failure (FmLogRow *self);
/** NULL once the record left the log. */
gconstpointer fm_log_row_get_info (FmLogRow *self);
/** The id that any info begins with. */
gint64 fm_log_info_id (gconstpointer info);

G_END_DECLS
