/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-serving-choice.c - a serving of a version: patties, what comes with them, saved servings */
#include "app/documents/fm-serving-choice.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/documents/fm-formula-names.h"
#include "app/documents/fm-serving-parts.h"
#include "app/documents/fm-sheet-window.h"
#include "app/label/fm-label-window.h"
#include "app/session/fm-notebook-settings.h"
#include "app/widgets/fm-number-row.h"
#include "app/widgets/fm-widget.h"
#include "core/base/fm-date.h"
#include "report/fm-serving-sheet.h"
#include "store/fm-servings.h"
#include "store/fm-versions.h"

struct _FmServingChoice {
  GtkWidget parent_instance;

  GtkLabel *message_label;
  AdwComboRow *start_row;
  FmNumberEntry *patties_entry;
  FmNumberEntry *raw_entry;
  AdwComboRow *method_row;
  FmNumberEntry *yield_entry;
  FmServingParts *parts;
  AdwEntryRow *name_row;
  AdwEntryRow *reason_row;

  FmSession *session;
  gint64 version_id;
  int version_number;
  char *blend_name;
  FmFormula *patty;  /* NULL until it is read */
  FmDish *dish;      /* likewise */
  GPtrArray *infos;  /* FmServingInfo in the order of the start row */
  int saved_number;  /* of the serving that @dish is; 0 = not saved */
  gboolean is_dirty; /* the draft on the disk is another one */
  gboolean loading;
};

G_DEFINE_FINAL_TYPE (FmServingChoice, fm_serving_choice, GTK_TYPE_WIDGET)

/* What is read in a thread, and what a saved serving is made of. */
typedef struct {
  gint64 blend_id;
  gint64 version_id;
  gint64 serving_id; /* to be read; 0 = the draft, else the first one of the list */
  char *name;
  char *reason;
  FmFormula *patty;
  FmDish *dish;
  GPtrArray *infos;
  GPtrArray *names;
  int version_number;
  int number; /* of what was saved */
} Work;

static void
work_free (gpointer data)
{
  Work *work = data;

  g_free (work->name);
  g_free (work->reason);
  g_clear_pointer (&work->patty, fm_formula_free);
  g_clear_pointer (&work->dish, fm_dish_free);
  g_clear_pointer (&work->infos, g_ptr_array_unref);
  g_clear_pointer (&work->names, g_ptr_array_unref);
  g_free (work);
}

static void
say (FmServingChoice *self, const char *text, gboolean failed)
{
  gtk_label_set_text (self->message_label, text);
  gtk_widget_set_visible (GTK_WIDGET (self->message_label), *text != '\0');
  fm_widget_set_class (GTK_WIDGET (self->message_label), "error", failed);
}

static char *
version_name (FmServingChoice *self)
{
  if (self->saved_number > 0)
    return g_strdup_printf (_ ("version %d, serving %d"), self->version_number, self->saved_number);
  return g_strdup_printf (_ ("version %d, serving not saved"), self->version_number);
}

typedef struct {
  FmFormula *patty;
  FmDish *dish;
  char *blend_name;
  char *version_name;
  char *patty_name;
  char *name;
  char *date;
  char *currency;
} Order;

static void
order_free (gpointer data)
{
  Order *order = data;

  fm_formula_free (order->patty);
  fm_dish_free (order->dish);
  g_free (order->blend_name);
  g_free (order->version_name);
  g_free (order->patty_name);
  g_free (order->name);
  g_free (order->date);
  g_free (order->currency);
  g_free (order);
}

/* TRANSLATORS: name of a blend, number of its version */
static char *
patty_name (FmServingChoice *self)
{
  return g_strdup_printf (_ ("%s, version %d"), self->blend_name, self->version_number);
}

static gpointer
new_order (GtkWidget *options)
{
  FmServingChoice *self = FM_SERVING_CHOICE (options);
  Order *order;

  if (self->dish == NULL)
    return NULL;
  order = g_new0 (Order, 1);
  order->patty = fm_formula_copy (self->patty);
  order->dish = fm_dish_copy (self->dish);
  order->blend_name = g_strdup (self->blend_name);
  order->version_name = version_name (self);
  order->patty_name = patty_name (self);
  order->name = g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->name_row)));
  order->date = fm_date_today ();
  order->currency = g_strdup (fm_notebook_units ()->currency);
  return order;
}

static gpointer
make_sheet (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  const Order *order = data;
  g_autoptr (FmDishSum) sum = fm_dish_sum_new (order->dish, order->patty, order->patty_name, error);
  FmBatchSheet *sheet;

  if (sum == NULL)
    return NULL;
  sheet = fm_serving_sheet_new (order->dish, sum,
                                &(FmServingHead){ order->blend_name, order->version_name,
                                                  order->name, order->date, order->currency });
  sheet->notice = fm_notebook_invented (notebook);
  return sheet;
}

