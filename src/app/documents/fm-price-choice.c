/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-price-choice.c - any version at today's prices, and the price list out and in */
#include "app/documents/fm-price-choice.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>
#include <string.h>

#include "app/documents/fm-formula-names.h"
#include "app/documents/fm-sheet-window.h"
#include "app/print/fm-batch-sheet-print.h"
#include "app/session/fm-clock.h"
#include "app/session/fm-notebook-settings.h"
#include "app/widgets/fm-widget.h"
#include "core/base/fm-date.h"
#include "report/fm-price-list.h"
#include "report/fm-price-sheet.h"
#include "store/fm-prices.h"

/* A price list is a page or two; what is larger is something else. */
#define MAX_LIST_BYTES (16 * 1024 * 1024)

struct _FmPriceChoice {
  GtkWidget parent_instance;

  GtkLabel *message_label;
  AdwComboRow *formula_row;

  FmSession *session;
  GPtrArray *names; /* FmFormulaName in the order of the row; NULL until it is read */
  GtkFileChooserNative *chooser;
};

G_DEFINE_FINAL_TYPE (FmPriceChoice, fm_price_choice, GTK_TYPE_WIDGET)

typedef struct {
  FmFormulaName *name;
  char *date;
  char *currency;
} Order;

static void
order_free (gpointer data)
{
  Order *order = data;

  fm_formula_name_free (order->name);
  g_free (order->date);
  g_free (order->currency);
  g_free (order);
}

static gpointer
new_order (GtkWidget *options)
{
  FmPriceChoice *self = FM_PRICE_CHOICE (options);
  const guint chosen = adw_combo_row_get_selected (self->formula_row);
  Order *order;

  if (self->names == NULL || chosen >= self->names->len)
    return NULL;
  order = g_new0 (Order, 1);
  order->name = fm_formula_name_copy (g_ptr_array_index (self->names, chosen));
  order->date = fm_date_today ();
  order->currency = g_strdup (fm_notebook_units ()->currency);
  return order;
}

/* The numbers alone. */
static GHashTable *
read_today (FmNotebook *notebook, GError **error)
{
  g_autoptr (GHashTable) noted = fm_prices_today (notebook, error);
  GHashTable *today = NULL;
  GHashTableIter iter;
  gpointer identity, price;

  if (noted == NULL)
    return NULL;
  today = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  g_hash_table_iter_init (&iter, noted);
  while (g_hash_table_iter_next (&iter, &identity, &price))
    g_hash_table_insert (today, g_strdup (identity),
                         g_memdup2 (&((const FmPrice *)price)->price_per_kg, sizeof (double)));
  return today;
}

static gpointer
make_sheet (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  const Order *order = data;
  g_autoptr (FmFormula) formula = fm_formula_name_load (order->name, notebook, error);
  g_autoptr (GHashTable) today = formula != NULL ? read_today (notebook, error) : NULL;
  g_autoptr (FmReprice) reprice = today != NULL ? fm_reprice_new (formula, today, error) : NULL;

  if (reprice == NULL)
    return NULL;
  return fm_price_sheet_new (reprice, order->name->name, order->date, order->currency);
}

static void
chosen_cb (FmPriceChoice *self)
{
  gtk_widget_activate_action (GTK_WIDGET (self), "sheet.renew", NULL);
}

static void
say (GtkWidget *widget, const char *text, gboolean failed)
{
  FmPriceChoice *self = FM_PRICE_CHOICE (widget);

  if (self->message_label == NULL)
    return;
  gtk_label_set_text (self->message_label, text);
  gtk_widget_set_visible (GTK_WIDGET (self->message_label), *text != '\0');
  fm_widget_set_class (GTK_WIDGET (self->message_label), "error", failed);
}

static GBytes *
make_list (gpointer data, const char *name, GError **error)
{
  char *csv = fm_price_list_csv (data, fm_csv_style_of_locale (), error);

  return csv != NULL ? g_bytes_new_take (csv, strlen (csv)) : NULL;
}

static void
export_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmNotebook *notebook = fm_session_get_notebook (FM_PRICE_CHOICE (widget)->session);

  fm_print_save (&(FmPrintSave){ widget, _ ("Export the Price List"), "prices.csv", make_list,
                                 fm_notebook_ref (notebook), (GDestroyNotify)fm_notebook_unref,
                                 say });
}

typedef struct {
  GFile *file;
  FmPriceListResult result;
} Import;

static void
import_free (gpointer data)
{
  Import *import = data;

  g_object_unref (import->file);
  g_free (import);
}

static gboolean
check_size (GFile *file, GCancellable *cancellable, GError **error)
{
  g_autoptr (GFileInfo) info = g_file_query_info (file, G_FILE_ATTRIBUTE_STANDARD_SIZE,
                                                  G_FILE_QUERY_INFO_NONE, cancellable, error);

  if (info == NULL || g_file_info_get_size (info) <= MAX_LIST_BYTES)
    return info != NULL;
  g_set_error_literal (error, G_IO_ERROR, G_IO_ERROR_FAILED,
                       _ ("This file is too large for a price list. Choose another one."));
  return FALSE;
}

