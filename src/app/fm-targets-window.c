/* fm-targets-window.c - finds the shares that meet the targets of the brief */
#include "app/fm-targets-window.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/fm-accessible.h"
#include "app/fm-brief-target-row.h"
#include "app/fm-number-entry.h"
#include "app/fm-preferences.h"
#include "app/fm-targets-line.h"
#include "app/fm-targets-result.h"
#include "app/fm-targets-sure.h"
#include "app/fm-targets-task.h"

/* Whole grams, as kitchen scales show: common practice, no source. */
#define DEFAULT_SCALE_STEP_G 1.0
#define MAX_SCALE_STEP_G 1000.0

struct _FmTargetsWindow {
  AdwWindow parent_instance;

  GtkListBox *line_list;
  GtkListBox *band_list;
  GtkDropDown *objective_drop;
  GtkWidget *reference_box;
  GtkDropDown *reference_drop;
  FmNumberEntry *step_entry;
  GtkLabel *sure_label;
  FmTargetsResultView *result_view;
  GtkScrolledWindow *scroller;

  FmSession *session;
  FmFormula *formula;  /* the copy that is worked on */
  GPtrArray *versions; /* (nullable) FmVersionInfo, in the order of reference_drop */
  FmTargetsSolution *solution;
  GCancellable *cancellable;
  gboolean loading;
};

G_DEFINE_FINAL_TYPE (FmTargetsWindow, fm_targets_window, ADW_TYPE_WINDOW)

static void
show_sure (FmTargetsWindow *self)
{
  g_autofree char *text =
      fm_targets_sure_text (self->formula, fm_number_entry_get_value (self->step_entry));

  gtk_label_set_text (self->sure_label, text);
}

static void
show_bands (FmTargetsWindow *self)
{
  g_autoptr (FmAnalysis) analysis = fm_analysis_new (self->formula);
  const FmBrief *brief = self->formula->brief;

  self->loading = TRUE;
  for (int i = 0; i < FM_N_TARGETS; i++) {
    GtkListBoxRow *row = gtk_list_box_get_row_at_index (self->band_list, i);
    const double value = fm_analysis_target_value (analysis, brief, (FmTargetKind)i);

    fm_brief_target_row_update (FM_BRIEF_TARGET_ROW (row), brief->bands[i], value, TRUE);
  }
  self->loading = FALSE;
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

/* A band that is crossed for now is kept: the other end may be typed next. */
static void
band_end_changed_cb (FmTargetsWindow *self, gboolean maximum, double value, FmBriefTargetRow *row)
{
  g_autoptr (GError) error = NULL;
  FmBand *band = NULL;

  if (self->loading)
    return;
  band = &self->formula->brief->bands[fm_brief_target_row_get_kind (row)];
  *(maximum ? &band->max : &band->min) = value;
  drop_solution (self);
  show_bands (self);
  if (!fm_brief_check (self->formula->brief, &error))
    fm_brief_target_row_show_error (row, maximum, error->message);
  show_sure (self);
}

static void
limits_changed_cb (FmTargetsWindow *self, FmTargetsLine *row)
{
  fm_targets_line_store (row, fm_formula_line (self->formula, fm_targets_line_get_index (row)));
  drop_solution (self);
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

/* Everything in the rows, including a limit that is not good: FALSE then. */
static gboolean
store_lines (FmTargetsWindow *self)
{
  gboolean good = TRUE;

  for (guint i = 0; i < fm_formula_n_lines (self->formula); i++) {
    GtkListBoxRow *row = gtk_list_box_get_row_at_index (self->line_list, (int)i);

    good &= fm_targets_line_store (FM_TARGETS_LINE (row), fm_formula_line (self->formula, i));
  }
  return good && fm_number_entry_is_valid (self->step_entry);
}

/* 0 when another objective is chosen or no version is there. */
static gint64
reference_id (FmTargetsWindow *self)
{
  const guint selected = gtk_drop_down_get_selected (self->reference_drop);

  if (gtk_drop_down_get_selected (self->objective_drop) != FM_OBJECTIVE_NEAREST_REFERENCE ||
      self->versions == NULL || selected >= self->versions->len)
    return 0;
  return ((FmVersionInfo *)g_ptr_array_index (self->versions, selected))->id;
}

/* The answer starts at the top of what is seen. */
static void
scroll_to_result (FmTargetsWindow *self)
{
  GtkWidget *content = gtk_widget_get_parent (GTK_WIDGET (self->result_view));
  double y = 0.0;

  if (gtk_widget_translate_coordinates (GTK_WIDGET (self->result_view), content, 0.0, 0.0, NULL,
                                        &y))
    gtk_adjustment_set_value (gtk_scrolled_window_get_vadjustment (self->scroller), y);
}

static gboolean
scroll_cb (gpointer data)
{
  scroll_to_result (data);
  return G_SOURCE_REMOVE;
}

static void
solved_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FmTargetsSolution) solution = fm_targets_solve_in_thread_finish (result, &error);
  FmTargetsWindow *self = data;

  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    return;
  if (solution == NULL) {
    fm_targets_result_view_show_error (self->result_view, error->message);
  } else {
    self->solution = g_steal_pointer (&solution);
    fm_targets_result_view_show (self->result_view, self->solution->targets, self->solution->result,
                                 self->formula);
    gtk_widget_action_set_enabled (GTK_WIDGET (self), "targets.use",
                                   self->solution->result->met &&
                                       fm_session_is_editable (self->session));
  }
  g_idle_add_full (G_PRIORITY_LOW, scroll_cb, g_object_ref (self), g_object_unref);
}