static const char *
first_bad_text (FmServingChoice *self)
{
  FmNumberEntry *entries[] = { self->patties_entry, self->raw_entry, self->yield_entry };

  for (guint i = 0; i < G_N_ELEMENTS (entries); i++)
    if (!fm_number_entry_is_valid (entries[i]))
      return fm_number_entry_get_message (entries[i]);
  return fm_serving_parts_bad_text (self->parts);
}

static void
renew (FmServingChoice *self)
{
  gtk_widget_activate_action (GTK_WIDGET (self), "sheet.renew", NULL);
}

static void
edited_cb (FmServingChoice *self)
{
  if (self->loading || self->dish == NULL)
    return;
  self->saved_number = 0;
  self->is_dirty = TRUE;
  self->dish->n_patties = (int)fm_number_entry_get_value (self->patties_entry);
  self->dish->patty_raw_g = fm_number_entry_get_value (self->raw_entry);
  self->dish->method = (FmCookMethod)adw_combo_row_get_selected (self->method_row);
  self->dish->cook_yield_pct = fm_number_entry_get_value (self->yield_entry);
  say (self, "", FALSE);
  renew (self);
}

static void
show_dish (FmServingChoice *self)
{
  self->loading = TRUE;
  fm_number_entry_load_value (self->patties_entry, self->dish->n_patties);
  fm_number_entry_load_value (self->raw_entry, self->dish->patty_raw_g);
  adw_combo_row_set_selected (self->method_row, self->dish->method);
  fm_number_entry_load_value (self->yield_entry, self->dish->cook_yield_pct);
  fm_serving_parts_set_dish (self->parts, self->dish);
  self->loading = FALSE;
  renew (self);
}

static void
take_dish (FmServingChoice *self, Work *work)
{
  fm_serving_parts_set_dish (self->parts, NULL);
  g_clear_pointer (&self->dish, fm_dish_free);
  self->dish = g_steal_pointer (&work->dish);
  show_dish (self);
}

static void
show_infos (FmServingChoice *self)
{
  g_autoptr (GtkStringList) list = gtk_string_list_new (NULL);

  self->loading = TRUE;
  gtk_string_list_append (list, _ ("Choose…"));
  for (guint i = 0; i < self->infos->len; i++) {
    const FmServingInfo *info = g_ptr_array_index (self->infos, i);
    g_autofree char *text =
        info->number > 0
            /* TRANSLATORS: numbers of version and serving, what it is called */
            ? g_strdup_printf (_ ("Version %d, serving %d: %s"), info->version_number, info->number,
                               info->name)
            : g_strdup_printf (_ ("Version %d, not saved"), info->version_number);
    gtk_string_list_append (list, text);
  }
  adw_combo_row_set_model (self->start_row, G_LIST_MODEL (list));
  self->loading = FALSE;
}

/* The draft of the version goes on; else its newest serving, or the newest one of the blend. */
static gint64
find_start (const Work *work)
{
  const FmServingInfo *found = NULL;

  for (guint i = 0; i < work->infos->len; i++) {
    const FmServingInfo *info = g_ptr_array_index (work->infos, i);

    if (info->version_id == work->version_id && info->number == 0)
      return info->id;
    if (found == NULL ||
        (info->version_id == work->version_id && found->version_id != work->version_id))
      found = info;
  }
  return found != NULL ? found->id : 0;
}

static gpointer
run_load (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  Work *work = data;
  g_autoptr (FmVersionInfo) info = fm_versions_info (notebook, work->version_id, error);

  if (info == NULL)
    return NULL;
  work->version_number = info->number;
  work->patty = fm_versions_load (notebook, work->version_id, error);
  work->infos = work->patty != NULL ? fm_servings_list (notebook, work->blend_id, error) : NULL;
  work->names = work->infos != NULL ? fm_formula_names_read (notebook, error) : NULL;
  if (work->names == NULL)
    return NULL;
  work->serving_id = find_start (work);
  work->dish = work->serving_id != 0 ? fm_servings_load (notebook, work->serving_id, error)
                                     : fm_dish_new (work->patty->brief);
  return GINT_TO_POINTER (work->dish != NULL);
}

