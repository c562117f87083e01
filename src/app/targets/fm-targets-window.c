/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-targets-window.c - finds the shares that meet the targets of the brief */
#include "app/targets/fm-targets-window.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/blends/fm-version-list.h"
#include "app/session/fm-notebook-settings.h"
#include "app/targets/fm-targets-bands.h"
#include "app/targets/fm-targets-lines.h"
#include "app/targets/fm-targets-result.h"
#include "app/targets/fm-targets-task.h"
#include "app/widgets/fm-accessible.h"
#include "app/widgets/fm-number-entry.h"
#include "app/widgets/fm-widget.h"
#include "core/targets/fm-targets-chance.h"

/* Whole grams, as kitchen scales show: common practice, no source. */
#define DEFAULT_SCALE_STEP_G 1.0
#define MAX_SCALE_STEP_G 1000.0

struct _FmTargetsWindow {
  AdwWindow parent_instance;

  FmTargetsLines *lines;
  FmTargetsBands *bands;
  GtkDropDown *objective_drop;
  GtkWidget *reference_box;
  GtkDropDown *reference_drop;
  FmNumberEntry *step_entry;
  FmNumberEntry *limit_entry;
  GtkLabel *sure_label;
  GtkWidget *spread_button;
  FmTargetsResultView *result_view;
  GtkScrolledWindow *scroller;

  FmSession *session;
  FmFormula *formula; /* the copy that is worked on, with what else may be used */
  FmVersionList *list;
  gint64 blend_id;
  GArray *version_ids; /* gint64, in the order of reference_drop */
  FmTargetsSolution *solution;
  GCancellable *cancellable;
};

G_DEFINE_FINAL_TYPE (FmTargetsWindow, fm_targets_window, ADW_TYPE_WINDOW)

static void
show_sure (FmTargetsWindow *self)
{
  g_autofree char *text =
      fm_fat_chance_text (self->formula, fm_number_entry_get_value (self->step_entry),
                          fm_number_entry_get_value (self->limit_entry));

  gtk_label_set_text (self->sure_label, text);
  gtk_widget_set_visible (self->spread_button, fm_targets_lines_lack_spread (self->lines));
}

/* What was found belongs to what was asked, so a change of the question drops it. */
static void
drop_solution (FmTargetsWindow *self)
{
  g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->cancellable);
  g_clear_pointer (&self->solution, fm_targets_solution_free);
  fm_targets_result_view_clear (self->result_view);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "targets.use", FALSE);
}

static void
bands_changed_cb (FmTargetsWindow *self)
{
  drop_solution (self);
  show_sure (self);
}

/* Figures of an ingredient may have changed too. */
static void
lines_changed_cb (FmTargetsWindow *self)
{
  drop_solution (self);
  fm_targets_bands_update (self->bands);
  show_sure (self);
}

static void
step_changed_cb (FmTargetsWindow *self)
{
  if (self->formula == NULL)
    return;
  drop_solution (self);
  show_sure (self);
}

static void
objective_changed_cb (FmTargetsWindow *self)
{
  const FmObjective objective = gtk_drop_down_get_selected (self->objective_drop);

  gtk_widget_set_visible (self->reference_box, objective == FM_OBJECTIVE_NEAREST_REFERENCE);
  drop_solution (self);
}

/* The blend without what else may be used: that comes in only where a solution uses it. */
static FmFormula *
copy_blend (FmTargetsWindow *self)
{
  FmFormula *blend = fm_formula_copy (self->formula);

  while (fm_formula_n_lines (blend) > fm_targets_lines_n_present (self->lines))
    fm_formula_remove (blend, fm_formula_n_lines (blend) - 1);
  return blend;
}

static FmTargets *
make_targets (FmTargetsWindow *self)
{
  const char *currency = fm_notebook_units ()->currency;
  FmTargets *targets = fm_targets_new_from_formula (self->formula);

  for (guint i = 0; i < targets->candidates->len; i++) {
    FmCandidate *candidate = g_ptr_array_index (targets->candidates, i);

    candidate->locked = fm_targets_lines_keeps_mass (self->lines, i);
    if (i >= fm_targets_lines_n_present (self->lines))
      g_clear_pointer (&candidate->line_id, g_free);
  }
  fm_targets_bands_add_to (self->bands, targets);
  fm_targets_set_currency (targets, currency);
  targets->objective = gtk_drop_down_get_selected (self->objective_drop);
  targets->scale_step_g = fm_number_entry_get_value (self->step_entry);
  return targets;
}

/* 0 when another objective is chosen or no version is there. */
static gint64
reference_id (FmTargetsWindow *self)
{
  const guint selected = gtk_drop_down_get_selected (self->reference_drop);

  if (gtk_drop_down_get_selected (self->objective_drop) != FM_OBJECTIVE_NEAREST_REFERENCE ||
      selected >= self->version_ids->len)
    return 0;
  return g_array_index (self->version_ids, gint64, selected);
}

