/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-session-check.c - does the notebook hold what was saved? Looked for after it was opened */
#include "app/session/fm-session-private.h"

#include <glib/gi18n-lib.h>

#include "core/base/fm-number.h"
#include "store/notebook/fm-record-check.h"

#define MAX_NAMED 5

/* What the cook calls a row of a table; the second is for one that has no name. */
static const struct {
  const char *table;
  const char *named;
  const char *unnamed;
} words[] = {
  { "settings", NULL, N_ ("the settings of the notebook") },
  { "ingredient_names", NULL, N_ ("the short names of ingredients") },
  { "ingredients", N_ ("the own ingredient “%s”"), N_ ("an own ingredient") },
  { "prices", NULL, N_ ("a price") },
  { "blends", N_ ("the name of the blend “%s”"), N_ ("a blend") },
  { "drafts", N_ ("the draft of “%s”"), N_ ("a draft") },
  { "servings", N_ ("the serving “%s”"), N_ ("a serving") },
  { "experiments", N_ ("the experiment “%s”"), N_ ("an experiment without a title") },
  { "tastings", N_ ("the tasting “%s”"), N_ ("a tasting without a title") },
  { "maps", N_ ("the map “%s”"), N_ ("a map without a name") },
};

static gpointer
check (FmNotebook *none, gpointer notebook, GCancellable *cancellable, GError **error)
{
  GPtrArray *altered = fm_record_check_run (notebook, cancellable, error);

  fm_writer_release_notebook (notebook);
  return altered;
}

static char *
describe (const FmAlteredRecord *record)
{
  for (gsize i = 0; i < G_N_ELEMENTS (words); i++) {
    if (g_strcmp0 (words[i].table, record->table) != 0)
      continue;
    if (words[i].named != NULL && record->name != NULL && record->name[0] != '\0') {
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wformat-nonliteral"
      return g_strdup_printf (_ (words[i].named), record->name);
#pragma GCC diagnostic pop
    }
    return g_strdup (_ (words[i].unnamed));
  }
  g_return_val_if_reached (NULL);
}

static void
add_line (GString *text, const char *line)
{
  g_string_append_printf (text, "\n• %s", line);
}

static void
add_count (GString *text, const char *format, guint n)
{
  g_autofree char *number = fm_number_format (n, 0);
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wformat-nonliteral"
  g_autofree char *line = g_strdup_printf (format, number);
#pragma GCC diagnostic pop

  add_line (text, line);
}

/* Names some of them; the rest is counted. */
static char *
describe_all (const GPtrArray *altered)
{
  g_autoptr (GString) text = g_string_new (
      _ ("Since it was saved, something of this notebook was changed outside the program, or "
         "damaged. Compare it with a backup before you rely on it:"));
  guint n_named = 0;
  guint n_more = 0;
  guint n_gone = 0;

  for (guint i = 0; i < altered->len; i++) {
    const FmAlteredRecord *record = g_ptr_array_index (altered, i);
    g_autofree char *line = record->is_gone ? NULL : describe (record);

    n_gone += record->is_gone ? 1 : 0;
    n_more += line != NULL && n_named == MAX_NAMED ? 1 : 0;
    if (line != NULL && n_named < MAX_NAMED) {
      add_line (text, line);
      n_named++;
    }
  }
  if (n_more > 0)
    add_count (text, ngettext ("%s more record", "%s more records", n_more), n_more);
  if (n_gone > 0)
    add_count (text, ngettext ("%s record is gone", "%s records are gone", n_gone), n_gone);
  return g_string_free (g_steal_pointer (&text), FALSE);
}

static void
checked_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (GPtrArray) altered = fm_store_task_finish (result, NULL);
  /* Only compared: of a notebook that was closed meanwhile nothing is told. */
  const FmNotebook *checked = fm_store_task_data (result);
  GWeakRef *where = data;
  g_autoptr (FmSession) self = g_weak_ref_get (where);
  g_autofree char *text = NULL;

  g_weak_ref_clear (where);
  g_free (where);
  if (self == NULL || altered == NULL || altered->len == 0 || self->notebook != checked)
    return;
  text = describe_all (altered);
  fm_documents_tell_altered (self->documents, self->notebook, g_steal_pointer (&altered));
  g_signal_emit_by_name (self, "altered", text);
}

/* The check holds the session no longer than it lives, so that closing waits for nothing. */
void
fm_session_begin_check (FmSession *self)
{
  GWeakRef *where;

  if (self->notebook == NULL)
    return;
  where = g_new0 (GWeakRef, 1);
  g_weak_ref_init (where, self);
  self->checking = g_cancellable_new ();
  fm_store_task (&(FmStoreTask){
      .run = check,
      .data = fm_writer_hold_notebook (self->notebook),
      .finishes = TRUE,
      .free_result = (GDestroyNotify)g_ptr_array_unref,
      .cancellable = self->checking,
      .done = checked_cb,
      .user_data = where,
  });
}

void
fm_session_end_check (FmSession *self)
{
  if (self->checking != NULL)
    g_cancellable_cancel (self->checking);
  g_clear_object (&self->checking);
}
