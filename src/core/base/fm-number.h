/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-number.h - numbers as a cook types and reads them */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * fm_number_parse:
 * @text: what was typed; surrounding blanks and a trailing unit-free text only
 * @what: (nullable): translated name of the quantity, used in messages ("Mass of Chuck")
 * @min: smallest accepted value
 * @max: largest accepted value
 * @value: (out): the number, finite
 *
 * Accepts the C locale's point, the locale's own decimal separator and a comma
 * ("12,5"). Grouped digits are read where they have one reading ("1.234,5", "1'234",
 * "1,234,567"; not "1,234"). "nan", "inf", hex, blank text and
 * trailing garbage are errors. Never writes @value on failure.
 */
gboolean fm_number_parse (
    const char *text, const char *what, double min, double max, double *value, GError **error);

/** Sets @error to the sentence for a @text that is no number, "" being blank. Returns: FALSE. */
gboolean fm_number_fail_text (const char *text, const char *what, GError **error);

/** Sets @error to the sentence for a @value outside of @min and @max. Returns: FALSE. */
gboolean
fm_number_fail_range (double value, const char *what, double min, double max, GError **error);

/**
 * fm_number_format:
 * Text of @value with @decimals places and the locale's decimal separator, "-0.0" as "0.0";
 * an em dash for NaN (unknown). Returns: (transfer full).
 */
char *fm_number_format (double value, int decimals);

/** fm_number_format_unit: as above, followed by a no-break space and @unit (none after a dash). */
char *fm_number_format_unit (double value, int decimals, const char *unit);

/** fm_number_to_edit: shortest text that fm_number_parse() reads back, for entry fields; "" for
 * NaN. */
char *fm_number_to_edit (double value, int max_decimals);

G_END_DECLS
