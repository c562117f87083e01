/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-sessions.h - more samples than one session takes, over several of them
 *
 * Some samples stand in every session: through them samples that never met are compared when the
 * sessions are read together (core/tasting/fm-tasting-together.h).
 */
#pragma once

#include "core/tasting/fm-tasting.h"

G_BEGIN_DECLS

/**
 * fm_tasting_sessions:
 * @self: a plan; it is left as it is
 * @is_common: (array): by sample, whether it stands in every session
 * @per_session: samples of a session at most
 * @held_at: day of all of them, unix seconds
 *
 * The other samples are dealt out by chance, from the seed of @self, as evenly as they go.
 * A pair or triangle that is not whole in a session is not asked there.
 *
 * Returns: (transfer full) (element-type FmTasting): at least two plans; %NULL with @error when no
 *   sample is common (EMPTY), or the numbers leave no room or no need for sessions (OUT_OF_RANGE)
 */
GPtrArray *fm_tasting_sessions (const FmTasting *self,
                                const gboolean *is_common,
                                guint per_session,
                                gint64 held_at,
                                GError **error);

G_END_DECLS
