/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* replay.c - drives a fuzz target without a fuzzer: replay SECONDS SEEDS... Prints TAP. */
#include <glib.h>
#include <stdlib.h>
#include <string.h>

#include "fuzz.h"

#define MAX_BYTES (64 * 1024)
#define MAX_CHANGES 8

typedef struct {
  char *bytes;
  gsize size;
} Seed;

static void
clear_seed (gpointer data)
{
  g_free (((Seed *)data)->bytes);
}

static void
add_folder (GArray *seeds, const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL) {
    g_autofree char *path = g_build_filename (folder, name, NULL);
    Seed seed;

    if (g_file_get_contents (path, &seed.bytes, &seed.size, NULL))
      g_array_append_val (seeds, seed);
  }
}

/* One change: a bit, a byte, a piece taken out, or a piece of another seed put in. */
static void
change (GByteArray *bytes, const Seed *other, GRand *random)
{
  const guint at = (guint)g_rand_int_range (random, 0, (gint32)MAX (bytes->len, 1));
  const guint n = (guint)g_rand_int_range (random, 1, 17);

  switch (g_rand_int_range (random, 0, 4)) {
  case 0:
    if (bytes->len > 0)
      bytes->data[at] ^= (guint8)(1u << g_rand_int_range (random, 0, 8));
    break;
  case 1:
    if (bytes->len > 0)
      bytes->data[at] = (guint8)g_rand_int_range (random, 0, 256);
    break;
  case 2:
    if (bytes->len > at)
      g_byte_array_remove_range (bytes, at, MIN (n, bytes->len - at));
    break;
  default:
    if (other->size > 0 && bytes->len < MAX_BYTES) {
      const gsize from = (gsize)g_rand_int_range (random, 0, (gint32)other->size);
      g_byte_array_append (bytes, (const guint8 *)other->bytes + from,
                           (guint)MIN (n, other->size - from));
    }
    break;
  }
}

static void
mutate (GArray *seeds, double seconds, guint *n_runs)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (20);
  const gint64 end = g_get_monotonic_time () + (gint64)(seconds * 1e6);

  while (seeds->len > 0 && g_get_monotonic_time () < end) {
    const Seed *seed =
        &g_array_index (seeds, Seed, (guint)g_rand_int_range (random, 0, (gint32)seeds->len));
    const Seed *other =
        &g_array_index (seeds, Seed, (guint)g_rand_int_range (random, 0, (gint32)seeds->len));
    g_autoptr (GByteArray) bytes = g_byte_array_new ();

    g_byte_array_append (bytes, (const guint8 *)seed->bytes, (guint)seed->size);
    for (int i = g_rand_int_range (random, 0, MAX_CHANGES); i >= 0; i--)
      change (bytes, other, random);
    LLVMFuzzerTestOneInput (bytes->data, bytes->len);
    (*n_runs)++;
  }
}

int
main (int argc, char **argv)
{
  g_autoptr (GArray) seeds = g_array_new (FALSE, FALSE, sizeof (Seed));
  guint n_runs = 0;

  g_array_set_clear_func (seeds, clear_seed);
  for (int i = 2; i < argc; i++)
    add_folder (seeds, argv[i]);
  for (guint i = 0; i < seeds->len; i++) {
    const Seed *seed = &g_array_index (seeds, Seed, i);
    LLVMFuzzerTestOneInput ((const guint8 *)seed->bytes, seed->size);
  }
  mutate (seeds, argc > 1 ? g_ascii_strtod (argv[1], NULL) : 0, &n_runs);
  g_print ("1..1\nok 1 - %u seeds, %u changes of them\n", seeds->len, n_runs);
  return seeds->len > 0 ? 0 : 1;
}
