/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-design-box.c - chooses how the trials of a map are drawn up, and draws them up */
#include "app/map/fm-map-design-box.h"

#include <glib/gi18n-lib.h>

#include "app/widgets/fm-accessible.h"
#include "app/map/fm-map-query.h"
#include "app/map/fm-map-text.h"
#include "app/widgets/fm-number-entry.h"
#include "app/widgets/fm-widget.h"
#include "core/base/fm-error.h"

#define MAX_SEED ((guint64)1 << 53)

struct _FmMapDesignBox {
  GtkWidget parent_instance;

  GtkDropDown *design_drop_down;
  GtkLabel *design_label;
  GtkWidget *degree_box;
  GtkDropDown *degree_drop_down;
  GtkWidget *optimal_box;
  GtkDropDown *order_drop_down;
  FmNumberEntry *trials_entry;
  GtkLabel *seed_label;
  GtkLabel *count_label;
  GtkLabel *outside_label;
  GtkButton *draw_button;
  GtkWidget *busy_box;
  GtkSpinner *spinner;

  FmMapDocument *document;
  GArray *proposal; /* (nullable) FmMapPoint of the design as it is chosen, unless optimal */
  GCancellable *cancellable;
  gboolean keep; /* the points that are being worked out become the map's */
  gboolean loading;
};

G_DEFINE_FINAL_TYPE (FmMapDesignBox, fm_map_design_box, GTK_TYPE_WIDGET)

static FmMap *
get_map (FmMapDesignBox *self)
{
  return fm_map_document_get_map (self->document);
}

static void
set_busy (FmMapDesignBox *self, gboolean busy)
{
  gtk_widget_set_visible (self->busy_box, busy);
  gtk_widget_set_visible (GTK_WIDGET (self->draw_button), !busy);
  gtk_spinner_set_spinning (self->spinner, busy);
}

static void
stop (FmMapDesignBox *self)
{
  g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->cancellable);
  self->keep = FALSE;
  set_busy (self, FALSE);
}

static void
update_button (FmMapDesignBox *self)
{
  const gboolean optimal = get_map (self)->design == FM_MAP_OPTIMAL;

  gtk_widget_set_sensitive (
      GTK_WIDGET (self->draw_button),
      fm_map_document_is_editable (self->document) && !fm_map_document_is_making (self->document) &&
          fm_map_document_has_region (self->document) && (optimal || self->proposal != NULL));
}

static void
say (FmMapDesignBox *self, const char *count, const char *outside)
{
  fm_widget_set_label (self->count_label, count != NULL ? count : "");
  fm_widget_set_label (self->outside_label, outside != NULL ? outside : "");
  gtk_widget_set_visible (GTK_WIDGET (self->outside_label), outside != NULL);
}

static void
say_proposal (FmMapDesignBox *self)
{
  const FmMixRegion *region = &fm_map_document_get_blend (self->document)->region;
  g_autofree char *count = fm_map_text_design (self->proposal, region->q);
  g_autofree char *outside = fm_map_text_outside (self->proposal, region);

  say (self, count, outside);
}

/* Trials that are versions stay, so a new design loses nothing that was made. */
static void
take_points (FmMapDesignBox *self, const GArray *points)
{
  FmMap *map = get_map (self);
  GArray *joined = fm_map_design_join (map->points, points, map->components->len);

  g_array_unref (map->points);
  map->points = joined;
  fm_map_document_touch (self->document);
}

static void
drawn_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (FmMapDesignBox) self = FM_MAP_DESIGN_BOX (user_data);
  g_autoptr (GError) error = NULL;
  g_autoptr (GArray) points = fm_map_draw_finish (result, &error);
  const gboolean keep = self->keep;

  if (self->document == NULL || g_task_get_cancellable (G_TASK (result)) != self->cancellable)
    return;
  g_clear_object (&self->cancellable);
  self->keep = FALSE;
  set_busy (self, FALSE);
  if (points == NULL) {
    say (self, error->message, NULL);
  } else if (keep) {
    take_points (self, points);
  } else if (fm_map_document_has_region (self->document)) {
    self->proposal = g_steal_pointer (&points);
    say_proposal (self);
  }
  update_button (self);
}

