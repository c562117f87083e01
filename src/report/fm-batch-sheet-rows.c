/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-batch-sheet-rows.c - the rows that make any sheet */
#include "report/fm-batch-sheet.h"

static void
row_free (FmSheetRow *row)
{
  for (guint i = 0; i < FM_SHEET_N_CELLS; i++)
    g_free (row->cells[i]);
  if (row->drawing != NULL)
    row->drawing->free_data (row->drawing->data);
  g_free (row->drawing);
  g_free (row);
}

FmSheetRow *
fm_batch_sheet_add (FmBatchSheet *self, FmSheetKind kind, char *text)
{
  FmSheetRow *row = g_new0 (FmSheetRow, 1);

  row->kind = kind;
  row->cells[0] = text;
  g_ptr_array_add (self->rows, row);
  return row;
}

FmBatchSheet *
fm_batch_sheet_new_empty (const char *what)
{
  FmBatchSheet *self = g_new0 (FmBatchSheet, 1);

  g_atomic_ref_count_init (&self->ref_count);
  self->what = what;
  self->rows = g_ptr_array_new_with_free_func ((GDestroyNotify)row_free);
  return self;
}

FmBatchSheet *
fm_batch_sheet_ref (FmBatchSheet *self)
{
  g_atomic_ref_count_inc (&self->ref_count);
  return self;
}

void
fm_batch_sheet_free (FmBatchSheet *self)
{
  if (!g_atomic_ref_count_dec (&self->ref_count))
    return;
  g_ptr_array_unref (self->rows);
  g_free (self->costs);
  g_free (self->cost_derivation);
  g_free (self);
}

char *
fm_batch_sheet_text (const FmBatchSheet *self)
{
  GString *text = g_string_new (NULL);

  if (self->notice != NULL)
    g_string_append_printf (text, "%s\n", self->notice);
  for (guint i = 0; i < self->rows->len; i++) {
    const FmSheetRow *row = g_ptr_array_index (self->rows, i);

    g_string_append (text, row->cells[0]);
    for (guint cell = 1; cell < FM_SHEET_N_CELLS; cell++)
      if (row->cells[cell] != NULL)
        g_string_append_printf (text, "; %s", row->cells[cell]);
    g_string_append_c (text, '\n');
  }
  return g_string_free (text, FALSE);
}
