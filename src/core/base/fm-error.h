/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-error.h - the error domain of the core layer */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define FM_CORE_ERROR (fm_core_error_quark ())

/**
 * FmCoreError:
 * @FM_CORE_ERROR_NOT_A_NUMBER: the text is no number
 * @FM_CORE_ERROR_OUT_OF_RANGE: a number lies outside what makes sense here
 * @FM_CORE_ERROR_LOCKED: a locked line stands in the way
 * @FM_CORE_ERROR_EMPTY: there is nothing to work on (no lines, zero mass)
 * @FM_CORE_ERROR_UNKNOWN_VALUE: a value that is needed has not been measured
 * @FM_CORE_ERROR_STOPPED: the caller asked to stop (see fm-stop.h); nothing to show
 *
 * Messages are translated sentences that say what happened and what to do.
 */
typedef enum {
  FM_CORE_ERROR_NOT_A_NUMBER,
  FM_CORE_ERROR_OUT_OF_RANGE,
  FM_CORE_ERROR_LOCKED,
  FM_CORE_ERROR_EMPTY,
  FM_CORE_ERROR_UNKNOWN_VALUE,
  FM_CORE_ERROR_STOPPED,
} FmCoreError;

GQuark fm_core_error_quark (void);

G_END_DECLS
