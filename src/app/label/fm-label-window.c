/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-label-window.c - the label of a draft or a version */
#include "app/label/fm-label-window.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/label/fm-label-stated.h"
#include "app/label/fm-label-words.h"
#include "app/print/fm-batch-sheet-print.h"
#include "app/session/fm-notebook-settings.h"
#include "app/session/fm-store-task.h"
#include "app/widgets/fm-derivation-window.h"
#include "app/widgets/fm-number-row.h"
#include "core/base/fm-date.h"
#include "core/base/fm-number.h"
#include "report/fm-label-sheet.h"
#include "store/fm-label-store.h"
#include "store/fm-versions.h"

/* As they stand in the list; the first one keeps the plain order. */
static const double gather_pct[] = { 0.0, 2.0, 1.5, 1.0, 0.5 };

struct _FmLabelWindow {
  FmPaperWindow parent_instance;

  GtkLabel *message_label;
  AdwPreferencesGroup *rules_group;
  AdwActionRow *serving_row;
  AdwComboRow *rules_row;
  FmNumberEntry *serving_entry;
  FmNumberEntry *pack_entry;
  GtkSwitch *more_switch;
  AdwComboRow *gather_row;
  AdwPreferencesGroup *stated_group;
  FmNumberEntry *quality_entry;
  AdwEntryRow *source_row;
  AdwPreferencesGroup *words_group;
  FmBatchSheetPreview *preview;

  FmSession *session;
  char *blend_name;
  char *version_name;
  char *key; /* under which the choice is kept */
  const char *serving_words;
  FmFormula *formula;     /* NULL until it is read */
  FmFormula *used;        /* (nullable) what a serving was made of */
  FmAnalysis *analysis;   /* of it */
  FmLabelChoice *choice;  /* likewise */
  FmLabelWords *no_words; /* for ingredients without words of their own */
  GCancellable *cancellable;
  FmLabelStatedRows *stated; /* NULL until the formula is read */
  gboolean loading;
};

G_DEFINE_FINAL_TYPE (FmLabelWindow, fm_label_window, FM_TYPE_PAPER_WINDOW)

/* What is read in a thread before anything can be shown. */
typedef struct {
  char *key;
  gint64 version_id; /* 0: @formula is at hand */
  int number;
  FmFormula *formula;
  FmLabelChoice *choice;
} Load;

static void
load_free (Load *load)
{
  g_clear_pointer (&load->formula, fm_formula_free);
  g_clear_pointer (&load->choice, fm_label_choice_free);
  g_free (load->key);
  g_free (load);
}

static gpointer
run_load (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  Load *load = data;
  g_autoptr (FmVersionInfo) info = NULL;

  if (load->version_id != 0) {
    info = fm_versions_info (notebook, load->version_id, error);
    load->formula = info != NULL ? fm_versions_load (notebook, load->version_id, error) : NULL;
    if (load->formula == NULL)
      return NULL;
    load->number = info->number;
  }
  load->choice = fm_label_choice_new (load->formula->brief->patty_mass_g);
  fm_label_store_read (notebook, load->key, load->choice);
  return GINT_TO_POINTER (TRUE);
}

static FmLabelOrigin
get_origin (FmLabelWindow *self, const char *date)
{
  return (FmLabelOrigin){ .formula = self->formula,
                          .used = self->used,
                          .analysis = self->analysis,
                          .blend_name = self->blend_name,
                          .version_name = self->version_name,
                          .date_text = date,
                          .serving_words = self->serving_words,
                          .notice = fm_notebook_notice () };
}

static FmLabel *
make_label (FmLabelWindow *self)
{
  g_autofree char *date = fm_date_today ();
  const FmLabelOrigin origin = get_origin (self, date);

  return fm_label_new (&origin, self->choice);
}

static FmBatchSheet *
make_sheet (FmLabelWindow *self)
{
  g_autofree char *date = fm_date_today ();
  const FmLabelOrigin origin = get_origin (self, date);

  return fm_label_sheet_new (fm_label_new (&origin, self->choice), &origin, self->choice);
}

