/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-batch-sheet-dialog.c - plans a batch of the shown formula and prints its sheet */
#include "app/batch/fm-batch-sheet-dialog.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "app/print/fm-batch-sheet-print.h"
#include "app/widgets/fm-derivation-window.h"
#include "app/session/fm-notebook-settings.h"
#include "app/widgets/fm-number-row.h"
#include "core/base/fm-date.h"
#include "core/experiment/fm-strange.h"
#include "report/fm-cook-card.h"
#include "report/fm-reader-card.h"
#include "report/fm-specification.h"

#define N_ENTRIES 10

struct _FmBatchSheetDialog {
  FmPaperWindow parent_instance;

  AdwComboRow *kind_row;
  GtkWidget *page_button;
  GtkLabel *costs_label;
  GtkLabel *error_label;
  FmNumberEntry *patties_entry;
  FmNumberEntry *patty_mass_entry;
  FmNumberEntry *grind_loss_entry;
  AdwComboRow *method_row;
  FmNumberEntry *meat_temp_entry;
  FmNumberEntry *plate_entry;
  FmNumberEntry *passes_entry;
  FmNumberEntry *salt_entry;
  FmNumberEntry *salt_minutes_entry;
  FmNumberEntry *salt_price_entry;
  FmNumberEntry *buy_step_entry;
  FmBatchSheetPreview *preview;

  FmFormula *formula; /* as shown when the dialog opened */
  FmCookFood food;
  char *notebook_name;
  char *blend_name;
  char *version_name;
};

G_DEFINE_FINAL_TYPE (FmBatchSheetDialog, fm_batch_sheet_dialog, FM_TYPE_PAPER_WINDOW)

static double
value_or_zero (FmNumberEntry *entry)
{
  const double value = fm_number_entry_get_value (entry);

  return isnan (value) ? 0.0 : value;
}

static void
read_plan (FmBatchSheetDialog *self, FmBatchSheetInput *input)
{
  input->method = (FmCookMethod)adw_combo_row_get_selected (self->method_row);
  input->plan.n_patties = (int)value_or_zero (self->patties_entry);
  input->plan.patty_mass_g = fm_number_entry_get_value (self->patty_mass_entry);
  input->plan.grind_loss_pct = value_or_zero (self->grind_loss_entry);
  input->plan.salt_pct = fm_number_entry_get_value (self->salt_entry);
  input->plan.salt_price_per_kg = fm_number_entry_get_value (self->salt_price_entry);
  input->plan.buy_step_g = value_or_zero (self->buy_step_entry);
  input->food = self->food;
  input->plan.cook_yield_pct = fm_cook_yield_pct (input->method, &self->food);
  input->salt_minutes_before = fm_number_entry_get_value (self->salt_minutes_entry);
  input->meat_temp_c = fm_number_entry_get_value (self->meat_temp_entry);
  input->plate_mm = fm_number_entry_get_value (self->plate_entry);
  input->grind_passes = (int)value_or_zero (self->passes_entry);
}

/* What goes to paper, in the order of the choice. */
typedef enum {
  BATCH_SHEET,
  COOK_CARD,
  SPECIFICATION,
  READER_CARD_GRAMS,
  READER_CARD_OUNCES,
  N_KINDS,
} Kind;

static Kind
get_kind (FmBatchSheetDialog *self)
{
  return (Kind)adw_combo_row_get_selected (self->kind_row);
}

static FmBatchSheet *
make_kind (FmBatchSheetDialog *self, const FmBatchSheetInput *input, GError **error)
{
  const Kind kind = get_kind (self);

  if (kind == BATCH_SHEET)
    return fm_batch_sheet_new (self->formula, input, error);
  if (kind == COOK_CARD)
    return fm_cook_card_new (self->formula, input, error);
  if (kind == SPECIFICATION)
    return fm_specification_new (self->formula, input, error);
  return fm_reader_card_new (self->formula, input, kind == READER_CARD_OUNCES, error);
}

static void
begin_input (FmBatchSheetDialog *self, FmBatchSheetInput *input)
{
  *input = (FmBatchSheetInput){
    .notebook_name = self->notebook_name,
    .blend_name = self->blend_name,
    .version_name = self->version_name,
    .notice = fm_notebook_notice (),
  };
  read_plan (self, input);
}

static FmBatchSheet *
make_sheet (FmBatchSheetDialog *self, GError **error)
{
  FmBatchSheetInput input;
  const char *currency = fm_notebook_units ()->currency;
  g_autofree char *date = fm_date_today ();

  begin_input (self, &input);
  input.currency = currency;
  input.date_text = date;
  return make_kind (self, &input, error);
}

