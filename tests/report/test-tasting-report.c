/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-tasting-report.c - the reading of a tasting on paper and for a spreadsheet */
#include "report/fm-tasting-report.h"

#include <string.h>

static FmTasting *
new_sealed (void)
{
  FmTasting *tasting = fm_tasting_new ();

  tasting->title = g_strdup ("=Panel");
  tasting->seed = 5;
  tasting->tasks = FM_TASTING_RANK | FM_TASTING_PREFERENCE | FM_TASTING_REMARKS;
  fm_tasting_add_sample (tasting, 0, 0, "Lean");
  fm_tasting_add_sample (tasting, 0, 0, "Fat");
  fm_tasting_add_taster (tasting, "Ana");
  fm_tasting_add_taster (tasting, "+Ben");
  tasting->pair[0] = 0;
  tasting->pair[1] = 1;
  g_assert_true (fm_tasting_arrange (tasting, 3, 1000, NULL));
  for (guint t = 0; t < 2; t++) {
    for (guint s = 0; s < 2; s++)
      g_assert_true (fm_tasting_set_mark (tasting, 1, t, fm_tasting_sample_code (tasting, s),
                                          FM_TASTING_RANK, 0, s + 1, NULL));
    g_assert_true (fm_tasting_set_mark (tasting, 1, t,
                                        fm_tasting_round_code (tasting, 1, FM_TASTING_ROUND_PAIR),
                                        FM_TASTING_PREFERENCE, 0, 1, NULL));
    fm_tasting_set_sheet (tasting, 1, t, FM_SHEET_IN);
  }
  fm_tasting_set_remark (tasting, 1, 0, fm_tasting_sample_code (tasting, 1), "=HYPERLINK(\"x\")");
  return tasting;
}

static void
assert_has (const char *text, const char *wanted)
{
  if (strstr (text, wanted) == NULL)
    g_error ("“%s” is not in:\n%s", wanted, text);
}

/* Codes stand beside names, so nothing of it is made while the tasting is sealed. */
static void
test_sealed_tells_nothing (void)
{
  g_autoptr (FmTasting) tasting = new_sealed ();
  g_autoptr (FmTastingReading) reading = fm_tasting_read (tasting, NULL, NULL);

  g_assert_null (fm_tasting_report_new (tasting, reading, NULL));
  g_assert_null (fm_tasting_report_csv (tasting, reading, NULL));
}

static void
test_paper (void)
{
  g_autoptr (FmTasting) tasting = new_sealed ();
  g_assert_true (fm_tasting_open (tasting, 2000, NULL, NULL));
  g_autoptr (FmTastingReading) reading = fm_tasting_read (tasting, NULL, NULL);
  g_autoptr (FmBatchSheet) sheet = fm_tasting_report_new (tasting, reading, "1 May 2025");
  g_autofree char *text = fm_batch_sheet_text (sheet);
  g_autofree char *main_code = g_strdup_printf ("%u – Lean", fm_tasting_sample_code (tasting, 0));
  g_autofree char *pair_code = g_strdup_printf (
      "%u – Fat (paired preference)", fm_tasting_round_code (tasting, 1, FM_TASTING_ROUND_PAIR));

  assert_has (text, reading->headline);
  assert_has (text, main_code);
  assert_has (text, pair_code);
  assert_has (text, "Ana: =HYPERLINK");
  assert_has (text, "rank order 1");
  assert_has (text, "paired preference chosen");
  assert_has (text, "Friedman's test");
}

/* What people wrote is no formula to a spreadsheet. */
static void
test_table (void)
{
  g_autoptr (FmTasting) tasting = new_sealed ();
  g_assert_true (fm_tasting_open (tasting, 2000, NULL, NULL));
  g_autoptr (FmTastingReading) reading = fm_tasting_read (tasting, NULL, NULL);
  g_autofree char *csv = fm_tasting_report_csv (tasting, reading, NULL);
  g_autofree char *row =
      g_strdup_printf ("\"Ana\",\"%u\",\"%u – Lean\",\"rank order\",1.0\r\n",
                       fm_tasting_sample_code (tasting, 0), fm_tasting_sample_code (tasting, 0));

  assert_has (csv, "\"'=Panel\"");
  assert_has (csv, "\"'+Ben\"");
  assert_has (csv, "\"'=HYPERLINK(\"\"x\"\")\"");
  assert_has (csv, row);
  g_assert_null (strstr (csv, "\"="));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/tasting-report/sealed-tells-nothing", test_sealed_tells_nothing);
  g_test_add_func ("/tasting-report/paper", test_paper);
  g_test_add_func ("/tasting-report/table", test_table);
  return g_test_run ();
}
