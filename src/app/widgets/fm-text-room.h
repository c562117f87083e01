/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-text-room.h - a text view that does not take more than a notebook keeps */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/**
 * Refuses what would make the text of @view longer than this and says so in a dialog; what was
 * there stays as it was. FM_TEXT_MAX_BYTES and FM_TEXT_MAX_LINES are what notes may have.
 */
void fm_text_room_limit (GtkTextView *view, int max_bytes, int max_lines);

G_END_DECLS
