/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-limits.h - the bands of a brief as limits of a map */
#pragma once

#include "core/mixture/fm-mix-blend.h"

G_BEGIN_DECLS

/** A band of the brief, as it bounds the map. */
typedef struct {
  FmTargetKind kind;
  FmBand band;
  gboolean is_used; /* FALSE: it cannot be drawn as a limit */
  FmMixLimit limit; /* only when used */
  char *unknown;    /* (nullable): ingredients without a value */
} FmMapLimit;

/** FmMapLimit of each band that is set. @blend: (nullable): then none is used. */
GPtrArray *fm_map_limits_new (const FmBrief *brief, const FmMixBlend *blend);
/**
 * Adds the used limits to @region, which holds the bounds, and checks both: first the bounds alone,
 * so that the error says which of the two leaves no blend. @names: of the components.
 */
gboolean fm_map_limits_apply (const GPtrArray *limits,
                              FmMixRegion *region,
                              const char *const *names,
                              GError **error);
/** "Fat: 18 to 22 %"; cost with the person's currency. Returns: (transfer full). */
char *fm_map_limit_text (const FmMapLimit *self);
/** What keeps it from being drawn, a sentence; NULL when it is used. Returns: (transfer full). */
char *fm_map_limit_reason (const FmMapLimit *self);

G_END_DECLS
