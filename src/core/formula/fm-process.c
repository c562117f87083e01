/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-process.c - how a blend is to be ground, seasoned, formed and cooked */
#include "core/formula/fm-process.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "core/base/fm-double.h"

#define MINUTES_PER_DAY 1440.0

#define NUMBER(key, name, measure, min, max, decimals)                                             \
  {                                                                                                \
    FM_PROCESS_IS_NUMBER, key, name, measure, min, max, decimals                                   \
  }
#define OTHER(shape, key, name)                                                                    \
  {                                                                                                \
    shape, key, name, FM_MEASURE_NUMBER, 0, 0, 0                                                   \
  }

/* Ranges as in fm_experiment_check(), which the same numbers have to pass when they were done. */
static const FmProcessFieldInfo fields[FM_N_PROCESS_FIELDS] = {
  [FM_PROCESS_ORDER] = OTHER (FM_PROCESS_IS_WORDS, "order", N_ ("Order of grinding")),
  [FM_PROCESS_MEAT_TEMP] = NUMBER (
      "meat_temp_c", N_ ("Meat temperature at grinding"), FM_MEASURE_TEMPERATURE, -40, 60, 1),
  [FM_PROCESS_PLATES] = { FM_PROCESS_IS_PLATES, "plates_mm", N_ ("Grinder plates, in order"),
                          FM_MEASURE_LENGTH, 0.5, 50, 2 },
  [FM_PROCESS_MINCE_TEMP] = NUMBER (
      "mince_temp_c", N_ ("Temperature after grinding"), FM_MEASURE_TEMPERATURE, -40, 60, 1),
  [FM_PROCESS_SEASONINGS] = OTHER (FM_PROCESS_IS_SEASONINGS, "seasonings", N_ ("Seasoning")),
  [FM_PROCESS_SALT_MINUTES] = NUMBER (
      "salt_minutes_before", N_ ("Salted before cooking"), FM_MEASURE_MINUTES, 0, 100000, 1),
  [FM_PROCESS_DIAMETER] =
      NUMBER ("patty_diameter_mm", N_ ("Raw diameter"), FM_MEASURE_LENGTH, 10, 500, 1),
  [FM_PROCESS_THICKNESS] =
      NUMBER ("patty_thickness_mm", N_ ("Raw thickness"), FM_MEASURE_LENGTH, 1, 150, 1),
  [FM_PROCESS_CHILL] = NUMBER (
      "chill_minutes", N_ ("Rest before the heat"), FM_MEASURE_MINUTES, 0, MINUTES_PER_DAY, 1),
  [FM_PROCESS_SURFACE] = OTHER (FM_PROCESS_IS_WORDS, "surface", N_ ("Surface")),
  [FM_PROCESS_HEAT] = OTHER (FM_PROCESS_IS_WORDS, "heat", N_ ("Heat")),
  [FM_PROCESS_SURFACE_TEMP] =
      NUMBER ("surface_temp_c", N_ ("Surface temperature"), FM_MEASURE_TEMPERATURE, 0, 1000, 1),
  [FM_PROCESS_SIDE_1] =
      NUMBER ("minutes_side_1", N_ ("First side"), FM_MEASURE_MINUTES, 0, MINUTES_PER_DAY, 2),
  [FM_PROCESS_SIDE_2] =
      NUMBER ("minutes_side_2", N_ ("Second side"), FM_MEASURE_MINUTES, 0, MINUTES_PER_DAY, 2),
  [FM_PROCESS_TARGET_CORE] =
      NUMBER ("target_core_c", N_ ("Core aim"), FM_MEASURE_TEMPERATURE, 20, 120, 1),
  [FM_PROCESS_REST] =
      NUMBER ("rest_minutes", N_ ("Rest"), FM_MEASURE_MINUTES, 0, MINUTES_PER_DAY, 2),
  [FM_PROCESS_STEPS] = OTHER (FM_PROCESS_IS_WORDS, "steps", N_ ("Steps")),
};

static const struct {
  const char *key;
  const char *name;
} moments[FM_N_SEASON_MOMENTS] = {
  [FM_SEASON_BEFORE_GRINDING] = { "before-grinding", N_ ("before grinding") },
  [FM_SEASON_BETWEEN_PASSES] = { "between-passes", N_ ("between the passes") },
  [FM_SEASON_AFTER_GRINDING] = { "after-grinding", N_ ("after grinding") },
  [FM_SEASON_AFTER_FORMING] = { "after-forming", N_ ("after forming") },
  [FM_SEASON_AT_THE_HEAT] = { "at-the-heat", N_ ("just before the heat") },
  [FM_SEASON_AT_THE_TURN] = { "at-the-turn", N_ ("at the turn") },
  [FM_SEASON_AFTER_COOKING] = { "after-cooking", N_ ("after cooking") },
};