/* The answer starts at the top of what is seen. */
static void
scroll_to_result (FmTargetsWindow *self)
{
  GtkWidget *content = gtk_widget_get_parent (GTK_WIDGET (self->result_view));
  double y = 0.0;

  if (fm_widget_height_in (GTK_WIDGET (self->result_view), content, 0.0, &y))
    gtk_adjustment_set_value (gtk_scrolled_window_get_vadjustment (self->scroller), y);
}

/* The frame in which the answer came has not laid it out yet; the next one has. */
static gboolean
scroll_cb (GtkWidget *widget, GdkFrameClock *clock, gpointer frames)
{
  guint *left = frames;

  if ((*left)-- > 0)
    return G_SOURCE_CONTINUE;
  scroll_to_result (FM_TARGETS_WINDOW (widget));
  return G_SOURCE_REMOVE;
}

static void
scroll_when_laid_out (FmTargetsWindow *self)
{
  guint *frames = g_new (guint, 1);

  *frames = 1;
  gtk_widget_add_tick_callback (GTK_WIDGET (self), scroll_cb, frames, g_free);
}

static void
solved_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FmTargetsSolution) solution = fm_targets_solve_in_thread_finish (result, &error);
  g_autoptr (FmFormula) blend = NULL;
  FmTargetsWindow *self = data;

  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    return;
  if (solution == NULL) {
    fm_targets_result_view_show_error (self->result_view, error->message);
  } else {
    self->solution = g_steal_pointer (&solution);
    blend = copy_blend (self);
    fm_targets_result_view_show (self->result_view, self->solution->targets, self->solution->result,
                                 blend, fm_number_entry_get_value (self->limit_entry));
    gtk_widget_action_set_enabled (GTK_WIDGET (self), "targets.use",
                                   self->solution->result->met &&
                                       fm_session_is_editable (self->session));
  }
  scroll_when_laid_out (self);
}

/* What keeps the question from being asked: translated, or NULL. (transfer full) */
static char *
find_fault (FmTargetsWindow *self)
{
  g_autoptr (GError) error = NULL;

  if (!fm_targets_lines_store (self->lines) || !fm_number_entry_is_valid (self->step_entry) ||
      !fm_number_entry_is_valid (self->limit_entry))
    return g_strdup (_ ("Correct the marked limits first."));
  if (!fm_targets_bands_check (self->bands, &error))
    return g_strdup (error->message);
  if (gtk_drop_down_get_selected (self->objective_drop) == FM_OBJECTIVE_NEAREST_REFERENCE &&
      reference_id (self) == 0)
    return g_strdup (_ ("This blend has no saved version to stay near to. Save one first."));
  return NULL;
}

static void
solve_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmTargetsWindow *self = FM_TARGETS_WINDOW (widget);
  g_autofree char *fault = NULL;

  drop_solution (self);
  fault = find_fault (self);
  if (fault != NULL) {
    fm_targets_result_view_show_error (self->result_view, fault);
    scroll_when_laid_out (self);
    return;
  }
  self->cancellable = g_cancellable_new ();
  fm_targets_solve_in_thread (make_targets (self), fm_session_get_notebook (self->session),
                              reference_id (self), self->cancellable, solved_cb, self);
}

static void
use_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmTargetsWindow *self = FM_TARGETS_WINDOW (widget);
  g_autoptr (FmFormula) blend = NULL;
  g_autoptr (FmFormula) next = NULL;

  if (self->solution == NULL || !self->solution->result->met ||
      !fm_session_is_editable (self->session))
    return;
  blend = copy_blend (self);
  next = fm_targets_result_apply (self->solution->result, self->solution->targets, blend);
  fm_session_seal (self->session);
  fm_session_edit (self->session, next, _ ("Meet the targets"), NULL);
  gtk_window_close (GTK_WINDOW (self));
}

static void
spread_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  fm_targets_lines_take_spreads (FM_TARGETS_WINDOW (widget)->lines);
}

static void
close_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  gtk_window_close (GTK_WINDOW (widget));
}

static void
fm_targets_window_dispose (GObject *object)
{
  FmTargetsWindow *self = FM_TARGETS_WINDOW (object);

  g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->cancellable);
  gtk_widget_dispose_template (GTK_WIDGET (self), FM_TYPE_TARGETS_WINDOW);
  g_clear_object (&self->session);
  g_clear_pointer (&self->formula, fm_formula_free);
  g_clear_object (&self->list);
  g_clear_pointer (&self->version_ids, g_array_unref);
  g_clear_pointer (&self->solution, fm_targets_solution_free);
  G_OBJECT_CLASS (fm_targets_window_parent_class)->dispose (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, FmTargetsWindow, lines);
  gtk_widget_class_bind_template_child (widget_class, FmTargetsWindow, bands);
  gtk_widget_class_bind_template_child (widget_class, FmTargetsWindow, objective_drop);
  gtk_widget_class_bind_template_child (widget_class, FmTargetsWindow, reference_box);
  gtk_widget_class_bind_template_child (widget_class, FmTargetsWindow, reference_drop);
  gtk_widget_class_bind_template_child (widget_class, FmTargetsWindow, step_entry);
  gtk_widget_class_bind_template_child (widget_class, FmTargetsWindow, limit_entry);
  gtk_widget_class_bind_template_child (widget_class, FmTargetsWindow, sure_label);
  gtk_widget_class_bind_template_child (widget_class, FmTargetsWindow, spread_button);
  gtk_widget_class_bind_template_child (widget_class, FmTargetsWindow, result_view);
  gtk_widget_class_bind_template_child (widget_class, FmTargetsWindow, scroller);
  gtk_widget_class_bind_template_callback (widget_class, lines_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, bands_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, step_changed_cb);
}

