/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-experiment-readings.c - core readings as a cook types them, one "time temperature" a line */
#include "core/experiment/fm-experiment.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "core/base/fm-error.h"
#include "core/base/fm-number.h"
#include "core/base/fm-units.h"

#define MAX_MINUTES (FM_MAX_READING_S / 60.0)

/* "4:30" (minutes:seconds), "4.5" or "4,5" (minutes). */
static gboolean
parse_time (const char *text, double *time_s, GError **error)
{
  const char *colon = strchr (text, ':');
  double minutes = 0;
  double seconds = 0;

  if (colon == NULL) {
    if (!fm_number_parse (text, _ ("The time"), 0, MAX_MINUTES, &minutes, error))
      return FALSE;
  } else {
    g_autofree char *before = g_strndup (text, (gsize)(colon - text));
    if (!fm_number_parse (before, _ ("The minutes"), 0, MAX_MINUTES, &minutes, error) ||
        !fm_number_parse (colon + 1, _ ("The seconds"), 0, 59.999, &seconds, error))
      return FALSE;
    if (minutes != floor (minutes)) {
      g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_NOT_A_NUMBER,
                           _ ("Write the time as minutes:seconds (4:30) or as minutes (4.5)."));
      return FALSE;
    }
  }
  *time_s = minutes * 60.0 + seconds;
  return TRUE;
}

/* Cuts a written unit off the end and lets it decide over @fahrenheit. */
static void
take_unit (char *text, gboolean *fahrenheit)
{
  const struct {
    const char *suffix;
    gboolean fahrenheit;
  } units[] = { { "°C", FALSE }, { "°F", TRUE }, { "C", FALSE }, { "F", TRUE } };

  for (guint i = 0; i < G_N_ELEMENTS (units); i++)
    if (g_str_has_suffix (text, units[i].suffix)) {
      text[strlen (text) - strlen (units[i].suffix)] = '\0';
      *fahrenheit = units[i].fahrenheit;
      return;
    }
}

static gboolean
parse_temp (char *text, gboolean fahrenheit, double *temp_c, GError **error)
{
  double temp;

  take_unit (text, &fahrenheit);
  if (!fm_number_parse (text, _ ("The temperature"), -1e6, 1e6, &temp, error))
    return FALSE;
  *temp_c = fahrenheit ? fm_fahrenheit_to_celsius (temp) : temp;
  if (*temp_c >= FM_MIN_CORE_C && *temp_c <= FM_MAX_CORE_C)
    return TRUE;
  g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
               fahrenheit ? _ ("%s °F cannot be a core temperature. Is it in °C?")
                          : _ ("%s °C cannot be a core temperature. Is it in °F?"),
               text);
  return FALSE;
}

/* The fields of a line: blanks or semicolons part them, a comma at the end of one is dropped. */
static GPtrArray *
split_line (const char *line)
{
  GPtrArray *fields = g_ptr_array_new_with_free_func (g_free);
  g_auto (GStrv) parts = g_strsplit_set (line, " \t;\r", -1);

  for (guint i = 0; parts[i] != NULL; i++) {
    g_autofree char *field = g_strdup (parts[i]);
    if (g_str_has_suffix (field, ","))
      field[strlen (field) - 1] = '\0';
    if (*field != '\0')
      g_ptr_array_add (fields, g_steal_pointer (&field));
  }
  return fields;
}

static gboolean
parse_line (const char *line, gboolean fahrenheit, FmCoreReading *reading, GError **error)
{
  g_autoptr (GPtrArray) fields = split_line (line);
  gboolean unit_apart = fields->len == 3 && strpbrk (fields->pdata[2], "0123456789") == NULL;

  if (fields->len != 2 && !unit_apart) {
    g_set_error_literal (
        error, FM_CORE_ERROR, FM_CORE_ERROR_NOT_A_NUMBER,
        _ ("Write a time and a temperature on each line, for instance “4:30 62.5”."));
    return FALSE;
  }
  g_autofree char *temp =
      g_strconcat (fields->pdata[1], unit_apart ? fields->pdata[2] : NULL, NULL);
  return parse_time (fields->pdata[0], &reading->time_s, error) &&
         parse_temp (temp, fahrenheit, &reading->temp_c, error);
}

int
fm_core_reading_compare (gconstpointer a, gconstpointer b)
{
  double time_a = ((const FmCoreReading *)a)->time_s;
  double time_b = ((const FmCoreReading *)b)->time_s;

  return (time_a > time_b) - (time_a < time_b);
}

gboolean
fm_experiment_check_n_readings (guint n_readings, GError **error)
{
  if (n_readings <= FM_MAX_READINGS)
    return TRUE;

  g_autofree char *n = fm_number_format (n_readings, 0);
  g_autofree char *limit = fm_number_format (FM_MAX_READINGS, 0);
  g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
               /* TRANSLATORS: Both are numbers. */
               _ ("These would be %s core readings; an experiment takes %s. Leave some out, for "
                  "instance all but one every ten seconds."),
               n, limit);
  return FALSE;
}

gboolean
fm_experiment_parse_readings (FmExperiment *self,
                              const char *text,
                              gboolean fahrenheit,
                              GError **error)
{
  g_autoptr (GArray) readings = g_array_new (FALSE, FALSE, sizeof (FmCoreReading));
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);

  for (guint i = 0; lines[i] != NULL; i++) {
    FmCoreReading reading;
    g_autofree char *line = g_strstrip (g_strdup (lines[i]));
    if (*line == '\0')
      continue;
    if (!parse_line (line, fahrenheit, &reading, error)) {
      g_prefix_error (error, _ ("Line %u: "), i + 1);
      return FALSE;
    }
    g_array_append_val (readings, reading);
  }
  if (!fm_experiment_check_n_readings (self->core_readings->len + readings->len, error))
    return FALSE;
  if (readings->len > 0)
    g_array_append_vals (self->core_readings, readings->data, readings->len);
  /* g_array_sort() is stable, so two probes at the same time keep their order. */
  g_array_sort (self->core_readings, fm_core_reading_compare);
  return TRUE;
}
