/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-formula-page.c - the lines of the shown formula, the brief and the live numbers */
#include "app/formula/fm-formula-page.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "app/batch/fm-batch-sheet-dialog.h"
#include "app/formula/fm-brief-pane.h"
#include "app/batch/fm-correct-window.h"
#include "app/label/fm-label-window.h"
#include "app/charts/fm-fat-bar.h"
#include "app/ingredients/fm-food-search.h"
#include "app/session/fm-formula-line-edit.h"
#include "app/session/fm-formula-line-item.h"
#include "app/formula/fm-formula-line-layout.h"
#include "app/formula/fm-formula-line-row.h"
#include "app/formula/fm-formula-page-totals.h"
#include "app/formula/fm-formula-paste.h"
#include "app/formula/fm-line-sight.h"
#include "app/formula/fm-process-pane.h"
#include "app/ingredients/fm-ingredient-dialog.h"
#include "app/session/fm-notebook-settings.h"
#include "app/targets/fm-targets-window.h"
#include "app/widgets/fm-column-keys.h"
#include "app/widgets/fm-widget.h"
#include "app/widgets/fm-wrap-layout.h"
#include "core/formula/fm-gaps.h"

struct _FmFormulaPage {
  FmPage parent_instance;

  GtkWidget *scroller;
  GtkWidget *content;
  FmFormulaPageTotals *totals;
  FmFoodSearch *search;
  GtkWidget *duplicates_box;
  GtkLabel *duplicates_label;
  GtkWidget *headings;
  GtkLabel *mass_heading;
  GtkLabel *patty_heading;
  GtkLabel *fat_heading;
  GtkLabel *price_heading;
  GtkListBox *list;
  GtkWidget *empty_page;
  GtkLabel *gaps_label;
  GtkWidget *zero_label;
  GtkWidget *scale_button;
  GtkLabel *scale_label;
  GtkWidget *fat_box;
  FmFatBar *fat_bar;
  GtkLabel *fat_label;
  FmBriefPane *brief_pane;
  FmProcessPane *process_pane;

  FmFormulaLineList *lines;
  FmLineSight *sight;
  GtkWidget *root; /* whose focus is watched; unowned, between root and unroot */
  gulong focus_handler;
  guint scroll_id;
};

G_DEFINE_FINAL_TYPE (FmFormulaPage, fm_formula_page, FM_TYPE_PAGE)

static void
show_duplicates (FmFormulaPage *self, const FmFormula *formula, gboolean editable)
{
  const guint n = editable ? fm_formula_n_duplicates (formula) : 0;
  g_autofree char *text =
      g_strdup_printf (ngettext ("%u line repeats an ingredient that is there already.",
                                 "%u lines repeat ingredients that are there already.", n),
                       n);

  fm_widget_set_label (self->duplicates_label, text);
  gtk_widget_set_visible (self->duplicates_box, n > 0);
}

static void
show_batch (FmFormulaPage *self, const FmFormula *formula, gboolean editable)
{
  const FmBrief *brief = formula->brief;
  const double batch_g = brief->patty_mass_g * brief->n_patties;
  const double total_g = fm_formula_total_g (formula);
  g_autofree char *unit = fm_measure_unit (FM_MEASURE_MASS, fm_notebook_units ());
  g_autofree char *price_unit = fm_measure_unit (FM_MEASURE_PRICE, fm_notebook_units ());
  /* Translators: heading of a narrow column: unit of mass in one patty */
  g_autofree char *patty_heading = g_strdup_printf (_ ("%s/patty"), unit);
  g_autofree char *fat_heading = g_strdup_printf (_ ("Fat, %s"), unit);
  g_autofree char *batch = fm_notebook_text (FM_MEASURE_MASS, batch_g, 0);
  g_autofree char *patty = fm_notebook_text (FM_MEASURE_MASS, brief->patty_mass_g, 1);
  g_autofree char *scale =
      g_strdup_printf (_ ("Scale to Batch: %d × %s = %s"), brief->n_patties, patty, batch);

  fm_widget_set_label (self->mass_heading,
                       fm_notebook_units ()->us_masses ? _ ("Ounces") : _ ("Grams"));
  fm_widget_set_label (self->patty_heading, patty_heading);
  fm_widget_set_label (self->fat_heading, fat_heading);
  fm_widget_set_label (self->price_heading, price_unit);
  fm_widget_set_label (self->scale_label, scale);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "formula.scale-to-batch",
                                 editable && total_g > 0.0 && ABS (total_g - batch_g) > 1e-9);
}

