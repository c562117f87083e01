/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* ask-r.h - the same numbers from R, where R is installed */
#pragma once

#include <gio/gio.h>
#include <math.h>

/* Runs @script in R and returns the numbers it prints; skips the test where there is no R. */
static inline double *
ask_r (const char *script, guint n_wanted)
{
  g_autofree char *program = g_find_program_in_path ("Rscript");
  g_autofree char *out = NULL;
  g_autoptr (GError) error = NULL;

  if (program == NULL) {
    g_test_skip ("R is not installed (Debian package r-base-core)");
    return NULL;
  }
  g_autoptr (GSubprocess) process = g_subprocess_new (G_SUBPROCESS_FLAGS_STDOUT_PIPE, &error,
                                                      program, "--vanilla", "-e", script, NULL);
  g_assert_no_error (error);
  g_assert_true (g_subprocess_communicate_utf8 (process, NULL, NULL, &out, NULL, &error));
  g_assert_no_error (error);

  g_auto (GStrv) words = g_strsplit (g_strstrip (out), " ", -1);
  g_assert_cmpuint (g_strv_length (words), ==, n_wanted);
  double *numbers = g_new (double, n_wanted);
  for (guint i = 0; i < n_wanted; i++)
    numbers[i] = g_ascii_strtod (words[i], NULL);
  return numbers;
}

static inline char *
as_r_vector (const double *values, guint n)
{
  GString *text = g_string_new ("c(");
  char number[G_ASCII_DTOSTR_BUF_SIZE];
  for (guint i = 0; i < n; i++)
    g_string_append_printf (text, "%s%s", i > 0 ? "," : "",
                            isnan (values[i]) ? "NA"
                                              : g_ascii_dtostr (number, sizeof number, values[i]));
  g_string_append_c (text, ')');
  return g_string_free (text, FALSE);
}
