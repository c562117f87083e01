/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-words.c - scales, tasks and samples in words */
#include <glib/gi18n-lib.h>
#include <stdlib.h>

#include "core/tasting/fm-tasting-private.h"

static int
compare_codes (gconstpointer a, gconstpointer b)
{
  const guint *left = a, *right = b;
  return (*left > *right) - (*left < *right);
}

GArray *
fm_tasting_codes (const FmTasting *self)
{
  GArray *codes = g_array_new (FALSE, FALSE, sizeof (guint));
  for (guint s = 0; s < self->samples->len; s++)
    for (guint i = 0; i < self->cups->len; i++) {
      const FmTastingCup *cup = &g_array_index (self->cups, FmTastingCup, i);
      if (cup->round == FM_TASTING_ROUND_MAIN && cup->sample == s) {
        g_array_append_val (codes, cup->code);
        break;
      }
    }
  g_array_sort (codes, compare_codes);
  return codes;
}

guint
fm_tasting_round_code (const FmTasting *self, guint sample, FmTastingRound round)
{
  for (guint i = 0; round != FM_TASTING_ROUND_TRIANGLE && i < self->cups->len; i++) {
    const FmTastingCup *cup = &g_array_index (self->cups, FmTastingCup, i);
    if (cup->round == round && cup->sample == sample)
      return cup->code;
  }
  return 0;
}

guint
fm_tasting_sample_code (const FmTasting *self, guint sample)
{
  return fm_tasting_round_code (self, sample,
                                (self->tasks & FM_TASTING_MAIN_TASKS) != 0 ? FM_TASTING_ROUND_MAIN
                                                                           : FM_TASTING_ROUND_PAIR);
}

char *
fm_tasting_sample_label (const FmTasting *self, guint sample)
{
  g_return_val_if_fail (sample < self->samples->len, NULL);
  const guint code = fm_tasting_sample_code (self, sample);
  if (!fm_tasting_is_sealed (self))
    return g_strdup (((FmTastingSample *)self->samples->pdata[sample])->name);
  return code > 0 ? g_strdup_printf ("%u", code) : g_strdup (_ ("sealed"));
}

char *
fm_tasting_cup_label (const FmTasting *self, guint code)
{
  for (guint i = 0; self->state == FM_TASTING_OPENED && i < self->cups->len; i++) {
    const FmTastingCup *cup = &g_array_index (self->cups, FmTastingCup, i);
    if (cup->code == code)
      /* TRANSLATORS: code on a cup, name of the sample in it */
      return g_strdup_printf (_ ("%u – %s"), code,
                              ((FmTastingSample *)self->samples->pdata[cup->sample])->name);
  }
  return g_strdup_printf ("%u", code);
}

const char *
fm_tasting_liking_word (guint score)
{
  static const char *const words[] = {
    N_ ("dislike extremely"), N_ ("dislike very much"),        N_ ("dislike moderately"),
    N_ ("dislike slightly"),  N_ ("neither like nor dislike"), N_ ("like slightly"),
    N_ ("like moderately"),   N_ ("like very much"),           N_ ("like extremely"),
  };
  g_return_val_if_fail (score >= 1 && score <= G_N_ELEMENTS (words), "");
  return _ (words[score - 1]);
}

const char *
fm_tasting_jar_word (guint mark)
{
  static const char *const words[] = {
    N_ ("much too little"), N_ ("too little"),    N_ ("just about right"),
    N_ ("too much"),        N_ ("much too much"),
  };
  g_return_val_if_fail (mark >= 1 && mark <= G_N_ELEMENTS (words), "");
  return _ (words[mark - 1]);
}

const char *
fm_tasting_task_name (FmTastingTask task)
{
  switch (task) {
  case FM_TASTING_RANK:
    return _ ("rank order");
  case FM_TASTING_LIKING:
    return _ ("9-point liking");
  case FM_TASTING_JAR:
    return _ ("just about right");
  case FM_TASTING_PREFERENCE:
    return _ ("paired preference");
  case FM_TASTING_TRIANGLE:
    return _ ("triangle");
  case FM_TASTING_REMARKS:
    return _ ("free remarks");
  }
  g_return_val_if_reached ("");
}

const char *
fm_tasting_blinding_name (FmTastingBlinding blinding)
{
  switch (blinding) {
  case FM_TASTING_BLINDING_NOT_SAID:
    return _ ("Not said");
  case FM_TASTING_BLINDING_HELPER_SERVES:
    return _ ("One who does not taste serves");
  case FM_TASTING_BLINDING_RELABELLED:
    return _ ("Somebody else relabels");
  case FM_TASTING_BLINDING_UNDER_PLATE:
    return _ ("Name under the plate, code on top");
  case FM_TASTING_BLINDING_HELPER_KEY:
    return _ ("The key goes to a helper only");
  }
  g_return_val_if_reached ("");
}

const char *
fm_tasting_blinding_worth (FmTastingBlinding blinding)
{
  switch (blinding) {
  case FM_TASTING_BLINDING_NOT_SAID:
    return _ ("If whoever cooks also tastes, choose how the names are kept from them. A cook who "
              "knows which is which cannot taste blind.");
  case FM_TASTING_BLINDING_HELPER_SERVES:
    return _ (
        "Strongest: a helper takes the key sheet, puts the codes on, portions and serves, and "
        "tastes nothing. The cook tastes as blind as everybody, unless a look or a smell "
        "gives a sample away.");
  case FM_TASTING_BLINDING_RELABELLED:
    return _ ("Strong: the cook marks each batch by name, then leaves; a helper with the key sheet "
              "changes the names for codes and mixes up the places. The helper does not taste.");
  case FM_TASTING_BLINDING_UNDER_PLATE:
    return _ (
        "Fair, and needs no helper: the name goes under the plate and the code on top, then "
        "the plates are moved about until nobody can follow. Whoever does it has seen the key, "
        "and may remember a code: take their sheet with care.");
  case FM_TASTING_BLINDING_HELPER_KEY:
    return _ (
        "Fair: only a helper sees the key, on paper or on a screen that is closed again and put on "
        "record, and says which code to write on what the cook hands over. The cook hears codes "
        "beside samples, and may remember one.");
  }
  g_return_val_if_reached ("");
}

const char *
fm_tasting_sheet_word (FmSheetState state)
{
  switch (state) {
  case FM_SHEET_WAITED_FOR:
    return _ ("waited for");
  case FM_SHEET_IN:
    return _ ("in");
  case FM_SHEET_MISSING:
    return _ ("missing");
  case FM_SHEET_DROPPED_OUT:
    return _ ("dropped out");
  }
  g_return_val_if_reached ("");
}
