/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-kitchen-text.c - the sentences of the cook screen */
#include "app/kitchen/fm-kitchen-text.h"

#include <glib/gi18n-lib.h>

#include "app/kitchen/fm-kitchen-clock.h"

char *
fm_kitchen_act_text (FmKitchenKind kind, int portion)
{
  const int number = portion + 1;

  if (kind == FM_KITCHEN_SALTED)
    return g_strdup_printf (_ ("Space: portion %d salted"), number);
  if (kind == FM_KITCHEN_ON)
    return g_strdup_printf (_ ("Space: portion %d on the heat"), number);
  if (kind == FM_KITCHEN_TURNED)
    return g_strdup_printf (_ ("Space: turned portion %d"), number);
  if (kind == FM_KITCHEN_OFF)
    return g_strdup_printf (_ ("Space: portion %d off the heat"), number);
  return g_strdup_printf (_ ("Space: end of the rest of portion %d"), number);
}

char *
fm_kitchen_next_text (const FmKitchenState *state, const FmExperiment *experiment, int unweighed)
{
  const int next = fm_kitchen_next_portion (state);
  g_autofree char *portion = next >= 0 ? g_strdup_printf (_ ("Next on the heat: portion %d of %u"),
                                                          next + 1, state->n_portions)
                                       : g_strdup (_ ("Every portion has met the heat"));

  if (unweighed < 0)
    return g_steal_pointer (&portion);
  return g_strdup_printf (_ ("%s · to weigh: %s"), portion,
                          g_array_index (experiment->weighings, FmWeighing, (guint)unweighed).name);
}

char *
fm_kitchen_timers_text (const FmKitchenState *state,
                        const FmKitchenPlan *plan,
                        const FmKitchenMoment *now)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (int i = 0; i < (int)state->n_portions; i++) {
    g_autofree char *elapsed = NULL;
    g_autofree char *planned = NULL;
    FmKitchenTimer timer;

    if (!fm_kitchen_timer (state, plan, i, now, &timer))
      continue;
    elapsed = fm_kitchen_clock_text (timer.elapsed.s);
    planned = fm_kitchen_clock_text (timer.planned_s);
    g_string_append (text, text->len > 0 ? " · " : "");
    /* TRANSLATORS: number of the portion, name of the timer, time and planned time */
    g_string_append_printf (text, _ ("%d: %s %s of %s"), i + 1, fm_kitchen_timer_name (timer.kind),
                            elapsed, planned);
  }
  return g_string_free (g_steal_pointer (&text), FALSE);
}

static char *
event_line (const FmKitchenEvent *event, gboolean taken_back)
{
  g_autoptr (GDateTime) when = g_date_time_new_from_unix_local (event->at.wall_us / G_USEC_PER_SEC);
  g_autofree char *clock = when != NULL ? g_date_time_format (when, "%H:%M:%S") : g_strdup ("?");
  g_autofree char *text = fm_kitchen_event_text (event);

  return taken_back ? g_strdup_printf (_ ("%s  %s (taken back)"), clock, text)
                    : g_strdup_printf ("%s  %s", clock, text);
}

char *
fm_kitchen_log_text (const GPtrArray *events, guint n_told)
{
  g_autofree gboolean *taken_back = fm_kitchen_taken_back (events);
  g_autoptr (GString) text = g_string_new (NULL);
  guint n = 0;

  for (guint i = events->len; i-- > 0 && n < n_told;) {
    const FmKitchenEvent *event = g_ptr_array_index (events, i);
    g_autofree char *line = event_line (event, taken_back[i]);

    if (event->kind == FM_KITCHEN_PROBE)
      continue;
    g_string_append_printf (text, "%s%s", n > 0 ? "\n" : "", line);
    n++;
  }
  return g_string_free (g_steal_pointer (&text), FALSE);
}
