/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-blind-pages.h - what a taster at the desk is asked, one page at a time
 *
 * Pages know codes only. Each answer goes into the document at once. A page holds a reference to
 * the document.
 */
#pragma once

#include <gtk/gtk.h>

#include "app/session/fm-tasting-document.h"

G_BEGIN_DECLS

/** Liking, just about right and remark on one cup, as far as they are asked. */
GtkWidget *fm_tasting_blind_cup_new (FmTastingDocument *document, guint taster, guint code);
/** All cups of the main round put in order with buttons. */
GtkWidget *fm_tasting_blind_rank_new (FmTastingDocument *document, guint taster);
/** @task: preference or triangle. */
GtkWidget *
fm_tasting_blind_choice_new (FmTastingDocument *document, guint taster, FmTastingTask task);

/** A line of text for such a page. @css_class: (nullable) */
GtkWidget *fm_tasting_blind_label_new (const char *text, const char *css_class);
GtkWidget *fm_tasting_blind_page_new (const char *heading);

G_END_DECLS
