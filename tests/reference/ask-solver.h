/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* ask-solver.h - the same linear programs solved by glpsol and by SciPy, where they are installed
 */
#pragma once

#include <gio/gio.h>
#include <glib/gstdio.h>
#include <math.h>
#include <string.h>

/* Minimise cost x subject to min <= rows x <= max and column limits; NaN = open on that side. */
typedef struct {
  guint n;
  guint m;
  double *cost;       /* n */
  double *column_min; /* n */
  double *column_max; /* n */
  double *rows;       /* m x n */
  double *min;        /* m */
  double *max;        /* m */
} OutsideProgram;

static inline OutsideProgram *
outside_program_new (guint n, guint m)
{
  OutsideProgram *self = g_new0 (OutsideProgram, 1);
  self->n = n;
  self->m = m;
  self->cost = g_new0 (double, n);
  self->column_min = g_new0 (double, n);
  self->column_max = g_new0 (double, n);
  self->rows = g_new0 (double, n *m);
  self->min = g_new0 (double, m);
  self->max = g_new0 (double, m);
  for (guint j = 0; j < n; j++)
    self->column_max[j] = NAN;
  return self;
}

static inline void
outside_program_free (gpointer data)
{
  OutsideProgram *self = data;
  g_free (self->cost);
  g_free (self->column_min);
  g_free (self->column_max);
  g_free (self->rows);
  g_free (self->min);
  g_free (self->max);
  g_free (self);
}

static inline void
append_sum (GString *text, const double *factors, guint n)
{
  char buffer[G_ASCII_DTOSTR_BUF_SIZE];
  for (guint j = 0; j < n; j++)
    g_string_append_printf (text, " %s%s x%u", factors[j] < 0 ? "" : "+",
                            g_ascii_dtostr (buffer, sizeof buffer, factors[j]), j);
}

static inline void
append_limit (GString *text, const OutsideProgram *self, guint r, const char *sign, double limit)
{
  char buffer[G_ASCII_DTOSTR_BUF_SIZE];
  if (isnan (limit))
    return;
  append_sum (text, &self->rows[r * self->n], self->n);
  g_string_append_printf (text, " %s %s\n", sign, g_ascii_dtostr (buffer, sizeof buffer, limit));
}

/* CPLEX LP format, which glpsol reads. */
static inline char *
as_lp (const OutsideProgram *self)
{
  GString *text = g_string_new ("Minimize\n obj:");
  char buffer[G_ASCII_DTOSTR_BUF_SIZE];
  append_sum (text, self->cost, self->n);
  g_string_append (text, "\nSubject To\n");
  for (guint r = 0; r < self->m; r++) {
    append_limit (text, self, r, ">=", self->min[r]);
    append_limit (text, self, r, "<=", self->max[r]);
  }
  g_string_append (text, "Bounds\n");
  for (guint j = 0; j < self->n; j++) {
    g_string_append_printf (text, " x%u >= %s\n", j,
                            g_ascii_dtostr (buffer, sizeof buffer, self->column_min[j]));
    if (!isnan (self->column_max[j]))
      g_string_append_printf (text, " x%u <= %s\n", j,
                              g_ascii_dtostr (buffer, sizeof buffer, self->column_max[j]));
  }
  g_string_append (text, "End\n");
  return g_string_free (text, FALSE);
}

static inline double
ask_glpsol_one (const char *program)
{
  g_autofree char *folder = g_dir_make_tmp ("lp-XXXXXX", NULL);
  g_autofree char *in = g_build_filename (folder, "in.lp", NULL);
  g_autofree char *out = g_build_filename (folder, "out.txt", NULL);
  g_assert_true (g_file_set_contents (in, program, -1, NULL));
  g_autoptr (GSubprocess) process = g_subprocess_new (G_SUBPROCESS_FLAGS_STDOUT_SILENCE, NULL,
                                                      "glpsol", "--lp", in, "-w", out, NULL);
  g_assert_true (g_subprocess_wait_check (process, NULL, NULL));
  g_autofree char *text = NULL;
  g_assert_true (g_file_get_contents (out, &text, NULL, NULL));
  g_unlink (in);
  g_unlink (out);
  g_rmdir (folder);
  /* "s bas rows columns p-status d-status objective" */
  const char *solution = strstr (text, "\ns bas ");
  g_assert_nonnull (solution);
  g_auto (GStrv) line = g_strsplit (solution + 1, "\n", 2);
  g_auto (GStrv) words = g_strsplit (line[0], " ", -1);
  return g_str_equal (words[4], "f") && g_str_equal (words[5], "f")
             ? g_ascii_strtod (words[6], NULL)
             : NAN;
}

