/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-paste-lines.c - two columns become lines, and a line that cannot be read says so */
#include "core/formula/fm-paste-lines.h"

static const FmUnits metric = { .currency = "€" };

static void
test_two_columns (void)
{
  static const char *const texts[] = {
    "Chuck blade\t600\nBrisket\t0.4 kg\n",
    "Ingredient\tGrams\r\nChuck blade\t600\r\n\r\nBrisket\t400\r\n",
    "Chuck blade;600 g\nBrisket;400 g",
    "600\tChuck blade\n400\tBrisket",
    "Chuck blade 600\nBrisket   400 g",
  };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++) {
    g_autoptr (GError) error = NULL;
    g_autoptr (GPtrArray) lines = fm_paste_lines_read (texts[i], &metric, &error);

    g_assert_no_error (error);
    g_assert_cmpuint (lines->len, ==, 2);
    const FmPasteLine *first = g_ptr_array_index (lines, 0);
    const FmPasteLine *second = g_ptr_array_index (lines, 1);
    g_assert_cmpstr (first->name, ==, "Chuck blade");
    g_assert_cmpfloat (first->mass_g, ==, 600.0);
    g_assert_cmpstr (second->name, ==, "Brisket");
    g_assert_cmpfloat (second->mass_g, ==, 400.0);
  }
}

static void
test_no_lines (void)
{
  static const char *const texts[] = {
    "",
    "\n",
    "Chuck",
    "Chuck\t600\nBrisket\tsome",
    "Chuck\t600\nBrisket",
    "Chuck\t-5",
    "\t\t\n;",
    "\xff\xfe\t\xff",
    /* Quoted to its fortieth letter, and not within one. */
    "Chuck\t600\nxÄÄÄÄÄÄÄÄÄÄÄÄÄÄÄÄÄÄÄÄÄÄÄÄÄÄÄÄÄÄÄÄÄÄÄÄÄÄÄÄÄÄÄÄÄÄ",
  };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++) {
    g_autoptr (GError) error = NULL;

    g_assert_null (fm_paste_lines_read (texts[i], &metric, &error));
    g_assert_nonnull (error);
    g_assert_true (g_utf8_validate (error->message, -1, NULL));
  }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/paste-lines/two-columns", test_two_columns);
  g_test_add_func ("/paste-lines/no-lines", test_no_lines);
  return g_test_run ();
}
