/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-formula-paste.c - two columns of a spreadsheet or a text become lines of the draft */
#include "app/formula/fm-formula-paste.h"

#include <glib/gi18n-lib.h>

#include "app/session/fm-formula-line-edit.h"
#include "app/session/fm-notebook-settings.h"
#include "app/session/fm-store-task.h"
#include "core/formula/fm-paste-lines.h"
#include "store/fm-food-store.h"
#include "store/fm-names.h"
#include "store/fm-versions.h"

/* What was found of the pasted lines. */
typedef struct {
  FmFormula *lines;
  GString *missing; /* names, parted by commas */
} Found;

static void
found_free (Found *found)
{
  fm_formula_free (found->lines);
  g_string_free (found->missing, TRUE);
  g_free (found);
}

/* An own entry of just this name, NULL when there is none. */
static FmIngredient *
find_own (FmNotebook *notebook, const char *name, GError **error)
{
  g_autoptr (GPtrArray) own = fm_ingredients_list (notebook, name, error);
  g_autofree char *folded = g_utf8_casefold (name, -1);

  for (guint i = 0; own != NULL && i < own->len; i++) {
    FmIngredient *ingredient = g_ptr_array_index (own, i);
    g_autofree char *other = g_utf8_casefold (ingredient->name, -1);

    if (g_str_equal (folded, other))
      return fm_ingredient_ref (ingredient);
  }
  return NULL;
}

static FmIngredient *
find_food (FmNotebook *notebook, FmFoodStore *foods, const char *name, GError **error)
{
  g_autoptr (GPtrArray) hits = fm_food_store_search (foods, name, 1, NULL, error);
  g_autoptr (FmFood) food = NULL;

  if (hits == NULL || hits->len == 0)
    return NULL;
  food = fm_food_store_get (foods, ((FmFoodHit *)g_ptr_array_index (hits, 0))->ndb_no, error);
  return food != NULL ? fm_names_new_ingredient (notebook, food, error) : NULL;
}

static gpointer
find_all (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  GPtrArray *lines = data;
  g_autoptr (FmFoodStore) foods = fm_food_store_default (error);
  GError *failure = NULL;
  Found *found = NULL;

  if (foods == NULL)
    return NULL;
  found = g_new0 (Found, 1);
  found->lines = fm_formula_new ();
  found->missing = g_string_new (NULL);
  for (guint i = 0; i < lines->len && failure == NULL; i++) {
    const FmPasteLine *line = g_ptr_array_index (lines, i);
    g_autoptr (FmIngredient) ingredient = find_own (notebook, line->name, &failure);

    if (ingredient == NULL && failure == NULL)
      ingredient = find_food (notebook, foods, line->name, &failure);
    if (ingredient != NULL)
      fm_formula_add (found->lines, ingredient, line->mass_g);
    else
      g_string_append_printf (found->missing, "%s%s", found->missing->len > 0 ? ", " : "",
                              line->name);
  }
  if (failure == NULL)
    return found;
  g_propagate_error (error, failure);
  found_free (found);
  return NULL;
}

static void
found_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  FmSession *session = FM_SESSION (source);
  g_autoptr (GError) error = NULL;
  Found *found = fm_store_task_finish (result, &error);
  g_autofree char *text = NULL;

  if (found == NULL) {
    fm_session_failure (session, error);
    return;
  }
  fm_line_edit_add_all (session, found->lines);
  if (found->missing->len > 0) {
    text = g_strdup_printf (_ ("Not found, so not added: %s."), found->missing->str);
    fm_session_message (session, text);
  }
  found_free (found);
}

void
fm_formula_paste (FmSession *session, const char *text)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) lines = NULL;

  g_return_if_fail (FM_IS_SESSION (session) && text != NULL);

  lines = fm_paste_lines_read (text, fm_notebook_units (), &error);
  if (lines == NULL) {
    fm_session_message (session, error->message);
    return;
  }
  fm_store_task (&(FmStoreTask){
      .owner = session,
      .notebook = fm_session_get_notebook (session),
      .run = find_all,
      .free_result = (GDestroyNotify)found_free,
      .data = g_steal_pointer (&lines),
      .free_data = (GDestroyNotify)g_ptr_array_unref,
      .done = found_cb,
  });
}
