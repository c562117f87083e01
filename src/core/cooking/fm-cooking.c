/* fm-cooking.c - from raw to cooked, by stated method */
#include "core/cooking/fm-cooking.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/cooking/fm-cooking-table.h"
#include "core/base/fm-error.h"

typedef struct {
  double x;
  double y;
} Point;

/* Piecewise linear through @points (ascending x); the end slopes go on outside. */
static double
interpolate (const Point *points, guint n, double x)
{
  guint i = 1;

  if (n == 0)
    return NAN;
  if (n == 1)
    return points[0].y;
  while (i + 1 < n && x > points[i].x)
    i++;
  return points[i - 1].y +
         (points[i].y - points[i - 1].y) * (x - points[i - 1].x) / (points[i].x - points[i - 1].x);
}

static double
bounded_fat_pct (double raw_fat_pct)
{
  return CLAMP (raw_fat_pct, FM_COOK_FAT_MIN_PCT, FM_COOK_FAT_MAX_PCT);
}

double
fm_cook_weight_protein_kept_pct (const FmCookWeight *weight)
{
  const FmCookLevel *level = &fm_cook_levels[weight->level];

  return 100.0 * level->cooked[weight->method][FM_NUTRIENT_PROTEIN] * weight->cooked_g /
         (level->raw[FM_NUTRIENT_PROTEIN] * weight->raw_g);
}

gboolean
fm_cook_weight_is_plausible (const FmCookWeight *weight)
{
  double kept_pct = fm_cook_weight_protein_kept_pct (weight);

  return kept_pct >= FM_COOK_PROTEIN_KEPT_MIN_PCT && kept_pct <= FM_COOK_PROTEIN_KEPT_MAX_PCT;
}

static double
weight_yield_pct (const FmCookWeight *weight)
{
  return 100.0 * weight->cooked_g / weight->raw_g;
}

/* Means of fat and yield per method; the slope then comes from the deviations within methods. */
static void
method_means (guint skip, double mean_fat[], double mean_yield[], guint n[])
{
  for (guint i = 0; i < fm_n_cook_weights; i++) {
    const FmCookWeight *weight = &fm_cook_weights[i];

    if (i == skip || !fm_cook_weight_is_plausible (weight))
      continue;
    mean_fat[weight->method] += fm_cook_levels[weight->level].raw_fat_pct;
    mean_yield[weight->method] += weight_yield_pct (weight);
    n[weight->method]++;
  }
  for (guint m = 0; m < FM_N_COOK_METHODS; m++) {
    mean_fat[m] /= MAX (n[m], 1);
    mean_yield[m] /= MAX (n[m], 1);
  }
}

static double
common_slope (guint skip, const double mean_fat[], const double mean_yield[])
{
  double sum_xy = 0.0;
  double sum_xx = 0.0;

  for (guint i = 0; i < fm_n_cook_weights; i++) {
    const FmCookWeight *weight = &fm_cook_weights[i];
    double dx = fm_cook_levels[weight->level].raw_fat_pct - mean_fat[weight->method];

    if (i == skip || !fm_cook_weight_is_plausible (weight))
      continue;
    sum_xy += dx * (weight_yield_pct (weight) - mean_yield[weight->method]);
    sum_xx += dx * dx;
  }
  return sum_xx > 0.0 ? sum_xy / sum_xx : 0.0;
}

void
fm_cook_yield_fit (guint skip, FmCookYieldFit *fit)
{
  double mean_fat[FM_N_COOK_METHODS] = { 0 };
  double mean_yield[FM_N_COOK_METHODS] = { 0 };
  double sum = 0.0;
  guint n_known = 0;

  *fit = (FmCookYieldFit){ 0 };
  method_means (skip, mean_fat, mean_yield, fit->n_weights);
  fit->slope = common_slope (skip, mean_fat, mean_yield);
  for (guint m = 0; m < FM_N_COOK_METHODS; m++) {
    if (fit->n_weights[m] == 0)
      continue;
    fit->level_pct[m] = mean_yield[m] - fit->slope * mean_fat[m];
    sum += fit->level_pct[m];
    n_known++;
  }
  for (guint m = 0; m < FM_N_COOK_METHODS; m++)
    if (fit->n_weights[m] == 0)
      fit->level_pct[m] = n_known > 0 ? sum / n_known : NAN;
}

