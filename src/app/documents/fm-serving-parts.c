/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-serving-parts.c - what comes with the patty: rows to edit, and where new ones come from */
#include "app/documents/fm-serving-parts.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/documents/fm-formula-names.h"
#include "app/ingredients/fm-food-search.h"
#include "app/ingredients/fm-ingredient-dialog.h"
#include "app/session/fm-store-task.h"
#include "app/widgets/fm-accessible.h"
#include "app/widgets/fm-number-row.h"
#include "app/widgets/fm-widget.h"

#define INDEX_KEY "fm-part"
/* What a part weighs until somebody says so: common practice, no source. */
#define FIRST_MASS_G 20.0
#define FIRST_BUN_G 60.0

struct _FmServingParts {
  GtkWidget parent_instance;

  AdwPreferencesGroup *group;
  FmFoodSearch *search;
  AdwComboRow *formula_row;

  FmSession *session;
  FmDish *dish;       /* (nullable) not owned */
  GPtrArray *names;   /* FmFormulaName in the order of the choice */
  GPtrArray *rows;    /* shown */
  GPtrArray *entries; /* FmNumberEntry of the rows */
};

enum { CHANGED, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (FmServingParts, fm_serving_parts, GTK_TYPE_WIDGET)

static void show_parts (FmServingParts *self);

static FmDishPart *
part_of (FmServingParts *self, gpointer widget)
{
  const guint index = GPOINTER_TO_UINT (g_object_get_data (widget, INDEX_KEY));

  return g_ptr_array_index (self->dish->parts, index);
}

static void
mass_changed_cb (FmServingParts *self, FmNumberEntry *entry)
{
  part_of (self, entry)->mass_g = fm_number_entry_get_value (entry);
  g_signal_emit (self, signals[CHANGED], 0);
}

static void
role_changed_cb (GtkDropDown *drop, GParamSpec *pspec, FmServingParts *self)
{
  part_of (self, drop)->role = (FmDishRole)gtk_drop_down_get_selected (drop);
  g_signal_emit (self, signals[CHANGED], 0);
}

static void
remove_cb (GtkButton *button, FmServingParts *self)
{
  const guint index = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (button), INDEX_KEY));

  g_ptr_array_remove_index (self->dish->parts, index);
  show_parts (self);
  gtk_widget_grab_focus (GTK_WIDGET (self->search));
  g_signal_emit (self, signals[CHANGED], 0);
}

static GtkWidget *
role_drop (FmServingParts *self, const FmDishPart *part, gpointer index)
{
  const char *names[FM_N_DISH_ROLES + 1] = { NULL };
  /* TRANSLATORS: a food or a formula */
  g_autofree char *what = g_strdup_printf (_ ("What %s is"), part->name);
  GtkWidget *drop;

  for (guint i = 0; i < FM_N_DISH_ROLES; i++)
    names[i] = fm_dish_role_name ((FmDishRole)i);
  drop = gtk_drop_down_new_from_strings (names);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (drop), part->role);
  gtk_widget_set_valign (drop, GTK_ALIGN_CENTER);
  fm_accessible_name_drop_down (GTK_DROP_DOWN (drop), what);
  g_object_set_data (G_OBJECT (drop), INDEX_KEY, index);
  g_signal_connect_object (drop, "notify::selected", G_CALLBACK (role_changed_cb), self, 0);
  return drop;
}

static GtkWidget *
mass_entry (FmServingParts *self, const FmDishPart *part, gpointer index)
{
  /* TRANSLATORS: a food or a formula */
  g_autofree char *what = g_strdup_printf (_ ("Mass of %s"), part->name);
  GtkWidget *entry = fm_number_entry_new (what, 0.1, FM_MAX_DISH_PART_G, 1);

  fm_number_entry_set_measure (FM_NUMBER_ENTRY (entry), FM_MEASURE_MASS);
  fm_number_entry_set_value (FM_NUMBER_ENTRY (entry), part->mass_g);
  gtk_widget_set_valign (entry, GTK_ALIGN_CENTER);
  gtk_widget_set_size_request (entry, 90, -1);
  g_object_set_data (G_OBJECT (entry), INDEX_KEY, index);
  g_signal_connect_object (entry, "value-changed", G_CALLBACK (mass_changed_cb), self,
                           G_CONNECT_SWAPPED);
  g_ptr_array_add (self->entries, entry);
  return entry;
}

