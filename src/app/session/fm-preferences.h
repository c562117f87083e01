/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-preferences.h - settings of the person at the desk */
#pragma once

#include <gio/gio.h>

G_BEGIN_DECLS

/**
 * The settings (see data/io.github.forcemeat.Forcemeat.gschema.xml): "colour-scheme",
 * "page", the units a new notebook starts with, and more. Listen to "changed::KEY". (transfer none)
 */
GSettings *fm_preferences_get (void);
/** Paths of notebooks opened lately, the latest first. Returns: (transfer full). */
GStrv fm_preferences_recent (void);
/** Puts @path at the head of the recent notebooks and makes it the one to open next time. */
void fm_preferences_add_recent (const char *path);
void fm_preferences_remove_recent (const char *path);

G_END_DECLS
