/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-number.c - numbers as typed and shown */
#include "core/base/fm-error.h"
#include "core/base/fm-number.h"

#include <locale.h>
#include <math.h>
#include <string.h>

static void
assert_reads (const char *text, double expected)
{
  g_autoptr (GError) error = NULL;
  double value = -77.0;
  gboolean ok = fm_number_parse (text, "Mass", -1e6, 1e6, &value, &error);
  g_assert_no_error (error);
  g_assert_true (ok);
  g_assert_cmpfloat (value, ==, expected);
}

static void
assert_refuses (const char *text, FmCoreError code)
{
  g_autoptr (GError) error = NULL;
  double value = -77.0;
  gboolean ok = fm_number_parse (text, "Mass of Chuck", 0.0, 1e6, &value, &error);
  g_assert_false (ok);
  g_assert_error (error, FM_CORE_ERROR, (int)code);
  g_assert_nonnull (strstr (error->message, "Mass of Chuck"));
  g_assert_nonnull (strstr (error->message, "Type "));
  g_assert_cmpfloat (value, ==, -77.0);
}

static void
test_accepts (void)
{
  assert_reads ("12.5", 12.5);
  assert_reads ("12,5", 12.5);
  assert_reads ("  180 ", 180.0);
  assert_reads ("\xc2\xa0"
                "180\xe2\x80\xaf",
                180.0);
  assert_reads (".5", 0.5);
  assert_reads (",5", 0.5);
  assert_reads ("5.", 5.0);
  assert_reads ("+3", 3.0);
  assert_reads ("-3,25", -3.25);
  assert_reads ("\xe2\x88\x92"
                "3",
                -3.0);
  assert_reads ("0,125", 0.125);
  assert_reads ("1.234", 1.234);
  assert_reads ("1234,567", 1234.567);
  assert_reads ("007", 7.0);
}

static void
test_refuses_what_is_no_number (void)
{
  const char *const texts[] = {
    "",       "   ",        "nan",          "NaN",         "inf",      "-Infinity",
    "0x10",   "1e3",        "12 g",         "1 000",       "twelve",   "--5",
    "5-",     "1..2",       "1,2,3",        "0,234.5",     "1.23,5",   ".",
    "-",      "12.5.",      "\xff\xfe",     "1'00",        "%s%n",     "\xd9\xa1\xd9\xa2",
    "1.234,", "1.2345.678", "1234.567.890", "1.234,567,8", "1.234'567"
  };
  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    assert_refuses (texts[i], FM_CORE_ERROR_NOT_A_NUMBER);
  assert_refuses (NULL, FM_CORE_ERROR_NOT_A_NUMBER);
}

static void
test_reads_groups_without_doubt (void)
{
  assert_reads ("1.234,5", 1234.5);
  assert_reads ("1,234.5", 1234.5);
  assert_reads ("-1.234,567", -1234.567);
  assert_reads ("123,456.75", 123456.75);
  assert_reads ("1'000", 1000.0);
  assert_reads ("1\xe2\x80\x99"
                "000,5",
                1000.5);
  assert_reads ("12\xc2\xa0"
                "500",
                12500.0);
  assert_reads ("12\xe2\x80\xaf"
                "500.25",
                12500.25);
  assert_refuses ("1,234,567,890", FM_CORE_ERROR_OUT_OF_RANGE);
}

static void
test_refuses_two_readings (void)
{
  assert_refuses ("1,234", FM_CORE_ERROR_NOT_A_NUMBER);
  g_autoptr (GError) error = NULL;
  double value = 0.0;
  g_assert_false (fm_number_parse ("12,500", "Mass", 0.0, 1e6, &value, &error));
  g_assert_nonnull (strstr (error->message, "12500"));
  g_assert_nonnull (strstr (error->message, "12.500"));
}

