/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-kitchen-window.c - the cook screen: one experiment at the pan, over the whole screen */
#include "app/kitchen/fm-kitchen-window.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/kitchen/fm-kitchen-acts.h"
#include "app/kitchen/fm-kitchen-alarm.h"
#include "app/kitchen/fm-kitchen-book.h"
#include "app/kitchen/fm-kitchen-clock.h"
#include "app/kitchen/fm-kitchen-estimate.h"
#include "app/kitchen/fm-kitchen-figures.h"
#include "app/kitchen/fm-kitchen-head.h"
#include "app/kitchen/fm-kitchen-pad.h"
#include "app/kitchen/fm-kitchen-pans.h"
#include "app/kitchen/fm-kitchen-probe-pane.h"
#include "app/kitchen/fm-kitchen-remark-pane.h"
#include "app/kitchen/fm-kitchen-text.h"
#include "app/kitchen/fm-kitchen-weigh.h"
#include "app/photos/fm-photo-grid.h"
#include "app/widgets/fm-accessible.h"
#include "app/widgets/fm-wrap-layout.h"

#define TICK_MS 250
/* Events told at the foot of the screen. */
#define N_TOLD 3

struct _FmKitchenWindow {
  AdwWindow parent_instance;

  FmKitchenHead *head;
  GtkStack *stack;
  FmKitchenPans *pans;
  GtkLabel *log_label;
  FmKitchenFigures *figures;
  GtkButton *next_button;
  GtkDropDown *positions_drop_down;
  FmKitchenWeigh *weigh;
  FmKitchenPad *pad;
  FmKitchenRemarkPane *remark;
  FmPhotoGrid *photos;
  FmKitchenProbePane *probe;

  FmSession *session;
  FmExperimentDocument *document;
  FmKitchenBook *book;
  FmKitchenEstimate *estimate;
  FmKitchenPlan plan;
  FmKitchenAlarm alarm;
  int chosen; /* portion that the acts are about; -1 = none */
  guint tick_id;
  gboolean loading;
};

G_DEFINE_FINAL_TYPE (FmKitchenWindow, fm_kitchen_window, ADW_TYPE_WINDOW)

static FmExperiment *
get_experiment (FmKitchenWindow *self)
{
  return fm_experiment_document_get_experiment (self->document);
}

static const FmKitchenState *
get_state (FmKitchenWindow *self)
{
  return fm_kitchen_book_get_state (self->book);
}

static void
show_page (FmKitchenWindow *self, const char *name)
{
  gtk_stack_set_visible_child_name (self->stack, name);
}

static gboolean
is_shown (FmKitchenWindow *self, const char *name)
{
  return g_strcmp0 (gtk_stack_get_visible_child_name (self->stack), name) == 0;
}

static void
show_acts (FmKitchenWindow *self)
{
  const FmKitchenState *state = get_state (self);
  const gboolean is_read = fm_kitchen_book_is_read (self->book);
  FmKitchenKind kind;
  const gboolean has_next = fm_kitchen_next_act (state, &self->plan, self->chosen, &kind) &&
                            fm_kitchen_can (state, self->chosen, kind);
  g_autofree char *text = has_next ? fm_kitchen_act_text (kind, self->chosen) : NULL;

  fm_kitchen_acts_enable (GTK_WIDGET (self), state, self->chosen, is_read);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "kitchen.next", is_read && has_next);
  gtk_button_set_label (self->next_button, text != NULL ? text : _ ("Space: nothing to do here"));
}

static void
show_log (FmKitchenWindow *self)
{
  const GPtrArray *events = fm_kitchen_book_get_events (self->book);
  g_autofree char *text = fm_kitchen_log_text (events, N_TOLD);

  gtk_label_set_text (self->log_label, text);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "kitchen.take-back",
                                 fm_kitchen_last_act (events) != NULL);
}

static void
show_time (FmKitchenWindow *self)
{
  FmKitchenMoment now;

  fm_kitchen_clock_now (&now);
  fm_kitchen_pans_show (self->pans, get_state (self), &self->plan, self->chosen, &now);
  /* While a number is typed the tiles are out of sight. */
  fm_kitchen_head_show_timers (self->head, get_state (self), &self->plan, &now,
                               !is_shown (self, "pan"));
}

static void
choose (FmKitchenWindow *self, int portion)
{
  self->chosen = portion;
  show_time (self);
  show_acts (self);
}

