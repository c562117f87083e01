/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-chart-private.h - what the files of the parent of charts share */
#pragma once

#include "app/charts/fm-chart.h"

G_BEGIN_DECLS

/* fm-chart-keys.c */
/** "key-pressed" of a chart. */
gboolean fm_chart_keys_press (FmChart *self, guint keyval, guint keycode, GdkModifierType state);
/** Opens what the mark picked stands for; FALSE when there is nothing. */
gboolean fm_chart_keys_activate (FmChart *self);
/* fm-chart-menu.c */
/** The actions that the menu offers. */
void fm_chart_menu_install (GtkWidgetClass *widget_class);
/** (transfer none): a child of @self, which unparents it. */
GtkWidget *fm_chart_menu_new (FmChart *self);

G_END_DECLS
