/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-goal-row.c - whether and how a response counts among several goals */
#include "app/map/fm-map-goal-row.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/widgets/fm-accessible.h"
#include "app/map/fm-map-fit-job.h"
#include "app/widgets/fm-number-entry.h"
#include "app/widgets/fm-wrap-layout.h"

#define LARGEST 1e6
#define LARGEST_WEIGHT 10

enum {
  LOW,
  TARGET,
  HIGH,
  WEIGHT,
  N_ENTRIES,
};

struct _FmMapGoalRow {
  GtkWidget parent_instance;

  FmMapResponse response;
  GtkWidget *check;
  GtkWidget *details;
  GtkWidget *kind;
  GtkWidget *entry[N_ENTRIES];
  GtkWidget *target_child;
};

G_DEFINE_FINAL_TYPE (FmMapGoalRow, fm_map_goal_row, GTK_TYPE_WIDGET)

enum {
  CHANGED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static FmMixGoalKind
chosen_kind (FmMapGoalRow *self)
{
  return (FmMixGoalKind)gtk_drop_down_get_selected (GTK_DROP_DOWN (self->kind));
}

static void
changed_cb (FmMapGoalRow *self)
{
  gtk_widget_set_visible (self->details,
                          gtk_check_button_get_active (GTK_CHECK_BUTTON (self->check)));
  gtk_widget_set_visible (self->target_child, chosen_kind (self) == FM_MIX_GOAL_NEAR);
  g_signal_emit (self, signals[CHANGED], 0);
}

static GtkWidget *
add_part (FmMapGoalRow *self, const char *title, GtkWidget *widget)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);
  GtkWidget *label = gtk_label_new (title);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_add_css_class (label, "caption");
  gtk_box_append (GTK_BOX (box), label);
  gtk_box_append (GTK_BOX (box), widget);
  gtk_box_append (GTK_BOX (self->details), box);
  return box;
}

static GtkWidget *
add_entry (FmMapGoalRow *self, int which, const char *title, double value)
{
  const gboolean is_weight = which == WEIGHT;
  const int decimals = is_weight ? 1 : fm_map_response_decimals (self->response) + 1;
  /* Translators: "Cook loss", "worthless at". */
  g_autofree char *what =
      g_strdup_printf (_ ("%s, %s"), fm_map_response_name (self->response), title);
  GtkWidget *entry = fm_number_entry_new (what, is_weight ? 0.1 : -LARGEST,
                                          is_weight ? LARGEST_WEIGHT : LARGEST, decimals);

  if (!is_weight) {
    g_autofree char *unit = fm_map_response_unit (self->response);

    fm_number_entry_set_unit (FM_NUMBER_ENTRY (entry), unit);
  }
  fm_number_entry_set_width_chars (FM_NUMBER_ENTRY (entry), 6);
  fm_number_entry_set_value (FM_NUMBER_ENTRY (entry), value);
  g_signal_connect_swapped (entry, "value-changed", G_CALLBACK (changed_cb), self);
  self->entry[which] = entry;
  return add_part (self, title, entry);
}

static void
build (FmMapGoalRow *self, double low, double high)
{
  const char *kinds[] = { _ ("More is better"), _ ("Less is better"), _ ("Near a value"), NULL };
  const char *name = fm_map_response_name (self->response);
  g_autofree char *what = g_strdup_printf (_ ("Goal for %s"), name);

  self->check = gtk_check_button_new_with_label (name);
  gtk_widget_set_parent (self->check, GTK_WIDGET (self));
  self->details = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  gtk_widget_set_layout_manager (self->details, fm_wrap_layout_new (6, 5));
  gtk_widget_set_margin_start (self->details, 24);
  gtk_widget_set_parent (self->details, GTK_WIDGET (self));
  self->kind = gtk_drop_down_new_from_strings (kinds);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->kind), fm_map_fit_wants_more (self->response)
                                                              ? FM_MIX_GOAL_HIGH
                                                              : FM_MIX_GOAL_LOW);
  fm_accessible_name_drop_down (GTK_DROP_DOWN (self->kind), what);
  add_part (self, _ ("Goal"), self->kind);
  add_entry (self, LOW, _ ("Lower end"), low);
  self->target_child = add_entry (self, TARGET, _ ("Target"), (low + high) / 2.0);
  add_entry (self, HIGH, _ ("Upper end"), high);
  add_entry (self, WEIGHT, _ ("Weight"), 1);
  g_signal_connect_swapped (self->check, "toggled", G_CALLBACK (changed_cb), self);
  g_signal_connect_swapped (self->kind, "notify::selected", G_CALLBACK (changed_cb), self);
  changed_cb (self);
}

static void
fm_map_goal_row_dispose (GObject *object)
{
  FmMapGoalRow *self = FM_MAP_GOAL_ROW (object);

  g_clear_pointer (&self->check, gtk_widget_unparent);
  g_clear_pointer (&self->details, gtk_widget_unparent);
  G_OBJECT_CLASS (fm_map_goal_row_parent_class)->dispose (object);
}

static void
fm_map_goal_row_class_init (FmMapGoalRowClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = fm_map_goal_row_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BOX_LAYOUT);
  signals[CHANGED] = g_signal_new ("changed", FM_TYPE_MAP_GOAL_ROW, G_SIGNAL_RUN_LAST, 0, NULL,
                                   NULL, NULL, G_TYPE_NONE, 0);
}

static void
fm_map_goal_row_init (FmMapGoalRow *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
}

GtkWidget *
fm_map_goal_row_new (FmMapResponse response, double low, double high)
{
  FmMapGoalRow *self = g_object_new (FM_TYPE_MAP_GOAL_ROW, NULL);

  self->response = response;
  build (self, low, high);
  return GTK_WIDGET (self);
}

FmMapResponse
fm_map_goal_row_get_response (FmMapGoalRow *self)
{
  return self->response;
}

static double
entry_value (FmMapGoalRow *self, int which)
{
  FmNumberEntry *entry = FM_NUMBER_ENTRY (self->entry[which]);

  return fm_number_entry_is_valid (entry) ? fm_number_entry_get_value (entry) : NAN;
}

gboolean
fm_map_goal_row_get_goal (FmMapGoalRow *self, FmMixGoal *goal, char **problem)
{
  if (!gtk_check_button_get_active (GTK_CHECK_BUTTON (self->check)))
    return FALSE;
  goal->kind = chosen_kind (self);
  goal->low = entry_value (self, LOW);
  goal->high = entry_value (self, HIGH);
  goal->target = entry_value (self, TARGET);
  goal->weight = entry_value (self, WEIGHT);
  if (!(goal->low < goal->high) || isnan (goal->weight))
    *problem = g_strdup_printf (_ ("%s: give a lower end below the upper end, and a weight."),
                                fm_map_response_name (self->response));
  else if (goal->kind == FM_MIX_GOAL_NEAR &&
           !(goal->target > goal->low && goal->target < goal->high))
    *problem = g_strdup_printf (_ ("%s: give a target between the lower and the upper end."),
                                fm_map_response_name (self->response));
  return TRUE;
}
