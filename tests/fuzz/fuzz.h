/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fuzz.h - what a fuzz target is: one function that takes any bytes
 *
 * With clang and -fsanitize=fuzzer the library drives it (tools/fuzz); otherwise replay.c does,
 * with the seeds and with some seconds of mutations of them.
 */
#pragma once

#include <glib.h>

int LLVMFuzzerTestOneInput (const guint8 *bytes, gsize size);

/* The bytes as text, as far as they are. (transfer full) */
static inline char *
fuzz_text (const guint8 *bytes, gsize size)
{
  return g_strndup ((const char *)bytes, size);
}

/* A message for a cook is a sentence in UTF-8; there is one whenever something failed. */
static inline void
fuzz_check_error (gboolean ok, const GError *error)
{
  if (ok != (error == NULL) || (error != NULL && !g_utf8_validate (error->message, -1, NULL)))
    g_error ("A failure without a message, or one that is no text.");
}
