/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-nutrition-panel.c - nutrients of what the centre shows, raw and cooked
 *
 * The rows are built once; an edit of the formula only changes label texts, at most once a frame
 * and not at all while the panel is hidden.
 */
#include "app/nutrition/fm-nutrition-panel.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/session/fm-notebook-settings.h"
#include "app/widgets/fm-derivation-window.h"
#include "app/widgets/fm-number-entry.h"
#include "app/nutrition/fm-nutrition-made.h"
#include "app/nutrition/fm-nutrition-give.h"
#include "app/nutrition/fm-nutrition-list.h"
#include "app/widgets/fm-widget.h"
#include "app/widgets/fm-wrap-layout.h"
#include "core/cooking/fm-cooking.h"
#include "core/base/fm-number.h"
#include "core/formula/fm-derivation.h"

struct _FmNutritionPanel {
  FmPage parent_instance;

  GtkToggleButton *raw_button;
  GtkToggleButton *cooked_button;
  GtkToggleButton *patty_button;
  GtkToggleButton *hundred_button;
  GtkRevealer *cooked_revealer;
  GtkDropDown *method_drop_down;
  FmNumberEntry *cooked_mass_entry;
  GtkLabel *made_label;
  GtkLabel *portion_label;
  GtkLabel *gap_label;
  GtkExpander *basis_expander;
  GtkLabel *basis_label;
  GtkLabel *problem_label;
  GtkCheckButton *daily_value_button;
  FmNutritionList *list;
  GtkLabel *daily_value_label;

  FmAmount amounts[FM_N_NUTRIENTS]; /* shown: of 100 g of the portion */
  double portion_g;
  guint tick_id;
};

G_DEFINE_FINAL_TYPE (FmNutritionPanel, fm_nutrition_panel, FM_TYPE_PAGE)

/* The experiment on the screen as it was made, else what the centre shows. */
static const FmFormula *
shown_formula (FmNutritionPanel *self)
{
  FmSession *session = fm_page_get_session (FM_PAGE (self));
  const FmCompareItem *made = session != NULL ? fm_session_get_made (session) : NULL;

  if (made != NULL)
    return made->formula;
  return session != NULL ? fm_session_get_formula (session) : NULL;
}

static const FmAnalysis *
shown_analysis (FmNutritionPanel *self)
{
  FmSession *session = fm_page_get_session (FM_PAGE (self));
  const FmCompareItem *made = session != NULL ? fm_session_get_made (session) : NULL;

  if (made != NULL)
    return made->analysis;
  return session != NULL ? fm_session_get_analysis (session) : NULL;
}

static void
show_problem (FmNutritionPanel *self, const char *text)
{
  fm_widget_set_label (self->problem_label, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (self->problem_label), text != NULL);
}

/* What rows would say alike is said once, and rows of the dataset to doubt are named. */
static void
say_gaps (FmNutritionPanel *self, const FmFormula *formula, const FmNutritionText *texts)
{
  g_autofree char *gaps = fm_nutrition_gaps (texts);
  g_autofree char *doubts = fm_derivation_doubts (formula);
  g_autoptr (GString) said = g_string_new (gaps);

  if (doubts != NULL)
    /* TRANSLATORS: "Beef, flank: Water, protein, fat, ash and carbohydrate add up to 97.7 g ..." */
    g_string_append_printf (said, _ ("%sFigures that cannot all be true: %s"),
                            said->len > 0 ? "\n" : "", doubts);
  fm_widget_set_label (self->gap_label, said->str);
  gtk_widget_set_visible (GTK_WIDGET (self->gap_label), said->len > 0);
}

/* @texts: FM_N_NUTRIENTS, zeroed. */
static void
tell_amounts (FmNutritionPanel *self,
              const FmAmount *amounts,
              double portion_g,
              FmNutritionText *texts)
{
  const FmFormula *formula = shown_formula (self);
  const FmAnalysis *raw = shown_analysis (self);

  for (guint i = 0; i < FM_N_NUTRIENTS; i++) {
    g_auto (GStrv) missing = NULL;

    /* No ingredient is to blame for what only the cooking table does not know. */
    if (fm_amount_knowledge (&amounts[i]) == fm_amount_knowledge (&raw->amounts[i]))
      missing = fm_analysis_missing (formula, i);
    fm_nutrition_text_init (&texts[i], i, &amounts[i], portion_g, (const char *const *)missing);
  }
}