static void
show_empty (FmFormulaPage *self, const FmFormula *formula)
{
  const gboolean empty = fm_formula_n_lines (formula) == 0;

  gtk_widget_action_set_enabled (GTK_WIDGET (self), "formula.meet-targets", !empty);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "formula.correct-batch",
                                 !empty && fm_formula_total_g (formula) > 0.0);
  gtk_widget_set_visible (self->empty_page, empty);
  gtk_widget_set_visible (GTK_WIDGET (self->list), !empty);
  gtk_widget_set_visible (self->headings, !empty);
  gtk_widget_set_visible (self->scale_button, !empty);
  gtk_widget_set_visible (self->fat_box, !empty);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "formula.batch-sheet",
                                 fm_formula_total_g (formula) > 0.0);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "formula.label",
                                 fm_formula_total_g (formula) > 0.0);
  gtk_widget_set_visible (self->zero_label, !empty && fm_formula_total_g (formula) <= 0.0);
}

static void
show_fat (FmFormulaPage *self, const FmFormula *formula, const FmAnalysis *analysis)
{
  g_auto (GStrv) missing = fm_analysis_missing (formula, FM_NUTRIENT_FAT);
  g_autofree char *names = g_strjoinv (", ", missing);
  g_autofree char *text = NULL;

  fm_fat_bar_update (self->fat_bar, formula, analysis);
  if (missing[0] == NULL)
    text = g_strdup (_ ("The same grams of fat stand beside each line."));
  else
    text = g_strdup_printf (_ ("The fat of %s is not known, so the bar leaves it out."), names);
  fm_widget_set_label (self->fat_label, text);
}

static void
show_gaps (FmFormulaPage *self, const FmFormula *formula, const FmAnalysis *analysis)
{
  g_autofree char *text = fm_gaps_text (formula, analysis);

  fm_widget_set_label (self->gaps_label, text);
  gtk_widget_set_visible (GTK_WIDGET (self->gaps_label), text[0] != '\0');
}

static void
formula_changed_cb (FmFormulaPage *self)
{
  FmSession *session = fm_page_get_session (FM_PAGE (self));
  const FmFormula *formula = fm_session_get_formula (session);
  const FmAnalysis *analysis = fm_session_get_analysis (session);
  const gboolean editable = fm_session_is_editable (session);

  fm_page_set_document (FM_PAGE (self), fm_session_get_draft (session));
  gtk_widget_set_visible (self->scroller, formula != NULL);
  fm_line_sight_look (self->sight);
  fm_formula_line_list_update (self->lines, formula, analysis, editable);
  fm_line_sight_catch_up_soon (self->sight);
  if (formula == NULL || analysis == NULL)
    return;
  fm_formula_page_totals_update (self->totals, formula, analysis);
  show_duplicates (self, formula, editable);
  show_batch (self, formula, editable);
  show_empty (self, formula);
  show_gaps (self, formula, analysis);
  show_fat (self, formula, analysis);
  fm_brief_pane_update (self->brief_pane);
  fm_process_pane_update (self->process_pane, session);
  gtk_widget_set_visible (GTK_WIDGET (self->search), editable);
}

static GtkWidget *
create_row_cb (gpointer item, gpointer data)
{
  FmFormulaPage *self = data;

  return fm_formula_line_row_new (fm_page_get_session (FM_PAGE (self)),
                                  FM_FORMULA_LINE_ITEM (item));
}

static GtkListBoxRow *
last_row (FmFormulaPage *self)
{
  const guint n_lines = g_list_model_get_n_items (G_LIST_MODEL (self->lines));

  return n_lines > 0 ? gtk_list_box_get_row_at_index (self->list, (int)n_lines - 1) : NULL;
}

