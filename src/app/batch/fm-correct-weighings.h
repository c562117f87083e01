/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-correct-weighings.h - corrects the batch that an experiment weighed */
#pragma once

#include <gtk/gtk.h>

#include "app/session/fm-experiment-document.h"
#include "app/session/fm-session.h"

G_BEGIN_DECLS

/** Said when it could not be opened. @message: translated. */
typedef void (*FmCorrectWeighingsFailed) (GtkWidget *owner, const char *message);

/** Opens the correction of @document's batch over @owner's window, with its weighings filled in. */
void fm_correct_weighings_present (GtkWidget *owner,
                                   FmSession *session,
                                   FmExperimentDocument *document,
                                   FmCorrectWeighingsFailed failed);

G_END_DECLS
