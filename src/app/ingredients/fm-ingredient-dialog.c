/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-ingredient-dialog.c - the figures of one ingredient: an own entry, or those of a line */
#include "app/ingredients/fm-ingredient-dialog.h"

#include "app/session/fm-clock.h"
#include "app/session/fm-store-task.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "app/session/fm-formula-line-edit.h"
#include "app/session/fm-ingredient-keep.h"
#include "app/ingredients/fm-ingredient-allergens.h"
#include "app/ingredients/fm-ingredient-spread.h"
#include "app/widgets/fm-number-entry.h"
#include "core/base/fm-date.h"
#include "core/base/fm-number.h"
#include "core/composition/fm-slip.h"
#include "store/fm-prices.h"
#include "store/fm-versions.h"

#define N_KINDS (FM_INGREDIENT_OTHER + 1)
/* A kilogram of saffron costs less: beyond this it is a slip of the finger. */
#define MAX_PRICE_PER_KG 1e6
#define N_PRICES_SHOWN 5

/* The figures that a meat laboratory reports, in the order of its sheet. */
static const FmNutrient analysed[] = {
  FM_NUTRIENT_FAT,           FM_NUTRIENT_PROTEIN,      FM_NUTRIENT_WATER,
  FM_NUTRIENT_ASH,           FM_NUTRIENT_CARBOHYDRATE, FM_NUTRIENT_ENERGY_KCAL,
  FM_NUTRIENT_SATURATED_FAT, FM_NUTRIENT_CHOLESTEROL,  FM_NUTRIENT_SODIUM,
};

struct _FmIngredientDialog {
  AdwWindow parent_instance;

  GtkLabel *error_label;
  AdwPreferencesGroup *name_group;
  GtkEditable *name_row;
  AdwComboRow *kind_row;
  AdwComboRow *species_row;
  GtkEditable *source_row;
  AdwPreferencesGroup *fat_group;
  AdwPreferencesGroup *analysis_group;
  AdwPreferencesGroup *cost_group;
  FmIngredientAllergens *allergens;
  GtkSwitch *keep_switch;

  FmNumberEntry *lean_entry;
  FmNumberEntry *fat_u_entry;
  FmNumberEntry *collagen_entry;
  FmNumberEntry *price_entry;
  FmNumberEntry *yield_entry;
  FmNumberEntry *analysis_entries[G_N_ELEMENTS (analysed)];

  FmSession *session;
  char *line_id;
  gboolean asks;            /* answers by the signal in place of a line */
  FmIngredient *ingredient; /* as it was when the dialog opened */
};

G_DEFINE_FINAL_TYPE (FmIngredientDialog, fm_ingredient_dialog, ADW_TYPE_WINDOW)

enum {
  WRITTEN,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static FmNumberEntry *
add_number_row (AdwPreferencesGroup *group,
                const char *title,
                const char *subtitle,
                const char *unit,
                double maximum)
{
  GtkWidget *row = adw_action_row_new ();
  GtkWidget *entry = fm_number_entry_new (title, 0.0, maximum, 3);

  adw_preferences_row_set_use_markup (ADW_PREFERENCES_ROW (row), FALSE);
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), title);
  adw_action_row_set_title_lines (ADW_ACTION_ROW (row), 0);
  if (subtitle != NULL)
    adw_action_row_set_subtitle (ADW_ACTION_ROW (row), subtitle);
  fm_number_entry_set_unit (FM_NUMBER_ENTRY (entry), unit);
  gtk_widget_set_valign (entry, GTK_ALIGN_CENTER);
  gtk_widget_set_size_request (entry, 130, -1);
  adw_action_row_add_suffix (ADW_ACTION_ROW (row), entry);
  adw_action_row_set_activatable_widget (ADW_ACTION_ROW (row), entry);
  adw_preferences_group_add (group, row);
  return FM_NUMBER_ENTRY (entry);
}

static void
add_number_rows (FmIngredientDialog *self)
{
  self->lean_entry = add_number_row (self->fat_group, _ ("Supplier's lean point"),
                                     _ ("The lean part: 80 for 80/20"), _ ("% lean"), 100.0);
  self->fat_u_entry = add_number_row (self->fat_group, _ ("Standard uncertainty of the fat"),
                                      _ ("One standard deviation, if it is known"), _ ("g"), 50.0);
  for (guint i = 0; i < G_N_ELEMENTS (analysed); i++) {
    const FmNutrientInfo *info = fm_nutrient_info (analysed[i]);
    const double maximum = g_str_equal (info->unit, "g") ? 100.0 : 1e6;

    self->analysis_entries[i] = add_number_row (
        self->analysis_group, fm_nutrient_name (analysed[i]), NULL, info->unit, maximum);
  }
  self->collagen_entry = add_number_row (
      self->analysis_group, _ ("Collagen"),
      _ ("Part of the protein. From hydroxyproline: times 8 (EU 1169/2011, Annex VI)"), _ ("g"),
      100.0);
  self->price_entry =
      add_number_row (self->cost_group, _ ("Price as purchased"), NULL, NULL, MAX_PRICE_PER_KG);
  fm_number_entry_set_measure (self->price_entry, FM_MEASURE_PRICE);
  self->yield_entry =
      add_number_row (self->cost_group, _ ("Edible yield"),
                      _ ("Of the mass as purchased; blank counts as 100 %"), "%", 100.0);
}

