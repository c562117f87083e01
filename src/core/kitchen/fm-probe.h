/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-probe.h - temperatures from a probe that speaks lines of text
 *
 * A line is one number, or a time (seconds, or minutes:seconds) and a number with a blank, a tab or
 * a semicolon between. °C unless the line ends in F. A line that is anything else is refused and
 * counted, never guessed; blank lines are nothing.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* A longer line is no reading. */
#define FM_PROBE_MAX_LINE 120

typedef struct {
  GString *rest; /* begin of a line whose end is still to come */
  gboolean skip; /* the line in hand is too long already */
  guint n_good;
  guint n_refused;
} FmProbe;

/** @time_s: by the probe's own clock, NaN when the line has none */
typedef void (*FmProbeFunc) (double time_s, double temp_c, gpointer data);

/** Reads one line. FALSE when it is refused. @time_s, @temp_c: (out) */
gboolean fm_probe_parse_line (const char *line, double *time_s, double *temp_c);
FmProbe *fm_probe_new (void);
void fm_probe_free (FmProbe *self);
/** Takes @n bytes as they come, whole lines or not, and tells of each good line. */
void fm_probe_feed (FmProbe *self, const char *bytes, gsize n, FmProbeFunc func, gpointer data);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmProbe, fm_probe_free)

G_END_DECLS
