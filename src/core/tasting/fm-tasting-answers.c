/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-answers.c - what stands on the sheets, in words, and which code was which sample */
#include "core/tasting/fm-tasting-answers.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-number.h"
#include "core/tasting/fm-tasting-private.h"

static void
add_part (GString *text, const char *what, const char *answer)
{
  if (text->len > 0)
    /* TRANSLATORS: between the answers on one sample */
    g_string_append (text, _ (", "));
  g_string_append_printf (text, "%s %s", what, answer);
}

static void
add_answer (const FmTasting *self,
            const FmTastingCup *cup,
            FmTastingTask task,
            guint attribute,
            const char *what,
            GString *text)
{
  const double value = fm_tasting_mark (self, cup->taster, cup->code, task, attribute);
  if (isnan (value) || fm_tasting_task_round (task) != cup->round)
    return;
  g_autofree char *number = fm_number_to_edit (value, 1);
  const gboolean is_choice = task == FM_TASTING_PREFERENCE || task == FM_TASTING_TRIANGLE;
  add_part (text, what, is_choice ? _ ("chosen") : number);
}

/* What this taster said of one sample; "" when nothing */
static GString *
answers_on (const FmTasting *self, const FmTastingCup *cup)
{
  static const FmTastingTask plain[] = { FM_TASTING_RANK, FM_TASTING_LIKING, FM_TASTING_PREFERENCE,
                                         FM_TASTING_TRIANGLE };
  GString *text = g_string_new (NULL);
  for (guint i = 0; i < G_N_ELEMENTS (plain); i++)
    add_answer (self, cup, plain[i], 0, fm_tasting_task_name (plain[i]), text);
  for (guint a = 0; a < self->attributes->len; a++)
    add_answer (self, cup, FM_TASTING_JAR, a, self->attributes->pdata[a], text);
  return text;
}

char *
fm_tasting_sheet_text (const FmTasting *self, guint taster)
{
  GString *all = g_string_new (NULL);
  for (guint i = 0; i < self->cups->len; i++) {
    const FmTastingCup *cup = &g_array_index (self->cups, FmTastingCup, i);
    if (cup->taster != taster)
      continue;
    g_autoptr (GString) answers = answers_on (self, cup);
    g_autofree char *label = fm_tasting_cup_label (self, cup->code);
    if (answers->len > 0)
      g_string_append_printf (all, "%s%s: %s", all->len > 0 ? "; " : "", label, answers->str);
  }
  return g_string_free (all, FALSE);
}

char *
fm_tasting_key_text (const FmTasting *self)
{
  if (self->state != FM_TASTING_OPENED)
    return NULL;
  GString *text = g_string_new (NULL);
  for (guint round = FM_TASTING_ROUND_MAIN; round <= FM_TASTING_ROUND_PAIR; round++)
    for (guint s = 0; s < self->samples->len; s++) {
      const guint code = fm_tasting_round_code (self, s, (FmTastingRound)round);
      g_autofree char *label = code > 0 ? fm_tasting_cup_label (self, code) : NULL;
      if (label == NULL)
        continue;
      g_string_append_printf (text, "%s%s", text->len > 0 ? "\n" : "", label);
      if (round == FM_TASTING_ROUND_PAIR)
        /* TRANSLATORS: follows "731 – Draft 3": this is the code of the paired preference */
        g_string_append (text, _ (" (paired preference)"));
    }
  return g_string_free (text, FALSE);
}

static gboolean
is_of_sample (const FmTasting *self, const FmTastingRemark *remark, guint sample)
{
  const FmTastingCup *cup = fm_tasting_find_cup (self, remark->taster, remark->code);
  return cup != NULL && cup->sample == sample;
}

char *
fm_tasting_sample_remarks (const FmTasting *self, guint sample)
{
  GString *text = g_string_new (NULL);
  for (guint i = 0; self->state == FM_TASTING_OPENED && i < self->remarks->len; i++) {
    const FmTastingRemark *remark = self->remarks->pdata[i];
    if (is_of_sample (self, remark, sample))
      g_string_append_printf (text, "%s%s: %s", text->len > 0 ? "\n" : "",
                              fm_tasting_taster (self, remark->taster)->name, remark->text);
  }
  return g_string_free (text, text->len == 0);
}
