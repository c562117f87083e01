/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* Writes the demo notebook for the UI tests, which open a copy each: painting its photos takes
 * seconds. It opens on the first blend, whose versions differ more than those of the map.
 * Usage: make-demo FOODS.db NOTEBOOK */
#include <glib/gstdio.h>
#include <locale.h>

#include "store/demo/fm-demo.h"
#include "store/fm-versions.h"
#include "store/fm-food-store.h"

/* On its first blend, with nothing compared: the tests choose for themselves. */
static gboolean
open_on_first (FmNotebook *notebook, GError **error)
{
  g_autoptr (GPtrArray) blends = fm_blends_list (notebook, error);
  const FmBlendInfo *first = blends != NULL ? g_ptr_array_index (blends, 0) : NULL;
  g_autofree char *id = g_strdup_printf ("%" G_GINT64_FORMAT, first != NULL ? first->id : 0);

  return first != NULL && fm_notebook_set_setting (notebook, "last-blend", id, error) &&
         fm_notebook_set_setting (notebook, "compare-selection", "", error);
}

int
main (int argc, char **argv)
{
  g_autoptr (GError) error = NULL;
  FmFoodStore *foods = NULL;
  FmNotebook *notebook = NULL;

  setlocale (LC_ALL, "");
  if (argc != 3)
    g_error ("usage: make-demo FOODS.db NOTEBOOK");
  g_unlink (argv[2]);
  foods = fm_food_store_open (argv[1], &error);
  if (foods != NULL)
    notebook = fm_demo_create (argv[2], foods, NULL, &error);
  if (notebook == NULL || !open_on_first (notebook, &error))
    g_error ("%s", error->message);
  fm_notebook_unref (notebook);
  fm_food_store_unref (foods);
  return 0;
}
