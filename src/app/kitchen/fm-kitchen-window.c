/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-kitchen-window.c - the cook screen: one experiment at the pan, over the whole screen */
#include "app/kitchen/fm-kitchen-window.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/cook/fm-cook-food.h"
#include "app/kitchen/fm-kitchen-alarm.h"
#include "app/kitchen/fm-kitchen-book.h"
#include "app/kitchen/fm-kitchen-clock.h"
#include "app/kitchen/fm-kitchen-estimate.h"
#include "app/kitchen/fm-kitchen-figures.h"
#include "app/kitchen/fm-kitchen-pad.h"
#include "app/kitchen/fm-kitchen-pans.h"
#include "app/kitchen/fm-kitchen-probe-pane.h"
#include "app/kitchen/fm-kitchen-text.h"
#include "app/kitchen/fm-kitchen-weigh.h"
#include "app/photos/fm-photo-grid.h"
#include "app/widgets/fm-widget.h"
#include "app/widgets/fm-wrap-layout.h"

#define TICK_MS 250
/* Events told at the foot of the screen. */
#define N_TOLD 3

struct _FmKitchenWindow {
  AdwWindow parent_instance;

  GtkLabel *origin_label;
  GtkLabel *failure_label;
  GtkLabel *next_label;
  GtkLabel *ruling_label;
  GtkLabel *timers_label;
  GtkStack *stack;
  FmKitchenPans *pans;
  GtkLabel *log_label;
  GtkLabel *figures_label;
  GtkButton *next_button;
  GtkDropDown *positions_drop_down;
  FmKitchenWeigh *weigh;
  FmKitchenPad *pad;
  GtkEditable *remark_entry;
  FmPhotoGrid *photos;
  FmKitchenProbePane *probe;

  FmSession *session;
  FmExperimentDocument *document;
  FmKitchenBook *book;
  FmKitchenEstimate *estimate;
  FmKitchenPlan plan;
  FmKitchenAlarm alarm;
  FmKitchenMoment seen; /* at the last tick */
  int chosen;           /* portion that the acts are about; -1 = none */
  guint tick_id;
  gboolean loading;

  FmKitchenKind asked; /* what the pad's number is */
  int asked_portion;
  char *asked_words;
};

G_DEFINE_FINAL_TYPE (FmKitchenWindow, fm_kitchen_window, ADW_TYPE_WINDOW)

/* What can be done to the chosen portion. */
static const struct {
  const char *action;
  FmKitchenKind kind;
} acts[] = {
  { "kitchen.salted", FM_KITCHEN_SALTED },    { "kitchen.on", FM_KITCHEN_ON },
  { "kitchen.turned", FM_KITCHEN_TURNED },    { "kitchen.off", FM_KITCHEN_OFF },
  { "kitchen.rested", FM_KITCHEN_REST_OVER }, { "kitchen.core", FM_KITCHEN_CORE },
  { "kitchen.raw", FM_KITCHEN_RAW },          { "kitchen.cooked", FM_KITCHEN_COOKED },
};

/* One key each. */
static const struct {
  guint key;
  const char *action;
} keys[] = {
  { GDK_KEY_s, "kitchen.salted" },    { GDK_KEY_a, "kitchen.salt-all" },
  { GDK_KEY_h, "kitchen.on" },        { GDK_KEY_t, "kitchen.turned" },
  { GDK_KEY_o, "kitchen.off" },       { GDK_KEY_e, "kitchen.rested" },
  { GDK_KEY_c, "kitchen.core" },      { GDK_KEY_r, "kitchen.raw" },
  { GDK_KEY_k, "kitchen.cooked" },    { GDK_KEY_p, "kitchen.photo" },
  { GDK_KEY_m, "kitchen.remark" },    { GDK_KEY_w, "kitchen.weigh" },
  { GDK_KEY_u, "kitchen.take-back" }, { GDK_KEY_b, "kitchen.probe" },
};

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

  for (guint i = 0; i < G_N_ELEMENTS (acts); i++)
    gtk_widget_action_set_enabled (GTK_WIDGET (self), acts[i].action,
                                   is_read && fm_kitchen_can (state, self->chosen, acts[i].kind));
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "kitchen.next", is_read && has_next);
  gtk_button_set_label (self->next_button, text != NULL ? text : _ ("Space: nothing to do here"));
}

