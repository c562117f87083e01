/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-kitchen-state.c - how each portion stands and which timers run, from the events alone */
#include "core/kitchen/fm-kitchen-state.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Common practice, no source. */
#define SALT_S (30.0 * 60.0)
#define SIDE_S (3.0 * 60.0)
#define REST_S (2.0 * 60.0)
/* Who can be laid on counts as having this long left. Our choice, no source. */
#define LAY_ON_S 30.0

gboolean
fm_kitchen_is_on_heat (const FmKitchenPortion *portion)
{
  return portion->stage == FM_STAGE_SIDE_1 || portion->stage == FM_STAGE_SIDE_2;
}

static void
salt (FmKitchenPortion *portion, const FmKitchenEvent *event)
{
  if (portion->stage != FM_STAGE_WAITING)
    return;
  portion->stage = FM_STAGE_SALTED;
  portion->was_salted = TRUE;
  portion->salted = event->at;
}

static void
salt_all (FmKitchenState *self, const FmKitchenEvent *event)
{
  for (guint i = 0; i < self->n_portions; i++)
    salt (&self->portions[i], event);
}

static void
lay_on (FmKitchenPortion *portion, const FmKitchenEvent *event)
{
  if (portion->stage > FM_STAGE_SALTED)
    return;
  portion->stage = FM_STAGE_SIDE_1;
  portion->position = CLAMP ((int)event->value, 0, FM_KITCHEN_MAX_POSITIONS - 1);
  portion->was_on = TRUE;
  portion->on = event->at;
  portion->side = event->at;
}

/* The side on the heat has had its stretch. */
static void
close_side (FmKitchenPortion *portion, const FmKitchenEvent *event)
{
  portion->side_s[portion->stage == FM_STAGE_SIDE_2] +=
      fm_kitchen_span (&portion->side, &event->at).s;
  portion->side = event->at;
}

static void
turn (FmKitchenPortion *portion, const FmKitchenEvent *event)
{
  const double turn_s = fm_kitchen_span (&portion->on, &event->at).s;

  if (!fm_kitchen_is_on_heat (portion))
    return;
  close_side (portion, event);
  portion->stage = portion->stage == FM_STAGE_SIDE_1 ? FM_STAGE_SIDE_2 : FM_STAGE_SIDE_1;
  g_array_append_val (portion->turns_s, turn_s);
}

static void
take_off (FmKitchenPortion *portion, const FmKitchenEvent *event)
{
  if (!fm_kitchen_is_on_heat (portion))
    return;
  close_side (portion, event);
  portion->stage = FM_STAGE_RESTING;
  portion->position = -1;
  portion->off = event->at;
}

static void
end_rest (FmKitchenPortion *portion, const FmKitchenEvent *event)
{
  if (portion->stage != FM_STAGE_RESTING)
    return;
  portion->stage = FM_STAGE_RESTED;
  portion->rested = event->at;
}

static void
happen_to (FmKitchenPortion *portion, const FmKitchenEvent *event)
{
  switch (event->kind) {
  case FM_KITCHEN_SALTED:
    salt (portion, event);
    break;
  case FM_KITCHEN_ON:
    lay_on (portion, event);
    break;
  case FM_KITCHEN_TURNED:
    turn (portion, event);
    break;
  case FM_KITCHEN_OFF:
    take_off (portion, event);
    break;
  case FM_KITCHEN_REST_OVER:
    end_rest (portion, event);
    break;
  case FM_KITCHEN_CORE:
  case FM_KITCHEN_PROBE:
    portion->core_c = event->value;
    portion->core_at = event->at;
    break;
  case FM_KITCHEN_RAW:
    portion->raw_g = event->value;
    break;
  case FM_KITCHEN_COOKED:
    portion->cooked_g = event->value;
    break;
  case FM_KITCHEN_OPENED:
  case FM_KITCHEN_POSITIONS:
  case FM_KITCHEN_WEIGHED:
  case FM_KITCHEN_REMARK:
  case FM_KITCHEN_PHOTO:
  case FM_KITCHEN_TAKEN_BACK:
  case FM_KITCHEN_SLEPT:
  case FM_KITCHEN_CLOCK_SET:
  case FM_KITCHEN_STARTED_ANEW:
  case FM_N_KITCHEN_KINDS:
    break;
  }
}

/* Who lies on a position, else who comes there next, in order. */
static void
fill_pan (FmKitchenState *self)
{
  guint next = 0;

  for (guint i = 0; i < FM_KITCHEN_MAX_POSITIONS; i++)
    self->pan[i] = -1;
  for (guint i = 0; i < self->n_portions; i++)
    if (fm_kitchen_is_on_heat (&self->portions[i]))
      self->pan[self->portions[i].position] = (int)i;
  for (guint i = 0; i < self->n_positions; i++) {
    if (self->pan[i] >= 0)
      continue;
    while (next < self->n_portions && self->portions[next].stage > FM_STAGE_SALTED)
      next++;
    if (next < self->n_portions)
      self->pan[i] = (int)next++;
  }
}

