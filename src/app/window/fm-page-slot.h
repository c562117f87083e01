/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-page-slot.h - keeps the place of a page that is built when it is first shown
 *
 * Property "page-type" (GType): of the page, for the handler.
 * Signals:
 *   "build" ()   the page is needed: the handler gives it with fm_page_slot_set_page()
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define FM_TYPE_PAGE_SLOT (fm_page_slot_get_type ())
G_DECLARE_FINAL_TYPE (FmPageSlot, fm_page_slot, FM, PAGE_SLOT, GtkWidget)

/** (transfer floating page) */
void fm_page_slot_set_page (FmPageSlot *self, GtkWidget *page);

/** NULL until it is built. (transfer none) */
GtkWidget *fm_page_slot_get_page (FmPageSlot *self);
/** G_TYPE_NONE when it was not set. */
GType fm_page_slot_get_page_type (FmPageSlot *self);

G_END_DECLS