static void
plan_changed_cb (FmBatchSheetDialog *self)
{
  g_autoptr (GError) error = NULL;
  FmBatchSheet *sheet;

  if (self->formula == NULL)
    return;
  sheet = make_sheet (self, &error);
  gtk_label_set_text (self->costs_label, sheet != NULL && sheet->costs != NULL ? sheet->costs : "");
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "sheet.why",
                                 sheet != NULL && sheet->cost_derivation != NULL);
  fm_paper_window_show (FM_PAPER_WINDOW (self), sheet, error);
  fm_number_entry_set_warning (self->patty_mass_entry,
                               fm_strange_patty (fm_number_entry_get_value (self->patty_mass_entry),
                                                 self->formula->brief->patty_mass_g));
  gtk_widget_set_visible (self->page_button, get_kind (self) >= READER_CARD_GRAMS);
}

static void
list_entries (FmBatchSheetDialog *self, FmNumberEntry *entries[N_ENTRIES])
{
  FmNumberEntry *const all[N_ENTRIES] = {
    self->patties_entry,  self->patty_mass_entry,   self->grind_loss_entry,
    self->plate_entry,    self->passes_entry,       self->meat_temp_entry,
    self->salt_entry,     self->salt_minutes_entry, self->salt_price_entry,
    self->buy_step_entry,
  };

  memcpy (entries, all, sizeof all);
}

static void
why_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FmBatchSheet) sheet = make_sheet (FM_BATCH_SHEET_DIALOG (widget), &error);

  if (sheet != NULL && sheet->cost_derivation != NULL)
    fm_derivation_window_show (widget, _ ("Costs of the Batch"), sheet->cost_derivation);
}

static GBytes *
give_page (gpointer data, const char *name, GError **error)
{
  return g_bytes_new (data, strlen (data));
}

static void
save_page_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmBatchSheetDialog *self = FM_BATCH_SHEET_DIALOG (widget);
  g_autofree char *date = fm_date_today_iso ();
  g_autofree char *file = fm_paper_window_file_name (FM_PAPER_WINDOW (self), "html");
  g_autoptr (GError) error = NULL;
  FmBatchSheetInput input;
  char *page;

  if (!fm_paper_window_may_keep (FM_PAPER_WINDOW (self)))
    return;
  begin_input (self, &input);
  page = fm_reader_card_html (self->formula, &input, get_kind (self) == READER_CARD_OUNCES, date,
                              &error);
  if (page == NULL) {
    fm_paper_window_say (widget, error->message, TRUE);
    return;
  }
  fm_print_save (&(FmPrintSave){ widget, _ ("Save the Page"), file, give_page, page, g_free,
                                 fm_paper_window_say });
}

static const char *
fm_batch_sheet_dialog_bad_text (FmPaperWindow *window)
{
  FmNumberEntry *entries[N_ENTRIES];

  list_entries (FM_BATCH_SHEET_DIALOG (window), entries);
  return fm_number_row_bad_text (entries, N_ENTRIES);
}

static void
fm_batch_sheet_dialog_dispose (GObject *object)
{
  FmBatchSheetDialog *self = FM_BATCH_SHEET_DIALOG (object);

  g_clear_pointer (&self->formula, fm_formula_free);
  gtk_widget_dispose_template (GTK_WIDGET (object), FM_TYPE_BATCH_SHEET_DIALOG);
  g_clear_pointer (&self->notebook_name, g_free);
  g_clear_pointer (&self->blend_name, g_free);
  g_clear_pointer (&self->version_name, g_free);
  G_OBJECT_CLASS (fm_batch_sheet_dialog_parent_class)->dispose (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, FmBatchSheetDialog, kind_row);
  gtk_widget_class_bind_template_child (widget_class, FmBatchSheetDialog, page_button);
  gtk_widget_class_bind_template_child (widget_class, FmBatchSheetDialog, costs_label);
  gtk_widget_class_bind_template_child (widget_class, FmBatchSheetDialog, error_label);
  gtk_widget_class_bind_template_child (widget_class, FmBatchSheetDialog, patties_entry);
  gtk_widget_class_bind_template_child (widget_class, FmBatchSheetDialog, patty_mass_entry);
  gtk_widget_class_bind_template_child (widget_class, FmBatchSheetDialog, grind_loss_entry);
  gtk_widget_class_bind_template_child (widget_class, FmBatchSheetDialog, method_row);
  gtk_widget_class_bind_template_child (widget_class, FmBatchSheetDialog, meat_temp_entry);
  gtk_widget_class_bind_template_child (widget_class, FmBatchSheetDialog, plate_entry);
  gtk_widget_class_bind_template_child (widget_class, FmBatchSheetDialog, passes_entry);
  gtk_widget_class_bind_template_child (widget_class, FmBatchSheetDialog, salt_entry);
  gtk_widget_class_bind_template_child (widget_class, FmBatchSheetDialog, salt_minutes_entry);
  gtk_widget_class_bind_template_child (widget_class, FmBatchSheetDialog, salt_price_entry);
  gtk_widget_class_bind_template_child (widget_class, FmBatchSheetDialog, buy_step_entry);
  gtk_widget_class_bind_template_child (widget_class, FmBatchSheetDialog, preview);
  gtk_widget_class_bind_template_callback (widget_class, plan_changed_cb);
}

