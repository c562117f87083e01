/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-compare-give.c - hands a comparison out: clipboard, paper, CSV */
#include "app/compare/fm-compare-give.h"

#include <glib/gi18n-lib.h>

#include "app/print/fm-batch-sheet-print.h"
#include "app/widgets/fm-page.h"
#include "report/fm-compare-csv.h"

/* A text editor takes the lines, a word processor or a spreadsheet the table. */
void
fm_compare_give_copy (GtkWidget *owner, const FmCompareView *view)
{
  char *html = fm_compare_copy_html (view);
  g_autofree char *text = fm_compare_copy_text (view);
  g_autoptr (GBytes) bytes = g_bytes_new_take (html, strlen (html));
  GdkContentProvider *parts[] = {
    gdk_content_provider_new_for_bytes ("text/html", bytes),
    gdk_content_provider_new_typed (G_TYPE_STRING, text),
  };
  g_autoptr (GdkContentProvider) all = gdk_content_provider_new_union (parts, G_N_ELEMENTS (parts));

  gdk_clipboard_set_content (gtk_widget_get_clipboard (owner), all);
  fm_page_say (owner, _ ("Comparison copied as a table"), FALSE);
}

void
fm_compare_give_print (GtkWidget *owner, const FmCompareView *view)
{
  fm_batch_sheet_print (owner, fm_compare_copy_sheet (view), fm_page_say);
}

void
fm_compare_give_csv (GtkWidget *owner, const FmCompareView *view)
{
  fm_print_save (&(FmPrintSave){
      .owner = owner,
      .title = _ ("Export the Comparison"),
      .name = _ ("comparison.csv"),
      .make = fm_print_make_text,
      .data = fm_compare_csv (view->comparison, view->reference, view->notice),
      .free_data = g_free,
      .say = fm_page_say,
  });
}