static void
choose_due (FmKitchenWindow *self)
{
  FmKitchenMoment now;
  int due;

  fm_kitchen_clock_now (&now);
  due = fm_kitchen_due (get_state (self), &self->plan, &now);
  choose (self, due >= 0 ? due : self->chosen);
}

static void
show_all (FmKitchenWindow *self)
{
  self->loading = TRUE;
  gtk_drop_down_set_selected (self->positions_drop_down, get_state (self)->n_positions - 1);
  self->loading = FALSE;
  if (self->chosen < 0)
    choose_due (self);
  fm_kitchen_weigh_show (self->weigh, get_experiment (self));
  fm_kitchen_head_show_next (self->head, get_state (self), get_experiment (self));
  show_log (self);
  show_time (self);
  show_acts (self);
}

static gboolean
tick_cb (gpointer data)
{
  FmKitchenWindow *self = data;
  FmKitchenMoment now;

  fm_kitchen_clock_now (&now);
  fm_kitchen_book_note_gap (self->book, &now);
  fm_kitchen_alarm_look (&self->alarm, GTK_WIDGET (self), get_state (self), &self->plan, &now);
  fm_kitchen_estimate_go_on (self->estimate, fm_kitchen_book_get_events (self->book),
                             get_state (self), &self->plan, &now);
  show_time (self);
  return G_SOURCE_CONTINUE;
}

static void
estimated_cb (FmKitchenWindow *self, int portion, const char *text)
{
  fm_kitchen_pans_set_estimate (self->pans, portion, text);
}

/* What is heard before the portion is on the heat is shown and not kept. */
static void
heard_cb (FmKitchenWindow *self, int portion, double temp_c)
{
  if (fm_kitchen_can (get_state (self), portion, FM_KITCHEN_PROBE))
    fm_kitchen_book_add (self->book, FM_KITCHEN_PROBE, portion, temp_c, NULL);
}

static void
weigh_asked_cb (FmKitchenWindow *self, guint index)
{
  show_page (self, "pad");
  fm_kitchen_pad_ask_weighing (
      self->pad, &g_array_index (get_experiment (self)->weighings, FmWeighing, index));
}

/* After a weight the next one is asked for, until all are ticked off. */
static void
entered_cb (FmKitchenWindow *self, FmKitchenKind kind, int portion, double value, const char *words)
{
  const gboolean is_weight = kind == FM_KITCHEN_WEIGHED;
  int next;

  fm_kitchen_book_add (self->book, kind, portion, value, words);
  next = is_weight ? fm_kitchen_weigh_next (get_experiment (self)) : -1;
  if (next >= 0)
    weigh_asked_cb (self, (guint)next);
  else
    show_page (self, is_weight ? "weigh" : "pan");
  show_all (self);
}

static void
pad_cancelled_cb (FmKitchenWindow *self, FmKitchenKind kind)
{
  show_page (self, kind == FM_KITCHEN_WEIGHED ? "weigh" : "pan");
  show_all (self);
}

static void
remark_entered_cb (FmKitchenWindow *self, const char *words)
{
  if (*words != '\0')
    fm_kitchen_book_add (self->book, FM_KITCHEN_REMARK, self->chosen, (double)NAN, words);
  show_page (self, "pan");
  show_all (self);
}

static void
positions_changed_cb (FmKitchenWindow *self)
{
  const guint n = gtk_drop_down_get_selected (self->positions_drop_down) + 1;

  if (!self->loading && n != get_state (self)->n_positions)
    fm_kitchen_book_add (self->book, FM_KITCHEN_POSITIONS, -1, n, NULL);
}

static void
act (FmKitchenWindow *self, FmKitchenKind kind)
{
  if (!fm_kitchen_can (get_state (self), self->chosen, kind))
    return;
  if (kind >= FM_KITCHEN_CORE) {
    show_page (self, "pad");
    fm_kitchen_pad_ask_portion (self->pad, kind, self->chosen);
    return;
  }
  fm_kitchen_book_add (
      self->book, kind, self->chosen,
      kind == FM_KITCHEN_ON ? fm_kitchen_position_of (get_state (self), self->chosen) : (double)NAN,
      NULL);
  choose_due (self);
}

static void
act_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmKitchenKind kind;

  if (fm_kitchen_acts_kind (name, &kind))
    act (FM_KITCHEN_WINDOW (widget), kind);
}

static void
next_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmKitchenWindow *self = FM_KITCHEN_WINDOW (widget);
  FmKitchenKind kind;

  if (fm_kitchen_next_act (get_state (self), &self->plan, self->chosen, &kind))
    act (self, kind);
}

