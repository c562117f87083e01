/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-short-name.h - what a cook calls a food of the dataset
 *
 * Names are shortened by rule: what is the rule in a blend (raw, fresh, lean and fat, all grades)
 * is left out, the cut stands before its grade and trim, a lean point behind the meat. How the
 * trade says it is common practice, no source.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * @full_name: readable name of the dataset, its parts parted by commas
 *
 * "Beef, chuck, blade roast, lean and fat, trimmed to 1/8 inch fat, all grades, raw" becomes
 * "Chuck blade, 1/8 in trim". A text that is no such name comes back as it is. Two foods may get
 * the same short name. Returns: (transfer full).
 */
char *fm_short_name (const char *full_name);

G_END_DECLS
