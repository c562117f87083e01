/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-shopping-choice.c - the batches of a shopping list */
#include "app/documents/fm-shopping-choice.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/documents/fm-formula-names.h"
#include "app/documents/fm-sheet-window.h"
#include "app/session/fm-notebook-settings.h"
#include "app/widgets/fm-number-row.h"
#include "app/widgets/fm-widget.h"
#include "core/base/fm-date.h"
#include "core/base/fm-number.h"
#include "report/fm-shopping-list.h"

#define BATCH_KEY "fm-batch"

struct _FmShoppingChoice {
  GtkWidget parent_instance;

  AdwPreferencesGroup *group;
  AdwComboRow *add_row;
  FmNumberEntry *step_entry;

  GPtrArray *names;   /* FmFormulaName, in the order of the choice; NULL until it is read */
  GPtrArray *entries; /* FmNumberEntry of the patties, with its FmFormulaName */
  char *notebook_name;
};

G_DEFINE_FINAL_TYPE (FmShoppingChoice, fm_shopping_choice, GTK_TYPE_WIDGET)

typedef struct {
  FmFormulaName *name;
  double n_patties; /* NaN = as its brief says */
} Batch;

typedef struct {
  GPtrArray *batches; /* Batch */
  char *notebook_name;
  char *date;
  char *currency;
  double buy_step_g;
} Order;

static void
batch_free (gpointer data)
{
  Batch *batch = data;

  fm_formula_name_free (batch->name);
  g_free (batch);
}

static void
order_free (gpointer data)
{
  Order *order = data;

  g_ptr_array_unref (order->batches);
  g_free (order->notebook_name);
  g_free (order->date);
  g_free (order->currency);
  g_free (order);
}

static double
buy_step_g (FmShoppingChoice *self)
{
  const double step_g = fm_number_entry_get_value (self->step_entry);

  return isnan (step_g) ? 0.0 : step_g;
}

static gpointer
new_order (GtkWidget *options)
{
  FmShoppingChoice *self = FM_SHOPPING_CHOICE (options);
  Order *order;

  if (self->entries->len == 0)
    return NULL;
  order = g_new0 (Order, 1);
  order->batches = g_ptr_array_new_with_free_func (batch_free);
  order->notebook_name = g_strdup (self->notebook_name);
  order->date = fm_date_today ();
  order->currency = g_strdup (fm_notebook_units ()->currency);
  order->buy_step_g = buy_step_g (self);
  for (guint i = 0; i < self->entries->len; i++) {
    Batch *batch = g_new0 (Batch, 1);

    batch->name = fm_formula_name_copy (g_object_get_data (self->entries->pdata[i], BATCH_KEY));
    batch->n_patties = fm_number_entry_get_value (self->entries->pdata[i]);
    g_ptr_array_add (order->batches, batch);
  }
  return order;
}

static char *
batch_text (const Batch *batch, const FmBatchPlan *plan)
{
  g_autofree char *mass = fm_number_format_unit (plan->patty_mass_g, 1, "g");

  /* TRANSLATORS: "Pan patty, version 3", number of patties, mass of one */
  return g_strdup_printf (
      ngettext ("%s: %d patty of %s raw", "%s: %d patties of %s raw", (gulong)plan->n_patties),
      batch->name->name, plan->n_patties, mass);
}

