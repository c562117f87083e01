/* fm-hold-table-judge.c - a varying curve beside a hold table; the rule is in the header */
#include "core/heat/fm-hold-table.h"

#include <glib/gi18n-lib.h>
#include <math.h>

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
judge_rows (const GArray *sorted, FmHoldVerdict *verdict)
{
  guint n_rows;
  const FmHoldRow *rows = fm_hold_table (verdict->authority, &n_rows);
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

/* Where a row is missed the reading is rounded down, so that it never prints as that row. */
static char *
format_reading (double temp_c, FmHoldState state)
{
  double tenths_c = temp_c * 10.0;
  double temp_f = fm_celsius_to_fahrenheit (temp_c);
  gboolean down = state != FM_HOLD_REACHED;
  g_autofree char *c =
      fm_number_format_unit ((down ? floor (tenths_c + TINY) : round (tenths_c)) / 10.0, 1, "°C");
  g_autofree char *f =
      fm_number_format_unit (down ? floor (temp_f + TINY) : round (temp_f), 0, "°F");

  return g_strdup_printf ("%s (%s)", c, f);
}

static char *
format_row_temp (const FmHoldRow *row)
{
  gboolean whole = row->temp_c == floor (row->temp_c);
  g_autofree char *c = fm_number_format_unit (row->temp_c, whole ? 0 : 1, "°C");
  g_autofree char *f = fm_number_format_unit (row->temp_f, 0, "°F");

  return g_strdup_printf ("%s (%s)", c, f);
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
  default:
    return g_strdup_printf (
        _ ("%s: not known. It asks for %s at %s; the record shows %s there without a break, but "
           "its readings are too few or too far apart. The highest reading is %s."),
        name, asked, asked_temp, held, highest);
  }
}

static char *
describe (const FmHoldVerdict *verdict)
{
  if (isnan (verdict->highest_c))
    return g_strdup_printf (_ ("%s: not known. No core temperature is recorded."),
                            fm_authority_name (verdict->authority));

  g_autofree char *asked_temp = format_row_temp (&verdict->row);
  g_autofree char *highest = format_reading (verdict->highest_c, verdict->state);
  if (verdict->row.hold_s <= 0)
    return text_at_once (verdict, asked_temp, highest);
  return text_held (verdict, asked_temp, highest);
}

void
fm_hold_judge (FmAuthority authority, const GArray *readings, FmHoldVerdict *verdict)
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
    judge_rows (sorted, verdict);
  verdict->text = describe (verdict);
}

void
fm_hold_verdict_clear (FmHoldVerdict *verdict)
{
  g_clear_pointer (&verdict->text, g_free);
}

/* Food Code 3-603.11, reminder of the consumer advisory: wording from memory. */
static char *
consumer_advisory (double target_c)
{
  g_autofree char *target = format_reading (target_c, FM_HOLD_NOT_REACHED);

  return g_strdup_printf (
      _ ("%s lies below the table of FDA Food Code 3-401.11 for comminuted meat. Where it is "
         "served, Food Code 3-603.11 asks to tell the guest that the dish is undercooked, with "
         "this reminder: consuming raw or undercooked meats, poultry, seafood, shellfish, or eggs "
         "may increase your risk of foodborne illness. Some people are hit harder: the young, the "
         "old, the pregnant, the ill. Local rules come first and may forbid it; ask a licensed "
         "professional."),
      target);
}

char *
fm_hold_doneness_caution (double target_c)
{
  double required_s = fm_hold_required_s (FM_AUTHORITY_FOOD_CODE, target_c);

  if (!isfinite (target_c) || fm_hold_required_s (FM_AUTHORITY_CONSUMER, target_c) == 0)
    return NULL;
  if (isnan (required_s))
    return consumer_advisory (target_c);

  g_autofree char *target = format_reading (target_c, FM_HOLD_NOT_REACHED);
  g_autofree char *hold = fm_number_format_unit (required_s, 0, "s");
  return g_strdup_printf (
      _ ("%s lies below the 71.1 °C (160 °F) that USDA FSIS asks consumers for in ground meat. FDA "
         "Food Code 3-401.11(A)(2) asks for it to be held for %s there. Local rules come first."),
      target, hold);
}
