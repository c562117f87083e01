/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-more-box.h - asks how many more sheets would tell two samples apart */
#pragma once

#include <gtk/gtk.h>

#include "app/session/fm-session.h"
#include "core/tasting/fm-tasting-together.h"

G_BEGIN_DECLS

#define FM_TYPE_TASTING_MORE_BOX (fm_tasting_more_box_get_type ())
G_DECLARE_FINAL_TYPE (FmTastingMoreBox, fm_tasting_more_box, FM, TASTING_MORE_BOX, GtkBox)

/**
 * fm_tasting_more_box_set:
 * @reading: (nullable): what is asked about; hidden where nothing was put in order
 * @left_out: (element-type gint64): tastings of the blend of @session that are not read
 *
 * Drops an answer that is under way.
 */
void fm_tasting_more_box_set (FmTastingMoreBox *self,
                              FmSession *session,
                              const FmTastingTogether *reading,
                              GArray *left_out);

G_END_DECLS
