/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-date.c - days and times as they are shown */
#include "core/base/fm-date.h"

#define NO_DATE "—"

static char *
to_text (GDateTime *time, const char *format)
{
  char *text = time != NULL ? g_date_time_format (time, format) : NULL;

  return text != NULL ? text : g_strdup (NO_DATE);
}

static char *
local_text (gint64 at, const char *format)
{
  g_autoptr (GDateTime) time = g_date_time_new_from_unix_local (at);

  return to_text (time, format);
}

char *
fm_date_text (gint64 at)
{
  return local_text (at, "%x");
}

static gint64
now (void)
{
  return g_get_real_time () / G_USEC_PER_SEC;
}

char *
fm_date_today (void)
{
  return fm_date_text (now ());
}

char *
fm_date_text_with_time (gint64 at)
{
  return local_text (at, "%x %H:%M");
}

char *
fm_date_iso (gint64 at)
{
  return local_text (at, "%Y-%m-%d");
}

char *
fm_date_today_iso (void)
{
  return fm_date_iso (now ());
}

char *
fm_date_iso_with_time (gint64 at)
{
  return local_text (at, "%Y-%m-%d %H:%M");
}

char *
fm_date_text_of_clock (const char *clock)
{
  g_autoptr (GTimeZone) none = g_time_zone_new_utc ();
  g_autoptr (GDateTime) time = g_date_time_new_from_iso8601 (clock, none);

  return to_text (time, "%x %H:%M");
}
