/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/heat/fm-lethality.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "core/base/fm-error.h"
#include "core/base/fm-number.h"
#include "core/base/fm-units.h"

/* Where trapezoid and straight line differ by more than this share the lower one is the figure. */
#define SPREAD_WORTH_TELLING 0.1
/* Survivor counts do not resolve more than this; larger figures are only told as "more than". */
#define MOST_LOGS_TOLD 10.0

#define F_TO_C(f) (((f)-32.0) / 1.8)
#define LINE_1991 "Line et al. 1991, J. Food Prot. 54(10):762-766"
#define FAIN_1991 "Fain et al. 1991, J. Food Prot. 54(10):756-761"
#define AHMED_1995 "Ahmed, Conner and Huffman 1995, J. Food Sci. 60(3):606-610"
#define JUNEJA_1999 "Juneja and Marmer 1999, Food Res. Int. 32(1):23-28"
#define MURPHY_2004 N_ ("Murphy et al. 2004, in a review table")
#define E_COLI "E. coli O157:H7"
#define SALMONELLA "Salmonella"
#define LISTERIA "Listeria monocytogenes"
#define PYRUVATE N_ ("plate count with pyruvate")
#define NOT_STATED N_ ("not stated")
#define RANGE N_ ("D and z are the upper ends of the ranges over fat levels.")
#define FITTED N_ ("D as published at 65 °C; z by a line through its seven values of D.")
#define FITTED_SIX                                                                                 \
  N_ ("D as published at 65 °C; z by a line through six of its values of D: the review prints "   \
      "the "                                                                                       \
      "same one at 60 and at 62.5 °C, which leaves that at 62.5 °C open.")

#define BIT(kind) FM_SPECIES_BIT (FM_SPECIES_##kind)
#define POULTRY_AND_MEAT (BIT (BEEF) | BIT (TURKEY))

/*
 * Abstracts were read but where the mark says otherwise. Of Line et al. the set of 30.5 % fat by
 * indole states neither z nor D at 145 F and is left out. A worked example without an author and a
 * handbook table without one are left out too.
 */