static void
show_next (FmKitchenWindow *self)
{
  const int unweighed = fm_kitchen_weigh_next (get_experiment (self));
  g_autofree char *text = fm_kitchen_next_text (get_state (self), get_experiment (self), unweighed);

  gtk_label_set_text (self->next_label, text);
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
  g_autofree char *timers = NULL;
  FmKitchenMoment now;

  fm_kitchen_clock_now (&now);
  fm_kitchen_pans_show (self->pans, get_state (self), &self->plan, self->chosen, &now);
  timers = fm_kitchen_timers_text (get_state (self), &self->plan, &now);
  /* While a number is typed the tiles are out of sight. */
  fm_widget_set_label (self->timers_label, timers);
  gtk_widget_set_visible (GTK_WIDGET (self->timers_label), !is_shown (self, "pan"));
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
  show_next (self);
  show_log (self);
  show_time (self);
  show_acts (self);
}

/* What the machine did between two ticks is noted, and bends nothing. */
static void
note_gap (FmKitchenWindow *self, const FmKitchenMoment *now)
{
  FmKitchenKind kind;
  double value;

  if (self->seen.wall_us != 0 && fm_kitchen_gap (&self->seen, now, &kind, &value))
    fm_kitchen_book_add (self->book, kind, -1, value, NULL);
  self->seen = *now;
}