static GtkWidget *
remove_button (FmServingParts *self, const FmDishPart *part, gpointer index)
{
  GtkWidget *button = gtk_button_new_from_icon_name ("list-remove-symbolic");
  /* TRANSLATORS: a food or a formula */
  g_autofree char *what = g_strdup_printf (_ ("Take %s off the serving"), part->name);

  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  gtk_widget_add_css_class (button, "flat");
  gtk_widget_set_tooltip_text (button, what);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, what, -1);
  g_object_set_data (G_OBJECT (button), INDEX_KEY, index);
  g_signal_connect_object (button, "clicked", G_CALLBACK (remove_cb), self, 0);
  return button;
}

static void
add_row (FmServingParts *self, guint index)
{
  const FmDishPart *part = fm_dish_part (self->dish, index);
  GtkWidget *row = adw_action_row_new (), *entry;

  adw_preferences_row_set_use_markup (ADW_PREFERENCES_ROW (row), FALSE);
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), part->name);
  adw_action_row_set_title_lines (ADW_ACTION_ROW (row), 0);
  entry = mass_entry (self, part, GUINT_TO_POINTER (index));
  adw_action_row_add_suffix (ADW_ACTION_ROW (row),
                             role_drop (self, part, GUINT_TO_POINTER (index)));
  adw_action_row_add_suffix (ADW_ACTION_ROW (row), entry);
  adw_action_row_add_suffix (ADW_ACTION_ROW (row),
                             remove_button (self, part, GUINT_TO_POINTER (index)));
  g_ptr_array_add (self->rows, row);
  adw_preferences_group_add (self->group, row);
  fm_number_row_tell_errors (FM_NUMBER_ENTRY (entry));
}

static void
show_parts (FmServingParts *self)
{
  for (guint i = 0; i < self->rows->len; i++)
    adw_preferences_group_remove (self->group, g_ptr_array_index (self->rows, i));
  g_ptr_array_set_size (self->rows, 0);
  g_ptr_array_set_size (self->entries, 0);
  for (guint i = 0; self->dish != NULL && i < self->dish->parts->len; i++)
    add_row (self, i);
}

static void
tell_added (FmServingParts *self)
{
  show_parts (self);
  gtk_widget_grab_focus (g_ptr_array_index (self->entries, self->entries->len - 1));
  g_signal_emit (self, signals[CHANGED], 0);
}

/* A first guess by words of the dataset; the row says what it was taken for. */
static FmDishRole
guess_role (const char *name)
{
  static const struct {
    const char *word;
    FmDishRole role;
  } words[] = {
    { "bun", FM_DISH_BUN },        { "bread", FM_DISH_BUN },        { "roll", FM_DISH_BUN },
    { "cheese", FM_DISH_CHEESE },  { "sauce", FM_DISH_SAUCE },      { "ketchup", FM_DISH_SAUCE },
    { "catsup", FM_DISH_SAUCE },   { "mayonnaise", FM_DISH_SAUCE }, { "mustard", FM_DISH_SAUCE },
    { "dressing", FM_DISH_SAUCE },
  };
  g_autofree char *folded = g_utf8_casefold (name, -1);

  for (guint i = 0; i < G_N_ELEMENTS (words); i++)
    if (strstr (folded, words[i].word) != NULL)
      return words[i].role;
  return FM_DISH_GARNISH;
}

static void
take_ingredient (FmServingParts *self, FmIngredient *ingredient)
{
  const FmDishRole role = guess_role (ingredient->name);

  if (self->dish == NULL)
    return;
  fm_dish_add_ingredient (self->dish, role, ingredient,
                          role == FM_DISH_BUN ? FIRST_BUN_G : FIRST_MASS_G);
  tell_added (self);
}

static void
own_entry_cb (FmServingParts *self, const char *text)
{
  g_autoptr (FmIngredient) blank = fm_ingredient_new (text, FM_INGREDIENT_OTHER);
  FmIngredientDialog *dialog =
      fm_ingredient_dialog_ask (GTK_WIDGET (self), self->session, blank, TRUE);

  g_signal_connect_object (dialog, "written", G_CALLBACK (take_ingredient), self,
                           G_CONNECT_SWAPPED);
}