static void
fill_kinds (FmIngredientDialog *self)
{
  g_autoptr (GtkStringList) kinds = gtk_string_list_new (NULL);

  for (guint i = 0; i < N_KINDS; i++)
    gtk_string_list_append (kinds, fm_ingredient_kind_name ((FmIngredientKind)i));
  adw_combo_row_set_model (self->kind_row, G_LIST_MODEL (kinds));
}

static void
fill_species (FmIngredientDialog *self)
{
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);

  for (guint i = 0; i < FM_N_SPECIES; i++)
    gtk_string_list_append (names, fm_species_name ((FmSpecies)i));
  adw_combo_row_set_model (self->species_row, G_LIST_MODEL (names));
}

/* How the energy was counted, and which figures cannot all be true. */
static void
show_doubts (FmIngredientDialog *self)
{
  const FmIngredient *from = self->ingredient;
  const FmEnergyRule rule = fm_composition_energy_rule (&from->composition);
  g_autofree char *slips = fm_composition_slip_text (&from->composition);
  g_autofree char *counted = g_strdup_printf (_ ("Energy counted %s."), fm_energy_rule_name (rule));
  g_autofree char *text = NULL;

  if (from->provenance == FM_PROVENANCE_DATASET && fm_slip_protein_is_dropped (from->source_ref))
    text = g_strdup (_ ("The dataset gives 0.01 g protein, and the parts of the row fall short by "
                        "grams; its protein counts as not known."));
  else if (rule != FM_ENERGY_RULE_UNKNOWN)
    text = slips != NULL ? g_strjoin ("\n", slips, counted, NULL) : g_strdup (counted);
  else
    text = g_steal_pointer (&slips);
  adw_preferences_group_set_description (self->analysis_group, text);
}

static void
show_ingredient (FmIngredientDialog *self)
{
  const FmIngredient *from = self->ingredient;
  g_autofree char *source = fm_ingredient_describe_source (from);

  gtk_editable_set_text (self->name_row, from->name);
  adw_preferences_group_set_description (self->name_group, source);
  adw_combo_row_set_selected (self->kind_row, (guint)from->kind);
  adw_combo_row_set_selected (self->species_row, (guint)from->species);
  gtk_editable_set_text (self->source_row, from->source_ref != NULL ? from->source_ref : "");
  fm_number_entry_set_value (self->lean_entry, 100.0 - from->declared_fat_pct);
  fm_number_entry_set_value (self->fat_u_entry, from->fat_u_g_per_100g);
  fm_ingredient_spread_offer (self->fat_group, from, self->fat_u_entry);
  fm_number_entry_set_value (self->collagen_entry, from->collagen_g_per_100g);
  fm_number_entry_set_value (self->price_entry, from->price_per_kg);
  fm_number_entry_set_value (self->yield_entry, from->ep_yield_pct);
  fm_ingredient_allergens_show (self->allergens, from);
  show_doubts (self);
  for (guint i = 0; i < G_N_ELEMENTS (analysed); i++)
    fm_number_entry_set_value (self->analysis_entries[i], from->composition.per_100g[analysed[i]]);
}

static const char *
first_bad_text (FmIngredientDialog *self)
{
  FmNumberEntry *others[] = { self->lean_entry, self->fat_u_entry, self->collagen_entry,
                              self->price_entry, self->yield_entry };

  for (guint i = 0; i < G_N_ELEMENTS (others); i++) {
    if (!fm_number_entry_is_valid (others[i]))
      return fm_number_entry_get_message (others[i]);
  }
  for (guint i = 0; i < G_N_ELEMENTS (analysed); i++) {
    if (!fm_number_entry_is_valid (self->analysis_entries[i]))
      return fm_number_entry_get_message (self->analysis_entries[i]);
  }
  return NULL;
}

/* A dataset row whose figures were left alone is still that row; else say whose figures they are.
 */
