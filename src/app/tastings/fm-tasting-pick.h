/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-pick.h - experiments chosen in the picker become samples of a plan */
#pragma once

#include <gio/gio.h>

#include "store/fm-tastings.h"

G_BEGIN_DECLS

/** "e12" for each sample that is an experiment; (transfer full). */
GStrv fm_tasting_pick_keys (const FmTasting *tasting);
/** Reads what is needed of the experiments behind @keys, in a thread. */
void fm_tasting_pick_load_async (FmNotebook *notebook,
                                 const char *const *keys,
                                 GAsyncReadyCallback callback,
                                 gpointer data);
/** (transfer full) of FmTastingSample, in the order of the keys; those that are gone are left out.
 */
GPtrArray *fm_tasting_pick_load_finish (GAsyncResult *result, GError **error);
/** Adds the @picked that are new, takes out the experiments that are not among them. Samples from
 * outside stay. Names are made different where they would be alike. */
void fm_tasting_pick_apply (FmTasting *tasting, const GPtrArray *picked);

G_END_DECLS
