/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-kitchen-event.c - what happened at the pan, one event after another */
#include "core/kitchen/fm-kitchen-event.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "core/base/fm-number.h"

/* Less than this is the clock's own adjustment, or the time between two readings of clocks. */
#define NOTED_S 2.0

FmKitchenEvent *
fm_kitchen_event_new (guint number,
                      const FmKitchenMoment *at,
                      FmKitchenKind kind,
                      int portion,
                      double value,
                      const char *words)
{
  FmKitchenEvent *self = g_new0 (FmKitchenEvent, 1);

  self->number = number;
  self->at = *at;
  self->kind = kind;
  self->portion = portion;
  self->value = value;
  self->words = g_strdup (words);
  return self;
}

FmKitchenEvent *
fm_kitchen_event_copy (const FmKitchenEvent *self)
{
  return fm_kitchen_event_new (self->number, &self->at, self->kind, self->portion, self->value,
                               self->words);
}

void
fm_kitchen_event_free (FmKitchenEvent *self)
{
  if (self == NULL)
    return;
  g_free (self->words);
  g_free (self);
}

GPtrArray *
fm_kitchen_events_new (void)
{
  return g_ptr_array_new_with_free_func ((GDestroyNotify)fm_kitchen_event_free);
}

static double
seconds (gint64 from_us, gint64 to_us)
{
  return (double)(to_us - from_us) / G_USEC_PER_SEC;
}

FmKitchenSpan
fm_kitchen_span (const FmKitchenMoment *from, const FmKitchenMoment *to)
{
  const double wall_s = seconds (from->wall_us, to->wall_us);
  FmKitchenSpan span = { fmax (wall_s, 0.0), TRUE, (double)NAN, (double)NAN };

  if (from->boot_id[0] == '\0' || strcmp (from->boot_id, to->boot_id) != 0)
    return span;
  span.by_wall = FALSE;
  span.s = fmax (seconds (from->boot_us, to->boot_us), 0.0);
  span.asleep_s = span.s - seconds (from->monotonic_us, to->monotonic_us);
  span.clock_change_s = wall_s - span.s;
  return span;
}

gboolean
fm_kitchen_gap (const FmKitchenMoment *from,
                const FmKitchenMoment *to,
                FmKitchenKind *kind,
                double *value)
{
  const FmKitchenSpan span = fm_kitchen_span (from, to);

  if (span.by_wall) {
    *kind = FM_KITCHEN_STARTED_ANEW;
    *value = (double)NAN;
    return TRUE;
  }
  *kind = fabs (span.clock_change_s) > span.asleep_s ? FM_KITCHEN_CLOCK_SET : FM_KITCHEN_SLEPT;
  *value = *kind == FM_KITCHEN_CLOCK_SET ? span.clock_change_s : span.asleep_s;
  return fabs (*value) >= NOTED_S;
}

static char *
clock_text (double s)
{
  const gint64 whole = (gint64)llround (fabs (s));

  return g_strdup_printf ("%" G_GINT64_FORMAT ":%02d", whole / 60, (int)(whole % 60));
}

static char *
number_text (const FmKitchenEvent *event)
{
  const gboolean is_core = event->kind == FM_KITCHEN_CORE || event->kind == FM_KITCHEN_PROBE;

  return fm_number_format_unit (event->value, 1, is_core ? "°C" : "g");
}

static char *
machine_text (const FmKitchenEvent *event)
{
  g_autofree char *time = clock_text (event->value);

  if (event->kind == FM_KITCHEN_STARTED_ANEW)
    return g_strdup (_ ("The machine was started anew: times across this are by the wall clock"));
  if (event->kind == FM_KITCHEN_SLEPT)
    return g_strdup_printf (_ ("The machine slept for %s; the timers went on"), time);
  return g_strdup_printf (event->value > 0.0
                              ? _ ("The clock was set forward by %s; the timers did not follow")
                              : _ ("The clock was set back by %s; the timers did not follow"),
                          time);
}

char *
fm_kitchen_event_text (const FmKitchenEvent *event)
{
  const int portion = event->portion + 1;
  g_autofree char *number = number_text (event);

  switch (event->kind) {
  case FM_KITCHEN_OPENED:
    return g_strdup (_ ("The cook screen was opened"));
  case FM_KITCHEN_POSITIONS:
    return g_strdup_printf (_ ("Portions on the heat at once: %d"), (int)event->value);
  case FM_KITCHEN_WEIGHED:
    return g_strdup_printf (_ ("Weighed %s"), number);
  case FM_KITCHEN_SALTED:
    return portion > 0 ? g_strdup_printf (_ ("Portion %d salted"), portion)
                       : g_strdup (_ ("All waiting portions salted"));
  case FM_KITCHEN_ON:
    return g_strdup_printf (_ ("Portion %d on the heat"), portion);
  case FM_KITCHEN_TURNED:
    return g_strdup_printf (_ ("Portion %d turned"), portion);
  case FM_KITCHEN_OFF:
    return g_strdup_printf (_ ("Portion %d off the heat"), portion);
  case FM_KITCHEN_REST_OVER:
    return g_strdup_printf (_ ("Portion %d: end of the rest"), portion);
  case FM_KITCHEN_CORE:
    /* TRANSLATORS: number of the portion, temperature with its unit */
    return g_strdup_printf (_ ("Portion %d: core %s"), portion, number);
  case FM_KITCHEN_PROBE:
    return g_strdup_printf (_ ("Portion %d: probe %s"), portion, number);
  case FM_KITCHEN_RAW:
    return g_strdup_printf (_ ("Portion %d: %s raw"), portion, number);
  case FM_KITCHEN_COOKED:
    return g_strdup_printf (_ ("Portion %d: %s cooked"), portion, number);
  case FM_KITCHEN_REMARK:
    return g_strdup (event->words != NULL ? event->words : "");
  case FM_KITCHEN_PHOTO:
    return g_strdup (_ ("Photo"));
  case FM_KITCHEN_TAKEN_BACK:
    return g_strdup (_ ("Taken back"));
  case FM_KITCHEN_SLEPT:
  case FM_KITCHEN_CLOCK_SET:
  case FM_KITCHEN_STARTED_ANEW:
    return machine_text (event);
  case FM_N_KITCHEN_KINDS:
    break;
  }
  g_return_val_if_reached (NULL);
}

gboolean *
fm_kitchen_taken_back (const GPtrArray *events)
{
  gboolean *taken_back = g_new0 (gboolean, MAX (events->len, 1));

  for (guint i = 0; i < events->len; i++) {
    const FmKitchenEvent *event = g_ptr_array_index (events, i);

    if (event->kind == FM_KITCHEN_TAKEN_BACK && event->value >= 0 && event->value < i)
      taken_back[(guint)event->value] = TRUE;
  }
  return taken_back;
}

static gboolean
is_act (const FmKitchenEvent *event)
{
  return event->kind > FM_KITCHEN_POSITIONS && event->kind < FM_KITCHEN_TAKEN_BACK &&
         event->kind != FM_KITCHEN_PROBE;
}

const FmKitchenEvent *
fm_kitchen_last_act (const GPtrArray *events)
{
  g_autofree gboolean *taken_back = fm_kitchen_taken_back (events);

  for (guint i = events->len; i-- > 0;) {
    const FmKitchenEvent *event = g_ptr_array_index (events, i);

    if (is_act (event) && !taken_back[i])
      return event;
  }
  return NULL;
}
