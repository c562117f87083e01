/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* table.h - small published tables beside the tests: '#' comments, a header line, then rows */
#pragma once

#include <glib.h>
#include <math.h>

/* Rows of tests/reference/data/@name after the header, each a GStrv. */
static inline GPtrArray *
read_table (const char *name, const char *separator)
{
  g_autofree char *path = g_build_filename (SRCDIR, "tests", "reference", "data", name, NULL);
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;
  g_auto (GStrv) lines = NULL;
  GPtrArray *rows = g_ptr_array_new_with_free_func ((GDestroyNotify)g_strfreev);
  gboolean header_seen = FALSE;

  g_file_get_contents (path, &text, NULL, &error);
  g_assert_no_error (error);
  lines = g_strsplit (text, "\n", -1);
  for (guint i = 0; lines[i] != NULL; i++) {
    g_strchomp (lines[i]);
    if (lines[i][0] == '#' || lines[i][0] == '\0')
      continue;
    if (header_seen)
      g_ptr_array_add (rows, g_strsplit (lines[i], separator, -1));
    header_seen = TRUE;
  }
  g_assert_cmpuint (rows->len, >, 0);
  return rows;
}

static inline const char *
cell (const GPtrArray *rows, guint row, guint column)
{
  return ((GStrv)rows->pdata[row])[column];
}

/* "inf" is a number here; an empty cell is NaN. */
static inline double
number (const GPtrArray *rows, guint row, guint column)
{
  const char *text = cell (rows, row, column);
  return text[0] != '\0' ? g_ascii_strtod (text, NULL) : NAN;
}
