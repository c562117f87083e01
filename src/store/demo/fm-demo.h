/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-demo.h - an invented notebook to look around in */
#pragma once

#include "store/fm-experiments.h"
#include "store/fm-food-store.h"

G_BEGIN_DECLS

/**
 * fm_demo_create:
 * Creates at @path (a demo that is there is kept beside it, as "<path>.before"; any other
 * notebook there is left alone: FAILED) a notebook of our own invention: at least 3
 * blends, 12 versions in branching trees, 15 experiments with generated photos. Its
 * setting FM_SETTING_INVENTED says that all of it is invented. It opens on a blend that has
 * something on every page. The numbers are the same each time.
 */
FmNotebook *
fm_demo_create (const char *path, FmFoodStore *foods, GCancellable *cancellable, GError **error);

G_END_DECLS
