/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-probe.c - lines of a probe, good and bad, whole and in pieces */
#include "core/kitchen/fm-probe.h"

#include <math.h>
#include <string.h>

static void
assert_reads (const char *line, double time_s, double temp_c)
{
  double time = 0.0;
  double temp = 0.0;

  g_assert_true (fm_probe_parse_line (line, &time, &temp));
  g_assert_cmpfloat_with_epsilon (temp, temp_c, 1e-9);
  if (isnan (time_s))
    g_assert_true (isnan (time));
  else
    g_assert_cmpfloat_with_epsilon (time, time_s, 1e-9);
}

static void
test_good_lines (void)
{
  assert_reads ("61.5", NAN, 61.5);
  assert_reads ("  61,5 \t", NAN, 61.5);
  assert_reads ("-2", NAN, -2.0);
  assert_reads ("12.5 61.5", 12.5, 61.5);
  assert_reads ("2:30\t61", 150.0, 61.0);
  assert_reads ("12;61.5", 12.0, 61.5);
  assert_reads ("61.5 °C", NAN, 61.5);
  assert_reads ("160F", NAN, (160.0 - 32.0) / 1.8);
  assert_reads ("90 160 F", 90.0, (160.0 - 32.0) / 1.8);
}

static void
test_bad_lines (void)
{
  const char *bad[] = { "",      "ready", "nan",     "1 2 3", "121",  "-41", "61.5x", "inf",
                        "61..5", "x 61",  "2:75 61", "1e999", "\xff", "F",   "61 K" };
  double time, temp;

  for (guint i = 0; i < G_N_ELEMENTS (bad); i++)
    if (fm_probe_parse_line (bad[i], &time, &temp))
      g_error ("“%s” was taken as %g", bad[i], temp);
}

static void
collect (double time_s, double temp_c, gpointer data)
{
  g_array_append_val ((GArray *)data, temp_c);
}

/* The same stream in one piece and byte by byte; refused lines are counted, blank ones are not. */
static void
test_pieces (void)
{
  g_autoptr (GString) stream = g_string_new ("20\r\n21\n\nstart\n22");
  g_autoptr (FmProbe) whole = fm_probe_new ();
  g_autoptr (FmProbe) pieces = fm_probe_new ();
  g_autoptr (GArray) a = g_array_new (FALSE, FALSE, sizeof (double));
  g_autoptr (GArray) b = g_array_new (FALSE, FALSE, sizeof (double));

  for (int i = 0; i < 1000; i++)
    g_string_append_c (stream, '0');
  g_string_append (stream, "\n23\n24");
  g_string_append_len (stream, "\n2\0005\n26\n27", 10);
  fm_probe_feed (whole, stream->str, stream->len, collect, a);
  for (gsize i = 0; i < stream->len; i++)
    fm_probe_feed (pieces, stream->str + i, 1, collect, b);
  g_assert_cmpuint (whole->n_refused, ==, 3);
  g_assert_cmpuint (whole->n_good, ==, 5);
  g_assert_cmpuint (pieces->n_refused, ==, 3);
  g_assert_cmpmem (a->data, a->len * sizeof (double), b->data, b->len * sizeof (double));
  g_assert_cmpfloat (g_array_index (a, double, a->len - 1), ==, 26.0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/probe/good-lines", test_good_lines);
  g_test_add_func ("/probe/bad-lines", test_bad_lines);
  g_test_add_func ("/probe/pieces", test_pieces);
  return g_test_run ();
}
