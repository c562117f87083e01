/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-marks.c - cups of a taster and what was written on their sheet */
#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "core/base/fm-double.h"
#include "core/base/fm-error.h"
#include "core/base/fm-number.h"
#include "core/tasting/fm-tasting-private.h"

FmTastingRound
fm_tasting_task_round (FmTastingTask task)
{
  switch (task) {
  case FM_TASTING_PREFERENCE:
    return FM_TASTING_ROUND_PAIR;
  case FM_TASTING_TRIANGLE:
    return FM_TASTING_ROUND_TRIANGLE;
  case FM_TASTING_RANK:
  case FM_TASTING_LIKING:
  case FM_TASTING_JAR:
  case FM_TASTING_REMARKS:
    break;
  }
  return FM_TASTING_ROUND_MAIN;
}

GPtrArray *
fm_tasting_cups (const FmTasting *self, guint taster, FmTastingRound round)
{
  GPtrArray *cups = g_ptr_array_new ();
  for (guint i = 0; i < self->cups->len; i++) {
    FmTastingCup *cup = &g_array_index (self->cups, FmTastingCup, i);
    if (cup->taster == taster && cup->round == round)
      g_ptr_array_add (cups, cup);
  }
  return cups;
}

const FmTastingCup *
fm_tasting_find_cup (const FmTasting *self, guint taster, guint code)
{
  for (guint i = 0; i < self->cups->len; i++) {
    const FmTastingCup *cup = &g_array_index (self->cups, FmTastingCup, i);
    if (cup->taster == taster && cup->code == code)
      return cup;
  }
  return NULL;
}

static gboolean
has_cup (const FmTasting *self, guint taster, guint code, FmTastingRound round)
{
  g_autoptr (GPtrArray) cups = fm_tasting_cups (self, taster, round);
  for (guint i = 0; i < cups->len; i++)
    if (((FmTastingCup *)cups->pdata[i])->code == code)
      return TRUE;
  return FALSE;
}

static FmTastingMark *
find_mark (
    const FmTasting *self, guint taster, guint code, FmTastingTask task, guint attribute, guint *at)
{
  for (guint i = 0; i < self->marks->len; i++) {
    FmTastingMark *mark = &g_array_index (self->marks, FmTastingMark, i);
    if (mark->taster == taster && mark->code == code && mark->task == task &&
        mark->attribute == attribute) {
      if (at != NULL)
        *at = i;
      return mark;
    }
  }
  return NULL;
}

double
fm_tasting_mark (
    const FmTasting *self, guint taster, guint code, FmTastingTask task, guint attribute)
{
  const FmTastingMark *mark = find_mark (self, taster, code, task, attribute, NULL);
  return mark != NULL ? mark->value : NAN;
}

static gboolean
check_scale (const FmTasting *self, guint taster, FmTastingTask task, double value, GError **error)
{
  double highest = 1, step = 1;
  if (isnan (value))
    return TRUE;
  if (task == FM_TASTING_RANK) {
    g_autoptr (GPtrArray) cups = fm_tasting_cups (self, taster, FM_TASTING_ROUND_MAIN);
    highest = cups->len;
    /* places that are shared may be written as their middle */
    step = 0.5;
  } else if (task == FM_TASTING_LIKING) {
    highest = 9;
  } else if (task == FM_TASTING_JAR) {
    highest = 5;
  }
  if (value >= 1 && value <= highest && fmod (value, step) == 0)
    return TRUE;
  g_autofree char *given = fm_number_to_edit (value, 3);
  g_autofree char *limit = fm_number_format (highest, 0);
  g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
               /* TRANSLATORS: a number, "9-point liking", the highest mark */
               _ ("%s is no mark of this scale (%s): it runs from 1 to %s."),
               *given != '\0' ? given : _ ("That"), fm_tasting_task_name (task), limit);
  return FALSE;
}

