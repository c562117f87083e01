/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-correct-window.c - what to add to a real batch to bring it back to its target */
#include "app/batch/fm-correct-window.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/batch/fm-correct-text.h"
#include "app/ingredients/fm-food-search.h"
#include "app/ingredients/fm-ingredient-dialog.h"
#include "app/session/fm-notebook-settings.h"
#include "app/widgets/fm-accessible.h"
#include "app/widgets/fm-number-row.h"
#include "app/widgets/fm-widget.h"
#include "core/formula/fm-analysis.h"
#include "core/base/fm-number.h"

/* Whole grams, as kitchen scales show: common practice, no source. */
#define DEFAULT_SCALE_STEP_G 1.0
#define MAX_SCALE_STEP_G 1000.0

struct _FmCorrectWindow {
  AdwWindow parent_instance;

  GtkWidget *origin_label;
  GtkListBox *weighed_list;
  GtkLabel *total_label;
  FmNumberEntry *test_entry;
  FmNumberEntry *min_entry;
  FmNumberEntry *max_entry;
  GtkDropDown *add_drop;
  FmFoodSearch *search;
  FmNumberEntry *step_entry;
  GtkLabel *answer_label;
  GtkLabel *others_label;
  GtkLabel *top_up_label;
  GtkWidget *scroller;

  FmSession *session;
  FmFormula *planned;
  GPtrArray *ingredients; /* FmIngredient, in the order of add_drop */
  GPtrArray *entries;     /* FmNumberEntry of each line, owned by weighed_list */
};

G_DEFINE_FINAL_TYPE (FmCorrectWindow, fm_correct_window, ADW_TYPE_WINDOW)

static double *
get_weighed (FmCorrectWindow *self)
{
  double *weighed_g = g_new0 (double, self->entries->len + 1);

  for (guint i = 0; i < self->entries->len; i++)
    weighed_g[i] = fm_number_entry_get_value (g_ptr_array_index (self->entries, i));
  return weighed_g;
}

static gboolean
entries_are_valid (FmCorrectWindow *self)
{
  gboolean valid =
      fm_number_entry_is_valid (self->test_entry) && fm_number_entry_is_valid (self->min_entry) &&
      fm_number_entry_is_valid (self->max_entry) && fm_number_entry_is_valid (self->step_entry);

  for (guint i = 0; i < self->entries->len; i++)
    valid &= fm_number_entry_is_valid (g_ptr_array_index (self->entries, i));
  return valid;
}

static void
show_total (FmCorrectWindow *self, double total_g, double weighed_fat_pct)
{
  g_autofree char *mass = fm_notebook_text (FM_MEASURE_MASS, total_g, 1);
  g_autofree char *fat = fm_number_format_unit (weighed_fat_pct, 1, "%");
  g_autofree char *text =
      isnan (weighed_fat_pct)
          ? g_strdup_printf (_ ("%s in all; fat by the weighed grams is not known"), mass)
          : g_strdup_printf (_ ("%s in all; fat by the weighed grams %s"), mass, fat);

  gtk_label_set_text (self->total_label, text);
}

/* The chosen ingredient's answer apart, as it is what was asked for. */
static void
show_corrections (FmCorrectWindow *self, GPtrArray *corrections)
{
  const guint selected = gtk_drop_down_get_selected (self->add_drop);
  const FmIngredient *chosen =
      selected < self->ingredients->len ? g_ptr_array_index (self->ingredients, selected) : NULL;
  g_autoptr (GString) others = g_string_new (NULL);
  g_autofree char *answer = NULL;

  for (guint i = 0; i < corrections->len; i++) {
    const FmCorrection *correction = g_ptr_array_index (corrections, i);

    if (correction->ingredient == chosen)
      answer = fm_correct_text (correction);
    else if (correction->to_edge.possible && correction->to_edge.add_g > 0.0)
      g_string_append_printf (others, "%s%s", others->len > 0 ? "\n" : _ ("Or instead:\n"),
                              correction->to_edge.sentence);
  }
  gtk_label_set_text (self->answer_label, answer != NULL ? answer : "");
  gtk_label_set_text (self->others_label, others->str);
  gtk_widget_set_visible (GTK_WIDGET (self->others_label), others->len > 0);
}