static void
read_choice (FmLabelWindow *self)
{
  FmLabelChoice *choice = self->choice;
  FmLabelInput *input = &choice->input;

  input->serving_g = fm_number_entry_get_value (self->serving_entry);
  input->pack_g = fm_number_entry_get_value (self->pack_entry);
  input->with_more = gtk_switch_get_active (self->more_switch);
  choice->gather_pct = gather_pct[adw_combo_row_get_selected (self->gather_row)];
  choice->stated.protein_quality = fm_number_entry_get_value (self->quality_entry);
  g_free (choice->stated_source);
  choice->stated_source = g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->source_row)));
}

static void
show_label (FmLabelWindow *self)
{
  const FmLabelSetId set = self->choice->input.set;
  g_autoptr (FmLabel) label = make_label (self);

  fm_paper_window_set_name (
      FM_PAPER_WINDOW (self),
      (const char *const[]){ self->blend_name, self->version_name, fm_label_sets[set].key, NULL });
  fm_paper_window_show (FM_PAPER_WINDOW (self), make_sheet (self), NULL);
  gtk_widget_set_sensitive (GTK_WIDGET (self->gather_row), set != FM_LABEL_EU);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "label.save-panel", label->panel != NULL);
  if (label->refused != NULL)
    fm_paper_window_say (GTK_WIDGET (self), label->refused, TRUE);
}

static void
why_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmLabelWindow *self = FM_LABEL_WINDOW (widget);
  g_autoptr (FmLabel) label = make_label (self);
  g_autofree char *text =
      label->panel != NULL ? fm_label_panel_derivation (label->panel) : g_strdup (label->refused);

  fm_derivation_window_show (widget, _ ("Figures of the Label"), text);
}

static void
stated_changed (gpointer owner)
{
  show_label (FM_LABEL_WINDOW (owner));
}

static void
rules_changed_cb (FmLabelWindow *self)
{
  if (self->loading || self->choice == NULL)
    return;
  self->choice->input.set = (FmLabelSetId)adw_combo_row_get_selected (self->rules_row);
  fm_label_stated_rows_show (self->stated, self->formula, self->analysis);
  show_label (self);
}

static void
choice_changed_cb (FmLabelWindow *self)
{
  if (self->loading || self->choice == NULL)
    return;
  read_choice (self);
  show_label (self);
}

static void
words_changed_cb (FmLabelWindow *self, FmLabelWordsRow *row)
{
  if (self->loading)
    return;
  fm_label_choice_set_words (self->choice, fm_label_words_row_get_identity (row),
                             fm_label_words_row_get_name (row), fm_label_words_row_get_parts (row));
  show_label (self);
}

static void
add_words_row (FmLabelWindow *self, const FmIngredient *ingredient)
{
  const FmLabelWords *words =
      g_hash_table_lookup (self->choice->words, fm_ingredient_identity (ingredient));
  GtkWidget *row = fm_label_words_row_new (ingredient, words != NULL ? words : self->no_words);

  g_signal_connect_object (row, "changed", G_CALLBACK (words_changed_cb), self, G_CONNECT_SWAPPED);
  adw_preferences_group_add (self->words_group, row);
}

static void
add_words_rows (FmLabelWindow *self)
{
  const FmFormula *used = self->used != NULL ? self->used : self->formula;
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < fm_formula_n_lines (used); i++) {
    const FmIngredient *ingredient = fm_formula_line (used, i)->ingredient;

    if (g_hash_table_add (seen, (gpointer)fm_ingredient_identity (ingredient)))
      add_words_row (self, ingredient);
  }
}

static guint
gather_index (double pct)
{
  for (guint i = 0; i < G_N_ELEMENTS (gather_pct); i++)
    if (gather_pct[i] == pct)
      return i;
  return 0;
}

