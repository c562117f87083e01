/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-kitchen-figures.c - what each authority asks for the blend's animals, while it cooks */
#include "app/kitchen/fm-kitchen-figures.h"

#include <glib/gi18n-lib.h>

#include "app/kitchen/fm-kitchen-clock.h"

static char *
row_text (const FmHoldRow *row)
{
  g_autofree char *temp = fm_hold_row_temp_format (row);
  g_autofree char *hold = fm_kitchen_clock_text (row->hold_s);

  if (row->hold_s <= 0.0)
    return g_steal_pointer (&temp);
  if (row->hold_s < 1.0)
    return g_strdup_printf (_ ("%s, held less than 1 s"), temp);
  /* TRANSLATORS: a temperature, then a time as minutes:seconds */
  return g_strdup_printf (_ ("%s, held %s"), temp, hold);
}

/* A long table by its two ends. */
static char *
figure_text (FmAuthority authority, const FmCookFood *food)
{
  FmHoldRow rows[FM_AUTHORITY_MAX_ROWS];
  const guint n = fm_authority_rows (authority, food, rows);
  g_autofree char *first = n > 0 ? row_text (&rows[0]) : NULL;
  g_autofree char *last = n > 1 ? row_text (&rows[n - 1]) : NULL;

  if (n == 0)
    return NULL;
  if (n == 1)
    return g_strdup_printf ("%s: %s", fm_authority_name (authority), first);
  if (n == 2)
    return g_strdup_printf (_ ("%s: %s, or %s"), fm_authority_name (authority), first, last);
  /* TRANSLATORS: authority, then the first and the last row of its table */
  return g_strdup_printf (_ ("%s: from %s to %s"), fm_authority_name (authority), first, last);
}

static void
add (GString *text, FmAuthority authority, const FmCookFood *food)
{
  g_autofree char *line = figure_text (authority, food);

  if (line != NULL)
    g_string_append_printf (text, "%s%s", text->len > 0 ? "\n" : "", line);
}

char *
fm_kitchen_figures_text (const FmCookFood *food)
{
  const FmAuthority ruling = fm_authority_ruling (food->species);
  g_autoptr (GString) text = g_string_new (NULL);

  add (text, ruling, food);
  for (int i = 0; i < FM_N_AUTHORITIES; i++)
    if (i != (int)ruling && fm_authority_applies ((FmAuthority)i, food->species))
      add (text, (FmAuthority)i, food);
  return g_string_free (g_steal_pointer (&text), FALSE);
}