static gpointer
make_list (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  const Order *order = data;
  g_autoptr (GPtrArray) formulas = g_ptr_array_new_with_free_func ((GDestroyNotify)fm_formula_free);
  g_autoptr (GArray) orders = g_array_new (FALSE, FALSE, sizeof (FmShoppingOrder));
  g_autoptr (GStrvBuilder) lines = g_strv_builder_new ();
  g_auto (GStrv) batches = NULL;
  g_autoptr (FmShopping) shopping = NULL;
  FmBatchSheet *sheet;

  for (guint i = 0; i < order->batches->len; i++) {
    const Batch *batch = g_ptr_array_index (order->batches, i);
    FmFormula *formula = fm_formula_name_load (batch->name, notebook, error);
    FmShoppingOrder one = { .formula = formula };
    g_autofree char *text = NULL;

    if (formula == NULL)
      return NULL;
    g_ptr_array_add (formulas, formula);
    fm_batch_plan_init (&one.plan, formula->brief);
    if (!isnan (batch->n_patties))
      one.plan.n_patties = (int)batch->n_patties;
    text = batch_text (batch, &one.plan);
    g_strv_builder_add (lines, text);
    g_array_append_val (orders, one);
  }
  batches = g_strv_builder_end (lines);
  shopping = fm_shopping_new (orders, NULL, order->buy_step_g, error);
  if (shopping == NULL)
    return NULL;
  sheet = fm_shopping_list_new (
      shopping, &(FmShoppingHead){ order->notebook_name, order->date, order->currency,
                                   (const char *const *)batches, order->buy_step_g });
  sheet->notice = fm_notebook_invented (notebook);
  return sheet;
}

static void
changed_cb (FmShoppingChoice *self)
{
  gtk_widget_activate_action (GTK_WIDGET (self), "sheet.renew", NULL);
}

static void
remove_cb (GtkButton *button, FmShoppingChoice *self)
{
  GtkWidget *row = gtk_widget_get_ancestor (GTK_WIDGET (button), ADW_TYPE_ACTION_ROW);

  g_ptr_array_remove (self->entries, g_object_get_data (G_OBJECT (button), BATCH_KEY));
  adw_preferences_group_remove (self->group, row);
  gtk_widget_grab_focus (GTK_WIDGET (self->add_row));
  changed_cb (self);
}

static GtkWidget *
remove_button (FmShoppingChoice *self, GtkWidget *entry, const char *name)
{
  GtkWidget *button = gtk_button_new_from_icon_name ("list-remove-symbolic");
  /* TRANSLATORS: "Pan patty, version 3" */
  g_autofree char *what = g_strdup_printf (_ ("Take %s off the list"), name);

  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  gtk_widget_add_css_class (button, "flat");
  gtk_widget_set_tooltip_text (button, what);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, what, -1);
  g_object_set_data (G_OBJECT (button), BATCH_KEY, entry);
  g_signal_connect_object (button, "clicked", G_CALLBACK (remove_cb), self, 0);
  return button;
}

static void
add_batch (FmShoppingChoice *self, const FmFormulaName *name, double n_patties)
{
  GtkWidget *row = adw_action_row_new ();
  /* TRANSLATORS: "Pan patty, version 3" */
  g_autofree char *what = g_strdup_printf (_ ("Patties of %s"), name->name);
  GtkWidget *entry = fm_number_entry_new (what, 1.0, FM_MAX_N_PATTIES, 0);

  adw_preferences_row_set_use_markup (ADW_PREFERENCES_ROW (row), FALSE);
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), name->name);
  adw_action_row_set_subtitle (ADW_ACTION_ROW (row), _ ("Patties; blank: as its brief says"));
  gtk_widget_set_valign (entry, GTK_ALIGN_CENTER);
  gtk_widget_set_size_request (entry, 100, -1);
  fm_number_entry_set_value (FM_NUMBER_ENTRY (entry), n_patties);
  g_object_set_data_full (G_OBJECT (entry), BATCH_KEY, fm_formula_name_copy (name),
                          (GDestroyNotify)fm_formula_name_free);
  adw_action_row_add_suffix (ADW_ACTION_ROW (row), entry);
  adw_action_row_add_suffix (ADW_ACTION_ROW (row), remove_button (self, entry, name->name));
  g_ptr_array_add (self->entries, entry);
  adw_preferences_group_add (self->group, row);
  fm_number_row_tell_errors (FM_NUMBER_ENTRY (entry));
  g_signal_connect_object (entry, "value-changed", G_CALLBACK (changed_cb), self,
                           G_CONNECT_SWAPPED);
}

