/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-measure-unit.c - the units of measures, their factors and how a value is shown in them */
#include "core/base/fm-measure-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "core/base/fm-number.h"
#include "core/base/fm-units.h"

#define KG_PER_LB (FM_G_PER_LB / 1000.0)
#define KG_PER_OZ (FM_G_PER_OZ / 1000.0)
#define K_PER_DEGREE_F (1.0 / 1.8)

/* Names in lower case, between blanks. */
static const struct {
  FmMeasure measure;
  double factor;
  const char *names;
} unit_table[] = {
  { FM_MEASURE_MASS, 1.0, " g gram grams gramme grammes " },
  { FM_MEASURE_MASS, 1000.0, " kg kilo kilos kilogram kilograms kilogramme kilogrammes " },
  { FM_MEASURE_MASS, 0.001, " mg " },
  { FM_MEASURE_MASS, FM_G_PER_OZ, " oz ounce ounces " },
  { FM_MEASURE_MASS, FM_G_PER_LB, " lb lbs pound pounds " },
  { FM_MEASURE_TEMPERATURE, 1.0, " c celsius " },
  { FM_MEASURE_TEMPERATURE, K_PER_DEGREE_F, " f fahrenheit " },
  { FM_MEASURE_TEMPERATURE_STEP, 1.0, " k c celsius " },
  { FM_MEASURE_TEMPERATURE_STEP, K_PER_DEGREE_F, " f fahrenheit " },
  { FM_MEASURE_LENGTH, 1.0, " mm " },
  { FM_MEASURE_LENGTH, 10.0, " cm " },
  { FM_MEASURE_LENGTH, FM_MM_PER_INCH, " in inch inches \" \xe2\x80\xb3 " },
  { FM_MEASURE_MINUTES, 1.0, " min mins minute minutes " },
  { FM_MEASURE_MINUTES, 1.0 / 60.0, " s sec secs second seconds " },
  { FM_MEASURE_MINUTES, 60.0, " h hour hours " },
  { FM_MEASURE_CLOCK, 60.0, " min mins minute minutes " },
  { FM_MEASURE_CLOCK, 1.0, " s sec secs second seconds " },
  { FM_MEASURE_CLOCK, 3600.0, " h hour hours " },
  { FM_MEASURE_PRICE, 1.0, " /kg /kilo /kilogram " },
  { FM_MEASURE_PRICE, 1000.0, " /g /gram " },
  { FM_MEASURE_PRICE, 1.0 / KG_PER_LB, " /lb /pound " },
  { FM_MEASURE_PRICE, 1.0 / KG_PER_OZ, " /oz /ounce " },
};

static void
cut (GString *name, const char *part)
{
  if (part[0] != '\0')
    g_string_replace (name, part, "", 0);
}

/* "° F." and "$ per lb" as the table has them: "f", "/lb". */
static char *
plain_name (FmMeasure measure, const char *name, const char *currency)
{
  g_autofree char *lower = g_utf8_strdown (name, -1);
  g_autofree char *sign = g_utf8_strdown (currency, -1);
  g_autoptr (GString) plain = g_string_new (lower);

  if (measure == FM_MEASURE_PRICE) {
    cut (plain, sign);
    g_string_replace (plain, "per", "/", 0);
  }
  if (measure == FM_MEASURE_TEMPERATURE || measure == FM_MEASURE_TEMPERATURE_STEP) {
    cut (plain, "degrees");
    cut (plain, "deg.");
    cut (plain, "deg");
    cut (plain, "\xc2\xb0");
    cut (plain, "\xc2\xba");
  }
  cut (plain, " ");
  cut (plain, "\xc2\xa0");
  if (g_str_has_suffix (plain->str, "."))
    g_string_truncate (plain, plain->len - 1);
  return g_string_free (g_steal_pointer (&plain), FALSE);
}

gboolean
fm_measure_find_unit (FmMeasure measure, const char *name, const char *currency, double *factor)
{
  g_autofree char *plain = plain_name (measure, name, currency);
  g_autofree char *wanted = g_strconcat (" ", plain, " ", NULL);

  for (guint i = 0; i < G_N_ELEMENTS (unit_table); i++) {
    if (unit_table[i].measure == measure && strstr (unit_table[i].names, wanted) != NULL) {
      *factor = unit_table[i].factor;
      return TRUE;
    }
  }
  return FALSE;
}

const char *
fm_measure_unit_list (FmMeasure measure)
{
  switch (measure) {
  case FM_MEASURE_MASS:
    return "g, kg, oz, lb";
  case FM_MEASURE_TEMPERATURE:
    return "C, F";
  case FM_MEASURE_TEMPERATURE_STEP:
    return "K, F";
  case FM_MEASURE_LENGTH:
    return "mm, cm, in";
  case FM_MEASURE_MINUTES:
  case FM_MEASURE_CLOCK:
    return "s, min, h";
  case FM_MEASURE_PRICE:
    return "/kg, /lb";
  case FM_MEASURE_NUMBER:
    return NULL;
  }
  g_return_val_if_reached (NULL);
}

