/* fm-tasting-list.h - the notebook's tastings: scope, list and what is said when it is empty
 *
 * Signals:
 *   "selected" (gint64 id)   the selection moved to another tasting
 *   "activated" (gint64 id)  a tasting was clicked or Enter was pressed on it
 */
#pragma once

#include <gtk/gtk.h>

#include "app/session/fm-session.h"

G_BEGIN_DECLS

#define FM_TYPE_TASTING_LIST (fm_tasting_list_get_type ())
G_DECLARE_FINAL_TYPE (FmTastingList, fm_tasting_list, FM, TASTING_LIST, GtkWidget)

void fm_tasting_list_set_session (FmTastingList *self, FmSession *session);
/** Asks the notebook again; an older query is cancelled. */
void fm_tasting_list_reload (FmTastingList *self);
/** Another blend may be shown: asks again if the scope depends on it. */
void fm_tasting_list_shown_changed (FmTastingList *self);
/** Selects a row now or when the running query ends; 0 selects none. Emits nothing. */
void fm_tasting_list_select (FmTastingList *self, gint64 id);
/** Leaves out a tasting that is about to be removed. Ask to reload afterwards. */
void fm_tasting_list_set_hidden (FmTastingList *self, gint64 id, gboolean hidden);

G_END_DECLS