static gpointer
run_import (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  Import *import = data;
  g_autofree char *text = NULL;
  gsize length;

  return GINT_TO_POINTER (
      check_size (import->file, cancellable, error) &&
      g_file_load_contents (import->file, cancellable, &text, &length, NULL, error) &&
      fm_price_list_read (notebook, text, length, fm_clock_now_s (), &import->result, error));
}

static void
imported_cb (GObject *owner, GAsyncResult *result, gpointer data)
{
  FmPriceChoice *self = FM_PRICE_CHOICE (owner);
  const Import *import = fm_store_task_data (result);
  g_autoptr (GError) error = NULL;
  const gboolean done = fm_store_task_finish (result, &error) != NULL;
  g_autofree char *text = NULL;

  if (!done) {
    say (GTK_WIDGET (self), error->message, TRUE);
    return;
  }
  text = g_strdup_printf (_ ("New prices: %u. As before: %u. Rows without a price: %u. Saved "
                             "versions keep their own."),
                          import->result.n_changed, import->result.n_same, import->result.n_blank);
  say (GTK_WIDGET (self), text, FALSE);
  if (self->formula_row != NULL)
    chosen_cb (self);
}

static void
import_chosen_cb (GtkNativeDialog *dialog, int response, FmPriceChoice *self)
{
  g_autoptr (GFile) file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));
  Import *import;

  g_clear_object (&self->chooser);
  if (response != GTK_RESPONSE_ACCEPT || file == NULL)
    return;
  import = g_new0 (Import, 1);
  import->file = g_steal_pointer (&file);
  fm_store_task (&(FmStoreTask){
      .owner = self,
      .notebook = fm_session_get_notebook (self->session),
      .run = run_import,
      .data = import,
      .free_data = import_free,
      .done = imported_cb,
  });
}

static void
import_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmPriceChoice *self = FM_PRICE_CHOICE (widget);

  g_clear_object (&self->chooser);
  self->chooser = gtk_file_chooser_native_new (
      _ ("Import a Price List"), GTK_WINDOW (gtk_widget_get_root (widget)),
      GTK_FILE_CHOOSER_ACTION_OPEN, _ ("_Import"), _ ("_Cancel"));
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (self->chooser), TRUE);
  g_signal_connect_object (self->chooser, "response", G_CALLBACK (import_chosen_cb), self, 0);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (self->chooser));
}

static guint
find_shown (FmPriceChoice *self)
{
  for (guint i = 0; i < self->names->len; i++) {
    const FmFormulaName *name = g_ptr_array_index (self->names, i);

    if (name->blend_id == fm_session_get_blend_id (self->session) &&
        name->version_id == fm_session_get_version_id (self->session))
      return i;
  }
  return 0;
}

static void
names_read_cb (GObject *owner, GAsyncResult *result, gpointer data)
{
  FmPriceChoice *self = FM_PRICE_CHOICE (owner);
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) names = fm_store_task_finish (result, &error);
  g_autoptr (GtkStringList) list = gtk_string_list_new (NULL);

  if (self->formula_row == NULL)
    return;
  if (names == NULL) {
    say (GTK_WIDGET (self), error->message, TRUE);
    return;
  }
  for (guint i = 0; i < names->len; i++)
    gtk_string_list_append (list, ((const FmFormulaName *)names->pdata[i])->name);
  adw_combo_row_set_model (self->formula_row, G_LIST_MODEL (list));
  self->names = g_steal_pointer (&names);
  adw_combo_row_set_selected (self->formula_row, find_shown (self));
  chosen_cb (self);
}

static void
fm_price_choice_dispose (GObject *object)
{
  FmPriceChoice *self = FM_PRICE_CHOICE (object);

  g_clear_object (&self->chooser);
  fm_widget_drop_template (GTK_WIDGET (self), FM_TYPE_PRICE_CHOICE);
  g_clear_pointer (&self->names, g_ptr_array_unref);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (fm_price_choice_parent_class)->dispose (object);
}

static void
fm_price_choice_class_init (FmPriceChoiceClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_price_choice_dispose;
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/documents/fm-price-choice.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmPriceChoice, message_label);
  gtk_widget_class_bind_template_child (widget_class, FmPriceChoice, formula_row);
  gtk_widget_class_bind_template_callback (widget_class, chosen_cb);
  gtk_widget_class_install_action (widget_class, "prices.export", NULL, export_action);
  gtk_widget_class_install_action (widget_class, "prices.import", NULL, import_action);
}

static void
fm_price_choice_init (FmPriceChoice *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
fm_price_choice_present (GtkWidget *parent, FmSession *session)
{
  FmNotebook *notebook = fm_session_get_notebook (session);
  FmPriceChoice *self = g_object_new (FM_TYPE_PRICE_CHOICE, NULL);

  self->session = g_object_ref (session);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "prices.import",
                                 !fm_notebook_is_read_only (notebook));
  fm_sheet_window_present (parent, &(FmSheetOrder){
                                       .title = _ ("Prices"),
                                       .session = session,
                                       .options = GTK_WIDGET (self),
                                       .make = make_sheet,
                                       .new_order = new_order,
                                       .free_order = order_free,
                                   });
  fm_formula_names_task (self, notebook, names_read_cb);
}
