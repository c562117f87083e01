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
fm_tasting_sample_code (const FmTasting *self, guint sample)
{
  for (guint i = 0; i < self->cups->len; i++) {
    const FmTastingCup *cup = &g_array_index (self->cups, FmTastingCup, i);
    if (cup->round != FM_TASTING_ROUND_TRIANGLE && cup->sample == sample)
      return cup->code;
  }
  return 0;
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