static void
show_choice (FmLabelWindow *self)
{
  const FmLabelChoice *choice = self->choice;
  const char *source = choice->stated_source != NULL ? choice->stated_source : "";

  self->loading = TRUE;
  adw_combo_row_set_selected (self->rules_row, choice->input.set);
  fm_number_entry_set_value (self->serving_entry, choice->input.serving_g);
  fm_number_entry_set_value (self->pack_entry, choice->input.pack_g);
  gtk_switch_set_active (self->more_switch, choice->input.with_more);
  adw_combo_row_set_selected (self->gather_row, gather_index (choice->gather_pct));
  fm_number_entry_set_value (self->quality_entry, choice->stated.protein_quality);
  gtk_editable_set_text (GTK_EDITABLE (self->source_row), source);
  add_words_rows (self);
  self->stated = fm_label_stated_rows_new (self->stated_group, self->choice, self, stated_changed);
  fm_label_stated_rows_show (self->stated, self->formula, self->analysis);
  self->loading = FALSE;
}

/* A refused label has no sheet that names what it is of. */
static void
show_title (FmLabelWindow *self)
{
  /* TRANSLATORS: title of the window: blend, then "draft" or "version 3" */
  g_autofree char *title =
      g_strdup_printf (_ ("Label: %s, %s"), self->blend_name, self->version_name);

  gtk_window_set_title (GTK_WINDOW (self), title);
}

static void
loaded_cb (GObject *owner, GAsyncResult *result, gpointer data)
{
  FmLabelWindow *self = FM_LABEL_WINDOW (owner);
  Load *load = fm_store_task_data (result);
  g_autoptr (GError) error = NULL;

  if (fm_store_task_finish (result, &error) == NULL) {
    if (!g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
      fm_paper_window_say (GTK_WIDGET (self), error->message, TRUE);
    return;
  }
  if (load->version_id != 0)
    self->version_name = g_strdup_printf (_ ("version %d"), load->number);
  show_title (self);
  self->formula = g_steal_pointer (&load->formula);
  self->choice = g_steal_pointer (&load->choice);
  /* A serving weighs what is on the plate now. */
  if (self->used != NULL)
    self->choice->input.serving_g = self->formula->brief->patty_mass_g;
  self->analysis = fm_analysis_new (self->formula);
  show_choice (self);
  show_label (self);
}

/* The ending says which kind: a picture to be placed by others, at its true size. */
static GBytes *
make_panel_file (gpointer data, const char *name, GError **error)
{
  const FmLabelPicture picture = fm_label_picture (data);
  g_autofree char *lower = g_ascii_strdown (name, -1);

  if (g_str_has_suffix (lower, ".png"))
    return fm_label_picture_to_file (&picture, FM_LABEL_FILE_PNG, error);
  if (g_str_has_suffix (lower, ".pdf"))
    return fm_label_picture_to_file (&picture, FM_LABEL_FILE_PDF, error);
  if (g_str_has_suffix (lower, ".svg"))
    return fm_label_picture_to_file (&picture, FM_LABEL_FILE_SVG, error);
  g_set_error_literal (error, G_IO_ERROR, G_IO_ERROR_INVALID_FILENAME,
                       _ ("the name must end in .svg, .png or .pdf"));
  return NULL;
}

static void
save_panel_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmLabelWindow *self = FM_LABEL_WINDOW (widget);
  FmLabel *label;

  if (!fm_paper_window_may_keep (FM_PAPER_WINDOW (self)))
    return;
  label = make_label (self);
  if (label->panel == NULL) {
    fm_label_free (label);
    return;
  }
  g_autofree char *file = fm_paper_window_file_name (FM_PAPER_WINDOW (self), "svg");
  fm_print_save (&(FmPrintSave){ widget, _ ("Save the Panel"), file, make_panel_file, label,
                                 (GDestroyNotify)fm_label_free, fm_paper_window_say });
}

