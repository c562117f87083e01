/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-list.c - the maps of the shown blend: list and what is said when it is empty */
#include "app/map/fm-map-list.h"

#include <glib/gi18n-lib.h>

#include "app/map/fm-map-text.h"
#include "core/base/fm-date.h"
#include "store/fm-maps.h"

struct _FmMapList {
  FmLogList parent_instance;
};

G_DEFINE_FINAL_TYPE (FmMapList, fm_map_list, FM_TYPE_LOG_LIST)

static char *
row_markup (gconstpointer data)
{
  const FmMapInfo *info = data;
  g_autofree char *date = fm_date_text (info->created_at);
  g_autofree char *trials = info->n_points > 0
                                ? fm_map_text_trials (info->n_points, info->n_versions)
                                : g_strdup (_ ("no trials yet"));

  return g_markup_printf_escaped ("<b>%s</b>\n<small>%s\n%s</small>", info->name, date, trials);
}

static char *
count_text (guint n)
{
  return g_strdup_printf (ngettext ("%u map", "%u maps", n), n);
}

static gpointer
fm_map_list_query (FmLogList *list, FmSession *session)
{
  const gint64 blend_id = fm_session_get_blend_id (session);

  return blend_id != 0 ? g_memdup2 (&blend_id, sizeof blend_id) : NULL;
}

static void
fm_map_list_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), FM_TYPE_MAP_LIST);
  G_OBJECT_CLASS (fm_map_list_parent_class)->dispose (object);
}

static void
fm_map_list_class_init (FmMapListClass *klass)
{
  FmLogListClass *list_class = FM_LOG_LIST_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_map_list_dispose;
  list_class->wraps = TRUE;
  list_class->markup = row_markup;
  list_class->count_text = count_text;
  list_class->query = fm_map_list_query;
  gtk_widget_class_set_template_from_resource (
      GTK_WIDGET_CLASS (klass), "/io/github/forcemeat/Forcemeat/ui/map/fm-map-list.ui");
}

static void
fm_map_list_init (FmMapList *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
