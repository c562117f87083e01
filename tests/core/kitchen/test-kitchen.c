/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-kitchen.c - portions, timers and what lands in the experiment, from events alone */
#include "core/kitchen/fm-kitchen-land.h"

#include <math.h>

#define START_US (G_GINT64_CONSTANT (1700000000) * G_USEC_PER_SEC)

/* @s after the start of a machine that never slept and whose clock nobody set. */
static FmKitchenMoment
at (double s)
{
  FmKitchenMoment moment = { .boot_id = "one" };

  moment.boot_us = (gint64)(s * G_USEC_PER_SEC);
  moment.monotonic_us = moment.boot_us;
  moment.wall_us = START_US + moment.boot_us;
  return moment;
}

static void
add (GPtrArray *events, double s, FmKitchenKind kind, int portion, double value)
{
  const FmKitchenMoment moment = at (s);

  g_ptr_array_add (events, fm_kitchen_event_new (events->len, &moment, kind, portion, value, NULL));
}

static void
add_words (GPtrArray *events, double s, FmKitchenKind kind, double value, const char *words)
{
  const FmKitchenMoment moment = at (s);

  g_ptr_array_add (events, fm_kitchen_event_new (events->len, &moment, kind, -1, value, words));
}

static void
test_a_set_clock_bends_nothing (void)
{
  FmKitchenMoment from = at (100);
  FmKitchenMoment to = at (190);
  FmKitchenKind kind;
  FmKitchenSpan span;
  double value;

  to.wall_us += G_GINT64_CONSTANT (3600) * G_USEC_PER_SEC;
  span = fm_kitchen_span (&from, &to);
  g_assert_cmpfloat (span.s, ==, 90.0);
  g_assert_false (span.by_wall);
  g_assert_true (fm_kitchen_gap (&from, &to, &kind, &value));
  g_assert_cmpint (kind, ==, FM_KITCHEN_CLOCK_SET);
  g_assert_cmpfloat (value, ==, 3600.0);
  to.wall_us -= G_GINT64_CONSTANT (7200) * G_USEC_PER_SEC;
  g_assert_cmpfloat (fm_kitchen_span (&from, &to).s, ==, 90.0);
}

/* Asleep for a minute: the meat went on, and so does the timer. */
static void
test_sleep_counts_and_is_noted (void)
{
  FmKitchenMoment from = at (100);
  FmKitchenMoment to = at (190);
  FmKitchenKind kind;
  double value;

  to.monotonic_us -= 60 * G_USEC_PER_SEC;
  g_assert_cmpfloat (fm_kitchen_span (&from, &to).s, ==, 90.0);
  g_assert_true (fm_kitchen_gap (&from, &to, &kind, &value));
  g_assert_cmpint (kind, ==, FM_KITCHEN_SLEPT);
  g_assert_cmpfloat (value, ==, 60.0);
}

static void
test_a_new_start_is_by_the_wall (void)
{
  FmKitchenMoment from = at (5000);
  FmKitchenMoment to = at (20);
  FmKitchenSpan span;
  FmKitchenKind kind;
  double value;

  g_strlcpy (to.boot_id, "two", sizeof to.boot_id);
  to.wall_us = from.wall_us + 120 * G_USEC_PER_SEC;
  span = fm_kitchen_span (&from, &to);
  g_assert_true (span.by_wall);
  g_assert_cmpfloat (span.s, ==, 120.0);
  g_assert_true (fm_kitchen_gap (&from, &to, &kind, &value));
  g_assert_cmpint (kind, ==, FM_KITCHEN_STARTED_ANEW);
  to.wall_us = from.wall_us - 120 * G_USEC_PER_SEC;
  g_assert_cmpfloat (fm_kitchen_span (&from, &to).s, ==, 0.0);
}

static void
assert_timer (const GPtrArray *events, int portion, double now_s, FmKitchenTimerKind kind, double s)
{
  g_autoptr (FmKitchenState) state = fm_kitchen_state_new (events, 6);
  const FmKitchenMoment now = at (now_s);
  FmKitchenPlan plan;
  FmKitchenTimer timer;

  fm_kitchen_plan_init (&plan, NULL);
  g_assert_true (fm_kitchen_timer (state, &plan, portion, &now, &timer));
  g_assert_cmpint (timer.kind, ==, kind);
  g_assert_cmpfloat_with_epsilon (timer.elapsed.s, s, 1e-6);
  g_assert_true (timer.is_common_practice);
}

