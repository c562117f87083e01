/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-text-limit.h - how long a text may be that is typed, stored or shown
 *
 * A text of megabytes, or one line of them, stops a window for minutes. The limits hold on the way
 * into the notebook and out of it, since a notebook may come from a stranger. Common practice:
 * about forty printed pages.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define FM_TEXT_MAX_BYTES 100000
#define FM_TEXT_MAX_LINES 2000

/** @n_bytes: without an ending NUL */
gboolean fm_text_fits (const char *text, gsize n_bytes);
/**
 * @text: (nullable)
 * @what: what the text is called, like "Notes"
 * Errors: FM_CORE_ERROR_OUT_OF_RANGE with the limits
 */
gboolean fm_text_check (const char *text, const char *what, GError **error);

G_END_DECLS
