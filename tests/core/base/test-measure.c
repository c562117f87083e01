/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-measure.c - typed units and sums, and the units in which a notebook shows its values */
#include "core/base/fm-error.h"
#include "core/base/fm-measure.h"
#include "core/base/fm-units.h"

#include <math.h>
#include <string.h>

#define NO_BREAK_SPACE "\xc2\xa0"

static const FmUnits metric = { FALSE, FALSE, "€" };
static const FmUnits us = { TRUE, TRUE, "$" };

static FmMeasureRange
range_of (FmMeasure measure)
{
  return (FmMeasureRange){ measure, "Mass of Chuck", "%", -1e9, 1e9 };
}

static void
assert_reads (FmMeasure measure, const FmUnits *units, const char *text, double expected)
{
  const FmMeasureRange range = range_of (measure);
  g_autoptr (GError) error = NULL;
  double value = -77.0;
  gboolean ok = fm_measure_parse (text, &range, units, &value, &error);

  g_assert_no_error (error);
  g_assert_true (ok);
  g_assert_cmpfloat_with_epsilon (value, expected, 1e-9 * MAX (1.0, fabs (expected)));
}

static void
assert_refuses (FmMeasure measure, const FmUnits *units, const char *text, const char *words)
{
  const FmMeasureRange range = range_of (measure);
  g_autoptr (GError) error = NULL;
  double value = -77.0;

  g_assert_false (fm_measure_parse (text, &range, units, &value, &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_NOT_A_NUMBER);
  if (strstr (error->message, words) == NULL)
    g_error ("“%s” is refused with: %s", text, error->message);
  g_assert_nonnull (strstr (error->message, "Mass of Chuck"));
  g_assert_cmpuint (strlen (error->message), <, 250);
  g_assert_cmpfloat (value, ==, -77.0);
}

/* NIST Handbook 44, Appendix C: 1 lb = 453.592 37 g and 1 oz = 28.349 523 125 g exactly. */
static void
test_masses (void)
{
  assert_reads (FM_MEASURE_MASS, &metric, "600", 600.0);
  assert_reads (FM_MEASURE_MASS, &metric, " 600 g ", 600.0);
  assert_reads (FM_MEASURE_MASS, &metric, "600" NO_BREAK_SPACE "g", 600.0);
  assert_reads (FM_MEASURE_MASS, &metric, "0.6 kg", 600.0);
  assert_reads (FM_MEASURE_MASS, &metric, "0,6KG", 600.0);
  assert_reads (FM_MEASURE_MASS, &metric, "1 kg 250 g", 1250.0);
  assert_reads (FM_MEASURE_MASS, &metric, "250 mg", 0.25);
  assert_reads (FM_MEASURE_MASS, &metric, "20 oz", 566.9904625);
  assert_reads (FM_MEASURE_MASS, &metric, "1 lb 4 oz", 566.9904625);
  assert_reads (FM_MEASURE_MASS, &metric, "1lb4oz.", 566.9904625);
  assert_reads (FM_MEASURE_MASS, &metric, "2 lbs", 907.18474);
  assert_reads (FM_MEASURE_MASS, &metric, "1 1/2 lb", 680.388555);
  assert_reads (FM_MEASURE_MASS, &metric, "3/4 lb", 340.1942775);
  assert_reads (FM_MEASURE_MASS, &metric, "1.234,5 g", 1234.5);
  assert_reads (FM_MEASURE_MASS, &us, "20", 566.9904625);
  assert_reads (FM_MEASURE_MASS, &us, "1 lb", 453.59237);
  assert_reads (FM_MEASURE_MASS, &us, "100 g", 100.0);
}

static void
test_sums (void)
{
  assert_reads (FM_MEASURE_MASS, &metric, "300+200", 500.0);
  assert_reads (FM_MEASURE_MASS, &metric, "300 + 200 g", 500.0);
  assert_reads (FM_MEASURE_MASS, &metric, "0.3 kg + 200 g + 1 oz", 528.349523125);
  assert_reads (FM_MEASURE_MASS, &metric, "1 lb 4 oz + 2 oz", 623.68950875);
  assert_reads (FM_MEASURE_MASS, &metric, "650 - 50", 600.0);
  assert_reads (FM_MEASURE_MASS, &metric,
                "650\xe2\x88\x92"
                "50",
                600.0);
  assert_reads (FM_MEASURE_MASS, &us, "10 + 10 oz", 566.9904625);
  assert_reads (FM_MEASURE_NUMBER, &metric, "12.5+2,5", 15.0);
  assert_reads (FM_MEASURE_CLOCK, &metric, "4:30 + 0:45", 315.0);
}

static void
test_refuses_what_has_two_readings (void)
{
  const char *each = "Type the unit of each number";

  assert_refuses (FM_MEASURE_MASS, &metric, "0.3 kg + 200", each);
  assert_refuses (FM_MEASURE_MASS, &us, "300 + 200 g", each);
  assert_refuses (FM_MEASURE_MASS, &metric, "1 lb 4", each);
  assert_refuses (FM_MEASURE_MASS, &metric, "4 oz 1 lb", each);
  assert_refuses (FM_MEASURE_MASS, &metric, "1 lb 1 lb", each);
  assert_refuses (FM_MEASURE_MASS, &metric, "1,234 g", "in two ways");
  assert_refuses (FM_MEASURE_MASS, &metric, "5 6", each);
  assert_refuses (FM_MEASURE_NUMBER, &metric, "5 6", "not a number");
  assert_refuses (FM_MEASURE_NUMBER, &metric, "10-20", "not a number");
  assert_refuses (FM_MEASURE_NUMBER, &metric, "80/20", "not a number");
  assert_refuses (FM_MEASURE_MASS, &metric, "80/20", "Units that fit");
}

static void
test_temperatures (void)
{
  assert_reads (FM_MEASURE_TEMPERATURE, &metric, "71.1", 71.1);
  assert_reads (FM_MEASURE_TEMPERATURE, &metric, "160 F", 640.0 / 9.0);
  assert_reads (FM_MEASURE_TEMPERATURE, &metric, "160°F", 640.0 / 9.0);
  assert_reads (FM_MEASURE_TEMPERATURE, &metric, "160 deg. f", 640.0 / 9.0);
  assert_reads (FM_MEASURE_TEMPERATURE, &us, "160", 640.0 / 9.0);
  assert_reads (FM_MEASURE_TEMPERATURE, &us, "71.1 C", 71.1);
  assert_reads (FM_MEASURE_TEMPERATURE, &metric, "-18", -18.0);
  assert_reads (FM_MEASURE_TEMPERATURE, &us, "-40", -40.0);
  assert_reads (FM_MEASURE_TEMPERATURE, &us, "-40 C", -40.0);
  assert_reads (FM_MEASURE_TEMPERATURE_STEP, &metric, "10 F", 10.0 / 1.8);
  assert_reads (FM_MEASURE_TEMPERATURE_STEP, &us, "18", 10.0);
  assert_reads (FM_MEASURE_TEMPERATURE_STEP, &us, "10 K", 10.0);
  assert_refuses (FM_MEASURE_TEMPERATURE, &metric, "60 + 10", "one temperature");
  assert_refuses (FM_MEASURE_TEMPERATURE, &metric, "344 K", "Units that fit: C, F.");
}

static void
test_lengths_and_times (void)
{
  assert_reads (FM_MEASURE_LENGTH, &metric, "4.5", 4.5);
  assert_reads (FM_MEASURE_LENGTH, &metric, "1/8 in", 3.175);
  assert_reads (FM_MEASURE_LENGTH, &metric, "3/16\"", 4.7625);
  assert_reads (FM_MEASURE_LENGTH, &us, "1 1/4 inches", 31.75);
  assert_reads (FM_MEASURE_LENGTH, &metric, "1.2 cm", 12.0);
  assert_reads (FM_MEASURE_MINUTES, &metric, "2", 2.0);
  assert_reads (FM_MEASURE_MINUTES, &metric, "90 s", 1.5);
  assert_reads (FM_MEASURE_MINUTES, &metric, "1 h 30 min", 90.0);
  assert_reads (FM_MEASURE_MINUTES, &metric, "1:30", 1.5);
  assert_reads (FM_MEASURE_CLOCK, &metric, "4:30", 270.0);
  assert_reads (FM_MEASURE_CLOCK, &metric, "4.5", 270.0);
  assert_reads (FM_MEASURE_CLOCK, &metric, "90 s", 90.0);
  assert_refuses (FM_MEASURE_CLOCK, &metric, "4:75", "minutes:seconds");
  assert_refuses (FM_MEASURE_CLOCK, &metric, "4.5:30", "minutes:seconds");
  assert_refuses (FM_MEASURE_CLOCK, &metric, "4:", "not a number");
  assert_refuses (FM_MEASURE_MASS, &metric, "4:30", "not a number");
}

static void
test_prices (void)
{
  assert_reads (FM_MEASURE_PRICE, &metric, "12.5", 12.5);
  assert_reads (FM_MEASURE_PRICE, &metric, "€12,50", 12.5);
  assert_reads (FM_MEASURE_PRICE, &metric, "12.50 €/kg", 12.5);
  assert_reads (FM_MEASURE_PRICE, &metric, "12.50 € per kg", 12.5);
  assert_reads (FM_MEASURE_PRICE, &metric, "4.5359237 / lb", 10.0);
  assert_reads (FM_MEASURE_PRICE, &us, "$4.5359237 per lb", 10.0);
  assert_reads (FM_MEASURE_PRICE, &us, "$ 10.00", 10.0);
  assert_reads (FM_MEASURE_PRICE, &us, "0.28349523125/oz", 10.0);
  assert_refuses (FM_MEASURE_PRICE, &metric, "12 $", "not converted");
  assert_refuses (FM_MEASURE_PRICE, &metric, "$12", "not a number");
  assert_refuses (FM_MEASURE_PRICE, &metric, "12 per piece", "Units that fit");
}

static void
test_own_unit (void)
{
  assert_reads (FM_MEASURE_NUMBER, &metric, "25 %", 25.0);
  assert_reads (FM_MEASURE_NUMBER, &metric, "-2", -2.0);
  assert_refuses (FM_MEASURE_NUMBER, &metric, "25 g", "not a number");
}

static void
test_hostile_texts (void)
{
  const char *const texts[] = { "+",
                                "-",
                                "--5",
                                "5-",
                                "5+",
                                "+ + 5",
                                "nan",
                                "inf kg",
                                "1e3",
                                "0x10",
                                ".",
                                "g",
                                "kg 5",
                                "5 g g",
                                "5 %s%n",
                                "\xff"
                                "5",
                                "5\xff",
                                "5 kg/",
                                "5;6",
                                "1/0",
                                "1//2",
                                "9/8",
                                "1/99",
                                "∞",
                                "½",
                                "5 stones",
                                "5 gr",
                                ",",
                                "5 g5",
                                "٣",
                                "5 k",
                                "(5)",
                                "5*2" };
  g_autofree char *garbage = g_strnfill (100000, 'x');
  g_autofree char *pluses = g_strnfill (100000, '+');

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    assert_refuses (FM_MEASURE_MASS, &metric, texts[i], "");
  assert_refuses (FM_MEASURE_MASS, &metric, "", "is blank");
  assert_refuses (FM_MEASURE_MASS, &metric, NULL, "is blank");
  assert_refuses (FM_MEASURE_MASS, &metric, garbage, "not a number");
  assert_refuses (FM_MEASURE_MASS, &metric, pluses, "not a number");
}

static void
test_range_is_told_in_the_shown_unit (void)
{
  const FmMeasureRange mass = { FM_MEASURE_MASS, NULL, NULL, FM_G_PER_OZ, 16.0 * FM_G_PER_OZ };
  const FmMeasureRange open = { FM_MEASURE_MASS, "Mass", NULL, 0.0, G_MAXDOUBLE };
  g_autofree char *huge = g_strnfill (400, '9');
  g_autoptr (GError) error = NULL;
  double value = 0.0;

  g_assert_false (fm_measure_parse ("2 lb", &mass, &us, &value, &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE);
  g_assert_nonnull (strstr (error->message, "from 1 to 16"));
  g_clear_error (&error);
  g_assert_false (fm_measure_parse (huge, &open, &us, &value, &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE);
}

static void
assert_text (char *text, const char *expected)
{
  g_assert_cmpstr (text, ==, expected);
  g_free (text);
}

static void
test_shows (void)
{
  assert_text (fm_measure_to_edit (FM_MEASURE_MASS, &metric, 600.0, 1), "600");
  assert_text (fm_measure_to_edit (FM_MEASURE_MASS, &us, 566.9904625, 1), "20");
  assert_text (fm_measure_to_edit (FM_MEASURE_MASS, &us, 100.0, 1), "3.53");
  assert_text (fm_measure_to_edit (FM_MEASURE_TEMPERATURE, &us, 71.1, 1), "160");
  assert_text (fm_measure_to_edit (FM_MEASURE_CLOCK, &us, 270.0, 1), "4:30");
  assert_text (fm_measure_to_edit (FM_MEASURE_CLOCK, &us, 65.5, 1), "1:05.5");
  assert_text (fm_measure_to_edit (FM_MEASURE_CLOCK, &us, 59.99, 1), "1:00");
  assert_text (fm_measure_to_edit (FM_MEASURE_PRICE, &us, 10.0, 2), "10");
  assert_text (fm_measure_to_edit (FM_MEASURE_CLOCK, &us, NAN, 1), "");
  assert_text (fm_measure_format (FM_MEASURE_MASS, &metric, 180.0, 1), "180.0" NO_BREAK_SPACE "g");
  assert_text (fm_measure_format (FM_MEASURE_MASS, &us, 180.0, 1), "6.35" NO_BREAK_SPACE "oz");
  assert_text (fm_measure_format (FM_MEASURE_MASS, &us, 1000.0, 0), "2.20" NO_BREAK_SPACE "lb");
  assert_text (fm_measure_format (FM_MEASURE_MASS, &us, NAN, 0), "—");
  assert_text (fm_measure_format_cell (FM_MEASURE_MASS, &us, 1000.0, 0), "35.3");
  assert_text (fm_measure_format_cell (FM_MEASURE_CLOCK, &us, 30.0, 0), "0:30");
  assert_text (fm_measure_format (FM_MEASURE_PRICE, &us, 10.0, 2),
               "10.00" NO_BREAK_SPACE "$ per kg");
  assert_text (fm_measure_format (FM_MEASURE_PRICE, &metric, 10.0, 2),
               "10.00" NO_BREAK_SPACE "€ per kg");
  assert_text (fm_measure_format (FM_MEASURE_NUMBER, &us, 10.0, 0), "10");
}

static void
test_units (void)
{
  assert_text (fm_measure_unit (FM_MEASURE_MASS, &metric), "g");
  assert_text (fm_measure_unit (FM_MEASURE_MASS, &us), "oz");
  assert_text (fm_measure_unit (FM_MEASURE_TEMPERATURE, &metric), "°C");
  assert_text (fm_measure_unit (FM_MEASURE_TEMPERATURE, &us), "°F");
  assert_text (fm_measure_unit (FM_MEASURE_TEMPERATURE_STEP, &metric), "K");
  assert_text (fm_measure_unit (FM_MEASURE_TEMPERATURE_STEP, &us), "°F");
  assert_text (fm_measure_unit (FM_MEASURE_LENGTH, &us), "mm");
  assert_text (fm_measure_unit (FM_MEASURE_MINUTES, &us), "min");
  assert_text (fm_measure_unit (FM_MEASURE_NUMBER, &us), "");
  g_assert_cmpfloat (fm_measure_from_shown (FM_MEASURE_TEMPERATURE, &us, 32.0), ==, 0.0);
  g_assert_cmpfloat (fm_measure_from_shown (FM_MEASURE_CLOCK, &us, 2.0), ==, 120.0);
  g_assert_cmpint (fm_measure_decimals (FM_MEASURE_MASS, &us, 1), ==, 2);
  g_assert_cmpint (fm_measure_decimals (FM_MEASURE_MASS, &metric, 1), ==, 1);
}

static void
test_edit_text_reads_back (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (815);

  for (guint i = 0; i < 4000; i++) {
    const FmMeasure measure = g_rand_int_range (rand, FM_MEASURE_NUMBER, FM_MEASURE_PRICE + 1);
    const FmUnits *units = i % 2 == 0 ? &metric : &us;
    const double shown = g_rand_int_range (rand, 0, 1000000) / 1000.0;
    const double value = fm_measure_from_shown (measure, units, shown);
    g_autofree char *text = fm_measure_to_edit (measure, units, value, 3);

    if (measure != FM_MEASURE_CLOCK)
      assert_reads (measure, units, text, value);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/measure/masses", test_masses);
  g_test_add_func ("/measure/sums", test_sums);
  g_test_add_func ("/measure/two-readings", test_refuses_what_has_two_readings);
  g_test_add_func ("/measure/temperatures", test_temperatures);
  g_test_add_func ("/measure/lengths-and-times", test_lengths_and_times);
  g_test_add_func ("/measure/prices", test_prices);
  g_test_add_func ("/measure/own-unit", test_own_unit);
  g_test_add_func ("/measure/hostile-texts", test_hostile_texts);
  g_test_add_func ("/measure/range", test_range_is_told_in_the_shown_unit);
  g_test_add_func ("/measure/shows", test_shows);
  g_test_add_func ("/measure/units", test_units);
  g_test_add_func ("/measure/edit-text-reads-back", test_edit_text_reads_back);
  return g_test_run ();
}
