/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-date.h - days and times as they are shown: the one place that writes them
 *
 * On screen a day is written as the locale has it, on paper and in files by ISO 8601. Moments are
 * seconds since 1970-01-01 UTC and shown in the zone of this computer. All: (transfer full); a dash
 * where there is no such moment.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

char *fm_date_text (gint64 at);
/** Of the day that it is here now. */
char *fm_date_today (void);
/** With hours and minutes. */
char *fm_date_text_with_time (gint64 at);
/** "2026-03-09" */
char *fm_date_iso (gint64 at);
char *fm_date_today_iso (void);
/** "2026-03-09 14:05" */
char *fm_date_iso_with_time (gint64 at);
/** @clock: "YYYY-MM-DD HH:MM:SS" of a clock whose zone nobody knows; shown as it stands there. */
char *fm_date_text_of_clock (const char *clock);

G_END_DECLS