/* The first choice is the heading of the list. */
static void
add_chosen_cb (FmShoppingChoice *self)
{
  const guint chosen = adw_combo_row_get_selected (self->add_row);

  if (self->names == NULL || chosen == 0 || chosen > self->names->len)
    return;
  add_batch (self, g_ptr_array_index (self->names, chosen - 1), NAN);
  adw_combo_row_set_selected (self->add_row, 0);
  changed_cb (self);
}

static void
names_read_cb (GObject *owner, GAsyncResult *result, gpointer data)
{
  FmShoppingChoice *self = FM_SHOPPING_CHOICE (owner);
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) names = fm_store_task_finish (result, &error);
  g_autoptr (GtkStringList) list = gtk_string_list_new (NULL);

  if (self->add_row == NULL)
    return;
  gtk_string_list_append (list, names != NULL ? _ ("Choose…") : error->message);
  for (guint i = 0; names != NULL && i < names->len; i++)
    gtk_string_list_append (list, ((const FmFormulaName *)names->pdata[i])->name);
  adw_combo_row_set_model (self->add_row, G_LIST_MODEL (list));
  self->names = g_steal_pointer (&names);
}

static void
fm_shopping_choice_dispose (GObject *object)
{
  FmShoppingChoice *self = FM_SHOPPING_CHOICE (object);

  fm_widget_drop_template (GTK_WIDGET (self), FM_TYPE_SHOPPING_CHOICE);
  g_clear_pointer (&self->entries, g_ptr_array_unref);
  g_clear_pointer (&self->names, g_ptr_array_unref);
  g_clear_pointer (&self->notebook_name, g_free);
  G_OBJECT_CLASS (fm_shopping_choice_parent_class)->dispose (object);
}

static void
fm_shopping_choice_class_init (FmShoppingChoiceClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_shopping_choice_dispose;
  g_type_ensure (FM_TYPE_NUMBER_ENTRY);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/documents/fm-shopping-choice.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmShoppingChoice, group);
  gtk_widget_class_bind_template_child (widget_class, FmShoppingChoice, add_row);
  gtk_widget_class_bind_template_child (widget_class, FmShoppingChoice, step_entry);
  gtk_widget_class_bind_template_callback (widget_class, add_chosen_cb);
  gtk_widget_class_bind_template_callback (widget_class, changed_cb);
}

static void
fm_shopping_choice_init (FmShoppingChoice *self)
{
  self->entries = g_ptr_array_new ();
  gtk_widget_init_template (GTK_WIDGET (self));
  fm_number_row_tell_errors (self->step_entry);
  fm_number_entry_set_value (self->step_entry, FM_BUY_STEP_G);
}

static void
add_shown (FmShoppingChoice *self, FmSession *session)
{
  const FmVersionInfo *version = fm_session_get_version_info (session);
  const char *blend_name = fm_session_get_blend_name (session);
  g_autofree char *text = version != NULL
                              ? g_strdup_printf (_ ("%s, version %d"), blend_name, version->number)
                              : g_strdup_printf (_ ("%s, draft"), blend_name);
  const FmFormulaName name = { fm_session_get_blend_id (session),
                               fm_session_get_version_id (session), text };

  add_batch (self, &name, fm_session_get_formula (session)->brief->n_patties);
}

void
fm_shopping_choice_present (GtkWidget *parent, FmSession *session)
{
  FmNotebook *notebook = fm_session_get_notebook (session);
  FmShoppingChoice *self = g_object_new (FM_TYPE_SHOPPING_CHOICE, NULL);

  self->notebook_name = g_filename_display_basename (fm_notebook_path (notebook));
  if (fm_session_get_formula (session) != NULL)
    add_shown (self, session);
  fm_sheet_window_present (parent, &(FmSheetOrder){
                                       .title = _ ("Shopping List"),
                                       .session = session,
                                       .options = GTK_WIDGET (self),
                                       .make = make_list,
                                       .new_order = new_order,
                                       .free_order = order_free,
                                   });
  fm_formula_names_task (self, notebook, names_read_cb);
}
