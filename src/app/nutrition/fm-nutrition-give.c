/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-nutrition-give.c - hands the nutrients of a portion out: clipboard, paper, CSV */
#include "app/nutrition/fm-nutrition-give.h"

#include <glib/gi18n-lib.h>

#include "app/print/fm-batch-sheet-print.h"
#include "app/widgets/fm-page.h"

void
fm_nutrition_give_copy (GtkWidget *owner, const FmNutritionTable *table)
{
  g_autofree char *text = fm_nutrition_table_text (table);

  gdk_clipboard_set_text (gtk_widget_get_clipboard (owner), text);
  fm_page_say (owner, _ ("Nutrients copied as a table"), FALSE);
}

void
fm_nutrition_give_print (GtkWidget *owner, const FmNutritionTable *table)
{
  fm_batch_sheet_print (owner, fm_nutrition_table_sheet (table), fm_page_say);
}

void
fm_nutrition_give_csv (GtkWidget *owner, const FmNutritionTable *table)
{
  g_autofree char *file = fm_print_file_name (table->subject, "csv");

  fm_print_save (&(FmPrintSave){
      .owner = owner,
      .title = _ ("Export the Nutrients"),
      .name = file,
      .make = fm_print_make_text,
      .data = fm_nutrition_table_csv (table),
      .free_data = g_free,
      .say = fm_page_say,
  });
}
