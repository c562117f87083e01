/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-paste-lines.c - lines of a formula out of two columns of a spreadsheet or a text */
#include "core/formula/fm-paste-lines.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "core/base/fm-error.h"
#include "core/base/fm-text-limit.h"
#include "core/formula/fm-formula.h"

#define MAX_LINES 200
#define SHOWN_CHARS 40

static void
paste_line_free (gpointer data)
{
  FmPasteLine *line = data;

  g_free (line->name);
  g_free (line);
}

/* The last word that begins with a digit, with a unit behind it, is the mass. */
static char **
split_at_mass (const char *text)
{
  g_autoptr (GRegex) regex =
      g_regex_new ("^(.*\\S)\\s+(\\d[\\d.,]*\\s*(?:g|kg|oz|lb)?)$", 0, 0, NULL);
  g_autoptr (GMatchInfo) match = NULL;
  char **cells = g_new0 (char *, 3);

  if (!g_regex_match (regex, text, 0, &match)) {
    cells[0] = g_strdup (text);
    return cells;
  }
  cells[0] = g_match_info_fetch (match, 1);
  cells[1] = g_match_info_fetch (match, 2);
  return cells;
}

static char **
split_line (const char *text)
{
  char **cells = NULL;

  if (strpbrk (text, "\t;") == NULL)
    return split_at_mass (text);
  cells = g_strsplit_set (text, "\t;", 3);
  for (guint i = 0; cells[i] != NULL; i++)
    g_strstrip (cells[i]);
  return cells;
}

static gboolean
read_mass (const char *text, const FmUnits *units, double *mass_g)
{
  const FmMeasureRange range = {
    .measure = FM_MEASURE_MASS, .what = _ ("Mass"), .min = 0.0, .max = FM_MAX_LINE_MASS_G
  };

  return text != NULL && fm_measure_parse (text, &range, units, mass_g, NULL);
}

/* NULL when the line is none. */
static FmPasteLine *
read_line (const char *text, const FmUnits *units)
{
  g_auto (GStrv) cells = split_line (text);
  const char *name = cells[0];
  FmPasteLine *line;
  double mass_g = 0.0;

  if (cells[0] == NULL || cells[1] == NULL)
    return NULL;
  if (!read_mass (cells[1], units, &mass_g)) {
    if (!read_mass (cells[0], units, &mass_g))
      return NULL;
    name = cells[1];
  }
  if (name[0] == '\0' || !fm_text_fits (name, strlen (name)))
    return NULL;
  line = g_new0 (FmPasteLine, 1);
  line->name = g_strdup (name);
  line->mass_g = mass_g;
  return line;
}

GPtrArray *
fm_paste_lines_read (const char *text, const FmUnits *units, GError **error)
{
  g_autoptr (GPtrArray) lines = g_ptr_array_new_with_free_func (paste_line_free);
  g_autofree char *valid = NULL;
  g_auto (GStrv) rows = NULL;

  g_return_val_if_fail (text != NULL && units != NULL, NULL);

  valid = g_utf8_make_valid (text, -1);
  rows = g_strsplit (valid, "\n", MAX_LINES + 1);
  for (guint i = 0; rows[i] != NULL; i++) {
    FmPasteLine *line = *g_strstrip (rows[i]) != '\0' ? read_line (rows[i], units) : NULL;

    if (line != NULL) {
      g_ptr_array_add (lines, line);
    } else if (rows[i][0] != '\0' && i > 0) {
      const glong n_shown = MIN (SHOWN_CHARS, g_utf8_strlen (rows[i], -1));
      g_autofree char *shown = g_utf8_substring (rows[i], 0, n_shown);

      g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_NOT_A_NUMBER,
                   _ ("Line %u of the pasted text, “%s”, is no name with a mass. Nothing was "
                      "added."),
                   i + 1, shown);
      return NULL;
    }
  }
  if (lines->len > 0)
    return g_steal_pointer (&lines);
  g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_NOT_A_NUMBER,
                       _ ("The pasted text has no line with a name and a mass."));
  return NULL;
}
