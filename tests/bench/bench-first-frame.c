/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* bench-first-frame.c - time from start to the first painted frame, beside a bare window
 *
 * Runs on a screen without a window manager (tests/bench/run-bench). A frame counts as painted
 * when a pixel well inside the window stops being the root's black.
 */
#include <X11/Xlib.h>
#include <X11/Xutil.h>
#include <glib.h>
#include <signal.h>
#include <stdlib.h>
#include <sys/wait.h>

#define N_RUNS 9
#define GIVE_UP_US (20 * G_USEC_PER_SEC)

static gboolean
is_painted (Display *display)
{
  XImage *image =
      XGetImage (display, DefaultRootWindow (display), 640, 400, 1, 1, AllPlanes, ZPixmap);
  gboolean painted = image != NULL && (XGetPixel (image, 0, 0) & 0xffffff) != 0;

  if (image != NULL)
    XDestroyImage (image);
  return painted;
}

static void
wait_until_painted_is (Display *display, gboolean wanted)
{
  gint64 end = g_get_monotonic_time () + GIVE_UP_US;

  while (is_painted (display) != wanted && g_get_monotonic_time () < end)
    g_usleep (500);
}

static double
time_command_ms (Display *display, const char *command)
{
  g_auto (GStrv) argv = NULL;
  g_autoptr (GError) error = NULL;
  gint64 start, painted;
  GPid pid;

  if (!g_shell_parse_argv (command, NULL, &argv, &error))
    g_error ("%s", error->message);
  start = g_get_monotonic_time ();
  if (!g_spawn_async (NULL, argv, NULL, G_SPAWN_SEARCH_PATH | G_SPAWN_DO_NOT_REAP_CHILD, NULL, NULL,
                      &pid, &error))
    g_error ("%s", error->message);
  wait_until_painted_is (display, TRUE);
  painted = g_get_monotonic_time ();
  kill (pid, SIGKILL);
  waitpid (pid, NULL, 0);
  wait_until_painted_is (display, FALSE);
  return (double)(painted - start) / 1000.0;
}

static int
compare_doubles (const void *a, const void *b)
{
  double x = *(const double *)a, y = *(const double *)b;

  return (x > y) - (x < y);
}

int
main (int argc, char **argv)
{
  Display *display = XOpenDisplay (NULL);
  double times_ms[2][N_RUNS];

  if (display == NULL || argc != 3)
    g_error ("usage, on an X screen: bench-first-frame 'COMMAND' 'BARE WINDOW COMMAND'");
  for (int which = 0; which < 2; which++)
    time_command_ms (display, argv[1 + which]);
  for (int run = 0; run < N_RUNS; run++)
    for (int which = 0; which < 2; which++)
      times_ms[which][run] = time_command_ms (display, argv[1 + which]);
  for (int which = 0; which < 2; which++)
    qsort (times_ms[which], N_RUNS, sizeof (double), compare_doubles);
  g_print ("first frame: %.0f ms, bare window %.0f ms (medians of %d), ratio %.2f (aim 1.25)\n",
           times_ms[0][N_RUNS / 2], times_ms[1][N_RUNS / 2], N_RUNS,
           times_ms[0][N_RUNS / 2] / times_ms[1][N_RUNS / 2]);
  XCloseDisplay (display);
  return 0;
}
