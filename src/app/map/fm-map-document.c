/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-document.c - one map being edited, saved as it changes */
#include "app/map/fm-map-document.h"

#include "app/session/fm-store-task.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "core/formula/fm-analysis.h"
#include "core/mixture/fm-mix-text.h"

#define SHORT_PARTS 3

struct _FmMapDocument {
  FmStoredDocument parent_instance;

  FmSession *session;
  FmMap *map; /* the content */
  FmFormula *base;
  FmMixBlend *blend; /* (nullable) */
  gboolean has_region;
  char *problem;     /* (nullable) */
  GPtrArray *limits; /* FmMapLimit */
  GPtrArray *names;  /* char*, NULL-terminated; owned by the map's components */
  char **short_names;
  FmMapData *data; /* (nullable) */
  GCancellable *reading;
  gboolean making;
};

G_DEFINE_FINAL_TYPE (FmMapDocument, fm_map_document, FM_TYPE_STORED_DOCUMENT)

enum {
  DATA_CHANGED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static gpointer
copy_map (FmStoredDocument *document)
{
  return fm_map_copy (FM_MAP_DOCUMENT (document)->map);
}

static void
free_map (gpointer content)
{
  fm_map_free (content);
}

static gboolean
save_map (FmNotebook *notebook, gpointer content, GError **error)
{
  return fm_maps_save (notebook, content, error);
}

static char *
describe_map (FmStoredDocument *document)
{
  return g_strdup_printf (_ ("Map “%s”"), FM_MAP_DOCUMENT (document)->map->name);
}

static void
take_names (FmMapDocument *self)
{
  g_ptr_array_set_size (self->names, 0);
  for (guint i = 0; i < self->map->components->len; i++) {
    const FmMixComponent *component = g_ptr_array_index (self->map->components, i);

    g_ptr_array_add (self->names, component->name);
  }
  g_ptr_array_add (self->names, NULL);
}

/* Table names run on in cuts, trims and grades: the first parts tell them apart, mostly. */
static char *
short_name (const char *name)
{
  const char *end = name;

  for (int i = 0; i < SHORT_PARTS && end != NULL; i++)
    end = strchr (i == 0 ? end : end + 1, ',');
  return end != NULL ? g_strndup (name, (gsize)(end - name)) : g_strdup (name);
}

/* Where two would read the same, all stay long. */
static void
take_short_names (FmMapDocument *self)
{
  const guint n = self->map->components->len;
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);

  g_strfreev (self->short_names);
  self->short_names = g_new0 (char *, n + 1);
  for (guint i = 0; i < n; i++) {
    self->short_names[i] = short_name (g_ptr_array_index (self->names, i));
    g_hash_table_add (seen, self->short_names[i]);
  }
  if (g_hash_table_size (seen) == n)
    return;
  for (guint i = 0; i < n; i++) {
    g_free (self->short_names[i]);
    self->short_names[i] = g_strdup (g_ptr_array_index (self->names, i));
  }
}

static void
take_bounds (FmMapDocument *self)
{
  FmMixRegion *region = &self->blend->region;

  fm_mix_region_init (region, self->map->components->len);
  for (guint i = 0; i < region->q; i++) {
    region->lower[i] = self->map->lower[i];
    region->upper[i] = self->map->upper[i];
  }
}

/* Works out everything that follows from the map and its base. */
static void
derive (FmMapDocument *self)
{
  g_autoptr (GError) error = NULL;

  take_names (self);
  take_short_names (self);
  self->has_region = FALSE;
  g_clear_pointer (&self->problem, g_free);
  g_clear_pointer (&self->blend, fm_mix_blend_free);
  g_clear_pointer (&self->limits, g_ptr_array_unref);
  self->blend = fm_mix_blend_new (self->base, self->map->components, &error);
  self->limits = fm_map_limits_new (self->base->brief, self->blend);
  if (self->blend == NULL) {
    self->problem = g_strdup (error->message);
    return;
  }
  take_bounds (self);
  self->has_region = fm_map_limits_apply (self->limits, &self->blend->region,
                                          fm_map_document_get_names (self), &error);
  if (!self->has_region)
    self->problem = g_strdup (error->message);
}

static void
take_data (FmMapDocument *self, FmMapData *data)
{
  if (self->data == NULL && data == NULL)
    return;
  g_clear_pointer (&self->data, fm_map_data_free);
  self->data = data;
  g_signal_emit (self, signals[DATA_CHANGED], 0);
}

static gpointer
read_data (FmNotebook *notebook, gpointer map, GCancellable *cancellable, GError **error)
{
  return fm_map_data_load (notebook, map, cancellable, error);
}

static void
data_read_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  FmMapDocument *self = FM_MAP_DOCUMENT (source);
  g_autoptr (GError) error = NULL;
  FmMapData *data = fm_store_task_finish (result, &error);

  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    return;
  g_clear_object (&self->reading);
  if (error != NULL)
    fm_session_failure (self->session, error);
  take_data (self, data);
}

static void
stop_reading (FmMapDocument *self)
{
  g_cancellable_cancel (self->reading);
  g_clear_object (&self->reading);
}

static gpointer
read_base (FmNotebook *notebook, gpointer version_id, GCancellable *cancellable, GError **error)
{
  return fm_versions_load (notebook, *(gint64 *)version_id, error);
}

static void
base_read_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  FmMapDocument *self = FM_MAP_DOCUMENT (source);
  g_autoptr (GError) error = NULL;
  FmFormula *base = fm_store_task_finish (result, &error);

  if (base == NULL) {
    fm_session_failure (self->session, error);
    return;
  }
  self->map->base_version_id = *(gint64 *)fm_store_task_data (result);
  fm_formula_free (self->base);
  self->base = base;
  fm_map_document_touch (self);
  fm_map_document_reload_data (self);
}