static void
solve_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmTargetsWindow *self = FM_TARGETS_WINDOW (widget);
  g_autoptr (GError) error = NULL;
  g_autofree char *currency = fm_preferences_currency ();
  FmTargets *targets = NULL;
  const FmObjective objective = gtk_drop_down_get_selected (self->objective_drop);

  drop_solution (self);
  if (!store_lines (self)) {
    fm_targets_result_view_show_error (self->result_view, _ ("Correct the marked limits first."));
    return;
  }
  if (!fm_brief_check (self->formula->brief, &error)) {
    fm_targets_result_view_show_error (self->result_view, error->message);
    return;
  }
  if (objective == FM_OBJECTIVE_NEAREST_REFERENCE && reference_id (self) == 0) {
    fm_targets_result_view_show_error (
        self->result_view, _ ("This blend has no saved version to stay near to. Save one first."));
    return;
  }
  targets = fm_targets_new_from_formula (self->formula);
  fm_targets_set_currency (targets, currency);
  targets->objective = objective;
  targets->scale_step_g = fm_number_entry_get_value (self->step_entry);
  self->cancellable = g_cancellable_new ();
  fm_targets_solve_in_thread (targets, fm_session_get_notebook (self->session), reference_id (self),
                              self->cancellable, solved_cb, self);
}

static void
use_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmTargetsWindow *self = FM_TARGETS_WINDOW (widget);
  g_autoptr (FmFormula) next = NULL;

  if (self->solution == NULL || !self->solution->result->met ||
      !fm_session_is_editable (self->session))
    return;
  next = fm_targets_result_apply (self->solution->result, self->solution->targets, self->formula);
  fm_session_seal (self->session);
  fm_session_edit (self->session, next, _ ("Meet the targets"), NULL);
  gtk_window_close (GTK_WINDOW (self));
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
  g_clear_pointer (&self->versions, g_ptr_array_unref);
  g_clear_pointer (&self->solution, fm_targets_solution_free);
  G_OBJECT_CLASS (fm_targets_window_parent_class)->dispose (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, FmTargetsWindow, line_list);
  gtk_widget_class_bind_template_child (widget_class, FmTargetsWindow, band_list);
  gtk_widget_class_bind_template_child (widget_class, FmTargetsWindow, objective_drop);
  gtk_widget_class_bind_template_child (widget_class, FmTargetsWindow, reference_box);
  gtk_widget_class_bind_template_child (widget_class, FmTargetsWindow, reference_drop);
  gtk_widget_class_bind_template_child (widget_class, FmTargetsWindow, step_entry);
  gtk_widget_class_bind_template_child (widget_class, FmTargetsWindow, sure_label);
  gtk_widget_class_bind_template_child (widget_class, FmTargetsWindow, result_view);
  gtk_widget_class_bind_template_child (widget_class, FmTargetsWindow, scroller);
  gtk_widget_class_bind_template_callback (widget_class, step_changed_cb);
}

