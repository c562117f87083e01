/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tastings-check.c - is there such a tasting, and do its parts fit each other? */
#include "store/fm-tastings-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-number.h"
#include "core/base/fm-text-limit.h"

gboolean
fm_tastings_set_not_found (GError **error)
{
  g_set_error_literal (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND,
                       _ ("This tasting is no longer in the notebook. Choose another one."));
  return FALSE;
}

#define SEED_LIMIT (G_GUINT64_CONSTANT (1) << 53)
#define N_ROUNDS 3
#define MIN_CODE 100
#define MAX_CODE 999

static gboolean
refuse (GError **error, const char *text)
{
  g_set_error_literal (error, FM_STORE_ERROR, FM_STORE_ERROR_FAILED, text);
  return FALSE;
}

static gboolean
check_sizes (const FmTasting *self, GError **error)
{
  if (self->samples->len > FM_TASTING_MAX_SAMPLES) {
    g_set_error (error, FM_STORE_ERROR, FM_STORE_ERROR_FAILED,
                 _ ("A tasting holds up to %d samples. Make two sessions of it."),
                 FM_TASTING_MAX_SAMPLES);
    return FALSE;
  }
  if (self->tasters->len > FM_TASTING_MAX_TASTERS) {
    g_set_error (error, FM_STORE_ERROR, FM_STORE_ERROR_FAILED,
                 _ ("A tasting holds up to %d tasters. Make two sessions of it."),
                 FM_TASTING_MAX_TASTERS);
    return FALSE;
  }
  if (self->attributes->len > FM_TASTING_MAX_ATTRIBUTES) {
    g_set_error (error, FM_STORE_ERROR, FM_STORE_ERROR_FAILED,
                 _ ("A tasting asks for up to %d attributes. Take some of them out."),
                 FM_TASTING_MAX_ATTRIBUTES);
    return FALSE;
  }
  return TRUE;
}

static gboolean
is_chosen_valid (const FmTasting *self, const int chosen[2])
{
  const int n = (int)self->samples->len;

  return chosen[0] >= -1 && chosen[0] < n && chosen[1] >= -1 && chosen[1] < n;
}

static gboolean
check_settings (const FmTasting *self, GError **error)
{
  const guint all_tasks = FM_TASTING_RANK | FM_TASTING_LIKING | FM_TASTING_JAR |
                          FM_TASTING_PREFERENCE | FM_TASTING_TRIANGLE | FM_TASTING_REMARKS;

  if ((self->tasks & ~all_tasks) != 0)
    return refuse (error, _ ("This tasting asks for something that Forcemeat does not know."));
  if (self->seed >= SEED_LIMIT)
    return refuse (error, _ ("The seed of the tasting is too large. Take a smaller number."));
  if (self->hidden >= SEED_LIMIT || (int)self->blinding < 0 ||
      self->blinding >= FM_TASTING_N_BLINDINGS)
    return refuse (error, _ ("How this tasting was sealed is not known. Arrange the samples "
                             "again."));
  if (self->max_per_taster < 2)
    return refuse (error,
                   _ ("Each person must taste at least two samples. Choose a larger number."));
  if ((int)self->state < FM_TASTING_PLANNED || self->state > FM_TASTING_OPENED)
    return refuse (error, _ ("It is not known whether this tasting is planned, sealed or open."));
  if (!is_chosen_valid (self, self->pair) || !is_chosen_valid (self, self->triangle))
    return refuse (error, _ ("The pair or the triangle names a sample that is not there. Choose "
                             "its samples again."));
  if (self->expected_place != NULL && self->expected_place->len != self->samples->len)
    return refuse (error, _ ("The order written down beforehand does not fit the samples. Write "
                             "it down again."));
  return TRUE;
}

static gpointer
cup_key (guint taster, FmTastingRound round, guint code)
{
  return GUINT_TO_POINTER (1 + ((taster * N_ROUNDS + round) * (MAX_CODE + 1) + code));
}

