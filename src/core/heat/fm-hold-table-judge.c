/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-hold-table-judge.c - a varying curve beside a hold table; the rule is in the header */
#include "core/heat/fm-hold-table.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/cooking/fm-caution.h"
#include "core/heat/fm-lethality.h"
#include "core/base/fm-number.h"
#include "core/base/fm-units.h"

#define TINY 1e-6

/* What the readings say about one row. */
typedef struct {
  double held_s;     /* seen without a break */
  double possible_s; /* could have been, from the reading before to the one after */
  gboolean touched;  /* one reading is at or above the row */
} Stay;

static GArray *
usable_sorted (const GArray *readings)
{
  GArray *sorted = fm_core_readings_sorted (readings);

  for (guint i = sorted->len; i > 0; i--) {
    const FmCoreReading *reading = &g_array_index (sorted, FmCoreReading, i - 1);
    if (!isfinite (reading->time_s) || !isfinite (reading->temp_c))
      g_array_remove_index (sorted, i - 1);
  }
  return sorted;
}

static Stay
measure_stay (const GArray *sorted, const FmHoldRow *row)
{
  Stay stay = { 0, 0, FALSE };
  double below_s; /* last reading under the row; a record says nothing of the time before it */
  double since_s = NAN; /* begin of the unbroken watch */
  double last_s = NAN;

  below_s = g_array_index (sorted, FmCoreReading, 0).time_s;
  for (guint i = 0; i < sorted->len; i++) {
    const FmCoreReading *reading = &g_array_index (sorted, FmCoreReading, i);

    if (!fm_hold_row_is_met (row, reading->temp_c)) {
      if (!isnan (since_s))
        stay.possible_s = fmax (stay.possible_s, reading->time_s - below_s);
      below_s = reading->time_s;
      since_s = NAN;
      continue;
    }
    if (isnan (since_s) || reading->time_s - last_s > FM_HOLD_MAX_GAP_S + TINY)
      since_s = reading->time_s;
    last_s = reading->time_s;
    stay.touched = TRUE;
    stay.held_s = fmax (stay.held_s, last_s - since_s);
  }
  if (!isnan (since_s))
    stay.possible_s = fmax (stay.possible_s, last_s - below_s);
  return stay;
}

static FmHoldState
judge_row (const Stay *stay, const FmHoldRow *row, guint n_readings)
{
  if (stay->touched && stay->held_s >= row->hold_s - TINY)
    return FM_HOLD_REACHED;
  if (stay->touched && stay->possible_s >= row->hold_s)
    return FM_HOLD_NOT_KNOWN;
  return n_readings > 1 || row->hold_s <= 0 ? FM_HOLD_NOT_REACHED : FM_HOLD_NOT_KNOWN;
}

/* The share of the time asked that was seen; a row never touched counts for nothing. */
static double
closeness (const Stay *stay, const FmHoldRow *row)
{
  if (!stay->touched)
    return -1.0;
  return row->hold_s > 0 ? fmin (stay->held_s / row->hold_s, 1.0) : 1.0;
}

/* A better state wins; among equal ones the row that was held for the larger part, and among rows
 * not touched the lowest. Of several rows reached the hottest is named. */
static void
judge_rows (const GArray *sorted, const FmCookFood *food, FmHoldVerdict *verdict)
{
  FmHoldRow rows[FM_AUTHORITY_MAX_ROWS];
  guint n_rows = fm_authority_rows (verdict->authority, food, rows);
  double best = 0;

  for (guint i = 0; i < n_rows; i++) {
    Stay stay = measure_stay (sorted, &rows[i]);
    FmHoldState state = judge_row (&stay, &rows[i], sorted->len);
    static const int rank[] = {
      [FM_HOLD_NOT_REACHED] = 0, [FM_HOLD_NOT_KNOWN] = 1, [FM_HOLD_REACHED] = 2
    };
    double close = closeness (&stay, &rows[i]);

    if (i == 0 || rank[state] > rank[verdict->state] ||
        (state == verdict->state &&
         (close > best || (state == FM_HOLD_REACHED && close >= best)))) {
      verdict->state = state;
      verdict->row = rows[i];
      verdict->held_s = stay.held_s;
      best = close;
    }
  }
}

static char *
text_at_once (const FmHoldVerdict *verdict, const char *asked_temp, const char *highest)
{
  const char *name = fm_authority_name (verdict->authority);

  if (verdict->state == FM_HOLD_REACHED)
    return g_strdup_printf (
        _ ("%s: reached. It asks for %s at once; the highest reading is %s. One reading may miss "
           "the coldest spot."),
        name, asked_temp, highest);
  return g_strdup_printf (_ ("%s: not reached. It asks for %s; the highest reading is %s."), name,
                          asked_temp, highest);
}

