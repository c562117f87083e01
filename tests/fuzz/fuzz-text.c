/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* What is typed or pasted: numbers, amounts with units, readings, formulas, words to search for. */
#include <math.h>

#include "core/base/fm-measure.h"
#include "core/base/fm-number.h"
#include "core/experiment/fm-experiment.h"
#include "core/formula/fm-paste-lines.h"
#include "fuzz.h"
#include "store/fm-food-query.h"

static void
try_number (const char *text)
{
  g_autoptr (GError) error = NULL;
  double value = NAN;
  const gboolean ok = fm_number_parse (text, "The mass", 0, 1e6, &value, &error);

  fuzz_check_error (ok, error);
  if (ok && !(value >= 0 && value <= 1e6))
    g_error ("A number outside of its range was taken.");
}

static void
try_measures (const char *text)
{
  const FmUnits units = { 0 };

  for (int measure = 0; measure <= FM_MEASURE_PRICE; measure++) {
    const FmMeasureRange range = { (FmMeasure)measure, "The amount", NULL, 0, 1e4 };
    g_autoptr (GError) error = NULL;
    double value = NAN;
    const gboolean ok = fm_measure_parse (text, &range, &units, &value, &error);

    fuzz_check_error (ok, error);
  }
}

static void
try_readings (const char *text)
{
  for (int fahrenheit = 0; fahrenheit < 2; fahrenheit++) {
    g_autoptr (FmExperiment) experiment = fm_experiment_new ();
    g_autoptr (GError) error = NULL;
    const gboolean ok = fm_experiment_parse_readings (experiment, text, fahrenheit, &error);

    fuzz_check_error (ok, error);
  }
}

static void
try_lines (const char *text)
{
  const FmUnits units = { 0 };
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) lines = fm_paste_lines_read (text, &units, &error);

  fuzz_check_error (lines != NULL, error);
}

static void
try_search (const char *text)
{
  g_auto (GStrv) words = fm_food_query_words (text);

  for (int match = 0; words[0] != NULL && match < FM_N_FOOD_MATCHES; match++)
    g_free (fm_food_query_build ((const char *const *)words, (FmFoodMatch)match));
}

int
LLVMFuzzerTestOneInput (const guint8 *bytes, gsize size)
{
  g_autofree char *raw = fuzz_text (bytes, size);
  /* What comes from the toolkit is UTF-8. */
  g_autofree char *text = g_utf8_make_valid (raw, -1);

  try_number (text);
  try_measures (text);
  try_readings (text);
  try_lines (text);
  try_search (raw);
  return 0;
}
