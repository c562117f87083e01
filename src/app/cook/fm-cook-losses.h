/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-cook-losses.h - predicted and measured cook loss by fat level, beside each other
 *
 * The predicted loss comes from the dataset's raw and cooked pairs, the measured one from the
 * notebook's own experiments that were cooked by the same method.
 */
#pragma once

#include <gtk/gtk.h>

#include "app/session/fm-experiment-document.h"

G_BEGIN_DECLS

#define FM_TYPE_COOK_LOSSES (fm_cook_losses_get_type ())
G_DECLARE_FINAL_TYPE (FmCookLosses, fm_cook_losses, FM, COOK_LOSSES, GtkWidget)

/** @document: (nullable) */
void fm_cook_losses_set_document (FmCookLosses *self, FmExperimentDocument *document);

G_END_DECLS