/* A new row has no place before the next layout, so scrolling to it waits for that. */
static gboolean
scroll_to_last_cb (gpointer data)
{
  FmFormulaPage *self = data;
  GtkListBoxRow *row = last_row (self);
  GtkAdjustment *adjustment =
      gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (self->scroller));
  double y = 0.0;

  self->scroll_id = 0;
  if (row != NULL && fm_widget_height_in (GTK_WIDGET (row), self->content, 0.0, &y))
    gtk_adjustment_clamp_page (adjustment, y, y + gtk_widget_get_height (GTK_WIDGET (row)));
  return G_SOURCE_REMOVE;
}

static void
focus_last_line (FmFormulaPage *self)
{
  GtkListBoxRow *row = last_row (self);

  if (row == NULL)
    return;
  fm_formula_line_row_focus_mass (FM_FORMULA_LINE_ROW (row));
  g_clear_handle_id (&self->scroll_id, g_source_remove);
  self->scroll_id = g_idle_add_full (G_PRIORITY_LOW, scroll_to_last_cb, self, NULL);
}

static void
chosen_cb (FmFormulaPage *self, gpointer ingredient)
{
  g_autofree char *id = fm_line_edit_add (fm_page_get_session (FM_PAGE (self)), ingredient);

  if (id != NULL)
    focus_last_line (self);
}

static void
own_entry_cb (FmFormulaPage *self, const char *text)
{
  g_autoptr (FmIngredient) ingredient = fm_ingredient_new (text, FM_INGREDIENT_CUT);

  fm_ingredient_dialog_present (GTK_WIDGET (self), fm_page_get_session (FM_PAGE (self)), NULL,
                                ingredient);
}

static void
target_chosen_cb (FmFormulaPage *self, guint kind)
{
  fm_brief_pane_focus_target (self->brief_pane, (FmTargetKind)kind);
}

static gboolean
pasted_cb (FmFormulaPage *self, const char *text)
{
  fm_formula_paste (fm_page_get_session (FM_PAGE (self)), text);
  return TRUE;
}

static void
merge_duplicates_cb (GtkWidget *widget, const char *action_name, GVariant *parameter)
{
  fm_line_edit_merge_duplicates (fm_page_get_session (FM_PAGE (widget)));
}

static void
scale_to_batch_cb (GtkWidget *widget, const char *action_name, GVariant *parameter)
{
  FmFormulaPage *self = FM_FORMULA_PAGE (widget);
  g_autoptr (GError) error = NULL;

  if (!fm_line_edit_scale_to_batch (fm_page_get_session (FM_PAGE (self)), &error))
    fm_session_message (fm_page_get_session (FM_PAGE (self)), error->message);
}

static GtkWindow *
get_window (GtkWidget *widget)
{
  return GTK_WINDOW (gtk_widget_get_root (widget));
}

static void
meet_targets_cb (GtkWidget *widget, const char *action_name, GVariant *parameter)
{
  FmSession *session = fm_page_get_session (FM_PAGE (widget));

  gtk_window_present (GTK_WINDOW (fm_targets_window_new (get_window (widget), session)));
}

static void
correct_batch_cb (GtkWidget *widget, const char *action_name, GVariant *parameter)
{
  FmSession *session = fm_page_get_session (FM_PAGE (widget));

  gtk_window_present (GTK_WINDOW (fm_correct_window_new (get_window (widget), session,
                                                         fm_session_get_formula (session), NULL)));
}

static void
batch_sheet_cb (GtkWidget *widget, const char *action_name, GVariant *parameter)
{
  FmFormulaPage *self = FM_FORMULA_PAGE (widget);

  fm_batch_sheet_dialog_present (widget, fm_page_get_session (FM_PAGE (self)));
}

static void
label_cb (GtkWidget *widget, const char *action_name, GVariant *parameter)
{
  fm_label_window_present (widget, fm_page_get_session (FM_PAGE (widget)), 0);
}

static void
find_food_cb (GtkWidget *widget, const char *action_name, GVariant *parameter)
{
  gtk_widget_grab_focus (GTK_WIDGET (FM_FORMULA_PAGE (widget)->search));
}

/* A run of typing is one step of undo as long as the focus stays where it is. */
static void
focus_moved_cb (FmFormulaPage *self)
{
  if (fm_page_get_session (FM_PAGE (self)) != NULL)
    fm_session_seal (fm_page_get_session (FM_PAGE (self)));
}

