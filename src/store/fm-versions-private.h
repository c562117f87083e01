/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-versions-private.h - what blends, drafts and versions share inside the store layer */
#pragma once

#include "store/notebook/fm-db.h"
#include "store/fm-versions.h"

G_BEGIN_DECLS

/** Sets NOT_FOUND when there is no such blend. */
gboolean fm_blends_check_exists (FmDb *db, gint64 blend_id, GError **error);
/** The text of a version, NULL + error. @blend_id: 0 = any blend. */
char *fm_versions_read_json (FmDb *db, gint64 version_id, gint64 blend_id, GError **error);
/** The sum of all that a version says, by which it is told. (transfer full) */
char *fm_versions_checksum (const char *reason, const char *json);
/** Parent version of the draft, 0 = none or no draft. */
gboolean
fm_draft_read_parent (FmDb *db, gint64 blend_id, gint64 *parent_version_id, GError **error);
gboolean fm_draft_write (FmDb *db,
                         gint64 blend_id,
                         gint64 parent_version_id,
                         const char *json,
                         gboolean changed,
                         GError **error);
/** Text of @formula that is known to be readable again, NULL + error. */
char *fm_formula_to_checked_json (const FmFormula *formula, GError **error);

G_END_DECLS
