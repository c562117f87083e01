/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-batch-sheet-print.h - a sheet to the printer or into a file */
#pragma once

#include <gtk/gtk.h>

#include "report/fm-batch-sheet-paint.h"

G_BEGIN_DECLS

/** What became of it: @text is a sentence, @failed says which kind. */
typedef void (*FmBatchSheetSay) (GtkWidget *owner, const char *text, gboolean failed);

/** Asks for a printer. @sheet: (transfer full). @owner lives until @say was called. */
void fm_batch_sheet_print (GtkWidget *owner, FmBatchSheet *sheet, FmBatchSheetSay say);
/** What goes into the file that somebody called @name, made in a thread. (transfer full) */
typedef GBytes *(*FmPrintMake) (gpointer data, const char *name, GError **error);

typedef struct {
  GtkWidget *owner; /* lives until @say was called */
  const char *title;
  const char *name; /* to start with */
  FmPrintMake make;
  gpointer data; /* (transfer full) */
  GDestroyNotify free_data;
  FmBatchSheetSay say;
} FmPrintSave;

/** @name with what no file name may hold replaced. @ending: without its dot. (transfer full) */
char *fm_print_file_name (const char *name, const char *ending);
/** The file of a text that is there already: an FmPrintMake. */
GBytes *fm_print_make_text (gpointer text, const char *name, GError **error);
/** Asks for a file and fills it. */
void fm_print_save (const FmPrintSave *order);
/** Asks for a file, with @name as a start. @sheet: (transfer full). */
void fm_batch_sheet_save_pdf (GtkWidget *owner,
                              FmBatchSheet *sheet,
                              const char *name,
                              FmBatchSheetSay say);

G_END_DECLS
