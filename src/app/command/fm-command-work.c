/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-command-work.c - the work of each command */
#include "app/command/fm-command-private.h"

#include <gio/gio.h>
#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "core/base/fm-date.h"
#include "report/fm-batch-sheet-paint.h"
#include "report/fm-cook-card.h"
#include "report/fm-label-sheet.h"
#include "report/fm-notebook-csv.h"
#include "report/fm-reader-card.h"
#include "report/fm-specification.h"
#include "store/exchange/fm-exchange.h"
#include "store/fm-label-store.h"
#include "store/fm-versions.h"
#include "store/fm-notebook-recover.h"

/* A formula of a notebook and whose it is. */
typedef struct {
  FmNotebook *notebook;
  gint64 blend_id;
  gint64 version_id; /* 0 = the draft */
  char *version_name;
  FmFormula *formula;
} Found;

static void
found_clear (Found *self)
{
  g_clear_pointer (&self->notebook, fm_notebook_unref);
  g_clear_pointer (&self->formula, fm_formula_free);
  g_free (self->version_name);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Found, found_clear)

static gboolean
ask_again (GError **error, const char *text)
{
  g_set_error_literal (error, G_OPTION_ERROR, G_OPTION_ERROR_BAD_VALUE, text);
  return FALSE;
}

static gboolean
find_blend (Found *self, const char *name, GError **error)
{
  g_autoptr (GPtrArray) blends = fm_blends_list (self->notebook, error);

  for (guint i = 0; blends != NULL && i < blends->len; i++) {
    const FmBlendInfo *blend = g_ptr_array_index (blends, i);

    if (strcmp (blend->name, name) == 0)
      self->blend_id = blend->id;
  }
  if (blends != NULL && self->blend_id == 0)
    g_set_error (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND,
                 _ ("There is no blend “%s” in this notebook."), name);
  return self->blend_id != 0;
}

static gboolean
find_version (Found *self, int number, GError **error)
{
  g_autoptr (GPtrArray) versions = fm_versions_list (self->notebook, self->blend_id, error);

  for (guint i = 0; versions != NULL && i < versions->len; i++) {
    const FmVersionInfo *version = g_ptr_array_index (versions, i);

    if (version->number == number)
      self->version_id = version->id;
  }
  if (versions != NULL && self->version_id == 0)
    g_set_error (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND,
                 _ ("That blend has no version %d."), number);
  return self->version_id != 0;
}

/* Only reads, so that a notebook that a window writes can be asked as well. */
static gboolean
open_part (Found *self, const FmCommandOptions *options, const char *path, GError **error)
{
  if (options->version != 0 && options->blend == NULL)
    return ask_again (error, _ ("A version is one of a blend: name that with --blend."));
  self->notebook = fm_notebook_open_read_only (path, NULL, error);
  return self->notebook != NULL &&
         (options->blend == NULL || find_blend (self, options->blend, error)) &&
         (options->version == 0 || find_version (self, options->version, error));
}

static gboolean
open_formula (Found *self, const FmCommandOptions *options, const char *path, GError **error)
{
  if (options->blend == NULL)
    return ask_again (error, _ ("Name a blend with --blend."));
  if (!open_part (self, options, path, error))
    return FALSE;
  self->version_name = options->version != 0 ? g_strdup_printf (_ ("version %d"), options->version)
                                             : g_strdup (_ ("draft"));
  self->formula = self->version_id != 0
                      ? fm_versions_load (self->notebook, self->version_id, error)
                      : fm_draft_load (self->notebook, self->blend_id, NULL, error);
  return self->formula != NULL;
}

gboolean
fm_command_export (const FmCommandOptions *options,
                   const char *notebook,
                   const char *file,
                   GError **error)
{
  g_auto (Found) found = { NULL };
  FmExchangePart part = { 0 };

  if (!open_part (&found, options, notebook, error))
    return FALSE;
  part.version_id = found.version_id;
  part.blend_id = found.version_id == 0 ? found.blend_id : 0;
  if (options->experiment != 0)
    part = (FmExchangePart){ .experiment_id = options->experiment };
  return fm_exchange_export (found.notebook, &part, file, NULL, error);
}

gboolean
fm_command_import (const FmCommandOptions *options,
                   const char *file,
                   const char *notebook,
                   GError **error)
{
  g_autoptr (FmNotebook) made = fm_exchange_import (file, notebook, NULL, error);

  return made != NULL;
}

gboolean
fm_command_recover (const FmCommandOptions *options,
                    const char *damaged,
                    const char *notebook,
                    GError **error)
{
  g_autofree char *report = NULL;
  g_autoptr (FmNotebook) made = fm_notebook_recover (damaged, notebook, &report, NULL, error);

  if (made != NULL)
    g_print ("%s\n", report);
  return made != NULL;
}

gboolean
fm_command_csv (const FmCommandOptions *options,
                const char *notebook,
                const char *folder,
                GError **error)
{
  const FmCsvStyle style = options->comma ? (FmCsvStyle){ ';', ',' } : (FmCsvStyle){ ',', '.' };
  g_autoptr (FmNotebook) opened = fm_notebook_open_read_only (notebook, NULL, error);

  return opened != NULL && fm_notebook_csv_write (opened, folder, style, error);
}

static gboolean
write_bytes (const char *file, GBytes *bytes, GError **error)
{
  return bytes != NULL && g_file_set_contents (file, g_bytes_get_data (bytes, NULL),
                                               (gssize)g_bytes_get_size (bytes), error);
}

