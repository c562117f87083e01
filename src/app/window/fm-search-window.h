/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-search-window.h - one search over the notebook: results while one types, by kind
 *
 * The cursor stays in the field: Up and Down move the highlight, Enter opens what is highlighted,
 * Escape closes.
 *
 * Signal: "chosen" (FmFound *found): the window closes after it.
 */
#pragma once

#include <adwaita.h>

#include "app/session/fm-session.h"
#include "store/fm-search.h"

G_BEGIN_DECLS

#define FM_TYPE_SEARCH_WINDOW (fm_search_window_get_type ())
G_DECLARE_FINAL_TYPE (FmSearchWindow, fm_search_window, FM, SEARCH_WINDOW, AdwWindow)

FmSearchWindow *fm_search_window_new (GtkWindow *parent, FmSession *session);

G_END_DECLS