static void
apply (FmKitchenState *self, const FmKitchenEvent *event)
{
  if (event->kind == FM_KITCHEN_POSITIONS)
    self->n_positions = (guint)CLAMP (event->value, 1.0, FM_KITCHEN_MAX_POSITIONS);
  else if (event->kind == FM_KITCHEN_SALTED && event->portion < 0)
    salt_all (self, event);
  else if (event->portion >= 0 && (guint)event->portion < self->n_portions)
    happen_to (&self->portions[event->portion], event);
}

FmKitchenState *
fm_kitchen_state_new (const GPtrArray *events, guint n_portions)
{
  FmKitchenState *self = g_new0 (FmKitchenState, 1);
  g_autofree gboolean *taken_back = fm_kitchen_taken_back (events);

  self->n_portions = MIN (n_portions, FM_KITCHEN_MAX_PORTIONS);
  self->n_positions = CLAMP (self->n_portions, 1, FM_KITCHEN_MAX_POSITIONS);
  for (guint i = 0; i < self->n_portions; i++) {
    FmKitchenPortion *portion = &self->portions[i];

    portion->position = -1;
    portion->core_c = portion->raw_g = portion->cooked_g = NAN;
    portion->turns_s = g_array_new (FALSE, FALSE, sizeof (double));
  }
  for (guint i = 0; i < events->len; i++) {
    if (!taken_back[i])
      apply (self, g_ptr_array_index (events, i));
  }
  fill_pan (self);
  return self;
}

void
fm_kitchen_state_free (FmKitchenState *self)
{
  if (self == NULL)
    return;
  for (guint i = 0; i < self->n_portions; i++)
    g_array_unref (self->portions[i].turns_s);
  g_free (self);
}

int
fm_kitchen_next_portion (const FmKitchenState *self)
{
  for (guint i = 0; i < self->n_portions; i++)
    if (!self->portions[i].was_on)
      return (int)i;
  return -1;
}

int
fm_kitchen_position_of (const FmKitchenState *self, int portion)
{
  for (int i = 0; i < FM_KITCHEN_MAX_POSITIONS; i++)
    if (self->pan[i] == portion)
      return i;
  return 0;
}

void
fm_kitchen_plan_init (FmKitchenPlan *self, const FmProcess *process)
{
  const struct {
    FmProcessField field;
    double usual_s;
  } timers[FM_N_KITCHEN_TIMERS] = {
    [FM_KITCHEN_TIMER_SALT] = { FM_PROCESS_SALT_MINUTES, SALT_S },
    [FM_KITCHEN_TIMER_SIDE_1] = { FM_PROCESS_SIDE_1, SIDE_S },
    [FM_KITCHEN_TIMER_SIDE_2] = { FM_PROCESS_SIDE_2, SIDE_S },
    [FM_KITCHEN_TIMER_REST] = { FM_PROCESS_REST, REST_S },
  };

  for (guint i = 0; i < FM_N_KITCHEN_TIMERS; i++) {
    const double minutes = process != NULL ? process->numbers[timers[i].field] : (double)NAN;

    self->is_common_practice[i] = isnan (minutes);
    self->planned_s[i] = isnan (minutes) ? timers[i].usual_s : minutes * 60.0;
  }
}

const char *
fm_kitchen_timer_name (FmKitchenTimerKind kind)
{
  switch (kind) {
  case FM_KITCHEN_TIMER_SALT:
    return _ ("Salted");
  case FM_KITCHEN_TIMER_SIDE_1:
    return _ ("First side");
  case FM_KITCHEN_TIMER_SIDE_2:
    return _ ("Second side");
  case FM_KITCHEN_TIMER_REST:
    return _ ("Rest");
  case FM_N_KITCHEN_TIMERS:
    break;
  }
  g_return_val_if_reached (NULL);
}

static gboolean
start_timer (FmKitchenTimer *timer,
             FmKitchenTimerKind kind,
             const FmKitchenMoment *from,
             const FmKitchenMoment *now)
{
  timer->kind = kind;
  timer->elapsed = fm_kitchen_span (from, now);
  return TRUE;
}

