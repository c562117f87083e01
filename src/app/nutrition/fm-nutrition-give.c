/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-nutrition-give.c - hands the nutrients of a portion out: clipboard, paper, CSV */
#include "app/nutrition/fm-nutrition-give.h"

#include <glib/gi18n-lib.h>

#include "app/print/fm-batch-sheet-print.h"
#include "app/widgets/fm-page.h"

static void
say_cb (GtkWidget *owner, const char *text, gboolean failed)
{
  FmSession *session = fm_page_get_session (FM_PAGE (owner));
  g_autoptr (GError) error = NULL;

  if (session == NULL || text[0] == '\0')
    return;
  if (!failed) {
    fm_session_message (session, text);
    return;
  }
  error = g_error_new_literal (G_IO_ERROR, G_IO_ERROR_FAILED, text);
  fm_session_failure (session, error);
}

static GBytes *
make_csv_file (gpointer csv, const char *name, GError **error)
{
  return g_bytes_new (csv, strlen (csv));
}

void
fm_nutrition_give_copy (GtkWidget *owner, const FmNutritionTable *table)
{
  g_autofree char *text = fm_nutrition_table_text (table);

  gdk_clipboard_set_text (gtk_widget_get_clipboard (owner), text);
  say_cb (owner, _ ("Nutrients copied as a table"), FALSE);
}

void
fm_nutrition_give_print (GtkWidget *owner, const FmNutritionTable *table)
{
  fm_batch_sheet_print (owner, fm_nutrition_table_sheet (table), say_cb);
}

void
fm_nutrition_give_csv (GtkWidget *owner, const FmNutritionTable *table)
{
  g_autofree char *file = g_strdup_printf ("%s.csv", table->subject);

  g_strdelimit (file, "/", '-');
  fm_print_save (&(FmPrintSave){
      .owner = owner,
      .title = _ ("Export the Nutrients"),
      .name = file,
      .make = make_csv_file,
      .data = fm_nutrition_table_csv (table),
      .free_data = g_free,
      .say = say_cb,
  });
}