static void
clear_texts (FmNutritionText *texts)
{
  for (guint i = 0; i < FM_N_NUTRIENTS; i++)
    fm_nutrition_text_clear (&texts[i]);
}

static void
show_amounts (FmNutritionPanel *self, const FmAmount *amounts, double portion_g)
{
  FmNutritionText texts[FM_N_NUTRIENTS] = { 0 };

  memcpy (self->amounts, amounts, sizeof self->amounts);
  self->portion_g = portion_g;
  tell_amounts (self, amounts, portion_g, texts);
  say_gaps (self, shown_formula (self), texts);
  fm_nutrition_list_show (self->list, texts, amounts);
  clear_texts (texts);
}

/* Salt on the surface counts in sodium, so it is named beside the portion. */
static char *
with_salt (const FmFormula *formula, const char *portion)
{
  const double salt_pct = formula->brief->surface_salt_pct;
  g_autofree char *salt = fm_number_format_unit (salt_pct, 2, "%");

  if (!(salt_pct > 0.0))
    return g_strdup (portion);
  /* Translators: "One raw patty, 180 g", "1.5 %" */
  return g_strdup_printf (_ ("%s, with %s salt on the surface"), portion, salt);
}

static void
show_raw (FmNutritionPanel *self, const FmAnalysis *analysis, const FmFormula *formula)
{
  double patty_g = formula->brief->patty_mass_g;
  gboolean per_patty = gtk_toggle_button_get_active (self->patty_button);
  g_autofree char *mass = per_patty ? fm_notebook_text (FM_MEASURE_MASS, patty_g, 0)
                                    : fm_number_format_unit (100.0, 0, "g");
  g_autofree char *portion =
      g_strdup_printf (per_patty ? _ ("One raw patty, %s") : _ ("%s of the raw blend"), mass);
  g_autofree char *salted = with_salt (formula, portion);

  fm_widget_set_label (self->portion_label, salted);
  show_problem (self, NULL);
  show_amounts (self, analysis->amounts, per_patty ? patty_g : 100.0);
}

/* "One cooked patty, 121 g: predicted from 180 g raw" */
static char *
cooked_portion_text (const FmCooked *cooked, double patty_g, gboolean per_patty)
{
  g_autofree char *raw = fm_notebook_text (FM_MEASURE_MASS, patty_g, 0);
  g_autofree char *mass =
      fm_notebook_text (FM_MEASURE_MASS, patty_g * cooked->yield_pct / 100.0, 0);
  g_autofree char *yield = fm_number_format_unit (cooked->yield_pct, 1, "%");

  if (per_patty && cooked->yield_measured)
    return g_strdup_printf (_ ("One cooked patty, %s as measured (%s raw)"), mass, raw);
  if (per_patty)
    return g_strdup_printf (_ ("One cooked patty, %s as predicted (%s raw)"), mass, raw);
  if (cooked->yield_measured)
    return g_strdup_printf (_ ("100 g cooked, at a measured yield of %s"), yield);
  return g_strdup_printf (_ ("100 g cooked, at a predicted yield of %s"), yield);
}

/* NULL when the cooked values are not known. */
static FmCooked *
cooked_of (FmNutritionPanel *self,
           const FmAnalysis *analysis,
           const FmFormula *formula,
           GError **error)
{
  const double measured_g = fm_number_entry_get_value (self->cooked_mass_entry);

  return fm_cooked_new (analysis, fm_formula_species (formula),
                        gtk_drop_down_get_selected (self->method_drop_down),
                        100.0 * measured_g / formula->brief->patty_mass_g, error);
}

