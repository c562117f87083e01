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

G_END_DECLS
