/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-version-read.h - reads blends with their versions, all of them or what a change was about */
#pragma once

#include <gio/gio.h>

#include "app/session/fm-change.h"
#include "store/fm-versions.h"

G_BEGIN_DECLS

/** A blend and versions of it, with all that their rows show. */
typedef struct {
  gint64 id;
  FmBlendInfo *info;   /* NULL: the blend is gone */
  GPtrArray *versions; /* FmVersionInfo, by number: those that were read */
} FmVersionBlend;

void fm_version_blend_free (FmVersionBlend *blend);
/** Takes over what @read holds: the versions that it has replace those of the same number. */
void fm_version_blend_update (FmVersionBlend *self, FmVersionBlend *read);

/** What was read after a change. */
typedef struct {
  gboolean is_all;   /* every blend with every version */
  GPtrArray *blends; /* FmVersionBlend */
} FmVersionRead;

void fm_version_read_free (gpointer read);
/** An FmStoreFunc. @change: (FmChange) of a blend, a draft, a version, an experiment or a tasting;
 * any other, or one of many rows, reads all. Returns: (transfer full) FmVersionRead. */
gpointer fm_version_read_run (FmNotebook *notebook,
                              gpointer change,
                              GCancellable *cancellable,
                              GError **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmVersionBlend, fm_version_blend_free)

G_END_DECLS
