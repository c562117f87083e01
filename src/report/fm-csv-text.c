/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-csv-text.c */
#include "report/fm-csv-text.h"

#include <math.h>
#include <string.h>

void
fm_csv_append_text (GString *csv, const char *text)
{
  g_string_append_c (csv, '"');
  /* Names come from people; a spreadsheet would run what starts with these signs. */
  if (text[0] != '\0' && strchr ("=+-@\t\r", text[0]) != NULL)
    g_string_append_c (csv, '\'');
  for (const char *c = text; *c != '\0'; c++) {
    if (*c == '"')
      g_string_append_c (csv, '"');
    g_string_append_c (csv, *c);
  }
  g_string_append_c (csv, '"');
}

void
fm_csv_append_number (GString *csv, double value, int decimals)
{
  char format[16];
  char buffer[G_ASCII_DTOSTR_BUF_SIZE];

  if (isnan (value))
    return;
  g_snprintf (format, sizeof format, "%%.%df", decimals);
  g_string_append (csv, g_ascii_formatd (buffer, sizeof buffer, format, value));
}
