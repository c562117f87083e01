/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-experiment-jump.h - the sections of a long page as a small list, and keys that go through them
 *
 * Ctrl+J opens the list; Ctrl+Page Down and Ctrl+Page Up go to the next and the one before.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

typedef struct {
  GtkWidget *widget;
  const char *name; /* translated */
} FmExperimentSection;

/** @button: opens the list. @widget: of the page, with all of @scroller. The sections live as long
 * as the button, in their order from the top. */
void fm_experiment_jump_install (GtkMenuButton *button,
                                 GtkWidget *widget,
                                 GtkScrolledWindow *scroller,
                                 const FmExperimentSection *sections,
                                 guint n_sections);

G_END_DECLS
