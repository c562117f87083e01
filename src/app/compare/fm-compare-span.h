/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-compare-span.h - scrolls a table by whole columns, so that its first one stays in sight
 *
 * The heads of the columns stay in sight as those of every column view do.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define FM_TYPE_COMPARE_SPAN (fm_compare_span_get_type ())
G_DECLARE_FINAL_TYPE (FmCompareSpan, fm_compare_span, FM, COMPARE_SPAN, GtkWidget)

/** Around @view, whose first column names the rows. */
FmCompareSpan *fm_compare_span_new (GtkColumnView *view);
/** After columns came or went: shows as many as there is room for. */
void fm_compare_span_fit (FmCompareSpan *self);

G_END_DECLS
