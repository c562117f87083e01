/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-taster-sheet.c - the papers of a tasting, as plain rows of text */
#include "report/fm-taster-sheet.h"

#include <glib/gi18n-lib.h>

#include "core/cooking/fm-caution.h"

#define LIKING_MARKS 9
#define JAR_MARKS 5
#define MARK_GAP "      "

static void
add_head (FmBatchSheet *sheet,
          const FmTasting *tasting,
          char *title,
          const char *subtitle,
          const char *date_text)
{
  fm_batch_sheet_add (sheet, FM_SHEET_TITLE, title);
  fm_batch_sheet_add (sheet, FM_SHEET_SUBTITLE, g_strdup (subtitle));
  if (date_text != NULL)
    fm_batch_sheet_add (sheet, FM_SHEET_SMALL, g_strdup (date_text));
}

static const char *
get_title (const FmTasting *tasting)
{
  return tasting->title != NULL ? tasting->title : _ ("untitled");
}

/* "731   264   508" */
static char *
join_codes (const FmTasting *tasting, guint taster, FmTastingRound round)
{
  g_autoptr (GPtrArray) cups = fm_tasting_cups (tasting, taster, round);
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < cups->len; i++)
    g_string_append_printf (text, "%s%u", i > 0 ? MARK_GAP : "",
                            ((const FmTastingCup *)g_ptr_array_index (cups, i))->code);
  return g_string_free (text, FALSE);
}

static char *
get_marks (guint n_marks)
{
  GString *text = g_string_new (NULL);

  for (guint mark = 1; mark <= n_marks; mark++)
    g_string_append_printf (text, "%s%u", mark > 1 ? MARK_GAP : "", mark);
  return g_string_free (text, FALSE);
}

static char *
get_words (guint n_marks, const char *(*get_word) (guint mark))
{
  GString *text = g_string_new (NULL);

  for (guint mark = 1; mark <= n_marks; mark++)
    g_string_append_printf (text, "%s%u %s", mark > 1 ? ", " : "", mark, get_word (mark));
  return g_string_free (text, FALSE);
}

/* One line for each cup: its code, and @marks to circle or room to write. */
static void
add_lines (FmBatchSheet *sheet, const FmTasting *tasting, guint taster, const char *marks)
{
  g_autoptr (GPtrArray) cups = fm_tasting_cups (tasting, taster, FM_TASTING_ROUND_MAIN);

  for (guint i = 0; i < cups->len; i++)
    fm_batch_sheet_add (sheet, FM_SHEET_WRITE,
                        g_strdup_printf ("%u%s%s",
                                         ((const FmTastingCup *)g_ptr_array_index (cups, i))->code,
                                         MARK_GAP MARK_GAP, marks));
}

static void
add_scale (FmBatchSheet *sheet,
           const FmTasting *tasting,
           guint taster,
           char *heading,
           guint n_marks,
           const char *(*get_word) (guint mark))
{
  g_autofree char *marks = get_marks (n_marks);
  g_autofree char *words = get_words (n_marks, get_word);

  fm_batch_sheet_add (sheet, FM_SHEET_HEADING, heading);
  fm_batch_sheet_add (sheet, FM_SHEET_SMALL, g_steal_pointer (&words));
  add_lines (sheet, tasting, taster, marks);
}

static void
add_choice (FmBatchSheet *sheet,
            const FmTasting *tasting,
            guint taster,
            FmTastingRound round,
            const char *question)
{
  fm_batch_sheet_add (sheet, FM_SHEET_HEADING, g_strdup (question));
  fm_batch_sheet_add (sheet, FM_SHEET_WRITE, join_codes (tasting, taster, round));
}

static void
add_main_questions (FmBatchSheet *sheet, const FmTasting *tasting, guint taster)
{
  if ((tasting->tasks & FM_TASTING_LIKING) != 0)
    add_scale (sheet, tasting, taster,
               g_strdup (_ ("How much do you like each sample? Circle one number.")), LIKING_MARKS,
               fm_tasting_liking_word);
  for (guint i = 0; (tasting->tasks & FM_TASTING_JAR) != 0 && i < tasting->attributes->len; i++)
    add_scale (sheet, tasting, taster,
               /* Translators: what is judged, e.g. "salt" */
               g_strdup_printf (_ ("How is this in each sample: %s? Circle one number."),
                                (const char *)g_ptr_array_index (tasting->attributes, i)),
               JAR_MARKS, fm_tasting_jar_word);
  if ((tasting->tasks & FM_TASTING_RANK) != 0) {
    fm_batch_sheet_add (sheet, FM_SHEET_HEADING,
                        g_strdup (_ ("Put the samples in order: write 1 beside the best, 2 beside "
                                     "the next. Samples that tie get the same number.")));
    add_lines (sheet, tasting, taster, "");
  }
  if ((tasting->tasks & FM_TASTING_REMARKS) != 0) {
    fm_batch_sheet_add (sheet, FM_SHEET_HEADING, g_strdup (_ ("Remarks on each sample")));
    add_lines (sheet, tasting, taster, "");
  }
}