static FmProvenance
judge_provenance (const FmIngredient *before, const FmIngredient *after)
{
  if (before->provenance == FM_PROVENANCE_DATASET &&
      fm_composition_equal (&before->composition, &after->composition))
    return FM_PROVENANCE_DATASET;
  if (fm_composition_n_known (&after->composition) > 0)
    return FM_PROVENANCE_ANALYSIS;
  return isnan (after->declared_fat_pct) ? FM_PROVENANCE_NONE : FM_PROVENANCE_DECLARED;
}

/* A row whose figures were changed is named by its cook; one that is named anew keeps its own name.
 */
static void
keep_full_name (const FmIngredient *before, FmIngredient *next)
{
  if (next->provenance != FM_PROVENANCE_DATASET)
    g_clear_pointer (&next->full_name, g_free);
  else if (next->full_name == NULL && !g_str_equal (before->name, next->name))
    next->full_name = g_strdup (before->name);
}

static FmIngredient *
read_ingredient (FmIngredientDialog *self)
{
  FmIngredient *next = fm_ingredient_copy (self->ingredient);

  g_free (next->name);
  g_free (next->source_ref);
  next->name = g_strstrip (g_strdup (gtk_editable_get_text (self->name_row)));
  next->source_ref = g_strstrip (g_strdup (gtk_editable_get_text (self->source_row)));
  if (next->source_ref[0] == '\0')
    g_clear_pointer (&next->source_ref, g_free);
  next->kind = (FmIngredientKind)adw_combo_row_get_selected (self->kind_row);
  next->species = (FmSpecies)adw_combo_row_get_selected (self->species_row);
  next->declared_fat_pct = 100.0 - fm_number_entry_get_value (self->lean_entry);
  next->fat_u_g_per_100g = fm_number_entry_get_value (self->fat_u_entry);
  next->collagen_g_per_100g = fm_number_entry_get_value (self->collagen_entry);
  next->price_per_kg = fm_number_entry_get_value (self->price_entry);
  next->ep_yield_pct = fm_number_entry_get_value (self->yield_entry);
  for (guint i = 0; i < G_N_ELEMENTS (analysed); i++)
    next->composition.per_100g[analysed[i]] = fm_number_entry_get_value (self->analysis_entries[i]);
  fm_ingredient_allergens_read (self->allergens, next);
  next->provenance = judge_provenance (self->ingredient, next);
  keep_full_name (self->ingredient, next);
  return next;
}

static void
say_error (FmIngredientDialog *self, const char *message)
{
  gtk_label_set_text (self->error_label, message);
  gtk_widget_set_visible (GTK_WIDGET (self->error_label), TRUE);
}

static void
save_cb (FmIngredientDialog *self)
{
  g_autoptr (FmIngredient) next = NULL;
  g_autoptr (GError) error = NULL;
  const char *bad = first_bad_text (self);

  if (bad != NULL) {
    say_error (self, bad);
    return;
  }
  next = read_ingredient (self);
  if (next->name[0] == '\0') {
    say_error (self, _ ("The ingredient needs a name. Type one and save again."));
    gtk_widget_grab_focus (GTK_WIDGET (self->name_row));
    return;
  }
  if (!fm_ingredient_check (next, &error)) {
    say_error (self, error->message);
    return;
  }
  if (self->asks)
    g_signal_emit (self, signals[WRITTEN], 0, next);
  else if (self->line_id != NULL)
    fm_line_edit_ingredient (self->session, self->line_id, next);
  else
    g_free (fm_line_edit_add (self->session, next));
  fm_ingredient_keep (self->session, next, gtk_switch_get_active (self->keep_switch));
  gtk_window_close (GTK_WINDOW (self));
}

static gpointer
list_prices (FmNotebook *notebook, gpointer identity, GCancellable *cancellable, GError **error)
{
  return fm_prices_list (notebook, identity, N_PRICES_SHOWN, error);
}

static char *
price_text (const FmPrice *price)
{
  g_autofree char *day = fm_date_text (price->recorded_at);
  g_autofree char *number = fm_number_format (price->price_per_kg, 2);

  /* Translators: price of a kilogram, date from which it was noted */
  return g_strdup_printf (_ ("%s per kg, noted %s"), number, day);
}

static void
history_read_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  FmIngredientDialog *self = FM_INGREDIENT_DIALOG (source);
  g_autoptr (GError) error = NULL;
  g_autoptr (GArray) prices = fm_store_task_finish (result, &error);
  g_autoptr (GString) text = g_string_new (NULL);

  if (self->session == NULL)
    return;
  if (prices == NULL) {
    say_error (self, error->message);
    return;
  }
  for (guint i = 0; i < prices->len; i++) {
    g_autofree char *line = price_text (&g_array_index (prices, FmPrice, i));

    g_string_append_printf (text, "%s%s", i > 0 ? "\n" : "", line);
  }
  if (prices->len > 0)
    adw_preferences_group_set_description (self->cost_group, text->str);
}

