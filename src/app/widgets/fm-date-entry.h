/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-date-entry.h - an entry for local date and time, with a calendar
 *
 * Signal: "date-changed" (gint64 made_at): another good date was typed or picked.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define FM_TYPE_DATE_ENTRY (fm_date_entry_get_type ())
G_DECLARE_FINAL_TYPE (FmDateEntry, fm_date_entry, FM, DATE_ENTRY, GtkWidget)

/** @made_at: unix seconds, UTC; shown in local time. Does not emit. */
void fm_date_entry_set (FmDateEntry *self, gint64 made_at);
/** Names the entry and the calendar for what is dated, if it is no experiment; translated. */
void fm_date_entry_set_what (FmDateEntry *self, const char *date_name, const char *day_name);

G_END_DECLS
