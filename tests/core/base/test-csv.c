/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-csv.c - reading a table of a spreadsheet: RFC 4180, section 2 */
#include "core/base/fm-csv.h"

#include <string.h>

#include "core/base/fm-error.h"

static gboolean
note_row (guint line, const char *const *cells, gpointer data, GError **error)
{
  g_autofree char *row = g_strjoinv ("|", (GStrv)cells);

  g_string_append_printf (data, "%u:%s;", line, row);
  return TRUE;
}

static void
assert_rows (const char *text, char separator, const char *rows)
{
  g_autoptr (GString) noted = g_string_new (NULL);
  g_autoptr (GError) error = NULL;

  fm_csv_read (text, strlen (text), separator, note_row, noted, &error);
  g_assert_no_error (error);
  g_assert_cmpstr (noted->str, ==, rows);
}

static void
test_rows (void)
{
  assert_rows ("aaa,bbb\r\nzzz,\r\n", ',', "1:aaa|bbb;2:zzz|;");
  assert_rows ("\xef\xbb\xbf"
               "a;b\n\n1,5;2",
               ';', "1:a|b;3:1,5|2;");
  assert_rows ("\"a\",\"b \r\nb\",\"c\"\"c\"\nx,y,z", ',', "1:a|b \r\nb|c\"c;3:x|y|z;");
  assert_rows ("", ',', "");
}

static void
test_bad (void)
{
  static const char *const texts[] = { "a,b\n\"open,c\nd", "a\nb\xff\n" };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++) {
    g_autoptr (GString) noted = g_string_new (NULL);
    g_autoptr (GError) error = NULL;

    g_assert_false (fm_csv_read (texts[i], strlen (texts[i]), ',', note_row, noted, &error));
    g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_NOT_A_NUMBER);
    g_assert_nonnull (strstr (error->message, "Line 2"));
  }
}

static void
test_separator (void)
{
  g_assert_cmpint (fm_csv_guess_separator ("a,b,c\n;;;;"), ==, ',');
  g_assert_cmpint (fm_csv_guess_separator ("\"a,b,c,d\";b;c\n"), ==, ';');
  g_assert_cmpint (fm_csv_guess_separator ("a\tb"), ==, '\t');
  g_assert_cmpint (fm_csv_guess_separator ("a"), ==, ',');
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/csv/rows", test_rows);
  g_test_add_func ("/csv/bad", test_bad);
  g_test_add_func ("/csv/separator", test_separator);
  return g_test_run ();
}
