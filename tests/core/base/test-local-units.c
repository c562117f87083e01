/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-local-units.c - what a new notebook starts with in a place */
#include "core/base/fm-local-units.h"

#include <locale.h>

static FmUnits
of (const char *place, int measurement, const char *currency)
{
  FmUnits units = { FALSE, FALSE, "?" };

  fm_local_units_apply (&(FmLocale){ place, measurement, currency }, &units);
  return units;
}

static void
test_rule (void)
{
  const FmUnits us = of ("en_US.UTF-8", 2, "USD ");
  const FmUnits german = of ("de_DE.UTF-8", 1, "EUR ");
  const FmUnits swiss = of ("de_CH.UTF-8", 1, "CHF ");
  const FmUnits nowhere = of ("C.UTF-8", 2, "");
  const FmUnits silent = of (NULL, 0, NULL);

  g_assert_true (us.us_masses && us.fahrenheit);
  g_assert_cmpstr (us.currency, ==, "USD");
  g_assert_false (german.us_masses || german.fahrenheit);
  g_assert_cmpstr (german.currency, ==, "€");
  g_assert_cmpstr (swiss.currency, ==, "CHF");
  g_assert_false (nowhere.us_masses || nowhere.fahrenheit);
  g_assert_cmpstr (nowhere.currency, ==, "?");
  g_assert_cmpstr (silent.currency, ==, "?");
}

static void
check_locale (const char *name, gboolean is_us, const char *currency)
{
  FmUnits units = { FALSE, FALSE, "?" };

  if (setlocale (LC_ALL, name) == NULL) {
    g_test_skip_printf ("The locale %s is not installed here.", name);
    return;
  }
  fm_local_units_read (&units);
  setlocale (LC_ALL, "C");
  g_assert_true (units.us_masses == is_us && units.fahrenheit == is_us);
  g_assert_cmpstr (units.currency, ==, currency);
}

static void
test_american (void)
{
  check_locale ("en_US.UTF-8", TRUE, "USD");
}

static void
test_german (void)
{
  check_locale ("de_DE.UTF-8", FALSE, "€");
}

static void
test_no_place (void)
{
  check_locale ("C", FALSE, "?");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/local-units/rule", test_rule);
  g_test_add_func ("/local-units/american", test_american);
  g_test_add_func ("/local-units/german", test_german);
  g_test_add_func ("/local-units/no-place", test_no_place);
  return g_test_run ();
}
