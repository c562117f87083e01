/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-search-text.h - what is said of a place that a search found */
#pragma once

#include "store/fm-search.h"

G_BEGIN_DECLS

/** Heading of a kind; @is_cut: there is more than is listed. Returns: (transfer full). */
char *fm_search_text_heading (FmFoundKind kind, gboolean is_cut);
/** Returns: (transfer full). */
char *fm_search_text_title (const FmFound *found);
/** Where it is, and the text around the first of @words. Returns: (transfer full). */
char *fm_search_text_place (const FmFound *found, const char *words);

G_END_DECLS