static void
fm_targets_window_class_init (FmTargetsWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_targets_window_dispose;
  g_type_ensure (FM_TYPE_NUMBER_ENTRY);
  g_type_ensure (FM_TYPE_TARGETS_RESULT_VIEW);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/fm-targets-window.ui");
  bind_children (widget_class);
  gtk_widget_class_install_action (widget_class, "targets.solve", NULL, solve_action);
  gtk_widget_class_install_action (widget_class, "targets.use", NULL, use_action);
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

  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_drop_down_set_model (self->objective_drop, G_LIST_MODEL (names));
  fm_accessible_name_drop_down (self->objective_drop, _ ("Aim"));
  fm_accessible_name_drop_down (self->reference_drop, _ ("Version to stay near to"));
  fm_number_entry_set_range (self->step_entry, 0.0, MAX_SCALE_STEP_G);
  fm_number_entry_set_value (self->step_entry, DEFAULT_SCALE_STEP_G);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "targets.use", FALSE);
  g_signal_connect_swapped (self->objective_drop, "notify::selected",
                            G_CALLBACK (objective_changed_cb), self);
  g_signal_connect_swapped (self->reference_drop, "notify::selected", G_CALLBACK (drop_solution),
                            self);
}

static void
add_rows (FmTargetsWindow *self)
{
  for (guint i = 0; i < fm_formula_n_lines (self->formula); i++) {
    GtkWidget *row = fm_targets_line_new (self->formula, i);

    g_signal_connect_swapped (row, "limits-changed", G_CALLBACK (limits_changed_cb), self);
    gtk_list_box_append (self->line_list, row);
  }
  for (int i = 0; i < FM_N_TARGETS; i++) {
    GtkWidget *row = fm_brief_target_row_new ((FmTargetKind)i);

    g_signal_connect_swapped (row, "band-end-changed", G_CALLBACK (band_end_changed_cb), self);
    gtk_list_box_append (self->band_list, row);
  }
}

static void
versions_listed_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (FmTargetsWindow) self = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) versions = fm_targets_list_versions_finish (result, &error);
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);

  if (self->session == NULL)
    return;
  if (versions == NULL) {
    fm_session_failure (self->session, error);
    return;
  }
  for (guint i = 0; i < versions->len; i++) {
    const FmVersionInfo *info = g_ptr_array_index (versions, i);
    g_autofree char *point = fm_lean_point_format (info->fat_pct);

    gtk_string_list_take (names, g_strdup_printf (_ ("Version %d, %s"), info->number, point));
  }
  self->versions = g_steal_pointer (&versions);
  gtk_drop_down_set_model (self->reference_drop, G_LIST_MODEL (names));
}

FmTargetsWindow *
fm_targets_window_new (GtkWindow *parent, FmSession *session)
{
  FmTargetsWindow *self = g_object_new (FM_TYPE_TARGETS_WINDOW, "transient-for", parent, NULL);

  self->session = g_object_ref (session);
  self->formula = fm_formula_copy (fm_session_get_formula (session));
  add_rows (self);
  show_bands (self);
  show_sure (self);
  gtk_drop_down_set_selected (self->objective_drop, FM_OBJECTIVE_NEAREST_CURRENT);
  fm_targets_list_versions (fm_session_get_notebook (session), fm_session_get_blend_id (session),
                            NULL, versions_listed_cb, g_object_ref (self));
  return self;
}