static const FmLethalityParams params_table[] = {
  { E_COLI, N_ ("ground beef"), PYRUVATE, 2.0, 0.3, F_TO_C (145.0), 8.3 / 1.8, F_TO_C (125.0),
    F_TO_C (145.0), LINE_1991, "read", BIT (BEEF), FALSE, NULL },
  { E_COLI, N_ ("ground beef"), PYRUVATE, 30.5, 0.5, F_TO_C (145.0), 8.4 / 1.8, F_TO_C (125.0),
    F_TO_C (145.0), LINE_1991, "read", BIT (BEEF), FALSE, NULL },
  { E_COLI, N_ ("ground beef"), N_ ("two-hour indole count"), 2.0, 0.2, F_TO_C (145.0), 7.8 / 1.8,
    F_TO_C (125.0), F_TO_C (145.0), LINE_1991, "read", BIT (BEEF), FALSE, NULL },
  { E_COLI, N_ ("ground beef"), NOT_STATED, 20.0, 0.47, 60.0, 4.8, 60.0, 60.0, AHMED_1995, "read",
    BIT (BEEF), FALSE, RANGE },
  { E_COLI, N_ ("pork sausage"), NOT_STATED, 30.0, 0.55, 60.0, 4.8, 60.0, 60.0, AHMED_1995, "read",
    BIT (PORK), FALSE, RANGE },
  { E_COLI, N_ ("ground chicken"), NOT_STATED, 11.0, 0.55, 60.0, 4.8, 60.0, 60.0, AHMED_1995,
    "read", BIT (CHICKEN), FALSE, RANGE },
  { E_COLI, N_ ("ground turkey"), NOT_STATED, 11.0, 0.58, 60.0, 4.8, 60.0, 60.0, AHMED_1995, "read",
    BIT (TURKEY), FALSE, RANGE },
  { E_COLI, N_ ("lean ground turkey; pork and lamb were similar"), NOT_STATED, NAN, 0.29, 65.0, 6.5,
    55.0, 65.0, JUNEJA_1999, "read", BIT (TURKEY) | BIT (PORK) | BIT (LAMB), FALSE, NULL },
  { E_COLI, N_ ("links of beef and turkey"), NOT_STATED, NAN, 0.24, 65.0, 5.15, 55.0, 70.0,
    MURPHY_2004, "read (second hand)", POULTRY_AND_MEAT, TRUE, FITTED },
  { E_COLI, N_ ("pork franks"), NOT_STATED, NAN, 0.8, 65.0, 5.23, 55.0, 70.0, MURPHY_2004,
    "read (second hand)", BIT (PORK), FALSE, FITTED_SIX },
  { SALMONELLA, N_ ("pork franks"), NOT_STATED, NAN, 1.91, 65.0, 5.65, 55.0, 70.0, MURPHY_2004,
    "read (second hand)", BIT (PORK), FALSE, FITTED },
  { LISTERIA, N_ ("ground beef"), N_ ("blood agar overlay with pyruvate"), 2.0, 0.6, F_TO_C (145.0),
    9.3 / 1.8, F_TO_C (125.0), F_TO_C (145.0), FAIN_1991, "read", BIT (BEEF), FALSE, NULL },
  { LISTERIA, N_ ("ground beef"), N_ ("blood agar overlay with pyruvate"), 30.5, 1.2,
    F_TO_C (145.0), 11.4 / 1.8, F_TO_C (125.0), F_TO_C (145.0), FAIN_1991, "read", BIT (BEEF),
    FALSE, NULL },
  { LISTERIA, N_ ("ground beef"), N_ ("selective agar"), 2.0, 0.5, F_TO_C (145.0), 9.8 / 1.8,
    F_TO_C (125.0), F_TO_C (145.0), FAIN_1991, "read", BIT (BEEF), FALSE, NULL },
  { LISTERIA, N_ ("ground beef"), N_ ("selective agar"), 30.5, 1.1, F_TO_C (145.0), 13.2 / 1.8,
    F_TO_C (125.0), F_TO_C (145.0), FAIN_1991, "read", BIT (BEEF), FALSE, NULL },
  { LISTERIA, N_ ("pork franks"), NOT_STATED, NAN, 1.56, 65.0, 5.74, 55.0, 70.0, MURPHY_2004,
    "read (second hand)", BIT (PORK), FALSE, FITTED },
  { LISTERIA, N_ ("links of beef and turkey"), NOT_STATED, NAN, 0.84, 65.0, 5.77, 55.0, 70.0,
    MURPHY_2004, "read (second hand)", POULTRY_AND_MEAT, TRUE, FITTED },
};

const FmLethalityParams *
fm_lethality_params (guint *n_params)
{
  if (n_params != NULL)
    *n_params = G_N_ELEMENTS (params_table);
  return params_table;
}

double
fm_lethality_d_min (const FmLethalityParams *params, double temp_c)
{
  return params->d_min / fm_lethal_rate (temp_c, params->ref_c, params->z_c);
}

static gboolean
params_fit (const FmLethalityParams *params, FmSpeciesSet species)
{
  FmSpeciesSet shared = params->species & species;

  return params->is_blend ? shared == params->species : shared != 0;
}

static int
organism_rank (const FmLethalityParams *params)
{
  static const char *const order[] = { E_COLI, SALMONELLA, LISTERIA, NULL };
  int rank = 0;

  while (order[rank] != NULL && strcmp (order[rank], params->organism) != 0)
    rank++;
  return rank;
}

/* Too lean a matrix flatters; an unstated fat may be as high as the blend's. */
static gboolean
is_lean_for (const FmLethalityParams *params, double fat_pct)
{
  return !isnan (params->fat_pct) && (isnan (fat_pct) || params->fat_pct < fat_pct);
}