static gboolean
check_mark (const FmTasting *self,
            guint taster,
            guint code,
            FmTastingTask task,
            guint attribute,
            double value,
            GError **error)
{
  if ((self->tasks & task) == 0 || task == FM_TASTING_REMARKS) {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("This tasting takes no marks of that kind (%s)."), fm_tasting_task_name (task));
    return FALSE;
  }
  if (attribute >= (task == FM_TASTING_JAR ? self->attributes->len : 1)) {
    g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                         _ ("This tasting does not ask for that attribute."));
    return FALSE;
  }
  if (taster >= self->tasters->len || !has_cup (self, taster, code, fm_tasting_task_round (task))) {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("This taster got no sample %u for that (%s). Check the code on the sheet."),
                 code, fm_tasting_task_name (task));
    return FALSE;
  }
  return check_scale (self, taster, task, value, error);
}

static void
put_mark (FmTasting *self, const FmTastingMark *mark)
{
  guint at = 0;
  FmTastingMark *old = find_mark (self, mark->taster, mark->code, mark->task, mark->attribute, &at);
  if (isnan (mark->value)) {
    if (old != NULL)
      g_array_remove_index (self->marks, at);
  } else if (old != NULL) {
    old->value = mark->value;
  } else {
    g_array_append_val (self->marks, *mark);
  }
}

static void
clear_other_choices (FmTasting *self, const FmTastingMark *mark)
{
  g_autoptr (GPtrArray) cups =
      fm_tasting_cups (self, mark->taster, fm_tasting_task_round (mark->task));
  for (guint i = 0; i < cups->len; i++) {
    FmTastingMark other = *mark;
    other.code = ((const FmTastingCup *)cups->pdata[i])->code;
    other.value = NAN;
    if (other.code != mark->code)
      put_mark (self, &other);
  }
}

static void
record_mark_change (FmTasting *self, gint64 now, const FmTastingMark *mark, double before)
{
  g_autofree char *from = fm_number_format (before, before == floor (before) ? 0 : 1);
  g_autofree char *to = fm_number_format (mark->value, mark->value == floor (mark->value) ? 0 : 1);
  const char *what = mark->task == FM_TASTING_JAR ? self->attributes->pdata[mark->attribute]
                                                  : fm_tasting_task_name (mark->task);
  /* TRANSLATORS: taster, code of a cup, "9-point liking", mark before, mark now */
  g_autofree char *text =
      g_strdup_printf (_ ("%s, sample %u, %s: %s became %s"),
                       fm_tasting_taster (self, mark->taster)->name, mark->code, what, from, to);
  fm_tasting_record_change (self, now, text);
}

gboolean
fm_tasting_set_mark (FmTasting *self,
                     gint64 now,
                     guint taster,
                     guint code,
                     FmTastingTask task,
                     guint attribute,
                     double value,
                     GError **error)
{
  const FmTastingMark mark = { taster, code, task, attribute, value };

  if (!check_mark (self, taster, code, task, attribute, value, error))
    return FALSE;
  const double before = fm_tasting_mark (self, taster, code, task, attribute);
  if (fm_double_same (before, value))
    return TRUE;
  put_mark (self, &mark);
  if ((task == FM_TASTING_PREFERENCE || task == FM_TASTING_TRIANGLE) && !isnan (value))
    clear_other_choices (self, &mark);
  record_mark_change (self, now, &mark, before);
  return TRUE;
}

static guint
find_remark (const FmTasting *self, guint taster, guint code)
{
  guint i = 0;
  for (; i < self->remarks->len; i++) {
    const FmTastingRemark *remark = self->remarks->pdata[i];
    if (remark->taster == taster && remark->code == code)
      break;
  }
  return i;
}

const char *
fm_tasting_remark (const FmTasting *self, guint taster, guint code)
{
  const guint at = find_remark (self, taster, code);
  return at < self->remarks->len ? ((FmTastingRemark *)self->remarks->pdata[at])->text : NULL;
}

