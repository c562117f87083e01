/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-servings.h - servings of a version in the notebook
 *
 * A saved serving is numbered within its version and never changes; what comes with the patty is
 * kept as it was. Each version has one draft besides.
 */
#pragma once

#include "core/dish/fm-dish.h"
#include "store/notebook/fm-notebook.h"

G_BEGIN_DECLS

typedef struct {
  gint64 id;
  gint64 version_id;
  int version_number;
  int number; /* 0 = the draft */
  char *name;
  char *reason;
  gint64 saved_at; /* unix seconds */
} FmServingInfo;

void fm_serving_info_free (FmServingInfo *info);
/** FmServingInfo of all versions of a blend, the newest version and serving first, drafts too. */
GPtrArray *fm_servings_list (FmNotebook *self, gint64 blend_id, GError **error);
FmDish *fm_servings_load (FmNotebook *self, gint64 id, GError **error);
/**
 * The next serving of a version; its number, 0 + error when there is no such version or
 * fm_dish_check() refuses it.
 * @name: what it is called, @reason: why it is saved; neither may be blank
 */
int fm_servings_save (FmNotebook *self,
                      gint64 version_id,
                      const char *name,
                      const char *reason,
                      const FmDish *dish,
                      GError **error);
/** Takes the place of the draft of the version. What is not a serving yet is left out of it. */
gboolean
fm_servings_save_draft (FmNotebook *self, gint64 version_id, const FmDish *dish, GError **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmServingInfo, fm_serving_info_free)

G_END_DECLS
