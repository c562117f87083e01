/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-measure.c - reads a typed measure: numbers, units, fractions, times and sums */
#include "core/base/fm-measure-private.h"

#include <glib/gi18n-lib.h>
#include <locale.h>
#include <math.h>
#include <string.h>

#include "core/base/fm-error.h"
#include "core/base/fm-number.h"

#define MINUS_SIGN "\xe2\x88\x92"
#define LARGEST_DENOMINATOR 64.0
#define MOST_QUOTED_CHARS 30

typedef struct {
  const char *at; /* what is still to be read */
  const char *text;
  const FmMeasureRange *range;
  const FmUnits *units;
  guint n_terms;
  guint n_bare;
  guint n_written;
  gboolean other_unit; /* one was written that bare numbers are not in */
} Reader;

/* One number with the unit behind it. */
typedef struct {
  double number;
  double factor;
  gboolean bare;
} Part;

/* Blanks of any kind at the end go. */
static void
strip_end (char *text)
{
  char *end = text + strlen (text);

  while (end > text && g_unichar_isspace (g_utf8_get_char (g_utf8_prev_char (end))))
    end = g_utf8_prev_char (end);
  *end = '\0';
}

static void
skip_blanks (Reader *self)
{
  while (*self->at != '\0' && g_unichar_isspace (g_utf8_get_char (self->at)))
    self->at = g_utf8_next_char (self->at);
}

static gboolean
fail_text (const Reader *self, GError **error)
{
  return fm_number_fail_text (self->text, self->range->what, error);
}

static gboolean
fail (const Reader *self, const char *hint, GError **error)
{
  const glong n_chars = g_utf8_strlen (self->text, -1);
  g_autofree char *start = g_utf8_substring (self->text, 0, MIN (MOST_QUOTED_CHARS, n_chars));

  /* TRANSLATORS: quantity, what was typed, what to do about it */
  g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_NOT_A_NUMBER, _ ("%s: “%s” cannot be read. %s"),
               self->range->what, start, hint);
  return FALSE;
}

static gboolean
fail_unit (const Reader *self, GError **error)
{
  const char *list = fm_measure_unit_list (self->range->measure);
  g_autofree char *hint = NULL;

  if (list == NULL)
    return fail_text (self, error);
  /* TRANSLATORS: a list of units, as in "g, kg, oz, lb" */
  hint = g_strdup_printf (_ ("Units that fit: %s."), list);
  return fail (self, hint, error);
}

/* Length of a character that may stand inside a number, 0 when the number ends here. */
static gsize
match_number_char (const char *at)
{
  const char *const marks[] = { "'", "\xe2\x80\x99", "\xc2\xa0", "\xe2\x80\xaf", "\xe2\x80\x89" };
  const char *local = localeconv ()->decimal_point;

  if (g_ascii_isdigit (*at) || *at == '.' || *at == ',')
    return 1;
  if (local[0] != '\0' && g_str_has_prefix (at, local))
    return strlen (local);
  for (gsize i = 0; i < G_N_ELEMENTS (marks); i++)
    if (g_str_has_prefix (at, marks[i]) && g_ascii_isdigit (at[strlen (marks[i])]))
      return strlen (marks[i]);
  return 0;
}

static gboolean
read_decimal (Reader *self, double *number, GError **error)
{
  const char *start = self->at;
  g_autofree char *token = NULL;
  gsize length;

  while ((length = match_number_char (self->at)) > 0)
    self->at += length;
  if (self->at == start || !(g_ascii_isdigit (start[0]) || g_ascii_isdigit (start[1])))
    return fail_text (self, error);
  token = g_strndup (start, (gsize)(self->at - start));
  return fm_number_parse (token, self->range->what, 0.0, G_MAXDOUBLE, number, error);
}

