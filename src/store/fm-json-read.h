/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-json-read.h - reading JSON that nobody vouches for
 *
 * Internal to the store layer. A reader goes on after an error and hands back what it can; the
 * first error is kept.
 */
#pragma once

#include <json-glib/json-glib.h>

G_BEGIN_DECLS

typedef struct {
  GError *error; /* FM_STORE_ERROR; NULL while all is well */
} FmJsonReading;

/** The object that @json holds; FM_STORE_ERROR_DAMAGED for any other text. (transfer full) */
JsonNode *fm_json_parse (const char *json, GError **error);
/** Notes that the text is damaged at @key. */
void fm_json_fail (FmJsonReading *self, const char *key);
/** FALSE where @node holds no finite number. */
gboolean fm_json_get_number (JsonNode *node, double *value);
/** NaN when absent, and when damaged: not a number in [@min, @max]. */
double fm_json_read_double (
    FmJsonReading *self, JsonObject *object, const char *key, double min, double max);
/** The same for a number that must be there: @min when it is not. */
double fm_json_read_needed (
    FmJsonReading *self, JsonObject *object, const char *key, double min, double max);
/** (transfer full) (nullable): absent */
char *fm_json_read_string (FmJsonReading *self, JsonObject *object, const char *key);
/** FALSE when absent. */
gboolean fm_json_read_boolean (FmJsonReading *self, JsonObject *object, const char *key);
/** Which of @names it is; the last one when damaged. */
int fm_json_read_name (FmJsonReading *self,
                       JsonObject *object,
                       const char *key,
                       const char *const *names,
                       int n_names);
/** (transfer none) (nullable): absent */
JsonObject *fm_json_read_object (FmJsonReading *self, JsonObject *object, const char *key);

G_END_DECLS
