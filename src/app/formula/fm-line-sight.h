/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-line-sight.h - which lines of a long formula are in view
 *
 * A keystroke changes the share of every line, but most lines of a long blend are scrolled out of
 * view. Those are told that they are not seen, put off what they show, and catch up as soon as
 * they are scrolled into view or the typing pauses.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

typedef struct _FmLineSight FmLineSight;

/** @list: in @scroller, with rows of FmFormulaLineRow. Both outlive the sight. */
FmLineSight *fm_line_sight_new (GtkScrolledWindow *scroller, GtkListBox *list);
void fm_line_sight_free (FmLineSight *self);
/** Before lines change: tells each row whether it is seen. */
void fm_line_sight_look (FmLineSight *self);
/** After they changed: the others catch up when no further change comes for a moment. */
void fm_line_sight_catch_up_soon (FmLineSight *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmLineSight, fm_line_sight_free)

G_END_DECLS
