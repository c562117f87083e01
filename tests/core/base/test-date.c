/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-date.c - days and times as they are shown */
#include "core/base/fm-date.h"

/* Without a locale %x is month, day and year of the C standard, 7.27.3.5. */
static void
test_day (void)
{
  g_autofree char *day = fm_date_text (86400);
  g_autofree char *time = fm_date_text_with_time (86400);

  g_assert_cmpstr (day, ==, "01/02/70");
  g_assert_cmpstr (time, ==, "01/02/70 00:00");
}

static void
test_iso (void)
{
  g_autofree char *day = fm_date_iso (951782400);
  g_autofree char *time = fm_date_iso_with_time (951782400 + 3599);

  g_assert_cmpstr (day, ==, "2000-02-29");
  g_assert_cmpstr (time, ==, "2000-02-29 00:59");
}

/* The zone of this computer does not bend the clock of a camera. */
static void
test_clock (void)
{
  g_autofree char *time = fm_date_text_of_clock ("2025-03-03 14:05:09");
  g_autofree char *none = fm_date_text_of_clock ("yesterday");

  g_assert_cmpstr (time, ==, "03/03/25 14:05");
  g_assert_cmpstr (none, ==, "—");
}

static void
test_no_such_moment (void)
{
  g_autofree char *day = fm_date_text (G_MAXINT64);

  g_assert_cmpstr (day, ==, "—");
}

/* Midnight may lie between the two looks at the clock. */
static void
test_today (void)
{
  g_autofree char *before = fm_date_iso (g_get_real_time () / G_USEC_PER_SEC);
  g_autofree char *today = fm_date_today_iso ();
  g_autofree char *after = fm_date_iso (g_get_real_time () / G_USEC_PER_SEC);
  g_autofree char *shown_before = fm_date_text (g_get_real_time () / G_USEC_PER_SEC);
  g_autofree char *shown = fm_date_today ();
  g_autofree char *shown_after = fm_date_text (g_get_real_time () / G_USEC_PER_SEC);

  g_assert_true (g_str_equal (today, before) || g_str_equal (today, after));
  g_assert_true (g_str_equal (shown, shown_before) || g_str_equal (shown, shown_after));
}

int
main (int argc, char **argv)
{
  g_setenv ("TZ", "UTC", TRUE);
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/date/day", test_day);
  g_test_add_func ("/date/iso", test_iso);
  g_test_add_func ("/date/clock", test_clock);
  g_test_add_func ("/date/no-such-moment", test_no_such_moment);
  g_test_add_func ("/date/today", test_today);
  return g_test_run ();
}
