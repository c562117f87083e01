/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-probe.c - temperatures from a probe that speaks lines of text */
#include "core/kitchen/fm-probe.h"

#include <math.h>
#include <string.h>

#include "core/base/fm-number.h"
#include "core/base/fm-units.h"
#include "core/experiment/fm-experiment.h"

static gboolean
parse_number (const char *text, double min, double max, double *value)
{
  return fm_number_parse (text, "", min, max, value, NULL);
}

/* Seconds, or minutes:seconds. */
static gboolean
parse_time (const char *text, double *time_s)
{
  g_auto (GStrv) parts = g_strsplit (text, ":", 2);
  double minutes = 0.0;

  if (parts[0] == NULL)
    return FALSE;
  if (parts[1] == NULL)
    return parse_number (parts[0], 0.0, FM_MAX_READING_S, time_s);
  if (!parse_number (parts[0], 0.0, FM_MAX_READING_S / 60.0, &minutes) ||
      !parse_number (parts[1], 0.0, 59.999, time_s))
    return FALSE;
  *time_s += minutes * 60.0;
  return TRUE;
}

/* Takes a unit off the end. Returns: TRUE for Fahrenheit. */
static gboolean
take_unit (char *text)
{
  gsize length = strlen (text);
  const gboolean fahrenheit = length > 0 && g_ascii_toupper (text[length - 1]) == 'F';

  if (!fahrenheit && !(length > 0 && g_ascii_toupper (text[length - 1]) == 'C'))
    return FALSE;
  text[length - 1] = '\0';
  if (g_str_has_suffix (text, "°"))
    text[strlen (text) - strlen ("°")] = '\0';
  g_strchomp (text);
  return fahrenheit;
}

/* The words of @text, without the empty ones between two blanks. */
static char **
split (const char *text)
{
  g_auto (GStrv) parts = g_strsplit_set (text, " \t;", -1);
  g_autoptr (GStrvBuilder) words = g_strv_builder_new ();

  for (guint i = 0; parts[i] != NULL; i++)
    if (parts[i][0] != '\0')
      g_strv_builder_add (words, parts[i]);
  return g_strv_builder_end (words);
}

gboolean
fm_probe_parse_line (const char *line, double *time_s, double *temp_c)
{
  g_autofree char *text = g_strstrip (g_strdup (line));
  const gboolean fahrenheit = g_utf8_validate (text, -1, NULL) && take_unit (text);
  g_auto (GStrv) words = split (text);
  const guint n = g_strv_length (words);
  double time = NAN;
  double temp;

  if (!g_utf8_validate (text, -1, NULL) || n == 0 || n > 2 ||
      (n == 2 && !parse_time (words[0], &time)) || !parse_number (words[n - 1], -1e3, 1e3, &temp))
    return FALSE;
  if (fahrenheit)
    temp = fm_fahrenheit_to_celsius (temp);
  if (!(temp >= FM_MIN_CORE_C && temp <= FM_MAX_CORE_C))
    return FALSE;
  *time_s = time;
  *temp_c = temp;
  return TRUE;
}

FmProbe *
fm_probe_new (void)
{
  FmProbe *self = g_new0 (FmProbe, 1);

  self->rest = g_string_new (NULL);
  return self;
}

void
fm_probe_free (FmProbe *self)
{
  if (self == NULL)
    return;
  g_string_free (self->rest, TRUE);
  g_free (self);
}

static gboolean
is_blank (const char *line)
{
  while (g_ascii_isspace (*line))
    line++;
  return *line == '\0';
}

static void
end_line (FmProbe *self, FmProbeFunc func, gpointer data)
{
  double time_s, temp_c;

  if (self->skip || strlen (self->rest->str) != self->rest->len) {
    self->n_refused++;
  } else if (!is_blank (self->rest->str)) {
    if (fm_probe_parse_line (self->rest->str, &time_s, &temp_c)) {
      self->n_good++;
      func (time_s, temp_c, data);
    } else {
      self->n_refused++;
    }
  }
  self->skip = FALSE;
  g_string_truncate (self->rest, 0);
}

void
fm_probe_feed (FmProbe *self, const char *bytes, gsize n, FmProbeFunc func, gpointer data)
{
  for (gsize i = 0; i < n; i++) {
    if (bytes[i] == '\n' || bytes[i] == '\r') {
      end_line (self, func, data);
    } else if (self->rest->len < FM_PROBE_MAX_LINE) {
      g_string_append_c (self->rest, bytes[i]);
    } else {
      self->skip = TRUE;
    }
  }
}
