/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-session-io.h - what a session writes besides its documents
 *
 * Each job takes a reference to the notebook and copies what it is given.
 */
#pragma once

#include "app/session/fm-writer.h"
#include "store/fm-versions.h"

G_BEGIN_DECLS

void fm_session_io_branch (FmWriter *self,
                           FmNotebook *notebook,
                           gint64 blend_id,
                           gint64 version_id,
                           gpointer source,
                           GAsyncReadyCallback callback,
                           gpointer user_data);
void fm_session_io_save_version (FmWriter *self,
                                 FmNotebook *notebook,
                                 gint64 blend_id,
                                 const FmFormula *formula,
                                 const char *reason,
                                 gpointer source,
                                 GAsyncReadyCallback callback,
                                 gpointer user_data);
/** @formulas: FmFormula; @reasons: as many. */
void fm_session_io_add_versions (FmWriter *self,
                                 FmNotebook *notebook,
                                 gint64 blend_id,
                                 gint64 parent_id,
                                 const GPtrArray *formulas,
                                 const char *const *reasons,
                                 gpointer source,
                                 GAsyncReadyCallback callback,
                                 gpointer user_data);
void fm_session_io_save_setting (FmWriter *self,
                                 FmNotebook *notebook,
                                 const char *key,
                                 const char *value,
                                 gpointer source,
                                 GAsyncReadyCallback callback,
                                 gpointer user_data);

gboolean fm_session_io_finish (GAsyncResult *result, GError **error);
/** The saved version. Returns: (transfer full), NULL on error. */
FmVersionInfo *fm_session_io_save_version_finish (GAsyncResult *result, GError **error);
/** The new versions (FmVersionInfo). Returns: (transfer full), NULL on error. */
GPtrArray *fm_session_io_add_versions_finish (GAsyncResult *result, GError **error);
/** Blend and formula that a finished job was about. (transfer none) */
gint64 fm_session_io_blend_id (GAsyncResult *result);
const FmFormula *fm_session_io_formula (GAsyncResult *result);

G_END_DECLS
