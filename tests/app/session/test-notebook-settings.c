/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-notebook-settings.c - a new notebook follows the place, another keeps what it has */
#include "app/session/fm-notebook-settings.h"
#include "log-fixture.h"

#define ADD(name, func)                                                                            \
  g_test_add ("/notebook-settings/" name, Fixture, NULL, fixture_set_up, func, fixture_tear_down)

/* A machine of the United States whose owner chose nothing. */
static FmSettingValues
american (void)
{
  return (FmSettingValues){ .units = { FALSE, FALSE, "€" }, .local = { TRUE, TRUE, "USD" } };
}

static void
test_new_notebook_follows_the_place (Fixture *fixture, gconstpointer data)
{
  g_autofree char *path = g_build_filename (fixture->folder, "new.forcemeat", NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (FmNotebook) notebook = fm_notebook_create (path, &error);
  FmSettingValues values = american ();
  FmSettingValues elsewhere = { .units = { FALSE, FALSE, "€" }, .local = { FALSE, FALSE, "€" } };

  g_assert_no_error (error);
  fm_setting_values_read (&values, notebook);
  g_assert_true (values.units.us_masses && values.units.fahrenheit);
  g_assert_cmpstr (values.units.currency, ==, "USD");

  /* It keeps them on a machine of another place. */
  fm_setting_values_read (&elsewhere, notebook);
  g_assert_true (elsewhere.units.us_masses && elsewhere.units.fahrenheit);
  g_assert_cmpstr (elsewhere.units.currency, ==, "USD");
}

static void
test_what_was_weighed_keeps_its_units (Fixture *fixture, gconstpointer data)
{
  FmSettingValues values = american ();

  fm_setting_values_read (&values, fixture->notebook);
  g_assert_false (values.units.us_masses || values.units.fahrenheit);
  g_assert_cmpstr (values.units.currency, ==, "€");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("new-notebook-follows-the-place", test_new_notebook_follows_the_place);
  ADD ("what-was-weighed-keeps-its-units", test_what_was_weighed_keeps_its_units);
  return g_test_run ();
}