static void
loaded_cb (GObject *owner, GAsyncResult *result, gpointer data)
{
  FmServingChoice *self = FM_SERVING_CHOICE (owner);
  Work *work = fm_store_task_data (result);
  g_autoptr (GError) error = NULL;
  const gboolean done = fm_store_task_finish (result, &error) != NULL;

  if (self->parts == NULL)
    return;
  if (!done) {
    say (self, error->message, TRUE);
    return;
  }
  self->patty = g_steal_pointer (&work->patty);
  self->version_number = work->version_number;
  self->infos = g_steal_pointer (&work->infos);
  fm_serving_parts_begin (self->parts, self->session, g_steal_pointer (&work->names));
  show_infos (self);
  take_dish (self, work);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "serving.label", TRUE);
  gtk_widget_action_set_enabled (
      GTK_WIDGET (self), "serving.save",
      !fm_notebook_is_read_only (fm_session_get_notebook (self->session)));
}

static void
start_work (FmServingChoice *self, Work *work, FmStoreFunc run, GAsyncReadyCallback done)
{
  work->blend_id = fm_session_get_blend_id (self->session);
  work->version_id = self->version_id;
  fm_store_task (&(FmStoreTask){
      .owner = self,
      .notebook = fm_session_get_notebook (self->session),
      .run = run,
      .data = work,
      .free_data = work_free,
      .done = done,
  });
}

static gpointer
run_read (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  Work *work = data;

  work->dish = fm_servings_load (notebook, work->serving_id, error);
  return GINT_TO_POINTER (work->dish != NULL);
}

static void
read_cb (GObject *owner, GAsyncResult *result, gpointer data)
{
  FmServingChoice *self = FM_SERVING_CHOICE (owner);
  g_autoptr (GError) error = NULL;
  const gboolean done = fm_store_task_finish (result, &error) != NULL;

  if (self->parts == NULL)
    return;
  if (done)
    take_dish (self, fm_store_task_data (result));
  else
    say (self, error->message, TRUE);
}

/* The first choice is the heading of the list. */
static void
start_chosen_cb (FmServingChoice *self)
{
  const guint chosen = adw_combo_row_get_selected (self->start_row);
  const FmServingInfo *info;
  Work *work;

  if (self->loading || self->infos == NULL || chosen == 0 || chosen > self->infos->len)
    return;
  info = g_ptr_array_index (self->infos, chosen - 1);
  self->saved_number = info->version_id == self->version_id ? info->number : 0;
  self->is_dirty = TRUE;
  gtk_editable_set_text (GTK_EDITABLE (self->name_row), info->name);
  work = g_new0 (Work, 1);
  work->serving_id = info->id;
  start_work (self, work, run_read, read_cb);
}

static gpointer
run_save (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  Work *work = data;

  work->number =
      fm_servings_save (notebook, work->version_id, work->name, work->reason, work->dish, error);
  work->infos = work->number > 0 ? fm_servings_list (notebook, work->blend_id, error) : NULL;
  return GINT_TO_POINTER (work->infos != NULL);
}

static void
saved_cb (GObject *owner, GAsyncResult *result, gpointer data)
{
  FmServingChoice *self = FM_SERVING_CHOICE (owner);
  Work *work = fm_store_task_data (result);
  g_autoptr (GError) error = NULL;
  const gboolean done = fm_store_task_finish (result, &error) != NULL;
  g_autofree char *text = NULL;

  if (self->parts == NULL)
    return;
  if (!done) {
    say (self, error->message, TRUE);
    return;
  }
  text = g_strdup_printf (_ ("Saved as serving %d of version %d."), work->number,
                          self->version_number);
  g_clear_pointer (&self->infos, g_ptr_array_unref);
  self->infos = g_steal_pointer (&work->infos);
  self->saved_number = work->number;
  self->is_dirty = FALSE;
  gtk_editable_set_text (GTK_EDITABLE (self->reason_row), "");
  show_infos (self);
  say (self, text, FALSE);
  renew (self);
}

static void
save_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmServingChoice *self = FM_SERVING_CHOICE (widget);
  const char *bad = first_bad_text (self);
  Work *work;

  if (bad != NULL) {
    say (self, bad, TRUE);
    return;
  }
  work = g_new0 (Work, 1);
  work->name = g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->name_row)));
  work->reason = g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->reason_row)));
  work->dish = fm_dish_copy (self->dish);
  start_work (self, work, run_save, saved_cb);
}

static void
label_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmServingChoice *self = FM_SERVING_CHOICE (widget);
  g_autofree char *patty = patty_name (self), *version = version_name (self);
  g_autoptr (GError) error = NULL;
  g_autoptr (FmDishSum) sum = fm_dish_sum_new (self->dish, self->patty, patty, &error);

  if (sum == NULL)
    say (self, error->message, TRUE);
  else
    fm_label_window_present_serving (widget, self->session, version, sum->eaten, sum->used);
}

static gpointer
run_save_draft (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  const Work *work = data;

  return GINT_TO_POINTER (fm_servings_save_draft (notebook, work->version_id, work->dish, error));
}

