/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-kitchen-log.c - the log of a cook is written as it happens and never changed */
#include <math.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include "log-fixture.h"
#include "store/fm-kitchen-log.h"
#include "store/notebook/fm-db.h"

#define ADD(name, func)                                                                            \
  g_test_add ("/kitchen-log/" name, Fixture, NULL, fixture_set_up, func, fixture_tear_down)

static FmKitchenEvent *
make_event (guint number, FmKitchenKind kind, double value, const char *words)
{
  const FmKitchenMoment at = { 1700000000000000 + number, 5000 + number, 6000 + number, "boot" };

  return fm_kitchen_event_new (number, &at, kind, (int)number - 1, value, words);
}

static void
test_round_trip (Fixture *fixture, gconstpointer data)
{
  const gint64 id = fixture_add_experiment (fixture, "Cook", NULL);
  g_autoptr (FmKitchenEvent) first = make_event (0, FM_KITCHEN_ON, 2.0, NULL);
  g_autoptr (FmKitchenEvent) second = make_event (1, FM_KITCHEN_REMARK, NAN, "Ölig");
  g_autoptr (GPtrArray) events = NULL;
  g_autoptr (GError) error = NULL;
  const FmKitchenEvent *event;

  g_assert_true (fm_kitchen_log_add (fixture->notebook, id, first, &error));
  g_assert_true (fm_kitchen_log_add (fixture->notebook, id, second, &error));
  /* Tried again after a failure that was none. */
  g_assert_true (fm_kitchen_log_add (fixture->notebook, id, second, &error));
  fixture_reopen (fixture);
  events = fm_kitchen_log_load (fixture->notebook, id, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (events->len, ==, 2);
  event = g_ptr_array_index (events, 1);
  g_assert_cmpint (event->kind, ==, FM_KITCHEN_REMARK);
  g_assert_cmpstr (event->words, ==, "Ölig");
  g_assert_true (isnan (event->value));
  g_assert_cmpint (event->portion, ==, 0);
  g_assert_cmpint (event->at.wall_us, ==, second->at.wall_us);
  g_assert_cmpint (event->at.monotonic_us, ==, second->at.monotonic_us);
  g_assert_cmpint (event->at.boot_us, ==, second->at.boot_us);
  g_assert_cmpstr (event->at.boot_id, ==, "boot");
}

static void
test_nothing_is_changed (Fixture *fixture, gconstpointer data)
{
  const gint64 id = fixture_add_experiment (fixture, "Cook", NULL);
  g_autoptr (FmKitchenEvent) event = make_event (0, FM_KITCHEN_ON, 0.0, NULL);
  g_autoptr (GError) error = NULL;
  FmDb *db;

  g_assert_true (fm_kitchen_log_add (fixture->notebook, id, event, NULL));
  db = fm_notebook_begin (fixture->notebook, NULL);
  g_assert_false (fm_db_exec (db, "UPDATE kitchen_events SET value = 1", &error));
  g_assert_nonnull (error);
  fm_notebook_end (fixture->notebook, FALSE, NULL);
}

/* The log goes with its experiment; one of an experiment that there is not is refused. */
static void
test_goes_with_the_experiment (Fixture *fixture, gconstpointer data)
{
  const gint64 id = fixture_add_experiment (fixture, "Cook", NULL);
  g_autoptr (FmKitchenEvent) event = make_event (0, FM_KITCHEN_ON, 0.0, NULL);
  g_autoptr (GPtrArray) events = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_true (fm_kitchen_log_add (fixture->notebook, id, event, NULL));
  g_assert_true (fm_experiments_remove (fixture->notebook, id, NULL));
  events = fm_kitchen_log_load (fixture->notebook, id, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (events->len, ==, 0);
  g_assert_false (fm_kitchen_log_add (fixture->notebook, id, event, &error));
  g_assert_nonnull (error);
}

/* Each event that was told to be written is there after a kill. */
static void
test_a_kill_loses_nothing (Fixture *fixture, gconstpointer data)
{
  const gint64 id = fixture_add_experiment (fixture, "Cook", NULL);
  g_autoptr (GPtrArray) events = NULL;
  g_autoptr (GError) error = NULL;
  guint8 n_told = 0;
  int pipes[2];
  pid_t child;

  g_clear_pointer (&fixture->notebook, fm_notebook_unref);
  g_assert_cmpint (pipe (pipes), ==, 0);
  child = fork ();
  if (child == 0) {
    g_autoptr (FmNotebook) notebook = fm_notebook_open (fixture->path, NULL, NULL);

    for (guint8 i = 0; i < 200; i++) {
      g_autoptr (FmKitchenEvent) event = make_event (i, FM_KITCHEN_PROBE, i, NULL);

      if (!fm_kitchen_log_add (notebook, id, event, NULL) || write (pipes[1], &i, 1) != 1)
        _exit (1);
    }
    pause ();
    _exit (0);
  }
  while (n_told < 20)
    g_assert_cmpint (read (pipes[0], &n_told, 1), ==, 1);
  kill (child, SIGKILL);
  waitpid (child, NULL, 0);
  close (pipes[1]);
  while (read (pipes[0], &n_told, 1) == 1)
    ;
  close (pipes[0]);
  fixture->notebook = fm_notebook_open (fixture->path, NULL, &error);
  g_assert_no_error (error);
  events = fm_kitchen_log_load (fixture->notebook, id, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (events->len, >=, n_told + 1u);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("round-trip", test_round_trip);
  ADD ("nothing-is-changed", test_nothing_is_changed);
  ADD ("goes-with-the-experiment", test_goes_with_the_experiment);
  ADD ("a-kill-loses-nothing", test_a_kill_loses_nothing);
  return g_test_run ();
}