static const char *
fm_label_window_bad_text (FmPaperWindow *window)
{
  FmLabelWindow *self = FM_LABEL_WINDOW (window);
  FmNumberEntry *const entries[] = { self->serving_entry, self->pack_entry, self->quality_entry };
  const char *bad = fm_number_row_bad_text (entries, G_N_ELEMENTS (entries));

  if (bad != NULL || self->stated == NULL)
    return bad;
  return fm_label_stated_rows_bad_text (self->stated);
}

static gboolean
fm_label_window_close_request (GtkWindow *window)
{
  FmLabelWindow *self = FM_LABEL_WINDOW (window);

  if (self->choice != NULL) {
    g_autofree char *text = fm_label_choice_to_json (self->choice);

    fm_session_save_setting (self->session, self->key, text);
  }
  return GTK_WINDOW_CLASS (fm_label_window_parent_class)->close_request (window);
}

static void
fm_label_window_dispose (GObject *object)
{
  FmLabelWindow *self = FM_LABEL_WINDOW (object);

  self->loading = TRUE;
  g_cancellable_cancel (self->cancellable);
  g_clear_pointer (&self->stated, fm_label_stated_rows_free);
  gtk_widget_dispose_template (GTK_WIDGET (object), FM_TYPE_LABEL_WINDOW);
  g_clear_object (&self->cancellable);
  g_clear_pointer (&self->analysis, fm_analysis_free);
  g_clear_pointer (&self->formula, fm_formula_free);
  g_clear_pointer (&self->choice, fm_label_choice_free);
  g_clear_pointer (&self->no_words, fm_label_words_free);
  g_clear_pointer (&self->used, fm_formula_free);
  g_clear_pointer (&self->key, g_free);
  g_clear_pointer (&self->blend_name, g_free);
  g_clear_pointer (&self->version_name, g_free);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (fm_label_window_parent_class)->dispose (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, FmLabelWindow, message_label);
  gtk_widget_class_bind_template_child (widget_class, FmLabelWindow, rules_group);
  gtk_widget_class_bind_template_child (widget_class, FmLabelWindow, serving_row);
  gtk_widget_class_bind_template_child (widget_class, FmLabelWindow, rules_row);
  gtk_widget_class_bind_template_child (widget_class, FmLabelWindow, serving_entry);
  gtk_widget_class_bind_template_child (widget_class, FmLabelWindow, pack_entry);
  gtk_widget_class_bind_template_child (widget_class, FmLabelWindow, more_switch);
  gtk_widget_class_bind_template_child (widget_class, FmLabelWindow, gather_row);
  gtk_widget_class_bind_template_child (widget_class, FmLabelWindow, stated_group);
  gtk_widget_class_bind_template_child (widget_class, FmLabelWindow, quality_entry);
  gtk_widget_class_bind_template_child (widget_class, FmLabelWindow, source_row);
  gtk_widget_class_bind_template_child (widget_class, FmLabelWindow, words_group);
  gtk_widget_class_bind_template_child (widget_class, FmLabelWindow, preview);
  gtk_widget_class_bind_template_callback (widget_class, choice_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, rules_changed_cb);
}

static void
fm_label_window_class_init (FmLabelWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_label_window_dispose;
  GTK_WINDOW_CLASS (klass)->close_request = fm_label_window_close_request;
  FM_PAPER_WINDOW_CLASS (klass)->bad_text = fm_label_window_bad_text;
  g_type_ensure (FM_TYPE_NUMBER_ENTRY);
  g_type_ensure (FM_TYPE_BATCH_SHEET_PREVIEW);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/label/fm-label-window.ui");
  bind_children (widget_class);
  gtk_widget_class_install_action (widget_class, "label.why", NULL, why_action);
  gtk_widget_class_install_action (widget_class, "label.save-panel", NULL, save_panel_action);
}