static int
compare_params (gconstpointer a, gconstpointer b, gpointer fat)
{
  const FmLethalityParams *first = *(const FmLethalityParams *const *)a;
  const FmLethalityParams *second = *(const FmLethalityParams *const *)b;
  double fat_pct = *(const double *)fat;
  int by_organism = organism_rank (first) - organism_rank (second);
  int by_fat = is_lean_for (first, fat_pct) - is_lean_for (second, fat_pct);
  double first_d = fm_lethality_d_min (first, FM_LETHALITY_COMPARED_C);
  double second_d = fm_lethality_d_min (second, FM_LETHALITY_COMPARED_C);

  if (by_organism != 0)
    return by_organism;
  if (by_fat != 0)
    return by_fat;
  return first_d > second_d ? -1 : first_d < second_d;
}

GPtrArray *
fm_lethality_params_for (const FmCookFood *food, gboolean *fits)
{
  FmSpeciesSet open = BIT (UNKNOWN) | BIT (MIXED) | BIT (MIXED_MEAT);
  gboolean any_animal = fm_species_set_is_meatless (food->species) || (food->species & open) != 0;
  GPtrArray *list = g_ptr_array_new ();
  double fat_pct = food->fat_pct;

  for (guint i = 0; i < G_N_ELEMENTS (params_table); i++)
    if (any_animal || params_fit (&params_table[i], food->species))
      g_ptr_array_add (list, (gpointer)&params_table[i]);
  *fits = list->len > 0;
  for (guint i = 0; i < G_N_ELEMENTS (params_table) && !*fits; i++)
    g_ptr_array_add (list, (gpointer)&params_table[i]);
  g_ptr_array_sort_with_data (list, compare_params, &fat_pct);
  return list;
}

/* What may be said of the first set of a list that fits. */
static char *
first_set_text (const FmLethalityParams *first, double fat_pct)
{
  if (isnan (first->fat_pct))
    return g_strdup (_ ("The most careful published set for this blend stands first: the highest D "
                        "of foods at its fat or above, or of no stated fat, as this one."));
  if (isnan (fat_pct))
    return g_strdup (_ ("The fat of this blend is not known; the highest D of its kinds of animal "
                        "stands first. More fat than that food holds may ask for more."));
  if (is_lean_for (first, fat_pct))
    return g_strdup (_ ("No published set for this blend is of a food at its fat or above: the "
                        "highest D of leaner ones stands first, and heat kills more slowly in "
                        "fat."));
  return g_strdup (_ ("The most careful published set for this blend stands first: the highest D "
                      "at its fat or above."));
}

char *
fm_lethality_choice_text (const FmCookFood *food)
{
  gboolean fits;
  g_autoptr (GPtrArray) list = fm_lethality_params_for (food, &fits);

  return fits ? first_set_text (list->pdata[0], food->fat_pct)
              : g_strdup (_ ("No D and z published for this kind of animal are known here: all the "
                             "sets below are of other meats."));
}

void
fm_lethality_params_init_own (FmLethalityParams *self, double d_min, double ref_c, double z_c)
{
  *self = (FmLethalityParams){
    .organism = _ ("Own values"),
    .matrix = N_ ("as you typed them"),
    .method = N_ ("not stated"),
    .fat_pct = NAN,
    .d_min = d_min,
    .ref_c = ref_c,
    .z_c = z_c,
    .tested_min_c = NAN,
    .tested_max_c = NAN,
    .source = N_ ("own, not published"),
    .mark = "own",
  };
}

char *
fm_lethality_params_name (const FmLethalityParams *params)
{
  if (!isfinite (params->fat_pct))
    return g_strdup_printf ("%s, %s", params->organism, _ (params->matrix));

  g_autofree char *fat = fm_number_format (params->fat_pct, 1);
  /* Translators: organism, food, percent fat of the food, laboratory method. */
  return g_strdup_printf (_ ("%s, %s, %s %% fat, %s"), params->organism, _ (params->matrix), fat,
                          _ (params->method));
}

