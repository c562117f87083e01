/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-json-read.c - reading JSON that nobody vouches for */
#include "store/fm-json-read.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "core/base/fm-text-limit.h"
#include "store/notebook/fm-notebook.h"

#define MAX_JSON_BYTES (16 * 1024 * 1024)
/* json-glib 1.6 recurses for each level; ours has five. */
#define MAX_DEPTH 32

/* The reader quotes the text, which may be cut within a letter. */
static void
set_damaged (GError **error, const char *what)
{
  g_autofree char *shown = g_utf8_make_valid (what, -1);

  g_set_error (error, FM_STORE_ERROR, FM_STORE_ERROR_DAMAGED,
               _ ("The stored formula is damaged (%s). It was left as it is; open a backup or a "
                  "saved copy of the notebook."),
               shown);
}

/* Comments and single quotes, which json-glib would take, could hide brackets from this look. */
static gboolean
is_plain (char c)
{
  return g_ascii_isalnum (c) || g_ascii_isspace (c) || strchr ("{}[],:+-.", c) != NULL;
}

/* Brackets inside strings do not count. */
static gboolean
is_plain_and_shallow (const char *json)
{
  gboolean in_string = FALSE;
  int depth = 0;

  for (const char *p = json; *p != '\0'; p++) {
    if (in_string) {
      if (*p == '\\' && p[1] != '\0')
        p++;
      else if (*p == '"')
        in_string = FALSE;
    } else if (*p == '"') {
      in_string = TRUE;
    } else if (*p == '{' || *p == '[') {
      if (++depth > MAX_DEPTH)
        return FALSE;
    } else if (*p == '}' || *p == ']') {
      depth--;
    } else if (!is_plain (*p)) {
      return FALSE;
    }
  }
  return TRUE;
}

JsonNode *
fm_json_parse (const char *json, GError **error)
{
  g_autoptr (GError) local_error = NULL;
  JsonNode *node = NULL;

  if (json == NULL || strlen (json) > MAX_JSON_BYTES || !g_utf8_validate (json, -1, NULL) ||
      !is_plain_and_shallow (json)) {
    set_damaged (error, _ ("not the kind of text that Forcemeat writes"));
    return NULL;
  }
  node = json_from_string (json, &local_error);
  if (node == NULL || !JSON_NODE_HOLDS_OBJECT (node)) {
    set_damaged (error, local_error != NULL ? local_error->message : _ ("no object"));
    g_clear_pointer (&node, json_node_unref);
  }
  return node;
}

void
fm_json_fail (FmJsonReading *self, const char *key)
{
  if (self->error == NULL)
    set_damaged (&self->error, key);
}

/* Whole numbers and fractions are two types in json-glib. */
gboolean
fm_json_get_number (JsonNode *node, double *value)
{
  GType type = JSON_NODE_HOLDS_VALUE (node) ? json_node_get_value_type (node) : G_TYPE_INVALID;

  if (type != G_TYPE_INT64 && type != G_TYPE_DOUBLE)
    return FALSE;
  *value = type == G_TYPE_INT64 ? (double)json_node_get_int (node) : json_node_get_double (node);
  return isfinite (*value);
}

double
fm_json_read_double (
    FmJsonReading *self, JsonObject *object, const char *key, double min, double max)
{
  JsonNode *node = json_object_get_member (object, key);
  double value;

  if (node == NULL)
    return (double)NAN;
  if (!fm_json_get_number (node, &value) || value < min || value > max) {
    fm_json_fail (self, key);
    return (double)NAN;
  }
  return value;
}

double
fm_json_read_needed (
    FmJsonReading *self, JsonObject *object, const char *key, double min, double max)
{
  double value = fm_json_read_double (self, object, key, min, max);

  if (isnan (value)) {
    fm_json_fail (self, key);
    return min;
  }
  return value;
}

char *
fm_json_read_string (FmJsonReading *self, JsonObject *object, const char *key)
{
  JsonNode *node = json_object_get_member (object, key);

  if (node == NULL)
    return NULL;
  if (!JSON_NODE_HOLDS_VALUE (node) || json_node_get_value_type (node) != G_TYPE_STRING) {
    fm_json_fail (self, key);
    return NULL;
  }
  if (!fm_text_fits (json_node_get_string (node), strlen (json_node_get_string (node)))) {
    fm_json_fail (self, key);
    return NULL;
  }
  return json_node_dup_string (node);
}

gboolean
fm_json_read_boolean (FmJsonReading *self, JsonObject *object, const char *key)
{
  JsonNode *node = json_object_get_member (object, key);

  if (node == NULL)
    return FALSE;
  if (!JSON_NODE_HOLDS_VALUE (node) || json_node_get_value_type (node) != G_TYPE_BOOLEAN) {
    fm_json_fail (self, key);
    return FALSE;
  }
  return json_node_get_boolean (node);
}

int
fm_json_read_name (
    FmJsonReading *self, JsonObject *object, const char *key, const char *const *names, int n_names)
{
  g_autofree char *name = fm_json_read_string (self, object, key);

  for (int i = 0; i < n_names; i++) {
    if (g_strcmp0 (name, names[i]) == 0)
      return i;
  }
  fm_json_fail (self, key);
  return n_names - 1;
}

JsonObject *
fm_json_read_object (FmJsonReading *self, JsonObject *object, const char *key)
{
  JsonNode *node = json_object_get_member (object, key);

  if (node != NULL && JSON_NODE_HOLDS_OBJECT (node))
    return json_node_get_object (node);
  if (node != NULL)
    fm_json_fail (self, key);
  return NULL;
}