static void
seasoning_free (gpointer data)
{
  FmSeasoning *seasoning = data;

  g_free (seasoning->what);
  g_free (seasoning);
}

const FmProcessFieldInfo *
fm_process_field (FmProcessField field)
{
  g_return_val_if_fail (field < FM_N_PROCESS_FIELDS, NULL);
  return &fields[field];
}

const char *
fm_process_field_name (FmProcessField field)
{
  g_return_val_if_fail (field < FM_N_PROCESS_FIELDS, NULL);
  return _ (fields[field].name);
}

const char *
fm_season_moment_name (FmSeasonMoment moment)
{
  g_return_val_if_fail (moment < FM_N_SEASON_MOMENTS, NULL);
  return _ (moments[moment].name);
}

const char *
fm_season_moment_key (FmSeasonMoment moment)
{
  g_return_val_if_fail (moment < FM_N_SEASON_MOMENTS, NULL);
  return moments[moment].key;
}

FmSeasonMoment
fm_season_moment_from_key (const char *key)
{
  for (guint i = 0; i < FM_N_SEASON_MOMENTS; i++)
    if (g_strcmp0 (moments[i].key, key) == 0)
      return (FmSeasonMoment)i;
  return FM_N_SEASON_MOMENTS;
}

FmProcess *
fm_process_new (void)
{
  FmProcess *self = g_new0 (FmProcess, 1);

  for (guint i = 0; i < FM_N_PROCESS_FIELDS; i++)
    self->numbers[i] = NAN;
  self->plates_mm = g_array_new (FALSE, FALSE, sizeof (double));
  self->seasonings = g_ptr_array_new_with_free_func (seasoning_free);
  return self;
}

FmProcess *
fm_process_copy (const FmProcess *self)
{
  FmProcess *copy = fm_process_new ();

  memcpy (copy->numbers, self->numbers, sizeof copy->numbers);
  for (guint i = 0; i < FM_N_PROCESS_FIELDS; i++)
    copy->words[i] = g_strdup (self->words[i]);
  g_array_append_vals (copy->plates_mm, self->plates_mm->data, self->plates_mm->len);
  for (guint i = 0; i < self->seasonings->len; i++) {
    const FmSeasoning *seasoning = fm_process_seasoning (self, i);

    fm_process_add_seasoning (copy, seasoning->what, seasoning->moment, seasoning->on_surface);
  }
  return copy;
}

void
fm_process_free (FmProcess *self)
{
  for (guint i = 0; i < FM_N_PROCESS_FIELDS; i++)
    g_free (self->words[i]);
  g_array_unref (self->plates_mm);
  g_ptr_array_unref (self->seasonings);
  g_free (self);
}

static gboolean
same_plates (const FmProcess *a, const FmProcess *b)
{
  if (a->plates_mm->len != b->plates_mm->len)
    return FALSE;
  for (guint i = 0; i < a->plates_mm->len; i++)
    if (!fm_double_same (g_array_index (a->plates_mm, double, i),
                         g_array_index (b->plates_mm, double, i)))
      return FALSE;
  return TRUE;
}

static gboolean
same_seasonings (const FmProcess *a, const FmProcess *b)
{
  if (a->seasonings->len != b->seasonings->len)
    return FALSE;
  for (guint i = 0; i < a->seasonings->len; i++) {
    const FmSeasoning *one = fm_process_seasoning (a, i);
    const FmSeasoning *other = fm_process_seasoning (b, i);

    if (strcmp (one->what, other->what) != 0 || one->moment != other->moment ||
        !one->on_surface != !other->on_surface)
      return FALSE;
  }
  return TRUE;
}

gboolean
fm_process_field_equal (const FmProcess *a, const FmProcess *b, FmProcessField field)
{
  switch (fields[field].shape) {
  case FM_PROCESS_IS_NUMBER:
    return fm_double_same (a->numbers[field], b->numbers[field]);
  case FM_PROCESS_IS_WORDS:
    return g_strcmp0 (a->words[field], b->words[field]) == 0;
  case FM_PROCESS_IS_PLATES:
    return same_plates (a, b);
  case FM_PROCESS_IS_SEASONINGS:
    return same_seasonings (a, b);
  }
  g_return_val_if_reached (FALSE);
}

gboolean
fm_process_equal (const FmProcess *a, const FmProcess *b)
{
  for (guint i = 0; i < FM_N_PROCESS_FIELDS; i++)
    if (!fm_process_field_equal (a, b, (FmProcessField)i))
      return FALSE;
  return TRUE;
}