static void
salt_all_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmKitchenWindow *self = FM_KITCHEN_WINDOW (widget);

  fm_kitchen_book_add (self->book, FM_KITCHEN_SALTED, -1, (double)NAN, NULL);
  choose_due (self);
}

static void
take_back_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmKitchenWindow *self = FM_KITCHEN_WINDOW (widget);

  fm_kitchen_book_take_back (self->book);
  choose_due (self);
}

static void
photo_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmKitchenWindow *self = FM_KITCHEN_WINDOW (widget);

  fm_kitchen_book_add (self->book, FM_KITCHEN_PHOTO, self->chosen, (double)NAN, NULL);
  show_page (self, "photos");
  fm_photo_grid_add (self->photos);
}

static void
remark_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmKitchenWindow *self = FM_KITCHEN_WINDOW (widget);

  show_page (self, "remark");
  gtk_widget_grab_focus (GTK_WIDGET (self->remark));
}

static void
probe_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmKitchenWindow *self = FM_KITCHEN_WINDOW (widget);

  fm_kitchen_probe_pane_set_portion (self->probe, self->chosen);
  show_page (self, "probe");
  gtk_widget_grab_focus (GTK_WIDGET (self->probe));
}

static void
weigh_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmKitchenWindow *self = FM_KITCHEN_WINDOW (widget);

  show_page (self, is_shown (self, "weigh") ? "pan" : "weigh");
  show_time (self);
}

static void
pan_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  show_page (FM_KITCHEN_WINDOW (widget), "pan");
  show_time (FM_KITCHEN_WINDOW (widget));
}

static void
escape (FmKitchenWindow *self)
{
  if (is_shown (self, "pan"))
    gtk_window_close (GTK_WINDOW (self));
  else
    gtk_widget_activate_action (GTK_WIDGET (self), "kitchen.pan", NULL);
}

static void
press_space (FmKitchenWindow *self)
{
  const int unweighed = fm_kitchen_weigh_next (get_experiment (self));

  if (is_shown (self, "pan"))
    gtk_widget_activate_action (GTK_WIDGET (self), "kitchen.next", NULL);
  else if (is_shown (self, "weigh") && unweighed >= 0)
    weigh_asked_cb (self, (guint)unweighed);
}

/* One key each, wherever the focus is, but not where something is typed. */
static gboolean
key_cb (FmKitchenWindow *self, guint key, guint code, GdkModifierType modifiers)
{
  const gboolean types = !is_shown (self, "pan") && !is_shown (self, "weigh");
  const guint lower = gdk_keyval_to_lower (key);
  const char *action = fm_kitchen_acts_of_key (lower);

  if (key == GDK_KEY_Escape) {
    escape (self);
    return TRUE;
  }
  if (types || (modifiers & (GDK_CONTROL_MASK | GDK_ALT_MASK)) != 0)
    return FALSE;
  if (key == GDK_KEY_space)
    press_space (self);
  else if (lower >= GDK_KEY_1 && lower <= GDK_KEY_9 &&
           lower - GDK_KEY_1 < get_state (self)->n_portions)
    choose (self, (int)(lower - GDK_KEY_1));
  else if (action != NULL)
    gtk_widget_activate_action (GTK_WIDGET (self), action, NULL);
  else
    return FALSE;
  return TRUE;
}

static void
fm_kitchen_window_dispose (GObject *object)
{
  FmKitchenWindow *self = FM_KITCHEN_WINDOW (object);

  g_clear_handle_id (&self->tick_id, g_source_remove);
  if (self->book != NULL)
    g_signal_handlers_disconnect_by_data (self->book, self);
  if (self->estimate != NULL)
    g_signal_handlers_disconnect_by_data (self->estimate, self);
  gtk_widget_dispose_template (GTK_WIDGET (object), FM_TYPE_KITCHEN_WINDOW);
  g_clear_object (&self->book);
  g_clear_object (&self->estimate);
  g_clear_object (&self->document);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (fm_kitchen_window_parent_class)->dispose (object);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, FmKitchenWindow, head);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenWindow, stack);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenWindow, pans);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenWindow, log_label);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenWindow, figures);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenWindow, next_button);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenWindow, positions_drop_down);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenWindow, weigh);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenWindow, pad);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenWindow, remark);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenWindow, photos);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenWindow, probe);
  gtk_widget_class_bind_template_callback (widget_class, choose);
  gtk_widget_class_bind_template_callback (widget_class, entered_cb);
  gtk_widget_class_bind_template_callback (widget_class, heard_cb);
  gtk_widget_class_bind_template_callback (widget_class, pad_cancelled_cb);
  gtk_widget_class_bind_template_callback (widget_class, positions_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, remark_entered_cb);
  gtk_widget_class_bind_template_callback (widget_class, weigh_asked_cb);
}

