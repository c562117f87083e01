/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-development-report.c - how a blend became what it is */
#include "report/fm-development-report.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "core/base/fm-date.h"
#include "core/base/fm-number.h"
#include "core/cooking/fm-caution.h"
#include "core/mixture/fm-mix-text.h"
#include "core/tasting/fm-tasting-story.h"
#include "report/fm-report-drawings.h"
#include "store/fm-experiments.h"
#include "store/fm-maps.h"
#include "store/fm-tastings.h"
#include "store/fm-versions.h"

/* In front of a version for each branch that it lies behind. */
#define STEP_IN "\u2003"
/* A map with more components is told in words alone. */
#define DRAWN_COMPONENTS 3

typedef struct {
  FmNotebook *notebook;
  const FmDevelopmentReportInput *input;
  GPtrArray *versions; /* FmVersionInfo of the blend */
  FmBatchSheet *sheet;
} Report;

static void
add_text (Report *self, char *text)
{
  fm_batch_sheet_add (self->sheet, FM_SHEET_TEXT, text);
}

static void
add_heading (Report *self, const char *text)
{
  fm_batch_sheet_add (self->sheet, FM_SHEET_HEADING, g_strdup (text));
}

static void
add_head (Report *self)
{
  const FmDevelopmentReportInput *input = self->input;
  const FmVersionInfo *last =
      self->versions->len > 0 ? self->versions->pdata[self->versions->len - 1] : NULL;
  g_autofree char *state = last != NULL ? g_strdup_printf (_ ("up to version %d"), last->number)
                                        : g_strdup (_ ("draft"));
  g_autoptr (GString) origin = g_string_new (NULL);

  /* TRANSLATORS: name of the blend, "up to version 3" */
  fm_batch_sheet_add (self->sheet, FM_SHEET_TITLE,
                      g_strdup_printf (_ ("Development report: %s, %s"), input->blend_name, state));
  if (input->notebook_name != NULL)
    g_string_append_printf (origin, _ ("Notebook: %s"), input->notebook_name);
  if (input->date_text != NULL)
    g_string_append_printf (origin, "%s%s", origin->len > 0 ? " · " : "", input->date_text);
  if (origin->len > 0)
    fm_batch_sheet_add (self->sheet, FM_SHEET_SMALL, g_strdup (origin->str));
}

/* What a version has come to, after its reason. */
static char *
version_facts (const FmVersionInfo *version)
{
  GString *facts = g_string_new (NULL);
  g_autofree char *fat = fm_number_format_unit (version->fat_pct, 1, "%");
  g_autofree char *rating = fm_number_format (version->mean_rating, 1);

  if (isnan (version->fat_pct))
    g_string_append (facts, _ ("fat not known"));
  else
    g_string_append_printf (facts, _ ("fat %s"), fat);
  g_string_append_printf (facts,
                          ngettext (", %u experiment", ", %u experiments", version->n_experiments),
                          version->n_experiments);
  if (!isnan (version->mean_rating))
    g_string_append_printf (facts, _ (", rated %s of 10"), rating);
  return g_string_free (facts, FALSE);
}

static void
add_version (Report *self, const FmVersionInfo *version, const FmVersionInfo *parent, int depth)
{
  g_autofree char *day = fm_date_text (version->saved_at);
  g_autofree char *facts = version_facts (version);
  g_autofree char *origin = parent != NULL ? g_strdup_printf (_ ("from version %d"), parent->number)
                                           : g_strdup (_ ("from nothing"));
  g_autoptr (GString) text = g_string_new (NULL);

  for (int step = 0; step < depth; step++)
    g_string_append (text, STEP_IN);
  /* TRANSLATORS: number of a version, "from version 2", day, why it was saved, what came of it */
  g_string_append_printf (text, _ ("Version %d, %s, %s: %s (%s)"), version->number, origin, day,
                          version->reason, facts);
  add_text (self, g_strdup (text->str));
}

/* What grew first from a version goes on in its column; later branches stand further in. */
static void
add_branch (Report *self, const FmVersionInfo *parent, int depth)
{
  guint n_before = 0;

  for (guint i = 0; i < self->versions->len; i++) {
    const FmVersionInfo *version = g_ptr_array_index (self->versions, i);
    const int further = parent != NULL && n_before > 0 ? 1 : 0;

    if (version->parent_id != (parent != NULL ? parent->id : 0))
      continue;
    n_before++;
    add_version (self, version, parent, depth + further);
    add_branch (self, version, depth + further);
  }
}

static void
add_versions (Report *self)
{
  add_heading (self, _ ("Versions and why they were saved"));
  if (self->versions->len == 0)
    add_text (self, g_strdup (_ ("No version is saved yet.")));
  add_branch (self, NULL, 0);
}

