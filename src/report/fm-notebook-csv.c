/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-notebook-csv.c - a notebook as tables that a spreadsheet opens without mending */
#include "report/fm-notebook-csv.h"

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <locale.h>
#include <math.h>
#include <string.h>

#include "core/base/fm-date.h"
#include "core/formula/fm-analysis.h"
#include "report/fm-csv-text.h"
#include "store/fm-experiments.h"
#include "store/fm-tastings.h"
#include "store/fm-versions.h"

#define BYTE_ORDER_MARK "\xef\xbb\xbf"
#define DECIMALS 4

/** A table that is being written. */
typedef struct {
  FmNotebook *notebook;
  FmCsvStyle style;
  GString *text;
  gboolean is_begun; /* the row has a cell */
} Table;

FmCsvStyle
fm_csv_style_of_locale (void)
{
  const char decimal = localeconv ()->decimal_point[0];

  return (FmCsvStyle){ decimal == ',' ? ';' : ',', decimal == ',' ? ',' : '.' };
}

static void
begin_cell (Table *self)
{
  if (self->is_begun)
    g_string_append_c (self->text, self->style.separator);
  self->is_begun = TRUE;
}

static void
add_text (Table *self, const char *text)
{
  begin_cell (self);
  if (text != NULL)
    fm_csv_append_text (self->text, text);
}

static void
add_number (Table *self, double value, int decimals)
{
  const gsize start = self->text->len + (self->is_begun ? 1 : 0);

  begin_cell (self);
  fm_csv_append_number (self->text, value, decimals);
  for (gsize i = start; i < self->text->len; i++)
    if (self->text->str[i] == '.')
      self->text->str[i] = self->style.decimal;
}

static void
add_date (Table *self, gint64 seconds)
{
  g_autofree char *text = fm_date_iso_with_time (seconds);

  add_text (self, text);
}

static void
end_row (Table *self)
{
  g_string_append (self->text, "\r\n");
  self->is_begun = FALSE;
}

static void
add_head (Table *self, const char *const *names)
{
  for (; *names != NULL; names++)
    add_text (self, *names);
  end_row (self);
}

/* One formula of the notebook and whose it is. */
typedef struct {
  const char *blend;
  int number; /* 0 = the draft */
  FmFormula *formula;
} Entry;

typedef void (*AddFormula) (Table *self, const Entry *entry);

static void
add_whose (Table *self, const Entry *entry)
{
  add_text (self, entry->blend);
  if (entry->number > 0)
    add_number (self, entry->number, 0);
  else
    add_text (self, _ ("draft"));
}

static void
add_lines (Table *self, const Entry *entry)
{
  for (guint i = 0; i < fm_formula_n_lines (entry->formula); i++) {
    const FmFormulaLine *line = fm_formula_line (entry->formula, i);

    add_whose (self, entry);
    add_number (self, i + 1, 0);
    add_text (self, line->ingredient->name);
    add_number (self, line->mass_g, DECIMALS);
    add_number (self, fm_formula_share_pct (entry->formula, i), DECIMALS);
    add_number (self, fm_ingredient_fat_g_per_100g (line->ingredient), DECIMALS);
    add_number (self, line->ingredient->price_per_kg, DECIMALS);
    add_text (self, fm_provenance_name (line->ingredient->provenance));
    add_text (self, line->note);
    end_row (self);
  }
}

static void
add_nutrients (Table *self, const Entry *entry)
{
  g_autoptr (FmAnalysis) analysis = fm_analysis_new (entry->formula);

  for (int i = 0; i < FM_N_NUTRIENTS; i++) {
    const FmAmount *amount = &analysis->amounts[i];

    add_whose (self, entry);
    add_text (self, fm_nutrient_name ((FmNutrient)i));
    add_text (self, fm_nutrient_info ((FmNutrient)i)->unit);
    add_number (self, fm_analysis_value (analysis, (FmNutrient)i), DECIMALS);
    add_number (self, amount->known_g_per_100g, DECIMALS);
    add_number (self, amount->covered_pct, DECIMALS);
    end_row (self);
  }
}