static void
start (FmMapDesignBox *self, gboolean keep)
{
  stop (self);
  self->keep = keep;
  self->cancellable = g_cancellable_new ();
  set_busy (self, keep);
  fm_map_draw_async (get_map (self), &fm_map_document_get_blend (self->document)->region,
                     self->cancellable, drawn_cb, g_object_ref (self));
}

static void
show_choice (FmMapDesignBox *self)
{
  static const char *const words[] = {
    N_ ("Evenly spaced blends over a triangle of shares; blunt where shares have a most."),
    N_ ("Each component for itself, and equal parts of every two, three and so on."),
    N_ ("The corners of the region that shares and brief leave, and the middles between them."),
    N_ ("As few trials as you say, picked from corners and middles so that the model's terms are "
        "known best."),
  };
  const FmMap *map = get_map (self);
  g_autofree char *number = g_strdup_printf ("%" G_GUINT64_FORMAT, map->seed);
  g_autofree char *seed = g_strdup_printf (
      _ ("Seed of the search: %s. The same seed finds the same trials again."), number);

  self->loading = TRUE;
  gtk_drop_down_set_selected (self->design_drop_down, map->design);
  gtk_drop_down_set_selected (self->degree_drop_down, CLAMP (map->degree, 1, 4) - 1);
  gtk_drop_down_set_selected (self->order_drop_down, map->order);
  fm_number_entry_set_value (self->trials_entry, map->n_trials);
  self->loading = FALSE;
  fm_widget_set_label (self->design_label, _ (words[map->design]));
  fm_widget_set_label (self->seed_label, seed);
  gtk_widget_set_visible (self->degree_box, map->design == FM_MAP_LATTICE);
  gtk_widget_set_visible (self->optimal_box, map->design == FM_MAP_OPTIMAL);
}

/* Works out what the chosen design would give, so that it is known before it is drawn up. */
static void
changed_cb (FmMapDesignBox *self)
{
  g_autofree char *needs = NULL;

  show_choice (self);
  if (self->keep)
    return;
  g_clear_pointer (&self->proposal, g_array_unref);
  if (!fm_map_document_has_region (self->document)) {
    stop (self);
    say (self, _ ("Choose components with shares that leave a region first."), NULL);
  } else if (get_map (self)->design == FM_MAP_OPTIMAL) {
    stop (self);
    needs = fm_map_text_optimal (get_map (self));
    say (self, needs, NULL);
  } else {
    start (self, FALSE);
  }
  update_button (self);
}

static void
choice_changed_cb (FmMapDesignBox *self)
{
  FmMap *map;

  if (self->loading || self->document == NULL)
    return;
  stop (self);
  map = get_map (self);
  map->design = gtk_drop_down_get_selected (self->design_drop_down);
  map->degree = gtk_drop_down_get_selected (self->degree_drop_down) + 1;
  map->order = gtk_drop_down_get_selected (self->order_drop_down);
  map->n_trials = (guint)fm_number_entry_get_value (self->trials_entry);
  fm_map_document_touch (self->document);
}

static void
new_seed_cb (FmMapDesignBox *self)
{
  if (self->document == NULL)
    return;
  get_map (self)->seed = (((guint64)g_random_int () << 32) | g_random_int ()) & (MAX_SEED - 1);
  fm_map_document_touch (self->document);
}

static void
draw_cb (FmMapDesignBox *self)
{
  g_autoptr (GArray) points = NULL;

  if (self->document == NULL || !fm_map_document_has_region (self->document))
    return;
  if (get_map (self)->design == FM_MAP_OPTIMAL) {
    start (self, TRUE);
  } else if (self->proposal != NULL) {
    points = g_steal_pointer (&self->proposal);
    take_points (self, points);
  }
}

static void
cancel_cb (FmMapDesignBox *self)
{
  stop (self);
  changed_cb (self);
}