static gpointer
load_formula (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  return fm_formula_name_load (data, notebook, error);
}

static void
formula_loaded_cb (GObject *owner, GAsyncResult *result, gpointer data)
{
  FmServingParts *self = FM_SERVING_PARTS (owner);
  const FmFormulaName *name = fm_store_task_data (result);
  g_autoptr (GError) error = NULL;
  FmFormula *formula = fm_store_task_finish (result, &error);

  if (self->dish == NULL) {
    g_clear_pointer (&formula, fm_formula_free);
    return;
  }
  if (formula == NULL) {
    fm_session_failure (self->session, error);
    return;
  }
  fm_dish_add_formula (self->dish, FM_DISH_SAUCE, name->name, formula, FIRST_MASS_G);
  tell_added (self);
}

/* The first choice is the heading of the list. */
static void
formula_chosen_cb (FmServingParts *self)
{
  const guint chosen = adw_combo_row_get_selected (self->formula_row);

  if (self->names == NULL || chosen == 0 || chosen > self->names->len)
    return;
  fm_store_task (&(FmStoreTask){
      .owner = self,
      .notebook = fm_session_get_notebook (self->session),
      .run = load_formula,
      .free_result = (GDestroyNotify)fm_formula_free,
      .data = fm_formula_name_copy (g_ptr_array_index (self->names, chosen - 1)),
      .free_data = (GDestroyNotify)fm_formula_name_free,
      .done = formula_loaded_cb,
  });
  adw_combo_row_set_selected (self->formula_row, 0);
}

static void
fm_serving_parts_dispose (GObject *object)
{
  FmServingParts *self = FM_SERVING_PARTS (object);

  self->dish = NULL;
  fm_widget_drop_template (GTK_WIDGET (self), FM_TYPE_SERVING_PARTS);
  g_clear_pointer (&self->names, g_ptr_array_unref);
  g_clear_pointer (&self->rows, g_ptr_array_unref);
  g_clear_pointer (&self->entries, g_ptr_array_unref);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (fm_serving_parts_parent_class)->dispose (object);
}

static void
fm_serving_parts_class_init (FmServingPartsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_serving_parts_dispose;
  g_type_ensure (FM_TYPE_FOOD_SEARCH);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/documents/fm-serving-parts.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmServingParts, group);
  gtk_widget_class_bind_template_child (widget_class, FmServingParts, search);
  gtk_widget_class_bind_template_child (widget_class, FmServingParts, formula_row);
  gtk_widget_class_bind_template_callback (widget_class, take_ingredient);
  gtk_widget_class_bind_template_callback (widget_class, own_entry_cb);
  gtk_widget_class_bind_template_callback (widget_class, formula_chosen_cb);
  signals[CHANGED] = g_signal_new ("changed", FM_TYPE_SERVING_PARTS, G_SIGNAL_RUN_LAST, 0, NULL,
                                   NULL, NULL, G_TYPE_NONE, 0);
}

static void
fm_serving_parts_init (FmServingParts *self)
{
  self->rows = g_ptr_array_new ();
  self->entries = g_ptr_array_new ();
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
fm_serving_parts_begin (FmServingParts *self, FmSession *session, GPtrArray *names)
{
  g_autoptr (GtkStringList) list = gtk_string_list_new (NULL);

  g_set_object (&self->session, session);
  fm_food_search_set_session (self->search, session);
  self->names = names;
  gtk_string_list_append (list, _ ("Choose…"));
  for (guint i = 0; i < names->len; i++)
    gtk_string_list_append (list, ((const FmFormulaName *)names->pdata[i])->name);
  adw_combo_row_set_model (self->formula_row, G_LIST_MODEL (list));
}

void
fm_serving_parts_set_dish (FmServingParts *self, FmDish *dish)
{
  self->dish = dish;
  show_parts (self);
}

const char *
fm_serving_parts_bad_text (FmServingParts *self)
{
  for (guint i = 0; i < self->entries->len; i++)
    if (!fm_number_entry_is_valid (g_ptr_array_index (self->entries, i)))
      return fm_number_entry_get_message (g_ptr_array_index (self->entries, i));
  return NULL;
}
