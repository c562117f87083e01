/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-kitchen-acts.h - the table of what can be done at the pan: one key and one action each */
#pragma once

#include <gtk/gtk.h>

#include "core/kitchen/fm-kitchen-state.h"

G_BEGIN_DECLS

/** Installs the actions that are about the chosen portion; @activate finds which by its name. */
void fm_kitchen_acts_install (GtkWidgetClass *widget_class, GtkWidgetActionActivateFunc activate);
/** Switches on what can happen to @portion; nothing while @is_read is FALSE. */
void fm_kitchen_acts_enable (GtkWidget *widget,
                             const FmKitchenState *state,
                             int portion,
                             gboolean is_read);
/** FALSE: @action is not about a portion. */
gboolean fm_kitchen_acts_kind (const char *action, FmKitchenKind *kind);
/** @key: in lower case. (nullable) */
const char *fm_kitchen_acts_of_key (guint key);

G_END_DECLS
