/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-compare-read.c - one column of a comparison, read in a thread */
#include "app/compare/fm-compare-read.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/compare/fm-compare-choice.h"
#include "core/base/fm-date.h"
#include "core/tasting/fm-tasting-story.h"
#include "store/fm-tastings.h"

/* What is read of one item. */
typedef struct {
  const FmCompareRead *read;
  GPtrArray *experiments; /* FmExperimentInfo, the newest first; none of a draft */
  FmCompareItem *item;
  GPtrArray *photos; /* FmPhotoInfo */
} Column;

char *
fm_compare_version_title (const char *blend_name, int number)
{
  return g_strdup_printf (_ ("%s, version %d"), blend_name, number);
}

char *
fm_compare_version_subtitle (const FmVersionInfo *info)
{
  g_autofree char *date = fm_date_text (info->saved_at);
  g_autofree char *point = fm_lean_point_format (info->fat_pct);

  return g_strjoin (" · ", point, date, info->reason, NULL);
}

char *
fm_compare_draft_title (const char *blend_name)
{
  return g_strdup_printf (_ ("%s, draft"), blend_name);
}

char *
fm_compare_experiment_title (const char *blend_name, int number, const char *title, gint64 made_at)
{
  g_autofree char *date = fm_date_text (made_at);

  if (title != NULL && title[0] != '\0')
    return g_strdup_printf (_ ("%s (%s, version %d)"), title, blend_name, number);
  return g_strdup_printf (_ ("Experiment of %s (%s, version %d)"), date, blend_name, number);
}

static char *
find_blend_name (GPtrArray *blends, gint64 blend_id)
{
  for (guint i = 0; i < blends->len; i++) {
    const FmBlendInfo *info = g_ptr_array_index (blends, i);

    if (info->id == blend_id)
      return g_strdup (info->name);
  }
  return g_strdup ("");
}

/* Mean over the experiments that recorded a loss; NaN when none did. */
static double
mean_cook_loss_pct (const GPtrArray *experiments)
{
  double sum = 0.0;
  guint n = 0;

  for (guint i = 0; i < experiments->len; i++) {
    const FmExperimentInfo *info = g_ptr_array_index (experiments, i);

    if (isnan (info->cook_loss_pct))
      continue;
    sum += info->cook_loss_pct;
    n++;
  }
  return n > 0 ? sum / n : NAN;
}

static gboolean
list_experiments (Column *self, const FmExperimentFilter *filter, GError **error)
{
  self->experiments =
      fm_experiments_list (self->read->notebook, filter, self->read->cancellable, error);
  return self->experiments != NULL;
}

static gboolean
read_version (Column *self, gint64 id, GError **error)
{
  const FmExperimentFilter filter = { .version_id = id, .descending = TRUE };
  g_autoptr (FmVersionInfo) info = fm_versions_info (self->read->notebook, id, error);
  g_autofree char *blend_name = NULL;
  g_autofree char *title = NULL;
  g_autofree char *subtitle = NULL;
  FmFormula *formula;

  if (info == NULL || !list_experiments (self, &filter, error))
    return FALSE;
  formula = fm_versions_load (self->read->notebook, id, error);
  if (formula == NULL)
    return FALSE;
  blend_name = find_blend_name (self->read->blends, info->blend_id);
  title = fm_compare_version_title (blend_name, info->number);
  subtitle = fm_compare_version_subtitle (info);
  self->item =
      fm_compare_item_new_version (id, title, title, subtitle, formula, info->n_experiments,
                                   mean_cook_loss_pct (self->experiments), info->mean_rating);
  return TRUE;
}

static gboolean
read_draft (Column *self, gint64 blend_id, GError **error)
{
  g_autofree char *blend_name = find_blend_name (self->read->blends, blend_id);
  g_autofree char *title = fm_compare_draft_title (blend_name);
  g_autoptr (FmAnalysis) analysis = NULL;
  g_autofree char *point = NULL;
  FmFormula *formula = self->read->draft != NULL
                           ? fm_formula_copy (self->read->draft)
                           : fm_draft_load (self->read->notebook, blend_id, NULL, error);

  if (formula == NULL)
    return FALSE;
  analysis = fm_analysis_new (formula);
  point = fm_lean_point_format (analysis->fat_pct);
  self->experiments = g_ptr_array_new ();
  self->item = fm_compare_item_new_draft (blend_id, title, title, point, formula);
  return TRUE;
}

static char *
experiment_subtitle (const FmExperiment *experiment, const FmFormula *formula)
{
  g_autofree char *date = fm_date_text (experiment->made_at);
  g_autoptr (FmAnalysis) analysis = fm_analysis_new (formula);
  g_autofree char *point = fm_lean_point_format (analysis->fat_pct);

  return g_strdup_printf (_ ("planned %s · %s"), point, date);
}

