/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-batch-correction.c - bringing a real batch back to its target */
#include "core/batch/fm-batch-correction.h"

#include "core/base/fm-error.h"
#include "core/base/fm-number.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Fat shown in sentences: a test does not tell more than a tenth of a percent. */
#define FAT_DECIMALS 1
/* A batch this close to its target needs nothing. */
#define ON_TARGET_PCT 1e-9
/* Surplus over the plan that no scale would show, relative to the plan. */
#define MASS_TOLERANCE 1e-9

/* Relative to a step: a mass this close to a whole step is on it. */
#define ON_SCALE 1e-9
/* Topping up never makes more than this many planned batches of one. */
#define MOST_BATCHES 2.0

typedef struct {
  double batch_g;
  double fat_pct;
  FmBand band;
  double scale_step_g;
} Batch;

void
fm_correction_free (FmCorrection *self)
{
  fm_ingredient_unref (self->ingredient);
  g_free (self->to_edge.sentence);
  g_free (self->to_middle.sentence);
  g_free (self);
}

static gboolean
check_fat (double fat_pct, const char *what, GError **error)
{
  if (isnan (fat_pct)) {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_UNKNOWN_VALUE,
                 _ ("%s is not known. Type the result of a fat test, or give every ingredient in "
                    "the batch its fat."),
                 what);
    return FALSE;
  }
  if (fat_pct >= 0.0 && fat_pct <= 100.0)
    return TRUE;
  g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
               _ ("%s must lie from 0 to 100 %%. Type it in %%."), what);
  return FALSE;
}

static gboolean
check_band (const FmBand *band, GError **error)
{
  if (isnan (band->min) && isnan (band->max)) {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_UNKNOWN_VALUE,
                 _ ("There is no fat to aim for. Type at least one end of the band."));
    return FALSE;
  }
  if (band->min > band->max) {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("The band of fat begins above its end. Type the lower end first."));
    return FALSE;
  }
  return (isnan (band->min) ||
          check_fat (band->min, _ ("The least fat that you aim for"), error)) &&
         (isnan (band->max) || check_fat (band->max, _ ("The most fat that you aim for"), error));
}

static gboolean
check (const Batch *batch, GError **error)
{
  if (!(batch->batch_g > 0.0)) {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY,
                 _ ("The batch weighs nothing. Type the mass of the ground mix in grams."));
    return FALSE;
  }
  if (!(batch->batch_g <= FM_MAX_LINE_MASS_G) ||
      !(batch->scale_step_g >= 0.0 && batch->scale_step_g <= FM_MAX_LINE_MASS_G)) {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("The batch mass and the step of the scale must be sensible masses in grams. "
                    "Check both."));
    return FALSE;
  }
  return check_fat (batch->fat_pct, _ ("The fat of the batch"), error) &&
         check_band (&batch->band, error);
}

static char *
percent (double value)
{
  return fm_number_format_unit (value, FAT_DECIMALS, "%");
}

static char *
grams (double value, double scale_step_g)
{
  int decimals = scale_step_g >= 1.0 ? 0 : 1;
  return fm_number_format_unit (value, decimals, "g");
}

/* An ingredient helps only from beyond the aim, seen from where the batch is. */
static char *
explain_useless (const Batch *batch, const char *name, double own_pct, double aim_pct)
{
  g_autofree char *own = percent (own_pct);
  g_autofree char *now = percent (batch->fat_pct);
  g_autofree char *aim = percent (aim_pct);
  if (isnan (own_pct))
    return g_strdup_printf (_ ("%s: its fat is not known, so nothing can be worked out. Type it in "
                               "the ingredient's analysis."),
                            name);
  if (aim_pct > batch->fat_pct)
    return g_strdup_printf (
        _ ("%s at %s fat cannot raise the batch from %s to %s: choose an ingredient with more fat "
           "than the target."),
        name, own, now, aim);
  return g_strdup_printf (
      _ ("%s at %s fat cannot lower the batch from %s to %s: choose an ingredient with less fat "
         "than the target."),
      name, own, now, aim);
}