static void
fill_lists (FmLabelWindow *self)
{
  g_autoptr (GtkStringList) rules = gtk_string_list_new (NULL);
  g_autoptr (GtkStringList) gather = gtk_string_list_new (NULL);

  for (guint i = 0; i < FM_N_LABEL_SETS; i++)
    gtk_string_list_append (rules, _ (fm_label_sets[i].title));
  for (guint i = 0; i < G_N_ELEMENTS (gather_pct); i++) {
    g_autofree char *number = fm_number_to_edit (gather_pct[i], 1);
    /* TRANSLATORS: a share of ingredients, "1.5" */
    g_autofree char *text = g_strdup_printf (_ ("“Contains %s %% or less of” last"), number);
    gtk_string_list_append (gather, i == 0 ? _ ("Plain order by mass") : text);
  }
  adw_combo_row_set_model (self->rules_row, G_LIST_MODEL (rules));
  adw_combo_row_set_model (self->gather_row, G_LIST_MODEL (gather));
}

static void
fm_label_window_init (FmLabelWindow *self)
{
  self->loading = TRUE;
  self->cancellable = g_cancellable_new ();
  self->no_words = fm_label_words_new (NULL, NULL);
  gtk_widget_init_template (GTK_WIDGET (self));
  fm_paper_window_set_parts (FM_PAPER_WINDOW (self), self->message_label, self->preview);
  fill_lists (self);
  fm_number_row_tell_errors (self->serving_entry);
  fm_number_row_tell_errors (self->pack_entry);
  fm_number_row_tell_errors (self->quality_entry);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "label.save-panel", FALSE);
  self->loading = FALSE;
}

/* @formula: (nullable) (transfer full): of version @version_id when there is none */
static void
start_load (FmLabelWindow *self, gint64 version_id, FmFormula *formula)
{
  Load *load = g_new0 (Load, 1);

  load->key = g_strdup (self->key);
  load->version_id = version_id;
  load->formula = formula;
  fm_store_task (&(FmStoreTask){
      .owner = self,
      .notebook = fm_session_get_notebook (self->session),
      .run = run_load,
      .data = load,
      .free_data = (GDestroyNotify)load_free,
      .cancellable = self->cancellable,
      .done = loaded_cb,
  });
}

static FmLabelWindow *
label_window_new (GtkWidget *parent, FmSession *session)
{
  FmLabelWindow *self =
      g_object_new (FM_TYPE_LABEL_WINDOW, "transient-for", gtk_widget_get_root (parent), NULL);

  self->session = g_object_ref (session);
  self->blend_name = g_strdup (fm_session_get_blend_name (session));
  return self;
}

void
fm_label_window_present (GtkWidget *parent, FmSession *session, gint64 version_id)
{
  const FmVersionInfo *shown = fm_session_get_version_info (session);
  FmLabelWindow *self = label_window_new (parent, session);
  FmFormula *formula = NULL;

  self->key = fm_label_store_key (fm_session_get_blend_id (session));
  self->serving_words = FM_LABEL_SERVING_WORDS;
  if (version_id == 0) {
    formula = fm_formula_copy (fm_session_get_formula (session));
    self->version_name =
        shown != NULL ? g_strdup_printf (_ ("version %d"), shown->number) : g_strdup (_ ("draft"));
  }
  start_load (self, version_id, formula);
  gtk_window_present (GTK_WINDOW (self));
}

void
fm_label_window_present_serving (GtkWidget *parent,
                                 FmSession *session,
                                 const char *version_name,
                                 const FmFormula *eaten,
                                 const FmFormula *used)
{
  FmLabelWindow *self = label_window_new (parent, session);

  self->key = fm_label_store_serving_key (fm_session_get_blend_id (session));
  self->serving_words = FM_LABEL_DISH_WORDS;
  self->version_name = g_strdup (version_name);
  self->used = fm_formula_copy (used);
  adw_action_row_set_subtitle (self->serving_row, _ ("All that is on the plate"));
  adw_preferences_group_set_description (
      self->rules_group,
      _ ("For the serving as it is eaten; the list of ingredients as they go in. "
         "A licensed professional or the authority must check a label before it "
         "goes on a food."));
  start_load (self, 0, fm_formula_copy (eaten));
  gtk_window_present (GTK_WINDOW (self));
}