static void
show_answer (FmCorrectWindow *self, const FmFormula *weighed)
{
  g_autoptr (FmAnalysis) analysis = fm_analysis_new (weighed);
  const double tested_pct = fm_number_entry_get_value (self->test_entry);
  const FmBand band = { fm_number_entry_get_value (self->min_entry),
                        fm_number_entry_get_value (self->max_entry) };
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) corrections = fm_batch_corrections (
      fm_formula_total_g (weighed), isnan (tested_pct) ? analysis->fat_pct : tested_pct, &band,
      self->ingredients, fm_number_entry_get_value (self->step_entry), &error);

  show_total (self, fm_formula_total_g (weighed), analysis->fat_pct);
  if (corrections != NULL) {
    show_corrections (self, corrections);
    return;
  }
  gtk_label_set_text (self->answer_label, error->message);
  gtk_widget_set_visible (GTK_WIDGET (self->others_label), FALSE);
}

static void
changed_cb (FmCorrectWindow *self)
{
  g_autofree double *weighed_g = NULL;
  g_autoptr (FmFormula) weighed = NULL;
  g_autofree char *top_up = NULL;

  if (self->planned == NULL)
    return;
  if (!entries_are_valid (self)) {
    gtk_label_set_text (self->answer_label, _ ("Correct the marked numbers first."));
    gtk_widget_set_visible (GTK_WIDGET (self->others_label), FALSE);
    return;
  }
  weighed_g = get_weighed (self);
  weighed = fm_correct_weighed_formula (self->planned, weighed_g);
  top_up = fm_correct_top_up_text (self->planned, weighed_g);
  show_answer (self, weighed);
  gtk_label_set_text (self->top_up_label, top_up);
}

static void
fill_ingredients (FmCorrectWindow *self, guint selected)
{
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);

  for (guint i = 0; i < self->ingredients->len; i++)
    gtk_string_list_append (names,
                            ((FmIngredient *)g_ptr_array_index (self->ingredients, i))->name);
  gtk_drop_down_set_model (self->add_drop, G_LIST_MODEL (names));
  gtk_drop_down_set_selected (self->add_drop, selected);
}

/* A cut that is found joins the list, chosen; one that is there already is chosen. */
static void
take_ingredient (FmCorrectWindow *self, FmIngredient *ingredient)
{
  const char *identity = fm_ingredient_identity (ingredient);
  guint index = 0;

  while (index < self->ingredients->len &&
         !g_str_equal (identity,
                       fm_ingredient_identity (g_ptr_array_index (self->ingredients, index))))
    index++;
  if (index == self->ingredients->len)
    g_ptr_array_add (self->ingredients, fm_ingredient_ref (ingredient));
  fill_ingredients (self, index);
  changed_cb (self);
}

static void
own_entry_cb (FmCorrectWindow *self, const char *text)
{
  g_autoptr (FmIngredient) blank = fm_ingredient_new (text, FM_INGREDIENT_CUT);
  FmIngredientDialog *dialog =
      fm_ingredient_dialog_ask (GTK_WIDGET (self), self->session, blank, TRUE);

  g_signal_connect_object (dialog, "written", G_CALLBACK (take_ingredient), self,
                           G_CONNECT_SWAPPED);
}

static void
close_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  gtk_window_close (GTK_WINDOW (widget));
}

static void
fm_correct_window_dispose (GObject *object)
{
  FmCorrectWindow *self = FM_CORRECT_WINDOW (object);

  g_clear_pointer (&self->planned, fm_formula_free);
  g_clear_object (&self->session);
  gtk_widget_dispose_template (GTK_WIDGET (self), FM_TYPE_CORRECT_WINDOW);
  g_clear_pointer (&self->ingredients, g_ptr_array_unref);
  g_clear_pointer (&self->entries, g_ptr_array_unref);
  G_OBJECT_CLASS (fm_correct_window_parent_class)->dispose (object);
}

static void
fm_correct_window_class_init (FmCorrectWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_correct_window_dispose;
  g_type_ensure (FM_TYPE_NUMBER_ENTRY);
  g_type_ensure (FM_TYPE_FOOD_SEARCH);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/batch/fm-correct-window.ui");
  gtk_widget_class_bind_template_child (widget_class, FmCorrectWindow, origin_label);
  gtk_widget_class_bind_template_child (widget_class, FmCorrectWindow, weighed_list);
  gtk_widget_class_bind_template_child (widget_class, FmCorrectWindow, total_label);
  gtk_widget_class_bind_template_child (widget_class, FmCorrectWindow, test_entry);
  gtk_widget_class_bind_template_child (widget_class, FmCorrectWindow, min_entry);
  gtk_widget_class_bind_template_child (widget_class, FmCorrectWindow, max_entry);
  gtk_widget_class_bind_template_child (widget_class, FmCorrectWindow, add_drop);
  gtk_widget_class_bind_template_child (widget_class, FmCorrectWindow, search);
  gtk_widget_class_bind_template_child (widget_class, FmCorrectWindow, step_entry);
  gtk_widget_class_bind_template_child (widget_class, FmCorrectWindow, answer_label);
  gtk_widget_class_bind_template_child (widget_class, FmCorrectWindow, others_label);
  gtk_widget_class_bind_template_child (widget_class, FmCorrectWindow, top_up_label);
  gtk_widget_class_bind_template_child (widget_class, FmCorrectWindow, scroller);
  gtk_widget_class_bind_template_callback (widget_class, changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, take_ingredient);
  gtk_widget_class_bind_template_callback (widget_class, own_entry_cb);
  gtk_widget_class_install_action (widget_class, "correct.close", NULL, close_action);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "correct.close", NULL);
}

