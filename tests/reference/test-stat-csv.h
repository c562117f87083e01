/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-stat-csv.h - reads the small published tables */
#pragma once

#include <glib.h>
#include <math.h>

typedef void (*StatRowFunc) (char **field, guint n_fields, gpointer data);

/* Calls @row for each line after the comments and the heading. */
static inline void
stat_csv_read (const char *name, StatRowFunc row, gpointer data)
{
  g_autofree char *path = g_build_filename (SRCDIR, "tests", "reference", "data", name, NULL);
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;
  gboolean heading = TRUE;

  g_file_get_contents (path, &text, NULL, &error);
  g_assert_no_error (error);
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);
  for (guint i = 0; lines[i] != NULL; i++) {
    if (lines[i][0] == '#' || lines[i][0] == '\0')
      continue;
    if (!heading) {
      g_auto (GStrv) field = g_strsplit (g_strstrip (lines[i]), ",", -1);
      row (field, g_strv_length (field), data);
    }
    heading = FALSE;
  }
}

/* An empty field, "none" and a dash are no number. */
static inline double
stat_csv_number (const char *text)
{
  return g_ascii_isdigit (text[0]) || text[0] == '.' ? g_ascii_strtod (text, NULL) : NAN;
}

static inline guint
stat_csv_count (const char *text)
{
  const double value = stat_csv_number (text);
  return isnan (value) ? 0 : (guint)value;
}
