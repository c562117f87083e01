/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-date-entry.c - an entry for local date and time, with a calendar */
#include "app/widgets/fm-date-entry.h"

#include <glib/gi18n-lib.h>
#include <stdio.h>

#include "app/widgets/fm-widget.h"

struct _FmDateEntry {
  GtkWidget parent_instance;

  GtkWidget *box;
  GtkEntry *entry;
  GtkMenuButton *calendar_button;
  GtkCalendar *calendar;
  GtkLabel *message_label;

  gint64 made_at;
  gboolean loading;
};

G_DEFINE_FINAL_TYPE (FmDateEntry, fm_date_entry, GTK_TYPE_WIDGET)

enum {
  DATE_CHANGED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

/* "2026-03-12 14:30"; the time may be left out. NULL when it is no date. */
static GDateTime *
parse_date (const char *text)
{
  int year;
  int month;
  int day;
  int hour = 0;
  int minute = 0;
  int length = 0;

  if (sscanf (text, " %4d-%2d-%2d %n", &year, &month, &day, &length) < 3 || length == 0)
    return NULL;
  text += length;
  if (text[0] != '\0') {
    length = 0;
    if (sscanf (text, "%2d:%2d %n", &hour, &minute, &length) < 2 || length == 0 ||
        text[length] != '\0')
      return NULL;
  }
  return g_date_time_new_local (year, month, day, hour, minute, 0);
}

static void
show_error (FmDateEntry *self, gboolean wrong)
{
  fm_widget_set_class (GTK_WIDGET (self->entry), "error", wrong);
  gtk_widget_set_visible (GTK_WIDGET (self->message_label), wrong);
  gtk_accessible_update_state (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_STATE_INVALID,
                               wrong ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE,
                               -1);
}

static void
select_day (FmDateEntry *self, GDateTime *date)
{
  self->loading = TRUE;
  gtk_calendar_select_day (self->calendar, date);
  self->loading = FALSE;
}

static void
take_date (FmDateEntry *self, GDateTime *date)
{
  const gint64 made_at = g_date_time_to_unix (date);

  show_error (self, FALSE);
  if (made_at == self->made_at)
    return;
  self->made_at = made_at;
  g_signal_emit (self, signals[DATE_CHANGED], 0, made_at);
}

static void
entry_changed_cb (FmDateEntry *self)
{
  g_autoptr (GDateTime) date = NULL;

  if (self->loading)
    return;
  date = parse_date (gtk_editable_get_text (GTK_EDITABLE (self->entry)));
  if (date == NULL) {
    show_error (self, TRUE);
    return;
  }
  select_day (self, date);
  take_date (self, date);
}

/* The calendar gives the day; the time of day stays. */
static void
day_selected_cb (FmDateEntry *self)
{
  g_autoptr (GDateTime) day = NULL;
  g_autoptr (GDateTime) before = NULL;
  g_autoptr (GDateTime) date = NULL;

  if (self->loading)
    return;
  day = gtk_calendar_get_date (self->calendar);
  before = g_date_time_new_from_unix_local (self->made_at);
  date = g_date_time_new_local (g_date_time_get_year (day), g_date_time_get_month (day),
                                g_date_time_get_day_of_month (day), g_date_time_get_hour (before),
                                g_date_time_get_minute (before), 0);
  if (date == NULL)
    return;
  take_date (self, date);
  fm_date_entry_set (self, self->made_at);
}

static void
fm_date_entry_dispose (GObject *object)
{
  fm_widget_drop_template (GTK_WIDGET (object), FM_TYPE_DATE_ENTRY);
  G_OBJECT_CLASS (fm_date_entry_parent_class)->dispose (object);
}

static void
fm_date_entry_class_init (FmDateEntryClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_date_entry_dispose;
  signals[DATE_CHANGED] = g_signal_new ("date-changed", FM_TYPE_DATE_ENTRY, G_SIGNAL_RUN_LAST, 0,
                                        NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_INT64);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/widgets/fm-date-entry.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmDateEntry, box);
  gtk_widget_class_bind_template_child (widget_class, FmDateEntry, entry);
  gtk_widget_class_bind_template_child (widget_class, FmDateEntry, calendar_button);
  gtk_widget_class_bind_template_child (widget_class, FmDateEntry, calendar);
  gtk_widget_class_bind_template_child (widget_class, FmDateEntry, message_label);
  gtk_widget_class_bind_template_callback (widget_class, entry_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, day_selected_cb);
}

static void
fm_date_entry_init (FmDateEntry *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
fm_date_entry_set (FmDateEntry *self, gint64 made_at)
{
  g_autoptr (GDateTime) date = g_date_time_new_from_unix_local (made_at);
  g_autofree char *text = date != NULL ? g_date_time_format (date, "%Y-%m-%d %H:%M") : NULL;

  g_return_if_fail (FM_IS_DATE_ENTRY (self));
  self->made_at = made_at;
  self->loading = TRUE;
  gtk_editable_set_text (GTK_EDITABLE (self->entry), text != NULL ? text : "");
  self->loading = FALSE;
  if (date != NULL)
    select_day (self, date);
  show_error (self, date == NULL);
}

void
fm_date_entry_set_what (FmDateEntry *self, const char *date_name, const char *day_name)
{
  g_return_if_fail (FM_IS_DATE_ENTRY (self));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  date_name, -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->calendar), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  day_name, -1);
}