static void
show_cooked (FmNutritionPanel *self, const FmAnalysis *analysis, const FmFormula *formula)
{
  double patty_g = formula->brief->patty_mass_g;
  static const FmAmount unknown[FM_N_NUTRIENTS] = { 0 };
  gboolean per_patty = gtk_toggle_button_get_active (self->patty_button);
  g_autoptr (GError) error = NULL;
  g_autoptr (FmCooked) cooked = NULL;
  g_autofree char *portion = NULL;
  g_autofree char *salted = NULL;

  cooked = cooked_of (self, analysis, formula, &error);
  gtk_widget_set_visible (GTK_WIDGET (self->basis_expander), cooked != NULL);
  if (cooked == NULL) {
    fm_widget_set_label (self->portion_label, _ ("Cooked values are not known"));
    show_problem (self, error->message);
    show_amounts (self, unknown, NAN);
    return;
  }
  portion = cooked_portion_text (cooked, patty_g, per_patty);
  salted = with_salt (formula, portion);
  fm_widget_set_label (self->portion_label, salted);
  fm_widget_set_label (self->basis_label, cooked->basis);
  show_problem (self, NULL);
  show_amounts (self, cooked->amounts, per_patty ? patty_g * cooked->yield_pct / 100.0 : 100.0);
}

static void
update (FmNutritionPanel *self)
{
  const FmAnalysis *analysis = shown_analysis (self);
  const FmFormula *formula = shown_formula (self);
  gboolean empty = analysis == NULL || formula == NULL || !(analysis->total_g > 0.0);
  gboolean cooked = gtk_toggle_button_get_active (self->cooked_button);

  gtk_widget_set_visible (GTK_WIDGET (self->list), !empty);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "nutrition.copy", !empty);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "nutrition.print", !empty);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "nutrition.csv", !empty);
  if (empty)
    gtk_widget_set_visible (GTK_WIDGET (self->gap_label), FALSE);
  if (empty || !cooked)
    gtk_widget_set_visible (GTK_WIDGET (self->basis_expander), FALSE);
  if (empty) {
    fm_widget_set_label (self->portion_label,
                         _ ("Nothing is weighed yet, so there is nothing to count."));
    show_problem (self, NULL);
  } else if (cooked) {
    show_cooked (self, analysis, formula);
  } else {
    show_raw (self, analysis, formula);
  }
}

static char *
derivation_text (FmNutritionPanel *self, FmNutrient nutrient)
{
  const FmFormula *formula = shown_formula (self);
  const FmAnalysis *analysis = shown_analysis (self);
  g_autofree char *raw = fm_derivation_nutrient (formula, analysis, nutrient);
  g_autoptr (FmCooked) cooked = NULL;
  g_autoptr (GError) error = NULL;

  if (!gtk_toggle_button_get_active (self->cooked_button))
    return g_steal_pointer (&raw);
  cooked = cooked_of (self, analysis, formula, &error);
  if (cooked == NULL)
    return g_strjoin ("\n\n", error->message, raw, NULL);
  g_autofree char *rule = fm_cooked_derivation (cooked, analysis, nutrient);
  return g_strjoin ("\n\n", rule, raw, NULL);
}

static void
activated_cb (FmNutritionPanel *self, guint nutrient)
{
  g_autofree char *text = derivation_text (self, (FmNutrient)nutrient);

  fm_derivation_window_show (GTK_WIDGET (self), fm_nutrient_name ((FmNutrient)nutrient), text);
}

static gboolean
tick_cb (GtkWidget *widget, GdkFrameClock *clock, gpointer user_data)
{
  FmNutritionPanel *self = FM_NUTRITION_PANEL (widget);

  self->tick_id = 0;
  update (self);
  return G_SOURCE_REMOVE;
}

static void
queue_update_cb (FmNutritionPanel *self)
{
  if (self->tick_id == 0 && gtk_widget_get_mapped (GTK_WIDGET (self)))
    self->tick_id = gtk_widget_add_tick_callback (GTK_WIDGET (self), tick_cb, NULL, NULL);
}

