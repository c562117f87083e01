/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-compare-line.c - one line of the comparison table, as a list model holds it */
#include "app/compare/fm-compare-line.h"

#include <glib/gi18n-lib.h>

struct _FmCompareLine {
  GObject parent_instance;

  FmCompareLineKind kind;
  char *heading;
  const FmCompareRow *row;
};

G_DEFINE_FINAL_TYPE (FmCompareLine, fm_compare_line, G_TYPE_OBJECT)

static void
fm_compare_line_finalize (GObject *object)
{
  g_free (FM_COMPARE_LINE (object)->heading);
  G_OBJECT_CLASS (fm_compare_line_parent_class)->finalize (object);
}

static void
fm_compare_line_class_init (FmCompareLineClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = fm_compare_line_finalize;
}

static void
fm_compare_line_init (FmCompareLine *self)
{
}

FmCompareLine *
fm_compare_line_new (FmCompareLineKind kind, const char *heading, const FmCompareRow *row)
{
  FmCompareLine *self = g_object_new (FM_TYPE_COMPARE_LINE, NULL);

  self->kind = kind;
  self->heading = g_strdup (heading);
  self->row = row;
  return self;
}

FmCompareLineKind
fm_compare_line_get_kind (FmCompareLine *self)
{
  return self->kind;
}

const FmCompareRow *
fm_compare_line_get_row (FmCompareLine *self)
{
  return self->row;
}

char *
fm_compare_line_name (FmCompareLine *self, const FmComparison *comparison)
{
  if (self->row == NULL)
    return g_strdup (self->heading);
  if (self->row->section == FM_COMPARE_SECTION_PROCESS &&
      fm_compare_row_texts_differ (self->row, fm_comparison_n_items (comparison)))
    /* TRANSLATORS: a step of the process that is not the same in all that is compared */
    return g_strdup_printf (_ ("%s: differs"), self->row->name);
  return fm_compare_row_title (self->row);
}

char *
fm_compare_line_cell (FmCompareLine *self,
                      const FmComparison *comparison,
                      guint column,
                      int reference)
{
  const FmCompareItem *item = fm_comparison_item (comparison, column);

  switch (self->kind) {
  case FM_COMPARE_LINE_TITLE:
    return g_strdup (item->title);
  case FM_COMPARE_LINE_ABOUT:
    return g_strdup (item->subtitle != NULL ? item->subtitle : "");
  case FM_COMPARE_LINE_ROW:
    return fm_compare_row_text (self->row, column, reference);
  case FM_COMPARE_LINE_HEADING:
    return g_strdup ("");
  }
  g_return_val_if_reached (NULL);
}

GPtrArray *
fm_compare_lines (const FmComparison *comparison, gboolean only_differing)
{
  g_autoptr (GPtrArray) rows = fm_comparison_shown_rows (comparison, only_differing);
  GPtrArray *lines = g_ptr_array_new_with_free_func (g_object_unref);
  int section = -1;

  g_ptr_array_add (lines, fm_compare_line_new (FM_COMPARE_LINE_TITLE, _ ("Compared"), NULL));
  g_ptr_array_add (lines, fm_compare_line_new (FM_COMPARE_LINE_ABOUT, _ ("About it"), NULL));
  for (guint i = 0; i < rows->len; i++) {
    const FmCompareRow *row = g_ptr_array_index (rows, i);

    if ((int)row->section != section) {
      section = (int)row->section;
      g_ptr_array_add (lines, fm_compare_line_new (FM_COMPARE_LINE_HEADING,
                                                   fm_compare_section_name (row->section), NULL));
    }
    g_ptr_array_add (lines, fm_compare_line_new (FM_COMPARE_LINE_ROW, NULL, row));
  }
  return lines;
}