/* Objectives of @programs (OutsideProgram), NaN = infeasible; skips where there is no glpsol. */
static inline double *
ask_glpsol (const GPtrArray *programs)
{
  g_autofree char *found = g_find_program_in_path ("glpsol");
  if (!found) {
    g_test_skip ("glpsol is not installed (Debian package glpk-utils)");
    return NULL;
  }
  double *objectives = g_new (double, programs->len);
  for (guint i = 0; i < programs->len; i++) {
    g_autofree char *text = as_lp (g_ptr_array_index (programs, i));
    objectives[i] = ask_glpsol_one (text);
  }
  return objectives;
}

static inline void
append_list (GString *text, const double *values, guint n, const char *if_open)
{
  char buffer[G_ASCII_DTOSTR_BUF_SIZE];
  g_string_append_c (text, '[');
  for (guint i = 0; i < n; i++)
    g_string_append_printf (text, "%s,",
                            isnan (values[i]) ? if_open
                                              : g_ascii_dtostr (buffer, sizeof buffer, values[i]));
  g_string_append_c (text, ']');
}

static inline char *
as_python (const GPtrArray *programs)
{
  GString *text = g_string_new (
      "import numpy as np\n"
      "from scipy.optimize import linprog\n"
      "def solve(c, low, high, rows, least, most):\n"
      "    a = np.array(rows).reshape(len(least), len(c))\n"
      "    b = np.concatenate([np.array(most), -np.array(least)])\n"
      "    a = np.concatenate([a, -a])[np.isfinite(b)]\n"
      "    r = linprog(c, a, b[np.isfinite(b)], bounds=list(zip(low, high)), method='highs')\n"
      "    print(repr(float(r.fun)) if r.status == 0 else 'nan')\n"
      "inf = float('inf')\n");
  for (guint i = 0; i < programs->len; i++) {
    const OutsideProgram *p = g_ptr_array_index (programs, i);
    g_string_append (text, "solve(");
    append_list (text, p->cost, p->n, "0");
    g_string_append_c (text, ',');
    append_list (text, p->column_min, p->n, "-inf");
    g_string_append_c (text, ',');
    append_list (text, p->column_max, p->n, "inf");
    g_string_append_c (text, ',');
    append_list (text, p->rows, p->n * p->m, "0");
    g_string_append_c (text, ',');
    append_list (text, p->min, p->m, "-inf");
    g_string_append_c (text, ',');
    append_list (text, p->max, p->m, "inf");
    g_string_append (text, ")\n");
  }
  return g_string_free (text, FALSE);
}

/* The same from SciPy's linprog (HiGHS); skips where there is no SciPy. */
static inline double *
ask_scipy (const GPtrArray *programs)
{
  g_autoptr (GSubprocess) probe =
      g_subprocess_new (G_SUBPROCESS_FLAGS_STDERR_SILENCE, NULL, "/usr/bin/python3", "-c",
                        "import scipy.optimize", NULL);
  if (!probe || !g_subprocess_wait_check (probe, NULL, NULL)) {
    g_test_skip ("SciPy is not installed (Debian package python3-scipy)");
    return NULL;
  }
  g_autofree char *script = as_python (programs);
  g_autofree char *out = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (GSubprocess) process =
      g_subprocess_new (G_SUBPROCESS_FLAGS_STDIN_PIPE | G_SUBPROCESS_FLAGS_STDOUT_PIPE, &error,
                        "/usr/bin/python3", "-", NULL);
  g_assert_no_error (error);
  g_assert_true (g_subprocess_communicate_utf8 (process, script, NULL, &out, NULL, &error));
  g_assert_no_error (error);
  g_auto (GStrv) lines = g_strsplit (g_strstrip (out), "\n", -1);
  g_assert_cmpuint (g_strv_length (lines), ==, programs->len);
  double *objectives = g_new (double, programs->len);
  for (guint i = 0; i < programs->len; i++)
    objectives[i] = g_str_equal (lines[i], "nan") ? NAN : g_ascii_strtod (lines[i], NULL);
  return objectives;
}
