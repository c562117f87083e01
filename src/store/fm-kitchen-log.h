/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-kitchen-log.h - what happened at the pan, one row an event, written as it happens */
#pragma once

#include "core/kitchen/fm-kitchen-event.h"
#include "store/notebook/fm-notebook.h"

G_BEGIN_DECLS

/** The events of an experiment in order. (transfer full) (element-type FmKitchenEvent) */
GPtrArray *fm_kitchen_log_load (FmNotebook *self, gint64 experiment_id, GError **error);
/** Adds @event, all or nothing; one that is there already under its number stays as it is, so that
 * a failed write can be tried again. */
gboolean fm_kitchen_log_add (FmNotebook *self,
                             gint64 experiment_id,
                             const FmKitchenEvent *event,
                             GError **error);

G_END_DECLS