static void
plan_batch (FmBatchSheetInput *input, const FmFormula *formula, const FmCommandOptions *options)
{
  g_autoptr (FmAnalysis) analysis = fm_analysis_new (formula);
  const FmBrief *brief = formula->brief;

  input->currency = "";
  input->method = FM_COOK_PATTY_PAN_BROILED;
  input->food.species = fm_formula_species (formula);
  input->food.fat_pct = analysis->fat_pct;
  input->plan.n_patties = options->n_patties != 0 ? options->n_patties : brief->n_patties;
  input->plan.patty_mass_g = brief->patty_mass_g;
  input->plan.salt_pct = brief->surface_salt_pct;
  input->plan.salt_price_per_kg = NAN;
  input->plan.buy_step_g = FM_BUY_STEP_G;
  input->plan.cook_yield_pct = fm_cook_yield_pct (input->method, &input->food);
  input->salt_minutes_before = input->meat_temp_c = input->plate_mm = NAN;
}

static GBytes *
make_page (const FmFormula *formula, const FmBatchSheetInput *input, GError **error)
{
  g_autofree char *date = fm_date_today_iso ();
  char *page = fm_reader_card_html (formula, input, FALSE, date, error);

  return page != NULL ? g_bytes_new_take (page, strlen (page)) : NULL;
}

static GBytes *
make_kind (const char *kind,
           const FmFormula *formula,
           const FmBatchSheetInput *input,
           GError **error)
{
  g_autoptr (FmBatchSheet) sheet = NULL;

  if (g_strcmp0 (kind, "page") == 0)
    return make_page (formula, input, error);
  if (kind == NULL || strcmp (kind, "batch") == 0)
    sheet = fm_batch_sheet_new (formula, input, error);
  else if (strcmp (kind, "cook") == 0)
    sheet = fm_cook_card_new (formula, input, error);
  else if (strcmp (kind, "specification") == 0)
    sheet = fm_specification_new (formula, input, error);
  else if (strcmp (kind, "reader") == 0)
    sheet = fm_reader_card_new (formula, input, FALSE, error);
  else
    ask_again (error, _ ("Kinds are batch, cook, specification, reader and page."));
  return sheet != NULL ? fm_batch_sheet_to_pdf (sheet, error) : NULL;
}

gboolean
fm_command_batch_sheet (const FmCommandOptions *options,
                        const char *notebook,
                        const char *file,
                        GError **error)
{
  g_auto (Found) found = { NULL };
  g_autofree char *date = fm_date_today ();
  g_autofree char *name = g_path_get_basename (notebook);
  FmBatchSheetInput input = { .notebook_name = name, .date_text = date };
  g_autoptr (GBytes) bytes = NULL;

  if (!open_formula (&found, options, notebook, error))
    return FALSE;
  input.blend_name = options->blend;
  input.version_name = found.version_name;
  input.notice = fm_notebook_invented (found.notebook);
  plan_batch (&input, found.formula, options);
  bytes = make_kind (options->kind, found.formula, &input, error);
  return write_bytes (file, bytes, error);
}

static gboolean
choose_rules (FmLabelChoice *choice, const char *key, GError **error)
{
  for (guint i = 0; key != NULL && i < FM_N_LABEL_SETS; i++)
    if (strcmp (fm_label_sets[i].key, key) == 0) {
      choice->input.set = (FmLabelSetId)i;
      return TRUE;
    }
  return key == NULL || ask_again (error, _ ("Rules are us_retail, us_meat or eu."));
}

static GBytes *
make_panel (const FmLabel *label, const char *file, GError **error)
{
  const FmLabelPicture picture = fm_label_picture (label);
  FmLabelFileKind kind = FM_LABEL_FILE_PDF;

  if (g_str_has_suffix (file, ".svg"))
    kind = FM_LABEL_FILE_SVG;
  else if (g_str_has_suffix (file, ".png"))
    kind = FM_LABEL_FILE_PNG;
  return fm_label_picture_to_file (&picture, kind, error);
}

static GBytes *
make_label (const FmCommandOptions *options,
            const FmLabelOrigin *origin,
            const FmLabelChoice *choice,
            const char *file,
            GError **error)
{
  g_autoptr (FmLabel) label = fm_label_new (origin, choice);
  g_autoptr (FmBatchSheet) sheet = NULL;

  if (label->panel == NULL) {
    g_set_error_literal (error, FM_STORE_ERROR, FM_STORE_ERROR_FAILED, label->refused);
    return NULL;
  }
  if (options->panel)
    return make_panel (label, file, error);
  sheet = fm_label_sheet_new (g_steal_pointer (&label), origin, choice);
  return fm_batch_sheet_to_pdf (sheet, error);
}

gboolean
fm_command_label (const FmCommandOptions *options,
                  const char *notebook,
                  const char *file,
                  GError **error)
{
  g_auto (Found) found = { NULL };
  g_autofree char *date = fm_date_today (), *key = NULL;
  g_autoptr (FmLabelChoice) choice = NULL;
  g_autoptr (FmAnalysis) analysis = NULL;
  g_autoptr (GBytes) bytes = NULL;

  if (!open_formula (&found, options, notebook, error))
    return FALSE;
  choice = fm_label_choice_new (found.formula->brief->patty_mass_g);
  key = fm_label_store_key (found.blend_id);
  fm_label_store_read (found.notebook, key, choice);
  if (options->serving_g != 0.0)
    choice->input.serving_g = options->serving_g;
  if (!choose_rules (choice, options->rules, error))
    return FALSE;
  analysis = fm_analysis_new (found.formula);
  const FmLabelOrigin origin = { .formula = found.formula,
                                 .analysis = analysis,
                                 .blend_name = options->blend,
                                 .version_name = found.version_name,
                                 .date_text = date,
                                 .serving_words = FM_LABEL_SERVING_WORDS,
                                 .notice = fm_notebook_invented (found.notebook) };
  bytes = make_label (options, &origin, choice, file, error);
  return write_bytes (file, bytes, error);
}