static void
fm_formula_page_root (GtkWidget *widget)
{
  FmFormulaPage *self = FM_FORMULA_PAGE (widget);

  GTK_WIDGET_CLASS (fm_formula_page_parent_class)->root (widget);
  self->root = GTK_WIDGET (gtk_widget_get_root (widget));
  if (GTK_IS_WINDOW (self->root))
    self->focus_handler = g_signal_connect_swapped (self->root, "notify::focus-widget",
                                                    G_CALLBACK (focus_moved_cb), self);
}

static void
fm_formula_page_unroot (GtkWidget *widget)
{
  FmFormulaPage *self = FM_FORMULA_PAGE (widget);

  g_clear_signal_handler (&self->focus_handler, self->root);
  self->root = NULL;
  GTK_WIDGET_CLASS (fm_formula_page_parent_class)->unroot (widget);
}

static void
fm_formula_page_show_session (FmPage *page)
{
  FmFormulaPage *self = FM_FORMULA_PAGE (page);
  FmSession *session = fm_page_get_session (page);

  fm_food_search_set_session (self->search, session);
  fm_brief_pane_set_session (self->brief_pane, session);
  formula_changed_cb (self);
}

static const char *
fm_formula_page_tell_no_document (FmPage *page)
{
  return _ ("What is shown cannot be changed, so there is nothing to undo");
}

static void
fm_formula_page_dispose (GObject *object)
{
  FmFormulaPage *self = FM_FORMULA_PAGE (object);

  g_clear_handle_id (&self->scroll_id, g_source_remove);
  g_clear_pointer (&self->sight, fm_line_sight_free);
  fm_widget_drop_template (GTK_WIDGET (self), FM_TYPE_FORMULA_PAGE);
  g_clear_object (&self->lines);
  G_OBJECT_CLASS (fm_formula_page_parent_class)->dispose (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, FmFormulaPage, scroller);
  gtk_widget_class_bind_template_child (widget_class, FmFormulaPage, content);
  gtk_widget_class_bind_template_child (widget_class, FmFormulaPage, totals);
  gtk_widget_class_bind_template_child (widget_class, FmFormulaPage, search);
  gtk_widget_class_bind_template_child (widget_class, FmFormulaPage, duplicates_box);
  gtk_widget_class_bind_template_child (widget_class, FmFormulaPage, duplicates_label);
  gtk_widget_class_bind_template_child (widget_class, FmFormulaPage, headings);
  gtk_widget_class_bind_template_child (widget_class, FmFormulaPage, mass_heading);
  gtk_widget_class_bind_template_child (widget_class, FmFormulaPage, patty_heading);
  gtk_widget_class_bind_template_child (widget_class, FmFormulaPage, price_heading);
  gtk_widget_class_bind_template_child (widget_class, FmFormulaPage, fat_heading);
  gtk_widget_class_bind_template_child (widget_class, FmFormulaPage, list);
  gtk_widget_class_bind_template_child (widget_class, FmFormulaPage, empty_page);
  gtk_widget_class_bind_template_child (widget_class, FmFormulaPage, gaps_label);
  gtk_widget_class_bind_template_child (widget_class, FmFormulaPage, zero_label);
  gtk_widget_class_bind_template_child (widget_class, FmFormulaPage, scale_button);
  gtk_widget_class_bind_template_child (widget_class, FmFormulaPage, scale_label);
  gtk_widget_class_bind_template_child (widget_class, FmFormulaPage, fat_box);
  gtk_widget_class_bind_template_child (widget_class, FmFormulaPage, fat_bar);
  gtk_widget_class_bind_template_child (widget_class, FmFormulaPage, fat_label);
  gtk_widget_class_bind_template_child (widget_class, FmFormulaPage, brief_pane);
  gtk_widget_class_bind_template_child (widget_class, FmFormulaPage, process_pane);
  gtk_widget_class_bind_template_callback (widget_class, chosen_cb);
  gtk_widget_class_bind_template_callback (widget_class, target_chosen_cb);
  gtk_widget_class_bind_template_callback (widget_class, own_entry_cb);
  gtk_widget_class_bind_template_callback (widget_class, pasted_cb);
}