/* Text that is no number changes no value, yet the answer no longer belongs to what is shown. */
static void
follow_errors (FmCorrectWindow *self, FmNumberEntry *entry)
{
  fm_number_row_tell_errors (entry);
  g_signal_connect_swapped (entry, "notify::message", G_CALLBACK (changed_cb), self);
}

static void
fm_correct_window_init (FmCorrectWindow *self)
{
  self->entries = g_ptr_array_new ();
  gtk_widget_init_template (GTK_WIDGET (self));
  fm_widget_ellipsize_drop_down (self->add_drop);
  fm_accessible_name_drop_down (self->add_drop, _ ("Ingredient to add"));
  fm_number_entry_set_range (self->test_entry, 0.0, 100.0);
  fm_number_entry_set_range (self->min_entry, 0.0, 100.0);
  fm_number_entry_set_range (self->max_entry, 0.0, 100.0);
  fm_number_entry_set_range (self->step_entry, 0.0, MAX_SCALE_STEP_G);
  fm_number_entry_set_value (self->step_entry, DEFAULT_SCALE_STEP_G);
  follow_errors (self, self->test_entry);
  follow_errors (self, self->min_entry);
  follow_errors (self, self->max_entry);
  follow_errors (self, self->step_entry);
  g_signal_connect_swapped (self->add_drop, "notify::selected", G_CALLBACK (changed_cb), self);
}

static void
add_line (FmCorrectWindow *self, const FmFormulaLine *line, double weighed_g)
{
  g_autofree char *what = fm_notebook_weighed_name (line->ingredient->name);
  g_autofree char *mass = fm_notebook_text (FM_MEASURE_MASS, line->mass_g, 1);
  g_autofree char *planned = g_strdup_printf (_ ("planned %s"), mass);
  GtkWidget *row = adw_action_row_new ();
  GtkWidget *entry = fm_number_entry_new (what, 0.0, FM_MAX_LINE_MASS_G, 2);

  adw_preferences_row_set_use_markup (ADW_PREFERENCES_ROW (row), FALSE);
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), line->ingredient->name);
  adw_action_row_set_subtitle (ADW_ACTION_ROW (row), planned);
  gtk_widget_set_valign (entry, GTK_ALIGN_CENTER);
  fm_number_entry_set_measure (FM_NUMBER_ENTRY (entry), FM_MEASURE_MASS);
  fm_number_entry_set_value (FM_NUMBER_ENTRY (entry), weighed_g);
  g_signal_connect_swapped (entry, "value-changed", G_CALLBACK (changed_cb), self);
  adw_action_row_add_suffix (ADW_ACTION_ROW (row), entry);
  follow_errors (self, FM_NUMBER_ENTRY (entry));
  gtk_list_box_append (self->weighed_list, row);
  g_ptr_array_add (self->entries, entry);
}

FmCorrectWindow *
fm_correct_window_new (GtkWindow *parent,
                       FmSession *session,
                       const FmFormula *formula,
                       const double *weighed_g)
{
  FmCorrectWindow *self = g_object_new (FM_TYPE_CORRECT_WINDOW, "transient-for", parent, NULL);
  const FmBand band = fm_correct_default_band (formula);

  for (guint i = 0; i < fm_formula_n_lines (formula); i++) {
    const FmFormulaLine *line = fm_formula_line (formula, i);
    const gboolean known = weighed_g != NULL && !isnan (weighed_g[i]);

    add_line (self, line, known ? weighed_g[i] : line->mass_g);
  }
  self->ingredients = fm_correct_ingredients (formula);
  fill_ingredients (self, 0);
  self->session = g_object_ref (session);
  fm_food_search_set_session (self->search, session);
  fm_number_entry_set_value (self->min_entry, band.min);
  fm_number_entry_set_value (self->max_entry, band.max);
  gtk_widget_set_visible (self->origin_label, weighed_g != NULL);
  self->planned = fm_formula_copy (formula);
  changed_cb (self);
  return self;
}
