/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-measure.h - masses, temperatures, lengths, times and prices as a cook types and reads them
 *
 * Values are kept in one unit a kind, the base unit named beside it. The units of a notebook say in
 * which a bare number is meant and in which a value is shown. Factors are exact (fm-units.h): NIST
 * Handbook 44, Appendix C, and NIST SP 811, Appendix B.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum {
  FM_MEASURE_NUMBER,           /* no unit but perhaps one of its own ("%") */
  FM_MEASURE_MASS,             /* g; shown in g or oz */
  FM_MEASURE_TEMPERATURE,      /* °C; shown in °C or °F */
  FM_MEASURE_TEMPERATURE_STEP, /* K; shown in K or °F of difference */
  FM_MEASURE_LENGTH,           /* mm */
  FM_MEASURE_MINUTES,          /* min */
  FM_MEASURE_CLOCK,            /* s; a bare number is minutes, shown as minutes:seconds */
  FM_MEASURE_PRICE,            /* currency per kg, in any notebook */
} FmMeasure;

#define FM_CURRENCY_LENGTH 16

/** What a notebook shows its numbers in. */
typedef struct {
  gboolean us_masses; /* ounces and pounds */
  gboolean fahrenheit;
  char currency[FM_CURRENCY_LENGTH]; /* the sign beside amounts, which are never converted */
} FmUnits;

/** What a text is read as. */
typedef struct {
  FmMeasure measure;
  const char *what;     /* translated name of the quantity, used in messages */
  const char *own_unit; /* (nullable): the unit of a plain number, which may be typed behind it */
  double min;           /* in the base unit, as the next */
  double max;
} FmMeasureRange;

/** The unit in which @measure is shown ("oz", "€ per kg"), "" for plain numbers. (transfer full) */
char *fm_measure_unit (FmMeasure measure, const FmUnits *units);
/** From the base unit to the shown one (a clock: minutes). */
double fm_measure_to_shown (FmMeasure measure, const FmUnits *units, double value);
double fm_measure_from_shown (FmMeasure measure, const FmUnits *units, double shown);
/** @decimals of the metric unit as those of the unit in which @measure is shown. */
int fm_measure_decimals (FmMeasure measure, const FmUnits *units, int decimals);

/**
 * fm_measure_parse:
 * @value: (out): in the base unit; never written on failure
 *
 * Reads a number with or without a unit ("600", "0.6 kg", "1 lb 4 oz", "1/8 in", "160 F", "4:30"),
 * and sums ("300+200 g"; masses also "650-50"). A bare number is in the shown unit. What can be
 * read in two ways is refused with a sentence that says what to type: bare numbers beside others of
 * another unit, "1,234" and "1 lb 4". Amounts in another currency are refused.
 */
gboolean fm_measure_parse (const char *text,
                           const FmMeasureRange *range,
                           const FmUnits *units,
                           double *value,
                           GError **error);

/** What fm_measure_parse() reads back, to at most @decimals of the metric unit; "" for NaN.
 * (transfer full) */
char *fm_measure_to_edit (FmMeasure measure, const FmUnits *units, double value, int decimals);

/** Number and unit for reading: "180.0 g", "6.35 oz", "2.20 lb" from a pound on; a dash for NaN.
 * (transfer full) */
char *fm_measure_format (FmMeasure measure, const FmUnits *units, double value, int decimals);

/** The number alone, in the unit of fm_measure_unit(), for a column; a dash for NaN.
 * (transfer full) */
char *fm_measure_format_cell (FmMeasure measure, const FmUnits *units, double value, int decimals);

G_END_DECLS