gboolean
fm_process_is_empty (const FmProcess *self)
{
  for (guint i = 0; i < FM_N_PROCESS_FIELDS; i++)
    if (!isnan (self->numbers[i]) || self->words[i] != NULL)
      return FALSE;
  return self->plates_mm->len == 0 && self->seasonings->len == 0;
}

void
fm_process_set_words (FmProcess *self, FmProcessField field, const char *words)
{
  g_autofree char *stripped = words != NULL ? g_strstrip (g_strdup (words)) : NULL;

  g_return_if_fail (fm_process_field (field)->shape == FM_PROCESS_IS_WORDS);
  g_free (self->words[field]);
  self->words[field] = stripped != NULL && *stripped != '\0' ? g_strdup (words) : NULL;
}

void
fm_process_set_plates (FmProcess *self, const double *plates_mm, guint n)
{
  g_array_set_size (self->plates_mm, 0);
  for (guint i = 0; i < n && self->plates_mm->len < FM_PROCESS_MAX_PASSES; i++)
    if (!isnan (plates_mm[i]))
      g_array_append_val (self->plates_mm, plates_mm[i]);
}

void
fm_process_add_seasoning (FmProcess *self,
                          const char *what,
                          FmSeasonMoment moment,
                          gboolean on_surface)
{
  FmSeasoning *seasoning;

  if (what == NULL || *what == '\0' || moment >= FM_N_SEASON_MOMENTS)
    return;
  seasoning = g_new0 (FmSeasoning, 1);
  seasoning->what = g_strdup (what);
  seasoning->moment = moment;
  seasoning->on_surface = on_surface;
  g_ptr_array_add (self->seasonings, seasoning);
}

const FmSeasoning *
fm_process_seasoning (const FmProcess *self, guint index)
{
  g_return_val_if_fail (index < self->seasonings->len, NULL);
  return g_ptr_array_index (self->seasonings, index);
}

char *
fm_seasoning_text (const FmSeasoning *seasoning)
{
  /* TRANSLATORS: a seasoning, then the moment: "Salt: after forming, on the surface" */
  return g_strdup_printf (seasoning->on_surface ? _ ("%s: %s, on the surface")
                                                : _ ("%s: %s, mixed in"),
                          seasoning->what, fm_season_moment_name (seasoning->moment));
}

static char *
plates_text (const FmProcess *self, const FmUnits *units)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < self->plates_mm->len; i++) {
    const double plate_mm = g_array_index (self->plates_mm, double, i);
    g_autofree char *plate = fm_measure_format (FM_MEASURE_LENGTH, units, plate_mm, 1);

    if (i > 0)
      /* TRANSLATORS: between the plates of two passes: "10 mm, then 4.5 mm" */
      g_string_append (text, _ (", then "));
    g_string_append (text, plate);
  }
  return g_string_free (g_steal_pointer (&text), FALSE);
}

static char *
seasonings_text (const FmProcess *self)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < self->seasonings->len; i++) {
    g_autofree char *one = fm_seasoning_text (fm_process_seasoning (self, i));

    g_string_append_printf (text, "%s%s", i > 0 ? "; " : "", one);
  }
  return g_string_free (g_steal_pointer (&text), FALSE);
}

char *
fm_process_field_text (const FmProcess *self, FmProcessField field, const FmUnits *units)
{
  const FmProcessFieldInfo *info = fm_process_field (field);

  switch (info->shape) {
  case FM_PROCESS_IS_NUMBER:
    return isnan (self->numbers[field])
               ? NULL
               : fm_measure_format (info->measure, units, self->numbers[field], info->decimals);
  case FM_PROCESS_IS_WORDS:
    return g_strdup (self->words[field]);
  case FM_PROCESS_IS_PLATES:
    return self->plates_mm->len > 0 ? plates_text (self, units) : NULL;
  case FM_PROCESS_IS_SEASONINGS:
    return self->seasonings->len > 0 ? seasonings_text (self) : NULL;
  }
  g_return_val_if_reached (NULL);
}

char **
fm_process_steps (const FmProcess *self)
{
  const char *words = self->words[FM_PROCESS_STEPS];
  g_auto (GStrv) lines = g_strsplit (words != NULL ? words : "", "\n", -1);
  g_autoptr (GStrvBuilder) steps = g_strv_builder_new ();

  for (guint i = 0; lines[i] != NULL; i++)
    if (*g_strstrip (lines[i]) != '\0')
      g_strv_builder_add (steps, lines[i]);
  return g_strv_builder_end (steps);
}
