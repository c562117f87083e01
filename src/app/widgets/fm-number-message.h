/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-number-message.h - what a number entry says of its text: one message of those that hold
 *
 * Why the text is refused comes before what was refused when the entry was left, and that before
 * what the owner finds strange in the value.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

typedef struct {
  GtkWidget *entry; /* is marked, and described by the message */
  GtkLabel *label;
  gboolean is_inline; /* else the message is a tooltip only */

  char *fault;
  char *note;
  char *warning;
  char *shown; /* the one of them that is shown; NULL when there is none */
} FmNumberMessage;

void fm_number_message_clear (FmNumberMessage *self);
/** @reason: (nullable): why the text is refused; @kept: what counts in its place, "" when it is
 * blank. What was noted is forgotten. */
void fm_number_message_set_fault (FmNumberMessage *self, const char *reason, const char *kept);
/** @typed: (nullable): what was not taken when the entry was left; @kept: as above. */
void fm_number_message_set_note (FmNumberMessage *self, const char *typed, const char *kept);
/** @warning: (nullable) */
void fm_number_message_set_warning (FmNumberMessage *self, const char *warning);
/** Shows the message that holds now. Returns: TRUE when it is another one. */
gboolean fm_number_message_show (FmNumberMessage *self);

G_END_DECLS