double
fm_lethal_rate (double temp_c, double ref_c, double z_c)
{
  return pow (10.0, (temp_c - ref_c) / z_c);
}

GArray *
fm_core_readings_sorted (const GArray *readings)
{
  GArray *sorted = g_array_new (FALSE, FALSE, sizeof (FmCoreReading));

  if (readings != NULL && readings->len > 0)
    g_array_append_vals (sorted, readings->data, readings->len);
  g_array_sort (sorted, fm_core_reading_compare);
  return sorted;
}

static gboolean
check (const GArray *readings, const FmLethalityParams *params, GError **error)
{
  if (isnan (params->d_min) || isnan (params->z_c) || isnan (params->ref_c)) {
    g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_UNKNOWN_VALUE,
                         _ ("Lethality needs D, the temperature of that D, and z. Type all three, "
                            "or choose a published set."));
    return FALSE;
  }
  if (!(params->d_min > 0.0) || !(params->z_c > 0.0) || !isfinite (params->d_min) ||
      !isfinite (params->z_c) || !isfinite (params->ref_c)) {
    g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                         _ ("D and z must be above zero and their temperature a number."));
    return FALSE;
  }
  if (readings == NULL || readings->len < 2) {
    g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY,
                         _ ("Lethality needs at least two core readings. Record time and "
                            "temperature while it cooks and rests."));
    return FALSE;
  }
  for (guint i = 0; i < readings->len; i++) {
    const FmCoreReading *reading = &g_array_index (readings, FmCoreReading, i);

    if (!isfinite (reading->time_s) || !isfinite (reading->temp_c) ||
        fabs (reading->temp_c) > 300.0) {
      g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                   _ ("Core reading %u has no usable time or temperature. Correct or remove it."),
                   i + 1);
      return FALSE;
    }
  }
  return TRUE;
}

/* Integral of a rate that runs from @from to @to along a straight temperature: their logarithmic
 * mean. */
static double
logarithmic_mean (double from, double to)
{
  double log_ratio = log (to / from);

  return fabs (log_ratio) < 1e-6 ? (from + to) / 2.0 : (to - from) / log_ratio;
}

static void
integrate (FmLethality *self, const GArray *sorted, const FmLethalityParams *params)
{
  double highest_c = -INFINITY;

  for (guint i = 0; i < sorted->len; i++) {
    const FmCoreReading *reading = &g_array_index (sorted, FmCoreReading, i);

    self->time_s[i] = reading->time_s;
    self->lethal_rate[i] = fm_lethal_rate (reading->temp_c, params->ref_c, params->z_c);
    highest_c = fmax (highest_c, reading->temp_c);
    if (i > 0) {
      double step_s = self->time_s[i] - self->time_s[i - 1];
      double before = self->lethal_rate[i - 1];
      double now = self->lethal_rate[i];

      self->f_min[i] = self->f_min[i - 1] + step_s / 60.0 * (before + now) / 2.0;
      self->linear_f_min += step_s / 60.0 * logarithmic_mean (before, now);
      self->longest_gap_s = fmax (self->longest_gap_s, step_s);
    }
  }
  /* Nearly all of F stems from the hottest readings. A tenth of a degree is reading error. */
  self->extrapolated = isnan (params->tested_max_c) || highest_c > params->tested_max_c + 0.1 ||
                       highest_c < params->tested_min_c - 0.1;
}