static void
add_questions (FmBatchSheet *sheet, const FmTasting *tasting, guint taster)
{
  g_autofree char *codes = join_codes (tasting, taster, FM_TASTING_ROUND_MAIN);

  if (*codes != '\0') {
    fm_batch_sheet_add (sheet, FM_SHEET_HEADING,
                        g_strdup (_ ("Your samples, in the order in which to taste them")));
    fm_batch_sheet_add (sheet, FM_SHEET_SUBTITLE, g_steal_pointer (&codes));
    add_main_questions (sheet, tasting, taster);
  }
  if ((tasting->tasks & FM_TASTING_PREFERENCE) != 0)
    add_choice (sheet, tasting, taster, FM_TASTING_ROUND_PAIR,
                _ ("Taste these two from left to right. Circle the one you prefer."));
  if ((tasting->tasks & FM_TASTING_TRIANGLE) != 0)
    add_choice (sheet, tasting, taster, FM_TASTING_ROUND_TRIANGLE,
                _ ("Taste these three from left to right. Two are the same. Circle the odd one; "
                   "guess if you must."));
}

FmBatchSheet *
fm_taster_sheets_new (const FmTasting *tasting, const char *date_text)
{
  FmBatchSheet *sheet = fm_batch_sheet_new_empty (_ ("Taster Sheets"));

  for (guint i = 0; i < tasting->tasters->len; i++) {
    const FmTaster *taster = g_ptr_array_index (tasting->tasters, i);

    /* Translators: title of the tasting */
    add_head (sheet, tasting, g_strdup_printf (_ ("Tasting: %s"), get_title (tasting)),
              taster->name, date_text);
    add_questions (sheet, tasting, i);
    fm_batch_sheet_add (sheet, FM_SHEET_CAUTION, g_strdup (fm_caution_text ()));
  }
  return sheet;
}

static const char *
get_round_name (FmTastingRound round)
{
  if (round == FM_TASTING_ROUND_PAIR)
    return fm_tasting_task_name (FM_TASTING_PREFERENCE);
  return round == FM_TASTING_ROUND_TRIANGLE ? fm_tasting_task_name (FM_TASTING_TRIANGLE)
                                            : _ ("main round");
}

static const char *
get_sample_name (const FmTasting *tasting, guint sample)
{
  return ((const FmTastingSample *)g_ptr_array_index (tasting->samples, sample))->name;
}

/* In the main round and the pair a sample has one code; in triangles each cup has its own. */
static void
add_key (FmBatchSheet *sheet, const FmTasting *tasting)
{
  fm_batch_sheet_add (sheet, FM_SHEET_HEADING, g_strdup (_ ("Which code is which sample")));
  for (guint sample = 0; sample < tasting->samples->len; sample++) {
    const guint code = fm_tasting_sample_code (tasting, sample);

    if (code != 0)
      fm_batch_sheet_add (sheet, FM_SHEET_STEP,
                          g_strdup_printf (_ ("%u – %s"), code, get_sample_name (tasting, sample)));
  }
}

static void
add_serving (FmBatchSheet *sheet, const FmTasting *tasting, guint taster, FmTastingRound round)
{
  g_autoptr (GPtrArray) cups = fm_tasting_cups (tasting, taster, round);

  if (cups->len == 0)
    return;
  fm_batch_sheet_add (sheet, FM_SHEET_COLUMNS, g_strdup (get_round_name (round)));
  for (guint i = 0; i < cups->len; i++) {
    const FmTastingCup *cup = g_ptr_array_index (cups, i);

    fm_batch_sheet_add (sheet, FM_SHEET_STEP,
                        /* Translators: place in the serving order, code on the cup, sample */
                        g_strdup_printf (_ ("%u. %u – %s"), i + 1, cup->code,
                                         get_sample_name (tasting, cup->sample)));
  }
}

FmBatchSheet *
fm_taster_key_sheet_new (const FmTasting *tasting, const char *date_text)
{
  FmBatchSheet *sheet = fm_batch_sheet_new_empty (_ ("Key Sheet"));

  sheet->secret = TRUE;
  add_head (
      sheet, tasting, g_strdup_printf (_ ("Key sheet: %s"), get_title (tasting)),
      _ ("For the kitchen only. Keep it away from tasters and from whoever types the sheets."),
      date_text);
  add_key (sheet, tasting);
  for (guint i = 0; i < tasting->tasters->len; i++) {
    const FmTaster *taster = g_ptr_array_index (tasting->tasters, i);

    fm_batch_sheet_add (sheet, FM_SHEET_HEADING,
                        g_strdup_printf (_ ("Serving order of %s"), taster->name));
    for (int round = FM_TASTING_ROUND_MAIN; round <= FM_TASTING_ROUND_TRIANGLE; round++)
      add_serving (sheet, tasting, i, (FmTastingRound)round);
  }
  fm_batch_sheet_add (sheet, FM_SHEET_CAUTION, g_strdup (fm_caution_text ()));
  return sheet;
}