void
fm_tasting_set_remark (FmTasting *self, gint64 now, guint taster, guint code, const char *text)
{
  g_return_if_fail (taster < self->tasters->len);
  const guint at = find_remark (self, taster, code);
  const gboolean is_blank = text == NULL || *text == '\0';

  if (g_strcmp0 (is_blank ? NULL : text, fm_tasting_remark (self, taster, code)) == 0)
    return;
  if (at < self->remarks->len)
    g_ptr_array_remove_index (self->remarks, at);
  if (!is_blank) {
    FmTastingRemark *remark = g_new0 (FmTastingRemark, 1);
    remark->taster = taster;
    remark->code = code;
    remark->text = g_strdup (text);
    g_ptr_array_add (self->remarks, remark);
  }
  /* TRANSLATORS: taster, code of a cup */
  g_autofree char *change = g_strdup_printf (_ ("%s, sample %u: remark changed"),
                                             fm_tasting_taster (self, taster)->name, code);
  fm_tasting_record_change (self, now, change);
}

/* "rank order: 264, 731" */
static void
add_gap (const FmTasting *self,
         guint taster,
         FmTastingTask task,
         guint attribute,
         const char *what,
         GString *gaps)
{
  g_autoptr (GPtrArray) cups = fm_tasting_cups (self, taster, FM_TASTING_ROUND_MAIN);
  gboolean first = TRUE;
  for (guint i = 0; i < cups->len; i++) {
    const guint code = ((const FmTastingCup *)cups->pdata[i])->code;
    if (!isnan (fm_tasting_mark (self, taster, code, task, attribute)))
      continue;
    if (first)
      g_string_append_printf (gaps, "%s%s: %u", gaps->len > 0 ? "; " : "", what, code);
    else
      g_string_append_printf (gaps, ", %u", code);
    first = FALSE;
  }
}

static void
add_choice_gap (const FmTasting *self, guint taster, FmTastingTask task, GString *gaps)
{
  g_autoptr (GPtrArray) cups = fm_tasting_cups (self, taster, fm_tasting_task_round (task));
  if ((self->tasks & task) == 0)
    return;
  for (guint i = 0; i < cups->len; i++)
    if (!isnan (
            fm_tasting_mark (self, taster, ((const FmTastingCup *)cups->pdata[i])->code, task, 0)))
      return;
  /* TRANSLATORS: "triangle: nothing chosen" */
  g_string_append_printf (gaps, _ ("%s%s: nothing chosen"), gaps->len > 0 ? "; " : "",
                          fm_tasting_task_name (task));
}

char *
fm_tasting_sheet_gaps (const FmTasting *self, guint taster)
{
  g_autoptr (GString) gaps = g_string_new (NULL);

  if ((self->tasks & FM_TASTING_RANK) != 0)
    add_gap (self, taster, FM_TASTING_RANK, 0, fm_tasting_task_name (FM_TASTING_RANK), gaps);
  if ((self->tasks & FM_TASTING_LIKING) != 0)
    add_gap (self, taster, FM_TASTING_LIKING, 0, fm_tasting_task_name (FM_TASTING_LIKING), gaps);
  for (guint a = 0; (self->tasks & FM_TASTING_JAR) != 0 && a < self->attributes->len; a++)
    add_gap (self, taster, FM_TASTING_JAR, a, self->attributes->pdata[a], gaps);
  add_choice_gap (self, taster, FM_TASTING_PREFERENCE, gaps);
  add_choice_gap (self, taster, FM_TASTING_TRIANGLE, gaps);
  return gaps->len > 0 ? g_strdup (gaps->str) : NULL;
}

void
fm_tasting_set_sheet (FmTasting *self, gint64 now, guint taster, FmSheetState state)
{
  g_return_if_fail (taster < self->tasters->len);
  FmTaster *who = self->tasters->pdata[taster];
  if (who->sheet == state)
    return;
  who->sheet = state;
  /* TRANSLATORS: taster, "in", "missing" ... */
  g_autofree char *change =
      g_strdup_printf (_ ("%s: sheet is now “%s”"), who->name, fm_tasting_sheet_word (state));
  fm_tasting_record_change (self, now, change);
}
