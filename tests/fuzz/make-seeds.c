/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* make-seeds.c - seeds that the program makes itself: make-seeds NOTEBOOK FOLDER */
#include <glib/gstdio.h>
#include <string.h>

#include "store/demo/fm-demo-photo.h"
#include "store/exchange/fm-exchange.h"
#include "store/fm-experiments.h"
#include "store/fm-formula-json.h"
#include "store/fm-image.h"

/* A target spends its time on small seeds, so no seed holds photos. */
#define N_FORMULAS 4

static void
put (const char *folder, const char *target, const char *name, const char *bytes, gsize size)
{
  g_autofree char *place = g_build_filename (folder, target, NULL);
  g_autofree char *path = g_build_filename (place, name, NULL);
  g_autoptr (GError) error = NULL;

  g_mkdir_with_parents (place, 0755);
  if (!g_file_set_contents (path, bytes, (gssize)size, &error))
    g_error ("%s", error->message);
}

static void
put_image (const char *folder, const char *type)
{
  g_autoptr (GdkPixbuf) pixbuf = gdk_pixbuf_new (GDK_COLORSPACE_RGB, FALSE, 8, 24, 16);
  g_autoptr (GBytes) plain = NULL;
  g_autoptr (GBytes) turned = NULL;
  char *bytes;
  gsize size;

  gdk_pixbuf_fill (pixbuf, 0x804020ff);
  if (!gdk_pixbuf_save_to_buffer (pixbuf, &bytes, &size, type, NULL, NULL))
    g_error ("No %s could be made.", type);
  plain = g_bytes_new_take (bytes, size);
  put (folder, "image", type, bytes, size);
  if (strcmp (type, "jpeg") != 0)
    return;
  turned = fm_demo_photo_tag (plain, 6, 1740996000);
  put (folder, "image", "jpeg-exif", g_bytes_get_data (turned, NULL), g_bytes_get_size (turned));
}

static void
put_formulas (const char *folder, FmNotebook *notebook)
{
  g_autoptr (GPtrArray) blends = fm_blends_list (notebook, NULL);

  for (guint i = 0; i < MIN (blends->len, N_FORMULAS); i++) {
    const FmBlendInfo *blend = blends->pdata[i];
    g_autoptr (FmFormula) formula = fm_draft_load (notebook, blend->id, NULL, NULL);
    g_autofree char *json = formula != NULL ? fm_formula_to_json (formula) : NULL;
    g_autofree char *name = g_strdup_printf ("formula-%u", i);

    if (json != NULL)
      put (folder, "json", name, json, strlen (json));
  }
}

static FmNotebook *
make_small (const char *path)
{
  g_autoptr (FmFormula) formula = fm_formula_new ();
  g_autoptr (FmIngredient) trim = fm_ingredient_new ("Trim", FM_INGREDIENT_TRIM);
  g_autoptr (FmExperiment) experiment = fm_experiment_new ();
  FmNotebook *notebook = fm_notebook_create (path, NULL);
  const gint64 blend = fm_blends_add (notebook, "Blend", NULL);

  trim->provenance = FM_PROVENANCE_DECLARED;
  trim->declared_fat_pct = 20;
  fm_formula_add (formula, trim, 1000);
  experiment->version_id = fm_versions_save (notebook, blend, formula, "First", NULL);
  experiment->notes = g_strdup ("Dark crust");
  fm_experiments_save (notebook, experiment, NULL);
  return notebook;
}

static void
put_notebook (const char *folder)
{
  g_autofree char *path = g_build_filename (folder, "small.forcemeat", NULL);
  g_autofree char *json = g_build_filename (folder, "small.json", NULL);
  const FmExchangePart whole = { 0 };
  g_autofree char *bytes = NULL;
  g_autofree char *text = NULL;
  gsize size;

  g_unlink (path);
  g_autoptr (FmNotebook) notebook = make_small (path);
  if (!fm_exchange_export (notebook, &whole, json, NULL, NULL))
    g_error ("No open data could be made.");
  g_clear_pointer (&notebook, fm_notebook_unref);
  g_file_get_contents (path, &bytes, &size, NULL);
  put (folder, "notebook", "small", bytes, size);
  g_file_get_contents (json, &text, &size, NULL);
  put (folder, "exchange", "small", text, size);
  g_unlink (path);
  g_unlink (json);
}

int
main (int argc, char **argv)
{
  g_autoptr (FmNotebook) demo = fm_notebook_open_read_only (argv[1], NULL, NULL);
  const char *folder = argv[2];

  g_mkdir_with_parents (folder, 0755);
  put_formulas (folder, demo);
  put_image (folder, "jpeg");
  put_image (folder, "png");
  put_image (folder, "tiff");
  put_notebook (folder);
  return 0;
}
