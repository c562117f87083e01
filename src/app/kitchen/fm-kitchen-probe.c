/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-kitchen-probe.c - listens to a probe at a pipe, a file or a serial port */
#include "app/kitchen/fm-kitchen-probe.h"

#include <errno.h>
#include <fcntl.h>
#include <math.h>
#include <sys/stat.h>
#include <termios.h>
#include <unistd.h>

#include <glib/gi18n-lib.h>

#include "core/kitchen/fm-probe.h"

/* A reading a second is plenty, so nobody waits for a pipe to become ready: it is asked. */
#define LISTEN_MS 200
#define CHUNK 1024

struct _FmKitchenProbe {
  GObject parent_instance;

  FmProbe *lines;
  int file;
  guint listen_id;
};

G_DEFINE_FINAL_TYPE (FmKitchenProbe, fm_kitchen_probe, G_TYPE_OBJECT)

enum {
  HEARD,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static void
good_line (double time_s, double temp_c, gpointer data)
{
  g_signal_emit (data, signals[HEARD], 0, temp_c);
}

/* Nothing more to read is no end: a pipe gets another writer, a file grows. */
static gboolean
listen_cb (gpointer data)
{
  g_autoptr (FmKitchenProbe) self = g_object_ref (data);
  const guint n_refused = self->lines->n_refused;
  char bytes[CHUNK];
  const gssize n = read (self->file, bytes, sizeof bytes);

  if (n > 0)
    fm_probe_feed (self->lines, bytes, (gsize)n, good_line, self);
  if (self->lines->n_refused != n_refused)
    g_signal_emit (self, signals[HEARD], 0, (double)NAN);
  return self->listen_id != 0 ? G_SOURCE_CONTINUE : G_SOURCE_REMOVE;
}

static void
fm_kitchen_probe_dispose (GObject *object)
{
  FmKitchenProbe *self = FM_KITCHEN_PROBE (object);

  g_clear_handle_id (&self->listen_id, g_source_remove);
  G_OBJECT_CLASS (fm_kitchen_probe_parent_class)->dispose (object);
}

static void
fm_kitchen_probe_finalize (GObject *object)
{
  FmKitchenProbe *self = FM_KITCHEN_PROBE (object);

  if (self->file >= 0)
    close (self->file);
  fm_probe_free (self->lines);
  G_OBJECT_CLASS (fm_kitchen_probe_parent_class)->finalize (object);
}

static void
fm_kitchen_probe_class_init (FmKitchenProbeClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = fm_kitchen_probe_dispose;
  G_OBJECT_CLASS (klass)->finalize = fm_kitchen_probe_finalize;
  signals[HEARD] = g_signal_new ("heard", FM_TYPE_KITCHEN_PROBE, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                 NULL, G_TYPE_NONE, 1, G_TYPE_DOUBLE);
}

static void
fm_kitchen_probe_init (FmKitchenProbe *self)
{
  self->lines = fm_probe_new ();
  self->file = -1;
}

/* Bytes as they come, whatever the terminal would make of them. */
static void
make_raw (int file)
{
  struct termios port;

  if (tcgetattr (file, &port) != 0)
    return;
  cfmakeraw (&port);
  port.c_cflag |= CLOCAL | CREAD;
  tcsetattr (file, TCSANOW, &port);
}

/* Returns: a file descriptor, -1 + error. */
static int
open_path (const char *path, GError **error)
{
  const int file = open (path, O_RDONLY | O_NONBLOCK | O_NOCTTY | O_CLOEXEC);
  struct stat info;

  if (file < 0 || fstat (file, &info) != 0 || S_ISDIR (info.st_mode)) {
    g_set_error (error, G_IO_ERROR, G_IO_ERROR_FAILED,
                 _ ("“%s” cannot be read: %s. Check the name and that you may read it."), path,
                 file < 0 ? g_strerror (errno) : _ ("it is a folder"));
    if (file >= 0)
      close (file);
    return -1;
  }
  if (S_ISREG (info.st_mode))
    lseek (file, 0, SEEK_END);
  else if (isatty (file))
    make_raw (file);
  return file;
}

FmKitchenProbe *
fm_kitchen_probe_new (const char *path, GError **error)
{
  const int file = open_path (path, error);
  FmKitchenProbe *self;

  if (file < 0)
    return NULL;
  self = g_object_new (FM_TYPE_KITCHEN_PROBE, NULL);
  self->file = file;
  self->listen_id = g_timeout_add (LISTEN_MS, listen_cb, self);
  return self;
}

guint
fm_kitchen_probe_n_good (FmKitchenProbe *self)
{
  return self->lines->n_good;
}

guint
fm_kitchen_probe_n_refused (FmKitchenProbe *self)
{
  return self->lines->n_refused;
}