double
fm_measure_shown_factor (FmMeasure measure, const FmUnits *units)
{
  switch (measure) {
  case FM_MEASURE_MASS:
    return units->us_masses ? FM_G_PER_OZ : 1.0;
  case FM_MEASURE_TEMPERATURE:
  case FM_MEASURE_TEMPERATURE_STEP:
    return units->fahrenheit ? K_PER_DEGREE_F : 1.0;
  case FM_MEASURE_CLOCK:
    return 60.0;
  case FM_MEASURE_PRICE:
  case FM_MEASURE_NUMBER:
  case FM_MEASURE_LENGTH:
  case FM_MEASURE_MINUTES:
    return 1.0;
  }
  g_return_val_if_reached (1.0);
}

double
fm_measure_from_degrees (double number, double factor)
{
  return factor < 1.0 ? fm_fahrenheit_to_celsius (number) : number;
}

char *
fm_measure_unit (FmMeasure measure, const FmUnits *units)
{
  switch (measure) {
  case FM_MEASURE_MASS:
    return g_strdup (units->us_masses ? _ ("oz") : _ ("g"));
  case FM_MEASURE_TEMPERATURE:
    return g_strdup (units->fahrenheit ? "°F" : "°C");
  case FM_MEASURE_TEMPERATURE_STEP:
    return g_strdup (units->fahrenheit ? "°F" : "K");
  case FM_MEASURE_LENGTH:
    return g_strdup (_ ("mm"));
  case FM_MEASURE_MINUTES:
  case FM_MEASURE_CLOCK:
    return g_strdup (_ ("min"));
  case FM_MEASURE_PRICE:
    /* TRANSLATORS: a currency sign, as in "€ per kg" */
    return g_strdup_printf (_ ("%s per kg"), units->currency);
  case FM_MEASURE_NUMBER:
    return g_strdup ("");
  }
  g_return_val_if_reached (NULL);
}

double
fm_measure_to_shown (FmMeasure measure, const FmUnits *units, double value)
{
  if (measure == FM_MEASURE_TEMPERATURE)
    return units->fahrenheit ? fm_celsius_to_fahrenheit (value) : value;
  return value / fm_measure_shown_factor (measure, units);
}

double
fm_measure_from_shown (FmMeasure measure, const FmUnits *units, double shown)
{
  if (measure == FM_MEASURE_TEMPERATURE)
    return fm_measure_from_degrees (shown, fm_measure_shown_factor (measure, units));
  return shown * fm_measure_shown_factor (measure, units);
}

int
fm_measure_decimals (FmMeasure measure, const FmUnits *units, int decimals)
{
  /* An ounce is some thirty grams: one place more says about as much. */
  return measure == FM_MEASURE_MASS && units->us_masses ? decimals + 1 : decimals;
}

static char *
clock_text (double time_s)
{
  const double whole_s = round (time_s * 10.0) / 10.0;
  const int minutes = (int)(whole_s / 60.0);
  g_autofree char *seconds = fm_number_to_edit (whole_s - 60.0 * minutes, 1);

  return g_strdup_printf ("%d:%s%s", minutes, whole_s - 60.0 * minutes < 10.0 ? "0" : "", seconds);
}

char *
fm_measure_to_edit (FmMeasure measure, const FmUnits *units, double value, int decimals)
{
  if (measure == FM_MEASURE_CLOCK && isfinite (value))
    return clock_text (value);
  return fm_number_to_edit (fm_measure_to_shown (measure, units, value),
                            fm_measure_decimals (measure, units, decimals));
}

char *
fm_measure_format_cell (FmMeasure measure, const FmUnits *units, double value, int decimals)
{
  if (measure == FM_MEASURE_CLOCK && isfinite (value))
    return clock_text (value);
  return fm_number_format (fm_measure_to_shown (measure, units, value),
                           fm_measure_decimals (measure, units, decimals));
}

char *
fm_measure_format (FmMeasure measure, const FmUnits *units, double value, int decimals)
{
  g_autofree char *number = NULL;
  g_autofree char *unit = NULL;

  if (measure == FM_MEASURE_MASS && units->us_masses && fabs (value) >= FM_G_PER_LB)
    return fm_number_format_unit (value / FM_G_PER_LB, 2, _ ("lb"));
  number = fm_measure_format_cell (measure, units, value, decimals);
  unit = fm_measure_unit (measure, units);
  if (!isfinite (value) || unit[0] == '\0')
    return g_steal_pointer (&number);
  return g_strconcat (number, "\xc2\xa0", unit, NULL);
}