static void
fm_formula_page_class_init (FmFormulaPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_formula_page_dispose;
  widget_class->root = fm_formula_page_root;
  widget_class->unroot = fm_formula_page_unroot;
  FM_PAGE_CLASS (klass)->show_session = fm_formula_page_show_session;
  FM_PAGE_CLASS (klass)->tell_no_document = fm_formula_page_tell_no_document;
  g_type_ensure (FM_TYPE_FORMULA_PAGE_TOTALS);
  g_type_ensure (FM_TYPE_FORMULA_LINE_LAYOUT);
  g_type_ensure (FM_TYPE_FOOD_SEARCH);
  g_type_ensure (FM_TYPE_FAT_BAR);
  g_type_ensure (FM_TYPE_BRIEF_PANE);
  g_type_ensure (FM_TYPE_PROCESS_PANE);
  g_type_ensure (FM_TYPE_WRAP_LAYOUT);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/formula/fm-formula-page.ui");
  bind_children (widget_class);
  gtk_widget_class_install_action (widget_class, "formula.merge-duplicates", NULL,
                                   merge_duplicates_cb);
  gtk_widget_class_install_action (widget_class, "formula.scale-to-batch", NULL, scale_to_batch_cb);
  gtk_widget_class_install_action (widget_class, "formula.meet-targets", NULL, meet_targets_cb);
  gtk_widget_class_install_action (widget_class, "formula.correct-batch", NULL, correct_batch_cb);
  gtk_widget_class_install_action (widget_class, "formula.batch-sheet", NULL, batch_sheet_cb);
  gtk_widget_class_install_action (widget_class, "formula.label", NULL, label_cb);
  gtk_widget_class_install_action (widget_class, "formula.find-food", NULL, find_food_cb);
}

static void
add_key (GtkEventController *keys, const char *trigger, const char *action)
{
  gtk_shortcut_controller_add_shortcut (
      GTK_SHORTCUT_CONTROLLER (keys), gtk_shortcut_new (gtk_shortcut_trigger_parse_string (trigger),
                                                        gtk_named_action_new (action)));
}

/* An entry would keep these keys for an undo of its own, which the history replaces here. */
static void
add_history_keys (GtkWidget *widget)
{
  GtkEventController *keys = gtk_shortcut_controller_new ();

  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  add_key (keys, "<Control>z", "win.undo");
  add_key (keys, "<Control><Shift>z", "win.redo");
  add_key (keys, "<Control>y", "win.redo");
  gtk_widget_add_controller (widget, keys);
}

static void
fm_formula_page_init (FmFormulaPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  self->lines = fm_formula_line_list_new ();
  gtk_list_box_bind_model (self->list, G_LIST_MODEL (self->lines), create_row_cb, self, NULL);
  self->sight = fm_line_sight_new (GTK_SCROLLED_WINDOW (self->scroller), self->list);
  add_history_keys (GTK_WIDGET (self->list));
  fm_column_keys_install (GTK_WIDGET (self->list), fm_formula_line_row_get_cell,
                          FM_FORMULA_LINE_N_CELLS, FM_FORMULA_LINE_N_NUMBERS);
  add_history_keys (GTK_WIDGET (self->brief_pane));
  fm_page_listen (FM_PAGE (self), "changed::formula", G_CALLBACK (formula_changed_cb));
  fm_page_listen (FM_PAGE (self), "changed::shown", G_CALLBACK (formula_changed_cb));
  /* Units and the currency sign are part of every text; the rows hear of them themselves. */
  g_signal_connect_object (fm_notebook_settings_get_default (), "changed",
                           G_CALLBACK (formula_changed_cb), self, G_CONNECT_SWAPPED);
}

void
fm_formula_page_begin (FmFormulaPage *self)
{
  g_return_if_fail (FM_IS_FORMULA_PAGE (self));
  gtk_widget_grab_focus (GTK_WIDGET (self->search));
}

void
fm_formula_page_find_food (FmFormulaPage *self, const char *text)
{
  g_return_if_fail (FM_IS_FORMULA_PAGE (self));
  fm_food_search_look_for (self->search, text);
}