static void
test_one_portion_through (void)
{
  g_autoptr (GPtrArray) events = fm_kitchen_events_new ();
  g_autoptr (FmKitchenState) state = NULL;
  FmKitchenTimer timer;
  FmKitchenPlan plan;
  const FmKitchenMoment now = at (3000);

  fm_kitchen_plan_init (&plan, NULL);
  add (events, 0, FM_KITCHEN_SALTED, -1, NAN);
  assert_timer (events, 3, 60, FM_KITCHEN_TIMER_SALT, 60);
  add (events, 1800, FM_KITCHEN_ON, 0, 2);
  assert_timer (events, 0, 1890, FM_KITCHEN_TIMER_SIDE_1, 90);
  add (events, 1980, FM_KITCHEN_TURNED, 0, NAN);
  assert_timer (events, 0, 2000, FM_KITCHEN_TIMER_SIDE_2, 20);
  add (events, 2150, FM_KITCHEN_OFF, 0, NAN);
  assert_timer (events, 0, 2210, FM_KITCHEN_TIMER_REST, 60);
  add (events, 2300, FM_KITCHEN_REST_OVER, 0, NAN);
  state = fm_kitchen_state_new (events, 6);
  g_assert_false (fm_kitchen_timer (state, &plan, 0, &now, &timer));
  g_assert_cmpfloat (state->portions[0].side_s[0], ==, 180.0);
  g_assert_cmpfloat (state->portions[0].side_s[1], ==, 170.0);
  g_assert_cmpint (fm_kitchen_next_portion (state), ==, 1);
  g_assert_cmpint (state->pan[0], ==, 1);
}

/* A portion that is turned every half minute adds up each side by itself. */
static void
test_many_turns (void)
{
  g_autoptr (GPtrArray) events = fm_kitchen_events_new ();
  g_autoptr (FmKitchenState) state = NULL;

  add (events, 0, FM_KITCHEN_ON, 0, 0);
  for (int i = 1; i <= 5; i++)
    add (events, 30.0 * i, FM_KITCHEN_TURNED, 0, NAN);
  add (events, 170, FM_KITCHEN_OFF, 0, NAN);
  state = fm_kitchen_state_new (events, 1);
  g_assert_cmpfloat (state->portions[0].side_s[0], ==, 90.0);
  g_assert_cmpfloat (state->portions[0].side_s[1], ==, 80.0);
  g_assert_cmpuint (state->portions[0].turns_s->len, ==, 5);
}

static void
test_four_positions (void)
{
  g_autoptr (GPtrArray) events = fm_kitchen_events_new ();
  g_autoptr (FmKitchenState) state = NULL;

  add (events, 0, FM_KITCHEN_ON, 0, 0);
  add (events, 5, FM_KITCHEN_ON, 1, 1);
  add (events, 200, FM_KITCHEN_OFF, 0, NAN);
  state = fm_kitchen_state_new (events, 6);
  g_assert_cmpint (state->pan[0], ==, 2);
  g_assert_cmpint (state->pan[1], ==, 1);
  g_assert_cmpint (state->pan[2], ==, 3);
  g_assert_cmpint (state->pan[3], ==, 4);
  g_assert_true (fm_kitchen_can (state, 2, FM_KITCHEN_ON));
  g_assert_false (fm_kitchen_can (state, 5, FM_KITCHEN_ON));
  g_assert_false (fm_kitchen_can (state, 2, FM_KITCHEN_TURNED));
  g_assert_true (fm_kitchen_can (state, 0, FM_KITCHEN_COOKED));
}

static void
test_taken_back (void)
{
  g_autoptr (GPtrArray) events = fm_kitchen_events_new ();

  add (events, 0, FM_KITCHEN_ON, 0, 0);
  add (events, 60, FM_KITCHEN_TURNED, 0, NAN);
  g_assert_cmpuint (fm_kitchen_last_act (events)->number, ==, 1);
  add (events, 65, FM_KITCHEN_TAKEN_BACK, -1, 1);
  assert_timer (events, 0, 90, FM_KITCHEN_TIMER_SIDE_1, 90);
  g_assert_cmpuint (fm_kitchen_last_act (events)->number, ==, 0);
  add (events, 70, FM_KITCHEN_TAKEN_BACK, -1, 0);
  g_assert_null (fm_kitchen_last_act (events));
}