static void
fm_targets_window_class_init (FmTargetsWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_targets_window_dispose;
  g_type_ensure (FM_TYPE_NUMBER_ENTRY);
  g_type_ensure (FM_TYPE_TARGETS_BANDS);
  g_type_ensure (FM_TYPE_TARGETS_LINES);
  g_type_ensure (FM_TYPE_TARGETS_RESULT_VIEW);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/targets/fm-targets-window.ui");
  bind_children (widget_class);
  gtk_widget_class_install_action (widget_class, "targets.solve", NULL, solve_action);
  gtk_widget_class_install_action (widget_class, "targets.use", NULL, use_action);
  gtk_widget_class_install_action (widget_class, "targets.spread", NULL, spread_action);
  gtk_widget_class_install_action (widget_class, "targets.close", NULL, close_action);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "targets.close", NULL);
}

/* In the order of FmObjective. */
static GtkStringList *
objective_names (void)
{
  const char *names[] = { _ ("Least cost"), _ ("Nearest to the blend now"),
                          _ ("Nearest to a version"), NULL };

  return gtk_string_list_new (names);
}

static void
fm_targets_window_init (FmTargetsWindow *self)
{
  g_autoptr (GtkStringList) names = objective_names ();

  self->version_ids = g_array_new (FALSE, FALSE, sizeof (gint64));
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_drop_down_set_model (self->objective_drop, G_LIST_MODEL (names));
  fm_widget_ellipsize_drop_down (self->objective_drop);
  fm_widget_ellipsize_drop_down (self->reference_drop);
  fm_accessible_name_drop_down (self->objective_drop, _ ("Aim"));
  fm_accessible_name_drop_down (self->reference_drop, _ ("Version to stay near to"));
  fm_number_entry_set_range (self->step_entry, 0.0, MAX_SCALE_STEP_G);
  fm_number_entry_set_range (self->limit_entry, 0.0, 100.0);
  fm_number_entry_set_value (self->step_entry, DEFAULT_SCALE_STEP_G);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "targets.use", FALSE);
  g_signal_connect_swapped (self->objective_drop, "notify::selected",
                            G_CALLBACK (objective_changed_cb), self);
  g_signal_connect_swapped (self->reference_drop, "notify::selected", G_CALLBACK (drop_solution),
                            self);
}

/* Once: while the window is open nobody saves a version. */
static void
show_versions (FmTargetsWindow *self)
{
  const GPtrArray *versions = fm_version_list_get_versions (self->list, self->blend_id);
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);

  if (versions == NULL || self->version_ids->len > 0)
    return;
  for (guint i = 0; i < versions->len; i++) {
    const FmVersionInfo *info = g_ptr_array_index (versions, i);
    g_autofree char *point = fm_lean_point_format (info->fat_pct);

    gtk_string_list_take (names, g_strdup_printf (_ ("Version %d, %s"), info->number, point));
    g_array_append_val (self->version_ids, info->id);
  }
  gtk_drop_down_set_model (self->reference_drop, G_LIST_MODEL (names));
}

FmTargetsWindow *
fm_targets_window_new (GtkWindow *parent, FmSession *session)
{
  FmTargetsWindow *self = g_object_new (FM_TYPE_TARGETS_WINDOW, "transient-for", parent, NULL);

  self->session = g_object_ref (session);
  self->blend_id = fm_session_get_blend_id (session);
  self->formula = fm_formula_copy (fm_session_get_formula (session));
  fm_targets_lines_set_formula (self->lines, session, self->formula);
  fm_targets_bands_set_formula (self->bands, self->formula);
  fm_number_entry_set_value (self->limit_entry, self->formula->brief->bands[FM_TARGET_FAT_PCT].max);
  show_sure (self);
  gtk_drop_down_set_selected (self->objective_drop, FM_OBJECTIVE_NEAREST_CURRENT);
  self->list = fm_version_list_of (session);
  g_signal_connect_object (self->list, "updated", G_CALLBACK (show_versions), self,
                           G_CONNECT_SWAPPED);
  show_versions (self);
  return self;
}
