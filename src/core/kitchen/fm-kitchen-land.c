/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-kitchen-land.c - what was recorded at the pan, in the experiment */
#include "core/kitchen/fm-kitchen-land.h"

#include <math.h>
#include <string.h>

/* Two readings this near are one, come here twice. */
#define SAME_S 0.5
#define SAME_K 0.05

guint
fm_kitchen_n_portions (const FmExperiment *experiment)
{
  return CLAMP (experiment->patties->len, 1, FM_KITCHEN_MAX_PORTIONS);
}

static void
land_masses (const FmKitchenState *state, FmExperiment *experiment)
{
  const FmPattyMass blank = { NAN, NAN };

  for (guint i = 0; i < state->n_portions; i++) {
    const FmKitchenPortion *portion = &state->portions[i];
    FmPattyMass *patty;

    if (isnan (portion->raw_g) && isnan (portion->cooked_g))
      continue;
    while (experiment->patties->len <= i)
      g_array_append_val (experiment->patties, blank);
    patty = &g_array_index (experiment->patties, FmPattyMass, i);
    if (!isnan (portion->raw_g))
      patty->raw_g = portion->raw_g;
    if (!isnan (portion->cooked_g))
      patty->cooked_g = portion->cooked_g;
  }
}

static void
land_weighing (const FmKitchenEvent *event, FmExperiment *experiment)
{
  for (guint i = 0; i < experiment->weighings->len; i++) {
    FmWeighing *weighing = &g_array_index (experiment->weighings, FmWeighing, i);
    const char *key = weighing->line_id != NULL ? weighing->line_id : weighing->name;

    if (g_strcmp0 (key, event->words) == 0)
      weighing->weighed_g = event->value;
  }
}

/* Mean over the portions that have the time; NaN when none does. */
static double
mean_minutes (const FmKitchenState *state, double (*time_s) (const FmKitchenPortion *))
{
  double sum_s = 0.0;
  guint n = 0;

  for (guint i = 0; i < state->n_portions; i++) {
    const double one_s = time_s (&state->portions[i]);

    if (isnan (one_s))
      continue;
    sum_s += one_s;
    n++;
  }
  return n > 0 ? sum_s / n / 60.0 : (double)NAN;
}

static double
side_1_s (const FmKitchenPortion *portion)
{
  return portion->stage >= FM_STAGE_RESTING ? portion->side_s[0] : (double)NAN;
}

static double
side_2_s (const FmKitchenPortion *portion)
{
  return portion->stage >= FM_STAGE_RESTING ? portion->side_s[1] : (double)NAN;
}

static double
salt_s (const FmKitchenPortion *portion)
{
  return portion->was_salted && portion->was_on ? fm_kitchen_span (&portion->salted, &portion->on).s
                                                : (double)NAN;
}

static double
rest_s (const FmKitchenPortion *portion)
{
  return portion->stage == FM_STAGE_RESTED ? fm_kitchen_span (&portion->off, &portion->rested).s
                                           : (double)NAN;
}

static void
land_time (double *place, double minutes)
{
  if (!isnan (minutes))
    *place = minutes;
}

static void
land_times (const FmKitchenState *state, FmExperiment *experiment)
{
  land_time (&experiment->minutes_side_1, mean_minutes (state, side_1_s));
  land_time (&experiment->minutes_side_2, mean_minutes (state, side_2_s));
  land_time (&experiment->salt_minutes_before, mean_minutes (state, salt_s));
  land_time (&experiment->rest_minutes, mean_minutes (state, rest_s));
}

static int
find_reading (const GArray *readings, const FmCoreReading *wanted)
{
  for (guint i = 0; i < readings->len; i++) {
    const FmCoreReading *reading = &g_array_index (readings, FmCoreReading, i);

    if (fabs (reading->time_s - wanted->time_s) < SAME_S &&
        fabs (reading->temp_c - wanted->temp_c) < SAME_K)
      return (int)i;
  }
  return -1;
}

static gboolean
reading_of (const FmKitchenState *state, const FmKitchenEvent *event, FmCoreReading *reading)
{
  const gboolean is_reading = event->kind == FM_KITCHEN_CORE || event->kind == FM_KITCHEN_PROBE;
  const FmKitchenPortion *portion;

  if (!is_reading || event->portion < 0 || (guint)event->portion >= state->n_portions)
    return FALSE;
  portion = &state->portions[event->portion];
  if (!portion->was_on || fm_kitchen_span (&event->at, &portion->on).s > 0.0 ||
      !(event->value >= FM_MIN_CORE_C && event->value <= FM_MAX_CORE_C))
    return FALSE;
  reading->time_s = fm_kitchen_span (&portion->on, &event->at).s;
  reading->temp_c = event->value;
  return reading->time_s <= FM_MAX_READING_S;
}

static void
land_readings (const GPtrArray *events,
               const gboolean *taken_back,
               const FmKitchenState *state,
               FmExperiment *experiment)
{
  double last_probe_s[FM_KITCHEN_MAX_PORTIONS];

  for (guint i = 0; i < FM_KITCHEN_MAX_PORTIONS; i++)
    last_probe_s[i] = -INFINITY;
  for (guint i = 0; i < events->len; i++) {
    const FmKitchenEvent *event = g_ptr_array_index (events, i);
    FmCoreReading reading;
    int found;

    if (!reading_of (state, event, &reading))
      continue;
    found = find_reading (experiment->core_readings, &reading);
    if (taken_back[i]) {
      if (found >= 0)
        g_array_remove_index (experiment->core_readings, (guint)found);
      continue;
    }
    if (event->kind == FM_KITCHEN_PROBE) {
      if (reading.time_s < last_probe_s[event->portion] + FM_KITCHEN_PROBE_EVERY_S)
        continue;
      last_probe_s[event->portion] = reading.time_s;
    }
    if (found < 0)
      g_array_append_val (experiment->core_readings, reading);
  }
  g_array_sort (experiment->core_readings, fm_core_reading_compare);
}

static void
land_remark (const FmKitchenEvent *event, FmExperiment *experiment)
{
  char *notes;

  if (event->words == NULL ||
      (experiment->notes != NULL && strstr (experiment->notes, event->words) != NULL))
    return;
  notes = experiment->notes != NULL ? g_strconcat (experiment->notes, "\n", event->words, NULL)
                                    : g_strdup (event->words);
  g_free (experiment->notes);
  experiment->notes = notes;
}

static void
land_one (const FmKitchenEvent *event, FmExperiment *experiment)
{
  if (event->kind == FM_KITCHEN_WEIGHED)
    land_weighing (event, experiment);
  else if (event->kind == FM_KITCHEN_REMARK)
    land_remark (event, experiment);
}

gboolean
fm_kitchen_land (const GPtrArray *events, FmExperiment *experiment)
{
  g_autoptr (FmExperiment) before = fm_experiment_copy (experiment);
  g_autoptr (FmKitchenState) state =
      fm_kitchen_state_new (events, fm_kitchen_n_portions (experiment));
  g_autofree gboolean *taken_back = fm_kitchen_taken_back (events);

  land_masses (state, experiment);
  land_times (state, experiment);
  land_readings (events, taken_back, state, experiment);
  for (guint i = 0; i < events->len; i++)
    if (!taken_back[i])
      land_one (g_ptr_array_index (events, i), experiment);
  return !fm_experiment_equal (before, experiment);
}