double
fm_cook_yield_fit_pct (const FmCookYieldFit *fit, FmCookMethod method, double raw_fat_pct)
{
  return fit->level_pct[method] + fit->slope * bounded_fat_pct (raw_fat_pct);
}

static const FmCookYieldFit *
whole_fit (void)
{
  static FmCookYieldFit fit;
  static gsize once = 0;

  if (g_once_init_enter (&once)) {
    fm_cook_yield_fit (G_MAXUINT, &fit);
    g_once_init_leave (&once, 1);
  }
  return &fit;
}

double
fm_cook_retention_pct (FmCookMethod method,
                       FmNutrient nutrient,
                       double raw_fat_pct,
                       guint skip_level)
{
  Point points[FM_N_COOK_LEVELS];
  guint n = 0;
  double retention_pct;

  for (guint i = 0; i < FM_N_COOK_LEVELS; i++) {
    const FmCookLevel *level = &fm_cook_levels[i];
    double raw = level->raw[nutrient];
    double cooked = level->cooked[method][nutrient];

    if (i == skip_level || isnan (raw) || isnan (cooked) || raw <= 0.0)
      continue;
    points[n].x = level->raw_fat_pct;
    points[n].y = cooked * fm_cook_yield_fit_pct (whole_fit (), method, level->raw_fat_pct) / raw;
    n++;
  }
  retention_pct = interpolate (points, n, bounded_fat_pct (raw_fat_pct));
  return isnan (retention_pct) ? NAN : MAX (retention_pct, 0.0);
}

const char *
fm_cook_method_name (FmCookMethod method)
{
  switch (method) {
  case FM_COOK_PATTY_BROILED:
    return _ ("Patty, broiled");
  case FM_COOK_PATTY_PAN_BROILED:
    return _ ("Patty, pan-broiled");
  case FM_COOK_CRUMBLES_PAN_BROWNED:
    return _ ("Crumbles, pan-browned");
  case FM_COOK_LOAF_BAKED:
    return _ ("Loaf, baked");
  case FM_N_COOK_METHODS:
  default:
    g_return_val_if_reached ("");
  }
}

double
fm_cook_yield_pct (FmCookMethod method, double raw_fat_pct)
{
  g_return_val_if_fail (method < FM_N_COOK_METHODS, NAN);
  if (isnan (raw_fat_pct))
    return NAN;
  return fm_cook_yield_fit_pct (whole_fit (), method, raw_fat_pct);
}

/* "23478, 23479": the weights that fail the rule, so that the reader can look them up. */
static char *
excluded_weights (void)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < fm_n_cook_weights; i++)
    if (!fm_cook_weight_is_plausible (&fm_cook_weights[i]))
      g_string_append_printf (text, "%s%d", text->len > 0 ? ", " : "",
                              fm_cook_weights[i].cooked_ndb);
  return g_string_free (text, FALSE);
}

static char *
yield_basis (const FmCooked *self)
{
  g_autofree char *excluded = NULL;

  if (self->yield_measured)
    return g_strdup_printf (_ ("Cooked mass: as measured, %.1f %% of the raw mass. What it differs "
                               "from the predicted mass is taken as water."),
                            self->yield_pct);
  excluded = excluded_weights ();
  return g_strdup_printf (_ ("Cooked mass: predicted, %.1f %% of the raw mass, by a line over fat "
                             "%% through the weights that USDA SR28 states (%u for this method). "
                             "Weights left out because their protein does not add up: NDB %s."),
                          self->yield_pct, whole_fit ()->n_weights[self->method], excluded);
}

static char *
retention_basis (FmCookMethod method, double raw_fat_pct)
{
  guint upper = 1;
  const FmCookLevel *a;
  const FmCookLevel *b;

  while (upper + 1 < FM_N_COOK_LEVELS && raw_fat_pct > fm_cook_levels[upper].raw_fat_pct)
    upper++;
  a = &fm_cook_levels[upper - 1];
  b = &fm_cook_levels[upper];
  return g_strdup_printf (
      _ ("Nutrients: what USDA SR28 ground beef of %g %% fat (NDB %05d raw, %05d cooked) and "
         "%g %% fat (NDB %05d, %05d) keeps of each, between the two levels."),
      a->raw_fat_pct, a->raw_ndb, a->cooked_ndb[method], b->raw_fat_pct, b->raw_ndb,
      b->cooked_ndb[method]);
}

