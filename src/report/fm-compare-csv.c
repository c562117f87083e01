/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-compare-csv.c - a comparison as a table for a spreadsheet */
#include "report/fm-compare-csv.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "report/fm-csv-text.h"

static void
append_line (GString *csv, const char *text)
{
  fm_csv_append_text (csv, text);
  g_string_append (csv, "\r\n");
}

static void
append_header (GString *csv, const FmComparison *comparison)
{
  fm_csv_append_text (csv, _ ("Section"));
  g_string_append_c (csv, ',');
  fm_csv_append_text (csv, _ ("Quantity"));
  g_string_append_c (csv, ',');
  fm_csv_append_text (csv, _ ("Unit"));
  for (guint i = 0; i < fm_comparison_n_items (comparison); i++) {
    g_string_append_c (csv, ',');
    fm_csv_append_text (csv, fm_comparison_item (comparison, i)->title);
  }
  g_string_append (csv, "\r\n");
}

static char *
unit_text (const FmCompareRow *row)
{
  if (row->section >= FM_COMPARE_SECTION_NUTRIENTS)
    return g_strdup_printf (_ ("%s per 100 g raw"), row->unit);
  return g_strdup (row->unit);
}

static void
append_row (GString *csv, const FmCompareRow *row, guint n_items, int reference)
{
  g_autofree char *unit = unit_text (row);
  /* One place more than on the screen, so that a spreadsheet can round for itself. */
  int decimals = row->decimals + 1;

  fm_csv_append_text (csv, fm_compare_section_name (row->section));
  g_string_append_c (csv, ',');
  fm_csv_append_text (csv, row->name);
  g_string_append_c (csv, ',');
  fm_csv_append_text (csv, unit);
  for (guint i = 0; i < n_items; i++) {
    g_autofree char *words = row->texts != NULL ? fm_compare_row_text (row, i, reference) : NULL;
    double value = fm_compare_row_value (row, i, reference);
    gboolean absolute = reference < 0 || (guint)reference == i;

    g_string_append_c (csv, ',');
    if (words != NULL) {
      fm_csv_append_text (csv, words);
    } else if (!isnan (value)) {
      fm_csv_append_number (csv, value, decimals);
    } else if (absolute && !isnan (row->at_least[i])) {
      g_string_append (csv, ">=");
      fm_csv_append_number (csv, row->at_least[i], decimals);
    }
  }
  g_string_append (csv, "\r\n");
}

static void
append_preface (GString *csv, const FmComparison *comparison, int reference)
{
  append_line (csv, _ ("Comparison made with Forcemeat"));
  append_line (
      csv, _ ("Composition: USDA National Nutrient Database for Standard Reference, Release 28, "
              "and the developer's own entries. Raw values unless a row says otherwise."));
  append_line (csv, _ ("An empty cell is not known; >= marks the known part of a value."));
  if (reference >= 0) {
    g_autofree char *text =
        g_strdup_printf (_ ("Differences from: %s (its own column holds its values)"),
                         fm_comparison_item (comparison, (guint)reference)->title);

    append_line (csv, text);
  }
}

char *
fm_compare_csv (const FmComparison *comparison, int reference, const char *notice)
{
  GString *csv = g_string_new (NULL);

  if (notice != NULL)
    append_line (csv, notice);
  append_preface (csv, comparison, reference);
  append_header (csv, comparison);
  for (guint i = 0; i < comparison->rows->len; i++)
    append_row (csv, g_ptr_array_index (comparison->rows, i), fm_comparison_n_items (comparison),
                reference);
  return g_string_free (csv, FALSE);
}
