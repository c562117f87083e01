/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-comparison-rows.c - the rows of a comparison and how their cells read */
#include "core/compare/fm-comparison-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-number.h"

void
fm_compare_row_free (FmCompareRow *row)
{
  g_free (row->key);
  g_free (row->name);
  g_free (row->values);
  g_free (row->at_least);
  for (guint i = 0; row->texts != NULL && i < row->n_texts; i++)
    g_free (row->texts[i]);
  g_free (row->texts);
  g_free (row);
}

FmCompareRow *
fm_comparison_add_row (FmComparison *self,
                       FmCompareSection section,
                       const char *key,
                       const char *name,
                       const char *unit,
                       int decimals)
{
  FmCompareRow *row = g_new0 (FmCompareRow, 1);

  row->section = section;
  row->key = g_strdup (key);
  row->name = g_strdup (name);
  row->unit = unit;
  row->decimals = decimals;
  row->values = g_new (double, self->items->len);
  row->at_least = g_new (double, self->items->len);
  for (guint i = 0; i < self->items->len; i++) {
    row->values[i] = NAN;
    row->at_least[i] = NAN;
  }
  g_ptr_array_add (self->rows, row);
  return row;
}

void
fm_comparison_add_words (
    FmComparison *self, FmCompareSection section, const char *key, const char *name, char **texts)
{
  const guint n = fm_comparison_n_items (self);
  FmCompareRow *row = NULL;

  for (guint i = 0; row == NULL && i < n; i++)
    if (texts[i] != NULL)
      row = fm_comparison_add_row (self, section, key, name, "", 0);
  if (row == NULL) {
    g_free (texts);
    return;
  }
  row->texts = texts;
  row->n_texts = n;
}

void
fm_comparison_free (FmComparison *self)
{
  if (self == NULL)
    return;
  g_ptr_array_unref (self->rows);
  g_ptr_array_unref (self->items);
  g_free (self);
}

guint
fm_comparison_n_items (const FmComparison *self)
{
  return self->items->len;
}

const FmCompareItem *
fm_comparison_item (const FmComparison *self, guint column)
{
  return g_ptr_array_index (self->items, column);
}

const FmCompareRow *
fm_comparison_find_row (const FmComparison *self, const char *key)
{
  for (guint i = 0; i < self->rows->len; i++) {
    const FmCompareRow *row = g_ptr_array_index (self->rows, i);

    if (g_strcmp0 (row->key, key) == 0)
      return row;
  }
  return NULL;
}

GPtrArray *
fm_comparison_shown_rows (const FmComparison *self, gboolean only_differing)
{
  GPtrArray *rows = g_ptr_array_new ();

  for (guint i = 0; i < self->rows->len; i++) {
    FmCompareRow *row = g_ptr_array_index (self->rows, i);

    if (!only_differing || fm_compare_row_differs (row, self->items->len))
      g_ptr_array_add (rows, row);
  }
  return rows;
}

char *
fm_compare_row_title (const FmCompareRow *row)
{
  if (row->unit[0] == '\0')
    return g_strdup (row->name);
  if (row->section >= FM_COMPARE_SECTION_NUTRIENTS)
    return g_strdup_printf (_ ("%s, %s/100 g"), row->name, row->unit);
  return g_strdup_printf ("%s, %s", row->name, row->unit);
}

double
fm_compare_row_value (const FmCompareRow *row, guint column, int reference)
{
  if (reference < 0 || (guint)reference == column)
    return row->values[column];
  return row->values[column] - row->values[reference];
}

gboolean
fm_compare_row_differs (const FmCompareRow *row, guint n_columns)
{
  g_autofree char *first = fm_compare_row_text (row, 0, -1);

  if (g_str_equal (row->key, FM_COMPARE_PHOTOS_KEY))
    return TRUE;
  for (guint i = 1; i < n_columns; i++) {
    g_autofree char *text = fm_compare_row_text (row, i, -1);

    if (!g_str_equal (text, first))
      return TRUE;
  }
  return FALSE;
}

gboolean
fm_compare_row_texts_differ (const FmCompareRow *row, guint n_columns)
{
  for (guint i = 1; row->texts != NULL && i < n_columns; i++)
    if (g_strcmp0 (row->texts[i], row->texts[0]) != 0)
      return TRUE;
  return FALSE;
}

static char *
words_text (const FmCompareRow *row, guint column, int reference)
{
  const char *text = row->texts[column];

  if (text != NULL && reference >= 0 && (guint)reference != column &&
      g_strcmp0 (text, row->texts[reference]) == 0)
    return g_strdup (_ ("the same"));
  if (text != NULL)
    return g_strdup (text);
  return g_strdup (row->section == FM_COMPARE_SECTION_PROCESS ? _ ("— not planned") : _ ("— none"));
}

char *
fm_compare_row_text (const FmCompareRow *row, guint column, int reference)
{
  gboolean absolute = reference < 0 || (guint)reference == column;
  double value = fm_compare_row_value (row, column, reference);
  g_autofree char *number = NULL;

  if (row->texts != NULL)
    return words_text (row, column, reference);
  if (absolute && isnan (value) && !isnan (row->at_least[column])) {
    number = fm_number_format (row->at_least[column], row->decimals);
    return g_strdup_printf ("≥ %s", number);
  }
  if (isnan (value))
    return g_strdup (_ ("— not known"));
  number = fm_number_format (absolute ? value : fabs (value), row->decimals);
  /* A difference that rounds to nothing gets no sign. */
  if (absolute || fabs (value) < 0.5 * pow (10.0, -row->decimals))
    return g_steal_pointer (&number);
  return g_strconcat (value > 0.0 ? "+" : "−", number, NULL);
}
