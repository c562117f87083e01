/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-food-find.c - what a text finds among the foods of the dataset and the own entries */
#include "app/ingredients/fm-food-find.h"

#include <glib/gi18n-lib.h>

#include "store/fm-names.h"
#include "store/fm-versions.h"

#define MAX_HITS 30

static gpointer
load_food (FmNotebook *notebook, gpointer ndb_no, GCancellable *cancellable, GError **error)
{
  g_autoptr (FmFoodStore) foods = fm_food_store_default (error);
  g_autoptr (FmFood) food = foods != NULL ? fm_food_store_get (foods, ndb_no, error) : NULL;

  return food != NULL ? fm_names_new_ingredient (notebook, food, error) : NULL;
}

/* Without the dataset own entries are found all the same. */
static gpointer
run_search (FmNotebook *notebook, gpointer text, GCancellable *cancellable, GError **error)
{
  FmFoodFound *found = g_new0 (FmFoodFound, 1);
  g_autoptr (FmFoodStore) foods = fm_food_store_default (&found->foods_error);
  GError *failure = NULL;

  found->text = g_strdup (text);
  if (notebook != NULL)
    found->own = fm_ingredients_list (notebook, text, &failure);
  if (failure == NULL && foods != NULL)
    found->hits = fm_food_store_search (foods, text, MAX_HITS, &found->read_as, &failure);
  if (failure == NULL)
    return found;
  g_propagate_error (error, failure);
  fm_food_found_free (found);
  return NULL;
}

static char *
count_text (const FmFoodFound *self)
{
  const guint n = fm_food_found_n_own (self) + fm_food_found_n_fresh (self);

  if (self->hits == NULL)
    return g_strdup (_ ("The food dataset is missing, so only your own entries can be found."));
  if (n + fm_food_found_n_hits (self) == 0)
    return g_strdup (_ ("Nothing found. Try fewer words, or write an own entry."));
  if (n == 0)
    return g_strdup (_ ("Only ready-made foods are found. Enter adds what is highlighted."));
  if (fm_food_found_n_fresh (self) >= MAX_HITS)
    return g_strdup_printf (ngettext ("The best %u food. Enter adds what is highlighted.",
                                      "The best %u foods. Enter adds what is highlighted.", n),
                            n);
  return g_strdup_printf (ngettext ("%u food found. Enter adds what is highlighted.",
                                    "%u foods found. Enter adds what is highlighted.", n),
                          n);
}

void
fm_food_find (gpointer owner,
              FmNotebook *notebook,
              const char *text,
              GCancellable *cancellable,
              GAsyncReadyCallback done)
{
  fm_store_task (&(FmStoreTask){
      .owner = owner,
      .notebook = notebook,
      .run = run_search,
      .free_result = (GDestroyNotify)fm_food_found_free,
      .data = g_strdup (text),
      .free_data = g_free,
      .cancellable = cancellable,
      .done = done,
  });
}

void
fm_food_load (gpointer owner, FmNotebook *notebook, const FmFoodHit *hit, GAsyncReadyCallback done)
{
  fm_store_task (&(FmStoreTask){
      .owner = owner,
      .notebook = notebook,
      .run = load_food,
      .free_result = (GDestroyNotify)fm_ingredient_unref,
      .data = g_strdup (hit->ndb_no),
      .free_data = g_free,
      .done = done,
  });
}

void
fm_food_found_free (FmFoodFound *self)
{
  if (self == NULL)
    return;
  g_free (self->text);
  g_free (self->read_as);
  g_clear_pointer (&self->own, g_ptr_array_unref);
  g_clear_pointer (&self->hits, g_ptr_array_unref);
  g_clear_error (&self->foods_error);
  g_free (self);
}

guint
fm_food_found_n_own (const FmFoodFound *self)
{
  return self != NULL && self->own != NULL ? self->own->len : 0;
}

guint
fm_food_found_n_hits (const FmFoodFound *self)
{
  return self != NULL && self->hits != NULL ? self->hits->len : 0;
}

guint
fm_food_found_n_fresh (const FmFoodFound *self)
{
  const guint n_hits = fm_food_found_n_hits (self);
  guint n = 0;

  while (n < n_hits && !((const FmFoodHit *)g_ptr_array_index (self->hits, n))->is_ready_made)
    n++;
  return n;
}

char *
fm_food_found_text (const FmFoodFound *self)
{
  g_autofree char *count = count_text (self);

  if (self->read_as == NULL)
    return g_steal_pointer (&count);
  /* TRANSLATORS: the words searched for where they are not those typed, then what was found. */
  return g_strdup_printf (_ ("Searched as “%s”. %s"), self->read_as, count);
}
