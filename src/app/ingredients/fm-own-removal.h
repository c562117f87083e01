/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-own-removal.h - removing an own entry that no draft uses, with a way back */
#pragma once

#include <gtk/gtk.h>

#include "app/session/fm-session.h"

G_BEGIN_DECLS

/** @failure: (nullable): why the entry stays, as a sentence; NULL when it went or came back. */
typedef void (*FmOwnRemovalSettled) (GtkWidget *owner, const char *failure);

/** TRUE where the way back can be offered: @owner stands inside an AdwToastOverlay. */
gboolean fm_own_removal_is_offered (GtkWidget *owner);
/** Removes @own from the notebook, in a thread, and offers to undo that. */
void fm_own_removal_start (GtkWidget *owner,
                           FmSession *session,
                           FmIngredient *own,
                           FmOwnRemovalSettled settled);

G_END_DECLS