static gboolean
find_timer (const FmKitchenPortion *portion, const FmKitchenMoment *now, FmKitchenTimer *timer)
{
  switch (portion->stage) {
  case FM_STAGE_SALTED:
    return start_timer (timer, FM_KITCHEN_TIMER_SALT, &portion->salted, now);
  case FM_STAGE_SIDE_1:
    return start_timer (timer, FM_KITCHEN_TIMER_SIDE_1, &portion->side, now);
  case FM_STAGE_SIDE_2:
    return start_timer (timer, FM_KITCHEN_TIMER_SIDE_2, &portion->side, now);
  case FM_STAGE_RESTING:
    return start_timer (timer, FM_KITCHEN_TIMER_REST, &portion->off, now);
  case FM_STAGE_WAITING:
  case FM_STAGE_RESTED:
    return FALSE;
  }
  g_return_val_if_reached (FALSE);
}

gboolean
fm_kitchen_timer (const FmKitchenState *self,
                  const FmKitchenPlan *plan,
                  int portion,
                  const FmKitchenMoment *now,
                  FmKitchenTimer *timer)
{
  if (portion < 0 || (guint)portion >= self->n_portions ||
      !find_timer (&self->portions[portion], now, timer))
    return FALSE;
  timer->portion = portion;
  timer->planned_s = plan->planned_s[timer->kind];
  timer->is_common_practice = plan->is_common_practice[timer->kind];
  return TRUE;
}

gboolean
fm_kitchen_next_act (const FmKitchenState *self,
                     const FmKitchenPlan *plan,
                     int portion,
                     FmKitchenKind *kind)
{
  if (portion < 0 || (guint)portion >= self->n_portions)
    return FALSE;
  switch (self->portions[portion].stage) {
  case FM_STAGE_WAITING:
    *kind = plan->is_common_practice[FM_KITCHEN_TIMER_SALT] ? FM_KITCHEN_ON : FM_KITCHEN_SALTED;
    return TRUE;
  case FM_STAGE_SALTED:
    *kind = FM_KITCHEN_ON;
    return TRUE;
  case FM_STAGE_SIDE_1:
    *kind = self->portions[portion].turns_s->len > 0 ? FM_KITCHEN_OFF : FM_KITCHEN_TURNED;
    return TRUE;
  case FM_STAGE_SIDE_2:
    *kind = FM_KITCHEN_OFF;
    return TRUE;
  case FM_STAGE_RESTING:
    *kind = FM_KITCHEN_REST_OVER;
    return TRUE;
  case FM_STAGE_RESTED:
    return FALSE;
  }
  g_return_val_if_reached (FALSE);
}

static gboolean
has_place (const FmKitchenState *self, int portion)
{
  for (guint i = 0; i < self->n_positions; i++)
    if (self->pan[i] == portion)
      return TRUE;
  return FALSE;
}

gboolean
fm_kitchen_can (const FmKitchenState *self, int portion, FmKitchenKind kind)
{
  const FmKitchenPortion *one =
      portion >= 0 && (guint)portion < self->n_portions ? &self->portions[portion] : NULL;

  if (one == NULL)
    return FALSE;
  if (kind == FM_KITCHEN_SALTED)
    return one->stage == FM_STAGE_WAITING;
  if (kind == FM_KITCHEN_ON)
    return one->stage <= FM_STAGE_SALTED && has_place (self, portion);
  if (kind == FM_KITCHEN_TURNED || kind == FM_KITCHEN_OFF)
    return fm_kitchen_is_on_heat (one);
  if (kind == FM_KITCHEN_REST_OVER)
    return one->stage == FM_STAGE_RESTING;
  if (kind == FM_KITCHEN_CORE || kind == FM_KITCHEN_PROBE)
    return one->was_on;
  return kind != FM_KITCHEN_COOKED || one->stage >= FM_STAGE_RESTING;
}

/* Seconds until @portion wants something; infinite when it never does. */
static double
left_s (const FmKitchenState *self,
        const FmKitchenPlan *plan,
        int portion,
        const FmKitchenMoment *now)
{
  FmKitchenTimer timer;
  const gboolean runs = fm_kitchen_timer (self, plan, portion, now, &timer);
  const double left = runs ? timer.planned_s - timer.elapsed.s : (double)INFINITY;

  if (self->portions[portion].stage > FM_STAGE_SALTED)
    return left;
  if (!has_place (self, portion))
    return INFINITY;
  return runs ? fmax (left, LAY_ON_S) : LAY_ON_S;
}

int
fm_kitchen_due (const FmKitchenState *self, const FmKitchenPlan *plan, const FmKitchenMoment *now)
{
  double soonest_s = INFINITY;
  int due = -1;

  for (int i = 0; i < (int)self->n_portions; i++) {
    const double one_s = left_s (self, plan, i, now);

    if (one_s < soonest_s) {
      soonest_s = one_s;
      due = i;
    }
  }
  return due;
}