static char *
explain_too_much (const Batch *batch, const char *name, double own_pct, double aim_pct)
{
  g_autofree char *own = percent (own_pct);
  g_autofree char *now = percent (batch->fat_pct);
  g_autofree char *aim = percent (aim_pct);
  return g_strdup_printf (
      _ ("%s at %s fat cannot bring the batch from %s to %s: its fat is too near to that, and more "
         "than the batch itself would have to be added. Choose an ingredient whose fat lies "
         "further off, or make a new batch."),
      name, own, now, aim);
}

static char *
explain (const Batch *batch, const char *name, const FmAddition *addition)
{
  g_autofree char *added = grams (addition->add_g, batch->scale_step_g);
  g_autofree char *total = grams (addition->new_total_g, batch->scale_step_g);
  g_autofree char *reached = percent (addition->new_fat_pct);
  if (addition->add_g == 0.0)
    return g_strdup_printf (_ ("Nothing to add: the batch is at %s fat."), reached);
  /* Translators: mass, ingredient, mass, fat in % */
  return g_strdup_printf (_ ("Add %s of %s: the batch becomes %s at %s fat."), added, name, total,
                          reached);
}

static char *
explain_coarse (const Batch *batch, const char *name)
{
  g_autofree char *step = grams (batch->scale_step_g, 0.0);
  return g_strdup_printf (_ ("%s: no mass in steps of %s brings the batch into the band. Weigh it "
                             "in finer steps."),
                          name, step);
}

/* To an edge the scale rounds up, so that the edge is reached; to the middle, to the nearest. */
static double
on_scale (const Batch *batch, double mass_g, gboolean reach)
{
  double steps = mass_g / batch->scale_step_g;
  if (!(batch->scale_step_g > 0.0))
    return mass_g;
  return (reach ? ceil (steps - ON_SCALE) : round (steps)) * batch->scale_step_g;
}

static double
fat_with (const Batch *batch, double own_pct, double add_g)
{
  if (add_g == 0.0)
    return batch->fat_pct;
  return (batch->batch_g * batch->fat_pct + add_g * own_pct) / (batch->batch_g + add_g);
}

static FmAddition
addition_to (const Batch *batch, FmIngredient *ingredient, double aim_pct, gboolean reach)
{
  const char *name = ingredient->name;
  double own_pct = fm_ingredient_fat_g_per_100g (ingredient);
  double missing = aim_pct - batch->fat_pct;
  double exact_g =
      fabs (missing) <= ON_TARGET_PCT ? 0.0 : batch->batch_g * missing / (own_pct - aim_pct);
  double add_g = on_scale (batch, exact_g, reach);
  FmAddition self = {
    .aim_pct = aim_pct, .add_g = NAN, .new_total_g = NAN, .new_fat_pct = NAN, .added_cost = NAN
  };
  if (!(exact_g >= 0.0) || isinf (exact_g)) {
    self.sentence = explain_useless (batch, name, own_pct, aim_pct);
    return self;
  }
  if (!(add_g <= batch->batch_g)) {
    self.sentence = explain_too_much (batch, name, own_pct, aim_pct);
    return self;
  }
  self.new_fat_pct = fat_with (batch, own_pct, add_g);
  if (reach && fm_band_state (&batch->band, self.new_fat_pct) != FM_BAND_WITHIN) {
    self.new_fat_pct = NAN;
    self.sentence = explain_coarse (batch, name);
    return self;
  }
  self.possible = TRUE;
  self.add_g = add_g;
  self.new_total_g = batch->batch_g + add_g;
  self.added_cost = add_g / 1000.0 * fm_ingredient_edible_price_per_kg (ingredient);
  self.sentence = explain (batch, name, &self);
  return self;
}

