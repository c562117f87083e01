/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-report.c - the reading of an opened tasting, for paper and for a spreadsheet */
#include "report/fm-tasting-report.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-number.h"
#include "core/cooking/fm-caution.h"
#include "core/tasting/fm-tasting-answers.h"
#include "report/fm-csv-text.h"

static void
add_heading (FmBatchSheet *sheet, const char *text)
{
  fm_batch_sheet_add (sheet, FM_SHEET_HEADING, g_strdup (text));
}

/* One row for each line of @text */
static void
add_lines (FmBatchSheet *sheet, const char *text)
{
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);
  for (guint i = 0; lines[i] != NULL; i++)
    fm_batch_sheet_add (sheet, FM_SHEET_TEXT, g_strdup (lines[i]));
}

/* "731 – Draft 3: rank sum 8, mean liking 6.5" */
static void
add_sample (FmBatchSheet *sheet,
            const FmTasting *tasting,
            const FmTastingReading *reading,
            guint column)
{
  g_autofree char *label = fm_tasting_cup_label (tasting, reading->code[column]);
  GString *text = g_string_new (label);
  if (reading->rank != NULL) {
    g_autofree char *sum = fm_number_to_edit (reading->rank->rank_sum[column], 1);
    g_string_append_printf (text, _ (", rank sum %s of %u sheets"), sum,
                            reading->rank->n_ranked[column]);
  }
  if (reading->anova != NULL) {
    g_autofree char *mean = fm_number_format (reading->anova->adjusted_mean[column], 1);
    g_autofree char *low = fm_number_format (reading->anova->low[column], 1);
    g_autofree char *high = fm_number_format (reading->anova->high[column], 1);
    g_string_append_printf (text, _ (", mean liking %s (95 %% interval %s to %s)"), mean, low,
                            high);
  }
  fm_batch_sheet_add (sheet, FM_SHEET_TEXT, g_string_free (text, FALSE));
}

static void
add_remarks (FmBatchSheet *sheet, const FmTasting *tasting)
{
  gboolean is_headed = FALSE;
  for (guint s = 0; s < tasting->samples->len; s++) {
    g_autofree char *remarks = fm_tasting_sample_remarks (tasting, s);
    if (remarks == NULL)
      continue;
    g_autofree char *label = fm_tasting_cup_label (tasting, fm_tasting_sample_code (tasting, s));
    if (!is_headed)
      add_heading (sheet, _ ("Remarks"));
    is_headed = TRUE;
    fm_batch_sheet_add (sheet, FM_SHEET_TEXT, g_steal_pointer (&label));
    add_lines (sheet, remarks);
  }
}

static void
add_sheets (FmBatchSheet *sheet, const FmTasting *tasting)
{
  add_heading (sheet, _ ("Single scores"));
  for (guint t = 0; t < tasting->tasters->len; t++) {
    const FmTaster *taster = tasting->tasters->pdata[t];
    g_autofree char *text = fm_tasting_sheet_text (tasting, t);
    fm_batch_sheet_add (sheet, FM_SHEET_TEXT,
                        /* Translators: taster, "in" or "missing", what was marked */
                        g_strdup_printf (_ ("%s (%s) – %s"), taster->name,
                                         fm_tasting_sheet_word (taster->sheet), text));
  }
}

static void
add_methods (FmBatchSheet *sheet, const FmTastingReading *reading)
{
  add_heading (sheet, _ ("Method"));
  if (reading->rank != NULL) {
    g_autofree char *p = fm_panel_p_text (reading->rank->p);
    g_autofree char *method = fm_panel_rank_method (reading->rank);
    fm_batch_sheet_add (sheet, FM_SHEET_SMALL, g_strdup_printf ("%s %s.", method, p));
  }
  if (reading->anova != NULL) {
    g_autofree char *p = fm_panel_p_text (reading->anova->p_sample);
    g_autofree char *method = fm_panel_liking_method (reading->anova);
    fm_batch_sheet_add (sheet, FM_SHEET_SMALL, g_strdup_printf ("%s %s.", method, p));
  }
  if (reading->has_preference)
    fm_batch_sheet_add (sheet, FM_SHEET_SMALL, fm_panel_choice_method (reading->preference.kind));
  if (reading->has_triangle)
    fm_batch_sheet_add (sheet, FM_SHEET_SMALL, fm_panel_choice_method (reading->triangle.kind));
}