static gboolean
check_cup (const FmTasting *self, const FmTastingCup *cup, GError **error)
{
  if (cup->taster >= self->tasters->len || cup->sample >= self->samples->len ||
      (int)cup->round < 0 || cup->round >= N_ROUNDS)
    return refuse (error, _ ("A portion stands for a taster or a sample that is not there. Arrange "
                             "the samples again."));
  if (cup->code >= MIN_CODE && cup->code <= MAX_CODE)
    return TRUE;
  g_set_error (error, FM_STORE_ERROR, FM_STORE_ERROR_FAILED,
               _ ("%u is not a three-digit code. Arrange the samples again."), cup->code);
  return FALSE;
}

/* Fills @served with the keys of all cups. */
static gboolean
check_cups (const FmTasting *self, GHashTable *served, GError **error)
{
  guint sample_by_code[MAX_CODE + 1] = { 0 };

  for (guint i = 0; i < self->cups->len; i++) {
    const FmTastingCup *cup = &g_array_index (self->cups, FmTastingCup, i);
    guint *sample = NULL;

    if (!check_cup (self, cup, error))
      return FALSE;
    sample = &sample_by_code[cup->code];
    if ((*sample != 0 && *sample != cup->sample + 1) ||
        !g_hash_table_add (served, cup_key (cup->taster, cup->round, cup->code))) {
      g_set_error (error, FM_STORE_ERROR, FM_STORE_ERROR_FAILED,
                   _ ("The code %u is given twice. Arrange the samples again."), cup->code);
      return FALSE;
    }
    *sample = cup->sample + 1;
  }
  return TRUE;
}

FmTastingRound
fm_tastings_round (FmTastingTask task)
{
  if (task == FM_TASTING_PREFERENCE)
    return FM_TASTING_ROUND_PAIR;
  return task == FM_TASTING_TRIANGLE ? FM_TASTING_ROUND_TRIANGLE : FM_TASTING_ROUND_MAIN;
}

/* Highest value of the scale; 0 = no marks are made for that. */
static double
highest_mark (FmTastingTask task)
{
  switch (task) {
  case FM_TASTING_RANK:
    return FM_TASTING_MAX_SAMPLES;
  case FM_TASTING_LIKING:
    return 9;
  case FM_TASTING_JAR:
    return 5;
  case FM_TASTING_PREFERENCE:
  case FM_TASTING_TRIANGLE:
    return 1;
  case FM_TASTING_REMARKS:
    break;
  }
  return 0;
}

static gboolean
check_served (const FmTasting *self,
              GHashTable *served,
              guint taster,
              FmTastingRound round,
              guint code,
              GError **error)
{
  if (taster < self->tasters->len && code >= MIN_CODE && code <= MAX_CODE &&
      g_hash_table_contains (served, cup_key (taster, round, code)))
    return TRUE;
  g_set_error (
      error, FM_STORE_ERROR, FM_STORE_ERROR_FAILED,
      _ ("A sheet speaks of the sample %u, which that taster did not get. Check the code on "
         "the sheet."),
      code);
  return FALSE;
}

/* Two marks of one key are one too many; of a choice, all cups share a key. */
static char *
mark_key (const FmTastingMark *mark)
{
  gboolean is_choice = mark->task == FM_TASTING_PREFERENCE || mark->task == FM_TASTING_TRIANGLE;

  return g_strdup_printf ("%u %u %u %u", mark->taster, is_choice ? 0 : mark->code,
                          (guint)mark->task, mark->attribute);
}