static void
read_history (FmIngredientDialog *self)
{
  FmNotebook *notebook = fm_session_get_notebook (self->session);

  if (notebook == NULL)
    return;
  fm_store_task (&(FmStoreTask){
      .owner = self,
      .notebook = notebook,
      .run = list_prices,
      .free_result = (GDestroyNotify)g_array_unref,
      .data = g_strdup (fm_ingredient_identity (self->ingredient)),
      .free_data = g_free,
      .done = history_read_cb,
  });
}

static void
fm_ingredient_dialog_dispose (GObject *object)
{
  FmIngredientDialog *self = FM_INGREDIENT_DIALOG (object);

  g_clear_object (&self->session);
  g_clear_pointer (&self->ingredient, fm_ingredient_unref);
  g_clear_pointer (&self->line_id, g_free);
  gtk_widget_dispose_template (GTK_WIDGET (object), FM_TYPE_INGREDIENT_DIALOG);
  G_OBJECT_CLASS (fm_ingredient_dialog_parent_class)->dispose (object);
}

static void
fm_ingredient_dialog_class_init (FmIngredientDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_ingredient_dialog_dispose;
  g_type_ensure (FM_TYPE_INGREDIENT_ALLERGENS);
  signals[WRITTEN] = g_signal_new ("written", FM_TYPE_INGREDIENT_DIALOG, G_SIGNAL_RUN_LAST, 0, NULL,
                                   NULL, NULL, G_TYPE_NONE, 1, G_TYPE_POINTER);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/ingredients/fm-ingredient-dialog.ui");
  gtk_widget_class_bind_template_child (widget_class, FmIngredientDialog, error_label);
  gtk_widget_class_bind_template_child (widget_class, FmIngredientDialog, name_group);
  gtk_widget_class_bind_template_child (widget_class, FmIngredientDialog, name_row);
  gtk_widget_class_bind_template_child (widget_class, FmIngredientDialog, kind_row);
  gtk_widget_class_bind_template_child (widget_class, FmIngredientDialog, species_row);
  gtk_widget_class_bind_template_child (widget_class, FmIngredientDialog, source_row);
  gtk_widget_class_bind_template_child (widget_class, FmIngredientDialog, fat_group);
  gtk_widget_class_bind_template_child (widget_class, FmIngredientDialog, analysis_group);
  gtk_widget_class_bind_template_child (widget_class, FmIngredientDialog, cost_group);
  gtk_widget_class_bind_template_child (widget_class, FmIngredientDialog, allergens);
  gtk_widget_class_bind_template_child (widget_class, FmIngredientDialog, keep_switch);
  gtk_widget_class_bind_template_callback (widget_class, save_cb);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
fm_ingredient_dialog_init (FmIngredientDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  add_number_rows (self);
  fill_kinds (self);
  fill_species (self);
}

static FmIngredientDialog *
dialog_new (GtkWidget *parent, FmSession *session, const FmIngredient *ingredient, gboolean keep)
{
  FmIngredientDialog *self =
      g_object_new (FM_TYPE_INGREDIENT_DIALOG, "transient-for", gtk_widget_get_root (parent), NULL);

  self->session = g_object_ref (session);
  self->ingredient = fm_ingredient_copy (ingredient);
  gtk_switch_set_active (self->keep_switch, keep);
  show_ingredient (self);
  read_history (self);
  return self;
}

void
fm_ingredient_dialog_present (GtkWidget *parent,
                              FmSession *session,
                              const char *line_id,
                              const FmIngredient *ingredient)
{
  FmIngredientDialog *self = dialog_new (parent, session, ingredient, line_id == NULL);

  self->line_id = g_strdup (line_id);
  if (line_id == NULL)
    gtk_window_set_title (GTK_WINDOW (self), _ ("Own Entry"));
  gtk_window_present (GTK_WINDOW (self));
}

FmIngredientDialog *
fm_ingredient_dialog_ask (GtkWidget *parent,
                          FmSession *session,
                          const FmIngredient *ingredient,
                          gboolean keep)
{
  FmIngredientDialog *self = dialog_new (parent, session, ingredient, keep);

  self->asks = TRUE;
  if (keep)
    gtk_window_set_title (GTK_WINDOW (self), _ ("Own Entry"));
  gtk_window_present (GTK_WINDOW (self));
  return self;
}