FmLethality *
fm_lethality_new (const GArray *readings, const FmLethalityParams *params, GError **error)
{
  g_autoptr (GArray) sorted = NULL;
  FmLethality *self;

  if (!check (readings, params, error))
    return NULL;
  sorted = fm_core_readings_sorted (readings);
  self = g_new0 (FmLethality, 1);
  self->n_readings = sorted->len;
  self->time_s = g_new0 (double, sorted->len);
  self->lethal_rate = g_new0 (double, sorted->len);
  self->f_min = g_new0 (double, sorted->len);
  integrate (self, sorted, params);
  self->total_f_min = self->f_min[sorted->len - 1];
  self->log_reductions = self->total_f_min / params->d_min;
  self->linear_log_reductions = self->linear_f_min / params->d_min;
  return self;
}

void
fm_lethality_free (FmLethality *self)
{
  if (self == NULL)
    return;
  g_free (self->time_s);
  g_free (self->lethal_rate);
  g_free (self->f_min);
  g_free (self);
}

/* @value to @digits significant digits. */
static char *
format_digits (double value, int digits, const char *unit)
{
  int magnitude = value > 0.0 ? (int)floor (log10 (value)) : 0;
  int decimals = digits - 1 - magnitude;
  double step = decimals < 0 ? pow (10.0, -decimals) : 1.0;

  return fm_number_format_unit (round (value / step) * step, CLAMP (decimals, 0, 6), unit);
}

/* Whether the readings stand so far apart that the way between them matters. */
static gboolean
is_coarse (const FmLethality *self)
{
  return self->linear_f_min < (1.0 - SPREAD_WORTH_TELLING) * self->total_f_min;
}

char *
fm_lethality_f_format (const FmLethality *self)
{
  return format_digits (is_coarse (self) ? self->linear_f_min : self->total_f_min, 2, "min");
}

static char *
format_logs (double logs)
{
  if (logs > MOST_LOGS_TOLD) {
    g_autofree char *most = fm_number_format (MOST_LOGS_TOLD, 0);
    return g_strdup_printf (_ ("more than %s"), most);
  }
  return fm_number_format (logs, 1);
}

static void
append_figures (GString *text, const FmLethality *self, const FmLethalityParams *params)
{
  g_autofree char *logs =
      format_logs (is_coarse (self) ? self->linear_log_reductions : self->log_reductions);
  g_autofree char *name = fm_lethality_params_name (params);
  g_autofree char *d = fm_number_to_edit (params->d_min, 3);
  g_autofree char *ref = fm_number_format_unit (params->ref_c, 1, "°C");
  g_autofree char *z = fm_number_format_unit (params->z_c, 1, "K");

  g_string_append_printf (text,
                          _ ("Computed decimal reductions: %s. %s: D %s min at %s, z %s (%s)."),
                          logs, name, d, ref, z, _ (params->source));
  if (params->note != NULL)
    g_string_append_printf (text, " %s", _ (params->note));
}

/* The usual sum reads high where readings stand far apart, so that it is told second. */
static void
append_spread (GString *text, const FmLethality *self)
{
  if (!is_coarse (self) || self->linear_log_reductions > MOST_LOGS_TOLD)
    return;
  g_autofree char *usual = format_logs (self->log_reductions);
  g_autofree char *gap = fm_number_format_unit (self->longest_gap_s, 0, "s");
  g_string_append_c (text, ' ');
  g_string_append_printf (text,
                          _ ("That takes the temperature to run straight between readings, which "
                             "stand up to %s apart; the usual sum over their lethal rates is %s. "
                             "Read more often to know."),
                          gap, usual);
}

char *
fm_lethality_text (const FmLethality *self, const FmLethalityParams *params)
{
  GString *text = g_string_new (NULL);

  append_figures (text, self, params);
  append_spread (text, self);
  if (self->extrapolated) {
    g_string_append_c (text, ' ');
    g_string_append (text, _ ("The highest reading lies outside the temperatures at which D is "
                              "known to have been measured, so this is extended beyond the data."));
  }
  g_string_append_c (text, ' ');
  g_string_append (text, _ ("This counts one organism in one test meat at the place of the probe; "
                            "it is no verdict on the food. Local rules come first."));
  return g_string_free (text, FALSE);
}