/* The "1/8" of "1/8 in" or "1 1/2 lb"; FALSE when there is none. "80/20" is no fraction. */
static gboolean
match_fraction (Reader *self, const char *at, double *fraction)
{
  char *end = NULL;
  double above;
  double below;

  if (!g_ascii_isdigit (*at))
    return FALSE;
  above = (double)g_ascii_strtoull (at, &end, 10);
  if (*end != '/' || !g_ascii_isdigit (end[1]))
    return FALSE;
  below = (double)g_ascii_strtoull (end + 1, &end, 10);
  if (!(above < below) || below > LARGEST_DENOMINATOR || match_number_char (end) > 0)
    return FALSE;
  *fraction = above / below;
  self->at = end;
  return TRUE;
}

static gboolean
read_number (Reader *self, double *number, GError **error)
{
  const FmMeasure measure = self->range->measure;
  const gboolean has_fractions = measure == FM_MEASURE_MASS || measure == FM_MEASURE_LENGTH;
  const char *end;
  double fraction = 0.0;

  if (has_fractions && match_fraction (self, self->at, number))
    return TRUE;
  if (!read_decimal (self, number, error))
    return FALSE;
  end = self->at;
  skip_blanks (self);
  if (has_fractions && self->at > end && *number == floor (*number) &&
      match_fraction (self, self->at, &fraction))
    *number += fraction;
  else
    self->at = end;
  return TRUE;
}

/* The ":30" of "4:30", as a part of a minute. */
static gboolean
read_seconds (Reader *self, double *minutes, GError **error)
{
  double seconds = 0.0;

  self->at++;
  if (!read_decimal (self, &seconds, error))
    return FALSE;
  if (seconds >= 60.0 || *minutes != floor (*minutes))
    return fail (self, _ ("Type minutes:seconds, as in 4:30, or minutes."), error);
  *minutes += seconds / 60.0;
  return TRUE;
}

static gboolean
has_other_currency (const char *text)
{
  for (; *text != '\0'; text = g_utf8_next_char (text))
    if (g_unichar_type (g_utf8_get_char (text)) == G_UNICODE_CURRENCY_SYMBOL)
      return TRUE;
  return FALSE;
}

/* What stands between a number and the next number, sign or end. */
static char *
take_unit_name (Reader *self)
{
  const char *start = self->at;

  while (*self->at != '\0' && *self->at != '+' && *self->at != '-' && *self->at != ':' &&
         !g_str_has_prefix (self->at, MINUS_SIGN) && !g_ascii_isdigit (*self->at))
    self->at = g_utf8_next_char (self->at);
  return g_strstrip (g_strndup (start, (gsize)(self->at - start)));
}

static gboolean
is_bare (const Reader *self, const char *name)
{
  const char *own = self->range->own_unit;

  if (name[0] == '\0')
    return TRUE;
  if (self->range->measure == FM_MEASURE_PRICE && g_str_equal (name, self->units->currency))
    return TRUE;
  return self->range->measure == FM_MEASURE_NUMBER && own != NULL && g_str_equal (name, own);
}

static gboolean
read_unit (Reader *self, Part *part, GError **error)
{
  g_autofree char *name = take_unit_name (self);
  const double shown_factor = fm_measure_shown_factor (self->range->measure, self->units);

  part->bare = is_bare (self, name);
  part->factor = shown_factor;
  if (part->bare) {
    self->n_bare++;
    return TRUE;
  }
  if (!fm_measure_find_unit (self->range->measure, name, self->units->currency, &part->factor)) {
    if (self->range->measure == FM_MEASURE_PRICE && has_other_currency (name))
      return fail (self, _ ("Amounts are not converted: type them in the notebook's currency."),
                   error);
    return fail_unit (self, error);
  }
  self->n_written++;
  self->other_unit |= part->factor != shown_factor;
  return TRUE;
}

static void
skip_currency (Reader *self)
{
  const char *sign = self->units->currency;

  if (self->range->measure != FM_MEASURE_PRICE || sign[0] == '\0' ||
      !g_str_has_prefix (self->at, sign))
    return;
  self->at += strlen (sign);
  skip_blanks (self);
}