/* Two are laid on one after the other, turned in the same order, and the pan is filled again. */
static void
test_due (void)
{
  g_autoptr (GPtrArray) events = fm_kitchen_events_new ();
  const struct {
    double s;
    FmKitchenKind kind;
    int portion;
    int due; /* after it */
  } steps[] = {
    { 0, FM_KITCHEN_POSITIONS, -1, 0 }, { 1, FM_KITCHEN_ON, 0, 1 },
    { 5, FM_KITCHEN_ON, 1, 0 },         { 181, FM_KITCHEN_TURNED, 0, 1 },
    { 185, FM_KITCHEN_TURNED, 1, 0 },   { 361, FM_KITCHEN_OFF, 0, 1 },
    { 365, FM_KITCHEN_OFF, 1, 2 },      { 370, FM_KITCHEN_ON, 2, 0 },
  };
  FmKitchenPlan plan;

  fm_kitchen_plan_init (&plan, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (steps); i++) {
    const FmKitchenMoment now = at (steps[i].s);
    g_autoptr (FmKitchenState) state = NULL;

    add (events, steps[i].s, steps[i].kind, steps[i].portion,
         steps[i].kind == FM_KITCHEN_POSITIONS ? 2 : steps[i].portion % 2);
    state = fm_kitchen_state_new (events, 3);
    g_assert_cmpint (fm_kitchen_due (state, &plan, &now), ==, steps[i].due);
  }
}

/* What the version plans comes first. */
static void
test_plan (void)
{
  g_autoptr (FmProcess) process = fm_process_new ();
  g_autoptr (GPtrArray) events = fm_kitchen_events_new ();
  g_autoptr (FmKitchenState) state = fm_kitchen_state_new (events, 2);
  FmKitchenPlan plan;
  FmKitchenKind kind;

  fm_kitchen_plan_init (&plan, process);
  g_assert_cmpfloat (plan.planned_s[FM_KITCHEN_TIMER_REST], ==, 120.0);
  g_assert_true (fm_kitchen_next_act (state, &plan, 0, &kind));
  g_assert_cmpint (kind, ==, FM_KITCHEN_ON);
  process->numbers[FM_PROCESS_SALT_MINUTES] = 20.0;
  process->numbers[FM_PROCESS_SIDE_1] = 2.5;
  fm_kitchen_plan_init (&plan, process);
  g_assert_cmpfloat (plan.planned_s[FM_KITCHEN_TIMER_SIDE_1], ==, 150.0);
  g_assert_false (plan.is_common_practice[FM_KITCHEN_TIMER_SIDE_1]);
  g_assert_true (plan.is_common_practice[FM_KITCHEN_TIMER_SIDE_2]);
  g_assert_true (fm_kitchen_next_act (state, &plan, 0, &kind));
  g_assert_cmpint (kind, ==, FM_KITCHEN_SALTED);
}

static FmExperiment *
make_experiment (void)
{
  FmExperiment *self = fm_experiment_new ();
  const FmPattyMass blank = { NAN, NAN };

  fm_experiment_add_weighing (self, "line", "Chuck", 600, NAN);
  fm_experiment_add_weighing (self, NULL, "Ice", NAN, NAN);
  for (int i = 0; i < 4; i++)
    g_array_append_val (self->patties, blank);
  return self;
}

