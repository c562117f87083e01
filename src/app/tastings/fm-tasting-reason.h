/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-reason.h - what is gone on with only for a reason or a name, which is kept */
#pragma once

#include <adwaita.h>

G_BEGIN_DECLS

/** An entry for a reason. @what: its accessible name */
GtkWidget *fm_tasting_reason_entry_new (const char *what);
gboolean fm_tasting_reason_is_given (GtkWidget *entry);

/**
 * fm_tasting_reason_dialog_new:
 * @keep: label of the response "cancel"
 * @go: label of the response "go", which waits for a reason
 * @what: accessible name of the entry
 */
AdwMessageDialog *fm_tasting_reason_dialog_new (GtkWidget *parent,
                                                const char *heading,
                                                const char *body,
                                                const char *keep,
                                                const char *go,
                                                const char *what);
/** What was typed; (transfer none). */
const char *fm_tasting_reason_dialog_get (AdwMessageDialog *dialog);

G_END_DECLS
