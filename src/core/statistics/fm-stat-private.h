/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-stat-private.h - what the linear models of the room share */
#pragma once

#include <glib.h>
#include <gsl/gsl_matrix.h>

G_BEGIN_DECLS

/** Adds to @inverse, which is zero, the generalised inverse of the symmetric @matrix, by its
 * eigenvectors; a direction that nobody compared is left out. Returns: the rank */
guint fm_stat_invert (const gsl_matrix *matrix, gsl_matrix *inverse);

G_END_DECLS