static void
draft_saved_cb (GObject *session, GAsyncResult *result, gpointer data)
{
  g_autoptr (GError) error = NULL;

  if (fm_store_task_finish (result, &error) == NULL)
    fm_session_failure (FM_SESSION (session), error);
}

/* What is half done goes on when the window is opened again. */
static void
keep_draft (FmServingChoice *self)
{
  FmNotebook *notebook = fm_session_get_notebook (self->session);
  Work *work;

  if (!self->is_dirty || self->dish == NULL || notebook == NULL ||
      fm_notebook_is_read_only (notebook))
    return;
  self->is_dirty = FALSE;
  work = g_new0 (Work, 1);
  work->version_id = self->version_id;
  work->dish = fm_dish_copy (self->dish);
  fm_store_task (&(FmStoreTask){
      .owner = self->session,
      .notebook = notebook,
      .run = run_save_draft,
      .data = work,
      .free_data = work_free,
      .done = draft_saved_cb,
  });
}

static void
fm_serving_choice_dispose (GObject *object)
{
  FmServingChoice *self = FM_SERVING_CHOICE (object);

  if (self->session != NULL)
    keep_draft (self);
  self->loading = TRUE;
  fm_widget_drop_template (GTK_WIDGET (self), FM_TYPE_SERVING_CHOICE);
  g_clear_pointer (&self->patty, fm_formula_free);
  g_clear_pointer (&self->dish, fm_dish_free);
  g_clear_pointer (&self->infos, g_ptr_array_unref);
  g_clear_pointer (&self->blend_name, g_free);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (fm_serving_choice_parent_class)->dispose (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, FmServingChoice, message_label);
  gtk_widget_class_bind_template_child (widget_class, FmServingChoice, start_row);
  gtk_widget_class_bind_template_child (widget_class, FmServingChoice, patties_entry);
  gtk_widget_class_bind_template_child (widget_class, FmServingChoice, raw_entry);
  gtk_widget_class_bind_template_child (widget_class, FmServingChoice, method_row);
  gtk_widget_class_bind_template_child (widget_class, FmServingChoice, yield_entry);
  gtk_widget_class_bind_template_child (widget_class, FmServingChoice, parts);
  gtk_widget_class_bind_template_child (widget_class, FmServingChoice, name_row);
  gtk_widget_class_bind_template_child (widget_class, FmServingChoice, reason_row);
  gtk_widget_class_bind_template_callback (widget_class, edited_cb);
  gtk_widget_class_bind_template_callback (widget_class, start_chosen_cb);
}

static void
fm_serving_choice_class_init (FmServingChoiceClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_serving_choice_dispose;
  g_type_ensure (FM_TYPE_NUMBER_ENTRY);
  g_type_ensure (FM_TYPE_SERVING_PARTS);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/documents/fm-serving-choice.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  bind_children (widget_class);
  gtk_widget_class_install_action (widget_class, "serving.save", NULL, save_action);
  gtk_widget_class_install_action (widget_class, "serving.label", NULL, label_action);
}

static void
fm_serving_choice_init (FmServingChoice *self)
{
  g_autoptr (GtkStringList) methods = gtk_string_list_new (NULL);

  self->loading = TRUE;
  gtk_widget_init_template (GTK_WIDGET (self));
  for (guint i = 0; i < FM_N_COOK_METHODS; i++)
    gtk_string_list_append (methods, fm_cook_method_name ((FmCookMethod)i));
  adw_combo_row_set_model (self->method_row, G_LIST_MODEL (methods));
  fm_number_row_tell_errors (self->patties_entry);
  fm_number_row_tell_errors (self->raw_entry);
  fm_number_row_tell_errors (self->yield_entry);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "serving.save", FALSE);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "serving.label", FALSE);
  self->loading = FALSE;
}

void
fm_serving_choice_present (GtkWidget *parent, FmSession *session, gint64 version_id)
{
  FmServingChoice *self = g_object_new (FM_TYPE_SERVING_CHOICE, NULL);
  g_autofree char *title = NULL;

  self->session = g_object_ref (session);
  self->version_id = version_id;
  self->blend_name = g_strdup (fm_session_get_blend_name (session));
  /* TRANSLATORS: title of a window: name of the blend */
  title = g_strdup_printf (_ ("Serving: %s"), self->blend_name);
  fm_sheet_window_present (parent, &(FmSheetOrder){
                                       .title = title,
                                       .session = session,
                                       .options = GTK_WIDGET (self),
                                       .make = make_sheet,
                                       .new_order = new_order,
                                       .free_order = order_free,
                                   });
  start_work (self, g_new0 (Work, 1), run_load, loaded_cb);
}
