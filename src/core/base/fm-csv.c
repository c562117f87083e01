/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-csv.c - reading a table of a spreadsheet (RFC 4180) */
#include "core/base/fm-csv.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "core/base/fm-error.h"

#define BYTE_ORDER_MARK "\xef\xbb\xbf"

typedef struct {
  const char *at;
  const char *end;
  char separator;
  guint line;
  GPtrArray *cells; /* of the row that is read */
} Reading;

char
fm_csv_guess_separator (const char *text)
{
  static const char signs[] = ";\t,";
  guint counts[sizeof signs - 1] = { 0 };
  guint best = G_N_ELEMENTS (counts) - 1;
  gboolean quoted = FALSE;

  for (; *text != '\0' && (quoted || *text != '\n'); text++) {
    const char *sign = strchr (signs, *text);

    quoted ^= *text == '"';
    if (!quoted && sign != NULL)
      counts[sign - signs]++;
  }
  for (guint i = G_N_ELEMENTS (counts); i > 0; i--)
    if (counts[i - 1] > counts[best])
      best = i - 1;
  return signs[best];
}

/* Behind the opening quote; FALSE when nothing closes it. */
static gboolean
read_quoted (Reading *self, GString *cell)
{
  for (; self->at < self->end; self->at++) {
    if (*self->at == '"') {
      self->at++;
      if (self->at == self->end || *self->at != '"')
        return TRUE;
    }
    self->line += *self->at == '\n';
    g_string_append_c (cell, *self->at);
  }
  return FALSE;
}

static gboolean
read_cell (Reading *self)
{
  g_autoptr (GString) cell = g_string_new (NULL);

  if (self->at < self->end && *self->at == '"') {
    self->at++;
    if (!read_quoted (self, cell))
      return FALSE;
  }
  while (self->at < self->end && *self->at != self->separator && *self->at != '\n')
    g_string_append_c (cell, *self->at++);
  if (cell->len > 0 && cell->str[cell->len - 1] == '\r')
    g_string_truncate (cell, cell->len - 1);
  g_ptr_array_add (self->cells, g_strdup (cell->str));
  return TRUE;
}

/* One row into @cells; the reading stands behind its end of line then. */
static gboolean
read_row (Reading *self, GError **error)
{
  const guint begin = self->line;

  g_ptr_array_set_size (self->cells, 0);
  for (;;) {
    if (!read_cell (self)) {
      g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_NOT_A_NUMBER,
                   _ ("Line %u: a quotation mark is never closed. Save the table anew."), begin);
      return FALSE;
    }
    if (self->at == self->end || *self->at++ == '\n')
      break;
  }
  self->line++;
  return TRUE;
}

static gboolean
is_blank (const GPtrArray *cells)
{
  for (guint i = 0; i < cells->len; i++)
    if (*(const char *)cells->pdata[i] != '\0')
      return FALSE;
  return TRUE;
}

static gboolean
check_utf8 (const char *text, gsize length, GError **error)
{
  const char *bad;
  guint line = 1;

  if (g_utf8_validate_len (text, length, &bad))
    return TRUE;
  for (const char *c = text; c < bad; c++)
    line += *c == '\n';
  g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_NOT_A_NUMBER,
               _ ("Line %u is not text in UTF-8. Save the table in that encoding."), line);
  return FALSE;
}

gboolean
fm_csv_read (const char *text,
             gsize length,
             char separator,
             FmCsvRowFunc func,
             gpointer data,
             GError **error)
{
  g_autoptr (GPtrArray) cells = g_ptr_array_new_with_free_func (g_free);
  Reading self = { text, text + length, separator, 1, cells };

  if (!check_utf8 (text, length, error))
    return FALSE;
  if (length >= strlen (BYTE_ORDER_MARK) &&
      memcmp (text, BYTE_ORDER_MARK, strlen (BYTE_ORDER_MARK)) == 0)
    self.at += strlen (BYTE_ORDER_MARK);
  while (self.at < self.end) {
    const guint line = self.line;
    gboolean goes_on = TRUE;

    if (!read_row (&self, error))
      return FALSE;
    if (is_blank (cells))
      continue;
    g_ptr_array_add (cells, NULL);
    goes_on = func (line, (const char *const *)cells->pdata, data, error);
    if (!goes_on)
      return FALSE;
  }
  return TRUE;
}
