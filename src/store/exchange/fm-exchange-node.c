/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-exchange-node.c - a parsed value as text again, with the bytes that it was written with
 *
 * By hand, as in fm-formula-json.c: json-glib 1.6 prints 1e-10 as "1e-10.0", which no reader
 * accepts.
 */
#include "store/exchange/fm-exchange-private.h"
#include "store/fm-formula-json.h"

void
fm_exchange_append_text (GString *out, const char *text)
{
  g_autofree char *valid = g_utf8_make_valid (text, -1);

  g_string_append_c (out, '"');
  fm_json_append_escaped (out, valid);
  g_string_append_c (out, '"');
}

static void
append_value (GString *out, JsonNode *node)
{
  switch (json_node_get_value_type (node)) {
  case G_TYPE_INT64:
    g_string_append_printf (out, "%" G_GINT64_FORMAT, json_node_get_int (node));
    return;
  case G_TYPE_DOUBLE:
    fm_json_append_double (out, json_node_get_double (node));
    return;
  case G_TYPE_BOOLEAN:
    g_string_append (out, json_node_get_boolean (node) ? "true" : "false");
    return;
  default:
    fm_exchange_append_text (out, json_node_get_string (node));
    return;
  }
}

static void
append_object (GString *out, JsonObject *object)
{
  JsonObjectIter iter;
  const char *member;
  JsonNode *node;

  g_string_append_c (out, '{');
  json_object_iter_init_ordered (&iter, object);
  while (json_object_iter_next_ordered (&iter, &member, &node)) {
    if (out->str[out->len - 1] != '{')
      g_string_append_c (out, ',');
    fm_exchange_append_text (out, member);
    g_string_append_c (out, ':');
    fm_exchange_append_node (out, node);
  }
  g_string_append_c (out, '}');
}

static void
append_array (GString *out, JsonArray *array)
{
  g_string_append_c (out, '[');
  for (guint i = 0; i < json_array_get_length (array); i++) {
    if (i > 0)
      g_string_append_c (out, ',');
    fm_exchange_append_node (out, json_array_get_element (array, i));
  }
  g_string_append_c (out, ']');
}

void
fm_exchange_append_node (GString *out, JsonNode *node)
{
  switch (json_node_get_node_type (node)) {
  case JSON_NODE_OBJECT:
    append_object (out, json_node_get_object (node));
    return;
  case JSON_NODE_ARRAY:
    append_array (out, json_node_get_array (node));
    return;
  case JSON_NODE_VALUE:
    append_value (out, node);
    return;
  case JSON_NODE_NULL:
    g_string_append (out, "null");
    return;
  }
}