static gboolean
add_entry (Table *self, Entry *entry, AddFormula add)
{
  if (entry->formula == NULL)
    return FALSE;
  add (self, entry);
  g_clear_pointer (&entry->formula, fm_formula_free);
  return TRUE;
}

static gboolean
add_blend (Table *self, const FmBlendInfo *blend, AddFormula add, GError **error)
{
  g_autoptr (GPtrArray) versions = fm_versions_list (self->notebook, blend->id, error);
  Entry entry = { blend->name, 0, fm_draft_load (self->notebook, blend->id, NULL, error) };

  if (versions == NULL || !add_entry (self, &entry, add))
    return FALSE;
  for (guint i = 0; i < versions->len; i++) {
    const FmVersionInfo *version = g_ptr_array_index (versions, i);

    entry.number = version->number;
    entry.formula = fm_versions_load (self->notebook, version->id, error);
    if (!add_entry (self, &entry, add))
      return FALSE;
  }
  return TRUE;
}

static gboolean
add_blends (Table *self, AddFormula add, GError **error)
{
  g_autoptr (GPtrArray) blends = fm_blends_list (self->notebook, error);

  for (guint i = 0; blends != NULL && i < blends->len; i++)
    if (!add_blend (self, g_ptr_array_index (blends, i), add, error))
      return FALSE;
  return blends != NULL;
}

static gboolean
add_formulas (Table *self, GError **error)
{
  static const char *const names[] = {
    "blend",          "version",      "line",        "ingredient", "mass_g", "share_pct",
    "fat_g_per_100g", "price_per_kg", "composition", "note",       NULL
  };

  add_head (self, names);
  return add_blends (self, add_lines, error);
}

static gboolean
add_nutrition (Table *self, GError **error)
{
  static const char *const names[] = { "blend",          "version",  "nutrient",
                                       "unit",           "per_100g", "known_part_per_100g",
                                       "mass_known_pct", NULL };

  add_head (self, names);
  return add_blends (self, add_nutrients, error);
}

static gboolean
add_experiment (Table *self, const FmExperimentInfo *info, GError **error)
{
  g_autoptr (FmExperiment) experiment = fm_experiments_load (self->notebook, info->id, error);

  if (experiment == NULL)
    return FALSE;
  add_text (self, info->blend_name);
  add_number (self, info->version_number, 0);
  add_date (self, info->made_at);
  add_text (self, info->title);
  add_number (self, info->rating > 0 ? info->rating : (double)NAN, 0);
  add_number (self, info->mean_raw_g, DECIMALS);
  add_number (self, info->cook_loss_pct, DECIMALS);
  add_number (self, info->peak_core_c, DECIMALS);
  add_number (self, experiment->meat_temp_c, DECIMALS);
  add_number (self, experiment->plate_mm, DECIMALS);
  add_number (self, experiment->grind_passes > 0 ? experiment->grind_passes : (double)NAN, 0);
  add_number (self, fm_experiment_salt_pct (experiment), DECIMALS);
  add_text (self, fm_cook_method_name (experiment->method));
  add_number (self, experiment->minutes_side_1, DECIMALS);
  add_number (self, experiment->minutes_side_2, DECIMALS);
  add_number (self, experiment->rest_minutes, DECIMALS);
  add_text (self, experiment->notes);
  end_row (self);
  return TRUE;
}

static gboolean
add_experiments (Table *self, GError **error)
{
  static const char *const names[] = {
    "blend",         "version",        "made_at",        "title",        "rating", "mean_raw_g",
    "cook_loss_pct", "peak_core_c",    "meat_temp_c",    "plate_mm",     "passes", "salt_pct",
    "method",        "minutes_side_1", "minutes_side_2", "rest_minutes", "notes",  NULL
  };
  const FmExperimentFilter all = { .sort = FM_EXPERIMENT_SORT_DATE };
  g_autoptr (GPtrArray) infos = fm_experiments_list (self->notebook, &all, NULL, error);

  add_head (self, names);
  for (guint i = 0; infos != NULL && i < infos->len; i++)
    if (!add_experiment (self, g_ptr_array_index (infos, i), error))
      return FALSE;
  return infos != NULL;
}

