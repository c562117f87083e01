/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-result-answers.c - which code was which sample, and what stood on the sheets */
#include <glib/gi18n-lib.h>

#include "app/tastings/fm-tasting-result-sections.h"
#include "app/widgets/fm-text-grid.h"
#include "core/tasting/fm-tasting-answers.h"

void
fm_tasting_result_add_key (GtkBox *box, const FmTasting *tasting)
{
  g_autofree char *key = fm_tasting_key_text (tasting);

  if (key == NULL || *key == '\0')
    return;
  fm_tasting_result_add_heading (box, _ ("Which code was which sample"));
  fm_tasting_result_add_sentence (box, key);
}

void
fm_tasting_result_add_remarks (GtkBox *box, const FmTasting *tasting)
{
  gboolean is_headed = FALSE;

  for (guint s = 0; s < tasting->samples->len; s++) {
    g_autofree char *remarks = fm_tasting_sample_remarks (tasting, s);
    g_autofree char *label = fm_tasting_cup_label (tasting, fm_tasting_sample_code (tasting, s));
    g_autofree char *text = NULL;

    if (remarks == NULL)
      continue;
    if (!is_headed)
      fm_tasting_result_add_heading (box, _ ("Remarks"));
    is_headed = TRUE;
    text = g_strdup_printf ("%s\n%s", label, remarks);
    fm_tasting_result_add_sentence (box, text);
  }
}

void
fm_tasting_result_add_sheets (GtkBox *box, const FmTasting *tasting)
{
  GtkGrid *grid = fm_tasting_result_add_table (box, _ ("Single scores"));
  const char *heads[] = { _ ("Taster"), _ ("On the sheet, in the order of serving") };

  fm_text_grid_add_row (grid, heads, G_N_ELEMENTS (heads), TRUE);
  for (guint t = 0; t < tasting->tasters->len; t++) {
    const FmTaster *taster = g_ptr_array_index (tasting->tasters, t);
    g_autofree char *text = fm_tasting_sheet_text (tasting, t);
    const char *texts[] = { taster->name, *text != '\0' ? text : "–" };

    fm_text_grid_add_row (grid, texts, G_N_ELEMENTS (texts), FALSE);
  }
}