static gboolean
tick_cb (gpointer data)
{
  FmKitchenWindow *self = data;
  FmKitchenMoment now;

  fm_kitchen_clock_now (&now);
  note_gap (self, &now);
  fm_kitchen_alarm_look (&self->alarm, GTK_WIDGET (self), get_state (self), &self->plan, &now);
  fm_kitchen_estimate_go_on (self->estimate, fm_kitchen_book_get_events (self->book),
                             get_state (self), &self->plan);
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
unwritten_cb (FmKitchenWindow *self, const char *why)
{
  g_autofree char *text =
      why != NULL ? g_strdup_printf (_ ("Not on the disk yet, trying again: %s"), why) : NULL;

  gtk_label_set_text (self->failure_label, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (self->failure_label), text != NULL);
}

static void
ask (FmKitchenWindow *self,
     FmKitchenKind kind,
     const char *words,
     const char *what,
     const char *hint,
     double max)
{
  const gboolean is_core = kind == FM_KITCHEN_CORE;

  self->asked = kind;
  self->asked_portion = kind == FM_KITCHEN_WEIGHED ? -1 : self->chosen;
  g_free (self->asked_words);
  self->asked_words = g_strdup (words);
  show_page (self, "pad");
  fm_kitchen_pad_ask (self->pad, what, hint, is_core ? FM_MEASURE_TEMPERATURE : FM_MEASURE_MASS,
                      is_core ? FM_MIN_CORE_C : 0.1, max);
}

static void
ask_of_portion (FmKitchenWindow *self, FmKitchenKind kind)
{
  const int number = self->chosen + 1;
  g_autofree char *what = NULL;

  if (kind == FM_KITCHEN_CORE)
    what = g_strdup_printf (_ ("Core of portion %d now"), number);
  else if (kind == FM_KITCHEN_RAW)
    what = g_strdup_printf (_ ("Raw mass of portion %d"), number);
  else
    what = g_strdup_printf (_ ("Cooked mass of portion %d"), number);
  ask (self, kind, NULL, what, NULL, kind == FM_KITCHEN_CORE ? FM_MAX_CORE_C : FM_MAX_PATTY_MASS_G);
}

static void
weigh_asked_cb (FmKitchenWindow *self, guint index)
{
  const FmWeighing *weighing = &g_array_index (get_experiment (self)->weighings, FmWeighing, index);
  g_autofree char *planned = fm_kitchen_weigh_planned_text (weighing);

  ask (self, FM_KITCHEN_WEIGHED, weighing->line_id != NULL ? weighing->line_id : weighing->name,
       weighing->name, planned, FM_MAX_LINE_MASS_G);
}

/* After a weight the next one is asked for, until all are ticked off. */
static void
entered_cb (FmKitchenWindow *self, double value)
{
  const gboolean was_weight = self->asked == FM_KITCHEN_WEIGHED;
  int next;

  fm_kitchen_book_add (self->book, self->asked, self->asked_portion, value, self->asked_words);
  next = was_weight ? fm_kitchen_weigh_next (get_experiment (self)) : -1;
  if (next >= 0)
    weigh_asked_cb (self, (guint)next);
  else
    show_page (self, was_weight ? "weigh" : "pan");
  show_all (self);
}

static void
pad_cancelled_cb (FmKitchenWindow *self)
{
  show_page (self, self->asked == FM_KITCHEN_WEIGHED ? "weigh" : "pan");
  show_all (self);
}

static void
remark_entered_cb (FmKitchenWindow *self)
{
  g_autofree char *words = g_strstrip (g_strdup (gtk_editable_get_text (self->remark_entry)));

  if (*words != '\0')
    fm_kitchen_book_add (self->book, FM_KITCHEN_REMARK, self->chosen, (double)NAN, words);
  gtk_editable_set_text (self->remark_entry, "");
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

static double
position_of (FmKitchenWindow *self, int portion)
{
  for (int i = 0; i < FM_KITCHEN_MAX_POSITIONS; i++)
    if (get_state (self)->pan[i] == portion)
      return i;
  return 0.0;
}

static void
act (FmKitchenWindow *self, FmKitchenKind kind)
{
  if (!fm_kitchen_can (get_state (self), self->chosen, kind))
    return;
  if (kind >= FM_KITCHEN_CORE) {
    ask_of_portion (self, kind);
    return;
  }
  fm_kitchen_book_add (self->book, kind, self->chosen,
                       kind == FM_KITCHEN_ON ? position_of (self, self->chosen) : (double)NAN,
                       NULL);
  choose_due (self);
}

static void
act_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  for (guint i = 0; i < G_N_ELEMENTS (acts); i++)
    if (g_str_equal (acts[i].action, name))
      act (FM_KITCHEN_WINDOW (widget), acts[i].kind);
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
  gtk_widget_grab_focus (GTK_WIDGET (self->remark_entry));
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

static const char *
action_of_key (guint key)
{
  for (guint i = 0; i < G_N_ELEMENTS (keys); i++)
    if (keys[i].key == key)
      return keys[i].action;
  return NULL;
}

/* One key each, wherever the focus is, but not where something is typed. */
static gboolean
key_cb (FmKitchenWindow *self, guint key, guint code, GdkModifierType modifiers)
{
  const gboolean types = !is_shown (self, "pan") && !is_shown (self, "weigh");
  const guint lower = gdk_keyval_to_lower (key);
  const char *action = action_of_key (lower);

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
food_read_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (FmKitchenWindow) self = data;
  FmCookFood food = { FM_SPECIES_BIT (FM_SPECIES_UNKNOWN), (double)NAN };
  g_autofree char *text = NULL;
  g_autofree char *ruling = NULL;
  g_autofree char *figure = NULL;

  /* Without an answer the figures for meat of unknown kind stand: all of them. */
  fm_cook_food_finish (result, &food, NULL);
  text = fm_kitchen_figures_text (&food);
  figure = fm_caution_figure_text (food.species);
  ruling = g_strdup_printf (_ ("The figure that rules for this blend: %s."), figure);
  if (self->figures_label == NULL)
    return;
  gtk_label_set_text (self->figures_label, text);
  gtk_label_set_text (self->ruling_label, ruling);
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
  g_clear_pointer (&self->asked_words, g_free);
  G_OBJECT_CLASS (fm_kitchen_window_parent_class)->dispose (object);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, FmKitchenWindow, origin_label);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenWindow, failure_label);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenWindow, next_label);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenWindow, ruling_label);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenWindow, timers_label);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenWindow, stack);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenWindow, pans);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenWindow, log_label);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenWindow, figures_label);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenWindow, next_button);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenWindow, positions_drop_down);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenWindow, weigh);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenWindow, pad);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenWindow, remark_entry);
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
  g_type_ensure (FM_TYPE_KITCHEN_PAD);
  g_type_ensure (FM_TYPE_KITCHEN_PANS);
  g_type_ensure (FM_TYPE_KITCHEN_PROBE_PANE);
  g_type_ensure (FM_TYPE_KITCHEN_WEIGH);
  g_type_ensure (FM_TYPE_PHOTO_GRID);
  g_type_ensure (FM_TYPE_WRAP_LAYOUT);
  for (guint i = 0; i < G_N_ELEMENTS (acts); i++)
    gtk_widget_class_install_action (widget_class, acts[i].action, NULL, act_action);
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
  g_signal_connect_swapped (self->book, "unwritten", G_CALLBACK (unwritten_cb), self);
  self->estimate = fm_kitchen_estimate_new (fm_experiment_document_get_notebook (document),
                                            get_experiment (self), process);
  g_signal_connect_swapped (self->estimate, "estimated", G_CALLBACK (estimated_cb), self);
  fm_photo_grid_set_experiment (self->photos, session, get_experiment (self)->id);
  fm_cook_food_async (fm_experiment_document_get_notebook (document),
                      get_experiment (self)->version_id, NULL, food_read_cb, g_object_ref (self));
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
  const char *title = fm_experiment_document_get_experiment (document)->title;
  g_autofree char *text = g_strdup_printf (
      "%s · %s", title != NULL ? title : _ ("Untitled experiment"), origin != NULL ? origin : "");

  fm_kitchen_plan_init (&self->plan, process);
  gtk_label_set_text (self->origin_label, text);
  open_book (self, session, document, process);
  show_all (self);
  self->tick_id = g_timeout_add (TICK_MS, tick_cb, self);
  gtk_window_fullscreen (GTK_WINDOW (self));
  gtk_window_present (GTK_WINDOW (self));
  return GTK_WINDOW (self);
}
