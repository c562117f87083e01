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

typedef struct {
  double batch_g;
  double fat_pct;
  double target_pct;
  double scale_step_g;
} Batch;

void
fm_correction_free (FmCorrection *self)
{
  fm_ingredient_unref (self->ingredient);
  g_free (self->sentence);
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
         check_fat (batch->target_pct, _ ("The fat that you aim for"), error);
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

/* An ingredient helps only from beyond the target, seen from where the batch is. */
static char *
explain_impossible (const Batch *batch, const char *name, double own_pct)
{
  g_autofree char *own = percent (own_pct);
  g_autofree char *now = percent (batch->fat_pct);
  g_autofree char *target = percent (batch->target_pct);
  if (isnan (own_pct))
    return g_strdup_printf (_ ("%s: its fat is not known, so nothing can be worked out. Type it in "
                               "the ingredient's analysis."),
                            name);
  if (batch->target_pct > batch->fat_pct)
    return g_strdup_printf (
        _ ("%s at %s fat cannot raise the batch from %s to %s: choose an ingredient with more fat "
           "than the target."),
        name, own, now, target);
  return g_strdup_printf (
      _ ("%s at %s fat cannot lower the batch from %s to %s: choose an ingredient with less fat "
         "than the target."),
      name, own, now, target);
}

static char *
explain (const Batch *batch, const FmCorrection *correction)
{
  const char *name = correction->ingredient->name;
  g_autofree char *added = grams (correction->add_g, batch->scale_step_g);
  g_autofree char *total = grams (correction->new_total_g, batch->scale_step_g);
  g_autofree char *reached = percent (correction->new_fat_pct);
  if (correction->add_g == 0.0)
    return g_strdup_printf (_ ("Nothing to add: the batch is at %s fat."), reached);
  /* Translators: mass, ingredient, mass, fat in % */
  return g_strdup_printf (_ ("Add %s of %s: the batch becomes %s at %s fat."), added, name, total,
                          reached);
}

static double
on_scale (double mass_g, double step_g)
{
  return step_g > 0.0 ? round (mass_g / step_g) * step_g : mass_g;
}

static void
fill_possible (FmCorrection *self, const Batch *batch, double own_pct, double add_g)
{
  self->possible = TRUE;
  self->add_g = on_scale (add_g, batch->scale_step_g);
  self->new_total_g = batch->batch_g + self->add_g;
  self->new_fat_pct =
      self->add_g > 0.0
          ? (batch->batch_g * batch->fat_pct + self->add_g * own_pct) / self->new_total_g
          : batch->fat_pct;
  self->added_cost = self->add_g / 1000.0 * fm_ingredient_edible_price_per_kg (self->ingredient);
  self->sentence = explain (batch, self);
}

static FmCorrection *
correction_new (const Batch *batch, FmIngredient *ingredient)
{
  FmCorrection *self = g_new0 (FmCorrection, 1);
  self->ingredient = fm_ingredient_ref (ingredient);
  double own_pct = fm_ingredient_fat_g_per_100g (ingredient);
  double missing = batch->target_pct - batch->fat_pct;
  double add_g = fabs (missing) <= ON_TARGET_PCT
                     ? 0.0
                     : batch->batch_g * missing / (own_pct - batch->target_pct);
  if (add_g >= 0.0 && add_g <= FM_MAX_LINE_MASS_G) {
    fill_possible (self, batch, own_pct, add_g);
    return self;
  }
  self->add_g = self->new_total_g = self->new_fat_pct = self->added_cost = NAN;
  self->sentence = explain_impossible (batch, ingredient->name, own_pct);
  return self;
}

static int
compare_corrections (gconstpointer a, gconstpointer b)
{
  const FmCorrection *first = *(FmCorrection *const *)a;
  const FmCorrection *second = *(FmCorrection *const *)b;
  if (first->possible != second->possible)
    return first->possible ? -1 : 1;
  if (!first->possible || first->add_g == second->add_g)
    return g_utf8_collate (first->ingredient->name, second->ingredient->name);
  return first->add_g < second->add_g ? -1 : 1;
}

GPtrArray *
fm_batch_corrections (double batch_g,
                      double fat_pct,
                      double target_fat_pct,
                      GPtrArray *ingredients,
                      double scale_step_g,
                      GError **error)
{
  Batch batch = { batch_g, fat_pct, target_fat_pct, scale_step_g };
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
  *self = top_up;
  return TRUE;
}

void
fm_top_up_clear (FmTopUp *self)
{
  g_clear_pointer (&self->add_g, g_free);
}
