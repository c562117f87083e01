/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-compare-picker.h - chooses versions or experiments: what to compare, or what to taste
 *
 * Signal: "chosen" (GStrv keys): the user confirmed; the window closes itself
 */
#pragma once

#include <adwaita.h>

#include "app/session/fm-session.h"

G_BEGIN_DECLS

#define FM_TYPE_COMPARE_PICKER (fm_compare_picker_get_type ())
G_DECLARE_FINAL_TYPE (FmComparePicker, fm_compare_picker, FM, COMPARE_PICKER, AdwWindow)

/** @keys: (nullable): what is chosen now */
FmComparePicker *
fm_compare_picker_new (GtkWindow *parent, FmSession *session, const char *const *keys);
/** Offers experiments only, up to @max of them or none. @keys: (nullable): what is chosen now */
FmComparePicker *fm_compare_picker_new_for_tasting (GtkWindow *parent,
                                                    FmNotebook *notebook,
                                                    const char *const *keys,
                                                    guint max);

G_END_DECLS
