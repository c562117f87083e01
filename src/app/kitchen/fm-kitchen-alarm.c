/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-kitchen-alarm.c - tells of the end of a timer through the desktop, once for each */
#include "app/kitchen/fm-kitchen-alarm.h"

#include <glib/gi18n-lib.h>

#include "app/kitchen/fm-kitchen-clock.h"

static void
tell (GtkWidget *widget, const FmKitchenTimer *timer)
{
  GApplication *application = g_application_get_default ();
  g_autofree char *planned = fm_kitchen_clock_text (timer->planned_s);
  /* TRANSLATORS: number of the portion, name of the timer */
  g_autofree char *title = g_strdup_printf (_ ("Portion %d: %s"), timer->portion + 1,
                                            fm_kitchen_timer_name (timer->kind));
  g_autofree char *body =
      g_strdup_printf (_ ("%s have passed. A time is no sign of doneness."), planned);
  g_autofree char *id = g_strdup_printf ("kitchen-%d", timer->portion);
  g_autoptr (GNotification) notification = g_notification_new (title);

  g_notification_set_body (notification, body);
  g_notification_set_priority (notification, G_NOTIFICATION_PRIORITY_HIGH);
  if (application != NULL)
    g_application_send_notification (application, id, notification);
  gdk_display_beep (gtk_widget_get_display (widget));
}

void
fm_kitchen_alarm_look (FmKitchenAlarm *self,
                       GtkWidget *widget,
                       const FmKitchenState *state,
                       const FmKitchenPlan *plan,
                       const FmKitchenMoment *now)
{
  for (int i = 0; i < (int)state->n_portions; i++) {
    const FmKitchenPortion *portion = &state->portions[i];
    FmKitchenTimer timer;

    if (!fm_kitchen_timer (state, plan, i, now, &timer) || timer.elapsed.s < timer.planned_s ||
        (self->told[i] == portion->stage && self->n_turns[i] == portion->turns_s->len))
      continue;
    self->told[i] = portion->stage;
    self->n_turns[i] = portion->turns_s->len;
    tell (widget, &timer);
  }
}