static const FmVersionInfo *
find_version (Report *self, gint64 version_id)
{
  for (guint i = 0; i < self->versions->len; i++) {
    const FmVersionInfo *version = g_ptr_array_index (self->versions, i);

    if (version->id == version_id)
      return version;
  }
  return NULL;
}

static char *
experiment_facts (const FmExperiment *experiment)
{
  GString *facts = g_string_new (fm_cook_method_name (experiment->method));
  const double peak_c = fm_experiment_peak_core_c (experiment);
  g_autofree char *peak = fm_number_format_unit (peak_c, 1, "°C");
  g_autofree char *loss = NULL, *raw = NULL;
  FmPattyStats stats;

  fm_experiment_patty_stats (experiment, &stats);
  loss = fm_number_format_unit (stats.cook_loss_pct, 1, "%");
  raw = fm_number_format_unit (stats.mean_g, 1, "g");
  if (stats.n > 0)
    g_string_append_printf (
        facts, ngettext ("; %u patty of %s raw", "; %u patties of %s raw in the mean", stats.n),
        stats.n, raw);
  if (!isnan (stats.cook_loss_pct))
    g_string_append_printf (facts, _ ("; cook loss %s"), loss);
  if (!isnan (peak_c))
    g_string_append_printf (facts, _ ("; highest core reading %s"), peak);
  if (experiment->rating > 0)
    g_string_append_printf (facts, _ ("; rated %d of 10"), experiment->rating);
  return g_string_free (facts, FALSE);
}

static void
add_photo_row (Report *self, GPtrArray *photos, GString *captions)
{
  if (photos->len == 0)
    return;
  fm_report_add_photos (
      self->sheet, photos,
      g_strdup_printf (ngettext ("%u photo", "%u photos", photos->len), photos->len));
  if (captions->len > 0)
    fm_batch_sheet_add (self->sheet, FM_SHEET_SMALL, g_strdup (captions->str));
}

/* "Crust: Seared", or as much of it as there is. */
static void
add_photo_words (GString *captions, const FmPhotoInfo *info)
{
  const gboolean has_view = info->view != FM_PHOTO_VIEW_NONE;

  if (!has_view && info->caption == NULL)
    return;
  if (captions->len > 0)
    g_string_append (captions, " · ");
  if (has_view)
    g_string_append (captions, fm_photo_view_name (info->view));
  if (info->caption != NULL)
    g_string_append_printf (captions, "%s%s", has_view ? ": " : "", info->caption);
}

/* One row of photos: the first ones of the experiment. */
static gboolean
add_photos (Report *self, gint64 experiment_id, GError **error)
{
  g_autoptr (GPtrArray) infos = fm_photos_list (self->notebook, experiment_id, error);
  g_autoptr (GPtrArray) photos = g_ptr_array_new_with_free_func (g_object_unref);
  g_autoptr (GString) captions = g_string_new (NULL);

  for (guint i = 0; infos != NULL && i < infos->len && photos->len < FM_REPORT_PHOTOS_IN_ROW; i++) {
    const FmPhotoInfo *info = g_ptr_array_index (infos, i);
    g_autoptr (GBytes) data = fm_photos_original (self->notebook, info->id, error);
    GdkPixbuf *photo = data != NULL ? fm_report_photo (data) : NULL;

    if (data == NULL)
      return FALSE;
    if (photo == NULL)
      continue;
    g_ptr_array_add (photos, photo);
    add_photo_words (captions, info);
  }
  add_photo_row (self, photos, captions);
  return infos != NULL;
}

static gboolean
add_experiment (Report *self, gint64 id, GError **error)
{
  g_autoptr (FmExperiment) experiment = fm_experiments_load (self->notebook, id, error);
  g_autofree char *day = NULL, *facts = NULL;
  const FmVersionInfo *version;

  if (experiment == NULL)
    return FALSE;
  day = fm_date_text (experiment->made_at);
  facts = experiment_facts (experiment);
  version = find_version (self, experiment->version_id);
  /* TRANSLATORS: title, number of the version, day, what was measured */
  add_text (self, g_strdup_printf (_ ("%s: version %d, %s. %s."),
                                   experiment->title != NULL ? experiment->title : _ ("untitled"),
                                   version != NULL ? version->number : 0, day, facts));
  if (experiment->notes != NULL)
    add_text (self, g_strdup (experiment->notes));
  return add_photos (self, id, error);
}

static gboolean
add_experiments (Report *self, GCancellable *cancellable, GError **error)
{
  const GArray *chosen = self->input->experiments;

  if (chosen->len > 0)
    add_heading (self, _ ("Experiments"));
  for (guint i = 0; i < chosen->len; i++)
    if (g_cancellable_set_error_if_cancelled (cancellable, error) ||
        !add_experiment (self, g_array_index (chosen, gint64, i), error))
      return FALSE;
  return TRUE;
}

