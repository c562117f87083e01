/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-compare-give.h - hands a comparison out: clipboard, paper, CSV */
#pragma once

#include <gtk/gtk.h>

#include "report/fm-compare-copy.h"

G_BEGIN_DECLS

/** @owner: an FmPage, which says in its session what was done. */
void fm_compare_give_copy (GtkWidget *owner, const FmCompareView *view);
void fm_compare_give_print (GtkWidget *owner, const FmCompareView *view);
/** Every row, also those that do not differ. */
void fm_compare_give_csv (GtkWidget *owner, const FmCompareView *view);

G_END_DECLS
