/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-sessions-window.c - spreads the samples of a plan over several sessions */
#include "app/tastings/fm-tasting-sessions-window.h"

#include <glib/gi18n-lib.h>

#include "app/session/fm-clock.h"
#include "app/widgets/fm-number-entry.h"
#include "core/tasting/fm-tasting-sessions.h"

struct _FmTastingSessionsWindow {
  AdwWindow parent_instance;

  FmNumberEntry *size_entry;
  GtkBox *samples_box;
  GtkLabel *outcome_label;
  GtkWidget *plan_button;

  FmTasting *plan;
};

G_DEFINE_FINAL_TYPE (FmTastingSessionsWindow, fm_tasting_sessions_window, ADW_TYPE_WINDOW)

enum { PLANNED, N_SIGNALS };
static guint signals[N_SIGNALS];

/* By sample, whether it is ticked. */
static gboolean *
read_common (FmTastingSessionsWindow *self)
{
  gboolean *is_common = g_new0 (gboolean, self->plan->samples->len);
  GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (self->samples_box));

  for (guint i = 0; child != NULL; i++, child = gtk_widget_get_next_sibling (child))
    is_common[i] = gtk_check_button_get_active (GTK_CHECK_BUTTON (child));
  return is_common;
}

static GPtrArray *
make_sessions (FmTastingSessionsWindow *self, GError **error)
{
  g_autofree gboolean *is_common = read_common (self);
  const guint per_session = (guint)fm_number_entry_get_value (self->size_entry);

  return fm_tasting_sessions (self->plan, is_common, per_session, fm_clock_now_s (), error);
}

/* "3 sessions of 5, 4 and 4 samples" */
static char *
outcome_text (const GPtrArray *sessions)
{
  g_autoptr (GString) sizes = g_string_new (NULL);

  for (guint i = 0; i < sessions->len; i++)
    g_string_append_printf (sizes, "%s%u", i == 0 ? "" : ", ",
                            ((const FmTasting *)sessions->pdata[i])->samples->len);
  return g_strdup_printf (
      /* TRANSLATORS: how many sessions, and how many samples each has: "5, 4, 4" */
      ngettext ("%u session with %s samples", "%u sessions with %s samples", sessions->len),
      sessions->len, sizes->str);
}

static void
refresh (FmTastingSessionsWindow *self)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) sessions = NULL;
  g_autofree char *text = NULL;

  if (self->plan == NULL)
    return;
  sessions = make_sessions (self, &error);
  text = sessions != NULL ? outcome_text (sessions) : g_strdup (error->message);
  gtk_label_set_text (self->outcome_label, text);
  gtk_widget_set_sensitive (self->plan_button, sessions != NULL);
}

static void
plan_clicked_cb (FmTastingSessionsWindow *self)
{
  g_autoptr (GPtrArray) sessions = make_sessions (self, NULL);

  if (sessions == NULL)
    return;
  g_signal_emit (self, signals[PLANNED], 0, sessions);
  gtk_window_close (GTK_WINDOW (self));
}

static void
list_samples (FmTastingSessionsWindow *self)
{
  for (guint i = 0; i < self->plan->samples->len; i++) {
    const FmTastingSample *sample = self->plan->samples->pdata[i];
    GtkWidget *button = gtk_check_button_new_with_label (sample->name);

    gtk_check_button_set_active (GTK_CHECK_BUTTON (button), i == 0);
    g_signal_connect_object (button, "toggled", G_CALLBACK (refresh), self, G_CONNECT_SWAPPED);
    gtk_box_append (self->samples_box, button);
  }
}

static void
fm_tasting_sessions_window_dispose (GObject *object)
{
  FmTastingSessionsWindow *self = FM_TASTING_SESSIONS_WINDOW (object);

  g_clear_pointer (&self->plan, fm_tasting_free);
  gtk_widget_dispose_template (GTK_WIDGET (object), FM_TYPE_TASTING_SESSIONS_WINDOW);
  G_OBJECT_CLASS (fm_tasting_sessions_window_parent_class)->dispose (object);
}

static void
fm_tasting_sessions_window_class_init (FmTastingSessionsWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_tasting_sessions_window_dispose;
  signals[PLANNED] = g_signal_new ("planned", FM_TYPE_TASTING_SESSIONS_WINDOW, G_SIGNAL_RUN_LAST, 0,
                                   NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_PTR_ARRAY);
  g_type_ensure (FM_TYPE_NUMBER_ENTRY);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/tastings/fm-tasting-sessions-window.ui");
  gtk_widget_class_bind_template_child (widget_class, FmTastingSessionsWindow, size_entry);
  gtk_widget_class_bind_template_child (widget_class, FmTastingSessionsWindow, samples_box);
  gtk_widget_class_bind_template_child (widget_class, FmTastingSessionsWindow, outcome_label);
  gtk_widget_class_bind_template_child (widget_class, FmTastingSessionsWindow, plan_button);
  gtk_widget_class_bind_template_callback (widget_class, refresh);
  gtk_widget_class_bind_template_callback (widget_class, plan_clicked_cb);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
fm_tasting_sessions_window_init (FmTastingSessionsWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

FmTastingSessionsWindow *
fm_tasting_sessions_window_new (GtkWidget *parent, const FmTasting *plan)
{
  FmTastingSessionsWindow *self = g_object_new (FM_TYPE_TASTING_SESSIONS_WINDOW, "transient-for",
                                                gtk_widget_get_root (parent), NULL);

  self->plan = fm_tasting_copy (plan);
  fm_number_entry_set_value (self->size_entry, (plan->samples->len + 2) / 2);
  list_samples (self);
  refresh (self);
  return self;
}
