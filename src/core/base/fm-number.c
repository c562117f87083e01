/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-number.c - numbers as a cook types and reads them */
#include "core/base/fm-number.h"

#include "core/base/fm-error.h"

#include <glib/gi18n-lib.h>
#include <locale.h>
#include <math.h>
#include <string.h>

#define EM_DASH "\xe2\x80\x94"
#define NO_BREAK_SPACE "\xc2\xa0"
#define NARROW_NO_BREAK_SPACE "\xe2\x80\xaf"
#define THIN_SPACE "\xe2\x80\x89"
#define MINUS_SIGN "\xe2\x88\x92"
#define MAX_DECIMALS 15
#define MAX_QUOTED_CHARS 30

/* What a number looks like once its parts are told apart. */
typedef struct {
  GString *plain; /* the same number as the C locale writes it */
  guint n_integer_digits;
  guint n_decimals;
  guint n_separators;
  gboolean foreign_separator; /* not the decimal separator of the locale */
} Scan;

static const char *
decimal_separator (void)
{
  const char *point = localeconv ()->decimal_point;
  return point && *point ? point : ".";
}

/* Length of the decimal separator at @text, 0 when there is none. */
static gsize
match_separator (const char *text, gboolean *foreign)
{
  const char *local = decimal_separator ();
  if (g_str_has_prefix (text, local)) {
    *foreign = FALSE;
    return strlen (local);
  }
  if (*text == '.' || *text == ',') {
    *foreign = TRUE;
    return 1;
  }
  return 0;
}

static const char *
scan_sign (const char *text, GString *plain)
{
  if (g_str_has_prefix (text, MINUS_SIGN)) {
    g_string_append_c (plain, '-');
    return text + strlen (MINUS_SIGN);
  }
  if (*text == '-')
    g_string_append_c (plain, '-');
  return *text == '-' || *text == '+' ? text + 1 : text;
}

/* Digits with at most one separator; FALSE when anything else is among them. */
static gboolean
scan_number (const char *text, Scan *scan)
{
  const char *at = scan_sign (text, scan->plain);
  while (*at) {
    gsize length = match_separator (at, &scan->foreign_separator);
    if (length > 0) {
      scan->n_separators++;
      g_string_append_c (scan->plain, '.');
      at += length;
      continue;
    }
    if (!g_ascii_isdigit (*at))
      return FALSE;
    if (scan->n_separators == 0)
      scan->n_integer_digits++;
    else
      scan->n_decimals++;
    g_string_append_c (scan->plain, *at++);
  }
  return scan->n_separators <= 1 && scan->n_integer_digits + scan->n_decimals > 0;
}

/* "1,234" where the locale writes a point may mean 1234 as well as 1.234. */
static gboolean
scan_is_ambiguous (const Scan *scan)
{
  const char *first = scan->plain->str;
  if (*first == '-')
    first++;
  return scan->n_separators == 1 && scan->foreign_separator && scan->n_decimals == 3 &&
         scan->n_integer_digits >= 1 && scan->n_integer_digits <= 3 && *first != '0';
}

/* A mark between groups of three digits: its length, 0 when there is none. */
static gsize
match_group_mark (const char *text)
{
  const char *const marks[] = {
    ".", ",", "'", "\xe2\x80\x99", NO_BREAK_SPACE, NARROW_NO_BREAK_SPACE, THIN_SPACE
  };
  for (gsize i = 0; i < G_N_ELEMENTS (marks); i++)
    if (g_str_has_prefix (text, marks[i]))
      return strlen (marks[i]);
  return 0;
}

static gsize
count_digits (const char *text)
{
  gsize n = 0;
  while (g_ascii_isdigit (text[n]))
    n++;
  return n;
}

/* Takes the marks out of "1.234,5", "1,234.5", "1'234" and "1,234,567": a mark that comes twice or
 * before another one parts no decimals. Any other text comes back as it is. */
static char *
drop_group_marks (const char *text)
{
  g_autoptr (GString) bare = g_string_new (NULL);
  const char *at = scan_sign (text, bare);
  gsize n_digits = count_digits (at);
  const gsize mark = match_group_mark (at + n_digits);
  const char *first = at + n_digits;
  guint n_groups = 0;
  gboolean foreign;
  if (n_digits < 1 || n_digits > 3 || *at == '0' || mark == 0)
    return g_strdup (text);
  g_string_append_len (bare, at, (gssize)n_digits);
  for (at = first; strncmp (at, first, mark) == 0 && count_digits (at + mark) == 3;
       at += mark + 3) {
    g_string_append_len (bare, at + mark, 3);
    n_groups++;
  }
  const gsize separator = strncmp (at, first, mark) != 0 ? match_separator (at, &foreign) : 0;
  const gboolean has_decimals = separator > 0 && count_digits (at + separator) > 0;
  if (n_groups == 0 || (*at != '\0' && !has_decimals) ||
      (match_separator (first, &foreign) > 0 && n_groups == 1 && !has_decimals))
    return g_strdup (text);
  g_string_append (bare, at);
  return g_string_free (g_steal_pointer (&bare), FALSE);
}