/* The name behind a code, once that is told. */
static const char *
sample_of (const FmTasting *tasting, const FmTastingMark *mark)
{
  if (tasting->state != FM_TASTING_OPENED)
    return NULL;
  for (guint i = 0; i < tasting->cups->len; i++) {
    const FmTastingCup *cup = &g_array_index (tasting->cups, FmTastingCup, i);

    if (cup->taster == mark->taster && cup->code == mark->code)
      return ((const FmTastingSample *)g_ptr_array_index (tasting->samples, cup->sample))->name;
  }
  return NULL;
}

static const char *
attribute_of (const FmTasting *tasting, const FmTastingMark *mark)
{
  return mark->task == FM_TASTING_JAR ? g_ptr_array_index (tasting->attributes, mark->attribute)
                                      : NULL;
}

static gboolean
add_marks (Table *self, gint64 id, GError **error)
{
  g_autoptr (FmTasting) tasting = fm_tastings_load (self->notebook, id, error);

  if (tasting == NULL)
    return FALSE;
  for (guint i = 0; i < tasting->marks->len; i++) {
    const FmTastingMark *mark = &g_array_index (tasting->marks, FmTastingMark, i);

    add_date (self, tasting->held_at);
    add_text (self, tasting->title);
    add_text (self, ((const FmTaster *)g_ptr_array_index (tasting->tasters, mark->taster))->name);
    add_number (self, mark->code, 0);
    add_text (self, sample_of (tasting, mark));
    add_text (self, fm_tasting_task_name (mark->task));
    add_text (self, attribute_of (tasting, mark));
    add_number (self, mark->value, DECIMALS);
    end_row (self);
  }
  return TRUE;
}

static gboolean
add_tastings (Table *self, GError **error)
{
  static const char *const names[] = { "held_at", "tasting",   "taster", "code", "sample",
                                       "task",    "attribute", "mark",   NULL };
  g_autoptr (GPtrArray) infos = fm_tastings_list (self->notebook, 0, error);

  add_head (self, names);
  for (guint i = 0; infos != NULL && i < infos->len; i++)
    if (!add_marks (self, ((const FmTastingInfo *)g_ptr_array_index (infos, i))->id, error))
      return FALSE;
  return infos != NULL;
}

static const struct {
  const char *name;
  gboolean (*add) (Table *self, GError **error);
} tables[FM_N_NOTEBOOK_CSVS] = {
  [FM_NOTEBOOK_CSV_FORMULAS] = { "formulas", add_formulas },
  [FM_NOTEBOOK_CSV_NUTRITION] = { "nutrition", add_nutrition },
  [FM_NOTEBOOK_CSV_EXPERIMENTS] = { "experiments", add_experiments },
  [FM_NOTEBOOK_CSV_TASTINGS] = { "tastings", add_tastings },
};

const char *
fm_notebook_csv_name (FmNotebookCsv what)
{
  return tables[what].name;
}

char *
fm_notebook_csv (FmNotebook *notebook, FmNotebookCsv what, FmCsvStyle style, GError **error)
{
  Table table = { notebook, style, g_string_new (BYTE_ORDER_MARK), FALSE };
  const char *notice = fm_notebook_invented (notebook);
  gboolean success;

  if (notice != NULL) {
    add_text (&table, notice);
    end_row (&table);
  }
  success = tables[what].add (&table, error);
  return g_string_free (table.text, !success);
}

gboolean
fm_notebook_csv_write (FmNotebook *notebook, const char *folder, FmCsvStyle style, GError **error)
{
  if (g_mkdir_with_parents (folder, 0755) != 0) {
    const int saved_errno = errno;
    g_set_error (error, FM_STORE_ERROR, FM_STORE_ERROR_NO_PERMISSION,
                 _ ("“%s” cannot be made (%s). Choose another folder."), folder,
                 g_strerror (saved_errno));
    return FALSE;
  }
  for (int i = 0; i < FM_N_NOTEBOOK_CSVS; i++) {
    g_autofree char *text = fm_notebook_csv (notebook, (FmNotebookCsv)i, style, error);
    g_autofree char *name = g_strconcat (tables[i].name, ".csv", NULL);
    g_autofree char *path = g_build_filename (folder, name, NULL);

    if (text == NULL || !g_file_set_contents (path, text, -1, error))
      return FALSE;
  }
  return TRUE;
}
