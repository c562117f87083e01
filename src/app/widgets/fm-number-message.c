/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-number-message.c - what a number entry says of its text: one message of those that hold */
#include "app/widgets/fm-number-message.h"

#include <glib/gi18n-lib.h>

#include "app/widgets/fm-widget.h"

void
fm_number_message_clear (FmNumberMessage *self)
{
  g_clear_pointer (&self->fault, g_free);
  g_clear_pointer (&self->note, g_free);
  g_clear_pointer (&self->warning, g_free);
  g_clear_pointer (&self->shown, g_free);
}

void
fm_number_message_set_fault (FmNumberMessage *self, const char *reason, const char *kept)
{
  g_clear_pointer (&self->fault, g_free);
  g_clear_pointer (&self->note, g_free);
  if (reason != NULL && kept[0] == '\0')
    /* TRANSLATORS: why a typed text is refused; what counts in its place */
    self->fault = g_strdup_printf (_ ("%s Until then it stays blank."), reason);
  else if (reason != NULL)
    self->fault = g_strdup_printf (_ ("%s Until then %s stays."), reason, kept);
}

void
fm_number_message_set_note (FmNumberMessage *self, const char *typed, const char *kept)
{
  g_clear_pointer (&self->note, g_free);
  if (typed == NULL)
    return;
  /* TRANSLATORS: what was typed, and the value that is back in its place */
  self->note = kept[0] != '\0'
                   ? g_strdup_printf (_ ("“%s” was not taken: it is %s as before."), typed, kept)
                   : g_strdup_printf (_ ("“%s” was not taken: it is blank as before."), typed);
}

void
fm_number_message_set_warning (FmNumberMessage *self, const char *warning)
{
  g_free (self->warning);
  self->warning = g_strdup (warning);
}

gboolean
fm_number_message_show (FmNumberMessage *self)
{
  const gboolean is_bad = self->fault != NULL;
  const char *message = is_bad ? self->fault : self->note != NULL ? self->note : self->warning;

  fm_widget_set_class (self->entry, "error", is_bad);
  fm_widget_set_class (self->entry, "warning", !is_bad && message != NULL);
  gtk_accessible_update_state (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_STATE_INVALID,
                               is_bad ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE,
                               -1);
  if (g_strcmp0 (message, self->shown) == 0)
    return FALSE;
  g_free (self->shown);
  self->shown = g_strdup (message);
  gtk_label_set_text (self->label, message != NULL ? message : "");
  gtk_widget_set_visible (GTK_WIDGET (self->label), message != NULL && self->is_inline);
  gtk_widget_set_tooltip_text (self->entry, message);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  message != NULL ? message : "", -1);
  return TRUE;
}