static gboolean
read_experiment (Column *self, gint64 id, GError **error)
{
  const FmExperimentFilter filter = { .only_id = id };
  FmNotebook *notebook = self->read->notebook;
  g_autoptr (FmExperiment) experiment = fm_experiments_load (notebook, id, error);
  g_autoptr (FmVersionInfo) info = NULL;
  g_autoptr (FmFormula) formula = NULL;
  g_autofree char *blend_name = NULL;
  g_autofree char *title = NULL;
  g_autofree char *version = NULL;
  g_autofree char *date = NULL;
  g_autofree char *head = NULL;
  g_autofree char *subtitle = NULL;

  if (experiment == NULL || !list_experiments (self, &filter, error))
    return FALSE;
  info = fm_versions_info (notebook, experiment->version_id, error);
  formula = info != NULL ? fm_versions_load (notebook, info->id, error) : NULL;
  if (formula == NULL)
    return FALSE;
  blend_name = find_blend_name (self->read->blends, info->blend_id);
  title = fm_compare_experiment_title (blend_name, info->number, experiment->title,
                                       experiment->made_at);
  version = fm_compare_version_title (blend_name, info->number);
  date = fm_date_text (experiment->made_at);
  head = g_strdup_printf ("%s · %s", version, date);
  subtitle = experiment_subtitle (experiment, formula);
  self->item = fm_compare_item_new_experiment (title, head, subtitle, g_steal_pointer (&formula),
                                               g_steal_pointer (&experiment));
  return TRUE;
}

/* What the makers wrote, the newest first. NULL when nobody wrote anything. */
static gboolean
read_notes (const Column *self, char **notes, GError **error)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < self->experiments->len; i++) {
    const FmExperimentInfo *info = g_ptr_array_index (self->experiments, i);
    g_autofree char *date = fm_date_text (info->made_at);
    g_autoptr (FmExperiment) experiment =
        fm_experiments_load (self->read->notebook, info->id, error);

    if (experiment == NULL)
      return FALSE;
    if (experiment->notes == NULL || experiment->notes[0] == '\0')
      continue;
    if (self->experiments->len == 1)
      g_string_append (text, experiment->notes);
    else
      g_string_append_printf (text, "%s%s: %s", text->len > 0 ? "\n" : "", date, experiment->notes);
  }
  *notes = text->len > 0 ? g_strdup (text->str) : NULL;
  return TRUE;
}

/* What the opened tastings of a version or an experiment found of it: words, and the liking. */
static gboolean
read_tastings (const Column *self, char **words, GError **error)
{
  const FmCompareItem *item = self->item;
  g_autoptr (GString) text = g_string_new (NULL);
  g_autoptr (GPtrArray) outcomes = NULL;
  guint n_tasters = 0;
  double liking;

  *words = NULL;
  if (item->kind == FM_COMPARE_DRAFT)
    return TRUE;
  outcomes = fm_tastings_outcomes (self->read->notebook, 0,
                                   item->kind == FM_COMPARE_VERSION ? item->id : 0,
                                   item->kind == FM_COMPARE_EXPERIMENT ? item->id : 0, error);
  if (outcomes == NULL)
    return FALSE;
  for (guint i = 0; i < outcomes->len; i++) {
    g_autofree char *line = fm_tasting_story_line (g_ptr_array_index (outcomes, i));

    g_string_append_printf (text, "%s%s", i > 0 ? "\n" : "", line);
  }
  liking = fm_tasting_story_liking (outcomes, &n_tasters);
  fm_compare_item_set_liking (self->item, liking, n_tasters);
  if (text->len > 0)
    *words = g_strdup (text->str);
  return TRUE;
}

static gboolean
read_photos (Column *self, GError **error)
{
  self->photos = g_ptr_array_new_with_free_func ((GDestroyNotify)fm_photo_info_free);
  for (guint i = 0; i < self->experiments->len; i++) {
    const FmExperimentInfo *info = g_ptr_array_index (self->experiments, i);
    g_autoptr (GPtrArray) photos =
        info->n_photos > 0 ? fm_photos_list (self->read->notebook, info->id, error) : NULL;

    if (photos != NULL)
      g_ptr_array_extend_and_steal (self->photos, g_steal_pointer (&photos));
    else if (info->n_photos > 0)
      return FALSE;
  }
  return TRUE;
}

static gboolean
read_findings (Column *self, GError **error)
{
  g_autofree char *notes = NULL;
  g_autofree char *tastings = NULL;

  if (!read_notes (self, &notes, error) || !read_tastings (self, &tastings, error) ||
      !read_photos (self, error))
    return FALSE;
  fm_compare_item_set_findings (self->item, g_steal_pointer (&notes), g_steal_pointer (&tastings),
                                self->photos->len);
  return TRUE;
}

static gboolean
read_item (Column *self, FmCompareKind kind, gint64 id, GError **error)
{
  switch (kind) {
  case FM_COMPARE_VERSION:
    return read_version (self, id, error);
  case FM_COMPARE_EXPERIMENT:
    return read_experiment (self, id, error);
  case FM_COMPARE_DRAFT:
    return read_draft (self, id, error);
  }
  g_return_val_if_reached (FALSE);
}

static void
column_clear (Column *self)
{
  g_clear_pointer (&self->experiments, g_ptr_array_unref);
  g_clear_pointer (&self->item, fm_compare_item_free);
  g_clear_pointer (&self->photos, g_ptr_array_unref);
}

gboolean
fm_compare_read (const FmCompareRead *self,
                 const char *key,
                 FmCompareItem **item,
                 GPtrArray **photos,
                 GError **error)
{
  Column column = { .read = self };
  GError *failure = NULL;
  FmCompareKind kind;
  gint64 id;

  *item = NULL;
  *photos = NULL;
  if (!fm_compare_key_parse (key, &kind, &id))
    return TRUE;
  if (read_item (&column, kind, id, &failure) && read_findings (&column, &failure)) {
    *item = g_steal_pointer (&column.item);
    *photos = g_steal_pointer (&column.photos);
  }
  column_clear (&column);
  if (g_error_matches (failure, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND))
    g_clear_error (&failure);
  if (failure == NULL)
    return TRUE;
  g_propagate_error (error, failure);
  return FALSE;
}
