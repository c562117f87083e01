/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-names.h - a short list of names: written one after the other, each can be taken out
 *
 * Signals:
 *   "added" (char *name)       a name was written or chosen; the owner shows it by set_names()
 *   "removed" (guint index)    a name was taken out
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define FM_TYPE_TASTING_NAMES (fm_tasting_names_get_type ())
G_DECLARE_FINAL_TYPE (FmTastingNames, fm_tasting_names, FM, TASTING_NAMES, GtkWidget)

/**
 * fm_tasting_names_set_words:
 * @list: what the list is called
 * @add: what the entry asks for
 * @remove: name of the button beside a name, with one %s for it
 * All translated.
 */
void fm_tasting_names_set_words (FmTastingNames *self,
                                 const char *list,
                                 const char *add,
                                 const char *remove);
/** Long names: one below the other. */
void fm_tasting_names_set_tall (FmTastingNames *self, gboolean tall);
void fm_tasting_names_set_names (FmTastingNames *self, const char *const *names);
/** Names that can be chosen instead of written; those that are listed already are left out. */
void fm_tasting_names_set_offered (FmTastingNames *self, const char *const *names);

G_END_DECLS