static FmCorrection *
correction_new (const Batch *batch, FmIngredient *ingredient)
{
  const FmBand *band = &batch->band;
  gboolean is_one_aim = band->min == band->max;
  double edge_pct = batch->fat_pct;
  FmCorrection *self = g_new0 (FmCorrection, 1);
  self->ingredient = fm_ingredient_ref (ingredient);
  self->to_middle.aim_pct = NAN;
  if (batch->fat_pct < band->min)
    edge_pct = band->min;
  else if (batch->fat_pct > band->max)
    edge_pct = band->max;
  self->to_edge = addition_to (batch, ingredient, edge_pct, !is_one_aim);
  if (!isnan (band->min) && !isnan (band->max) && !is_one_aim)
    self->to_middle = addition_to (batch, ingredient, 0.5 * (band->min + band->max), FALSE);
  return self;
}

static int
compare_additions (const FmAddition *a, const FmAddition *b)
{
  if (a->possible != b->possible)
    return a->possible ? -1 : 1;
  if (!a->possible || a->add_g == b->add_g)
    return 0;
  return a->add_g < b->add_g ? -1 : 1;
}

static int
compare_corrections (gconstpointer a, gconstpointer b)
{
  const FmCorrection *first = *(FmCorrection *const *)a;
  const FmCorrection *second = *(FmCorrection *const *)b;
  int order = compare_additions (&first->to_edge, &second->to_edge);
  if (order == 0)
    order = compare_additions (&first->to_middle, &second->to_middle);
  return order != 0 ? order : g_utf8_collate (first->ingredient->name, second->ingredient->name);
}

GPtrArray *
fm_batch_corrections (double batch_g,
                      double fat_pct,
                      const FmBand *band,
                      GPtrArray *ingredients,
                      double scale_step_g,
                      GError **error)
{
  Batch batch = { batch_g, fat_pct, *band, scale_step_g };
  if (!check (&batch, error))
    return NULL;
  GPtrArray *corrections = g_ptr_array_new_with_free_func ((GDestroyNotify)fm_correction_free);
  for (guint i = 0; i < ingredients->len; i++)
    g_ptr_array_add (corrections, correction_new (&batch, g_ptr_array_index (ingredients, i)));
  g_ptr_array_sort (corrections, compare_corrections);
  return corrections;
}

static gboolean
check_weighing (const char *name, double planned_g, double weighed_g, GError **error)
{
  if (!(planned_g >= 0.0 && planned_g <= FM_MAX_LINE_MASS_G && weighed_g >= 0.0 &&
        weighed_g <= FM_MAX_LINE_MASS_G)) {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("%s: type the planned and the weighed mass in grams, 0 or more."), name);
    return FALSE;
  }
  if (planned_g > 0.0 || weighed_g == 0.0)
    return TRUE;
  g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
               _ ("%s was not planned and cannot be taken out again, so the planned shares are out "
                  "of reach. Correct the fat of the mix instead."),
               name);
  return FALSE;
}

gboolean
fm_top_up_init (FmTopUp *self,
                guint n,
                const char *const *names,
                const double *planned_g,
                const double *weighed_g,
                GError **error)
{
  double planned_total_g = 0.0;
  FmTopUp top_up = { .n = n, .factor = 1.0, .most_over = -1 };
  for (guint i = 0; i < n; i++) {
    if (!check_weighing (names[i], planned_g[i], weighed_g[i], error))
      return FALSE;
    planned_total_g += planned_g[i];
    if (weighed_g[i] > planned_g[i] * top_up.factor * (1.0 + MASS_TOLERANCE)) {
      top_up.factor = weighed_g[i] / planned_g[i];
      top_up.most_over = (int)i;
    }
  }
  if (!(planned_total_g > 0.0)) {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY,
                 _ ("Nothing is planned yet. Give the version its masses first."));
    return FALSE;
  }
  top_up.add_g = g_new0 (double, n);
  for (guint i = 0; i < n; i++)
    top_up.add_g[i] = MAX (0.0, planned_g[i] * top_up.factor - weighed_g[i]);
  top_up.total_g = planned_total_g * top_up.factor;
  top_up.is_sane = top_up.factor <= MOST_BATCHES;
  *self = top_up;
  return TRUE;
}

void
fm_top_up_clear (FmTopUp *self)
{
  g_clear_pointer (&self->add_g, g_free);
}
