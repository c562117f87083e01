/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-kitchen-clock.c - now, by every clock of this machine */
#include "app/kitchen/fm-kitchen-clock.h"

#include <time.h>

#define BOOT_ID_FILE "/proc/sys/kernel/random/boot_id"

static gint64
read_clock (clockid_t clock)
{
  struct timespec time = { 0, 0 };

  clock_gettime (clock, &time);
  return (gint64)time.tv_sec * G_USEC_PER_SEC + time.tv_nsec / 1000;
}

/* "" where the system tells none: then only the wall clock counts. */
static const char *
get_boot_id (void)
{
  static char *boot_id;

  if (boot_id != NULL)
    return boot_id;
  if (g_file_get_contents (BOOT_ID_FILE, &boot_id, NULL, NULL))
    g_strstrip (boot_id);
  else
    boot_id = g_strdup ("");
  return boot_id;
}

void
fm_kitchen_clock_now (FmKitchenMoment *now)
{
  now->wall_us = read_clock (CLOCK_REALTIME);
  now->monotonic_us = read_clock (CLOCK_MONOTONIC);
  now->boot_us = read_clock (CLOCK_BOOTTIME);
  g_strlcpy (now->boot_id, get_boot_id (), sizeof now->boot_id);
}

char *
fm_kitchen_clock_text (double s)
{
  const int whole = (int)s;

  if (whole >= 3600)
    return g_strdup_printf ("%d:%02d:%02d", whole / 3600, whole / 60 % 60, whole % 60);
  return g_strdup_printf ("%d:%02d", whole / 60, whole % 60);
}
