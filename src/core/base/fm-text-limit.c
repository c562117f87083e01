/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/base/fm-text-limit.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "core/base/fm-error.h"
#include "core/base/fm-number.h"

gboolean
fm_text_fits (const char *text, gsize n_bytes)
{
  const char *end = text + n_bytes;
  guint n_lines = 1;

  if (n_bytes > FM_TEXT_MAX_BYTES)
    return FALSE;
  if (n_bytes < FM_TEXT_MAX_LINES)
    return TRUE;
  for (const char *at = text; (at = memchr (at, '\n', (gsize)(end - at))) != NULL; at++)
    n_lines++;
  return n_lines <= FM_TEXT_MAX_LINES;
}

gboolean
fm_text_check (const char *text, const char *what, GError **error)
{
  if (text == NULL || fm_text_fits (text, strlen (text)))
    return TRUE;

  g_autofree char *bytes = fm_number_format (FM_TEXT_MAX_BYTES, 0);
  g_autofree char *lines = fm_number_format (FM_TEXT_MAX_LINES, 0);
  g_set_error (
      error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
      /* TRANSLATORS: The first %s names the text, like "Notes"; then two numbers. */
      _ ("%s: this text is too long. At most %s characters in %s lines are kept. Shorten it."),
      what, bytes, lines);
  return FALSE;
}