static void
fm_map_design_box_dispose (GObject *object)
{
  FmMapDesignBox *self = FM_MAP_DESIGN_BOX (object);

  fm_map_design_box_set_document (self, NULL);
  self->loading = TRUE;
  fm_widget_drop_template (GTK_WIDGET (self), FM_TYPE_MAP_DESIGN_BOX);
  G_OBJECT_CLASS (fm_map_design_box_parent_class)->dispose (object);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, FmMapDesignBox, design_drop_down);
  gtk_widget_class_bind_template_child (widget_class, FmMapDesignBox, design_label);
  gtk_widget_class_bind_template_child (widget_class, FmMapDesignBox, degree_box);
  gtk_widget_class_bind_template_child (widget_class, FmMapDesignBox, degree_drop_down);
  gtk_widget_class_bind_template_child (widget_class, FmMapDesignBox, optimal_box);
  gtk_widget_class_bind_template_child (widget_class, FmMapDesignBox, order_drop_down);
  gtk_widget_class_bind_template_child (widget_class, FmMapDesignBox, trials_entry);
  gtk_widget_class_bind_template_child (widget_class, FmMapDesignBox, seed_label);
  gtk_widget_class_bind_template_child (widget_class, FmMapDesignBox, count_label);
  gtk_widget_class_bind_template_child (widget_class, FmMapDesignBox, outside_label);
  gtk_widget_class_bind_template_child (widget_class, FmMapDesignBox, draw_button);
  gtk_widget_class_bind_template_child (widget_class, FmMapDesignBox, busy_box);
  gtk_widget_class_bind_template_child (widget_class, FmMapDesignBox, spinner);
  gtk_widget_class_bind_template_callback (widget_class, choice_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, new_seed_cb);
  gtk_widget_class_bind_template_callback (widget_class, draw_cb);
  gtk_widget_class_bind_template_callback (widget_class, cancel_cb);
}

static void
fm_map_design_box_class_init (FmMapDesignBoxClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_map_design_box_dispose;
  g_type_ensure (FM_TYPE_NUMBER_ENTRY);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/map/fm-map-design-box.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  bind_template (widget_class);
}

/* Each in the order of its type: FmMapDesign, degree, FmMixOrder. */
static void
fill_choices (FmMapDesignBox *self)
{
  const char *designs[] = { _ ("Even grid (simplex lattice)"), _ ("Equal parts (simplex centroid)"),
                            _ ("Corners and middles (extreme vertices)"),
                            _ ("A given number, chosen best (D-optimal)"), NULL };
  const char *degrees[] = { _ ("1: pure components only"), _ ("2: and halves between"),
                            _ ("3: in thirds"), _ ("4: in quarters"), NULL };
  const char *order_names[] = { _ ("Linear"), _ ("Quadratic"), _ ("Special cubic"), NULL };
  g_autoptr (GtkStringList) design_list = gtk_string_list_new (designs);
  g_autoptr (GtkStringList) degree_list = gtk_string_list_new (degrees);
  g_autoptr (GtkStringList) order_list = gtk_string_list_new (order_names);

  gtk_drop_down_set_model (self->design_drop_down, G_LIST_MODEL (design_list));
  gtk_drop_down_set_model (self->degree_drop_down, G_LIST_MODEL (degree_list));
  gtk_drop_down_set_model (self->order_drop_down, G_LIST_MODEL (order_list));
}

static void
fm_map_design_box_init (FmMapDesignBox *self)
{
  self->loading = TRUE;
  gtk_widget_init_template (GTK_WIDGET (self));
  fill_choices (self);
  fm_widget_ellipsize_drop_down (self->design_drop_down);
  fm_accessible_name_drop_down (self->design_drop_down, _ ("Kind of design"));
  fm_accessible_name_drop_down (self->degree_drop_down, _ ("Degree of the grid"));
  fm_accessible_name_drop_down (self->order_drop_down, _ ("Model"));
  fm_number_entry_set_range (self->trials_entry, 2, FM_MAP_MAX_TRIALS);
  self->loading = FALSE;
}

void
fm_map_design_box_set_document (FmMapDesignBox *self, FmMapDocument *document)
{
  if (self->document == document)
    return;
  stop (self);
  g_clear_pointer (&self->proposal, g_array_unref);
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_set_object (&self->document, document);
  if (document == NULL)
    return;
  g_signal_connect_swapped (document, "changed", G_CALLBACK (changed_cb), self);
  changed_cb (self);
}