static void
fm_batch_sheet_dialog_class_init (FmBatchSheetDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_batch_sheet_dialog_dispose;
  FM_PAPER_WINDOW_CLASS (klass)->bad_text = fm_batch_sheet_dialog_bad_text;
  g_type_ensure (FM_TYPE_NUMBER_ENTRY);
  g_type_ensure (FM_TYPE_BATCH_SHEET_PREVIEW);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/batch/fm-batch-sheet-dialog.ui");
  bind_children (widget_class);
  gtk_widget_class_install_action (widget_class, "sheet.why", NULL, why_action);
  gtk_widget_class_install_action (widget_class, "sheet.save-page", NULL, save_page_action);
}

static void
fm_batch_sheet_dialog_init (FmBatchSheetDialog *self)
{
  const char *const kinds[N_KINDS + 1] = {
    _ ("Batch sheet"),          _ ("Cook’s card"),           _ ("Specification for a supplier"),
    _ ("Reader’s card, grams"), _ ("Reader’s card, ounces"), NULL
  };
  g_autoptr (GtkStringList) kind_list = gtk_string_list_new (kinds);
  g_autoptr (GtkStringList) methods = gtk_string_list_new (NULL);
  FmNumberEntry *entries[N_ENTRIES];

  gtk_widget_init_template (GTK_WIDGET (self));
  fm_paper_window_set_parts (FM_PAPER_WINDOW (self), self->error_label, self->preview);
  list_entries (self, entries);
  adw_combo_row_set_model (self->kind_row, G_LIST_MODEL (kind_list));
  for (guint i = 0; i < N_ENTRIES; i++)
    fm_number_row_tell_errors (entries[i]);
  for (guint i = 0; i < FM_N_COOK_METHODS; i++)
    gtk_string_list_append (methods, fm_cook_method_name ((FmCookMethod)i));
  adw_combo_row_set_model (self->method_row, G_LIST_MODEL (methods));
  adw_combo_row_set_selected (self->method_row, FM_COOK_PATTY_PAN_BROILED);
}

static void
take_from_session (FmBatchSheetDialog *self, FmSession *session)
{
  const FmVersionInfo *version = fm_session_get_version_info (session);
  FmNotebook *notebook = fm_session_get_notebook (session);

  if (notebook != NULL)
    self->notebook_name = g_filename_display_basename (fm_notebook_path (notebook));
  self->blend_name = g_strdup (fm_session_get_blend_name (session));
  self->version_name = version != NULL ? g_strdup_printf (_ ("version %d"), version->number)
                                       : g_strdup (_ ("draft"));
  fm_paper_window_set_name (FM_PAPER_WINDOW (self),
                            (const char *const[]){ self->blend_name, self->version_name, NULL });
  self->formula = fm_formula_copy (fm_session_get_formula (session));
  self->food.species = fm_formula_species (self->formula);
  self->food.fat_pct = fm_session_get_analysis (session)->fat_pct;
}

static void
show_process (FmBatchSheetDialog *self)
{
  const FmProcess *process = self->formula->process;
  const GArray *plates = process->plates_mm;

  fm_number_entry_set_value (self->meat_temp_entry, process->numbers[FM_PROCESS_MEAT_TEMP]);
  fm_number_entry_set_value (self->salt_minutes_entry, process->numbers[FM_PROCESS_SALT_MINUTES]);
  if (plates->len == 0)
    return;
  fm_number_entry_set_value (self->plate_entry, g_array_index (plates, double, plates->len - 1));
  fm_number_entry_set_value (self->passes_entry, plates->len);
}

void
fm_batch_sheet_dialog_present (GtkWidget *parent, FmSession *session)
{
  FmBatchSheetDialog *self = g_object_new (FM_TYPE_BATCH_SHEET_DIALOG, "transient-for",
                                           gtk_widget_get_root (parent), NULL);

  take_from_session (self, session);
  fm_number_entry_set_value (self->patties_entry, self->formula->brief->n_patties);
  fm_number_entry_set_value (self->patty_mass_entry, self->formula->brief->patty_mass_g);
  fm_number_entry_set_value (self->salt_entry, self->formula->brief->surface_salt_pct);
  fm_number_entry_set_value (self->buy_step_entry, FM_BUY_STEP_G);
  show_process (self);
  plan_changed_cb (self);
  gtk_window_present (GTK_WINDOW (self));
}
