/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-number-entry.h - an entry for one number or measure, which keeps no refused text
 *
 * Composed of a GtkEntry, a unit label and a message label. Each good text is told of as it is
 * typed. A text that is refused puts the value before the edit back everywhere; the entry says so
 * (style class, invalid state, accessible description and the message below), and when the
 * keyboard goes elsewhere in the window the old text comes back with a note of what was refused.
 * Without decimals only whole numbers are good. Blank text is the unknown value (NaN) where
 * "optional". Values and limits are in the base unit of the measure (core/base/fm-measure.h); the
 * text is in the unit of the notebook.
 *
 * Signal: "value-changed" (double value): the user typed another good value, or what was typed is
 * refused and the value before it stands again.
 */
#pragma once

#include <gtk/gtk.h>

#include "core/base/fm-measure.h"

G_BEGIN_DECLS

#define FM_TYPE_NUMBER_ENTRY (fm_number_entry_get_type ())
G_DECLARE_FINAL_TYPE (FmNumberEntry, fm_number_entry, FM, NUMBER_ENTRY, GtkWidget)

/** @what: translated name of the quantity; the accessible name and part of messages. */
GtkWidget *fm_number_entry_new (const char *what, double min, double max, int decimals);
/** Shows @value (NaN = blank) without emitting; what is typed stays while @value is what counts. */
void fm_number_entry_set_value (FmNumberEntry *self, double value);
/** Shows @value in place of whatever was typed, as when another record comes into the entry. */
void fm_number_entry_load_value (FmNumberEntry *self, double value);
/** The value that counts; NaN when blank. */
double fm_number_entry_get_value (FmNumberEntry *self);
/** FALSE while the text is refused. */
gboolean fm_number_entry_is_valid (FmNumberEntry *self);
/** Translated name of the quantity. (transfer none) */
const char *fm_number_entry_get_what (FmNumberEntry *self);
void fm_number_entry_set_what (FmNumberEntry *self, const char *what);
/** @unit: (nullable): of a plain number; a measure has the notebook's. */
void fm_number_entry_set_unit (FmNumberEntry *self, const char *unit);
void fm_number_entry_set_measure (FmNumberEntry *self, FmMeasure measure);
/** For a column whose heading has the unit. */
void fm_number_entry_hide_unit (FmNumberEntry *self);
void fm_number_entry_set_range (FmNumberEntry *self, double min, double max);
/** The sentence shown: why the text is refused, what was refused when the entry was left, or the
 * warning; else NULL. Notified as "message". */
const char *fm_number_entry_get_message (FmNumberEntry *self);
/** For a "value-changed" handler that cannot take the value: it is treated as a refused text. */
void fm_number_entry_refuse (FmNumberEntry *self, const char *reason);
/** Says what is strange about a value that is taken all the same; NULL when nothing is. */
void fm_number_entry_set_warning (FmNumberEntry *self, const char *warning);
void fm_number_entry_set_editable (FmNumberEntry *self, gboolean editable);
void fm_number_entry_set_width_chars (FmNumberEntry *self, int width_chars);
/** Properties for templates: "what", "unit", "measure" (a number of FmMeasure), "minimum",
 * "maximum", "decimals", "optional", "inline-message" (FALSE: the owner shows "message" itself). */

G_END_DECLS
