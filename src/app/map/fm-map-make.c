/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-make.c - makes points of a map into versions of the blend */
#include <glib/gi18n-lib.h>

#include "app/map/fm-map-document.h"

/* What is under way: which points of the map wait for which version. */
typedef struct {
  FmMapDocument *document;
  GArray *indices; /* guint */
} Order;

static void
order_free (Order *order)
{
  g_object_unref (order->document);
  g_array_unref (order->indices);
  g_free (order);
}

static void
say_made (FmSession *session, GPtrArray *infos)
{
  const FmVersionInfo *first = g_ptr_array_index (infos, 0);
  const FmVersionInfo *last = g_ptr_array_index (infos, infos->len - 1);
  g_autofree char *text =
      infos->len == 1
          ? g_strdup_printf (_ ("Saved as version %d; the draft stays as it was"), first->number)
          : g_strdup_printf (_ ("Saved as versions %d to %d; the draft stays as it was"),
                             first->number, last->number);

  fm_session_message (session, text);
}

static void
made_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  FmSession *session = FM_SESSION (source);
  Order *order = user_data;
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) infos = fm_session_add_versions_finish (session, result, &error);
  FmMap *map = fm_map_document_get_map (order->document);

  for (guint i = 0; i < order->indices->len; i++) {
    const guint index = g_array_index (order->indices, guint, i);
    const FmVersionInfo *info = infos != NULL ? g_ptr_array_index (infos, i) : NULL;

    if (index < map->points->len)
      g_array_index (map->points, FmMapPoint, index).version_id = info != NULL ? info->id : 0;
  }
  if (infos == NULL)
    fm_session_failure (session, error);
  else
    say_made (session, infos);
  fm_map_document_set_making (order->document, FALSE);
  fm_map_document_touch (order->document);
  fm_map_document_reload_data (order->document);
  order_free (order);
}

static void
make (FmMapDocument *document, GArray *indices, const char *const *reasons)
{
  FmMap *map = fm_map_document_get_map (document);
  g_autoptr (GPtrArray) formulas = g_ptr_array_new_with_free_func ((GDestroyNotify)fm_formula_free);
  Order *order;

  for (guint i = 0; i < indices->len; i++) {
    const guint index = g_array_index (indices, guint, i);
    const FmMapPoint *point = &g_array_index (map->points, FmMapPoint, index);

    g_ptr_array_add (formulas, fm_mix_blend_apply (fm_map_document_get_blend (document), point->x));
  }
  order = g_new0 (Order, 1);
  order->document = g_object_ref (document);
  order->indices = g_array_ref (indices);
  fm_map_document_set_making (document, TRUE);
  fm_session_add_versions (fm_map_document_get_session (document), map->blend_id,
                           map->base_version_id, formulas, reasons, made_cb, order);
}

static gboolean
can_make (FmMapDocument *document)
{
  return fm_map_document_is_editable (document) && !fm_map_document_is_making (document) &&
         fm_map_document_get_blend (document) != NULL;
}

static gboolean
is_among (const GArray *indices, guint index)
{
  for (guint i = 0; i < indices->len; i++)
    if (g_array_index (indices, guint, i) == index)
      return TRUE;
  return FALSE;
}

void
fm_map_document_make_versions (FmMapDocument *self, const guint *indices, guint n)
{
  FmMap *map = fm_map_document_get_map (self);
  g_autoptr (GArray) wanted = g_array_new (FALSE, FALSE, sizeof (guint));
  g_autoptr (GPtrArray) reasons = g_ptr_array_new_with_free_func (g_free);

  if (!can_make (self))
    return;
  for (guint i = 0; i < n; i++) {
    if (indices[i] >= map->points->len || is_among (wanted, indices[i]) ||
        g_array_index (map->points, FmMapPoint, indices[i]).version_id != 0)
      continue;
    g_array_append_val (wanted, indices[i]);
    g_ptr_array_add (reasons, fm_map_document_point_reason (self, indices[i]));
  }
  if (wanted->len == 0)
    return;
  g_ptr_array_add (reasons, NULL);
  make (self, wanted, (const char *const *)reasons->pdata);
}

void
fm_map_document_make_blend (FmMapDocument *self, const double *x, const char *reason)
{
  FmMap *map = fm_map_document_get_map (self);
  FmMapPoint point = { .kind = FM_MIX_POINT_OTHER };
  g_autoptr (GArray) indices = g_array_new (FALSE, FALSE, sizeof (guint));
  const char *reasons[] = { reason, NULL };
  const guint index = map->points->len;

  if (!can_make (self))
    return;
  memcpy (point.x, x, map->components->len * sizeof *x);
  g_array_append_val (map->points, point);
  g_array_append_val (indices, index);
  make (self, indices, reasons);
}