static gboolean
read_part (Reader *self, Part *part, GError **error)
{
  const FmMeasure measure = self->range->measure;
  const gboolean is_time = measure == FM_MEASURE_CLOCK || measure == FM_MEASURE_MINUTES;

  skip_currency (self);
  if (!read_number (self, &part->number, error))
    return FALSE;
  if (is_time && *self->at == ':' && !read_seconds (self, &part->number, error))
    return FALSE;
  return read_unit (self, part, error);
}

/* "1 lb 4 oz": each unit is smaller than the one before. */
static gboolean
read_term (Reader *self, double sign, double *total, GError **error)
{
  Part part = { 0.0, 0.0, FALSE };
  double factor_before = INFINITY;

  do {
    if (!read_part (self, &part, error))
      return FALSE;
    if (isfinite (factor_before) && self->range->measure == FM_MEASURE_NUMBER)
      return fail_text (self, error);
    if (part.factor >= factor_before || (isfinite (factor_before) && part.bare))
      return fail (self, _ ("Type the unit of each number, the largest first."), error);
    factor_before = part.bare ? 0.0 : part.factor;
    self->n_terms++;
    if (self->range->measure == FM_MEASURE_TEMPERATURE)
      *total += fm_measure_from_degrees (sign * part.number, part.factor);
    else
      *total += sign * part.number * part.factor;
  } while (match_number_char (self->at) > 0);
  return TRUE;
}

/* The sign of the next term; FALSE when none stands there. */
static gboolean
take_sign (Reader *self, double *sign)
{
  const gboolean is_minus = *self->at == '-' || g_str_has_prefix (self->at, MINUS_SIGN);

  *sign = is_minus ? -1.0 : 1.0;
  if (!is_minus && *self->at != '+')
    return FALSE;
  self->at += *self->at == '-' || *self->at == '+' ? 1 : strlen (MINUS_SIGN);
  skip_blanks (self);
  return TRUE;
}

static gboolean
read_sum (Reader *self, double *total, GError **error)
{
  double sign = 1.0;

  take_sign (self, &sign);
  if (!read_term (self, sign, total, error))
    return FALSE;
  while (take_sign (self, &sign)) {
    /* "10-20" is more likely a range than a difference; a tare is taken off a mass. */
    if (sign < 0.0 && self->range->measure != FM_MEASURE_MASS)
      return fail_text (self, error);
    if (!read_term (self, sign, total, error))
      return FALSE;
  }
  if (*self->at != '\0')
    return fail_text (self, error);
  if (self->range->measure == FM_MEASURE_TEMPERATURE && self->n_terms > 1)
    return fail (self, _ ("Type one temperature."), error);
  if (self->n_bare > 0 && self->n_written > 0 && self->other_unit)
    return fail (self, _ ("Type the unit of each number or of none."), error);
  return TRUE;
}

static gboolean
check_range (const FmMeasureRange *range, const FmUnits *units, double value, GError **error)
{
  const double ends[] = { range->min, range->max, value };
  double shown[G_N_ELEMENTS (ends)];

  if (isfinite (value) && value >= range->min && value <= range->max)
    return TRUE;
  for (guint i = 0; i < G_N_ELEMENTS (ends); i++)
    shown[i] = fabs (ends[i]) < G_MAXDOUBLE ? fm_measure_to_shown (range->measure, units, ends[i])
                                            : ends[i];
  return fm_number_fail_range (shown[2], range->what, shown[0], shown[1], error);
}

gboolean
fm_measure_parse (const char *text,
                  const FmMeasureRange *range,
                  const FmUnits *units,
                  double *value,
                  GError **error)
{
  g_autofree char *valid = g_utf8_make_valid (text != NULL ? text : "", -1);
  Reader reader = { .at = valid, .units = units };
  FmMeasureRange named = *range;
  double total = 0.0;

  if (named.what == NULL)
    named.what = _ ("The value");
  reader.range = &named;
  skip_blanks (&reader);
  strip_end (valid);
  reader.text = reader.at;
  if (!read_sum (&reader, &total, error) || !check_range (&named, units, total, error))
    return FALSE;
  *value = total;
  return TRUE;
}