static void
fm_kitchen_window_class_init (FmKitchenWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_kitchen_window_dispose;
  g_type_ensure (FM_TYPE_KITCHEN_FIGURES);
  g_type_ensure (FM_TYPE_KITCHEN_HEAD);
  g_type_ensure (FM_TYPE_KITCHEN_PAD);
  g_type_ensure (FM_TYPE_KITCHEN_PANS);
  g_type_ensure (FM_TYPE_KITCHEN_PROBE_PANE);
  g_type_ensure (FM_TYPE_KITCHEN_REMARK_PANE);
  g_type_ensure (FM_TYPE_KITCHEN_WEIGH);
  g_type_ensure (FM_TYPE_PHOTO_GRID);
  g_type_ensure (FM_TYPE_WRAP_LAYOUT);
  fm_kitchen_acts_install (widget_class, act_action);
  gtk_widget_class_install_action (widget_class, "kitchen.next", NULL, next_action);
  gtk_widget_class_install_action (widget_class, "kitchen.salt-all", NULL, salt_all_action);
  gtk_widget_class_install_action (widget_class, "kitchen.take-back", NULL, take_back_action);
  gtk_widget_class_install_action (widget_class, "kitchen.photo", NULL, photo_action);
  gtk_widget_class_install_action (widget_class, "kitchen.remark", NULL, remark_action);
  gtk_widget_class_install_action (widget_class, "kitchen.probe", NULL, probe_action);
  gtk_widget_class_install_action (widget_class, "kitchen.weigh", NULL, weigh_action);
  gtk_widget_class_install_action (widget_class, "kitchen.pan", NULL, pan_action);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/kitchen/fm-kitchen-window.ui");
  bind_template (widget_class);
}

static void
fm_kitchen_window_init (FmKitchenWindow *self)
{
  GtkEventController *controller = gtk_event_controller_key_new ();

  self->loading = TRUE;
  self->chosen = -1;
  gtk_widget_init_template (GTK_WIDGET (self));
  fm_accessible_name_drop_down (self->positions_drop_down, _ ("Portions on the heat at once"));
  gtk_event_controller_set_propagation_phase (controller, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (controller, "key-pressed", G_CALLBACK (key_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), controller);
  self->loading = FALSE;
}

static void
open_book (FmKitchenWindow *self,
           FmSession *session,
           FmExperimentDocument *document,
           const FmProcess *process)
{
  self->session = g_object_ref (session);
  self->document = g_object_ref (document);
  self->book = fm_kitchen_book_new (document);
  g_signal_connect_swapped (self->book, "changed", G_CALLBACK (show_all), self);
  g_signal_connect_object (self->book, "unwritten", G_CALLBACK (fm_kitchen_head_set_unwritten),
                           self->head, G_CONNECT_SWAPPED);
  self->estimate = fm_kitchen_estimate_new (fm_experiment_document_get_notebook (document),
                                            get_experiment (self), process);
  g_signal_connect_swapped (self->estimate, "estimated", G_CALLBACK (estimated_cb), self);
  fm_photo_grid_set_experiment (self->photos, session, get_experiment (self)->id);
  fm_kitchen_figures_set_version (self->figures, fm_experiment_document_get_notebook (document),
                                  get_experiment (self)->version_id);
}

GtkWindow *
fm_kitchen_window_present (GtkWidget *parent,
                           FmSession *session,
                           FmExperimentDocument *document,
                           const char *origin,
                           const FmProcess *process)
{
  FmKitchenWindow *self =
      g_object_new (FM_TYPE_KITCHEN_WINDOW, "transient-for", gtk_widget_get_root (parent), NULL);
  fm_kitchen_plan_init (&self->plan, process);
  fm_kitchen_head_set_origin (self->head, fm_experiment_document_get_experiment (document)->title,
                              origin);
  open_book (self, session, document, process);
  show_all (self);
  self->tick_id = g_timeout_add (TICK_MS, tick_cb, self);
  gtk_window_fullscreen (GTK_WINDOW (self));
  gtk_window_present (GTK_WINDOW (self));
  return GTK_WINDOW (self);
}