/* A measured mass belongs to what it was weighed of: an experiment brings its own. */
static void
shown_changed_cb (FmNutritionPanel *self)
{
  const FmCompareItem *made = fm_session_get_made (fm_page_get_session (FM_PAGE (self)));
  g_autofree char *text = made != NULL ? fm_nutrition_made_text (made) : NULL;
  double cooked_g = NAN;

  if (made != NULL && !isnan (made->cook_loss_pct)) {
    cooked_g = made->formula->brief->patty_mass_g * (1.0 - made->cook_loss_pct / 100.0);
    gtk_drop_down_set_selected (self->method_drop_down, made->experiment->method);
  }
  fm_number_entry_set_value (self->cooked_mass_entry, cooked_g);
  fm_widget_set_label (self->made_label, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (self->made_label), text != NULL);
  queue_update_cb (self);
}

static void
cooked_toggled_cb (FmNutritionPanel *self)
{
  gtk_revealer_set_reveal_child (self->cooked_revealer,
                                 gtk_toggle_button_get_active (self->cooked_button));
  queue_update_cb (self);
}

static void
cooked_mass_changed_cb (FmNutritionPanel *self)
{
  queue_update_cb (self);
}

static void
daily_value_toggled_cb (FmNutritionPanel *self)
{
  gboolean shown = gtk_check_button_get_active (self->daily_value_button);

  gtk_widget_set_visible (GTK_WIDGET (self->daily_value_label), shown);
  fm_nutrition_list_show_daily_value (self->list, shown);
}

static char *
name_subject (FmNutritionPanel *self)
{
  FmSession *session = fm_page_get_session (FM_PAGE (self));
  const FmCompareItem *made = fm_session_get_made (session);

  return made != NULL ? g_strdup_printf ("%s, %s", made->short_title, made->title)
                      : fm_session_dup_shown (session);
}

/* What is missing, and how it was cooked; NULL when nothing is to be said. */
static char *
tell_notes (FmNutritionPanel *self)
{
  g_autoptr (GString) notes = g_string_new (gtk_label_get_text (self->made_label));

  if (gtk_widget_get_visible (GTK_WIDGET (self->gap_label)))
    g_string_append_printf (notes, "%s%s", notes->len > 0 ? "\n" : "",
                            gtk_label_get_text (self->gap_label));
  if (gtk_widget_get_visible (GTK_WIDGET (self->basis_expander)))
    g_string_append_printf (notes, "%s%s", notes->len > 0 ? "\n" : "",
                            gtk_label_get_text (self->basis_label));
  return notes->len > 0 ? g_string_free (g_steal_pointer (&notes), FALSE) : NULL;
}

/* Hands what is shown to @give. */
static void
hand_out (FmNutritionPanel *self, void (*give) (GtkWidget *owner, const FmNutritionTable *table))
{
  FmNutritionText texts[FM_N_NUTRIENTS] = { 0 };
  g_autofree char *subject = name_subject (self);
  g_autofree char *notes = tell_notes (self);

  tell_amounts (self, self->amounts, self->portion_g, texts);
  give (GTK_WIDGET (self),
        &(FmNutritionTable){
            .subject = subject != NULL ? subject : "",
            .portion = gtk_label_get_text (self->portion_label),
            .notes = notes,
            .amounts = self->amounts,
            .texts = texts,
            .portion_g = self->portion_g,
            .has_daily_value = gtk_check_button_get_active (self->daily_value_button),
        });
  clear_texts (texts);
}

static void
copy_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  hand_out (FM_NUTRITION_PANEL (widget), fm_nutrition_give_copy);
}

static void
print_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  hand_out (FM_NUTRITION_PANEL (widget), fm_nutrition_give_print);
}

static void
csv_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  hand_out (FM_NUTRITION_PANEL (widget), fm_nutrition_give_csv);
}

static void
fill_methods (FmNutritionPanel *self)
{
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);

  for (guint i = 0; i < FM_N_COOK_METHODS; i++)
    gtk_string_list_append (names, fm_cook_method_name (i));
  gtk_drop_down_set_model (self->method_drop_down, G_LIST_MODEL (names));
  /* The focus goes to the button inside, which a screen reader would call by its type. */
  gtk_accessible_update_property (
      GTK_ACCESSIBLE (gtk_widget_get_first_child (GTK_WIDGET (self->method_drop_down))),
      GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Cooking method"), -1);
}