static char *
strip_blanks (const char *text)
{
  const char *start = text;
  const char *end = text + strlen (text);
  while (start < end && g_unichar_isspace (g_utf8_get_char (start)))
    start = g_utf8_next_char (start);
  while (end > start && g_unichar_isspace (g_utf8_get_char (g_utf8_prev_char (end))))
    end = g_utf8_prev_char (end);
  return g_strndup (start, (gsize)(end - start));
}

static char *
quote_start (const char *text)
{
  if (g_utf8_strlen (text, -1) <= MAX_QUOTED_CHARS)
    return g_strdup (text);
  g_autofree char *start = g_utf8_substring (text, 0, MAX_QUOTED_CHARS);
  return g_strconcat (start, "\xe2\x80\xa6", NULL);
}

gboolean
fm_number_fail_text (const char *text, const char *what, GError **error)
{
  g_autofree char *example = fm_number_to_edit (12.5, 1);
  if (*text == '\0') {
    /* Translators: quantity, example of a number */
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_NOT_A_NUMBER,
                 _ ("%s is blank. Type a number such as %s."), what, example);
    return FALSE;
  }
  g_autofree char *quoted = quote_start (text);
  /* Translators: quantity, what was typed, example of a number */
  g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_NOT_A_NUMBER,
               _ ("%s: “%s” is not a number. Type digits only, such as %s."), what, quoted,
               example);
  return FALSE;
}

static gboolean
fail_ambiguous (const char *text, const char *what, const Scan *scan, GError **error)
{
  double as_decimal = g_ascii_strtod (scan->plain->str, NULL);
  g_autofree char *small = fm_number_format (as_decimal, 3);
  g_autofree char *large = fm_number_format (as_decimal * 1000.0, 0);
  /* Translators: quantity, what was typed, its two readings */
  g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_NOT_A_NUMBER,
               _ ("%s: “%s” can be read in two ways. Type %s or %s."), what, text, large, small);
  return FALSE;
}

gboolean
fm_number_fail_range (double value, const char *what, double min, double max, GError **error)
{
  g_autofree char *low = fm_number_to_edit (min, 6);
  g_autofree char *high = fm_number_to_edit (max, 6);
  if (value < min && max >= G_MAXDOUBLE)
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("%s is too small. Type a number of at least %s."), what, low);
  else if (value < min)
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("%s is too small. Type a number from %s to %s."), what, low, high);
  else if (max >= G_MAXDOUBLE)
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("%s is too large. Type a smaller number."), what);
  else if (min <= -G_MAXDOUBLE)
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("%s is too large. Type a number of at most %s."), what, high);
  else
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("%s is too large. Type a number from %s to %s."), what, low, high);
  return FALSE;
}

gboolean
fm_number_parse (
    const char *text, const char *what, double min, double max, double *value, GError **error)
{
  g_autofree char *valid = g_utf8_make_valid (text ? text : "", -1);
  g_autofree char *stripped = strip_blanks (valid);
  g_autoptr (GString) plain = g_string_new (NULL);
  Scan scan = { .plain = plain };
  if (!what)
    what = _ ("The value");
  g_autofree char *bare = drop_group_marks (stripped);
  if (!scan_number (bare, &scan))
    return fm_number_fail_text (stripped, what, error);
  if (scan_is_ambiguous (&scan))
    return fail_ambiguous (stripped, what, &scan, error);
  double number = g_ascii_strtod (plain->str, NULL);
  if (!isfinite (number) || number < min || number > max)
    return fm_number_fail_range (number, what, min, max, error);
  *value = number;
  return TRUE;
}

char *
fm_number_format (double value, int decimals)
{
  if (!isfinite (value))
    return g_strdup (EM_DASH);
  char *text = g_strdup_printf ("%.*f", CLAMP (decimals, 0, MAX_DECIMALS), value);
  if (*text == '-' && !strpbrk (text, "123456789"))
    memmove (text, text + 1, strlen (text));
  return text;
}

char *
fm_number_format_unit (double value, int decimals, const char *unit)
{
  g_autofree char *number = fm_number_format (value, decimals);
  if (!isfinite (value) || !unit || *unit == '\0')
    return g_steal_pointer (&number);
  return g_strconcat (number, NO_BREAK_SPACE, unit, NULL);
}

char *
fm_number_to_edit (double value, int max_decimals)
{
  if (!isfinite (value))
    return g_strdup ("");
  char *text = fm_number_format (value, max_decimals);
  char *separator = strstr (text, decimal_separator ());
  if (!separator)
    return text;
  char *end = text + strlen (text);
  while (end[-1] == '0')
    end--;
  if (end == separator + strlen (decimal_separator ()))
    end = separator;
  *end = '\0';
  return text;
}