static gboolean
check_mark (const FmTasting *self, GHashTable *served, const FmTastingMark *mark, GError **error)
{
  const double highest = highest_mark (mark->task);
  const guint n_attributes = mark->task == FM_TASTING_JAR ? self->attributes->len : 1;

  if (highest == 0 || (self->tasks & mark->task) == 0 || mark->attribute >= n_attributes)
    return refuse (error, _ ("A sheet holds a mark that this tasting does not ask for. Take it "
                             "out."));
  if (!(mark->value >= 1 && mark->value <= highest)) {
    g_autofree char *limit = fm_number_format (highest, 0);

    g_set_error (error, FM_STORE_ERROR, FM_STORE_ERROR_FAILED,
                 _ ("A mark for the sample %u lies outside its scale, which runs from 1 to %s. "
                    "Correct the sheet."),
                 mark->code, limit);
    return FALSE;
  }
  return check_served (self, served, mark->taster, fm_tastings_round (mark->task), mark->code,
                       error);
}

static gboolean
check_marks (const FmTasting *self, GHashTable *served, GError **error)
{
  g_autoptr (GHashTable) seen = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  for (guint i = 0; i < self->marks->len; i++) {
    const FmTastingMark *mark = &g_array_index (self->marks, FmTastingMark, i);

    if (!check_mark (self, served, mark, error))
      return FALSE;
    if (!g_hash_table_add (seen, mark_key (mark))) {
      g_set_error (error, FM_STORE_ERROR, FM_STORE_ERROR_FAILED,
                   _ ("A sheet answers the same question twice (sample %u). Correct the sheet."),
                   mark->code);
      return FALSE;
    }
  }
  return TRUE;
}

static gboolean
check_remarks (const FmTasting *self, GHashTable *served, GError **error)
{
  g_autoptr (GHashTable) seen = g_hash_table_new (NULL, NULL);

  for (guint i = 0; i < self->remarks->len; i++) {
    const FmTastingRemark *remark = self->remarks->pdata[i];

    if (!check_served (self, served, remark->taster, FM_TASTING_ROUND_MAIN, remark->code, error))
      return FALSE;
    if (!g_hash_table_add (seen, cup_key (remark->taster, FM_TASTING_ROUND_MAIN, remark->code))) {
      g_set_error (error, FM_STORE_ERROR, FM_STORE_ERROR_FAILED,
                   _ ("A sheet holds two remarks on the sample %u. Make one of them."),
                   remark->code);
      return FALSE;
    }
  }
  return TRUE;
}

static gboolean
check_states (const FmTasting *self, GError **error)
{
  gboolean opening_recorded = FALSE;

  for (guint i = 0; i < self->tasters->len; i++) {
    const FmTaster *taster = self->tasters->pdata[i];
    if ((int)taster->sheet < FM_SHEET_WAITED_FOR || taster->sheet > FM_SHEET_DROPPED_OUT)
      return refuse (error, _ ("It is not known whether a sheet came in. Say so once more."));
  }
  for (guint i = 0; i < self->events->len; i++) {
    const FmTastingEvent *event = self->events->pdata[i];
    if ((int)event->kind < FM_TASTING_EVENT_ARRANGED || event->kind > FM_TASTING_EVENT_COPIED)
      return refuse (error, _ ("Something of an unknown kind was recorded of this tasting."));
    opening_recorded = opening_recorded || event->kind == FM_TASTING_EVENT_OPENED ||
                       event->kind == FM_TASTING_EVENT_OPENED_EARLY;
  }
  if (self->state == FM_TASTING_OPENED && !opening_recorded)
    return refuse (error, _ ("This tasting is open, but it is not recorded when it was opened. "
                             "Open it from its own page."));
  return TRUE;
}

gboolean
fm_tastings_check_parts (const FmTasting *tasting, GError **error)
{
  g_autoptr (GHashTable) served = g_hash_table_new (NULL, NULL);

  return fm_text_check (tasting->notes, _ ("Notes"), error) && check_sizes (tasting, error) &&
         check_settings (tasting, error) && check_states (tasting, error) &&
         check_cups (tasting, served, error) && check_marks (tasting, served, error) &&
         check_remarks (tasting, served, error);
}