static void
fm_map_document_finalize (GObject *object)
{
  FmMapDocument *self = FM_MAP_DOCUMENT (object);

  stop_reading (self);
  g_clear_pointer (&self->data, fm_map_data_free);
  g_clear_pointer (&self->limits, g_ptr_array_unref);
  g_clear_pointer (&self->names, g_ptr_array_unref);
  g_clear_pointer (&self->short_names, g_strfreev);
  g_clear_pointer (&self->blend, fm_mix_blend_free);
  g_clear_pointer (&self->base, fm_formula_free);
  g_clear_pointer (&self->problem, g_free);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (fm_map_document_parent_class)->finalize (object);
}

static void
fm_map_document_class_init (FmMapDocumentClass *klass)
{
  FmStoredDocumentClass *document_class = FM_STORED_DOCUMENT_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = fm_map_document_finalize;
  document_class->copy = copy_map;
  document_class->free = free_map;
  document_class->save = save_map;
  document_class->describe = describe_map;
  document_class->table = "maps";
  document_class->is_told = TRUE;
  document_class->kind = FM_CHANGE_MAP;
  signals[DATA_CHANGED] = g_signal_new ("data-changed", FM_TYPE_MAP_DOCUMENT, G_SIGNAL_RUN_LAST, 0,
                                        NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
fm_map_document_init (FmMapDocument *self)
{
  self->names = g_ptr_array_new ();
}

FmMapDocument *
fm_map_document_open (FmSession *session, FmMap *map, FmFormula *base)
{
  FmMapDocument *self = fm_documents_open (fm_session_get_documents (session), FM_TYPE_MAP_DOCUMENT,
                                           fm_session_get_notebook (session), map->id, map);

  if (self->map != NULL) {
    fm_formula_free (base);
    return self;
  }
  self->session = g_object_ref (session);
  self->map = map;
  self->base = base;
  derive (self);
  return self;
}

FmSession *
fm_map_document_get_session (FmMapDocument *self)
{
  return self->session;
}

FmMap *
fm_map_document_get_map (FmMapDocument *self)
{
  return self->map;
}

const FmFormula *
fm_map_document_get_base (FmMapDocument *self)
{
  return self->base;
}

void
fm_map_document_choose_base (FmMapDocument *self, gint64 version_id)
{
  fm_store_task (&(FmStoreTask){
      .owner = self,
      .notebook = fm_stored_document_get_notebook (FM_STORED_DOCUMENT (self)),
      .run = read_base,
      .free_result = (GDestroyNotify)fm_formula_free,
      .data = g_memdup2 (&version_id, sizeof version_id),
      .free_data = g_free,
      .done = base_read_cb,
  });
}

const FmMixBlend *
fm_map_document_get_blend (FmMapDocument *self)
{
  return self->blend;
}

gboolean
fm_map_document_has_region (FmMapDocument *self)
{
  return self->has_region;
}

const char *
fm_map_document_get_problem (FmMapDocument *self)
{
  return self->problem;
}

GPtrArray *
fm_map_document_get_limits (FmMapDocument *self)
{
  return self->limits;
}

const char *const *
fm_map_document_get_names (FmMapDocument *self)
{
  return (const char *const *)self->names->pdata;
}

const char *const *
fm_map_document_get_short_names (FmMapDocument *self)
{
  return (const char *const *)self->short_names;
}

void
fm_map_document_predict (FmMapDocument *self, const double *x, double *fat_pct, double *cost_per_kg)
{
  g_autoptr (FmFormula) formula =
      self->blend != NULL ? fm_mix_blend_apply (self->blend, x) : fm_formula_copy (self->base);
  g_autoptr (FmAnalysis) analysis = fm_analysis_new (formula);

  *fat_pct = analysis->fat_pct;
  *cost_per_kg = analysis->cost_per_kg;
}

const FmMapData *
fm_map_document_get_data (FmMapDocument *self)
{
  return self->data;
}

void
fm_map_document_reload_data (FmMapDocument *self)
{
  stop_reading (self);
  if (self->blend == NULL) {
    take_data (self, NULL);
    return;
  }
  self->reading = g_cancellable_new ();
  fm_store_task (&(FmStoreTask){
      .owner = self,
      .notebook = fm_stored_document_get_notebook (FM_STORED_DOCUMENT (self)),
      .run = read_data,
      .free_result = (GDestroyNotify)fm_map_data_free,
      .data = fm_map_copy (self->map),
      .free_data = (GDestroyNotify)fm_map_free,
      .cancellable = self->reading,
      .done = data_read_cb,
  });
}

gboolean
fm_map_document_is_editable (FmMapDocument *self)
{
  return fm_stored_document_is_editable (FM_STORED_DOCUMENT (self));
}

void
fm_map_document_touch (FmMapDocument *self)
{
  g_return_if_fail (FM_IS_MAP_DOCUMENT (self));
  derive (self);
  fm_stored_document_touch (FM_STORED_DOCUMENT (self));
}

gboolean
fm_map_document_is_making (FmMapDocument *self)
{
  return self->making;
}

void
fm_map_document_set_making (FmMapDocument *self, gboolean making)
{
  self->making = making;
}

char *
fm_map_document_shares_text (FmMapDocument *self, const double *x)
{
  return fm_mix_shares_text (self->map->components->len, x, fm_map_document_get_short_names (self));
}

char *
fm_map_document_point_reason (FmMapDocument *self, guint index)
{
  const FmMapPoint *point = &g_array_index (self->map->points, FmMapPoint, index);
  g_autofree char *shares = fm_map_document_shares_text (self, point->x);

  return g_strdup_printf (_ ("Map “%s”, trial %u: %s"), self->map->name, index + 1, shares);
}