static void
test_refuses_out_of_range (void)
{
  g_autofree char *huge = g_strnfill (500, '9');
  assert_refuses ("-1", FM_CORE_ERROR_OUT_OF_RANGE);
  assert_refuses ("1000001", FM_CORE_ERROR_OUT_OF_RANGE);
  assert_refuses (huge, FM_CORE_ERROR_OUT_OF_RANGE);

  g_autoptr (GError) error = NULL;
  double value = 0.0;
  g_assert_false (fm_number_parse (huge, NULL, 0.0, INFINITY, &value, &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE);
}

static void
test_long_garbage_is_quoted_short (void)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *garbage = g_strnfill (100000, 'x');
  double value = 0.0;
  g_assert_false (fm_number_parse (garbage, "Mass", 0.0, 1.0, &value, &error));
  g_assert_cmpuint (strlen (error->message), <, 200);
}

static void
assert_text (char *text, const char *expected)
{
  g_assert_cmpstr (text, ==, expected);
  g_free (text);
}

static void
test_format (void)
{
  assert_text (fm_number_format (12.345, 1), "12.3");
  assert_text (fm_number_format (-0.04, 1), "0.0");
  assert_text (fm_number_format (-0.06, 1), "-0.1");
  assert_text (fm_number_format (NAN, 2), "\xe2\x80\x94");
  assert_text (fm_number_format (INFINITY, 2), "\xe2\x80\x94");
  assert_text (fm_number_format_unit (180.0, 0, "g"), "180\xc2\xa0g");
  assert_text (fm_number_format_unit (NAN, 0, "g"), "\xe2\x80\x94");
  assert_text (fm_number_format_unit (4.5, 2, ""), "4.50");
  assert_text (fm_number_to_edit (12.500, 3), "12.5");
  assert_text (fm_number_to_edit (1200.0, 3), "1200");
  assert_text (fm_number_to_edit (-0.0001, 2), "0");
  assert_text (fm_number_to_edit (NAN, 3), "");
}

static void
test_edit_text_reads_back (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (4711);
  for (int i = 0; i < 2000; i++) {
    double value = round (g_rand_double_range (rand, -1e5, 1e5) * 1000.0) / 1000.0;
    g_autofree char *text = fm_number_to_edit (value, 3);
    assert_reads (text, value);
  }
}

static void
test_comma_locale (void)
{
  const char *const names[] = { "de_DE.UTF-8", "de_DE.utf8", "fr_FR.UTF-8", "sv_SE.UTF-8" };
  g_autofree char *before = g_strdup (setlocale (LC_NUMERIC, NULL));
  gboolean found = FALSE;
  for (gsize i = 0; i < G_N_ELEMENTS (names) && !found; i++)
    found = setlocale (LC_NUMERIC, names[i]) != NULL;
  if (!found) {
    g_test_skip ("no locale with a decimal comma is installed");
    return;
  }
  assert_text (fm_number_format (12.5, 1), "12,5");
  assert_text (fm_number_to_edit (1.234, 3), "1,234");
  assert_reads ("1,234", 1.234);
  assert_reads ("12.5", 12.5);
  assert_refuses ("1.234", FM_CORE_ERROR_NOT_A_NUMBER);
  setlocale (LC_NUMERIC, before);
}

static void
test_error_domain (void)
{
  g_assert_cmpstr (g_quark_to_string (FM_CORE_ERROR), ==, "fm-core-error-quark");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/number/accepts", test_accepts);
  g_test_add_func ("/number/refuses-what-is-no-number", test_refuses_what_is_no_number);
  g_test_add_func ("/number/reads-groups-without-doubt", test_reads_groups_without_doubt);
  g_test_add_func ("/number/refuses-two-readings", test_refuses_two_readings);
  g_test_add_func ("/number/refuses-out-of-range", test_refuses_out_of_range);
  g_test_add_func ("/number/long-garbage-is-quoted-short", test_long_garbage_is_quoted_short);
  g_test_add_func ("/number/format", test_format);
  g_test_add_func ("/number/edit-text-reads-back", test_edit_text_reads_back);
  g_test_add_func ("/number/comma-locale", test_comma_locale);
  g_test_add_func ("/error/domain", test_error_domain);
  return g_test_run ();
}