static char *
make_basis (const FmCooked *self, double raw_fat_pct)
{
  g_autofree char *yield_text = yield_basis (self);
  g_autofree char *retention_text = retention_basis (self->method, raw_fat_pct);
  const char *beef = _ ("The table is of plain ground beef: other meats, salt and binders may "
                        "behave otherwise.");
  const char *outside = _ ("This fat level lies outside the table (3 to 30 %), so the numbers are "
                           "extended beyond it.");

  if (self->extrapolated)
    return g_strjoin (" ", yield_text, retention_text, beef, outside, NULL);
  return g_strjoin (" ", yield_text, retention_text, beef, NULL);
}

static FmAmount
cooked_amount (const FmAmount *raw, double retention_pct, double yield_pct)
{
  static const FmAmount unknown = { 0.0, 0.0 };

  /* Nothing of it in the raw blend: nothing of it cooked, whatever the rows know. */
  if (isnan (retention_pct))
    return raw->known_g_per_100g > 0.0 ? unknown : *raw;
  return (FmAmount){ raw->known_g_per_100g * retention_pct / yield_pct, raw->covered_pct };
}

/* A measured mass that differs from the prediction has lost or kept water, not fat or protein. */
static gboolean
balance_water (FmCooked *self, double predicted_yield_pct, GError **error)
{
  FmAmount *water = &self->amounts[FM_NUTRIENT_WATER];
  double water_g =
      water->known_g_per_100g + 100.0 * (self->yield_pct - predicted_yield_pct) / self->yield_pct;

  if (water->covered_pct < 99.995)
    return TRUE;
  if (water_g < 0.0) {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("A cooked mass of %.1f %% of the raw mass would leave no room for the protein "
                    "and fat of this blend. Check the raw and the cooked mass."),
                 self->yield_pct);
    return FALSE;
  }
  water->known_g_per_100g = water_g;
  return TRUE;
}

static gboolean
check_input (const FmAnalysis *raw, double measured_yield_pct, GError **error)
{
  if (isnan (raw->fat_pct)) {
    g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_UNKNOWN_VALUE,
                         _ ("Cooked values need the fat of every ingredient. Add an analysis or a "
                            "lean point to those that have none."));
    return FALSE;
  }
  if (isnan (measured_yield_pct) || (measured_yield_pct > 0.0 && measured_yield_pct <= 150.0))
    return TRUE;
  g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                       _ ("The cooked mass must be more than zero and not above 150 % of the raw "
                          "mass. Check both masses."));
  return FALSE;
}

FmCooked *
fm_cooked_new (const FmAnalysis *raw,
               FmCookMethod method,
               double measured_yield_pct,
               GError **error)
{
  g_autoptr (FmCooked) self = NULL;
  double predicted_yield_pct;

  g_return_val_if_fail (raw != NULL && method < FM_N_COOK_METHODS, NULL);
  if (!check_input (raw, measured_yield_pct, error))
    return NULL;

  predicted_yield_pct = fm_cook_yield_pct (method, raw->fat_pct);
  self = g_new0 (FmCooked, 1);
  self->method = method;
  self->yield_measured = !isnan (measured_yield_pct);
  self->yield_pct = self->yield_measured ? measured_yield_pct : predicted_yield_pct;
  self->extrapolated = raw->fat_pct < fm_cook_levels[0].raw_fat_pct ||
                       raw->fat_pct > fm_cook_levels[FM_N_COOK_LEVELS - 1].raw_fat_pct;
  for (guint i = 0; i < FM_N_NUTRIENTS; i++)
    self->amounts[i] = cooked_amount (
        &raw->amounts[i], fm_cook_retention_pct (method, i, raw->fat_pct, FM_N_COOK_LEVELS),
        self->yield_pct);
  if (self->yield_measured && !balance_water (self, predicted_yield_pct, error))
    return NULL;
  self->basis = make_basis (self, raw->fat_pct);
  return g_steal_pointer (&self);
}

void
fm_cooked_free (FmCooked *self)
{
  if (self == NULL)
    return;
  g_free (self->basis);
  g_free (self);
}
