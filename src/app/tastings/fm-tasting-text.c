/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-text.c - tastings in words: state, sheets, events */
#include "app/tastings/fm-tasting-text.h"

#include <glib/gi18n-lib.h>

char *
fm_tasting_text_state (FmTastingState state, guint n_in, guint n_tasters)
{
  switch (state) {
  case FM_TASTING_PLANNED:
    return g_strdup (_ ("Being planned"));
  case FM_TASTING_OPENED:
    if (n_in >= n_tasters)
      return g_strdup (_ ("Opened"));
    return g_strdup_printf (
        ngettext ("Opened with %u of %u sheet in", "Opened with %u of %u sheets in", n_tasters),
        n_in, n_tasters);
  case FM_TASTING_SEALED:
    if (n_in >= n_tasters)
      return g_strdup (_ ("Sealed, all sheets in: ready to open"));
    return g_strdup_printf (
        ngettext ("Sealed, %u of %u sheet in", "Sealed, %u of %u sheets in", n_tasters), n_in,
        n_tasters);
  }
  g_return_val_if_reached (NULL);
}

char *
fm_tasting_text_size (guint n_samples, guint n_tasters)
{
  g_autofree char *samples =
      g_strdup_printf (ngettext ("%u sample", "%u samples", n_samples), n_samples);
  g_autofree char *tasters =
      g_strdup_printf (ngettext ("%u taster", "%u tasters", n_tasters), n_tasters);

  return g_strdup_printf ("%s · %s", samples, tasters);
}

static const char *
event_name (const FmTastingEvent *event)
{
  switch (event->kind) {
  case FM_TASTING_EVENT_ARRANGED:
    return _ ("Samples arranged and sealed");
  case FM_TASTING_EVENT_KEY_SHEET:
    return event->text == NULL ? _ ("Key sheet printed or saved")
                               : _ ("Key shown on the screen to a helper");
  case FM_TASTING_EVENT_OPENED:
    return _ ("Codes opened, all sheets in");
  case FM_TASTING_EVENT_OPENED_EARLY:
    return _ ("Codes opened early");
  case FM_TASTING_EVENT_SHEET_CHANGED:
    return _ ("Sheet changed after opening");
  case FM_TASTING_EVENT_UNCHECKED:
    return _ ("Went on although a core reading was missing or below the figure, or allergens were "
              "not stated");
  case FM_TASTING_EVENT_COPIED:
    return _ ("Copied while sealed: this is the copy");
  }
  g_return_val_if_reached ("");
}

char *
fm_tasting_text_event (const FmTastingEvent *event)
{
  g_autoptr (GDateTime) at = g_date_time_new_from_unix_local (event->at);
  /* Translators: day and time of something that happened at a tasting */
  g_autofree char *when = at != NULL ? g_date_time_format (at, _ ("%e %b %Y %H:%M")) : NULL;
  /* Translators: what happened, then day and time */
  g_autofree char *text =
      g_strdup_printf (_ ("%s, %s"), event_name (event), when != NULL ? g_strchug (when) : "");

  if (event->text == NULL || event->text[0] == '\0')
    return g_steal_pointer (&text);
  /* Translators: what happened and when, then the reason that was given */
  return g_strdup_printf (_ ("%s: “%s”"), text, event->text);
}

const char *
fm_tasting_text_title (const char *title)
{
  return title != NULL && title[0] != '\0' ? title : _ ("Untitled tasting");
}
