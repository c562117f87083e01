/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-versions-course.h - pictures of how a blend went: cook loss, rating and cost of its versions
 *
 * Folded away at first; read in a thread once it is unfolded.
 */
#pragma once

#include <gtk/gtk.h>

#include "store/notebook/fm-notebook.h"

G_BEGIN_DECLS

#define FM_TYPE_VERSIONS_COURSE (fm_versions_course_get_type ())
G_DECLARE_FINAL_TYPE (FmVersionsCourse, fm_versions_course, FM, VERSIONS_COURSE, GtkWidget)

/** @notebook: (nullable); also to be called after a change of the blend. @blend_name: (nullable):
 * for pictures that are saved. */
void fm_versions_course_show (FmVersionsCourse *self,
                              FmNotebook *notebook,
                              gint64 blend_id,
                              const char *blend_name);

G_END_DECLS
