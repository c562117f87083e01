/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-cook-food.h - what a cooked version is made of, as far as figures depend on it, in a thread */
#pragma once

#include "core/cooking/fm-authority.h"
#include "store/fm-versions.h"

G_BEGIN_DECLS

/** Reads the kinds of animal and the fat of version @version_id. */
void fm_cook_food_async (FmNotebook *notebook,
                         gint64 version_id,
                         GCancellable *cancellable,
                         GAsyncReadyCallback callback,
                         gpointer data);
/** Leaves @food alone on failure. */
gboolean fm_cook_food_finish (GAsyncResult *result, FmCookFood *food, GError **error);

G_END_DECLS
