/* fm-number-entry.h - an entry for one number, which says what is wrong with bad text
 *
 * Composed of a GtkEntry, a unit label and a message label. While the text is no good number in
 * range, the entry keeps the last good value, carries the "error" style class and the invalid
 * state, and the message below says why. Without decimals only whole numbers are good. Blank text
 * is the unknown value (NaN) where "optional".
 *
 * Signal: "value-changed" (double value): the user typed another good value.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define FM_TYPE_NUMBER_ENTRY (fm_number_entry_get_type ())
G_DECLARE_FINAL_TYPE (FmNumberEntry, fm_number_entry, FM, NUMBER_ENTRY, GtkWidget)

/** @what: translated name of the quantity; the accessible name and part of messages. */
GtkWidget *fm_number_entry_new (const char *what, double min, double max, int decimals);
/** Shows @value (NaN = blank) without emitting; clears an error unless @value is what it holds. */
void fm_number_entry_set_value (FmNumberEntry *self, double value);
/** Shows @value in place of whatever was typed, as when another record comes into the entry. */
void fm_number_entry_load_value (FmNumberEntry *self, double value);
/** The last good value; NaN when blank. */
double fm_number_entry_get_value (FmNumberEntry *self);
gboolean fm_number_entry_is_valid (FmNumberEntry *self);
void fm_number_entry_set_what (FmNumberEntry *self, const char *what);
/** @unit: (nullable) */
void fm_number_entry_set_unit (FmNumberEntry *self, const char *unit);
void fm_number_entry_set_range (FmNumberEntry *self, double min, double max);
/** The sentence about the bad text, NULL while it is good. Notified as "message". */
const char *fm_number_entry_get_message (FmNumberEntry *self);
/** Says that the value cannot be taken for a reason that only the owner knows; NULL clears it. */
void fm_number_entry_show_error (FmNumberEntry *self, const char *message);
void fm_number_entry_set_editable (FmNumberEntry *self, gboolean editable);
void fm_number_entry_set_width_chars (FmNumberEntry *self, int width_chars);
/** Properties for templates: "what", "unit", "minimum", "maximum", "decimals", "optional",
 * "inline-message" (FALSE: the owner shows "message" itself). */

G_END_DECLS