FmBatchSheet *
fm_tasting_report_new (const FmTasting *tasting,
                       const FmTastingReading *reading,
                       const char *date_text)
{
  g_autofree char *key = fm_tasting_key_text (tasting);
  if (key == NULL)
    return NULL;
  FmBatchSheet *sheet = fm_batch_sheet_new_empty (_ ("Reading of a Tasting"));
  fm_batch_sheet_add (sheet, FM_SHEET_TITLE,
                      g_strdup (tasting->title != NULL ? tasting->title : _ ("untitled")));
  if (date_text != NULL)
    fm_batch_sheet_add (sheet, FM_SHEET_SMALL, g_strdup (date_text));
  add_lines (sheet, reading->headline);
  for (guint i = 0; i < reading->lines->len; i++)
    add_lines (sheet, reading->lines->pdata[i]);
  add_heading (sheet, _ ("Which code was which sample"));
  add_lines (sheet, key);
  if (reading->n_samples > 0)
    add_heading (sheet, _ ("Results"));
  for (guint i = 0; i < reading->n_samples; i++)
    add_sample (sheet, tasting, reading, i);
  add_remarks (sheet, tasting);
  add_sheets (sheet, tasting);
  add_methods (sheet, reading);
  fm_batch_sheet_add (sheet, FM_SHEET_CAUTION, g_strdup (fm_caution_text ()));
  return sheet;
}

static void
append_cells (GString *csv, const char *const *cells, guint n)
{
  for (guint i = 0; i < n; i++) {
    if (i > 0)
      g_string_append_c (csv, ',');
    fm_csv_append_text (csv, cells[i]);
  }
}

static void
append_answer (GString *csv,
               const FmTasting *tasting,
               guint taster,
               guint code,
               const char *question,
               double value,
               const char *words)
{
  g_autofree char *digits = g_strdup_printf ("%u", code);
  g_autofree char *label = fm_tasting_cup_label (tasting, code);
  const char *cells[] = { ((const FmTaster *)tasting->tasters->pdata[taster])->name, digits, label,
                          question };

  append_cells (csv, cells, G_N_ELEMENTS (cells));
  g_string_append_c (csv, ',');
  if (words != NULL)
    fm_csv_append_text (csv, words);
  else
    fm_csv_append_number (csv, value, 1);
  g_string_append (csv, "\r\n");
}

static void
append_sentence (GString *csv, const char *text)
{
  fm_csv_append_text (csv, text);
  g_string_append (csv, "\r\n");
}

char *
fm_tasting_report_csv (const FmTasting *tasting,
                       const FmTastingReading *reading,
                       const char *notice)
{
  if (tasting->state != FM_TASTING_OPENED)
    return NULL;
  const char *heads[] = { _ ("Taster"), _ ("Code"), _ ("Sample"), _ ("Question"), _ ("Answer") };
  GString *csv = g_string_new (NULL);

  if (notice != NULL)
    append_sentence (csv, notice);
  append_sentence (csv, tasting->title != NULL ? tasting->title : _ ("untitled"));
  append_sentence (csv, reading->headline);
  for (guint i = 0; i < reading->lines->len; i++)
    append_sentence (csv, reading->lines->pdata[i]);
  append_cells (csv, heads, G_N_ELEMENTS (heads));
  g_string_append (csv, "\r\n");
  for (guint i = 0; i < tasting->marks->len; i++) {
    const FmTastingMark *mark = &g_array_index (tasting->marks, FmTastingMark, i);
    append_answer (csv, tasting, mark->taster, mark->code,
                   mark->task == FM_TASTING_JAR ? tasting->attributes->pdata[mark->attribute]
                                                : fm_tasting_task_name (mark->task),
                   mark->value, NULL);
  }
  for (guint i = 0; i < tasting->remarks->len; i++) {
    const FmTastingRemark *remark = tasting->remarks->pdata[i];
    append_answer (csv, tasting, remark->taster, remark->code,
                   fm_tasting_task_name (FM_TASTING_REMARKS), NAN, remark->text);
  }
  return g_string_free (csv, FALSE);
}