static char *
text_held (const FmHoldVerdict *verdict, const char *asked_temp, const char *highest)
{
  const char *name = fm_authority_name (verdict->authority);
  g_autofree char *asked = fm_number_format_unit (verdict->row.hold_s, 0, "s");
  g_autofree char *held = fm_number_format_unit (floor (verdict->held_s + TINY), 0, "s");

  switch (verdict->state) {
  case FM_HOLD_REACHED:
    return g_strdup_printf (
        _ ("%s: reached. It asks for %s at %s; %s were recorded there without a break. The highest "
           "reading is %s."),
        name, asked, asked_temp, held, highest);
  case FM_HOLD_NOT_REACHED:
    return g_strdup_printf (
        _ ("%s: not reached. It asks for %s at %s, for example; %s were recorded there without a "
           "break. The highest reading is %s."),
        name, asked, asked_temp, held, highest);
  case FM_HOLD_NOT_KNOWN:
    return g_strdup_printf (
        _ ("%s: not known. It asks for %s at %s; the record shows %s there without a break, but "
           "its readings are too few or too far apart. The highest reading is %s."),
        name, asked, asked_temp, held, highest);
  }
  g_return_val_if_reached (NULL);
}

static char *
describe (const FmHoldVerdict *verdict)
{
  if (isnan (verdict->highest_c))
    return g_strdup_printf (_ ("%s: not known. No core temperature is recorded."),
                            fm_authority_name (verdict->authority));

  g_autofree char *asked_temp = fm_hold_row_temp_format (&verdict->row);
  g_autofree char *highest = fm_hold_row_reading_format (&verdict->row, verdict->highest_c);
  if (verdict->row.hold_s <= 0)
    return text_at_once (verdict, asked_temp, highest);
  return text_held (verdict, asked_temp, highest);
}

void
fm_hold_judge (FmAuthority authority,
               const FmCookFood *food,
               const GArray *readings,
               FmHoldVerdict *verdict)
{
  g_autoptr (GArray) sorted = usable_sorted (readings);

  *verdict = (FmHoldVerdict){ .authority = authority,
                              .state = FM_HOLD_NOT_KNOWN,
                              .row = { NAN, NAN, NAN },
                              .held_s = 0,
                              .highest_c = NAN };
  for (guint i = 0; i < sorted->len; i++)
    verdict->highest_c = fmax (verdict->highest_c, g_array_index (sorted, FmCoreReading, i).temp_c);
  if (sorted->len > 0)
    judge_rows (sorted, food, verdict);
  verdict->text = describe (verdict);
}

void
fm_hold_verdict_clear (FmHoldVerdict *verdict)
{
  g_clear_pointer (&verdict->text, g_free);
}

/* The sense of Food Code 3-603.11; its wording has not been checked, so none is quoted. */
static char *
consumer_advisory (FmAuthority code, const FmCookFood *food, double target_c)
{
  FmHoldRow rows[FM_AUTHORITY_MAX_ROWS];

  fm_authority_rows (code, food, rows);
  g_autofree char *target = fm_hold_row_reading_format (&rows[0], target_c);

  return g_strdup_printf (
      _ ("%s lies below the table of %s. Where it is served, Food Code 3-603.11 asks to tell the "
         "guest that the dish is undercooked and that undercooked meat, poultry or fish raises the "
         "risk of illness (its wording has not been checked against the current text). Some people "
         "are hit harder: the young, the old, the pregnant, the ill. Local rules come first and "
         "may forbid it; ask a licensed professional."),
      target, fm_authority_name (code));
}

char *
fm_hold_doneness_caution (FmSpeciesSet species, double target_c)
{
  FmCookFood food = { species, (double)NAN };
  gboolean poultry_rules = fm_authority_ruling (species) == FM_AUTHORITY_CONSUMER_POULTRY;
  FmAuthority code = poultry_rules ? FM_AUTHORITY_FOOD_CODE_POULTRY : FM_AUTHORITY_FOOD_CODE;
  double required_s = fm_hold_required_s (code, &food, target_c);

  if (!isfinite (target_c) || fm_caution_peak_meets (species, target_c))
    return NULL;
  if (isnan (required_s))
    return consumer_advisory (code, &food, target_c);

  g_autofree char *target = fm_caution_reading_format (species, target_c);
  g_autofree char *hold = fm_number_format_unit (required_s, 0, "s");
  g_autofree char *figure = fm_caution_figure_text (species);
  return g_strdup_printf (_ ("%s lies below the figure that rules for this blend: %s. %s asks for "
                             "it to be held for %s there. Local rules come first."),
                          target, figure, fm_authority_name (code), hold);
}
