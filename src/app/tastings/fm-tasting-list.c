/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-list.c - the notebook's tastings: scope, list and what is said when it is empty */
#include "app/tastings/fm-tasting-list.h"

#include <glib/gi18n-lib.h>

#include "app/tastings/fm-tasting-text.h"
#include "app/widgets/fm-accessible.h"
#include "core/base/fm-date.h"
#include "store/fm-tastings.h"

#define SCOPE_BLEND 0

struct _FmTastingList {
  FmLogList parent_instance;

  GtkDropDown *scope_drop_down;
};

G_DEFINE_FINAL_TYPE (FmTastingList, fm_tasting_list, FM_TYPE_LOG_LIST)

static char *
row_markup (gconstpointer data)
{
  const FmTastingInfo *info = data;
  g_autofree char *date = fm_date_text (info->held_at);
  g_autofree char *size = fm_tasting_text_size (info->n_samples, info->n_tasters);
  g_autofree char *state = fm_tasting_text_state (info->state, info->n_in, info->n_tasters);
  const char *headline = info->headline != NULL ? info->headline : "";

  return g_markup_printf_escaped ("<b>%s</b>\n<small>%s · %s\n%s%s%s</small>",
                                  fm_tasting_text_title (info->title), date, size, state,
                                  *headline != '\0' ? "\n" : "", headline);
}

static char *
count_text (guint n)
{
  return g_strdup_printf (ngettext ("%u tasting", "%u tastings", n), n);
}

static gpointer
fm_tasting_list_query (FmLogList *list, FmSession *session)
{
  const gboolean of_blend =
      gtk_drop_down_get_selected (FM_TASTING_LIST (list)->scope_drop_down) == SCOPE_BLEND;
  const gint64 blend_id = of_blend ? fm_session_get_blend_id (session) : 0;

  return g_memdup2 (&blend_id, sizeof blend_id);
}

static void
fm_tasting_list_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), FM_TYPE_TASTING_LIST);
  G_OBJECT_CLASS (fm_tasting_list_parent_class)->dispose (object);
}

static void
fm_tasting_list_class_init (FmTastingListClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  FmLogListClass *list_class = FM_LOG_LIST_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_tasting_list_dispose;
  list_class->wraps = TRUE;
  list_class->markup = row_markup;
  list_class->count_text = count_text;
  list_class->query = fm_tasting_list_query;
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/tastings/fm-tasting-list.ui");
  gtk_widget_class_bind_template_child (widget_class, FmTastingList, scope_drop_down);
  gtk_widget_class_bind_template_callback (widget_class, fm_log_list_query_changed);
}

static void
fm_tasting_list_init (FmTastingList *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  fm_accessible_name_drop_down (self->scope_drop_down, _ ("Which tastings"));
}
