/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-search-text.c - what is said of a place that a search found */
#include "app/window/fm-search-text.h"

#include <glib/gi18n-lib.h>

#include "core/base/fm-date.h"

/* Letters that are shown of a long text, and of them before the word that was found. */
#define SHOWN_CHARS 140
#define CHARS_BEFORE 40

static const char *const headings[FM_N_FOUND] = {
  [FM_FOUND_BLEND] = N_ ("Blends"),          [FM_FOUND_DRAFT] = N_ ("Drafts"),
  [FM_FOUND_VERSION] = N_ ("Versions"),      [FM_FOUND_EXPERIMENT] = N_ ("Experiments"),
  [FM_FOUND_PHOTO] = N_ ("Photos"),          [FM_FOUND_TASTING] = N_ ("Tastings"),
  [FM_FOUND_OWN_ENTRY] = N_ ("Own entries"),
};

char *
fm_search_text_heading (FmFoundKind kind, gboolean is_cut)
{
  const char *heading = _ (headings[kind]);

  /* Translators: a kind of what was found, as in "Experiments". */
  return is_cut ? g_strdup_printf (_ ("%s: the first of many, type more words"), heading)
                : g_strdup (heading);
}

static char *
name_version (const FmFound *found)
{
  if (found->version_number == 0)
    return g_strdup_printf (_ ("%s, draft"), found->blend_name);
  /* Translators: name of a blend, number of its version. */
  return g_strdup_printf (_ ("%s, version %d"), found->blend_name, found->version_number);
}

char *
fm_search_text_title (const FmFound *found)
{
  const gboolean is_named = found->title != NULL && found->title[0] != '\0';

  switch (found->kind) {
  case FM_FOUND_DRAFT:
  case FM_FOUND_VERSION:
    return name_version (found);
  case FM_FOUND_EXPERIMENT:
    return g_strdup (is_named ? found->title : _ ("Untitled experiment"));
  case FM_FOUND_TASTING:
    return g_strdup (is_named ? found->title : _ ("Untitled tasting"));
  case FM_FOUND_BLEND:
  case FM_FOUND_PHOTO:
  case FM_FOUND_OWN_ENTRY:
  case FM_N_FOUND:
    break;
  }
  return g_strdup (is_named ? found->title : "");
}

/* Offset in characters of the first word that begins with the first of @words; 0 without. */
static glong
find_word (const char *text, const char *words)
{
  g_auto (GStrv) wanted = g_str_tokenize_and_fold (words, NULL, NULL);
  g_autofree char *folded = g_utf8_casefold (text, -1);
  const char *at = wanted[0] != NULL ? strstr (folded, wanted[0]) : NULL;

  return at != NULL ? g_utf8_pointer_to_offset (folded, at) : 0;
}

/* One line, with dots where it is cut. */
static char *
cut_around (const char *text, const char *words)
{
  g_autofree char *line = g_strdelimit (g_strdup (text), "\n\r\t", ' ');
  const glong length = g_utf8_strlen (line, -1);
  const glong at = find_word (line, words);
  const glong start =
      length > SHOWN_CHARS && at > CHARS_BEFORE ? MIN (at, length) - CHARS_BEFORE : 0;
  const glong end = MIN (length, start + SHOWN_CHARS);
  g_autofree char *shown = g_utf8_substring (line, start, end);

  return g_strconcat (start > 0 ? "…" : "", shown, end < length ? "…" : "", NULL);
}

static void
add_part (GString *text, const char *part)
{
  if (part != NULL && part[0] != '\0')
    g_string_append_printf (text, "%s%s", text->len > 0 ? " · " : "", part);
}

char *
fm_search_text_place (const FmFound *found, const char *words)
{
  g_autoptr (GString) text = g_string_new (NULL);
  g_autofree char *date = found->at != 0 ? fm_date_text (found->at) : NULL;
  g_autofree char *around = found->text != NULL ? cut_around (found->text, words) : NULL;

  if (found->experiment_id != 0) {
    g_autofree char *version = name_version (found);

    add_part (text, version);
  } else if (found->kind == FM_FOUND_VERSION) {
    add_part (text, found->title);
  }
  add_part (text, date);
  add_part (text, around);
  return g_string_free (g_steal_pointer (&text), FALSE);
}