static gboolean
add_tastings (Report *self, GError **error)
{
  g_autoptr (GPtrArray) outcomes =
      fm_tastings_outcomes (self->notebook, self->input->blend_id, 0, 0, error);

  if (outcomes == NULL)
    return FALSE;
  add_heading (self, _ ("Tastings"));
  if (outcomes->len == 0)
    add_text (self, g_strdup (_ ("No opened tasting has found anything of this blend.")));
  for (guint i = 0; i < outcomes->len; i++) {
    const FmTastingOutcome *outcome = g_ptr_array_index (outcomes, i);
    const FmVersionInfo *version = find_version (self, outcome->version_id);
    g_autofree char *line = fm_tasting_story_line (outcome);

    /* TRANSLATORS: number of a version, what a tasting found of it */
    add_text (self,
              g_strdup_printf (_ ("Version %d: %s"), version != NULL ? version->number : 0, line));
  }
  return TRUE;
}

static GStrv
component_names (const FmMap *map)
{
  g_autoptr (GStrvBuilder) names = g_strv_builder_new ();

  for (guint i = 0; i < map->components->len; i++)
    g_strv_builder_add (names, ((const FmMixComponent *)map->components->pdata[i])->name);
  return g_strv_builder_end (names);
}

static void
add_spot (GPtrArray *spots, const FmMapPoint *point, const FmVersionInfo *version)
{
  FmReportSpot *spot = g_new0 (FmReportSpot, 1);

  memcpy (spot->x, point->x, sizeof spot->x);
  spot->name = version != NULL ? g_strdup_printf ("%d", version->number) : g_strdup ("");
  g_ptr_array_add (spots, spot);
}

static void
add_bounds (Report *self, const FmMap *map, const char *const *names)
{
  for (guint i = 0; i < map->components->len; i++) {
    g_autofree char *low = fm_number_format (100.0 * map->lower[i], 1);
    g_autofree char *high = fm_number_format_unit (100.0 * map->upper[i], 1, "%");

    /* TRANSLATORS: a component of a map, between which shares it was tried */
    add_text (self, g_strdup_printf (_ ("%s from %s to %s"), names[i], low, high));
  }
}

static void
add_points (Report *self, const FmMap *map, const char *const *names)
{
  g_autoptr (GPtrArray) spots =
      g_ptr_array_new_with_free_func ((GDestroyNotify)fm_report_spot_free);

  for (guint i = 0; i < map->points->len; i++) {
    const FmMapPoint *point = &g_array_index (map->points, FmMapPoint, i);
    const FmVersionInfo *version = find_version (self, point->version_id);
    g_autofree char *shares = fm_mix_shares_text (map->components->len, point->x, names);
    g_autofree char *what = version != NULL ? g_strdup_printf (_ ("Version %d"), version->number)
                                            : g_strdup (_ ("Not made yet"));

    add_spot (spots, point, version);
    /* TRANSLATORS: "Version 3", "55 % chuck, 45 % brisket" */
    add_text (self, g_strdup_printf (_ ("%s: %s"), what, shares));
  }
  if (map->components->len == DRAWN_COMPONENTS && spots->len > 0)
    fm_report_add_triangle (self->sheet, names, g_steal_pointer (&spots),
                            g_strdup (_ ("The trials in the triangle of the three components, with "
                                         "the numbers of their versions")));
}

static gboolean
add_maps (Report *self, GError **error)
{
  g_autoptr (GPtrArray) infos = fm_maps_list (self->notebook, self->input->blend_id, 0, error);

  for (guint i = 0; infos != NULL && i < infos->len; i++) {
    const FmMapInfo *info = g_ptr_array_index (infos, i);
    g_autoptr (FmMap) map = fm_maps_load (self->notebook, info->id, error);
    g_autofree char *heading = g_strdup_printf (_ ("Map: %s"), info->name);
    g_auto (GStrv) names = map != NULL ? component_names (map) : NULL;

    if (map == NULL)
      return FALSE;
    add_heading (self, heading);
    add_bounds (self, map, (const char *const *)names);
    add_points (self, map, (const char *const *)names);
  }
  return infos != NULL;
}

FmBatchSheet *
fm_development_report_new (FmNotebook *notebook,
                           const FmDevelopmentReportInput *input,
                           GCancellable *cancellable,
                           GError **error)
{
  g_autoptr (GPtrArray) versions = fm_versions_list (notebook, input->blend_id, error);
  g_autoptr (FmBatchSheet) sheet = fm_batch_sheet_new_empty (_ ("Development Report"));
  Report self = { notebook, input, versions, sheet };

  if (versions == NULL)
    return NULL;
  sheet->notice = fm_notebook_invented (notebook);
  add_head (&self);
  add_versions (&self);
  if (!add_experiments (&self, cancellable, error) || !add_tastings (&self, error) ||
      !add_maps (&self, error))
    return NULL;
  fm_batch_sheet_add (sheet, FM_SHEET_CAUTION, g_strdup (fm_caution_text ()));
  return g_steal_pointer (&sheet);
}