static void
fm_nutrition_panel_map (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (fm_nutrition_panel_parent_class)->map (widget);
  update (FM_NUTRITION_PANEL (widget));
}

static void
fm_nutrition_panel_show_session (FmPage *page)
{
  if (fm_page_get_session (page) != NULL)
    shown_changed_cb (FM_NUTRITION_PANEL (page));
}

static void
fm_nutrition_panel_dispose (GObject *object)
{
  FmNutritionPanel *self = FM_NUTRITION_PANEL (object);

  if (self->tick_id != 0)
    gtk_widget_remove_tick_callback (GTK_WIDGET (self), self->tick_id);
  self->tick_id = 0;
  fm_widget_drop_template (GTK_WIDGET (self), FM_TYPE_NUTRITION_PANEL);
  G_OBJECT_CLASS (fm_nutrition_panel_parent_class)->dispose (object);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, FmNutritionPanel, raw_button);
  gtk_widget_class_bind_template_child (widget_class, FmNutritionPanel, cooked_button);
  gtk_widget_class_bind_template_child (widget_class, FmNutritionPanel, patty_button);
  gtk_widget_class_bind_template_child (widget_class, FmNutritionPanel, hundred_button);
  gtk_widget_class_bind_template_child (widget_class, FmNutritionPanel, cooked_revealer);
  gtk_widget_class_bind_template_child (widget_class, FmNutritionPanel, method_drop_down);
  gtk_widget_class_bind_template_child (widget_class, FmNutritionPanel, cooked_mass_entry);
  gtk_widget_class_bind_template_child (widget_class, FmNutritionPanel, made_label);
  gtk_widget_class_bind_template_child (widget_class, FmNutritionPanel, portion_label);
  gtk_widget_class_bind_template_child (widget_class, FmNutritionPanel, gap_label);
  gtk_widget_class_bind_template_child (widget_class, FmNutritionPanel, basis_expander);
  gtk_widget_class_bind_template_child (widget_class, FmNutritionPanel, basis_label);
  gtk_widget_class_bind_template_child (widget_class, FmNutritionPanel, problem_label);
  gtk_widget_class_bind_template_child (widget_class, FmNutritionPanel, daily_value_button);
  gtk_widget_class_bind_template_child (widget_class, FmNutritionPanel, list);
  gtk_widget_class_bind_template_child (widget_class, FmNutritionPanel, daily_value_label);
  gtk_widget_class_bind_template_callback (widget_class, queue_update_cb);
  gtk_widget_class_bind_template_callback (widget_class, cooked_toggled_cb);
  gtk_widget_class_bind_template_callback (widget_class, cooked_mass_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, daily_value_toggled_cb);
  gtk_widget_class_bind_template_callback (widget_class, activated_cb);
}

static void
fm_nutrition_panel_class_init (FmNutritionPanelClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (FM_TYPE_NUMBER_ENTRY);
  object_class->dispose = fm_nutrition_panel_dispose;
  widget_class->map = fm_nutrition_panel_map;
  FM_PAGE_CLASS (klass)->show_session = fm_nutrition_panel_show_session;
  g_type_ensure (FM_TYPE_WRAP_LAYOUT);
  g_type_ensure (FM_TYPE_NUTRITION_LIST);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/nutrition/fm-nutrition-panel.ui");
  bind_template (widget_class);
  gtk_widget_class_install_action (widget_class, "nutrition.copy", NULL, copy_action);
  gtk_widget_class_install_action (widget_class, "nutrition.print", NULL, print_action);
  gtk_widget_class_install_action (widget_class, "nutrition.csv", NULL, csv_action);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
fm_nutrition_panel_init (FmNutritionPanel *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  g_signal_connect_object (fm_notebook_settings_get_default (), "changed",
                           G_CALLBACK (queue_update_cb), self, G_CONNECT_SWAPPED);
  fill_methods (self);
  fm_page_listen (FM_PAGE (self), "changed::formula", G_CALLBACK (queue_update_cb));
  fm_page_listen (FM_PAGE (self), "changed::shown", G_CALLBACK (shown_changed_cb));
  fm_page_listen (FM_PAGE (self), "changed::made", G_CALLBACK (shown_changed_cb));
}