/* Sides of 180 and 160 s on average, by hand. */
static void
test_landing (void)
{
  g_autoptr (FmExperiment) experiment = make_experiment ();
  g_autoptr (GPtrArray) events = fm_kitchen_events_new ();
  const FmCoreReading *reading;

  add_words (events, 0, FM_KITCHEN_WEIGHED, 598.5, "line");
  add_words (events, 1, FM_KITCHEN_WEIGHED, 20, "Ice");
  add (events, 2, FM_KITCHEN_RAW, 1, 181);
  add (events, 100, FM_KITCHEN_ON, 0, 0);
  add (events, 110, FM_KITCHEN_ON, 1, 1);
  add (events, 270, FM_KITCHEN_TURNED, 0, NAN);
  add (events, 300, FM_KITCHEN_TURNED, 1, NAN);
  add (events, 400, FM_KITCHEN_CORE, 0, 61.5);
  add (events, 405, FM_KITCHEN_CORE, 0, 99.0);
  add (events, 406, FM_KITCHEN_TAKEN_BACK, -1, 8);
  add (events, 430, FM_KITCHEN_OFF, 0, NAN);
  add (events, 460, FM_KITCHEN_OFF, 1, NAN);
  add (events, 490, FM_KITCHEN_REST_OVER, 0, NAN);
  add (events, 500, FM_KITCHEN_COOKED, 1, 140);
  add_words (events, 501, FM_KITCHEN_REMARK, NAN, "Smoked too much");

  g_assert_true (fm_kitchen_land (events, experiment));
  g_assert_false (fm_kitchen_land (events, experiment));
  g_assert_cmpfloat (g_array_index (experiment->weighings, FmWeighing, 0).weighed_g, ==, 598.5);
  g_assert_cmpfloat (g_array_index (experiment->weighings, FmWeighing, 1).weighed_g, ==, 20.0);
  g_assert_cmpfloat (g_array_index (experiment->patties, FmPattyMass, 1).raw_g, ==, 181.0);
  g_assert_cmpfloat (g_array_index (experiment->patties, FmPattyMass, 1).cooked_g, ==, 140.0);
  g_assert_cmpfloat_with_epsilon (experiment->minutes_side_1, 3.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (experiment->minutes_side_2, 160.0 / 60.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (experiment->rest_minutes, 1.0, 1e-9);
  g_assert_true (isnan (experiment->salt_minutes_before));
  g_assert_cmpuint (experiment->core_readings->len, ==, 1);
  reading = &g_array_index (experiment->core_readings, FmCoreReading, 0);
  g_assert_cmpfloat (reading->time_s, ==, 300.0);
  g_assert_cmpfloat (reading->temp_c, ==, 61.5);
  g_assert_cmpstr (experiment->notes, ==, "Smoked too much");
  g_assert_true (fm_experiment_check (experiment, NULL));
}

/* A reading that landed goes when it is taken back; a probe's readings are thinned. */
static void
test_landing_of_readings (void)
{
  g_autoptr (FmExperiment) experiment = make_experiment ();
  g_autoptr (GPtrArray) events = fm_kitchen_events_new ();

  add (events, 0, FM_KITCHEN_CORE, 0, 5.0);
  add (events, 10, FM_KITCHEN_ON, 0, 0);
  for (int i = 0; i < 60; i++)
    add (events, 20 + i, FM_KITCHEN_PROBE, 0, 10.0 + i);
  add (events, 100, FM_KITCHEN_CORE, 0, 80.0);
  fm_kitchen_land (events, experiment);
  g_assert_cmpuint (experiment->core_readings->len, ==, 7);
  add (events, 101, FM_KITCHEN_TAKEN_BACK, -1, events->len - 1);
  g_assert_true (fm_kitchen_land (events, experiment));
  g_assert_cmpuint (experiment->core_readings->len, ==, 6);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/kitchen/a-set-clock-bends-nothing", test_a_set_clock_bends_nothing);
  g_test_add_func ("/kitchen/sleep-counts-and-is-noted", test_sleep_counts_and_is_noted);
  g_test_add_func ("/kitchen/a-new-start-is-by-the-wall", test_a_new_start_is_by_the_wall);
  g_test_add_func ("/kitchen/one-portion-through", test_one_portion_through);
  g_test_add_func ("/kitchen/many-turns", test_many_turns);
  g_test_add_func ("/kitchen/four-positions", test_four_positions);
  g_test_add_func ("/kitchen/taken-back", test_taken_back);
  g_test_add_func ("/kitchen/due", test_due);
  g_test_add_func ("/kitchen/plan", test_plan);
  g_test_add_func ("/kitchen/landing", test_landing);
  g_test_add_func ("/kitchen/landing-of-readings", test_landing_of_readings);
  return g_test_run ();
}
